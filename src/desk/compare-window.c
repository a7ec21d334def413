#include "compare-window.h"

#include <glib/gi18n-lib.h>

#include "cure-list.h"
#include "floor-pair.h"
#include "pick.h"

struct _RcCompareWindow
{
  GtkWindow parent_instance;

  RcDocument  *document;
  GtkDropDown *before_drop, *after_drop;
  GtkGrid     *grid;
  GtkLabel    *note_label;
  GtkBox      *floor_box, *cure_box;
  RcFloorPair *floors;
  RcCureList  *cures;
  guint        n_changes;
  gboolean     is_showing;
};

G_DEFINE_FINAL_TYPE (RcCompareWindow, rc_compare_window, GTK_TYPE_WINDOW)

static void
tell (RcCompareWindow *self, const char *text)
{
  gtk_label_set_text (self->note_label, text ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note_label), text != NULL);
}

static RcOutcome *
make_outcome (RcCompareWindow *self, const char *measure)
{
  RcOutcome *now = rc_document_get_outcome (self->document);
  g_autoptr (GError) error = NULL;

  /* The measure on the bench is planned already, and the two must not show different totals. */
  if (now && rc_document_is_planned (self->document) && !rc_document_is_stale (self->document)
      && g_str_equal (now->measure->id, measure))
    return rc_outcome_ref (now);
  RcOutcome *outcome = rc_outcome_new (
      rc_document_get_job (self->document), measure, rc_document_get_held (self->document),
      rc_document_get_price_book (self->document), now ? now->date : NULL, 0, now, NULL, NULL, NULL, &error);
  if (outcome == NULL)
    {
      g_autofree char *text = g_strdup_printf (_ ("Measure %s cannot be planned: %s"), measure, error->message);
      tell (self, text);
    }
  return outcome;
}

static const char *
get_what_label (const char *what)
{
  static const struct
  {
    const char *what, *label;
  } LABELS[] = { { "room", N_ ("Room") },           { "wall", N_ ("Wall") },     { "stair", N_ ("Stair") },
                 { "area", N_ ("Area") },           { "carpet", N_ ("Carpet") }, { "cut", N_ ("Cut") },
                 { "item", N_ ("Goods and work") }, { "total", N_ ("Total") } };

  for (guint i = 0; i < G_N_ELEMENTS (LABELS); i++)
    if (g_strcmp0 (what, LABELS[i].what) == 0)
      return _ (LABELS[i].label);
  return what;
}

static void
add_cell (RcCompareWindow *self, const char *text, int column, int row, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text && *text ? text : "—");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 34);
  gtk_widget_set_valign (label, GTK_ALIGN_START);
  if (css_class)
    gtk_widget_add_css_class (label, css_class);
  gtk_grid_attach (self->grid, label, column, row, 1, 1);
}

static void
show_changes (RcCompareWindow *self, const GPtrArray *changes)
{
  static const char *const SIGNS[] = { [RC_CHANGE_ADDED] = "+", [RC_CHANGE_REMOVED] = "−", [RC_CHANGE_CHANGED] = "≠" };
  GtkWidget               *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->grid))) != NULL)
    gtk_grid_remove (self->grid, child);
  self->n_changes = changes ? changes->len : 0;
  if (self->n_changes == 0)
    return;
  const char *const heads[] = { "", _ ("What"), _ ("Name"), _ ("Before"), _ ("After") };
  for (guint i = 0; i < G_N_ELEMENTS (heads); i++)
    add_cell (self, *heads[i] ? heads[i] : " ", i, 0, "column-head");
  for (guint i = 0; i < changes->len; i++)
    {
      const RcChange *change = g_ptr_array_index (changes, i);
      add_cell (self, SIGNS[change->kind], 0, i + 1, "mark");
      add_cell (self, get_what_label (change->what), 1, i + 1, NULL);
      add_cell (self, change->name, 2, i + 1, NULL);
      add_cell (self, change->before, 3, i + 1, NULL);
      add_cell (self, change->after, 4, i + 1, NULL);
    }
}

/* What was cut by the measure before, and what it does not cover now. `measure` NULL: there is nothing to compare. */
static void
show_cures (RcCompareWindow *self, const RcOutcome *before, const char *measure)
{
  g_autoptr (GError) error = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->cures), FALSE);
  if (measure != NULL && !rc_cure_list_show (self->cures, self->document, before, measure, &error))
    tell (self, error->message);
}

static void
on_overlaid (RcCompareWindow *self, GParamSpec *pspec, GtkToggleButton *button)
{
  if (self->floors != NULL)
    rc_floor_pair_set_overlaid (self->floors, gtk_toggle_button_get_active (button));
}

static void
compare (RcCompareWindow *self)
{
  const char *before = rc_pick_get_selected (self->before_drop), *after = rc_pick_get_selected (self->after_drop);
  g_autoptr (GPtrArray) changes = NULL;

  if (self->is_showing || before == NULL || after == NULL)
    return;
  tell (self, NULL);
  g_autoptr (RcOutcome) old = make_outcome (self, before);
  g_autoptr (RcOutcome) new = old ? make_outcome (self, after) : NULL;
  if (old && new)
    {
      changes = rc_compare (old->plan, old->quote, new->plan, new->quote);
      if (changes->len == 0)
        tell (self, _ ("Nothing changed between these two measures."));
    }
  rc_floor_pair_show (self->floors, old, new);
  show_cures (self, new != NULL &&new->before != NULL ? new->before : old, new != old ? after : NULL);
  show_changes (self, changes);
}

static void
show_measures (RcCompareWindow *self)
{
  const RcJob     *job = rc_document_get_job (self->document);
  const RcMeasure *looked_at = rc_document_get_measure (self->document), *before = looked_at;

  self->is_showing = TRUE;
  for (guint i = 1; i < job->measures->len; i++)
    if (g_ptr_array_index (job->measures, i) == looked_at)
      before = g_ptr_array_index (job->measures, i - 1);
  GtkDropDown *drops[] = { self->before_drop, self->after_drop };
  for (guint d = 0; d < G_N_ELEMENTS (drops); d++)
    {
      g_auto (RcPick) pick = { 0 };
      rc_pick_init (&pick);
      for (guint i = 0; i < job->measures->len; i++)
        {
          const RcMeasure *measure = g_ptr_array_index (job->measures, i);
          g_autofree char *label = g_strdup_printf ("%s %s", measure->id, measure->date ? measure->date : "");
          rc_pick_add (&pick, measure->id, label);
        }
      rc_pick_show (&pick, drops[d], d == 0 ? before->id : looked_at->id);
    }
  self->is_showing = FALSE;
  compare (self);
}

RcCureList *
rc_compare_window_get_cures (RcCompareWindow *self)
{
  return self->cures;
}

guint
rc_compare_window_get_n_changes (RcCompareWindow *self)
{
  return self->n_changes;
}

static void
rc_compare_window_dispose (GObject *object)
{
  RcCompareWindow *self = RC_COMPARE_WINDOW (object);

  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_COMPARE_WINDOW);
  G_OBJECT_CLASS (rc_compare_window_parent_class)->dispose (object);
}

static void
rc_compare_window_class_init (RcCompareWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_compare_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/compare-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcCompareWindow, before_drop);
  gtk_widget_class_bind_template_child (widget_class, RcCompareWindow, after_drop);
  gtk_widget_class_bind_template_child (widget_class, RcCompareWindow, grid);
  gtk_widget_class_bind_template_child (widget_class, RcCompareWindow, note_label);
  gtk_widget_class_bind_template_child (widget_class, RcCompareWindow, floor_box);
  gtk_widget_class_bind_template_child (widget_class, RcCompareWindow, cure_box);
  gtk_widget_class_bind_template_callback (widget_class, on_overlaid);
  gtk_widget_class_bind_template_callback (widget_class, compare);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
rc_compare_window_init (RcCompareWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->floors = RC_FLOOR_PAIR (rc_floor_pair_new ());
  self->cures = RC_CURE_LIST (rc_cure_list_new ());
  gtk_box_append (self->floor_box, GTK_WIDGET (self->floors));
  gtk_box_append (self->cure_box, GTK_WIDGET (self->cures));
}

RcCompareWindow *
rc_compare_window_new (GtkWindow *parent, RcDocument *document)
{
  RcCompareWindow *self = g_object_new (RC_TYPE_COMPARE_WINDOW, "transient-for", parent, NULL);

  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "edited", G_CALLBACK (show_measures), self);
  show_measures (self);
  return self;
}
