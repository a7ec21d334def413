#include "job.h"
