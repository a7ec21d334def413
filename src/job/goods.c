#include "goods.h"
