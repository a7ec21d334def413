#include "price-cell.h"

#include <glib/gi18n-lib.h>

const char *
rc_price_cell_get_title (RcPriceField field)
{
  static const char *const TITLES[RC_N_PRICE_FIELDS]
      = { N_ ("Goods or work"), N_ ("Kind"),   N_ ("Supplier"),      N_ ("Unit"),      N_ ("Cost"),
          N_ ("Price"),         N_ ("Margin"), N_ ("From quantity"), N_ ("First day"), N_ ("Last day") };

  return _ (TITLES[field]);
}

static void
on_leave (GtkWidget *entry)
{
  g_signal_emit_by_name (entry, "activate");
}

static GtkWidget *
new_entry (RcPriceField field)
{
  GtkWidget          *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  gboolean            is_number = field != RC_PRICE_DAY_FROM && field != RC_PRICE_DAY_TO;

  gtk_entry_set_has_frame (GTK_ENTRY (entry), FALSE);
  gtk_entry_set_alignment (GTK_ENTRY (entry), is_number ? 1 : 0);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), is_number ? 7 : 10);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), is_number ? 7 : 10);
  if (!is_number)
    gtk_entry_set_placeholder_text (GTK_ENTRY (entry), field == RC_PRICE_DAY_FROM ? _ ("always") : _ ("open"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  rc_price_cell_get_title (field), -1);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), entry);
  gtk_widget_add_controller (entry, focus);
  return entry;
}

GtkWidget *
rc_price_cell_new (RcPriceField field)
{
  static const int WIDTHS[RC_N_PRICE_FIELDS]
      = { [RC_PRICE_NAME] = 24, [RC_PRICE_KIND] = 18, [RC_PRICE_SUPPLIER] = 16, [RC_PRICE_UNIT] = 5 };
  GtkWidget *label;

  if (rc_price_field_is_editable (field))
    return new_entry (field);
  label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (GTK_LABEL (label),
                             field == RC_PRICE_UNIT ? WIDTHS[field] : WIDTHS[field] / 2); /* gives way */
  gtk_label_set_max_width_chars (GTK_LABEL (label), WIDTHS[field]);
  return label;
}
