#include "stock-ribbon.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "palette.h"

#define ROW_HEIGHTS    1.1 /* in font heights */
#define DETAIL_HEIGHTS 2.6
#define RULER_HEIGHTS  1.6
#define LEAST_WIDTH    160
#define HATCH_PX       5.0

struct _RcStockRibbon
{
  GtkWidget parent_instance;

  gboolean             detailed;
  RcLength             longest;
  GArray              *stretches; /* of RcStretch; NULL: no roll */
  GArray              *flaws;     /* of RcFlaw, from where the roll starts now */
  const RcLengthStyle *style;
};

G_DEFINE_FINAL_TYPE (RcStockRibbon, rc_stock_ribbon, GTK_TYPE_WIDGET)

typedef struct
{
  RcStockRibbon   *self;
  cairo_t         *cr;
  const RcPalette *palette;
  double           scale, height; /* pixels a tick; of the ribbon */
} Brush;

static double
get_height (RcStockRibbon *self)
{
  return ceil (rc_palette_get_font_size (GTK_WIDGET (self)) * (self->detailed ? DETAIL_HEIGHTS : ROW_HEIGHTS));
}

static double
get_ruler (RcStockRibbon *self)
{
  return self->detailed ? ceil (rc_palette_get_font_size (GTK_WIDGET (self)) * RULER_HEIGHTS) : 0;
}

static void
rc_stock_ribbon_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                         int *minimum_baseline, int *natural_baseline)
{
  RcStockRibbon *self = RC_STOCK_RIBBON (widget);

  *minimum = *natural
      = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_WIDTH : (int)(get_height (self) + get_ruler (self)) + 2;
}

static void
set_colour (const Brush *brush, const double colour[3], double alpha)
{
  cairo_set_source_rgba (brush->cr, colour[0], colour[1], colour[2], alpha);
}

/* Lines that rise to the right (1), fall (-1), or both (0). */
static void
hatch (const Brush *brush, double x, double width, int direction)
{
  cairo_save (brush->cr);
  cairo_rectangle (brush->cr, x, 0, width, brush->height);
  cairo_clip (brush->cr);
  for (int line = (int)floor ((x - brush->height) / HATCH_PX); line * HATCH_PX < x + width; line++)
    {
      double at = line * HATCH_PX;

      if (direction >= 0)
        {
          cairo_move_to (brush->cr, at, brush->height);
          cairo_line_to (brush->cr, at + brush->height, 0);
        }
      if (direction <= 0)
        {
          cairo_move_to (brush->cr, at, 0);
          cairo_line_to (brush->cr, at + brush->height, brush->height);
        }
    }
  cairo_set_line_width (brush->cr, 1);
  cairo_stroke (brush->cr);
  cairo_restore (brush->cr);
}

static void
write_text (const Brush *brush, const char *text, double x, double y, double width)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (brush->self), text);
  PangoAttrList *list = pango_attr_list_new ();
  int            wide, high;

  pango_attr_list_insert (list, pango_attr_scale_new (0.8));
  pango_layout_set_attributes (layout, list);
  pango_attr_list_unref (list);
  pango_layout_get_pixel_size (layout, &wide, &high);
  if (wide + 4 > width)
    return;
  set_colour (brush, brush->palette->paper, 0.85);
  cairo_rectangle (brush->cr, x + (width - wide) / 2 - 2, y - high / 2.0, wide + 4, high);
  cairo_fill (brush->cr);
  set_colour (brush, brush->palette->ink, 1);
  cairo_move_to (brush->cr, x + (width - wide) / 2, y - high / 2.0);
  pango_cairo_show_layout (brush->cr, layout);
}

static void
draw_stretch (const Brush *brush, const RcStretch *stretch, double x)
{
  double           width = stretch->length * brush->scale;
  g_autofree char *length = rc_length_format (stretch->length, brush->self->style);
  g_autofree char *text = NULL;

  /* Paper first: a chosen row has the theme's colour behind it. */
  cairo_rectangle (brush->cr, x, 0, width, brush->height);
  set_colour (brush, brush->palette->paper, stretch->kind == RC_STRETCH_GONE ? 0 : 1);
  cairo_fill_preserve (brush->cr);
  set_colour (brush, brush->palette->ink, stretch->kind == RC_STRETCH_GONE ? 0 : 0.12);
  cairo_fill (brush->cr);
  if (stretch->kind == RC_STRETCH_KEPT || stretch->kind == RC_STRETCH_KEPT_HERE)
    {
      gboolean is_here = stretch->kind == RC_STRETCH_KEPT_HERE;

      set_colour (brush, is_here ? brush->palette->accent : brush->palette->ink, is_here ? 0.9 : 0.5);
      hatch (brush, x, width, is_here ? 1 : -1);
    }
  set_colour (brush, brush->palette->ink, stretch->kind == RC_STRETCH_GONE ? 0.45 : 0.9);
  if (stretch->kind == RC_STRETCH_GONE)
    cairo_set_dash (brush->cr, (double[]){ 3, 3 }, 2, 0);
  cairo_set_line_width (brush->cr, 1);
  cairo_rectangle (brush->cr, x + 0.5, 0.5, MAX (width - 1, 0), brush->height - 1);
  cairo_stroke (brush->cr);
  cairo_set_dash (brush->cr, NULL, 0, 0);
  if (!brush->self->detailed)
    return;
  text = stretch->kind == RC_STRETCH_FREE   ? g_strdup_printf (_ ("%s free"), length)
         : stretch->kind == RC_STRETCH_GONE ? g_strdup_printf (_ ("%s cut, %s"), length, stretch->job)
                                            : g_strdup_printf (_ ("%s for %s"), length, stretch->job);
  write_text (brush, text, x, brush->height / 2, width);
}

static void
draw_flaws (const Brush *brush, double start)
{
  for (guint i = 0; i < brush->self->flaws->len; i++)
    {
      const RcFlaw *flaw = &g_array_index (brush->self->flaws, RcFlaw, i);
      double        x = start + flaw->from * brush->scale, width = MAX ((flaw->to - flaw->from) * brush->scale, 3);

      set_colour (brush, brush->palette->paper, 1);
      cairo_rectangle (brush->cr, x, 0, width, brush->height);
      cairo_fill (brush->cr);
      set_colour (brush, brush->palette->warn, 1);
      hatch (brush, x, width, 0);
      cairo_rectangle (brush->cr, x + 0.5, 0.5, width - 1, brush->height - 1);
      cairo_stroke (brush->cr);
    }
}

/* Lengths at both ends of what is on the roll now. */
static void
draw_ruler (const Brush *brush, double start, RcLength length)
{
  double           end = start + length * brush->scale;
  g_autofree char *text = rc_length_format (length, brush->self->style);
  double           y = brush->height + get_ruler (brush->self) / 2;

  set_colour (brush, brush->palette->ink, 0.6);
  cairo_set_line_width (brush->cr, 1);
  cairo_move_to (brush->cr, start + 0.5, brush->height + 2);
  cairo_line_to (brush->cr, start + 0.5, y + 4);
  cairo_move_to (brush->cr, start + 0.5, y);
  cairo_line_to (brush->cr, end - 0.5, y);
  cairo_move_to (brush->cr, end - 0.5, brush->height + 2);
  cairo_line_to (brush->cr, end - 0.5, y + 4);
  cairo_stroke (brush->cr);
  write_text (brush, text, start, y, end - start);
}

static void
rc_stock_ribbon_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  RcStockRibbon *self = RC_STOCK_RIBBON (widget);
  double         width = gtk_widget_get_width (widget), x = 0, start = 0;
  RcLength       length = 0;

  if (self->stretches == NULL || self->longest <= 0)
    return;
  Brush brush = { .self = self,
                  .palette = rc_palette_for_widget (widget),
                  .scale = (width - 2) / self->longest,
                  .height = get_height (self) };
  brush.cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)gtk_widget_get_height (widget)));
  cairo_translate (brush.cr, 1, 1);
  for (guint i = 0; i < self->stretches->len; i++)
    {
      const RcStretch *stretch = &g_array_index (self->stretches, RcStretch, i);

      draw_stretch (&brush, stretch, x);
      x += stretch->length * brush.scale;
      start = stretch->kind == RC_STRETCH_GONE ? x : start;
      length += stretch->kind == RC_STRETCH_GONE ? 0 : stretch->length;
    }
  draw_flaws (&brush, start);
  if (self->detailed)
    draw_ruler (&brush, start, length);
  cairo_destroy (brush.cr);
}

void
rc_stock_ribbon_show (RcStockRibbon *self, const RcStockLine *line, const GArray *stretches, RcLength longest,
                      const RcLengthStyle *style)
{
  g_autofree char *said = line != NULL ? rc_stock_line_dup_said (line, style) : g_strdup (_ ("No roll is chosen"));

  g_clear_pointer (&self->stretches, g_array_unref);
  g_clear_pointer (&self->flaws, g_array_unref);
  if (line != NULL)
    {
      self->stretches = g_array_copy ((GArray *)(stretches != NULL ? stretches : line->stretches));
      self->flaws = g_array_copy (line->roll->flaws);
    }
  self->longest = longest;
  self->style = style;
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), said);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
rc_stock_ribbon_finalize (GObject *object)
{
  RcStockRibbon *self = RC_STOCK_RIBBON (object);

  g_clear_pointer (&self->stretches, g_array_unref);
  g_clear_pointer (&self->flaws, g_array_unref);
  G_OBJECT_CLASS (rc_stock_ribbon_parent_class)->finalize (object);
}

static void
rc_stock_ribbon_class_init (RcStockRibbonClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = rc_stock_ribbon_finalize;
  widget_class->measure = rc_stock_ribbon_measure;
  widget_class->snapshot = rc_stock_ribbon_snapshot;
  gtk_widget_class_set_css_name (widget_class, "ribbon");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
rc_stock_ribbon_init (RcStockRibbon *self)
{
  self->style = &RC_LENGTH_STYLE_IMPERIAL;
}

GtkWidget *
rc_stock_ribbon_new (gboolean detailed)
{
  RcStockRibbon *self = g_object_new (RC_TYPE_STOCK_RIBBON, NULL);

  self->detailed = detailed;
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  return GTK_WIDGET (self);
}
