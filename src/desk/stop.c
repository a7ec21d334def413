#include "stop.h"

struct _RcStop
{
  GtkBox parent_instance;
};

G_DEFINE_FINAL_TYPE (RcStop, rc_stop, GTK_TYPE_BOX)

static gboolean
rc_stop_focus (GtkWidget *widget, GtkDirectionType direction)
{
  gboolean is_tab = direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD;

  if (is_tab && gtk_widget_get_focus_child (widget))
    return FALSE;
  return GTK_WIDGET_CLASS (rc_stop_parent_class)->focus (widget, direction);
}

static void
rc_stop_class_init (RcStopClass *klass)
{
  GTK_WIDGET_CLASS (klass)->focus = rc_stop_focus;
}

static void
rc_stop_init (RcStop *self)
{
}
