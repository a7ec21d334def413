#include "house.h"
