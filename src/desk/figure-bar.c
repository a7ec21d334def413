#include "figure-bar.h"

#include <glib/gi18n-lib.h>

struct _RcFigureBar
{
  GtkBox parent_instance;

  RcDocument *document;
  GtkLabel   *values[RC_N_FIGURES], *details[RC_N_FIGURES], *befores[RC_N_FIGURES];
  GtkSpinner *spinner;
  GtkLabel   *progress_label;
};

G_DEFINE_FINAL_TYPE (RcFigureBar, rc_figure_bar, GTK_TYPE_BOX)

static const char *const NAMES[RC_N_FIGURES] = { "carpet", "waste", "seams", "total" };

static void
set_class (GtkLabel *label, const char *css_class, gboolean on)
{
  if (on)
    gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  else
    gtk_widget_remove_css_class (GTK_WIDGET (label), css_class);
}

static void
show_figure (RcFigureBar *self, RcFigure which, const RcLengthStyle *style)
{
  const RcFigures *now = rc_document_get_figures (self->document);
  const RcFigures *before = rc_document_get_figures_before (self->document);
  g_autofree char *value = now ? rc_figures_format (now, which, style) : g_strdup ("—");
  g_autofree char *detail = now ? rc_figures_format_detail (now, which, style) : g_strdup ("");
  g_autofree char *was = NULL;
  int              change = now && before ? rc_figures_compare (before, now, which) : 0;

  if (change != 0)
    {
      g_autofree char *old = rc_figures_format (before, which, style);
      was = g_strdup_printf (_ ("%s was %s"), change > 0 ? "▲" : "▼", old);
    }
  gtk_label_set_text (self->values[which], value);
  gtk_label_set_text (self->details[which], detail);
  gtk_label_set_text (self->befores[which], was ? was : "");
  set_class (self->befores[which], "up", change > 0);
  set_class (self->befores[which], "down", change < 0);
  set_class (self->values[which], "stale", rc_document_is_stale (self->document));
}

/* How far the search is, and under the pointer what it looks at. */
static void
show_progress (RcFigureBar *self)
{
  const char      *what;
  double           share = rc_document_get_progress (self->document, &what);
  g_autofree char *percent = what ? g_strdup_printf ("%.0f %%", share * 100) : g_strdup ("");
  g_autofree char *tip = what ? g_strdup_printf (_ ("Looking for a better plan: %s"), what) : NULL;

  gtk_spinner_set_spinning (self->spinner, rc_document_is_busy (self->document));
  gtk_label_set_text (self->progress_label, percent);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->progress_label), tip);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->spinner), tip ? tip : _ ("Looking for a better plan"));
}

static void
show (RcFigureBar *self)
{
  const RcLengthStyle *style = rc_job_get_length_style (rc_document_get_job (self->document));

  for (guint i = 0; i < RC_N_FIGURES; i++)
    show_figure (self, i, style);
  show_progress (self);
}

void
rc_figure_bar_set_document (RcFigureBar *self, RcDocument *document)
{
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "planned", G_CALLBACK (show), self);
  show (self);
}

const char *
rc_figure_bar_get_text (RcFigureBar *self, RcFigure which)
{
  return gtk_label_get_text (self->values[which]);
}

static void
rc_figure_bar_dispose (GObject *object)
{
  rc_figure_bar_set_document (RC_FIGURE_BAR (object), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_FIGURE_BAR);
  G_OBJECT_CLASS (rc_figure_bar_parent_class)->dispose (object);
}

static void
bind_labels (GtkWidgetClass *klass, const char *suffix, gsize offset)
{
  for (guint i = 0; i < RC_N_FIGURES; i++)
    {
      g_autofree char *name = g_strdup_printf ("%s_%s", NAMES[i], suffix);
      gtk_widget_class_bind_template_child_full (klass, name, FALSE, offset + i * sizeof (GtkLabel *));
    }
}

static void
rc_figure_bar_class_init (RcFigureBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_figure_bar_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/figure-bar.ui");
  bind_labels (widget_class, "value", G_STRUCT_OFFSET (RcFigureBar, values));
  bind_labels (widget_class, "detail", G_STRUCT_OFFSET (RcFigureBar, details));
  bind_labels (widget_class, "before", G_STRUCT_OFFSET (RcFigureBar, befores));
  gtk_widget_class_bind_template_child (widget_class, RcFigureBar, spinner);
  gtk_widget_class_bind_template_child (widget_class, RcFigureBar, progress_label);
}

static void
rc_figure_bar_init (RcFigureBar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
