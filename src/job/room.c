#include "room.h"
