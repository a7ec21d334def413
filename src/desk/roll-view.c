#include "roll-view.h"

#include <glib/gi18n-lib.h>

#include "item-pieces.h"
#include "palette.h"

#define MARGIN_PX      10
#define GAP_PX         10
#define FONT_PART      0.78
#define WIDTH_PX_MOST  64 /* of a roll's own width across */
#define WIDTH_PX_LEAST 36
#define STALE_ALPHA    0.35
#define ZOOM_STEP      1.25
#define REQUEST_WIDTH  240
#define WIDTH_MOST     30000

struct _RcRollView
{
  GtkWidget parent_instance;

  RcDocument *document;
  double      zoom; /* over the scale at which the longest roll fits the width */
};

G_DEFINE_FINAL_TYPE (RcRollView, rc_roll_view, GTK_TYPE_WIDGET)

/* Where one ribbon lies in the widget. */
typedef struct
{
  const RcCutting *cutting;
  guint            use;
  double           y, height;
} Ribbon;

static const RcPlan *
get_plan (RcRollView *self)
{
  RcOutcome *outcome = self->document ? rc_document_get_outcome (self->document) : NULL;
  return outcome ? outcome->plan : NULL;
}

static double
get_font_size (RcRollView *self)
{
  return rc_palette_get_font_size (GTK_WIDGET (self)) * FONT_PART;
}

static void
find_extent (const RcPlan *plan, RcLength *longest, RcLength *widest)
{
  *longest = *widest = 1;
  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);
      *widest = MAX (*widest, cutting->problem->roll_width);
      for (guint u = 0; u < cutting->answer->rolls->len; u++)
        *longest = MAX (*longest, ((const RcNestUse *)g_ptr_array_index (cutting->answer->rolls, u))->length);
    }
}

/* The width that the rolls are to fit at zoom 1: what is seen of the widget. */
static double
get_base_width (RcRollView *self, double width)
{
  GtkWidget *parent = gtk_widget_get_parent (GTK_WIDGET (self));
  return self->zoom > 1 && parent ? gtk_widget_get_width (parent) : width;
}

/* One scale for all rolls: the longest fits the width, yet a roll is neither too thick nor too thin to read. */
static double
compute_scale (RcRollView *self, double width)
{
  const RcPlan *plan = get_plan (self);
  RcLength      longest = 1, widest = 1;

  if (plan == NULL)
    return 1;
  find_extent (plan, &longest, &widest);
  double scale = MAX (width - 2 * MARGIN_PX, 1) / longest;
  return CLAMP (scale, WIDTH_PX_LEAST / (double)widest, WIDTH_PX_MOST / (double)widest) * self->zoom;
}

static GArray *
lay_out (RcRollView *self, double scale)
{
  const RcPlan *plan = get_plan (self);
  GArray       *ribbons = g_array_new (FALSE, FALSE, sizeof (Ribbon));
  double        y = MARGIN_PX;

  for (guint c = 0; plan && c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);
      for (guint u = 0; u < cutting->answer->rolls->len; u++)
        {
          Ribbon ribbon = { cutting, u, y, rc_roll_drawing_get_height (cutting, get_font_size (self), scale) };
          g_array_append_val (ribbons, ribbon);
          y += ribbon.height + GAP_PX;
        }
    }
  return ribbons;
}

static void
rc_roll_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                      int *minimum_baseline, int *natural_baseline)
{
  RcRollView   *self = RC_ROLL_VIEW (widget);
  const RcPlan *plan = get_plan (self);
  RcLength      longest = 1, widest = 1;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      if (plan)
        find_extent (plan, &longest, &widest);
      double scale = self->zoom > 1 ? compute_scale (self, get_base_width (self, 0)) : WIDTH_PX_LEAST / (double)widest;
      *minimum = plan ? MAX (REQUEST_WIDTH, (int)MIN (longest * scale + 2 * MARGIN_PX, WIDTH_MOST)) : REQUEST_WIDTH;
      *natural = *minimum;
      return;
    }
  double scale = compute_scale (self, get_base_width (self, for_size > 0 ? for_size : REQUEST_WIDTH));
  g_autoptr (GArray) ribbons = lay_out (self, scale);
  double height = 2 * MARGIN_PX;
  for (guint i = 0; i < ribbons->len; i++)
    height += g_array_index (ribbons, Ribbon, i).height + GAP_PX;
  *minimum = *natural = (int)height;
}

static void
draw_rolls (RcRollView *self, const GArray *ribbons, double scale, const GArray *lit, double alpha, cairo_t *cr)
{
  cairo_push_group (cr);
  for (guint i = 0; i < ribbons->len; i++)
    {
      const Ribbon *ribbon = &g_array_index (ribbons, Ribbon, i);
      rc_roll_drawing_draw (get_plan (self), ribbon->cutting, ribbon->use, rc_palette_for_widget (GTK_WIDGET (self)),
                            get_font_size (self), lit, MARGIN_PX, ribbon->y, scale, cr);
    }
  cairo_pop_group_to_source (cr);
  cairo_paint_with_alpha (cr, alpha);
}

static void
rc_roll_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  RcRollView *self = RC_ROLL_VIEW (widget);
  int         width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->document == NULL || width == 0 || height == 0)
    return;
  const RcPalette *palette = rc_palette_for_widget (widget);
  guint            chosen = rc_document_get_choice (self->document).piece;
  const GArray    *pointed = rc_document_get_pointed (self->document);
  double           scale = compute_scale (self, get_base_width (self, width));
  g_autoptr (GArray) ribbons = lay_out (self, scale);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));

  cairo_set_source_rgb (cr, palette->paper[0], palette->paper[1], palette->paper[2]);
  cairo_paint (cr);
  g_autoptr (GArray) lit = g_array_new (FALSE, FALSE, sizeof (guint));
  g_array_append_val (lit, chosen);
  g_array_append_vals (lit, pointed->data, pointed->len);
  draw_rolls (self, ribbons, scale, lit, rc_document_is_stale (self->document) ? STALE_ALPHA : 1, cr);
  cairo_destroy (cr);
}

/* The piece at a place; 0 for none. */
static guint
find_piece (RcRollView *self, double x, double y)
{
  const RcPlan *plan = get_plan (self);
  double        scale = compute_scale (self, get_base_width (self, gtk_widget_get_width (GTK_WIDGET (self))));

  if (plan == NULL)
    return 0;
  g_autoptr (GArray) ribbons = lay_out (self, scale);
  for (guint i = 0; i < ribbons->len; i++)
    {
      const Ribbon *ribbon = &g_array_index (ribbons, Ribbon, i);
      guint         piece = rc_roll_drawing_find_piece (plan, ribbon->cutting, ribbon->use, MARGIN_PX, ribbon->y, scale,
                                                        get_font_size (self), x, y);
      if (piece)
        return piece;
    }
  return 0;
}

static void
on_pressed (GtkGestureClick *click, int n_press, double x, double y, RcRollView *self)
{
  guint piece = find_piece (self, x, y);

  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (piece)
    rc_document_choose (self->document, rc_choice_of_piece (get_plan (self), piece));
}

static void
on_motion (RcRollView *self, double x, double y)
{
  if (self->document)
    rc_document_point (self->document, find_piece (self, x, y));
}

static void
on_left (RcRollView *self)
{
  if (self->document)
    rc_document_point (self->document, 0);
}

static gboolean
on_query_tooltip (RcRollView *self, int x, int y, gboolean by_keys, GtkTooltip *tooltip)
{
  g_autofree char *words = rc_item_dup_pointed_words (self->document);

  gtk_tooltip_set_text (tooltip, words);
  return words != NULL;
}

static gboolean
key_piece (GtkWidget *widget, GVariant *args, gpointer data)
{
  RcRollView   *self = RC_ROLL_VIEW (widget);
  const RcPlan *plan = get_plan (self);

  if (plan)
    rc_document_choose (self->document, rc_choice_step_piece (rc_document_get_choice (self->document), plan,
                                                              g_variant_get_int32 (args)));
  return TRUE;
}

static gboolean
key_zoom (GtkWidget *widget, GVariant *args, gpointer data)
{
  RcRollView *self = RC_ROLL_VIEW (widget);
  int         step = g_variant_get_int32 (args);

  self->zoom = step == 0 ? 1 : CLAMP (self->zoom * (step > 0 ? ZOOM_STEP : 1 / ZOOM_STEP), 1, 8);
  gtk_widget_queue_resize (widget);
  return TRUE;
}

static gboolean
key_edit (GtkWidget *widget, GVariant *args, gpointer data)
{
  gtk_widget_activate_action (widget, "bench.edit-chosen", NULL);
  return TRUE;
}

static void
on_planned (RcRollView *self)
{
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
on_chosen (RcRollView *self)
{
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
rc_roll_view_set_document (RcRollView *self, RcDocument *document)
{
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document)
    {
      g_signal_connect_swapped (document, "planned", G_CALLBACK (on_planned), self);
      g_signal_connect_swapped (document, "chosen", G_CALLBACK (on_chosen), self);
      g_signal_connect_swapped (document, "pointed", G_CALLBACK (on_chosen), self);
      on_planned (self);
    }
}

static void
rc_roll_view_dispose (GObject *object)
{
  rc_roll_view_set_document (RC_ROLL_VIEW (object), NULL);
  G_OBJECT_CLASS (rc_roll_view_parent_class)->dispose (object);
}

static GtkSizeRequestMode
rc_roll_view_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
rc_roll_view_class_init (RcRollViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_roll_view_dispose;
  widget_class->measure = rc_roll_view_measure;
  widget_class->get_request_mode = rc_roll_view_get_request_mode;
  widget_class->snapshot = rc_roll_view_snapshot;
  gtk_widget_class_set_css_name (widget_class, "rolls");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);

  gtk_widget_class_add_binding (widget_class, GDK_KEY_Right, 0, key_piece, "i", 1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Left, 0, key_piece, "i", -1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_n, 0, key_piece, "i", 1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_p, 0, key_piece, "i", -1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_plus, 0, key_zoom, "i", 1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_plus, GDK_SHIFT_MASK, key_zoom, "i", 1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_KP_Add, 0, key_zoom, "i", 1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_minus, 0, key_zoom, "i", -1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_KP_Subtract, 0, key_zoom, "i", -1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_0, 0, key_zoom, "i", 0);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Return, 0, key_edit, NULL);
}

static void
rc_roll_view_init (RcRollView *self)
{
  self->zoom = 1;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  GtkGesture *click = gtk_gesture_click_new ();
  g_signal_connect (click, "pressed", G_CALLBACK (on_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  GtkEventController *motion = gtk_event_controller_motion_new ();
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (on_left), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  g_signal_connect (self, "query-tooltip", G_CALLBACK (on_query_tooltip), NULL);
}
