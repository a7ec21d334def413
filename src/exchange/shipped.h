/* What the program carries within itself: the demo job and the default price book. */
#pragma once

#include "quote.h"

RcPriceBook *rc_shipped_load_price_book (GError **error);
RcJob       *rc_shipped_load_demo_job (GError **error);
