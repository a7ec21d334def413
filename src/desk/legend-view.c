#include "legend-view.h"

#include "floor-figure.h"
#include "palette.h"

#define FONT_PART      0.72 /* of the text around it */
#define WIDE_PX        (1 << 20)
#define PAD_PX         6
#define LEAST_WIDTH_PX 240
#define MOST_LINES     10 /* of text: a narrow floor is worth more than its legend */

struct _RcLegendView
{
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (RcLegendView, rc_legend_view, GTK_TYPE_WIDGET)

static double
get_font_size (GtkWidget *widget)
{
  return rc_palette_get_font_size (widget) * FONT_PART;
}

static GtkSizeRequestMode
rc_legend_view_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
rc_legend_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                        int *minimum_baseline, int *natural_baseline)
{
  double font_size = get_font_size (widget);

  *minimum = *natural = LEAST_WIDTH_PX;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    return;
  int width = for_size > 0 ? for_size : WIDE_PX; /* whatever width: what it takes at most */
  int height = (int)rc_legend_get_height (font_size, width - 2 * PAD_PX) + 1;
  *minimum = *natural = height <= MOST_LINES * font_size ? height : 0;
}

static void
rc_legend_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  if (gtk_widget_get_height (widget) == 0)
    return;
  int      width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));

  const RcPalette *palette = rc_palette_for_widget (widget);
  cairo_set_source_rgb (cr, palette->paper[0], palette->paper[1], palette->paper[2]);
  cairo_paint (cr);
  rc_legend_draw (cr, palette, get_font_size (widget), PAD_PX, 0, width - 2 * PAD_PX);
  cairo_destroy (cr);
}

static void
rc_legend_view_class_init (RcLegendViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->get_request_mode = rc_legend_view_get_request_mode;
  widget_class->measure = rc_legend_view_measure;
  widget_class->snapshot = rc_legend_view_snapshot;
  gtk_widget_class_set_css_name (widget_class, "legend");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
rc_legend_view_init (RcLegendView *self)
{
}
