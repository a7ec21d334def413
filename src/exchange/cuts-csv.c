#include "cuts-csv.h"
