#include "roll-window.h"

#include <glib/gi18n-lib.h>

#include "document-things.h"
#include "job-edit.h"
#include "roll-columns.h"
#include "roll-form.h"
#include "roll-label.h"
#include "row-item.h"
#include "stock-ribbon.h"
#include "usual-units.h"

struct _RcRollWindow
{
  GtkWindow parent_instance;

  RcWindow   *window;  /* the parent; borrowed */
  GPtrArray  *lines;   /* of RcStockLine: all rolls; NULL when they cannot be read */
  RcLength    longest; /* of them */
  GListModel *shown;   /* those with the words; owned by the selection */

  GtkSearchEntry     *search;
  GtkColumnView      *view, *move_view;
  GtkSingleSelection *selection;
  GtkNoSelection     *moves;
  GtkLabel           *note_label, *count_label, *roll_label;
  GtkWidget          *form_box, *detail_box;
  GtkBox             *ribbon_box;
  RcStockRibbon      *ribbon;
  RcRollForm         *form;
  RcRollDoing         doing;
};

G_DEFINE_FINAL_TYPE (RcRollWindow, rc_roll_window, GTK_TYPE_WINDOW)

static void
tell (RcRollWindow *self, const char *text)
{
  gtk_label_set_text (self->note_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note_label), text != NULL);
}

static const RcJob *
get_job (RcRollWindow *self)
{
  RcDocument *document = rc_window_get_document (self->window);

  return document != NULL ? rc_document_get_job (document) : NULL;
}

static const RcLengthStyle *
get_style (RcRollWindow *self)
{
  return rc_usual_units_get_style (get_job (self));
}

const RcStockLine *
rc_roll_window_get_chosen (RcRollWindow *self)
{
  return rc_row_item_get_chosen (self->selection);
}

static void
on_ribbon_setup (GtkSignalListItemFactory *factory, GtkListItem *cell, RcRollWindow *self)
{
  GtkWidget *ribbon = rc_stock_ribbon_new (FALSE);

  gtk_widget_set_valign (ribbon, GTK_ALIGN_CENTER);
  gtk_list_item_set_child (cell, ribbon);
}

static void
on_ribbon_bind (GtkSignalListItemFactory *factory, GtkListItem *cell, RcRollWindow *self)
{
  rc_stock_ribbon_show (RC_STOCK_RIBBON (gtk_list_item_get_child (cell)),
                        rc_row_item_get (gtk_list_item_get_item (cell)), NULL, self->longest, get_style (self));
}

static void
add_columns (RcRollWindow *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) picture = gtk_column_view_column_new (_ ("Picture"), factory);

  rc_roll_columns_add (self->view, self->move_view, self->window);
  g_signal_connect (factory, "setup", G_CALLBACK (on_ribbon_setup), self);
  g_signal_connect (factory, "bind", G_CALLBACK (on_ribbon_bind), self);
  gtk_column_view_column_set_expand (picture, TRUE);
  gtk_column_view_append_column (self->view, picture);
}

/* --- the chosen roll --- */

static void
show_moves (RcRollWindow *self, const RcStockLine *line)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *found = rc_store_find_moves (rc_window_get_store (self->window), line->roll->id, &error);

  if (found == NULL)
    {
      tell (self, error->message);
      return;
    }
  g_autoptr (GArray) stretches = rc_stock_line_list_stretches (line, found);
  RcLength whole = 0;
  for (guint i = 0; i < stretches->len; i++)
    whole += g_array_index (stretches, RcStretch, i).length;
  rc_stock_ribbon_show (self->ribbon, line, stretches, whole, get_style (self));
  g_autoptr (GListModel) list = rc_row_item_new_list (found, (GDestroyNotify)rc_roll_move_free);
  gtk_no_selection_set_model (self->moves, list);
}

static void
update_actions (RcRollWindow *self)
{
  gboolean has_roll = rc_roll_window_get_chosen (self) != NULL, has_job = get_job (self) != NULL;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "roll.correct", has_roll);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "roll.label", has_roll);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "roll.reserve", has_roll && has_job);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "roll.cut", has_roll && has_job);
}

static void
on_chosen (RcRollWindow *self)
{
  const RcStockLine *line = rc_roll_window_get_chosen (self);

  update_actions (self);
  gtk_widget_set_visible (self->detail_box, line != NULL);
  if (line == NULL)
    return;
  g_autofree char *damage = rc_stock_line_dup_damage (line, get_style (self));
  g_autofree char *text = *damage != '\0'
                              ? g_strdup_printf (_ ("%s, %s, damaged %s"), line->roll->id, line->goods_name, damage)
                              : g_strdup_printf ("%s, %s", line->roll->id, line->goods_name);
  gtk_label_set_text (self->roll_label, text);
  show_moves (self, line);
}

/* --- the list --- */

static void
show_count (RcRollWindow *self, guint n)
{
  g_autofree char *count = g_strdup_printf (ngettext ("%u roll or remnant", "%u rolls and remnants", n), n);

  gtk_label_set_text (self->count_label, n > 0                  ? count
                                         : self->lines->len > 0 ? _ ("No roll has all these words.")
                                                                : _ ("Nothing is in stock yet; Receive takes in the "
                                                                     "first roll."));
}

gboolean
rc_roll_window_choose (RcRollWindow *self, const char *roll_id)
{
  for (guint i = 0; i < g_list_model_get_n_items (self->shown); i++)
    {
      g_autoptr (RcRowItem) item = g_list_model_get_item (self->shown, i);

      if (g_strcmp0 (((const RcStockLine *)rc_row_item_get (item))->roll->id, roll_id) == 0)
        {
          gtk_single_selection_set_selected (self->selection, i);
          return TRUE;
        }
    }
  return FALSE;
}

static void
show_rolls (RcRollWindow *self)
{
  const char        *words = gtk_editable_get_text (GTK_EDITABLE (self->search));
  const RcStockLine *chosen = rc_roll_window_get_chosen (self);
  g_autofree char   *id = chosen != NULL ? g_strdup (chosen->roll->id) : NULL;
  GPtrArray         *found;

  if (self->lines == NULL)
    return;
  found = g_ptr_array_new ();
  for (guint i = 0; i < self->lines->len; i++)
    if (rc_stock_line_has_words (g_ptr_array_index (self->lines, i), words))
      g_ptr_array_add (found, rc_stock_line_copy (g_ptr_array_index (self->lines, i)));
  show_count (self, found->len);
  g_autoptr (GListModel) list = rc_row_item_new_list (found, (GDestroyNotify)rc_stock_line_free);
  self->shown = list;
  gtk_single_selection_set_model (self->selection, list);
  rc_roll_window_choose (self, id);
  on_chosen (self);
}

/* The stock as it is in the store now. */
static void
load (RcRollWindow *self)
{
  RcStore *store = rc_window_get_store (self->window);
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (store, &error);
  GPtrArray *lines = book != NULL ? rc_stock_lines_load (store, book, get_job (self), &error) : NULL;

  if (lines == NULL)
    {
      tell (self, error->message);
      return;
    }
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  self->lines = lines;
  self->longest = 1;
  for (guint i = 0; i < lines->len; i++)
    self->longest = MAX (self->longest, ((const RcStockLine *)g_ptr_array_index (lines, i))->roll->length);
  show_rolls (self);
}

/* --- doing --- */

static void
close_form (RcRollWindow *self)
{
  gtk_widget_set_visible (self->form_box, FALSE);
  tell (self, NULL);
  gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

static void
open_form (RcRollWindow *self, RcRollDoing doing)
{
  RcDocument *document = rc_window_get_document (self->window);
  RcOutcome  *outcome = document != NULL ? rc_document_get_outcome (document) : NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (rc_window_get_store (self->window), &error);
  const RcRollTask task
      = { doing, rc_roll_window_get_chosen (self), get_job (self), outcome != NULL ? outcome->plan : NULL, book };

  tell (self, error != NULL ? error->message : NULL);
  if (book == NULL)
    return;
  self->doing = doing;
  gtk_widget_set_visible (self->form_box, TRUE);
  rc_roll_form_open (self->form, rc_window_get_store (self->window), &task);
}

/* The job that keeps a roll plans with it from now on; the one that is cut has come so far. */
static void
follow (RcRollWindow *self)
{
  RcDocument        *document = rc_window_get_document (self->window);
  const RcStockLine *line = rc_roll_window_get_chosen (self);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) rolls = NULL;

  if (document != NULL && self->doing == RC_ROLL_CUT && !rc_document_reach (document, RC_JOB_CUT, &error))
    tell (self, error->message);
  if (document == NULL || line == NULL || self->doing != RC_ROLL_RESERVE)
    return;
  rolls = rc_store_load_rolls_for_job (rc_window_get_store (self->window), get_job (self)->id, &error);
  if (rolls != NULL)
    {
      g_autoptr (RcJob) job = rc_document_dup_job (document);

      rc_job_edit_follow_stock (job, rolls, line->roll->id);
      rc_document_commit (document, g_steal_pointer (&job), _ ("Rolls for the job"), NULL, &error);
    }
  if (error != NULL)
    tell (self, error->message);
}

static void
on_done (RcRollWindow *self, const char *told)
{
  g_autofree char *text = g_strdup (told);

  close_form (self);
  tell (self, text);
  follow (self);
  rc_window_note_change (self->window);
}

static void
correct_chosen (RcRollWindow *self)
{
  open_form (self, RC_ROLL_CORRECT);
}

static void
act (GtkWidget *widget, const char *name, GVariant *parameter)
{
  static const char *const NAMES[] = { [RC_ROLL_RECEIVE] = "roll.receive",
                                       [RC_ROLL_CORRECT] = "roll.correct",
                                       [RC_ROLL_RESERVE] = "roll.reserve",
                                       [RC_ROLL_CUT] = "roll.cut" };

  for (RcRollDoing doing = 0; doing < G_N_ELEMENTS (NAMES); doing++)
    if (g_str_equal (name, NAMES[doing]))
      open_form (RC_ROLL_WINDOW (widget), doing);
}

/* The label of the chosen roll as it lies there, to be printed and tied to it: above all a remnant's. */
static void
show_label (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcRollWindow      *self = RC_ROLL_WINDOW (widget);
  const RcStockLine *line = rc_roll_window_get_chosen (self);
  g_autoptr (GError) error = NULL;
  GtkWidget *paper;

  if (line == NULL)
    return;
  paper = rc_roll_label_new (GTK_WINDOW (self), rc_window_get_store (self->window), line->roll,
                             rc_usual_units_get_style (get_job (self)), rc_usual_paper_find (), &error);
  tell (self, error != NULL ? error->message : NULL);
  if (paper != NULL)
    gtk_window_present (GTK_WINDOW (paper));
}

static void
find (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_widget_grab_focus (GTK_WIDGET (RC_ROLL_WINDOW (widget)->search));
}

guint
rc_roll_window_get_n_rolls (RcRollWindow *self)
{
  return self->shown != NULL ? g_list_model_get_n_items (self->shown) : 0;
}

const char *
rc_roll_window_get_told (RcRollWindow *self)
{
  return gtk_label_get_text (self->note_label);
}

GtkWidget *
rc_roll_window_new (RcWindow *parent)
{
  RcRollWindow *self = g_object_new (RC_TYPE_ROLL_WINDOW, "transient-for", parent, NULL);

  self->window = parent;
  add_columns (self);
  g_signal_connect_object (parent, "store-changed", G_CALLBACK (load), self, G_CONNECT_SWAPPED);
  load (self);
  return GTK_WIDGET (self);
}

static void
rc_roll_window_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_ROLL_WINDOW);
  G_OBJECT_CLASS (rc_roll_window_parent_class)->dispose (object);
}

static void
rc_roll_window_finalize (GObject *object)
{
  g_clear_pointer (&RC_ROLL_WINDOW (object)->lines, g_ptr_array_unref);
  G_OBJECT_CLASS (rc_roll_window_parent_class)->finalize (object);
}

static void
add_keys (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "roll.receive", NULL, act);
  gtk_widget_class_install_action (klass, "roll.correct", NULL, act);
  gtk_widget_class_install_action (klass, "roll.reserve", NULL, act);
  gtk_widget_class_install_action (klass, "roll.cut", NULL, act);
  gtk_widget_class_install_action (klass, "roll.label", NULL, show_label);
  gtk_widget_class_install_action (klass, "roll.find", NULL, find);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_n, GDK_CONTROL_MASK, "roll.receive", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_F2, 0, "roll.correct", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_r, GDK_CONTROL_MASK, "roll.reserve", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_t, GDK_CONTROL_MASK, "roll.cut", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_p, GDK_CONTROL_MASK, "roll.label", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_f, GDK_CONTROL_MASK, "roll.find", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
rc_roll_window_class_init (RcRollWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_roll_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_roll_window_finalize;
  g_type_ensure (RC_TYPE_ROLL_FORM);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/roll-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcRollWindow, search);
  gtk_widget_class_bind_template_child (widget_class, RcRollWindow, view);
  gtk_widget_class_bind_template_child (widget_class, RcRollWindow, move_view);
  gtk_widget_class_bind_template_child (widget_class, RcRollWindow, selection);
  gtk_widget_class_bind_template_child (widget_class, RcRollWindow, moves);
  gtk_widget_class_bind_template_child (widget_class, RcRollWindow, note_label);
  gtk_widget_class_bind_template_child (widget_class, RcRollWindow, count_label);
  gtk_widget_class_bind_template_child (widget_class, RcRollWindow, roll_label);
  gtk_widget_class_bind_template_child (widget_class, RcRollWindow, form_box);
  gtk_widget_class_bind_template_child (widget_class, RcRollWindow, detail_box);
  gtk_widget_class_bind_template_child (widget_class, RcRollWindow, ribbon_box);
  gtk_widget_class_bind_template_child (widget_class, RcRollWindow, form);
  gtk_widget_class_bind_template_callback (widget_class, on_chosen);
  gtk_widget_class_bind_template_callback (widget_class, show_rolls);
  gtk_widget_class_bind_template_callback (widget_class, on_done);
  gtk_widget_class_bind_template_callback (widget_class, tell);
  gtk_widget_class_bind_template_callback (widget_class, close_form);
  gtk_widget_class_bind_template_callback (widget_class, correct_chosen);
  add_keys (widget_class);
}

static void
rc_roll_window_init (RcRollWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->ribbon = RC_STOCK_RIBBON (rc_stock_ribbon_new (TRUE));
  gtk_box_append (self->ribbon_box, GTK_WIDGET (self->ribbon));
}
