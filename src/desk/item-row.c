#include "item-row.h"

struct _RcItemRow
{
  GtkBox parent_instance;

  RcItem *item; /* nullable */
};

G_DEFINE_FINAL_TYPE (RcItemRow, rc_item_row, GTK_TYPE_BOX)

/* The list's action takes the numbers of the pieces. */
static void
point (RcItemRow *self, const GArray *pieces)
{
  g_autoptr (GVariant) numbers = g_variant_ref_sink (g_variant_new_fixed_array (
      G_VARIANT_TYPE_UINT32, pieces ? (gconstpointer)pieces->data : NULL, pieces ? pieces->len : 0, sizeof (guint32)));

  gtk_widget_activate_action_variant (GTK_WIDGET (self), "items.point", numbers);
}

static void
on_enter (RcItemRow *self)
{
  point (self, self->item ? rc_item_get_pieces (self->item) : NULL);
}

static void
on_leave (RcItemRow *self)
{
  point (self, NULL);
}

static gboolean
is_cut_short (GtkWidget *widget)
{
  gboolean is_cut = GTK_IS_LABEL (widget) && pango_layout_is_ellipsized (gtk_label_get_layout (GTK_LABEL (widget)));

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child && !is_cut;
       child = gtk_widget_get_next_sibling (child))
    is_cut = is_cut_short (child);
  return is_cut;
}

/* What does not fit is told in full. */
static gboolean
rc_item_row_query_tooltip (GtkWidget *widget, int x, int y, gboolean by_keys, GtkTooltip *tooltip)
{
  g_autofree char *title = NULL, *detail = NULL;

  if (RC_ITEM_ROW (widget)->item == NULL || !is_cut_short (widget))
    return FALSE;
  g_object_get (RC_ITEM_ROW (widget)->item, "title", &title, "detail", &detail, NULL);
  g_autofree char *words = g_strdup_printf ("%s\n%s", title, detail);
  gtk_tooltip_set_text (tooltip, words);
  return TRUE;
}

static void
rc_item_row_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  g_set_object (&RC_ITEM_ROW (object)->item, g_value_get_object (value));
}

static void
rc_item_row_dispose (GObject *object)
{
  g_clear_object (&RC_ITEM_ROW (object)->item);
  G_OBJECT_CLASS (rc_item_row_parent_class)->dispose (object);
}

static void
rc_item_row_class_init (RcItemRowClass *klass)
{
  G_OBJECT_CLASS (klass)->set_property = rc_item_row_set_property;
  G_OBJECT_CLASS (klass)->dispose = rc_item_row_dispose;
  GTK_WIDGET_CLASS (klass)->query_tooltip = rc_item_row_query_tooltip;
  g_object_class_install_property (
      G_OBJECT_CLASS (klass), 1,
      g_param_spec_object ("item", NULL, NULL, RC_TYPE_ITEM, G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS));
}

static void
rc_item_row_init (RcItemRow *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();

  g_signal_connect_swapped (motion, "enter", G_CALLBACK (on_enter), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (on_leave), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}
