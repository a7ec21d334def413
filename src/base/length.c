#include "length.h"
