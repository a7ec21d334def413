/* Whom goods are ordered from: name, address, account, freight, time of delivery, written or changed. */
#pragma once

#include <gtk/gtk.h>

#include "price-book.h"

/* Signals, without arguments: "keep" (what is written shall be kept), "left" (nothing shall). */
#define RC_TYPE_SUPPLIER_FORM (rc_supplier_form_get_type ())
G_DECLARE_FINAL_TYPE (RcSupplierForm, rc_supplier_form, RC, SUPPLIER_FORM, GtkBox)

/* Shows the supplier; one that is not kept yet is `is_new`. The keyboard goes to the name. */
void rc_supplier_form_open (RcSupplierForm *self, const RcSupplier *supplier, gboolean is_new,
                            const RcCurrency *currency);
/* To be written anew, when another has it. */
void rc_supplier_form_focus_name (RcSupplierForm *self);
/* As it was opened; NULL: it is new. */
const RcSupplier *rc_supplier_form_get_before (RcSupplierForm *self);
/* What is written. NULL: the error names the field, which the keyboard goes to. (transfer full) */
RcSupplier *rc_supplier_form_read (RcSupplierForm *self, GError **error);
