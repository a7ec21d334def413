#include "sheet.h"
