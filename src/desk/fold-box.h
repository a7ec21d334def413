/* Two children: beside each other where both have the width that they ask for, else the second below the first.
 */
#pragma once

#include <gtk/gtk.h>

#define RC_TYPE_FOLD_BOX (rc_fold_box_get_type ())
G_DECLARE_FINAL_TYPE (RcFoldBox, rc_fold_box, RC, FOLD_BOX, GtkWidget)
