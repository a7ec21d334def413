#include "sheet-window.h"

#include <glib/gi18n-lib.h>

#include "document-things.h"
#include "file-dialog.h"
#include "pick.h"
#include "quote-issue.h"
#include "rowcut-error.h"
#include "sheet-mail.h"
#include "sheet-print.h"
#include "usual-units.h"

#define ZOOM_START 1.25 /* pixels per point */
#define ZOOM_STEP  1.2

struct _RcSheetWindow
{
  GtkWindow parent_instance;

  RcDocument  *document;
  RcSheetSet  *set;   /* NULL while there is no plan */
  RcSheet     *sheet; /* the one shown, laid out; of the set */
  GtkDropDown *sheet_drop;
  GtkDropDown *paper_drop;
  GtkDropDown *language_drop;
  GHashTable  *languages; /* chosen here, by reader (dup_reader); NULL: the program's */
  GtkBox      *pages_box;
  GtkLabel    *note_label;
  char        *number; /* of the quotation as issued */
  RcMoney      issued; /* its total */
  double       zoom;
  gboolean     is_showing;
};

G_DEFINE_FINAL_TYPE (RcSheetWindow, rc_sheet_window, GTK_TYPE_WINDOW)

static RcPaper
get_paper (RcSheetWindow *self)
{
  return gtk_drop_down_get_selected (self->paper_drop) == 0 ? RC_PAPER_LETTER : RC_PAPER_A4;
}

/* FALSE when no sheet can be shown. */
static gboolean
get_sheet (RcSheetWindow *self, guint *sheet, RcSheetData *data)
{
  guint at = gtk_drop_down_get_selected (self->sheet_drop);

  if (self->set == NULL || at >= self->set->sheets->len)
    return FALSE;
  *sheet = at;
  gboolean is_quote = rc_sheet_set_get_kind (self->set, at) == RC_SHEET_QUOTATION;
  rc_sheet_set_get_data (self->set, at, get_paper (self), is_quote ? self->number : NULL, data);
  return TRUE;
}

static void
tell (RcSheetWindow *self, const char *text)
{
  gtk_label_set_text (self->note_label, text ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note_label), text != NULL);
}

/* Pages. */

static void
draw_page (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data)
{
  RcSheetWindow *self = user_data;
  guint          page = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (area), "page"));

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  if (self->sheet == NULL || page >= rc_sheet_get_n_pages (self->sheet))
    return;
  cairo_scale (cr, self->zoom, self->zoom);
  rc_sheet_draw (self->sheet, page, cr);
}

static GtkWidget *
new_page (RcSheetWindow *self, guint page)
{
  GtkWidget       *area = gtk_drawing_area_new ();
  g_autofree char *label = g_strdup_printf (_ ("Page %u"), page + 1);

  g_object_set_data (G_OBJECT (area), "page", GUINT_TO_POINTER (page));
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_page, self, NULL);
  gtk_widget_set_halign (area, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (area, "page");
  gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  return area;
}

static void
show_page (RcSheetWindow *self, GtkWidget *area, guint page)
{
  double width_pt = 0, height_pt = 0;

  rc_sheet_get_page_size (self->sheet, page, &width_pt, &height_pt);
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (area), (int)(width_pt * self->zoom));
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (area), (int)(height_pt * self->zoom));
  gtk_widget_queue_draw (area);
}

static void
show_pages (RcSheetWindow *self)
{
  guint      n = self->sheet ? rc_sheet_get_n_pages (self->sheet) : 0, page = 0;
  GtkWidget *area = gtk_widget_get_first_child (GTK_WIDGET (self->pages_box));

  while (area || page < n)
    {
      GtkWidget *next = area ? gtk_widget_get_next_sibling (area) : NULL;
      if (page >= n)
        gtk_box_remove (self->pages_box, area);
      else
        {
          if (area == NULL)
            gtk_box_append (self->pages_box, area = new_page (self, page));
          show_page (self, area, page);
        }
      area = next;
      page++;
    }
}

/* Who reads the chosen sheet: the customer, one of the suppliers, the shop itself; and their language (borrowed; NULL:
 * the program's). (transfer full) */
static char *
dup_reader (RcSheetWindow *self, const char **language)
{
  guint          at = gtk_drop_down_get_selected (self->sheet_drop);
  const RcOrder *order = NULL;

  *language = NULL;
  if (self->set == NULL || at >= self->set->sheets->len)
    return g_strdup ("shop");
  order = rc_sheet_set_get_order (self->set, at);
  if (order == NULL && !rc_sheet_kind_is_customers (rc_sheet_set_get_kind (self->set, at)))
    return g_strdup ("shop");
  *language = order != NULL ? rc_price_book_get_language (self->set->outcome->book, order->supplier)
                            : self->set->outcome->job->customer.language;
  return order != NULL ? g_strdup_printf ("supplier %s", order->supplier) : g_strdup ("customer");
}

/* That chosen here for who reads the chosen sheet, else their own; NULL: the program's. */
static const char *
find_language (RcSheetWindow *self)
{
  const char      *language;
  g_autofree char *reader = dup_reader (self, &language);
  gpointer         chosen;

  return g_hash_table_lookup_extended (self->languages, reader, NULL, &chosen) ? chosen : language;
}

/* The sheets in the language of who reads the chosen one. */
static void
take_language (RcSheetWindow *self)
{
  const char *language = find_language (self);
  gboolean    was_showing = self->is_showing;

  self->is_showing = TRUE;
  rc_pick_show_languages (self->language_drop, language);
  self->is_showing = was_showing;
  if (self->set == NULL || g_strcmp0 (self->set->language, language) == 0)
    return;
  RcSheetSet *set = rc_sheet_set_new (self->set->outcome, self->set->plans, language);
  rc_sheet_set_free (self->set);
  self->set = set;
}

/* Lays the chosen sheet out anew: the sheet, its data, its language or the paper is another. */
static void
lay_out (RcSheetWindow *self)
{
  RcSheetData data;
  guint       sheet = 0;

  g_clear_pointer (&self->sheet, rc_sheet_free);
  take_language (self);
  if (get_sheet (self, &sheet, &data))
    self->sheet = rc_sheet_new (rc_sheet_set_get_kind (self->set, sheet), &data);
  show_pages (self);
}

guint
rc_sheet_window_get_n_pages (RcSheetWindow *self)
{
  guint n = 0;

  for (GtkWidget *page = gtk_widget_get_first_child (GTK_WIDGET (self->pages_box)); page;
       page = gtk_widget_get_next_sibling (page))
    n++;
  return n;
}

/* The sheets there are. */

/* Of all sheets, or nothing. */
static void
warn (RcSheetWindow *self)
{
  const RcOutcome *outcome = self->set ? self->set->outcome : NULL;
  const GError    *fault = rc_document_get_fault (self->document);
  g_autofree char *warning = fault ? g_strdup_printf (_ ("Not as the job stands now: %s"), fault->message) : NULL;

  tell (self, warning ? warning : outcome && outcome->price_fault ? outcome->price_fault->message : NULL);
}

static void
show_set (RcSheetWindow *self)
{
  RcOutcome *outcome = rc_document_get_outcome (self->document);
  guint      was = gtk_drop_down_get_selected (self->sheet_drop);

  g_clear_pointer (&self->sheet, rc_sheet_free);
  g_clear_pointer (&self->set, rc_sheet_set_free);
  /* That the job is quoted now is a new state of it, and not another quotation. */
  if (self->number && (outcome == NULL || outcome->quote == NULL || outcome->quote->total != self->issued))
    g_clear_pointer (&self->number, g_free);
  if (outcome)
    self->set = rc_sheet_set_new (outcome, rc_offer_plans_get (rc_offer_plans_of (self->document)), NULL);

  g_autoptr (GtkStringList) labels = gtk_string_list_new (NULL);
  for (guint i = 0; self->set && i < self->set->sheets->len; i++)
    gtk_string_list_take (labels, rc_sheet_set_dup_label (self->set, i));
  self->is_showing = TRUE;
  gtk_drop_down_set_model (self->sheet_drop, G_LIST_MODEL (labels));
  if (was < g_list_model_get_n_items (G_LIST_MODEL (labels)))
    gtk_drop_down_set_selected (self->sheet_drop, was);
  self->is_showing = FALSE;

  warn (self);
  lay_out (self);
}

static void
on_sheet_selected (RcSheetWindow *self)
{
  RcSheetData data;
  guint       sheet;

  if (self->is_showing)
    return;
  gboolean is_quote = get_sheet (self, &sheet, &data) && rc_sheet_set_get_kind (self->set, sheet) == RC_SHEET_QUOTATION;
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "sheet.issue", is_quote);
  warn (self); /* what was said of another sheet is not of this one */
  lay_out (self);
}

static void
on_language_selected (RcSheetWindow *self)
{
  const char *chosen = rc_pick_get_selected (self->language_drop), *language;

  if (self->is_showing || g_strcmp0 (find_language (self), chosen) == 0)
    return;
  g_hash_table_insert (self->languages, dup_reader (self, &language), g_strdup (chosen));
  lay_out (self);
}

void
rc_sheet_window_show_kind (RcSheetWindow *self, RcSheetKind kind)
{
  int at = self->set ? rc_sheet_set_find (self->set, kind) : -1;

  if (at >= 0)
    gtk_drop_down_set_selected (self->sheet_drop, (guint)at);
  on_sheet_selected (self);
  if (at >= 0)
    return;
  if (kind == RC_SHEET_ALTERNATIVES && self->set && self->set->outcome->quote)
    tell (self, _ ("The job is offered in one way only: add an option to its quotation first."));
  else
    tell (self, _ ("This sheet cannot be made yet: the job has no price, or no plan."));
}

/* Saving, printing, issuing. */

gboolean
rc_sheet_window_write_pdf (RcSheetWindow *self, const char *path, GError **error)
{
  RcSheetData data;
  guint       sheet;

  if (!get_sheet (self, &sheet, &data))
    {
      g_set_error_literal (error, RC_ERROR, RC_ERROR_INFEASIBLE, _ ("There is no plan to put on a sheet yet."));
      return FALSE;
    }
  return rc_sheet_write_pdf (rc_sheet_set_get_kind (self->set, sheet), &data, path, error);
}

static void
save (gpointer window, GFile *file)
{
  RcSheetWindow   *self = window;
  g_autofree char *path = g_file_get_path (file);
  g_autoptr (GError) error = NULL;
  gboolean         done = path && rc_sheet_window_write_pdf (self, path, &error);
  g_autofree char *text = done ? g_strdup_printf (_ ("Saved as %s"), path)
                               : g_strdup (error ? error->message : _ ("Only files on this machine can be written."));

  tell (self, text);
}

static void
action_save (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcSheetWindow *self = RC_SHEET_WINDOW (widget);
  RcSheetData    data;
  guint          sheet;

  if (!get_sheet (self, &sheet, &data))
    return;
  g_autofree char   *file_name = rc_sheet_set_dup_file_name (self->set, sheet);
  const RcFileDialog dialog = { .title = _ ("Save as PDF"), .saves = TRUE, .name = file_name };
  rc_file_dialog_open (self, &dialog, save);
}

static void
action_print (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcSheetWindow *self = RC_SHEET_WINDOW (widget);
  RcSheetData    data;
  guint          sheet;
  g_autoptr (GError) error = NULL;

  if (get_sheet (self, &sheet, &data)
      && !rc_sheet_print (rc_sheet_set_get_kind (self->set, sheet), &data, GTK_WINDOW (self), &error))
    tell (self, error->message);
}

static void
on_mailed (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (RcSheetWindow) self = data;
  g_autoptr (GError) error = NULL;
  RcMailEnd end = RC_MAIL_CANCELLED;

  if (!rc_mail_compose_finish (result, &end, &error))
    tell (self, error->message);
  else
    tell (self, end == RC_MAIL_OPENED ? rc_mail_get_opened_words () : NULL);
}

static void
action_mail (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcSheetWindow *self = RC_SHEET_WINDOW (widget);
  RcSheetData    data;
  guint          sheet;
  g_autoptr (GError) error = NULL;

  if (!get_sheet (self, &sheet, &data))
    return;
  tell (self, NULL);
  if (!rc_sheet_mail_async (self->set, sheet, get_paper (self), data.number, on_mailed, g_object_ref (self), &error))
    {
      g_object_unref (self);
      tell (self, error->message);
    }
}

static void
action_issue (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcSheetWindow *self = RC_SHEET_WINDOW (widget);
  g_autoptr (GError) error = NULL;

  if (self->set == NULL || self->set->outcome->quote == NULL || self->number != NULL)
    return;
  if (!rc_document_is_planned (self->document))
    {
      tell (self, _ ("The plan of the last change is not made yet; try again in a moment."));
      return;
    }
  if (rc_document_is_stale (self->document))
    {
      tell (self, _ ("A quotation is issued only for the job as it stands; mend what is wrong first."));
      return;
    }
  if (!rc_offer_plans_are_current (rc_offer_plans_of (self->document)))
    {
      tell (self, _ ("The job's options are being planned; try again in a moment."));
      return;
    }
  self->number
      = rc_quote_issue (rc_document_get_store (self->document), rc_offer_plans_get (rc_offer_plans_of (self->document)),
                        NULL, get_paper (self), &error);
  g_autofree char *text = self->number
                              ? g_strdup_printf (_ ("Issued as %s; it will not change any more."), self->number)
                              : g_strdup (error->message);
  self->issued = self->set->outcome->quote->total;
  lay_out (self);
  if (self->number && !rc_document_reach (self->document, RC_JOB_QUOTED, &error))
    tell (self, error->message);
  else
    tell (self, text);
}

static void
action_zoom (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcSheetWindow *self = RC_SHEET_WINDOW (widget);
  int            step = g_variant_get_int32 (parameter);

  self->zoom = step == 0 ? ZOOM_START : CLAMP (self->zoom * (step > 0 ? ZOOM_STEP : 1 / ZOOM_STEP), 0.4, 5);
  show_pages (self);
}

static void
rc_sheet_window_dispose (GObject *object)
{
  RcSheetWindow *self = RC_SHEET_WINDOW (object);

  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->sheet, rc_sheet_free);
  g_clear_pointer (&self->set, rc_sheet_set_free);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_SHEET_WINDOW);
  G_OBJECT_CLASS (rc_sheet_window_parent_class)->dispose (object);
}

static void
rc_sheet_window_finalize (GObject *object)
{
  g_free (RC_SHEET_WINDOW (object)->number);
  g_hash_table_unref (RC_SHEET_WINDOW (object)->languages);
  G_OBJECT_CLASS (rc_sheet_window_parent_class)->finalize (object);
}

static void
add_keys (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "sheet.save", NULL, action_save);
  gtk_widget_class_install_action (klass, "sheet.print", NULL, action_print);
  gtk_widget_class_install_action (klass, "sheet.mail", NULL, action_mail);
  gtk_widget_class_install_action (klass, "sheet.issue", NULL, action_issue);
  gtk_widget_class_install_action (klass, "sheet.zoom", "i", action_zoom);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_s, GDK_CONTROL_MASK, "sheet.save", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_p, GDK_CONTROL_MASK, "sheet.print", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_e, GDK_CONTROL_MASK, "sheet.mail", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_plus, GDK_CONTROL_MASK, "sheet.zoom", "i", 1);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_equal, GDK_CONTROL_MASK, "sheet.zoom", "i", 1);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_minus, GDK_CONTROL_MASK, "sheet.zoom", "i", -1);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_0, GDK_CONTROL_MASK, "sheet.zoom", "i", 0);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
rc_sheet_window_class_init (RcSheetWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_sheet_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_sheet_window_finalize;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/sheet-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcSheetWindow, sheet_drop);
  gtk_widget_class_bind_template_child (widget_class, RcSheetWindow, paper_drop);
  gtk_widget_class_bind_template_child (widget_class, RcSheetWindow, language_drop);
  gtk_widget_class_bind_template_child (widget_class, RcSheetWindow, pages_box);
  gtk_widget_class_bind_template_child (widget_class, RcSheetWindow, note_label);
  gtk_widget_class_bind_template_callback (widget_class, on_sheet_selected);
  gtk_widget_class_bind_template_callback (widget_class, lay_out);
  gtk_widget_class_bind_template_callback (widget_class, on_language_selected);
  add_keys (widget_class);
}

static void
rc_sheet_window_init (RcSheetWindow *self)
{
  self->zoom = ZOOM_START;
  self->languages = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}

RcSheetWindow *
rc_sheet_window_new (GtkWindow *parent, RcDocument *document, RcSheetKind kind)
{
  RcSheetWindow *self = g_object_new (RC_TYPE_SHEET_WINDOW, "transient-for", parent, NULL);

  self->document = g_object_ref (document);
  gtk_drop_down_set_selected (self->paper_drop, rc_usual_paper_find () == RC_PAPER_LETTER ? 0 : 1);
  g_signal_connect_swapped (document, "planned", G_CALLBACK (show_set), self);
  g_signal_connect_object (rc_offer_plans_of (document), "changed", G_CALLBACK (show_set), self, G_CONNECT_SWAPPED);
  show_set (self);
  rc_sheet_window_show_kind (self, kind);
  return self;
}
