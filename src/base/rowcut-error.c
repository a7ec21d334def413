#include "rowcut-error.h"

G_DEFINE_QUARK (rc - error - quark, rc_error)
