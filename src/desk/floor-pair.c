#include "floor-pair.h"

#include <glib/gi18n-lib.h>

#include "palette.h"

#define MARGIN_PX    14
#define LEAST_HEIGHT 220
#define FONT_PART    0.75
#define TINT         0.30

struct _RcFloorPair
{
  GtkWidget parent_instance;

  RcOutcome *before, *after; /* both or none */
  gboolean   is_overlaid;
};

G_DEFINE_FINAL_TYPE (RcFloorPair, rc_floor_pair, GTK_TYPE_WIDGET)

/* Where one storey of one or both measures is drawn. */
typedef struct
{
  cairo_t         *cr;
  const RcPalette *palette;
  RcView           view;
  int              floor;
} Field;

static void
take_box (const RcHouse *house, int floor, RcBox *box, gboolean *has_box)
{
  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (house->rooms, i);
      RcBox               one = rc_ring_compute_box (placed->polygon->outer);

      if (placed->room->floor != floor)
        continue;
      if (!*has_box)
        *box = one;
      box->x0 = MIN (box->x0, one.x0);
      box->y0 = MIN (box->y0, one.y0);
      box->x1 = MAX (box->x1, one.x1);
      box->y1 = MAX (box->y1, one.y1);
      *has_box = TRUE;
    }
}

/* The storeys that either has, lowest first. (transfer full) GArray of int. */
static GArray *
list_floors (RcFloorPair *self)
{
  GArray    *floors = g_array_new (FALSE, FALSE, sizeof (int));
  RcOutcome *sides[] = { self->before, self->after };

  for (guint s = 0; s < G_N_ELEMENTS (sides); s++)
    for (guint i = 0; i < sides[s]->plan->house->rooms->len; i++)
      {
        const RcPlacedRoom *placed = g_ptr_array_index (sides[s]->plan->house->rooms, i);
        guint               at = 0;

        while (at < floors->len && g_array_index (floors, int, at) < placed->room->floor)
          at++;
        if (at == floors->len || g_array_index (floors, int, at) != placed->room->floor)
          g_array_insert_val (floors, at, placed->room->floor);
      }
  return floors;
}

static void
trace_rooms (const Field *field, const RcHouse *house)
{
  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (house->rooms, i);
      const RcRing       *ring = placed->polygon->outer;

      if (placed->room->floor != field->floor)
        continue;
      cairo_new_sub_path (field->cr);
      for (guint k = 0; k < ring->len; k++)
        cairo_line_to (field->cr, field->view.x0 + rc_ring_get (ring, k)->x * field->view.scale,
                       field->view.y0 - rc_ring_get (ring, k)->y * field->view.scale);
      cairo_close_path (field->cr);
    }
}

/* Tints what lies in `has` and not in `lacks`. */
static void
tint_difference (const Field *field, const RcHouse *has, const RcHouse *lacks, const double colour[3])
{
  cairo_push_group (field->cr);
  cairo_new_path (field->cr);
  trace_rooms (field, has);
  cairo_set_source_rgba (field->cr, colour[0], colour[1], colour[2], TINT);
  cairo_fill (field->cr);
  cairo_new_path (field->cr);
  trace_rooms (field, lacks);
  cairo_set_operator (field->cr, CAIRO_OPERATOR_CLEAR);
  cairo_fill (field->cr);
  cairo_pop_group_to_source (field->cr);
  cairo_paint (field->cr);
}

static void
draw_plan (const Field *field, const RcPlan *plan, double font_size)
{
  const RcFloorDrawing drawing = { .layers = RC_FLOOR_LAYER_ROOMS | RC_FLOOR_LAYER_PIECES | RC_FLOOR_LAYER_SEAMS,
                                   .palette = field->palette,
                                   .font_size = font_size,
                                   .floor = field->floor,
                                   .plan = plan };

  rc_floor_drawing_draw (&drawing, &field->view, field->cr);
}

static void
draw_over (const Field *field, const RcHouse *before, const RcPlan *after, double font_size)
{
  tint_difference (field, after->house, before, field->palette->accent);
  tint_difference (field, before, after->house, field->palette->warn);
  rc_floor_drawing_draw_house (after->house, field->floor, after->job->units, field->palette, font_size, NULL,
                               &field->view, field->cr);
  cairo_new_path (field->cr);
  trace_rooms (field, before);
  cairo_set_source_rgb (field->cr, field->palette->warn[0], field->palette->warn[1], field->palette->warn[2]);
  cairo_set_line_width (field->cr, 1.6);
  cairo_set_dash (field->cr, (double[]){ 5, 4 }, 2, 0);
  cairo_stroke (field->cr);
  cairo_set_dash (field->cr, NULL, 0, 0);
}

static void
rc_floor_pair_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  RcFloorPair *self = RC_FLOOR_PAIR (widget);
  double       width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double       font_size = rc_palette_get_font_size (widget) * FONT_PART;

  if (self->before == NULL || width < 1 || height < 1)
    return;
  Field field = { .palette = rc_palette_for_widget (widget) };
  field.cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  cairo_set_source_rgb (field.cr, field.palette->paper[0], field.palette->paper[1], field.palette->paper[2]);
  cairo_paint (field.cr);
  g_autoptr (GArray) floors = list_floors (self);
  guint n_cells = floors->len * (self->is_overlaid ? 1 : 2);
  for (guint cell = 0; cell < n_cells; cell++)
    {
      RcBox    box = { 0 };
      gboolean has_box = FALSE;

      field.floor = g_array_index (floors, int, self->is_overlaid ? cell : cell / 2);
      take_box (self->before->plan->house, field.floor, &box, &has_box);
      take_box (self->after->plan->house, field.floor, &box, &has_box);
      field.view = rc_view_fit_box (box, cell * width / n_cells, 0, width / n_cells, height, MARGIN_PX);
      cairo_save (field.cr);
      cairo_rectangle (field.cr, cell * width / n_cells, 0, width / n_cells, height);
      cairo_clip (field.cr);
      if (self->is_overlaid)
        draw_over (&field, self->before->plan->house, self->after->plan, font_size);
      else
        draw_plan (&field, cell % 2 == 0 ? self->before->plan : self->after->plan, font_size);
      cairo_restore (field.cr);
    }
  cairo_destroy (field.cr);
}

static void
rc_floor_pair_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                       int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = LEAST_HEIGHT;
}

void
rc_floor_pair_show (RcFloorPair *self, RcOutcome *before, RcOutcome *after)
{
  g_clear_pointer (&self->before, rc_outcome_unref);
  g_clear_pointer (&self->after, rc_outcome_unref);
  if (before != NULL && after != NULL)
    {
      self->before = rc_outcome_ref (before);
      self->after = rc_outcome_ref (after);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
rc_floor_pair_set_overlaid (RcFloorPair *self, gboolean is_overlaid)
{
  self->is_overlaid = is_overlaid;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  is_overlaid ? _ ("The two measures over one another; the changes are listed below")
                                              : _ ("The two measures side by side; the changes are listed below"),
                                  -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
rc_floor_pair_finalize (GObject *object)
{
  RcFloorPair *self = RC_FLOOR_PAIR (object);

  g_clear_pointer (&self->before, rc_outcome_unref);
  g_clear_pointer (&self->after, rc_outcome_unref);
  G_OBJECT_CLASS (rc_floor_pair_parent_class)->finalize (object);
}

static void
rc_floor_pair_class_init (RcFloorPairClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = rc_floor_pair_finalize;
  widget_class->measure = rc_floor_pair_measure;
  widget_class->snapshot = rc_floor_pair_snapshot;
  gtk_widget_class_set_css_name (widget_class, "floorpair");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
rc_floor_pair_init (RcFloorPair *self)
{
  rc_floor_pair_set_overlaid (self, TRUE);
}

GtkWidget *
rc_floor_pair_new (void)
{
  return g_object_new (RC_TYPE_FLOOR_PAIR, "hexpand", TRUE, "vexpand", TRUE, NULL);
}
