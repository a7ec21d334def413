#include "area.h"
