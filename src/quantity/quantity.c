#include "quantity.h"
