#include "job-file.h"
