#include "quote.h"
