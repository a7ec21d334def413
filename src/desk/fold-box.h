/* Two children: beside each other where the first has the width that it asks for and the second some 40 letters, else
 * the second below the first. Its height does not change when the second hides.
 */
#pragma once

#include <gtk/gtk.h>

#define RC_TYPE_FOLD_BOX (rc_fold_box_get_type ())
G_DECLARE_FINAL_TYPE (RcFoldBox, rc_fold_box, RC, FOLD_BOX, GtkWidget)
