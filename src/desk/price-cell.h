/* A field of a price in the list: a label, or an entry where it can be typed. */
#pragma once

#include <gtk/gtk.h>

#include "price-edit.h"

/* The entry says "activate" too when the keyboard leaves it. */
GtkWidget *rc_price_cell_new (RcPriceField field);
/* Translated: what the field is called. */
const char *rc_price_cell_get_title (RcPriceField field);
