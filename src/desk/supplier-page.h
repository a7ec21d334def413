/* The suppliers of the price book as a list, each written in a form. */
#pragma once

#include "book-keeper.h"

#include <gtk/gtk.h>

#define RC_TYPE_SUPPLIER_PAGE (rc_supplier_page_get_type ())
G_DECLARE_FINAL_TYPE (RcSupplierPage, rc_supplier_page, RC, SUPPLIER_PAGE, GtkBox)

/* Signal "told" (string, gboolean can_undo): what was done or why not; "": there is nothing to say any more. */

/* Call once. */
void rc_supplier_page_set_keeper (RcSupplierPage *self, RcBookKeeper *keeper);
/* The keyboard goes where a supplier is looked for. */
void rc_supplier_page_find (RcSupplierPage *self);
/* Opens the form for a new supplier. */
void  rc_supplier_page_add (RcSupplierPage *self);
guint rc_supplier_page_get_n (RcSupplierPage *self);
