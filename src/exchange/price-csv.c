#include "price-csv.h"
