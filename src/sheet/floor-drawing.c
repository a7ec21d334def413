#include "floor-drawing.h"
