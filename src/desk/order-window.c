#include "order-window.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "day.h"
#include "document-things.h"
#include "order-columns.h"
#include "order-maker.h"
#include "order-paper.h"
#include "usual-units.h"
#include "rowcut-error.h"
#include "row-item.h"

struct _RcOrderWindow
{
  GtkWindow parent_instance;

  RcWindow   *window; /* the parent; borrowed */
  GListModel *shown;  /* owned by the selection */

  GtkColumnView      *view, *line_view;
  GtkSingleSelection *selection;
  GtkNoSelection     *lines;
  GtkLabel           *note_label, *waiting_label, *order_label, *notes_label;
  GtkWidget          *form_box, *detail_box, *do_button, *empty_label;
  GtkStack           *form_stack;
  GtkEntry           *reference_entry, *due_entry;
  RcOrderArrival     *arrival;
};

G_DEFINE_FINAL_TYPE (RcOrderWindow, rc_order_window, GTK_TYPE_WINDOW)

static void
tell (RcOrderWindow *self, const char *text)
{
  gtk_label_set_text (self->note_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note_label), text != NULL);
}

static RcStore *
get_store (RcOrderWindow *self)
{
  return rc_window_get_store (self->window);
}

const RcPurchase *
rc_order_window_get_chosen (RcOrderWindow *self)
{
  return rc_row_item_get_chosen (self->selection);
}

/* --- the lists --- */

static void
update_actions (RcOrderWindow *self)
{
  const RcPurchase *order = rc_order_window_get_chosen (self);
  RcPurchaseState   state = order != NULL ? order->state : RC_PURCHASE_CANCELLED;
  gboolean          is_under_way = state < RC_PURCHASE_RECEIVED;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "order.make", rc_window_get_document (self->window) != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "order.send", state == RC_PURCHASE_MADE);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "order.confirm", is_under_way);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "order.receive", is_under_way);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "order.cancel", state < RC_PURCHASE_PARTLY);
}

static void
on_chosen (RcOrderWindow *self)
{
  const RcPurchase *order = rc_order_window_get_chosen (self);
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPurchase) whole
      = order != NULL ? rc_store_load_purchase (get_store (self), order->number, &error) : NULL;

  update_actions (self);
  gtk_widget_set_visible (self->detail_box, whole != NULL);
  if (error != NULL)
    tell (self, error->message);
  if (whole == NULL)
    return;
  g_autoptr (GListModel) list = rc_order_columns_new_lines (whole);
  gtk_no_selection_set_model (self->lines, list);
  g_autofree char *title
      = whole->reference != NULL
            ? g_strdup_printf (_ ("Order %s to %s, their number %s"), whole->number, whole->supplier, whole->reference)
            : g_strdup_printf (_ ("Order %s to %s"), whole->number, whole->supplier);
  gtk_label_set_text (self->order_label, title);
  gtk_label_set_text (self->notes_label, whole->notes != NULL ? whole->notes : "");
}

gboolean
rc_order_window_choose (RcOrderWindow *self, const char *number)
{
  for (guint i = 0; i < g_list_model_get_n_items (self->shown); i++)
    {
      g_autoptr (RcRowItem) item = g_list_model_get_item (self->shown, i);

      if (g_strcmp0 (((const RcPurchase *)rc_row_item_get (item))->number, number) == 0)
        {
          gtk_single_selection_set_selected (self->selection, i);
          return TRUE;
        }
    }
  return FALSE;
}

static void
show_waiting (RcOrderWindow *self)
{
  g_autoptr (GPtrArray) jobs = rc_store_find_jobs_in_state (get_store (self), NULL, RC_JOB_ACCEPTED, 0, NULL);
  guint            n = jobs != NULL ? jobs->len : 0;
  g_autofree char *text
      = n > 0 ? g_strdup_printf (ngettext ("%u accepted job is not ordered", "%u accepted jobs are not ordered", n), n)
              : g_strdup (_ ("Every accepted job is ordered."));

  gtk_label_set_text (self->waiting_label, text);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->waiting_label), text);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "order.make-all", n > 0);
}

/* Latest first, the chosen one chosen still. */
static void
load (RcOrderWindow *self)
{
  const RcPurchase *chosen = rc_order_window_get_chosen (self);
  g_autofree char  *number = chosen != NULL ? g_strdup (chosen->number) : NULL;
  g_autoptr (GError) error = NULL;
  GPtrArray *found = rc_store_find_purchases (get_store (self), NULL, &error);

  if (found == NULL)
    {
      tell (self, error->message);
      return;
    }
  rc_row_item_turn_round (found);
  g_autoptr (GListModel) list = rc_row_item_new_list (found, (GDestroyNotify)rc_purchase_free);
  self->shown = list;
  gtk_single_selection_set_model (self->selection, list);
  rc_order_window_choose (self, number);
  gtk_widget_set_visible (self->empty_label, g_list_model_get_n_items (list) == 0);
  show_waiting (self);
  on_chosen (self);
}

/* --- making orders --- */

/* Says of each job that it is ordered: the open one as an edit, the others in the store. */
static gboolean
mark_ordered (RcOrderWindow *self, const RcOrderMaker *maker, GError **error)
{
  RcDocument      *document = rc_window_get_document (self->window);
  g_autofree char *now = rc_clock_dup_now ();

  for (guint i = 0; i < maker->jobs->len; i++)
    {
      const char *id = g_ptr_array_index (maker->jobs, i);

      if (document != NULL && g_strcmp0 (rc_document_get_job (document)->id, id) == 0)
        {
          if (!rc_document_reach (document, RC_JOB_ORDERED, error))
            return FALSE;
          continue;
        }
      g_autoptr (RcJob) job = rc_store_load_job (get_store (self), id, error);
      if (job == NULL)
        return FALSE;
      if (rc_job_get_state (job) >= RC_JOB_ORDERED)
        continue;
      rc_job_set_state (job, RC_JOB_ORDERED, maker->day);
      if (!rc_store_save_job (get_store (self), job, _ ("State of the job"), now, error))
        return FALSE;
    }
  return TRUE;
}

/* What is to be done now, and what need not be. (transfer full) */
static char *
dup_made (const RcOrderMaker *maker, const GPtrArray *numbers)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < numbers->len; i++)
    g_string_append_printf (text, i == 0 ? _ ("To be sent now: %s") : ", %s",
                            (const char *)g_ptr_array_index (numbers, i));
  for (guint i = 0; numbers->len == 0 && i < maker->known->len; i++)
    if (g_ptr_array_index (maker->known, i) != NULL)
      g_string_append_printf (text, _ ("Nothing is missing beside order %s. "),
                              (const char *)g_ptr_array_index (maker->known, i));
  if (text->len == 0)
    g_string_append (text, _ ("Nothing to order: all is in stock."));
  for (guint i = 0; i < maker->stock->len; i++)
    g_string_append_printf (text, "%s%s", i == 0 ? _ ("\nNot ordered, as it is there: ") : "; ",
                            (const char *)g_ptr_array_index (maker->stock, i));
  return g_string_free (text, FALSE);
}

static void
keep (RcOrderWindow *self, RcOrderMaker *maker)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) numbers = rc_order_maker_keep (maker, &error);

  if (numbers == NULL || !mark_ordered (self, maker, &error))
    {
      tell (self, error->message);
      return;
    }
  rc_window_note_change (self->window);
  g_autofree char *text = dup_made (maker, numbers);
  if (numbers->len > 0)
    rc_order_window_choose (self, g_ptr_array_index (numbers, 0));
  tell (self, text);
}

/* The outcome on the bench when it is this job's and stands. */
static RcOutcome *
get_outcome_of (RcOrderWindow *self, const char *job_id)
{
  RcDocument *document = rc_window_get_document (self->window);

  return document != NULL && g_strcmp0 (rc_document_get_job (document)->id, job_id) == 0
                 && rc_document_is_planned (document) && !rc_document_is_stale (document)
             ? rc_document_get_outcome (document)
             : NULL;
}

static void
make (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcOrderWindow   *self = RC_ORDER_WINDOW (widget);
  RcDocument      *document = rc_window_get_document (self->window);
  g_autofree char *today = rc_clock_dup_today ();
  g_autoptr (GError) error = NULL;
  g_autoptr (RcOrderMaker) maker = rc_order_maker_new (get_store (self), today, &error);
  gboolean done = maker != NULL;

  if (done && g_str_equal (name, "order.make"))
    {
      const char *id = rc_document_get_job (document)->id;
      done = rc_order_maker_add_job (maker, id, get_outcome_of (self, id), &error);
    }
  else if (done)
    {
      g_autoptr (GPtrArray) jobs = rc_store_find_jobs_in_state (get_store (self), NULL, RC_JOB_ACCEPTED, 0, &error);

      done = jobs != NULL;
      for (guint i = 0; done && i < jobs->len; i++)
        {
          const char *id = ((const RcJobSummary *)g_ptr_array_index (jobs, i))->id;
          done = rc_order_maker_add_job (maker, id, get_outcome_of (self, id), &error);
        }
    }
  if (done)
    keep (self, maker);
  else
    tell (self, error->message);
}

/* --- what becomes of an order --- */

static void
finish (RcOrderWindow *self, gboolean done, const char *told, const GError *error)
{
  g_autofree char *text = g_strdup (done ? told : error->message);

  rc_window_note_change (self->window);
  tell (self, text);
}

static void
close_form (RcOrderWindow *self)
{
  gtk_widget_set_visible (self->form_box, FALSE);
  gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

static gboolean
on_form_key (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state, gpointer data)
{
  GtkWidget *box = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller));

  if (keyval != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  close_form (RC_ORDER_WINDOW (gtk_widget_get_root (box)));
  return GDK_EVENT_STOP;
}

static void
change (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcOrderWindow    *self = RC_ORDER_WINDOW (widget);
  const RcPurchase *order = rc_order_window_get_chosen (self);
  g_autofree char  *today = rc_clock_dup_today ();
  gboolean          sends = g_str_equal (name, "order.send");
  g_autoptr (GError) error = NULL;

  if (order == NULL)
    return;
  gboolean done = sends ? rc_store_send_purchase (get_store (self), order->number, today, &error)
                        : rc_store_cancel_purchase (get_store (self), order->number, today, &error);
  finish (self, done, sends ? _ ("Noted as sent today.") : _ ("The order is cancelled."), error);
}

static void
show_paper (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcOrderWindow    *self = RC_ORDER_WINDOW (widget);
  const RcPurchase *order = rc_order_window_get_chosen (self);
  g_autoptr (GError) error = NULL;
  GtkWidget *paper = order != NULL ? rc_order_paper_new (GTK_WINDOW (self), get_store (self), order->number,
                                                         rc_usual_paper_find (), &error)
                                   : NULL;

  tell (self, error != NULL ? error->message : NULL);
  if (paper != NULL)
    gtk_window_present (GTK_WINDOW (paper));
}

static void
open_form (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcOrderWindow    *self = RC_ORDER_WINDOW (widget);
  const RcPurchase *order = rc_order_window_get_chosen (self);
  RcDocument       *document = rc_window_get_document (self->window);
  gboolean          receives = g_str_equal (name, "order.receive");
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPurchase) whole
      = order != NULL ? rc_store_load_purchase (get_store (self), order->number, &error) : NULL;
  g_autoptr (RcPriceBook) book = whole != NULL ? rc_store_load_price_book (get_store (self), &error) : NULL;

  tell (self, error != NULL ? error->message : NULL);
  if (book == NULL)
    return;
  gtk_stack_set_visible_child_name (self->form_stack, receives ? "receive" : "confirm");
  gtk_widget_set_visible (self->form_box, TRUE);
  gtk_window_set_default_widget (GTK_WINDOW (self), self->do_button);
  gtk_editable_set_text (GTK_EDITABLE (self->reference_entry), whole->reference != NULL ? whole->reference : "");
  gtk_editable_set_text (GTK_EDITABLE (self->due_entry), whole->due != NULL ? whole->due : "");
  if (receives)
    rc_order_arrival_open (self->arrival, whole, book, document != NULL ? rc_document_get_job (document) : NULL);
  else
    gtk_widget_grab_focus (GTK_WIDGET (self->reference_entry));
}

static char *
confirm (RcOrderWindow *self, GError **error)
{
  const char      *reference = gtk_editable_get_text (GTK_EDITABLE (self->reference_entry));
  const char      *due = gtk_editable_get_text (GTK_EDITABLE (self->due_entry));
  g_autofree char *today = rc_clock_dup_today ();

  if (*due != '\0' && !rc_day_is_valid (due))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is no day; write it as 2026-04-30"), due);
      return NULL;
    }
  return rc_store_confirm_purchase (get_store (self), rc_order_window_get_chosen (self)->number,
                                    *reference != '\0' ? reference : NULL, *due != '\0' ? due : NULL, today, error)
             ? g_strdup (_ ("Noted as confirmed by the supplier."))
             : NULL;
}

static void
do_form (RcOrderWindow *self)
{
  gboolean receives = g_strcmp0 (gtk_stack_get_visible_child_name (self->form_stack), "receive") == 0;
  g_autoptr (GError) error = NULL;
  g_autofree char *told = NULL;

  if (!gtk_widget_get_visible (self->form_box) || rc_order_window_get_chosen (self) == NULL)
    return;
  told = receives ? rc_order_arrival_do (self->arrival, get_store (self), &error) : confirm (self, &error);
  if (told != NULL)
    close_form (self);
  finish (self, told != NULL, told, error);
}

guint
rc_order_window_get_n_orders (RcOrderWindow *self)
{
  return self->shown != NULL ? g_list_model_get_n_items (self->shown) : 0;
}

const char *
rc_order_window_get_told (RcOrderWindow *self)
{
  return gtk_label_get_text (self->note_label);
}

GtkWidget *
rc_order_window_new (RcWindow *parent)
{
  RcOrderWindow *self = g_object_new (RC_TYPE_ORDER_WINDOW, "transient-for", parent, NULL);

  self->window = parent;
  g_signal_connect_object (parent, "store-changed", G_CALLBACK (load), self, G_CONNECT_SWAPPED);
  load (self);
  return GTK_WIDGET (self);
}

static void
rc_order_window_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_ORDER_WINDOW);
  G_OBJECT_CLASS (rc_order_window_parent_class)->dispose (object);
}

static void
add_keys (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "order.make", NULL, make);
  gtk_widget_class_install_action (klass, "order.make-all", NULL, make);
  gtk_widget_class_install_action (klass, "order.paper", NULL, show_paper);
  gtk_widget_class_install_action (klass, "order.send", NULL, change);
  gtk_widget_class_install_action (klass, "order.cancel", NULL, change);
  gtk_widget_class_install_action (klass, "order.confirm", NULL, open_form);
  gtk_widget_class_install_action (klass, "order.receive", NULL, open_form);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_n, GDK_CONTROL_MASK, "order.make", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_n, GDK_CONTROL_MASK | GDK_SHIFT_MASK, "order.make-all", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_p, GDK_CONTROL_MASK, "order.paper", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_s, GDK_CONTROL_MASK, "order.send", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_f, GDK_CONTROL_MASK, "order.confirm", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_r, GDK_CONTROL_MASK, "order.receive", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
rc_order_window_class_init (RcOrderWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_order_window_dispose;
  g_type_ensure (RC_TYPE_ORDER_ARRIVAL);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/order-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, view);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, line_view);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, selection);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, lines);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, note_label);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, waiting_label);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, order_label);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, notes_label);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, empty_label);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, form_box);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, detail_box);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, do_button);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, form_stack);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, reference_entry);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, due_entry);
  gtk_widget_class_bind_template_child (widget_class, RcOrderWindow, arrival);
  gtk_widget_class_bind_template_callback (widget_class, on_chosen);
  gtk_widget_class_bind_template_callback (widget_class, on_form_key);
  gtk_widget_class_bind_template_callback (widget_class, do_form);
  gtk_widget_class_bind_template_callback (widget_class, close_form);
  add_keys (widget_class);
}

static void
rc_order_window_init (RcOrderWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  rc_order_columns_add (self->view, self->line_view);
}
