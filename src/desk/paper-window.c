#include "paper-window.h"

#include <glib/gi18n-lib.h>

#include "file-dialog.h"
#include "mail.h"
#include "picture-decode.h"

#define MOST_PAGES   60
#define SHOWN_HEIGHT 1100 /* pixels of a page on the screen */

#define PAPER_KEY "rowcut-paper"

/* What the window shows, and where it may go. */
typedef struct
{
  GBytes       *pdf;
  GtkLabel     *note;      /* of the window */
  char         *file_name; /* NULL: it goes nowhere */
  RcSheetLetter letter;
} Paper;

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

static void
paper_free (gpointer data)
{
  Paper *paper = data;

  g_bytes_unref (paper->pdf);
  g_free (paper->file_name);
  rc_sheet_letter_clear (&paper->letter);
  g_free (paper);
}

static Paper *
get_paper (gpointer window)
{
  return g_object_get_data (G_OBJECT (window), PAPER_KEY);
}

static void
tell (GtkWidget *window, const char *text)
{
  GtkLabel *note = get_paper (window)->note;

  gtk_label_set_text (note, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (note), text != NULL);
}

const char *
rc_paper_window_get_told (GtkWidget *window)
{
  return gtk_label_get_text (get_paper (window)->note);
}

/* --- where it may go --- */

static gboolean
write_to (const Paper *paper, const char *path, GError **error)
{
  return g_file_set_contents (path, g_bytes_get_data (paper->pdf, NULL), (gssize)g_bytes_get_size (paper->pdf), error);
}

/* As a file where other programs may read it. (transfer full) */
static char *
put (const Paper *paper, GError **error)
{
  g_autofree char *path = rc_mail_dup_path (paper->file_name, error);

  return path != NULL && write_to (paper, path, error) ? g_steal_pointer (&path) : NULL;
}

static void
on_mailed (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GtkWidget) window = data;
  g_autoptr (GError) error = NULL;
  RcMailEnd end = RC_MAIL_CANCELLED;

  if (!rc_mail_compose_finish (result, &end, &error))
    tell (window, error->message);
  else
    tell (window, end == RC_MAIL_OPENED ? rc_mail_get_opened_words () : NULL);
}

static void
on_mail (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  const Paper *paper = get_paper (window);
  g_autoptr (GError) error = NULL;
  g_autofree char *path = put (paper, &error);

  if (path == NULL)
    {
      tell (window, error->message);
      return;
    }
  tell (window, NULL);
  rc_mail_compose_async (&(RcMail){ paper->letter.address, paper->letter.subject, paper->letter.text, path }, on_mailed,
                         g_object_ref (window));
}

static void
on_open (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = put (get_paper (window), &error);
  g_autofree char *uri = path != NULL ? g_filename_to_uri (path, NULL, &error) : NULL;

  if (uri != NULL)
    gtk_show_uri (GTK_WINDOW (window), uri, GDK_CURRENT_TIME);
  tell (window, error != NULL ? error->message : NULL);
}

static void
save (gpointer window, GFile *file)
{
  g_autofree char *path = g_file_get_path (file);
  g_autoptr (GError) error = NULL;
  gboolean         done = path != NULL && write_to (get_paper (window), path, &error);
  g_autofree char *text = done            ? g_strdup_printf (_ ("Saved as %s"), path)
                          : error != NULL ? g_strdup (error->message)
                                          : g_strdup (_ ("Only files on this machine can be written."));

  tell (window, text);
}

static void
on_save (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  const RcFileDialog dialog = { .title = _ ("Save as PDF"), .saves = TRUE, .name = get_paper (window)->file_name };

  rc_file_dialog_open (window, &dialog, save);
}

static void
add_way (GtkWidget *bar, const char *label, const char *tip, const char *action)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_tooltip_text (button, tip);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (bar), button);
}

static void
add_key (GtkWidget *window, guint key, GdkModifierType modifiers, const char *action)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (key, modifiers), gtk_named_action_new (action)));
  gtk_widget_add_controller (window, keys);
}

void
rc_paper_window_add_ways (GtkWidget *window, const char *file_name, const RcSheetLetter *letter)
{
  static const GActionEntry entries[] = { { "mail", on_mail }, { "save", on_save }, { "open", on_open } };
  g_autoptr (GSimpleActionGroup) group = g_simple_action_group_new ();
  GtkWidget *bar = gtk_header_bar_new ();
  Paper     *paper = get_paper (window);

  paper->file_name = g_strdup (file_name);
  paper->letter = (RcSheetLetter){ g_strdup (letter->address), g_strdup (letter->subject), g_strdup (letter->text) };
  g_action_map_add_action_entries (G_ACTION_MAP (group), entries, G_N_ELEMENTS (entries), window);
  gtk_widget_insert_action_group (window, "paper", G_ACTION_GROUP (group));
  add_way (bar, _ ("Open to print…"), _ ("In the desktop’s viewer (Ctrl+P)"), "paper.open");
  add_way (bar, _ ("Save as PDF…"), _ ("Save this sheet (Ctrl+S)"), "paper.save");
  add_way (bar, _ ("E-mail…"), _ ("This sheet as an attachment in the mail program (Ctrl+E)"), "paper.mail");
  gtk_window_set_titlebar (GTK_WINDOW (window), bar);
  add_key (window, GDK_KEY_p, GDK_CONTROL_MASK, "paper.open");
  add_key (window, GDK_KEY_s, GDK_CONTROL_MASK, "paper.save");
  add_key (window, GDK_KEY_e, GDK_CONTROL_MASK, "paper.mail");
}

GtkWidget *
rc_paper_window_new (GtkWindow *parent, const char *title, GBytes *pdf)
{
  GtkWidget *window = gtk_window_new (), *scrolled = gtk_scrolled_window_new ();
  GtkWidget *pages = gtk_box_new (GTK_ORIENTATION_VERTICAL, 16), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  Reading   *reading = g_new0 (Reading, 1);
  Paper     *paper = g_new0 (Paper, 1);

  paper->pdf = g_bytes_ref (pdf);
  paper->note = GTK_LABEL (gtk_label_new (""));
  gtk_label_set_wrap (paper->note, TRUE);
  gtk_label_set_xalign (paper->note, 0);
  gtk_widget_add_css_class (GTK_WIDGET (paper->note), "note-bar");
  gtk_widget_set_visible (GTK_WIDGET (paper->note), FALSE);
  g_object_set_data_full (G_OBJECT (window), PAPER_KEY, paper, paper_free);
  gtk_window_set_title (GTK_WINDOW (window), title);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (window), 900, 760);
  add_key (window, GDK_KEY_Escape, 0, "window.close");
  add_key (window, GDK_KEY_w, GDK_CONTROL_MASK, "window.close");
  gtk_widget_add_css_class (scrolled, "pages");
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), pages);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (paper->note));
  gtk_box_append (GTK_BOX (box), scrolled);
  gtk_window_set_child (GTK_WINDOW (window), box);
  g_weak_ref_init (&reading->window, window);
  reading->pages = GTK_BOX (pages);
  reading->pdf = g_bytes_ref (pdf);
  reading->page = 1;
  rc_picture_read_async (pdf, 1, on_read, reading);
  return window;
}
