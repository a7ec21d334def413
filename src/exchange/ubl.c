#include "ubl.h"
