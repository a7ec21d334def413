#include "window-actions.h"

#include <glib/gi18n-lib.h>

#include "compare-window.h"
#include "document-things.h"
#include "glance-window.h"
#include "job-actions.h"
#include "offer-window.h"
#include "order-window.h"
#include "price-window.h"
#include "quote-window.h"
#include "roll-window.h"
#include "shape-window.h"

#define ZOOM_STEP 1.25

/* Things of the job. */

typedef gboolean (*DocumentEdit) (RcDocument *document, GError **error);

static void
edit (GtkWidget *widget, DocumentEdit change, gboolean then_type)
{
  RcWindow   *self = RC_WINDOW (widget);
  RcDocument *document = rc_window_get_document (self);
  g_autoptr (GError) error = NULL;

  if (document == NULL)
    return;
  if (change (document, &error) && then_type)
    rc_bench_edit_chosen (rc_window_get_bench (self));
  rc_window_tell_error (self, error);
}

static void
new_room (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcWindow   *self = RC_WINDOW (widget);
  RcDocument *document = rc_window_get_document (self);
  g_autoptr (GError) error = NULL;

  if (document == NULL)
    return;
  RcFloorView *floor = rc_bench_get_floor_view (rc_window_get_bench (self));
  if (rc_document_add_room (document, rc_floor_view_get_floor (floor), &error))
    rc_bench_edit_chosen (rc_window_get_bench (self));
  rc_window_tell_error (self, error);
}

static void
on_shape_added (RcWindow *self)
{
  rc_bench_edit_chosen (rc_window_get_bench (self));
}

static void
new_shape (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcWindow   *self = RC_WINDOW (widget);
  RcDocument *document = rc_window_get_document (self);

  if (document == NULL)
    return;
  RcFloorView *floor = rc_bench_get_floor_view (rc_window_get_bench (self));
  GtkWidget   *window = rc_shape_window_new (GTK_WINDOW (self), document, rc_floor_view_get_floor (floor));
  g_signal_connect_object (window, "added", G_CALLBACK (on_shape_added), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (window));
}

static void
new_stair (GtkWidget *widget, const char *name, GVariant *parameter)
{
  edit (widget, rc_document_add_stair, TRUE);
}

static void
new_area (GtkWidget *widget, const char *name, GVariant *parameter)
{
  edit (widget, rc_document_add_area, TRUE);
}

static void
copy_room (GtkWidget *widget, const char *name, GVariant *parameter)
{
  edit (widget, rc_document_duplicate_chosen, TRUE);
}

static void
remove_chosen (GtkWidget *widget, const char *name, GVariant *parameter)
{
  edit (widget, rc_document_remove_chosen, FALSE);
}

/* What was cut or ordered by the measure before is to be looked at again. */
static void
tell_cut_goods (RcWindow *self)
{
  RcDocument *document = rc_window_get_document (self);
  guint       n = document != NULL ? rc_document_get_held (document)->goods->len : 0;

  if (n == 0)
    return;
  g_autofree char *text = g_strdup_printf (
      ngettext (
          "%u piece is cut, or on its way, for this job. Once the rooms are entered, Compare measures (Ctrl+D) "
          "tells what it no longer covers, and the cheapest cure.",
          "%u pieces are cut, or on their way, for this job. Once the rooms are entered, Compare measures (Ctrl+D) "
          "tells what they no longer cover, and the cheapest cure.",
          n),
      n);
  rc_window_tell (self, text);
}

static void
new_measure (GtkWidget *widget, const char *name, GVariant *parameter)
{
  edit (widget, rc_document_add_measure, FALSE);
  tell_cut_goods (RC_WINDOW (widget));
}

static void
step_through (GtkWidget *widget, gboolean (*go) (RcDocument *, char **, GError **), const char *told,
              const char *nothing)
{
  RcWindow   *self = RC_WINDOW (widget);
  RcDocument *document = rc_window_get_document (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *step = NULL;

  if (document == NULL)
    return;
  if (go (document, &step, &error))
    {
      g_autofree char *text = g_strdup_printf (told, step ? step : "");
      rc_window_tell (self, text);
    }
  else
    rc_window_tell (self, error ? error->message : nothing);
}

static void
undo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  step_through (widget, rc_document_undo, _ ("Undone: %s"), _ ("There is nothing to undo."));
}

static void
redo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  step_through (widget, rc_document_redo, _ ("Done again: %s"), _ ("There is nothing to do again."));
}

static void
take_option (GtkWidget *widget, const char *name, GVariant *parameter)
{
  rc_option_row_take (rc_bench_get_option_row (rc_window_get_bench (RC_WINDOW (widget))),
                      (guint)g_variant_get_int32 (parameter));
}

static void
step_piece (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcDocument *document = rc_window_get_document (RC_WINDOW (widget));
  RcOutcome  *outcome = document ? rc_document_get_outcome (document) : NULL;

  if (outcome)
    rc_document_choose (document, rc_choice_step_piece (rc_document_get_choice (document), outcome->plan,
                                                        g_variant_get_int32 (parameter)));
}

static void
pin_piece (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcWindow   *self = RC_WINDOW (widget);
  RcDocument *document = rc_window_get_document (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *told = NULL;

  if (document == NULL)
    return;
  rc_document_pin_chosen_piece (document, g_str_equal (name, "win.pin-piece"), &told, &error);
  rc_window_tell (self, error ? error->message : told);
}

static void
choose_job (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcDocument *document = rc_window_get_document (RC_WINDOW (widget));

  if (document == NULL)
    return;
  rc_document_choose (document, rc_choice_of_thing (RC_THING_JOB, NULL));
  rc_bench_edit_chosen (rc_window_get_bench (RC_WINDOW (widget)));
}

/* Views. */

static void
zoom (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcFloorView *floor = rc_bench_get_floor_view (rc_window_get_bench (RC_WINDOW (widget)));

  if (g_str_equal (name, "win.zoom-fit"))
    rc_floor_view_fit (floor);
  else
    rc_floor_view_zoom (floor, g_str_equal (name, "win.zoom-in") ? ZOOM_STEP : 1 / ZOOM_STEP);
}

static void
focus_part (GtkWidget *widget, const char *name, GVariant *parameter)
{
  static const struct
  {
    const char *name;
    RcBenchPart part;
  } PARTS[] = { { "floor", RC_BENCH_FLOOR },   { "rolls", RC_BENCH_ROLLS }, { "things", RC_BENCH_THINGS },
                { "pieces", RC_BENCH_PIECES }, { "lines", RC_BENCH_LINES }, { "walls", RC_BENCH_WALLS } };
  const char *wanted = g_variant_get_string (parameter, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (PARTS); i++)
    if (g_str_equal (wanted, PARTS[i].name))
      rc_bench_focus (rc_window_get_bench (RC_WINDOW (widget)), PARTS[i].part);
}

static void
show_sheet (GtkWidget *widget, const char *name, GVariant *parameter)
{
  const char *wanted = g_variant_get_string (parameter, NULL);

  for (RcSheetKind kind = 0; kind < RC_N_SHEETS; kind++)
    if (g_str_equal (wanted, rc_sheet_kind_get_name (kind)))
      rc_window_show_sheet (RC_WINDOW (widget), kind);
}

static void
compare_measures (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcDocument *document = rc_window_get_document (RC_WINDOW (widget));
  if (document)
    gtk_window_present (GTK_WINDOW (rc_compare_window_new (GTK_WINDOW (widget), document)));
}

/* The office. */

/* The one that is open already, else a new one. */
static void
show_office_window (RcWindow *self, GType type, GtkWidget *(*make) (RcWindow *))
{
  GListModel *windows = gtk_window_get_toplevels ();
  GtkWindow  *found = NULL;

  for (guint i = 0; found == NULL && i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);
      if (G_OBJECT_TYPE (window) == type && gtk_window_get_transient_for (window) == GTK_WINDOW (self))
        found = window;
    }
  gtk_window_present (found != NULL ? found : GTK_WINDOW (make (self)));
}

static void
show_prices (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_office_window (RC_WINDOW (widget), RC_TYPE_PRICE_WINDOW, rc_price_window_new);
}

static void
show_rolls (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_office_window (RC_WINDOW (widget), RC_TYPE_ROLL_WINDOW, rc_roll_window_new);
}

static void
show_offer (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_office_window (RC_WINDOW (widget), RC_TYPE_OFFER_WINDOW, rc_offer_window_new);
}

static void
show_quotes (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_office_window (RC_WINDOW (widget), RC_TYPE_QUOTE_WINDOW, rc_quote_window_new);
}

static void
show_glance (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_office_window (RC_WINDOW (widget), RC_TYPE_GLANCE_WINDOW, rc_glance_window_new);
}

static void
show_orders (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_office_window (RC_WINDOW (widget), RC_TYPE_ORDER_WINDOW, rc_order_window_new);
}

static void
tell (GtkWidget *widget, const char *name, GVariant *parameter)
{
  rc_window_tell (RC_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

/* What people press before they believe that all is kept. */
static void
say_saved (GtkWidget *widget, const char *name, GVariant *parameter)
{
  rc_window_tell (RC_WINDOW (widget), _ ("Every change is saved as it is made."));
}

static void
edit_chosen (GtkWidget *widget, const char *name, GVariant *parameter)
{
  rc_bench_focus (rc_window_get_bench (RC_WINDOW (widget)), RC_BENCH_NAME);
}

static void
show_whole_screen (GtkWidget *widget, const char *name, GVariant *parameter)
{
  if (gtk_window_is_fullscreen (GTK_WINDOW (widget)))
    gtk_window_unfullscreen (GTK_WINDOW (widget));
  else
    gtk_window_fullscreen (GTK_WINDOW (widget));
}

static void
find_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  rc_window_show_action_list (RC_WINDOW (widget));
}

static void
quit (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_application_quit (G_APPLICATION (gtk_window_get_application (GTK_WINDOW (widget))));
}

static void
show_about (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_show_about_dialog (GTK_WINDOW (widget), "program-name", _ ("Rowcut"), "logo-icon-name", "org.rowcut.Rowcut",
                         "comments", _ ("Plans, cuts and prices fitted carpet."), "license-type", GTK_LICENSE_GPL_3_0,
                         NULL);
}

/* The table of actions with their keys; `needs_job` are grey while none is open. */
static const struct
{
  const char                 *name, *type;
  GtkWidgetActionActivateFunc activate;
  gboolean                    needs_job;
  const char                 *keys[4];
} ACTIONS[] = {
  { "win.show-jobs", NULL, rc_job_action_show_list, FALSE, { "<Control>j", "F9" } },
  { "win.find-job", NULL, rc_job_action_find, FALSE, { "<Control>f" } },
  { "win.new-job", NULL, rc_job_action_new, FALSE, { "<Control>n" } },
  { "win.duplicate-job", NULL, rc_job_action_duplicate, TRUE, { "<Control><Shift>n" } },
  { "win.open-demo", NULL, rc_job_action_open_demo, FALSE, { "<Control><Shift>o" } },
  { "win.open-file", NULL, rc_job_action_open_file, FALSE, { "<Control>o" } },
  { "win.export-file", NULL, rc_job_action_export_file, TRUE, { "<Control>e" } },
  { "win.export-accounts", NULL, rc_job_action_export_accounts, FALSE, { "<Control><Shift>e" } },
  { "win.delete-job", NULL, rc_job_action_delete, TRUE, { "<Control><Shift>BackSpace" } },
  { "win.saved", NULL, say_saved, TRUE, { "<Control>s" } },
  { "win.undo", NULL, undo, TRUE, { "<Control>z" } },
  { "win.redo", NULL, redo, TRUE, { "<Control><Shift>z", "<Control>y" } },
  { "win.new-room", NULL, new_room, TRUE, { "<Control>r" } },
  { "win.new-shape", NULL, new_shape, TRUE, { "F8" } },
  { "win.copy-room", NULL, copy_room, TRUE, { "<Control><Shift>r" } },
  { "win.new-stair", NULL, new_stair, TRUE, { "<Control>t" } },
  { "win.new-area", NULL, new_area, TRUE, { "<Control>l" } },
  { "win.new-measure", NULL, new_measure, TRUE, { "<Control>m" } },
  { "win.remove-chosen", NULL, remove_chosen, TRUE, { "<Control><Shift>Delete" } },
  { "win.compare", NULL, compare_measures, TRUE, { "<Control>d" } },
  { "win.prices", NULL, show_prices, FALSE, { "<Control>b" } },
  { "win.shop", NULL, rc_job_action_show_shop, FALSE, { "<Control><Shift>s" } },
  { "win.rolls", NULL, show_rolls, FALSE, { "<Control>u" } },
  { "win.offer", NULL, show_offer, TRUE, { "<Control><Shift>q" } },
  { "win.quotes", NULL, show_quotes, FALSE, { "<Control><Shift>p" } },
  { "win.glance", NULL, show_glance, FALSE, { "<Control><Shift>j" } },
  { "win.orders", NULL, show_orders, FALSE, { "<Control><Shift>b" } },
  { "win.edit-chosen", NULL, edit_chosen, TRUE, { "F2" } },
  { "win.choose-job", NULL, choose_job, TRUE, { "<Control>i" } },
  { "win.take-option", "i", take_option, TRUE, { NULL } },
  { "win.step-piece", "i", step_piece, TRUE, { NULL } },
  { "win.pin-piece", NULL, pin_piece, TRUE, { "<Control>g" } },
  { "win.unpin-piece", NULL, pin_piece, TRUE, { "<Control><Shift>g" } },
  { "win.zoom-in", NULL, zoom, TRUE, { "<Control>plus", "<Control>equal", "<Control>KP_Add" } },
  { "win.zoom-out", NULL, zoom, TRUE, { "<Control>minus", "<Control>KP_Subtract" } },
  { "win.zoom-fit", NULL, zoom, TRUE, { "<Control>0", "<Control>KP_0" } },
  { "win.focus", "s", focus_part, TRUE, { NULL } },
  { "win.sheet", "s", show_sheet, TRUE, { NULL } },
  { "win.tell", "s", tell, FALSE, { NULL } },
  { "win.whole-screen", NULL, show_whole_screen, FALSE, { "F11" } },
  { "win.find-action", NULL, find_action, FALSE, { "<Control>k" } },
  { "win.about", NULL, show_about, FALSE, { "<Shift>F1" } },
  { "win.quit", NULL, quit, FALSE, { "<Control>q" } },
};

/* Keys of actions with a parameter, by their detailed names. */
static const struct
{
  const char *name;
  const char *keys[3];
} DETAILED_KEYS[] = {
  { "win.step-piece(1)", { "<Alt>Right" } },
  { "win.step-piece(-1)", { "<Alt>Left" } },
  { "win.focus('things')", { "F5" } },
  { "win.focus('floor')", { "F3" } },
  { "win.focus('walls')", { "F4" } },
  { "win.focus('rolls')", { "F6" } },
  { "win.focus('pieces')", { "F7" } },
  { "win.focus('lines')", { "<Shift>F7" } },
  { "win.sheet('quotation')", { "<Control>1", "<Control>p" } },
  { "win.sheet('seam-plan')", { "<Control>2" } },
  { "win.sheet('fitters-sheet')", { "<Control>3" } },
  { "win.sheet('cut-list')", { "<Control>4" } },
  { "win.sheet('order')", { "<Control>5" } },
  { "win.sheet('options')", { "<Control>6" } },
  { "win.sheet('roll-labels')", { "<Control>7" } },
  { "win.sheet('job-summary')", { "<Control>8" } },
  { "win.show-help-overlay", { "<Control>question", "F1" } },
  { "window.close", { "<Control>w" } },
};

void
rc_window_actions_install (GtkWidgetClass *klass)
{
  for (guint i = 0; i < G_N_ELEMENTS (ACTIONS); i++)
    gtk_widget_class_install_action (klass, ACTIONS[i].name, ACTIONS[i].type, ACTIONS[i].activate);
}

static gboolean
is_enabled (RcWindow *self, const char *name, gboolean needs_job)
{
  RcDocument *document = rc_window_get_document (self);
  const char *id = document ? rc_document_get_job (document)->id : NULL;

  if (document == NULL)
    return !needs_job;
  RcThing thing = rc_document_get_choice (document).thing;
  if (g_str_equal (name, "win.undo"))
    return rc_store_can_undo (rc_window_get_store (self), id);
  if (g_str_equal (name, "win.redo"))
    return rc_store_can_redo (rc_window_get_store (self), id);
  if (g_str_equal (name, "win.copy-room"))
    return thing == RC_THING_ROOM;
  if (g_str_equal (name, "win.remove-chosen"))
    return thing != RC_THING_JOB;
  return TRUE;
}

void
rc_window_actions_update (RcWindow *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (ACTIONS); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), ACTIONS[i].name,
                                   is_enabled (self, ACTIONS[i].name, ACTIONS[i].needs_job));
}

gboolean
rc_window_actions_is_enabled (RcWindow *self, const char *detailed_name)
{
  g_autofree char *name = NULL;
  g_autoptr (GVariant) target = NULL;

  if (!g_action_parse_detailed_name (detailed_name, &name, &target, NULL))
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (ACTIONS); i++)
    if (g_str_equal (name, ACTIONS[i].name))
      return is_enabled (self, name, ACTIONS[i].needs_job);
  /* Of the desktop's own, or of a part of the bench. */
  return g_str_has_prefix (name, "win.") || g_str_has_prefix (name, "window.") || rc_window_get_document (self) != NULL;
}

void
rc_window_actions_set_keys (GtkApplication *application)
{
  for (guint i = 0; i < G_N_ELEMENTS (ACTIONS); i++)
    if (ACTIONS[i].keys[0])
      gtk_application_set_accels_for_action (application, ACTIONS[i].name, ACTIONS[i].keys);
  for (guint i = 0; i < G_N_ELEMENTS (DETAILED_KEYS); i++)
    gtk_application_set_accels_for_action (application, DETAILED_KEYS[i].name, DETAILED_KEYS[i].keys);
  for (int option = 1; option <= 9; option++)
    {
      g_autofree char *name = g_strdup_printf ("win.take-option(%d)", option);
      g_autofree char *key = g_strdup_printf ("<Alt>%d", option);
      const char      *keys[] = { key, NULL };
      gtk_application_set_accels_for_action (application, name, keys);
    }
}
