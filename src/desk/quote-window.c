#include "quote-window.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "document-things.h"
#include "offer-plans.h"
#include "paper-window.h"
#include "quote-issue.h"
#include "quote-view.h"
#include "row-item.h"
#include "usual-units.h"

struct _RcQuoteWindow
{
  GtkWindow parent_instance;

  RcWindow   *window; /* the parent; borrowed */
  GListModel *shown;  /* owned by the selection */

  GtkCheckButton     *job_check;
  GtkColumnView      *view;
  GtkSingleSelection *selection;
  GtkLabel           *note_label, *count_label, *quote_label;
  GtkWidget          *detail_scrolled;
  GtkBox             *detail_box;
  RcQuoteView        *quote_view;
  char               *viewed; /* number of the quotation in the view */
};

G_DEFINE_FINAL_TYPE (RcQuoteWindow, rc_quote_window, GTK_TYPE_WINDOW)

static void
tell (RcQuoteWindow *self, const char *text)
{
  gtk_label_set_text (self->note_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note_label), text != NULL);
}

const RcIssuedQuote *
rc_quote_window_get_chosen (RcQuoteWindow *self)
{
  return rc_row_item_get_chosen (self->selection);
}

/* --- what a cell says --- */

static char *
say_number (gconstpointer value, gpointer data)
{
  const RcIssuedQuote *quote = value;

  return quote->variation ? g_strdup_printf (_ ("%s, variation"), quote->number) : g_strdup (quote->number);
}

static char *
say_date (gconstpointer value, gpointer data)
{
  return g_strdup (((const RcIssuedQuote *)value)->date);
}

static char *
say_customer (gconstpointer value, gpointer data)
{
  const RcIssuedQuote *quote = value;

  return g_strdup_printf ("%s%s%s", quote->customer ? quote->customer : "", quote->customer && quote->title ? ", " : "",
                          quote->title ? quote->title : "");
}

static char *
say_option (gconstpointer value, gpointer data)
{
  const char *option = ((const RcIssuedQuote *)value)->option;

  return g_strdup (option != NULL ? option : _ ("the job as it stood"));
}

static char *
say_state (gconstpointer value, gpointer data)
{
  const RcIssuedQuote *quote = value;

  return g_strdup_printf ("%s %s", rc_quote_state_get_label (quote->state), quote->marked ? quote->marked : "");
}

static char *
say_total (gconstpointer value, gpointer data)
{
  const RcIssuedQuote *quote = value;

  return rc_money_format (quote->total, &quote->currency);
}

static char *
say_margin (gconstpointer value, gpointer data)
{
  const RcIssuedQuote *quote = value;

  return rc_money_format (quote->margin, &quote->currency);
}

static void
add_columns (RcQuoteWindow *self)
{
  const RcColumn columns[] = { { _ ("Number"), say_number, 9, FALSE, FALSE },
                               { _ ("Issued"), say_date, 10, FALSE, FALSE },
                               { _ ("Customer and job"), say_customer, 22, FALSE, TRUE },
                               { _ ("Option"), say_option, 10, FALSE, TRUE },
                               { _ ("State"), say_state, 18, FALSE, FALSE },
                               { _ ("Total"), say_total, 14, TRUE, FALSE },
                               { _ ("Margin"), say_margin, 13, TRUE, FALSE } };

  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    rc_row_item_add_column (self->view, &columns[i], self);
}

/* --- the list --- */

static void
update_actions (RcQuoteWindow *self)
{
  const RcIssuedQuote *quote = rc_quote_window_get_chosen (self);
  RcDocument          *document = rc_window_get_document (self->window);
  gboolean             is_here
      = quote != NULL && document != NULL && g_strcmp0 (quote->job_id, rc_document_get_job (document)->id) == 0;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "quote.issue", document != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "quote.revise", is_here);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "quote.vary", is_here);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "quote.accept", quote != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "quote.decline", quote != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "quote.paper", quote != NULL);
}

/* The frozen figures of the chosen one, each of which opens to what it is made of. */
static void
show_figures (RcQuoteWindow *self)
{
  const RcIssuedQuote *chosen = rc_quote_window_get_chosen (self);
  g_autoptr (GError) error = NULL;
  g_autoptr (RcQuote) quote = NULL;

  gtk_widget_set_visible (self->detail_scrolled, chosen != NULL);
  if (chosen == NULL || g_strcmp0 (self->viewed, chosen->number) == 0)
    return;
  quote = rc_store_load_quote (rc_window_get_store (self->window), chosen->number, &error);
  if (quote == NULL)
    {
      tell (self, error->message);
      return;
    }
  g_free (self->viewed);
  self->viewed = g_strdup (chosen->number);
  g_autofree char *title = g_strdup_printf (_ ("What quotation %s is made of"), chosen->number);
  gtk_label_set_text (self->quote_label, title);
  rc_quote_view_show (self->quote_view, quote, NULL, NULL);
}

static void
on_chosen (RcQuoteWindow *self)
{
  update_actions (self);
  show_figures (self);
}

gboolean
rc_quote_window_choose (RcQuoteWindow *self, const char *number)
{
  for (guint i = 0; i < g_list_model_get_n_items (self->shown); i++)
    {
      g_autoptr (RcRowItem) item = g_list_model_get_item (self->shown, i);

      if (g_strcmp0 (((const RcIssuedQuote *)rc_row_item_get (item))->number, number) == 0)
        {
          gtk_single_selection_set_selected (self->selection, i);
          return TRUE;
        }
    }
  return FALSE;
}

static void
show_count (RcQuoteWindow *self, const GPtrArray *quotes)
{
  guint n_open = 0;

  for (guint i = 0; i < quotes->len; i++)
    n_open += ((const RcIssuedQuote *)g_ptr_array_index (quotes, i))->state == RC_QUOTE_OPEN;
  g_autofree char *count = g_strdup_printf (ngettext ("%u quotation", "%u quotations", quotes->len), quotes->len);
  g_autofree char *open
      = g_strdup_printf (ngettext ("%u waits for an answer", "%u wait for an answer", n_open), n_open);
  g_autofree char *text = quotes->len > 0 ? g_strdup_printf ("%s, %s", count, open)
                                          : g_strdup (_ ("Nothing has been issued yet; Issue freezes the quotation as "
                                                         "it is now."));
  gtk_label_set_text (self->count_label, text);
}

/* Latest first, the chosen one chosen still. */
static void
load (RcQuoteWindow *self)
{
  RcDocument          *document = rc_window_get_document (self->window);
  gboolean             is_of_job = document != NULL && gtk_check_button_get_active (self->job_check);
  const RcIssuedQuote *chosen = rc_quote_window_get_chosen (self);
  g_autofree char     *number = chosen != NULL ? g_strdup (chosen->number) : NULL;
  g_autoptr (GError) error = NULL;
  GPtrArray *found = rc_store_find_quotes (rc_window_get_store (self->window),
                                           is_of_job ? rc_document_get_job (document)->id : NULL, &error);

  if (found == NULL)
    {
      tell (self, error->message);
      return;
    }
  show_count (self, found);
  rc_row_item_turn_round (found);
  g_autoptr (GListModel) list = rc_row_item_new_list (found, (GDestroyNotify)rc_issued_quote_free);
  self->shown = list;
  gtk_single_selection_set_model (self->selection, list);
  rc_quote_window_choose (self, number);
  gtk_widget_set_sensitive (GTK_WIDGET (self->job_check), document != NULL);
  if (document != NULL)
    rc_offer_plans_of (document);
  on_chosen (self);
}

/* --- doing --- */

/* The open job's plan when it is one that may be issued; NULL, told, otherwise. */
static RcOutcome *
get_outcome (RcQuoteWindow *self)
{
  RcDocument *document = rc_window_get_document (self->window);

  if (document == NULL || rc_document_get_outcome (document) == NULL)
    tell (self, _ ("The job has no plan yet: nothing can be issued."));
  else if (!rc_document_is_planned (document))
    tell (self, _ ("The plan of the last change is not made yet; try again in a moment."));
  else if (rc_document_is_stale (document))
    tell (self, _ ("A quotation is issued only for the job as it stands; mend what is wrong first."));
  else
    return rc_document_get_outcome (document);
  return NULL;
}

static void
finish (RcQuoteWindow *self, const char *number, const char *told, RcJobState state, GError *error)
{
  RcDocument *document = rc_window_get_document (self->window);
  g_autoptr (GError) fault = error;
  g_autofree char *text = number != NULL ? g_strdup_printf (told, number) : NULL;

  if (number != NULL && document != NULL && state != RC_JOB_ENQUIRY)
    rc_document_reach (document, state, &fault);
  rc_window_note_change (self->window);
  if (number != NULL)
    rc_quote_window_choose (self, number);
  tell (self, fault != NULL ? fault->message : text);
}

static void
issue (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcQuoteWindow       *self = RC_QUOTE_WINDOW (widget);
  RcOutcome           *outcome = get_outcome (self);
  const RcIssuedQuote *chosen = rc_quote_window_get_chosen (self);
  g_autofree char     *before = chosen != NULL ? g_strdup (chosen->number) : NULL, *number = NULL;
  RcStore             *store = rc_window_get_store (self->window);
  RcPaper              paper = rc_usual_paper_find ();
  GError              *error = NULL;

  if (outcome == NULL)
    return;
  RcOfferPlans *plans = rc_offer_plans_of (rc_window_get_document (self->window));
  if (!rc_offer_plans_are_current (plans))
    {
      tell (self, _ ("The job's options are being planned; try again in a moment."));
      return;
    }
  if (g_str_equal (name, "quote.vary"))
    number = rc_quote_issue_variation (store, outcome, before, paper, &error);
  else
    number = rc_quote_issue (store, rc_offer_plans_get (plans), g_str_equal (name, "quote.revise") ? before : NULL,
                             paper, &error);
  finish (self, number, _ ("Issued as %s; it will not change any more."), RC_JOB_QUOTED, error);
}

static void
mark (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcQuoteWindow       *self = RC_QUOTE_WINDOW (widget);
  const RcIssuedQuote *quote = rc_quote_window_get_chosen (self);
  gboolean             is_accepted = g_str_equal (name, "quote.accept");
  RcDocument          *document = rc_window_get_document (self->window);
  g_autofree char     *today = rc_clock_dup_today (), *number = quote != NULL ? g_strdup (quote->number) : NULL;
  GError              *error = NULL;

  if (quote == NULL)
    return;
  gboolean is_here = document != NULL && g_strcmp0 (quote->job_id, rc_document_get_job (document)->id) == 0;
  gboolean done = rc_store_mark_quote (rc_window_get_store (self->window), number,
                                       is_accepted ? RC_QUOTE_ACCEPTED : RC_QUOTE_DECLINED, today, NULL, &error);
  finish (self, done ? number : NULL, is_accepted ? _ ("Quotation %s is accepted.") : _ ("Quotation %s is declined."),
          is_accepted && is_here ? RC_JOB_ACCEPTED : RC_JOB_ENQUIRY, error);
}

/* As its job is now: where its customer reads mail may have changed. */
static void
add_ways (RcQuoteWindow *self, GtkWidget *paper, const RcIssuedQuote *quote)
{
  RcStore *store = rc_window_get_store (self->window);
  g_autoptr (RcJob) job = rc_store_read_job (store, quote->job_id, NULL);
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (store, NULL);
  g_autofree char *name = g_strdup_printf ("%s.pdf", quote->number);
  g_auto (RcSheetLetter) letter = { 0 };

  if (book == NULL)
    return;
  rc_sheet_letter_init (&letter, &(RcSheetLetterOf){ RC_SHEET_QUOTATION, job != NULL ? job->customer.language : NULL,
                                                     quote->number, job, book, NULL });
  rc_paper_window_add_ways (paper, name, &letter);
}

static void
show_paper (RcQuoteWindow *self)
{
  const RcIssuedQuote *quote = rc_quote_window_get_chosen (self);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) pdf
      = quote != NULL ? rc_store_load_paper (rc_window_get_store (self->window), quote->number, &error) : NULL;

  if (error != NULL)
    tell (self, error->message);
  if (pdf == NULL)
    return;
  g_autofree char *title = g_strdup_printf (_ ("Quotation %s as it was printed"), quote->number);
  GtkWidget       *paper = rc_paper_window_new (GTK_WINDOW (self), title, pdf);
  add_ways (self, paper, quote);
  gtk_window_present (GTK_WINDOW (paper));
}

static void
on_paper (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_paper (RC_QUOTE_WINDOW (widget));
}

RcQuoteView *
rc_quote_window_get_view (RcQuoteWindow *self)
{
  return self->quote_view;
}

guint
rc_quote_window_get_n_quotes (RcQuoteWindow *self)
{
  return self->shown != NULL ? g_list_model_get_n_items (self->shown) : 0;
}

const char *
rc_quote_window_get_told (RcQuoteWindow *self)
{
  return gtk_label_get_text (self->note_label);
}

GtkWidget *
rc_quote_window_new (RcWindow *parent)
{
  RcQuoteWindow *self = g_object_new (RC_TYPE_QUOTE_WINDOW, "transient-for", parent, NULL);

  self->window = parent;
  g_signal_connect_object (parent, "store-changed", G_CALLBACK (load), self, G_CONNECT_SWAPPED);
  load (self);
  return GTK_WIDGET (self);
}

static void
rc_quote_window_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_QUOTE_WINDOW);
  G_OBJECT_CLASS (rc_quote_window_parent_class)->dispose (object);
}

static void
rc_quote_window_finalize (GObject *object)
{
  g_free (RC_QUOTE_WINDOW (object)->viewed);
  G_OBJECT_CLASS (rc_quote_window_parent_class)->finalize (object);
}

static void
add_keys (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "quote.issue", NULL, issue);
  gtk_widget_class_install_action (klass, "quote.revise", NULL, issue);
  gtk_widget_class_install_action (klass, "quote.vary", NULL, issue);
  gtk_widget_class_install_action (klass, "quote.accept", NULL, mark);
  gtk_widget_class_install_action (klass, "quote.decline", NULL, mark);
  gtk_widget_class_install_action (klass, "quote.paper", NULL, on_paper);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_n, GDK_CONTROL_MASK, "quote.issue", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_r, GDK_CONTROL_MASK, "quote.revise", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_d, GDK_CONTROL_MASK, "quote.vary", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Return, GDK_CONTROL_MASK, "quote.accept", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_BackSpace, GDK_CONTROL_MASK, "quote.decline", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
rc_quote_window_class_init (RcQuoteWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_quote_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_quote_window_finalize;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/quote-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcQuoteWindow, job_check);
  gtk_widget_class_bind_template_child (widget_class, RcQuoteWindow, view);
  gtk_widget_class_bind_template_child (widget_class, RcQuoteWindow, selection);
  gtk_widget_class_bind_template_child (widget_class, RcQuoteWindow, note_label);
  gtk_widget_class_bind_template_child (widget_class, RcQuoteWindow, count_label);
  gtk_widget_class_bind_template_child (widget_class, RcQuoteWindow, quote_label);
  gtk_widget_class_bind_template_child (widget_class, RcQuoteWindow, detail_scrolled);
  gtk_widget_class_bind_template_child (widget_class, RcQuoteWindow, detail_box);
  gtk_widget_class_bind_template_callback (widget_class, load);
  gtk_widget_class_bind_template_callback (widget_class, on_chosen);
  gtk_widget_class_bind_template_callback (widget_class, show_paper);
  add_keys (widget_class);
}

static void
rc_quote_window_init (RcQuoteWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->quote_view = RC_QUOTE_VIEW (rc_quote_view_new ());
  gtk_box_append (self->detail_box, GTK_WIDGET (self->quote_view));
  add_columns (self);
}
