#include "paper-window.h"

#include <glib/gi18n-lib.h>

#include "picture-decode.h"

#define MOST_PAGES   60
#define SHOWN_HEIGHT 1100 /* pixels of a page on the screen */

/* Pages come one after the other; the window may be gone by then. */
typedef struct
{
  GWeakRef window;
  GtkBox  *pages; /* of the window */
  GBytes  *pdf;
  guint    page; /* that is being read, from 1 */
} Reading;

static void
reading_free (Reading *reading)
{
  g_weak_ref_clear (&reading->window);
  g_bytes_unref (reading->pdf);
  g_free (reading);
}

static void
draw_page (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  cairo_surface_t *picture = data;
  double           scale = height / (double)cairo_image_surface_get_height (picture);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, scale, scale);
  cairo_set_source_surface (cr, picture, 0, 0);
  cairo_paint (cr);
}

static void
add_page (Reading *reading, cairo_surface_t *picture)
{
  GtkWidget       *area = gtk_drawing_area_new ();
  g_autofree char *label = g_strdup_printf (_ ("Page %u"), reading->page);
  int              wide = cairo_image_surface_get_width (picture), high = cairo_image_surface_get_height (picture);

  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (area), SHOWN_HEIGHT);
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (area), SHOWN_HEIGHT * wide / MAX (high, 1));
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_page, picture, (GDestroyNotify)cairo_surface_destroy);
  gtk_widget_set_halign (area, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (area, "page");
  gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_box_append (reading->pages, area);
}

static void
on_read (GObject *source, GAsyncResult *result, gpointer data)
{
  Reading *reading = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GtkWidget) window = g_weak_ref_get (&reading->window);
  cairo_surface_t *picture = rc_picture_read_finish (result, &error);

  if (window != NULL && picture != NULL)
    add_page (reading, g_steal_pointer (&picture));
  else if (window != NULL && reading->page == 1)
    gtk_box_append (reading->pages, gtk_label_new (error->message));
  g_clear_pointer (&picture, cairo_surface_destroy);
  if (window == NULL || error != NULL || reading->page == MOST_PAGES)
    {
      reading_free (reading);
      return;
    }
  reading->page++;
  rc_picture_read_async (reading->pdf, reading->page, on_read, reading);
}

GtkWidget *
rc_paper_window_new (GtkWindow *parent, const char *title, GBytes *pdf)
{
  GtkWidget          *window = gtk_window_new (), *scrolled = gtk_scrolled_window_new ();
  GtkWidget          *pages = gtk_box_new (GTK_ORIENTATION_VERTICAL, 16);
  GtkEventController *keys = gtk_shortcut_controller_new ();
  g_autoptr (GtkShortcut) close
      = gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0), gtk_named_action_new ("window.close"));
  Reading *reading = g_new0 (Reading, 1);

  gtk_window_set_title (GTK_WINDOW (window), title);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (window), 900, 760);
  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys), g_steal_pointer (&close));
  gtk_widget_add_controller (window, keys);
  gtk_widget_add_css_class (scrolled, "pages");
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), pages);
  gtk_window_set_child (GTK_WINDOW (window), scrolled);
  g_weak_ref_init (&reading->window, window);
  reading->pages = GTK_BOX (pages);
  reading->pdf = g_bytes_ref (pdf);
  reading->page = 1;
  rc_picture_read_async (pdf, 1, on_read, reading);
  return window;
}
