#include "nest.h"
