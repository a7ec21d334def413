#include "bench.h"

#include <glib/gi18n-lib.h>

#include "area-panel.h"
#include "fold-box.h"
#include "item-list.h"
#include "item-pieces.h"
#include "job-panel.h"
#include "document-things.h"
#include "legend-view.h"
#include "picture-dialog.h"
#include "roll-view.h"
#include "stair-panel.h"

struct _RcBench
{
  GtkBox parent_instance;

  RcDocument   *document;
  GtkLabel     *fault_label;
  RcFigureBar  *figure_bar;
  RcOptionRow  *option_row;
  RcItemList   *things_list;
  GtkStack     *cut_stack;
  RcItemList   *pieces_list, *lines_list;
  RcFloorView  *floor_view;
  GtkDropDown  *storey_drop;
  GtkLabel     *hint_label;
  GtkWidget    *legend_view;
  RcRollView   *roll_view;
  GtkStack     *panel_stack;
  RcJobPanel   *job_panel;
  RcAreaPanel  *area_panel;
  RcRoomPanel  *room_panel;
  RcStairPanel *stair_panel;
  GArray       *storeys; /* of int, as in the drop-down */
  gboolean      is_showing;
};

G_DEFINE_FINAL_TYPE (RcBench, rc_bench, GTK_TYPE_BOX)

/* What is wrong. */

static gboolean
is_empty (RcBench *self)
{
  const RcMeasure *measure = rc_document_get_measure (self->document);
  return measure->rooms->len == 0 && measure->stairs->len == 0;
}

static char *
dup_fault (RcBench *self)
{
  const GError *fault = rc_document_get_fault (self->document);
  RcOutcome    *outcome = rc_document_get_outcome (self->document);

  if (is_empty (self))
    return g_strdup (_ ("No rooms yet: F8 makes one by its sizes, Ctrl+R one to type wall by wall, or draw it here."));
  if (fault && outcome)
    return g_strdup_printf (_ ("%s — The plan shown is the last one that could be made."), fault->message);
  if (fault)
    return g_strdup (fault->message);
  if (outcome && outcome->price_fault)
    return g_strdup (outcome->price_fault->message);
  char *shortfalls = rc_document_dup_shortfalls (self->document);
  return shortfalls ? shortfalls : rc_document_dup_departure (self->document);
}

static void
show_fault (RcBench *self)
{
  g_autofree char *fault = dup_fault (self);

  /* Where one begins is no fault. */
  gtk_widget_remove_css_class (GTK_WIDGET (self->fault_label), is_empty (self) ? "fault-bar" : "begin-bar");
  gtk_widget_add_css_class (GTK_WIDGET (self->fault_label), is_empty (self) ? "begin-bar" : "fault-bar");
  gtk_label_set_text (self->fault_label, fault ? fault : "");
  gtk_widget_set_visible (GTK_WIDGET (self->fault_label), fault != NULL);
}

/* Storeys. */

static char *
dup_storey_name (int storey)
{
  if (storey == 0)
    return g_strdup (_ ("Ground floor"));
  if (storey > 0)
    return g_strdup_printf (_ ("Upper floor %d"), storey);
  return g_strdup_printf (_ ("Basement %d"), -storey);
}

static int
compare_ints (gconstpointer a, gconstpointer b)
{
  return *(const int *)a - *(const int *)b;
}

static void
add_storey (GArray *storeys, int floor)
{
  for (guint s = 0; s < storeys->len; s++)
    if (g_array_index (storeys, int, s) == floor)
      return;
  g_array_append_val (storeys, floor);
}

/* Those with rooms, and the one looked at. */
static GArray *
list_storeys (const RcMeasure *measure, int shown)
{
  GArray *storeys = g_array_new (FALSE, FALSE, sizeof (int));

  add_storey (storeys, shown);
  for (guint i = 0; i < measure->rooms->len; i++)
    add_storey (storeys, ((const RcRoom *)g_ptr_array_index (measure->rooms, i))->floor);
  g_array_sort (storeys, compare_ints);
  return storeys;
}

static void
show_storeys (RcBench *self)
{
  g_autoptr (GArray) storeys
      = list_storeys (rc_document_get_measure (self->document), rc_floor_view_get_floor (self->floor_view));
  gboolean same
      = self->storeys && storeys->len == self->storeys->len
        && (storeys->len == 0 || memcmp (storeys->data, self->storeys->data, storeys->len * sizeof (int)) == 0);

  self->is_showing = TRUE;
  if (!same)
    {
      g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
      for (guint i = 0; i < storeys->len; i++)
        gtk_string_list_take (names, dup_storey_name (g_array_index (storeys, int, i)));
      gtk_drop_down_set_model (self->storey_drop, G_LIST_MODEL (names));
      g_clear_pointer (&self->storeys, g_array_unref);
      self->storeys = g_steal_pointer (&storeys);
    }
  for (guint i = 0; i < self->storeys->len; i++)
    if (g_array_index (self->storeys, int, i) == rc_floor_view_get_floor (self->floor_view))
      gtk_drop_down_set_selected (self->storey_drop, i);
  gtk_widget_set_visible (GTK_WIDGET (self->storey_drop), self->storeys->len > 1);
  self->is_showing = FALSE;
}

static void
on_storey_selected (RcBench *self)
{
  guint at = gtk_drop_down_get_selected (self->storey_drop);

  if (!self->is_showing && self->storeys && at < self->storeys->len)
    rc_floor_view_set_floor (self->floor_view, g_array_index (self->storeys, int, at));
}

static gboolean
has_rooms (RcBench *self, int floor)
{
  const RcMeasure *measure = rc_document_get_measure (self->document);

  for (guint i = 0; i < measure->rooms->len; i++)
    if (((const RcRoom *)g_ptr_array_index (measure->rooms, i))->floor == floor)
      return TRUE;
  return FALSE;
}

/* Beyond the last storey with rooms lies one to be drawn. */
static void
action_storey_step (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcBench *self = RC_BENCH (widget);
  int      step = g_variant_get_int32 (parameter);

  if (self->document == NULL || self->storeys == NULL)
    return;
  guint at = gtk_drop_down_get_selected (self->storey_drop) + (guint)step;
  int   floor = rc_floor_view_get_floor (self->floor_view);
  if (at < self->storeys->len)
    gtk_drop_down_set_selected (self->storey_drop, at);
  else if (has_rooms (self, floor))
    rc_floor_view_set_floor (self->floor_view, floor + step);
}

static void
action_storey_changed (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_storeys (RC_BENCH (widget));
}

/* Tools. */

static void
show_hint (RcBench *self)
{
  const char *hint = rc_tool_get_hint (rc_floor_view_get_tool (self->floor_view));

  gtk_label_set_text (self->hint_label, hint);
  gtk_widget_set_visible (GTK_WIDGET (self->hint_label), *hint != '\0');
}

static void
action_tool (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcBench *self = RC_BENCH (widget);
  RcTool   tool = RC_TOOL_CHOOSE;

  if (self->document == NULL || !rc_tool_parse (g_variant_get_string (parameter, NULL), &tool))
    return;
  rc_floor_view_set_tool (self->floor_view, tool);
  gtk_widget_grab_focus (GTK_WIDGET (self->floor_view));
}

static void
action_legend (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcBench *self = RC_BENCH (widget);
  gtk_widget_set_visible (self->legend_view, !gtk_widget_get_visible (self->legend_view));
}

static void
action_mirror_room (GtkWidget *widget, const char *name, GVariant *parameter)
{
  if (RC_BENCH (widget)->document)
    rc_floor_view_mirror_room (RC_BENCH (widget)->floor_view);
}

static void
action_turn_room (GtkWidget *widget, const char *name, GVariant *parameter)
{
  if (RC_BENCH (widget)->document)
    rc_floor_view_turn_room (RC_BENCH (widget)->floor_view, g_variant_get_int32 (parameter));
}

static void
action_picture_open (GtkWidget *widget, const char *name, GVariant *parameter)
{
  if (RC_BENCH (widget)->document)
    rc_picture_dialog_open (RC_BENCH (widget)->floor_view);
}

/* lighten, turn, page, remove */
static void
action_picture (GtkWidget *widget, const char *name, GVariant *parameter)
{
  static const char *const NAMES[] = { [RC_HAND_PICTURE_LIGHTEN] = "lighten",
                                       [RC_HAND_PICTURE_TURN] = "turn",
                                       [RC_HAND_PICTURE_PAGE] = "page",
                                       [RC_HAND_PICTURE_REMOVE] = "remove" };

  for (guint i = 0; RC_BENCH (widget)->document && i < G_N_ELEMENTS (NAMES); i++)
    if (g_str_equal (NAMES[i], g_variant_get_string (parameter, NULL)))
      rc_floor_view_change_picture (RC_BENCH (widget)->floor_view, i);
}

static void
action_tool_changed (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_hint (RC_BENCH (widget));
}

/* The panel of what is chosen. */

static void
show_panel (RcBench *self)
{
  GtkWidget *panels[] = { [RC_THING_JOB] = GTK_WIDGET (self->job_panel),
                          [RC_THING_AREA] = GTK_WIDGET (self->area_panel),
                          [RC_THING_ROOM] = GTK_WIDGET (self->room_panel),
                          [RC_THING_STAIR] = GTK_WIDGET (self->stair_panel) };
  gtk_stack_set_visible_child (self->panel_stack, panels[rc_document_get_choice (self->document).thing]);
}

static void
focus_name (RcBench *self)
{
  if (self->document == NULL)
    return;
  show_panel (self);
  switch (rc_document_get_choice (self->document).thing)
    {
    case RC_THING_AREA:
      rc_area_panel_focus_name (self->area_panel);
      break;
    case RC_THING_ROOM:
      rc_room_panel_focus_name (self->room_panel);
      break;
    case RC_THING_STAIR:
      rc_stair_panel_focus_name (self->stair_panel);
      break;
    case RC_THING_JOB:
    default:
      rc_job_panel_focus_title (self->job_panel);
    }
}

void
rc_bench_edit_chosen (RcBench *self)
{
  show_panel (self);
  rc_bench_focus (self,
                  rc_document_get_choice (self->document).thing == RC_THING_ROOM ? RC_BENCH_WALLS : RC_BENCH_NAME);
}

static void
action_edit_chosen (GtkWidget *widget, const char *name, GVariant *parameter)
{
  if (RC_BENCH (widget)->document)
    rc_bench_edit_chosen (RC_BENCH (widget));
}

void
rc_bench_focus (RcBench *self, RcBenchPart part)
{
  switch (part)
    {
    case RC_BENCH_ROLLS:
      gtk_widget_grab_focus (GTK_WIDGET (self->roll_view));
      break;
    case RC_BENCH_THINGS:
      rc_item_list_focus (self->things_list);
      break;
    case RC_BENCH_PIECES:
      gtk_stack_set_visible_child_name (self->cut_stack, "pieces");
      rc_item_list_focus (self->pieces_list);
      break;
    case RC_BENCH_LINES:
      gtk_stack_set_visible_child_name (self->cut_stack, "lines");
      rc_item_list_focus (self->lines_list);
      break;
    case RC_BENCH_WALLS:
      if (self->document && rc_document_get_choice (self->document).thing == RC_THING_ROOM)
        rc_wall_table_focus_wall (rc_room_panel_get_wall_table (self->room_panel), 0);
      break;
    case RC_BENCH_NAME:
      focus_name (self);
      break;
    case RC_BENCH_FLOOR:
    default:
      gtk_widget_grab_focus (GTK_WIDGET (self->floor_view));
    }
}

RcFloorView *
rc_bench_get_floor_view (RcBench *self)
{
  return self->floor_view;
}

RcFigureBar *
rc_bench_get_figure_bar (RcBench *self)
{
  return self->figure_bar;
}

RcOptionRow *
rc_bench_get_option_row (RcBench *self)
{
  return self->option_row;
}

RcWallTable *
rc_bench_get_wall_table (RcBench *self)
{
  return rc_room_panel_get_wall_table (self->room_panel);
}

const char *
rc_bench_get_fault (RcBench *self)
{
  return gtk_label_get_text (self->fault_label);
}

void
rc_bench_set_document (RcBench *self, RcDocument *document)
{
  RcPanel *panels[] = { RC_PANEL (self->job_panel), RC_PANEL (self->area_panel), RC_PANEL (self->room_panel),
                        RC_PANEL (self->stair_panel) };

  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  for (guint i = 0; i < G_N_ELEMENTS (panels); i++)
    rc_panel_set_document (panels[i], document);
  rc_figure_bar_set_document (self->figure_bar, document);
  rc_option_row_set_document (self->option_row, document);
  rc_item_list_set_document (self->things_list, document);
  rc_item_list_set_document (self->pieces_list, document);
  rc_item_list_set_document (self->lines_list, document);
  rc_floor_view_set_document (self->floor_view, document);
  rc_roll_view_set_document (self->roll_view, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "edited", G_CALLBACK (show_storeys), self);
  g_signal_connect_swapped (document, "planned", G_CALLBACK (show_fault), self);
  g_signal_connect_swapped (document, "chosen", G_CALLBACK (show_panel), self);
  show_storeys (self);
  show_fault (self);
  show_panel (self);
}

static void
rc_bench_dispose (GObject *object)
{
  RcBench *self = RC_BENCH (object);

  if (self->floor_view)
    rc_bench_set_document (self, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_BENCH);
  g_clear_pointer (&self->storeys, g_array_unref);
  G_OBJECT_CLASS (rc_bench_parent_class)->dispose (object);
}

/* In the chosen room, wherever the focus is. */
static void
action_add_opening (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcBench *self = RC_BENCH (widget);

  if (self->document && rc_document_get_choice (self->document).thing == RC_THING_ROOM)
    gtk_widget_activate_action_variant (GTK_WIDGET (rc_room_panel_get_wall_table (self->room_panel)),
                                        "room.add-opening", parameter);
}

static void
rc_bench_class_init (RcBenchClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_bench_dispose;
  g_type_ensure (RC_TYPE_FOLD_BOX);
  g_type_ensure (RC_TYPE_FIGURE_BAR);
  g_type_ensure (RC_TYPE_OPTION_ROW);
  g_type_ensure (RC_TYPE_ITEM_LIST);
  g_type_ensure (RC_TYPE_FLOOR_VIEW);
  g_type_ensure (RC_TYPE_LEGEND_VIEW);
  g_type_ensure (RC_TYPE_ROLL_VIEW);
  g_type_ensure (RC_TYPE_JOB_PANEL);
  g_type_ensure (RC_TYPE_AREA_PANEL);
  g_type_ensure (RC_TYPE_ROOM_PANEL);
  g_type_ensure (RC_TYPE_STAIR_PANEL);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/bench.ui");
  gtk_widget_class_bind_template_child (widget_class, RcBench, fault_label);
  gtk_widget_class_bind_template_child (widget_class, RcBench, figure_bar);
  gtk_widget_class_bind_template_child (widget_class, RcBench, option_row);
  gtk_widget_class_bind_template_child (widget_class, RcBench, things_list);
  gtk_widget_class_bind_template_child (widget_class, RcBench, cut_stack);
  gtk_widget_class_bind_template_child (widget_class, RcBench, pieces_list);
  gtk_widget_class_bind_template_child (widget_class, RcBench, lines_list);
  gtk_widget_class_bind_template_child (widget_class, RcBench, floor_view);
  gtk_widget_class_bind_template_child (widget_class, RcBench, storey_drop);
  gtk_widget_class_bind_template_child (widget_class, RcBench, hint_label);
  gtk_widget_class_bind_template_child (widget_class, RcBench, legend_view);
  gtk_widget_class_bind_template_child (widget_class, RcBench, roll_view);
  gtk_widget_class_bind_template_child (widget_class, RcBench, panel_stack);
  gtk_widget_class_bind_template_child (widget_class, RcBench, job_panel);
  gtk_widget_class_bind_template_child (widget_class, RcBench, area_panel);
  gtk_widget_class_bind_template_child (widget_class, RcBench, room_panel);
  gtk_widget_class_bind_template_child (widget_class, RcBench, stair_panel);
  gtk_widget_class_bind_template_callback (widget_class, on_storey_selected);
  gtk_widget_class_install_action (widget_class, "bench.storey-step", "i", action_storey_step);
  gtk_widget_class_install_action (widget_class, "bench.storey-changed", NULL, action_storey_changed);
  gtk_widget_class_install_action (widget_class, "bench.tool", "s", action_tool);
  gtk_widget_class_install_action (widget_class, "bench.legend", NULL, action_legend);
  gtk_widget_class_install_action (widget_class, "bench.mirror-room", NULL, action_mirror_room);
  gtk_widget_class_install_action (widget_class, "bench.turn-room", "i", action_turn_room);
  gtk_widget_class_install_action (widget_class, "bench.picture-open", NULL, action_picture_open);
  gtk_widget_class_install_action (widget_class, "bench.picture", "s", action_picture);
  gtk_widget_class_install_action (widget_class, "bench.tool-changed", NULL, action_tool_changed);
  gtk_widget_class_install_action (widget_class, "bench.add-opening", "i", action_add_opening);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_d, GDK_ALT_MASK, "bench.add-opening", "i",
                                       RC_OPENING_DOOR);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_a, GDK_ALT_MASK, "bench.add-opening", "i",
                                       RC_OPENING_ARCHWAY);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_ALT_MASK, "bench.add-opening", "i",
                                       RC_OPENING_WINDOW);
  gtk_widget_class_install_action (widget_class, "bench.edit-chosen", NULL, action_edit_chosen);
}

static void
rc_bench_init (RcBench *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  rc_item_list_set_fill (self->things_list, rc_item_fill_things, _ ("Rooms, stairs and areas of the job"));
  rc_item_list_set_fill (self->pieces_list, rc_item_fill_pieces, _ ("Pieces of carpet"));
  rc_item_list_set_fill (self->lines_list, rc_item_fill_lines, _ ("Lines of the quotation"));
}
