#include "pointer-hand.h"

#include "viewport.h"

#define PATIENCE_US (60 * G_USEC_PER_SEC)
#define TRY_US      (5 * G_USEC_PER_SEC / 2)

gboolean
pointer_hand_is_missing (void)
{
  g_autofree char *path = g_find_program_in_path ("xdotool");

  if (path)
    return FALSE;
  g_test_skip ("xdotool is not installed");
  return TRUE;
}

static void
on_ended (GPid pid, int status, gpointer data)
{
  g_spawn_close_pid (pid);
  *(gboolean *)data = TRUE;
}

/* What the display's server had to send is here once it has answered. GTK hands on moves of the pointer with the next
 * frame, and lays out with the one after what they have changed. */
static void
handle_events (void)
{
  GListModel *windows = gtk_window_get_toplevels ();

  gdk_display_sync (gdk_display_get_default ());
  desk_fixture_settle ();
  for (guint frame = 0; frame < 2; frame++)
    for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
      {
        g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);
        if (gtk_widget_get_mapped (window))
          desk_fixture_paint (window);
        desk_fixture_settle ();
      }
}

void
pointer_hand_do (const char *format, ...)
{
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) argv = NULL;
  gboolean has_ended = FALSE;
  GPid     pid = 0;
  va_list  args;

  va_start (args, format);
  g_autofree char *command = g_strdup_vprintf (format, args);
  va_end (args);
  g_assert_true (g_shell_parse_argv (command, NULL, &argv, &error));
  g_spawn_async (NULL, argv, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_DO_NOT_REAP_CHILD, NULL, NULL, &pid, &error);
  g_assert_no_error (error);
  g_child_watch_add (pid, on_ended, &has_ended);
  while (!has_ended)
    g_main_context_iteration (NULL, TRUE);
  handle_events ();
}

RcFloorView *
pointer_hand_get_floor (PointerHand *hand)
{
  return rc_bench_get_floor_view (rc_window_get_bench (hand->desk.window));
}

RcDocument *
pointer_hand_get_document (PointerHand *hand)
{
  return rc_window_get_document (hand->desk.window);
}

const RcMeasure *
pointer_hand_get_measure (PointerHand *hand)
{
  return rc_document_get_measure (pointer_hand_get_document (hand));
}

static gboolean
is_in_time (gboolean (*ask) (gpointer data), gpointer data, gint64 patience_us)
{
  gint64 end = g_get_monotonic_time () + patience_us;

  while (!ask (data) && g_get_monotonic_time () < end)
    {
      desk_fixture_settle ();
      g_usleep (5000);
    }
  return ask (data);
}

void
pointer_hand_wait (gboolean (*ask) (gpointer data), gpointer data)
{
  g_assert_true (is_in_time (ask, data, PATIENCE_US));
}

gboolean
pointer_hand_try (gboolean (*ask) (gpointer data), gpointer data)
{
  return is_in_time (ask, data, TRY_US);
}

/* Clicks until it is so: what is clicked may have moved away under the hand, as a panel grows by what was typed. */
static void
click_until (PointerHand *hand, GtkWidget *(*find) (gpointer data), gboolean (*ask) (gpointer data), gpointer data)
{
  for (guint i = 0; i < POINTER_HAND_TRIES; i++)
    {
      GtkWidget *widget = find (data);
      if (widget != NULL)
        pointer_hand_click_widget (hand, widget);
      if (pointer_hand_try (ask, data))
        return;
    }
  g_assert_true (ask (data));
}

/* Where a point of a widget lies on the display. */
static void
find_on_display (GtkWidget *widget, double x, double y, int *display_x, int *display_y)
{
  GtkNative *native = gtk_widget_get_native (widget);
  double     left = 0, top = 0;

  gtk_widget_translate_coordinates (widget, GTK_WIDGET (native), x, y, &x, &y);
  gtk_native_get_surface_transform (native, &left, &top);
  x += left;
  y += top;
  for (GdkSurface *surface = gtk_native_get_surface (native); GDK_IS_POPUP (surface);
       surface = gdk_popup_get_parent (GDK_POPUP (surface)))
    {
      x += gdk_popup_get_position_x (GDK_POPUP (surface));
      y += gdk_popup_get_position_y (GDK_POPUP (surface));
    }
  *display_x = (int)(x + 0.5);
  *display_y = (int)(y + 0.5);
}

void
pointer_hand_point (PointerHand *hand, RcLength x, RcLength y)
{
  GtkWidget *floor = GTK_WIDGET (pointer_hand_get_floor (hand));
  int        display_x = 0, display_y = 0;
  double     at_x = 0, at_y = 0;

  rc_viewport_from_house (rc_floor_view_get_view (pointer_hand_get_floor (hand)), (RcPoint){ x, y }, &at_x, &at_y);
  g_assert_true (gtk_widget_contains (floor, at_x, at_y));
  find_on_display (floor, at_x, at_y, &display_x, &display_y);
  pointer_hand_do ("xdotool mousemove %d %d mousemove_relative 1 0 mousemove_relative -- -1 0", display_x, display_y);
}

void
pointer_hand_click (PointerHand *hand, RcLength x, RcLength y)
{
  pointer_hand_point (hand, x, y);
  pointer_hand_do ("xdotool click 1");
  hand->n_clicks++;
}

void
pointer_hand_drag (PointerHand *hand, RcLength x0, RcLength y0, RcLength x1, RcLength y1)
{
  pointer_hand_point (hand, x0, y0);
  pointer_hand_do ("xdotool mousedown 1");
  pointer_hand_point (hand, (x0 + x1) / 2, (y0 + y1) / 2);
  pointer_hand_point (hand, x1, y1);
  pointer_hand_do ("xdotool mouseup 1");
  hand->n_clicks++;
}

void
pointer_hand_key (PointerHand *hand, const char *name)
{
  pointer_hand_do ("xdotool key %s", name);
  hand->n_keys++;
}

void
pointer_hand_type (PointerHand *hand, const char *text)
{
  g_autofree char *quoted = g_shell_quote (text);

  pointer_hand_do ("xdotool type --delay 5 %s", quoted);
  hand->n_keys += (guint)g_utf8_strlen (text, -1);
}

/* Widgets. */

/* Turns the wheel over what scrolls until the widget can be seen. */
static void
bring_into_sight (PointerHand *hand, GtkWidget *widget)
{
  GtkWidget      *scrolled = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);
  graphene_rect_t bounds;
  int             x = 0, y = 0;

  for (int i = 0; scrolled && i < 100; i++)
    {
      g_assert_true (gtk_widget_compute_bounds (widget, scrolled, &bounds));
      gboolean is_above = bounds.origin.y < 0;
      if (!is_above && bounds.origin.y + bounds.size.height <= (float)gtk_widget_get_height (scrolled))
        return;
      find_on_display (scrolled, 3, gtk_widget_get_height (scrolled) / 2.0, &x, &y);
      pointer_hand_do ("xdotool mousemove %d %d click %d", x, y, is_above ? 4 : 5);
      desk_fixture_paint (GTK_WIDGET (hand->desk.window));
      hand->n_turns++;
    }
}

static void
click_times (PointerHand *hand, GtkWidget *widget, int times)
{
  int x = 0, y = 0;

  bring_into_sight (hand, widget);
  find_on_display (widget, gtk_widget_get_width (widget) / 2.0, gtk_widget_get_height (widget) / 2.0, &x, &y);
  pointer_hand_do ("xdotool mousemove %d %d click --repeat %d --delay 20 1", x, y, times);
  desk_fixture_paint (GTK_WIDGET (hand->desk.window));
  hand->n_clicks++;
}

void
pointer_hand_point_widget (GtkWidget *widget)
{
  int x = 0, y = 0;

  find_on_display (widget, gtk_widget_get_width (widget) / 2.0, gtk_widget_get_height (widget) / 2.0, &x, &y);
  pointer_hand_do ("xdotool mousemove %d %d mousemove_relative 1 0 mousemove_relative -- -1 0", x, y);
}

void
pointer_hand_click_widget (PointerHand *hand, GtkWidget *widget)
{
  click_times (hand, widget, 1);
}

void
pointer_hand_enter (PointerHand *hand, GtkWidget *entry, const char *text)
{
  click_times (hand, entry, 3);
  pointer_hand_type (hand, text);
}

typedef struct
{
  GtkWidget  *root;
  const char *text, *from; /* a label in the root's menu, and the one that leads to it; NULL: the root does */
} Sought;

GtkWidget *
pointer_hand_find_label (GtkWidget *root, const char *text)
{
  if (GTK_IS_LABEL (root) && gtk_widget_get_mapped (root)
      && g_str_has_prefix (gtk_label_get_text (GTK_LABEL (root)), text))
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = pointer_hand_find_label (child, text);
      if (found)
        return found;
    }
  return NULL;
}

static GtkWidget *
find_popover (GtkWidget *root)
{
  return desk_fixture_find (root, GTK_TYPE_POPOVER, NULL);
}

static GtkWidget *
find_label_of (const Sought *sought, const char *text)
{
  GtkWidget *popover = find_popover (sought->root);
  return popover ? pointer_hand_find_label (popover, text) : NULL;
}

static GtkWidget *
find_label (gpointer data)
{
  return find_label_of (data, ((const Sought *)data)->text);
}

static GtkWidget *
find_way (gpointer data)
{
  const Sought *sought = data;
  return sought->from ? find_label_of (sought, sought->from) : sought->root;
}

/* A part of a menu slides into its place. */
static gboolean
is_label_still (gpointer data)
{
  GtkWidget *label = find_label (data);
  GtkWidget *stack = label ? gtk_widget_get_ancestor (label, GTK_TYPE_STACK) : NULL;
  return label && (stack == NULL || !gtk_stack_get_transition_running (GTK_STACK (stack)));
}

static gboolean
is_shut (gpointer data)
{
  GtkWidget *popover = find_popover (((const Sought *)data)->root);
  return popover == NULL || !gtk_widget_get_mapped (popover);
}

void
pointer_hand_pick (PointerHand *hand, GtkWidget *drop_down, const char *labels)
{
  g_auto (GStrv) parts = g_strsplit (labels, "|", -1);
  Sought sought = { drop_down, NULL, NULL };

  for (guint i = 0; parts[i]; i++)
    {
      sought.from = sought.text;
      sought.text = parts[i];
      click_until (hand, find_way, is_label_still, &sought);
    }
  click_until (hand, find_label, is_shut, &sought);
}

static GtkWidget *
find_mapped (GtkWidget *root, const char *name)
{
  if (gtk_widget_get_mapped (root) && g_strcmp0 (gtk_buildable_get_buildable_id (GTK_BUILDABLE (root)), name) == 0)
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_mapped (child, name);
      if (found)
        return found;
    }
  return NULL;
}

GtkWidget *
pointer_hand_find (GtkWidget *root, const char *name)
{
  GtkWidget *found = find_mapped (root, name);

  if (found == NULL)
    g_test_message ("nothing on the screen is called %s", name);
  g_assert_nonnull (found);
  return found;
}
