#include "glance-window.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "day.h"
#include "stock-line.h"
#include "stock-ribbon.h"
#include "usual-units.h"

#define MOST_ROLLS 30
#define USUAL_DAYS 30 /* of a quotation that does not say how long it holds */
#define TARGET_KEY "rowcut-target"
#define SHORT_PARTS                                                                                                    \
  4 /* a roll with less than a quarter of the longest left is to be used up. Common practice, no source */

struct _RcGlanceWindow
{
  GtkWindow parent_instance;

  RcWindow   *window; /* the parent; borrowed */
  RcDocument *followed;
  GtkBox     *job_box;
  GtkLabel   *note_label, *quotes_label, *orders_label, *rolls_label;
  GtkListBox *quotes, *orders, *rolls;
};

G_DEFINE_FINAL_TYPE (RcGlanceWindow, rc_glance_window, GTK_TYPE_WINDOW)

static void
tell (RcGlanceWindow *self, const char *text)
{
  gtk_label_set_text (self->note_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note_label), text != NULL);
}

/* --- rows and bars --- */

static GtkWidget *
new_label (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_tooltip_text (label, text);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
new_bar (double part, const char *said)
{
  GtkWidget *bar = gtk_level_bar_new ();

  gtk_level_bar_set_value (GTK_LEVEL_BAR (bar), CLAMP (part, 0, 1));
  gtk_widget_add_css_class (bar, "steps");
  gtk_accessible_update_property (GTK_ACCESSIBLE (bar), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);
  return bar;
}

/* A row of two lines with a picture (nullable, floating) between them, and another (likewise) before them. `target` is
 * the action it does: "job:J-1" or "win.orders". */
static void
add_row (GtkListBox *list, const char *title, const char *detail, GtkWidget *before, GtkWidget *picture,
         const char *target)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8), *row = gtk_list_box_row_new ();
  GtkWidget *lines = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  gtk_widget_add_css_class (box, "glance-row");
  gtk_widget_set_hexpand (lines, TRUE);
  gtk_box_append (GTK_BOX (lines), new_label (title, NULL));
  if (picture != NULL)
    gtk_box_append (GTK_BOX (lines), picture);
  gtk_box_append (GTK_BOX (lines), new_label (detail, "detail"));
  if (before != NULL)
    gtk_box_append (GTK_BOX (box), before);
  gtk_box_append (GTK_BOX (box), lines);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, detail, -1);
  g_object_set_data_full (G_OBJECT (row), TARGET_KEY, g_strdup (target), g_free);
  gtk_list_box_append (list, row);
}

/* (floating) */
static GtkWidget *
new_floor (RcGlanceWindow *self, const char *job)
{
  GtkWidget *picture = rc_job_picture_new (rc_job_list_get_pictures (rc_window_get_job_list (self->window)), job);

  gtk_widget_set_valign (picture, GTK_ALIGN_CENTER);
  return picture;
}

static guint
count_rows (GtkListBox *list)
{
  guint n = 0;

  while (gtk_list_box_get_row_at_index (list, (int)n) != NULL)
    n++;
  return n;
}

static void
clear (GtkListBox *list)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (list, 0)) != NULL)
    gtk_list_box_remove (list, GTK_WIDGET (row));
}

static void
set_head (GtkLabel *label, const char *text, guint n)
{
  g_autofree char *head = g_strdup_printf (_ ("%s: %u"), text, n);

  gtk_label_set_text (label, head);
}

/* --- quotations --- */

/* The bar fills as the days of its validity go by. */
static void
add_quote (RcGlanceWindow *self, const RcIssuedQuote *quote, const char *today)
{
  int              age = 0, holds = quote->valid_days > 0 ? quote->valid_days : USUAL_DAYS;
  g_autofree char *total = rc_money_format (quote->total, &quote->currency);
  g_autofree char *title = g_strdup_printf ("%s %s", quote->number, quote->customer ? quote->customer : "");
  rc_day_count (quote->date, today, &age);
  g_autofree char *days
      = age > holds ? g_strdup_printf (ngettext ("%d day past its validity", "%d days past its validity", age - holds),
                                       age - holds)
                    : g_strdup_printf (ngettext ("%d day left", "%d days left", holds - age), holds - age);
  g_autofree char *detail = g_strdup_printf ("%s, %s", total, days);
  g_autofree char *target = g_strconcat ("job:", quote->job_id, NULL);

  add_row (self->quotes, title, detail, new_floor (self, quote->job_id), new_bar (age / (double)holds, days), target);
}

static void
show_quotes (RcGlanceWindow *self, GError **error)
{
  g_autoptr (GPtrArray) found = rc_store_find_quotes (rc_window_get_store (self->window), NULL, error);
  g_autofree char *today = rc_clock_dup_today ();

  clear (self->quotes);
  for (guint i = 0; found != NULL && i < found->len; i++)
    {
      const RcIssuedQuote *quote = g_ptr_array_index (found, i);

      if (quote->state == RC_QUOTE_OPEN && g_strcmp0 (quote->offer, quote->number) == 0)
        add_quote (self, quote, today);
    }
  set_head (self->quotes_label, _ ("Quotations waiting"), count_rows (self->quotes));
}

/* --- orders --- */

/* Of one job its floor; orders for many have none. (floating, nullable) */
static GtkWidget *
new_floor_of (RcGlanceWindow *self, const RcPurchase *order)
{
  return order->jobs != NULL && strchr (order->jobs, ',') == NULL ? new_floor (self, order->jobs) : NULL;
}

static void
show_orders (RcGlanceWindow *self, GError **error)
{
  RcStore *store = rc_window_get_store (self->window);
  g_autoptr (GPtrArray) jobs = rc_store_find_jobs_in_state (store, NULL, RC_JOB_ACCEPTED, 0, error);
  g_autoptr (GPtrArray) orders = jobs != NULL ? rc_store_find_purchases (store, NULL, error) : NULL;

  clear (self->orders);
  for (guint i = 0; jobs != NULL && i < jobs->len; i++)
    {
      const RcJobSummary *job = g_ptr_array_index (jobs, i);
      g_autofree char    *title
          = g_strdup_printf ("%s %s", job->number ? job->number : job->id, job->title ? job->title : "");
      g_autofree char *target = g_strconcat ("job:", job->id, NULL);

      add_row (self->orders, title, _ ("accepted, nothing ordered yet"), new_floor (self, job->id), NULL, target);
    }
  for (guint i = 0; orders != NULL && i < orders->len; i++)
    {
      const RcPurchase *order = g_ptr_array_index (orders, i);
      g_autofree char  *title = g_strdup_printf ("%s %s", order->number, order->supplier);
      g_autofree char  *detail = g_strdup_printf ("%s%s%s", rc_purchase_state_get_label (order->state),
                                                 order->due ? ", " : "", order->due ? order->due : "");

      if (order->state < RC_PURCHASE_RECEIVED)
        add_row (self->orders, title, detail, new_floor_of (self, order),
                 new_bar ((order->state + 1) / (RC_PURCHASE_RECEIVED + 1.0), detail), "win.orders");
    }
  set_head (self->orders_label, _ ("Orders to place and under way"), count_rows (self->orders));
}

/* --- rolls --- */

static int
compare_rests (gconstpointer a, gconstpointer b)
{
  const RcStockLine *one = *(RcStockLine *const *)a, *other = *(RcStockLine *const *)b;
  RcLength           left = one->roll->length - one->kept, right = other->roll->length - other->kept;

  if (one->roll->remnant != other->roll->remnant)
    return one->roll->remnant ? -1 : 1;
  return (left > right) - (left < right);
}

/* Remnants, then rolls of which little is left that nobody has been promised. */
static void
show_rolls (RcGlanceWindow *self, const RcJob *job, GError **error)
{
  RcStore *store = rc_window_get_store (self->window);
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (store, error);
  g_autoptr (GPtrArray) lines = book != NULL ? rc_stock_lines_load (store, book, job, error) : NULL;
  RcLength longest = 1;

  clear (self->rolls);
  for (guint i = 0; lines != NULL && i < lines->len; i++)
    longest = MAX (longest, ((const RcStockLine *)g_ptr_array_index (lines, i))->roll->length);
  if (lines != NULL)
    g_ptr_array_sort (lines, compare_rests);
  for (guint i = 0; lines != NULL && i < lines->len && count_rows (self->rolls) < MOST_ROLLS; i++)
    {
      const RcStockLine *line = g_ptr_array_index (lines, i);
      RcLength           rest = line->roll->length - line->kept;

      if (rest <= 0 || (!line->roll->remnant && rest > longest / SHORT_PARTS))
        continue;
      GtkWidget       *ribbon = rc_stock_ribbon_new (FALSE);
      g_autofree char *title = g_strdup_printf ("%s %s", line->roll->id, line->goods_name);
      g_autofree char *width = rc_length_format (line->width, rc_usual_units_get_style (job));
      g_autofree char *left = rc_length_format (rest, rc_usual_units_get_style (job));
      const char      *place = line->roll->place;
      g_autofree char *detail = place && *place ? g_strdup_printf (_ ("%s × %s free, %s"), width, left, place)
                                                : g_strdup_printf (_ ("%s × %s free"), width, left);
      rc_stock_ribbon_show (RC_STOCK_RIBBON (ribbon), line, NULL, longest, rc_usual_units_get_style (job));
      add_row (self->rolls, title, detail, NULL, ribbon, "win.rolls");
    }
  set_head (self->rolls_label, _ ("Rolls to use up"), count_rows (self->rolls));
}

/* --- the open job --- */

static void
add_figure (RcGlanceWindow *self, const char *name, const char *figure, double part)
{
  GtkWidget       *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  g_autofree char *said = g_strdup_printf ("%s: %s", name, figure);

  gtk_box_append (GTK_BOX (box), new_label (name, "figure-name"));
  gtk_box_append (GTK_BOX (box), new_label (figure, "figure"));
  gtk_box_append (GTK_BOX (box), new_bar (part, said));
  gtk_box_append (self->job_box, box);
}

/* Seams: how much of what the most seamed option has. */
static double
compute_seam_part (const RcPlan *plan, const RcFigures *figures)
{
  RcLength most = 0;

  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area = g_ptr_array_index (plan->areas, i);
      RcLength          longest = 0;

      for (guint k = 0; k < area->options->len; k++)
        {
          const RcOption *option = g_ptr_array_index (area->options, k);
          longest = MAX (longest, option->side_seam + option->cross_seam);
        }
      most += longest;
    }
  return most > 0 ? (double)(figures->side_seam + figures->cross_seam) / (double)most : 0;
}

static void
show_job (RcGlanceWindow *self)
{
  RcDocument      *document = rc_window_get_document (self->window);
  const RcFigures *figures = document != NULL ? rc_document_get_figures (document) : NULL;
  GtkWidget       *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->job_box))) != NULL)
    gtk_box_remove (self->job_box, child);
  gtk_widget_set_visible (GTK_WIDGET (self->job_box), figures != NULL);
  if (figures == NULL)
    return;
  const RcOutcome     *outcome = rc_document_get_outcome (document);
  const RcLengthStyle *style = rc_usual_units_get_style (outcome->job);
  g_autofree char     *waste = rc_figures_format (figures, RC_FIGURE_WASTE, style);
  g_autofree char     *seams = rc_figures_format (figures, RC_FIGURE_SEAMS, style);
  gtk_box_append (self->job_box,
                  new_label (*outcome->job->title ? outcome->job->title : _ ("Job without a title"), "form-title"));
  add_figure (self, _ ("Waste"), waste, figures->waste_ppm / 1e6);
  if (outcome->quote != NULL && outcome->quote->net > 0)
    {
      double           part = (double)outcome->quote->margin / (double)outcome->quote->net;
      g_autofree char *money = rc_money_format (outcome->quote->margin, &outcome->quote->currency);
      g_autofree char *margin = g_strdup_printf (_ ("%s, %.0f %%"), money, 100 * part);
      add_figure (self, _ ("Margin"), margin, part);
    }
  add_figure (self, _ ("Seams"), seams, compute_seam_part (outcome->plan, figures));
}

/* --- all of it --- */

static void
load (RcGlanceWindow *self)
{
  RcDocument  *document = rc_window_get_document (self->window);
  const RcJob *job = document != NULL ? rc_document_get_job (document) : NULL;
  g_autoptr (GError) quotes = NULL, orders = NULL, rolls = NULL;

  if (self->followed != document)
    {
      if (self->followed != NULL)
        g_signal_handlers_disconnect_by_data (self->followed, self);
      g_set_object (&self->followed, document);
      if (document != NULL)
        g_signal_connect_swapped (document, "planned", G_CALLBACK (show_job), self);
    }
  show_quotes (self, &quotes);
  show_orders (self, &orders);
  show_rolls (self, job, &rolls);
  show_job (self);
  tell (self, quotes != NULL   ? quotes->message
              : orders != NULL ? orders->message
              : rolls != NULL  ? rolls->message
                               : NULL);
}

static void
on_row (RcGlanceWindow *self, GtkListBoxRow *row)
{
  const char *target = g_object_get_data (G_OBJECT (row), TARGET_KEY);
  g_autoptr (GError) error = NULL;

  if (!g_str_has_prefix (target, "job:"))
    gtk_widget_activate_action (GTK_WIDGET (self->window), target, NULL);
  else if (!rc_window_open_job (self->window, target + strlen ("job:"), &error))
    tell (self, error->message);
  else
    gtk_window_present (GTK_WINDOW (self->window));
}

guint
rc_glance_window_get_n (RcGlanceWindow *self, RcGlance list)
{
  GtkListBox *lists[RC_N_GLANCES] = { self->quotes, self->orders, self->rolls };

  return count_rows (lists[list]);
}

GtkWidget *
rc_glance_window_new (RcWindow *parent)
{
  RcGlanceWindow *self = g_object_new (RC_TYPE_GLANCE_WINDOW, "transient-for", parent, NULL);

  self->window = parent;
  g_signal_connect_object (parent, "store-changed", G_CALLBACK (load), self, G_CONNECT_SWAPPED);
  load (self);
  return GTK_WIDGET (self);
}

static void
rc_glance_window_dispose (GObject *object)
{
  RcGlanceWindow *self = RC_GLANCE_WINDOW (object);

  if (self->followed != NULL)
    g_signal_handlers_disconnect_by_data (self->followed, self);
  g_clear_object (&self->followed);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_GLANCE_WINDOW);
  G_OBJECT_CLASS (rc_glance_window_parent_class)->dispose (object);
}

static void
rc_glance_window_class_init (RcGlanceWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_glance_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/glance-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcGlanceWindow, job_box);
  gtk_widget_class_bind_template_child (widget_class, RcGlanceWindow, note_label);
  gtk_widget_class_bind_template_child (widget_class, RcGlanceWindow, quotes_label);
  gtk_widget_class_bind_template_child (widget_class, RcGlanceWindow, orders_label);
  gtk_widget_class_bind_template_child (widget_class, RcGlanceWindow, rolls_label);
  gtk_widget_class_bind_template_child (widget_class, RcGlanceWindow, quotes);
  gtk_widget_class_bind_template_child (widget_class, RcGlanceWindow, orders);
  gtk_widget_class_bind_template_child (widget_class, RcGlanceWindow, rolls);
  gtk_widget_class_bind_template_callback (widget_class, on_row);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
rc_glance_window_init (RcGlanceWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
