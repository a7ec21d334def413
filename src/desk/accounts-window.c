#include "accounts-window.h"

#include <glib/gi18n-lib.h>

#include "accounts-csv.h"
#include "clock.h"
#include "day.h"
#include "file-dialog.h"
#include "rowcut-error.h"

struct _RcAccountsWindow
{
  GtkWindow parent_instance;

  GtkBox      *periods_box;
  GtkEditable *from_entry, *to_entry;
  GtkLabel    *told_label;
  GtkWidget   *save_button;
  RcWindow    *window; /* borrowed: it outlives its own dialog */
};

G_DEFINE_FINAL_TYPE (RcAccountsWindow, rc_accounts_window, GTK_TYPE_WINDOW)

/* --- the days --- */

/* NULL: any. */
static const char *
get_day (GtkEditable *entry)
{
  const char *text = gtk_editable_get_text (entry);

  return *text != '\0' ? text : NULL;
}

static gboolean
check_days (RcAccountsWindow *self, GError **error)
{
  const char *from = get_day (self->from_entry), *to = get_day (self->to_entry);
  const char *wrong = from != NULL && !rc_day_is_valid (from) ? from : to != NULL && !rc_day_is_valid (to) ? to : NULL;

  if (wrong != NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is not a day; write it as 2026-03-31"), wrong);
  else if (from != NULL && to != NULL && g_strcmp0 (from, to) > 0)
    g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("The first day, %s, is after the last, %s"), from, to);
  else
    return TRUE;
  return FALSE;
}

static GPtrArray *
find_accounts (RcAccountsWindow *self, GError **error)
{
  if (!check_days (self, error))
    return NULL;
  return rc_store_find_accounts (rc_window_get_store (self->window), get_day (self->from_entry),
                                 get_day (self->to_entry), error);
}

static void
tell_found (RcAccountsWindow *self, const GPtrArray *accounts)
{
  guint n_sales = 0;

  for (guint i = 0; i < accounts->len; i++)
    n_sales += ((const RcAccount *)g_ptr_array_index (accounts, i))->sale != NULL;
  g_autofree char *sales
      = g_strdup_printf (ngettext ("%u quotation accepted", "%u quotations accepted", n_sales), n_sales);
  guint            n_orders = accounts->len - n_sales;
  g_autofree char *orders = g_strdup_printf (ngettext ("%u order made", "%u orders made", n_orders), n_orders);
  g_autofree char *text = accounts->len == 0 ? g_strdup (_ ("Nothing was accepted or ordered in these days."))
                                             : g_strdup_printf ("%s, %s", sales, orders);

  gtk_label_set_text (self->told_label, text);
}

static void
show_found (RcAccountsWindow *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) accounts = find_accounts (self, &error);

  gtk_widget_set_sensitive (self->save_button, accounts != NULL && accounts->len > 0);
  if (accounts != NULL)
    tell_found (self, accounts);
  else
    gtk_label_set_text (self->told_label, error->message);
}

static void
set_days (RcAccountsWindow *self, const GDate *from, const GDate *to)
{
  char text[2][11] = { "", "" };

  if (from != NULL)
    g_date_strftime (text[0], sizeof text[0], "%Y-%m-%d", from);
  if (to != NULL)
    g_date_strftime (text[1], sizeof text[1], "%Y-%m-%d", to);
  gtk_editable_set_text (self->from_entry, text[0]);
  gtk_editable_set_text (self->to_entry, text[1]);
}

/* --- usual periods --- */

typedef enum
{
  LAST_MONTH,
  THIS_MONTH,
  LAST_YEAR,
  THIS_YEAR,
  ALL,
  N_PERIODS
} Period;

static void
choose (RcAccountsWindow *self, Period period)
{
  g_autofree char *today = rc_clock_dup_today ();
  GDate            from, to;

  g_date_clear (&from, 1);
  g_date_set_parse (&from, today);
  if (period == LAST_YEAR || period == THIS_YEAR)
    g_date_set_month (&from, G_DATE_JANUARY);
  g_date_set_day (&from, 1);
  if (period == LAST_MONTH)
    g_date_subtract_months (&from, 1);
  if (period == LAST_YEAR)
    g_date_subtract_years (&from, 1);
  to = from;
  g_date_add_months (&to, period == LAST_YEAR || period == THIS_YEAR ? 12 : 1);
  g_date_subtract_days (&to, 1);
  set_days (self, period == ALL ? NULL : &from, period == ALL ? NULL : &to);
}

static void
on_period (GtkButton *button, RcAccountsWindow *self)
{
  choose (self, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "rowcut-period")));
}

static void
add_periods (RcAccountsWindow *self)
{
  static const char *const LABELS[N_PERIODS]
      = { N_ ("Last month"), N_ ("This month"), N_ ("Last year"), N_ ("This year"), N_ ("Everything") };

  for (guint i = 0; i < N_PERIODS; i++)
    {
      GtkWidget *button = gtk_button_new_with_label (_ (LABELS[i]));

      g_object_set_data (G_OBJECT (button), "rowcut-period", GUINT_TO_POINTER (i));
      g_signal_connect (button, "clicked", G_CALLBACK (on_period), self);
      gtk_box_append (self->periods_box, button);
    }
}

/* --- writing --- */

gboolean
rc_accounts_window_write (RcAccountsWindow *self, const char *path, GError **error)
{
  g_autoptr (GPtrArray) accounts = find_accounts (self, error);
  g_autofree char *csv = accounts != NULL ? rc_accounts_csv_format (accounts) : NULL;

  return csv != NULL && g_file_set_contents (path, csv, -1, error);
}

static void
write_file (gpointer window, GFile *file)
{
  RcAccountsWindow *self = window;
  g_autofree char  *path = g_file_get_path (file), *text = NULL;
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    return;
  if (!rc_accounts_window_write (self, path, &error))
    {
      gtk_label_set_text (self->told_label, error->message);
      return;
    }
  text = g_strdup_printf (_ ("Written to %s"), path);
  rc_window_tell (self->window, text);
  gtk_window_destroy (GTK_WINDOW (self));
}

static char *
dup_file_name (RcAccountsWindow *self)
{
  const char *from = get_day (self->from_entry), *to = get_day (self->to_entry);

  return g_strdup_printf ("%s%s%s%s%s.csv", _ ("accounts"), from != NULL ? "-" : "", from != NULL ? from : "",
                          to != NULL ? "-" : "", to != NULL ? to : "");
}

static void
on_save (RcAccountsWindow *self)
{
  g_autofree char   *name = dup_file_name (self);
  const RcFileDialog dialog = { .title = _ ("Write the accounts"), .saves = TRUE, .name = name };

  rc_file_dialog_open (self, &dialog, write_file);
}

const char *
rc_accounts_window_get_told (RcAccountsWindow *self)
{
  return gtk_label_get_text (self->told_label);
}

/* --- made --- */

static void
rc_accounts_window_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_ACCOUNTS_WINDOW);
  G_OBJECT_CLASS (rc_accounts_window_parent_class)->dispose (object);
}

static void
rc_accounts_window_class_init (RcAccountsWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_accounts_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/accounts-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcAccountsWindow, periods_box);
  gtk_widget_class_bind_template_child (widget_class, RcAccountsWindow, from_entry);
  gtk_widget_class_bind_template_child (widget_class, RcAccountsWindow, to_entry);
  gtk_widget_class_bind_template_child (widget_class, RcAccountsWindow, told_label);
  gtk_widget_class_bind_template_child (widget_class, RcAccountsWindow, save_button);
  gtk_widget_class_bind_template_callback (widget_class, on_save);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
rc_accounts_window_init (RcAccountsWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_periods (self);
}

GtkWidget *
rc_accounts_window_new (RcWindow *parent)
{
  RcAccountsWindow *self = g_object_new (RC_TYPE_ACCOUNTS_WINDOW, "transient-for", parent, NULL);

  self->window = parent;
  choose (self, LAST_MONTH);
  g_signal_connect_swapped (self->from_entry, "changed", G_CALLBACK (show_found), self);
  g_signal_connect_swapped (self->to_entry, "changed", G_CALLBACK (show_found), self);
  show_found (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->from_entry));
  return GTK_WIDGET (self);
}
