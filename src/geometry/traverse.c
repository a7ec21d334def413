#include "traverse.h"
