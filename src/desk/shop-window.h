/* What the shop says of itself on every paper, and what holds where a job says nothing: name, address, logo, terms,
 * tax, deposit, how long a quotation holds, how jobs are numbered. */
#pragma once

#include "window.h"

#define RC_TYPE_SHOP_WINDOW (rc_shop_window_get_type ())
G_DECLARE_FINAL_TYPE (RcShopWindow, rc_shop_window, RC, SHOP_WINDOW, GtkWindow)

GtkWidget *rc_shop_window_new (RcWindow *parent);

/* Takes a picture (PNG) as the logo, kept when the rest is. FALSE with the reason when it is none. */
gboolean rc_shop_window_take_logo (RcShopWindow *self, const char *path, GError **error);
/* Keeps what is written, all of it or nothing. */
gboolean    rc_shop_window_keep (RcShopWindow *self);
const char *rc_shop_window_get_told (RcShopWindow *self);
