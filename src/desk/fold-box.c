#include "fold-box.h"

#define GAP         12
#define LEAST_CHARS 40 /* that the second needs beside the first */

struct _RcFoldBox
{
  GtkWidget parent_instance;

  int      width; /* that it was last laid out in; 0: never */
  gboolean is_folded;
  int      second_height; /* kept free while the second is hidden */
};

G_DEFINE_FINAL_TYPE (RcFoldBox, rc_fold_box, GTK_TYPE_WIDGET)

typedef struct
{
  GtkWidget *first, *second; /* the second NULL while it is hidden */
} Pair;

static Pair
get_pair (GtkWidget *widget)
{
  GtkWidget *first = gtk_widget_get_first_child (widget), *second = gtk_widget_get_last_child (widget);

  return (Pair){ first, second && second != first && gtk_widget_get_visible (second) ? second : NULL };
}

static int
get_width (GtkWidget *child, gboolean natural)
{
  int minimum = 0, wanted = 0;

  if (child)
    gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, &wanted, NULL, NULL);
  return natural ? wanted : minimum;
}

static int
get_height (GtkWidget *child, int width)
{
  int minimum = 0;

  if (child)
    gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, width, &minimum, NULL, NULL, NULL);
  return minimum;
}

static int
get_least (RcFoldBox *self)
{
  PangoContext     *context = gtk_widget_get_pango_context (GTK_WIDGET (self));
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);
  int               width = pango_font_metrics_get_approximate_char_width (metrics);

  pango_font_metrics_unref (metrics);
  return LEAST_CHARS * width / PANGO_SCALE;
}

/* What comes and goes in the children does not move them to and fro: once it is folded in a width it stays so. */
static gboolean
is_folded (RcFoldBox *self, Pair pair, int width)
{
  if (width == self->width && self->is_folded)
    return TRUE;
  return get_width (pair.first, TRUE) + GAP + get_least (self) > width;
}

static int
get_second_height (RcFoldBox *self, Pair pair)
{
  return pair.second ? get_height (pair.second, -1) : self->second_height;
}

static GtkSizeRequestMode
rc_fold_box_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
rc_fold_box_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                     int *minimum_baseline, int *natural_baseline)
{
  RcFoldBox *self = RC_FOLD_BOX (widget);
  Pair       pair = get_pair (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = MAX (get_width (pair.first, FALSE), get_width (pair.second, FALSE));
      *natural = get_width (pair.first, TRUE) + (pair.second ? GAP + get_width (pair.second, TRUE) : 0);
      return;
    }
  int width = for_size >= 0 ? for_size : G_MAXINT, first = get_height (pair.first, -1);
  int second = get_second_height (self, pair);
  *minimum = *natural = is_folded (self, pair, width) ? first + GAP / 2 + second : MAX (first, second);
}

static void
rc_fold_box_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  RcFoldBox *self = RC_FOLD_BOX (widget);
  Pair       pair = get_pair (widget);

  self->is_folded = is_folded (self, pair, width);
  self->width = width;
  self->second_height = get_second_height (self, pair);
  if (self->is_folded)
    {
      int first = get_height (pair.first, -1);
      gtk_widget_size_allocate (pair.first, &(GtkAllocation){ 0, 0, width, first }, -1);
      if (pair.second)
        gtk_widget_size_allocate (pair.second, &(GtkAllocation){ 0, first + GAP / 2, width, height - first - GAP / 2 },
                                  -1);
      return;
    }
  int                 left = pair.second ? get_width (pair.first, TRUE) : width;
  gboolean            is_rtl = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  int                 rest = width - left - GAP;
  const GtkAllocation first = { is_rtl ? width - left : 0, 0, left, height };
  const GtkAllocation second = { is_rtl ? 0 : left + GAP, 0, rest, height };

  if (pair.first)
    gtk_widget_size_allocate (pair.first, &first, -1);
  if (pair.second)
    gtk_widget_size_allocate (pair.second, &second, -1);
}

static void
rc_fold_box_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (rc_fold_box_parent_class)->dispose (object);
}

static void
rc_fold_box_class_init (RcFoldBoxClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_fold_box_dispose;
  widget_class->get_request_mode = rc_fold_box_get_request_mode;
  widget_class->measure = rc_fold_box_measure;
  widget_class->size_allocate = rc_fold_box_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "fold");
}

static void
rc_fold_box_init (RcFoldBox *self)
{
}
