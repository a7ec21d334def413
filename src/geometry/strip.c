#include "strip.h"
