#include "shipped.h"
