#include "floor-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "floor-hand.h"
#include "floor-keys.h"
#include "floor-layers.h"
#include "item-pieces.h"
#include "palette.h"

#define PAN_STEP_PX  60
#define ZOOM_STEP    1.25
#define FIT_MARGIN   28
#define FONT_PART    0.78 /* of the text around it */
#define MIN_WIDTH_PX 240

struct _RcFloorView
{
  GtkWidget parent_instance;

  RcDocument  *document;
  RcView       view;
  gboolean     is_fitted; /* follows the size of the widget and of the house until it is moved by hand */
  int          floor;
  RcChoice     shown;          /* the choice as last seen */
  double       drag_x, drag_y; /* view's origin where a drag began */
  gboolean     has_dragged;
  double       press_x, press_y, held_x, held_y; /* where it began in the widget, and has come to */
  RcFloorHand *hand;
  gboolean     is_in_hand; /* the drag under way is the gesture's, not a pan */
  double       pointer_x, pointer_y;
  double       pinched;       /* scale that the pinch under way has come to */
  int          width, height; /* as last allocated */

  RcFloorPainter *painter;
};

G_DEFINE_FINAL_TYPE (RcFloorView, rc_floor_view, GTK_TYPE_WIDGET)

static void
redraw (RcFloorView *self)
{
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
set_view (RcFloorView *self, RcView view)
{
  self->view = view;
  self->is_fitted = FALSE;
  redraw (self);
}

static void
fit_now (RcFloorView *self)
{
  double margin = FIT_MARGIN + rc_palette_get_font_size (GTK_WIDGET (self));

  if (self->document && self->width > 0 && self->height > 0)
    self->view = rc_view_fit_box (rc_floor_hand_get_box (self->hand), 0, 0, self->width, self->height, margin);
  redraw (self);
}

void
rc_floor_view_fit (RcFloorView *self)
{
  self->is_fitted = TRUE;
  fit_now (self);
}

void
rc_floor_view_pan (RcFloorView *self, double dx, double dy)
{
  set_view (self, rc_viewport_pan (self->view, dx, dy));
}

void
rc_floor_view_zoom (RcFloorView *self, double factor)
{
  set_view (self, rc_viewport_zoom (self->view, factor, self->width / 2.0, self->height / 2.0));
}

RcTool
rc_floor_view_get_tool (RcFloorView *self)
{
  return rc_floor_hand_get_tool (self->hand);
}

void
rc_floor_view_set_tool (RcFloorView *self, RcTool tool)
{
  rc_floor_hand_set_tool (self->hand, tool);
}

void
rc_floor_view_mirror_room (RcFloorView *self)
{
  rc_floor_hand_mirror (self->hand);
}

void
rc_floor_view_turn_room (RcFloorView *self, double degrees)
{
  rc_floor_hand_turn (self->hand, degrees);
}

void
rc_floor_view_add_picture (RcFloorView *self, GFile *file)
{
  rc_floor_hand_add_picture (self->hand, file);
}

void
rc_floor_view_change_picture (RcFloorView *self, RcHandPicture change)
{
  rc_floor_hand_change_picture (self->hand, change, &self->view);
}

RcView
rc_floor_view_get_view (RcFloorView *self)
{
  return self->view;
}

int
rc_floor_view_get_floor (RcFloorView *self)
{
  return self->floor;
}

void
rc_floor_view_set_floor (RcFloorView *self, int floor)
{
  if (floor == self->floor)
    return;
  self->floor = floor;
  rc_floor_hand_set_floor (self->hand, floor);
  rc_floor_view_fit (self);
  gtk_widget_activate_action (GTK_WIDGET (self), "bench.storey-changed", NULL);
}

/* Drawing. */

static void
rc_floor_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  RcFloorView *self = RC_FLOOR_VIEW (widget);
  RcFloorScene scene = { .floor = self->floor,
                         .palette = rc_palette_for_widget (widget),
                         .font_size = rc_palette_get_font_size (widget) * FONT_PART,
                         .view = self->view,
                         .width = self->width,
                         .height = self->height,
                         .scale_factor = gtk_widget_get_scale_factor (widget) };

  if (self->document == NULL || self->width == 0 || self->height == 0)
    return;
  scene.outcome = rc_document_get_outcome (self->document);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, self->width, self->height));
  rc_floor_layers_draw (self->document, self->hand, self->painter, &scene, cr);
  cairo_destroy (cr);
}

static void
rc_floor_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  RcFloorView *self = RC_FLOOR_VIEW (widget);

  if (width == self->width && height == self->height)
    return;
  RcView moved = rc_viewport_resize (self->view, self->width, self->height, width, height);
  self->width = width;
  self->height = height;
  if (self->is_fitted)
    fit_now (self);
  else
    self->view = moved;
  redraw (self);
}

static void
rc_floor_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                       int *minimum_baseline, int *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? MIN_WIDTH_PX : MIN_WIDTH_PX / 2;
  *natural = MAX (*minimum, 2 * MIN_WIDTH_PX);
}

static void
rc_floor_view_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (rc_floor_view_parent_class)->css_changed (widget, change);
  redraw (RC_FLOOR_VIEW (widget));
}

/* The pointer. */

static GdkModifierType
get_state (gpointer controller)
{
  return gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (controller));
}

static void
on_drag_begin (GtkGestureDrag *drag, double x, double y, RcFloorView *self)
{
  self->drag_x = self->view.x0;
  self->drag_y = self->view.y0;
  self->has_dragged = FALSE;
  self->press_x = self->held_x = x;
  self->press_y = self->held_y = y;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  self->is_in_hand = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (drag)) == GDK_BUTTON_PRIMARY
                     && rc_floor_hand_press (self->hand, &self->view, x, y, get_state (drag));
  self->is_fitted &= !self->is_in_hand; /* nothing jumps away under the hand */
}

static void
on_drag_update (GtkGestureDrag *drag, double dx, double dy, RcFloorView *self)
{
  self->held_x = self->press_x + dx;
  self->held_y = self->press_y + dy;
  if (self->is_in_hand)
    {
      rc_floor_hand_move (self->hand, &self->view, self->held_x, self->held_y, get_state (drag));
      return;
    }
  if (!self->has_dragged && !gtk_drag_check_threshold (GTK_WIDGET (self), 0, 0, (int)dx, (int)dy))
    return;
  self->has_dragged = TRUE;
  set_view (self, rc_viewport_pan (self->view, self->drag_x + dx - self->view.x0, self->drag_y + dy - self->view.y0));
}

static void
pick (RcFloorView *self, double x, double y)
{
  RcOutcome *outcome = rc_document_get_outcome (self->document);

  if (outcome == NULL)
    return;
  guint       piece = rc_floor_drawing_find_piece (outcome->plan, self->floor, &self->view, x, y);
  const char *room = rc_floor_drawing_find_room (outcome->plan->house, self->floor, &self->view, x, y);
  const char *stair
      = rc_floor_drawing_find_stair (rc_document_get_measure (self->document), self->floor, &self->view, x, y);
  RcChoice choice = stair   ? rc_choice_of_thing (RC_THING_STAIR, stair)
                    : piece ? rc_choice_of_piece (outcome->plan, piece)
                    : room  ? rc_choice_of_thing (RC_THING_ROOM, room)
                            : rc_choice_of_thing (RC_THING_JOB, NULL);
  if (piece && room && !stair) /* a piece may reach over several rooms: the one under the pointer is meant */
    choice.id = g_intern_string (room);
  rc_document_choose (self->document, rc_choice_mend (choice, rc_document_get_measure (self->document), outcome->plan));
}

/* A press let go so soon that the toolkit never saw it held ends here too, and then `dx` and `dy` mean nothing. */
static void
on_drag_end (GtkGestureDrag *drag, double dx, double dy, RcFloorView *self)
{
  gboolean was_in_hand = self->is_in_hand;

  self->is_in_hand = FALSE;
  if (self->document == NULL)
    return;
  if (gtk_gesture_drag_get_offset (drag, &dx, &dy))
    {
      self->held_x = self->press_x + dx;
      self->held_y = self->press_y + dy;
    }
  if (was_in_hand ? rc_floor_hand_release (self->hand, &self->view, self->held_x, self->held_y, get_state (drag))
                  : !self->has_dragged)
    pick (self, self->press_x, self->press_y);
}

static gboolean
on_scroll (GtkEventControllerScroll *scroll, double dx, double dy, RcFloorView *self)
{
  GdkModifierType state = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (scroll));

  if (state & GDK_SHIFT_MASK)
    set_view (self, rc_viewport_pan (self->view, -(dx + dy) * PAN_STEP_PX, 0));
  else if (dy != 0)
    set_view (self, rc_viewport_zoom (self->view, pow (ZOOM_STEP, -dy), self->pointer_x, self->pointer_y));
  else
    set_view (self, rc_viewport_pan (self->view, -dx * PAN_STEP_PX, 0));
  return GDK_EVENT_STOP;
}

static void
on_motion (GtkEventControllerMotion *motion, double x, double y, RcFloorView *self)
{
  self->pointer_x = x;
  self->pointer_y = y;
  if (self->is_in_hand || self->document == NULL)
    return;
  rc_floor_hand_move (self->hand, &self->view, x, y, get_state (motion));
  RcOutcome *outcome = rc_document_get_outcome (self->document);
  gboolean   is_choosing = rc_floor_hand_get_tool (self->hand) == RC_TOOL_CHOOSE;
  rc_document_point (self->document, outcome && is_choosing
                                         ? rc_floor_drawing_find_piece (outcome->plan, self->floor, &self->view, x, y)
                                         : 0);
}

static void
on_left (RcFloorView *self)
{
  if (self->document)
    rc_document_point (self->document, 0);
}

/* What the piece under the pointer is, and where it stands on the quotation. */
static gboolean
on_query_tooltip (RcFloorView *self, int x, int y, gboolean by_keys, GtkTooltip *tooltip)
{
  g_autofree char *words = rc_item_dup_pointed_words (self->document);

  gtk_tooltip_set_text (tooltip, words);
  return words != NULL;
}

static void
on_pinch (GtkGestureZoom *zoom, double scale, RcFloorView *self)
{
  double x = 0, y = 0;

  if (!gtk_gesture_get_bounding_box_center (GTK_GESTURE (zoom), &x, &y))
    return;
  set_view (self, rc_viewport_zoom (self->view, scale / self->pinched, x, y));
  self->pinched = scale;
}

static void
on_pinch_begin (GtkGesture *zoom, GdkEventSequence *sequence, RcFloorView *self)
{
  self->pinched = 1;
}

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state, RcFloorView *self)
{
  return rc_floor_hand_key (self->hand, keyval, state);
}

/* The document. */

static int
find_floor_of_choice (RcFloorView *self)
{
  RcChoice         choice = rc_document_get_choice (self->document);
  const RcMeasure *measure = rc_document_get_measure (self->document);
  const RcRoom    *room = choice.thing == RC_THING_ROOM ? rc_measure_find_room (measure, choice.id) : NULL;
  const RcStair   *stair = choice.thing == RC_THING_STAIR ? rc_measure_find_stair (measure, choice.id) : NULL;
  return room ? room->floor : stair && stair->placed ? stair->floor : self->floor;
}

static void
on_planned (RcFloorView *self)
{
  rc_floor_hand_forget_scene (self->hand);
  if (self->is_fitted)
    fit_now (self);
  else
    redraw (self);
}

static void
on_edited (RcFloorView *self)
{
  rc_floor_hand_forget (self->hand);
}

static void
on_chosen (RcFloorView *self)
{
  RcChoice choice = rc_document_get_choice (self->document);

  if (choice.thing != self->shown.thing || choice.id != self->shown.id)
    rc_floor_view_set_floor (self, find_floor_of_choice (self));
  self->shown = choice;
  rc_floor_hand_follow_choice (self->hand);
  redraw (self);
}

void
rc_floor_view_set_document (RcFloorView *self, RcDocument *document)
{
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  rc_floor_hand_set_document (self->hand, document);
  if (document)
    {
      g_signal_connect_swapped (document, "edited", G_CALLBACK (on_edited), self);
      g_signal_connect_swapped (document, "planned", G_CALLBACK (on_planned), self);
      g_signal_connect_swapped (document, "pointed", G_CALLBACK (redraw), self);
      g_signal_connect_swapped (document, "chosen", G_CALLBACK (on_chosen), self);
      self->floor = 0;
      rc_floor_view_fit (self);
    }
}

static void
rc_floor_view_dispose (GObject *object)
{
  rc_floor_view_set_document (RC_FLOOR_VIEW (object), NULL);
  if (RC_FLOOR_VIEW (object)->painter)
    rc_floor_painter_stop (RC_FLOOR_VIEW (object)->painter);
  g_clear_object (&RC_FLOOR_VIEW (object)->painter);
  G_OBJECT_CLASS (rc_floor_view_parent_class)->dispose (object);
}

static void
rc_floor_view_finalize (GObject *object)
{
  rc_floor_hand_free (RC_FLOOR_VIEW (object)->hand);
  G_OBJECT_CLASS (rc_floor_view_parent_class)->finalize (object);
}

static void
rc_floor_view_class_init (RcFloorViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_floor_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_floor_view_finalize;
  widget_class->snapshot = rc_floor_view_snapshot;
  widget_class->size_allocate = rc_floor_view_size_allocate;
  widget_class->measure = rc_floor_view_measure;
  widget_class->css_changed = rc_floor_view_css_changed;
  gtk_widget_class_set_css_name (widget_class, "floor");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  rc_floor_keys_add (widget_class);
}

static void
on_painted (gpointer data)
{
  redraw (data);
}

static void
rc_floor_view_init (RcFloorView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  self->view = (RcView){ 0, 0, 0.001 };
  self->is_fitted = TRUE;
  self->hand = rc_floor_hand_new (widget);
  self->painter = rc_floor_painter_new (on_painted, self);
  gtk_widget_set_focusable (widget, TRUE);
  gtk_widget_set_overflow (widget, GTK_OVERFLOW_HIDDEN);

  GtkGesture *drag = gtk_gesture_drag_new ();
  g_signal_connect (drag, "drag-begin", G_CALLBACK (on_drag_begin), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (on_drag_update), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (on_drag_end), self);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (drag), 0);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (drag));

  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (widget, keys);

  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  g_signal_connect (scroll, "scroll", G_CALLBACK (on_scroll), self);
  gtk_widget_add_controller (widget, scroll);

  GtkEventController *motion = gtk_event_controller_motion_new ();
  g_signal_connect (motion, "motion", G_CALLBACK (on_motion), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (on_left), self);
  gtk_widget_set_has_tooltip (widget, TRUE);
  g_signal_connect (self, "query-tooltip", G_CALLBACK (on_query_tooltip), NULL);
  gtk_widget_add_controller (widget, motion);

  GtkGesture *zoom = gtk_gesture_zoom_new ();
  g_signal_connect (zoom, "begin", G_CALLBACK (on_pinch_begin), self);
  g_signal_connect (zoom, "scale-changed", G_CALLBACK (on_pinch), self);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (zoom));
}
