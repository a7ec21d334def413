#include "floor-painter.h"

#include <math.h>

#define MARGIN      0.4 /* painted beyond each edge, in parts of what is seen */
#define LEAST_AHEAD 0.1 /* when less than this is left of it, the next picture is begun */
#define MOST_PIXELS 8192

/* A scene with the picture of it and of `margin` around. */
typedef struct
{
  RcFloorScene     scene;
  double           margin_x, margin_y;
  RcLayouts       *layouts; /* borrowed: one painting at a time */
  cairo_surface_t *surface; /* NULL until painted */
} Picture;

struct _RcFloorPainter
{
  GObject parent_instance;

  void (*painted) (gpointer data); /* NULL: stopped */
  gpointer   data;
  Picture   *shown;    /* nullable */
  Picture   *wanted;   /* to be painted next; nullable */
  Picture   *painting; /* borrowed from its task; nullable */
  RcLayouts *layouts;
};

G_DEFINE_FINAL_TYPE (RcFloorPainter, rc_floor_painter, G_TYPE_OBJECT)

static Picture *
picture_new (const RcFloorScene *scene, RcLayouts *layouts)
{
  Picture *picture = g_new0 (Picture, 1);
  double   most = MOST_PIXELS / (double)scene->scale_factor;

  picture->scene = *scene;
  rc_outcome_ref (scene->outcome);
  picture->margin_x = floor (CLAMP (scene->width * MARGIN, 0, MAX (0, (most - scene->width) / 2)));
  picture->margin_y = floor (CLAMP (scene->height * MARGIN, 0, MAX (0, (most - scene->height) / 2)));
  picture->layouts = layouts;
  return picture;
}

static void
picture_free (Picture *picture)
{
  rc_outcome_unref (picture->scene.outcome);
  g_clear_pointer (&picture->surface, cairo_surface_destroy);
  g_free (picture);
}

static void
paint (Picture *picture)
{
  const RcFloorScene *scene = &picture->scene;
  double              width = scene->width + 2 * picture->margin_x, height = scene->height + 2 * picture->margin_y;
  RcView         view = { scene->view.x0 + picture->margin_x, scene->view.y0 + picture->margin_y, scene->view.scale };
  RcFloorDrawing drawing = { .layers = RC_FLOOR_LAYER_ALL,
                             .palette = scene->palette,
                             .font_size = scene->font_size,
                             .floor = scene->floor,
                             .plan = scene->outcome->plan,
                             .layouts = picture->layouts,
                             .focus = { picture->margin_x, picture->margin_y, picture->margin_x + scene->width,
                                        picture->margin_y + scene->height } };

  picture->surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)width * scene->scale_factor,
                                                 (int)height * scene->scale_factor);
  cairo_surface_set_device_scale (picture->surface, scene->scale_factor, scene->scale_factor);
  cairo_t *cr = cairo_create (picture->surface);
  cairo_set_source_rgb (cr, scene->palette->paper[0], scene->palette->paper[1], scene->palette->paper[2]);
  cairo_paint (cr);
  rc_floor_drawing_draw (&drawing, &view, cr);
  cairo_destroy (cr);
  cairo_surface_flush (picture->surface);
}

static void
paint_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  paint (data);
  g_task_return_boolean (task, TRUE);
}

/* The same floor in the same colours: it may be shown while a better one is painted. */
static gboolean
is_alike (const RcFloorScene *a, const RcFloorScene *b)
{
  return a->floor == b->floor && a->palette == b->palette;
}

/* Sharp, and with at least `ahead` parts of what is seen painted beyond each edge. */
static gboolean
covers (const Picture *picture, const RcFloorScene *scene, double ahead)
{
  const RcFloorScene *painted = &picture->scene;
  double              dx = scene->view.x0 - painted->view.x0, dy = scene->view.y0 - painted->view.y0;
  double spare_x = picture->margin_x - ahead * scene->width, spare_y = picture->margin_y - ahead * scene->height;

  return is_alike (painted, scene) && painted->outcome == scene->outcome && painted->font_size == scene->font_size
         && painted->scale_factor == scene->scale_factor && painted->view.scale == scene->view.scale && dx <= spare_x
         && dx + painted->width >= scene->width - spare_x && dy <= spare_y
         && dy + painted->height >= scene->height - spare_y;
}

static void on_painted (GObject *source, GAsyncResult *result, gpointer data);

static void
start (RcFloorPainter *self)
{
  self->painting = g_steal_pointer (&self->wanted);
  g_autoptr (GTask) task = g_task_new (self, NULL, on_painted, NULL);
  g_task_set_task_data (task, self->painting, NULL);
  g_task_run_in_thread (task, paint_thread);
}

static void
on_painted (GObject *source, GAsyncResult *result, gpointer data)
{
  RcFloorPainter *self = RC_FLOOR_PAINTER (source);

  g_clear_pointer (&self->shown, picture_free);
  self->shown = g_steal_pointer (&self->painting);
  if (self->painted == NULL)
    return;
  if (self->wanted)
    start (self);
  self->painted (self->data);
}

void
rc_floor_painter_want (RcFloorPainter *self, const RcFloorScene *scene)
{
  g_clear_pointer (&self->wanted, picture_free);
  if (self->painting ? covers (self->painting, scene, LEAST_AHEAD)
                     : self->shown && covers (self->shown, scene, LEAST_AHEAD))
    return;
  self->wanted = picture_new (scene, self->layouts);
  if (self->painting == NULL)
    start (self);
}

void
rc_floor_painter_draw (RcFloorPainter *self, const RcFloorScene *scene, double alpha, cairo_t *cr)
{
  const Picture *picture = self->shown;

  if (picture == NULL || !is_alike (&picture->scene, scene))
    return;
  double   larger = scene->view.scale / picture->scene.view.scale;
  gboolean is_same_scale = fabs (larger - 1) < 1e-9;
  double   x = scene->view.x0 - (picture->scene.view.x0 + picture->margin_x) * larger;
  double   y = scene->view.y0 - (picture->scene.view.y0 + picture->margin_y) * larger;

  cairo_save (cr);
  if (is_same_scale) /* whole pixels: copied, not mixed */
    cairo_translate (cr, round (x * scene->scale_factor) / scene->scale_factor,
                     round (y * scene->scale_factor) / scene->scale_factor);
  else
    {
      cairo_translate (cr, x, y);
      cairo_scale (cr, larger, larger);
    }
  cairo_set_source_surface (cr, picture->surface, 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr), is_same_scale ? CAIRO_FILTER_NEAREST : CAIRO_FILTER_BILINEAR);
  cairo_paint_with_alpha (cr, alpha);
  cairo_restore (cr);
}

RcFloorPainter *
rc_floor_painter_new (void (*painted) (gpointer data), gpointer data)
{
  RcFloorPainter *self = g_object_new (RC_TYPE_FLOOR_PAINTER, NULL);

  self->painted = painted;
  self->data = data;
  return self;
}

void
rc_floor_painter_stop (RcFloorPainter *self)
{
  self->painted = NULL;
  g_clear_pointer (&self->wanted, picture_free);
}

static void
rc_floor_painter_finalize (GObject *object)
{
  RcFloorPainter *self = RC_FLOOR_PAINTER (object);

  g_clear_pointer (&self->shown, picture_free);
  g_clear_pointer (&self->wanted, picture_free);
  rc_layouts_free (self->layouts);
  G_OBJECT_CLASS (rc_floor_painter_parent_class)->finalize (object);
}

static void
rc_floor_painter_class_init (RcFloorPainterClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_floor_painter_finalize;
}

static void
rc_floor_painter_init (RcFloorPainter *self)
{
  g_autoptr (PangoFontMap) fonts = pango_cairo_font_map_new (); /* not the main thread's */
  self->layouts = rc_layouts_new (fonts);
}
