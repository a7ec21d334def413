/* The keys of the floor view. */
#pragma once

#include <gtk/gtk.h>

/* Binds them on the class; each activates an action of the bench or a function of the view. */
void rc_floor_keys_add (GtkWidgetClass *klass);
