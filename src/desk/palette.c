#include "palette.h"

const RcPalette *
rc_palette_for_widget (GtkWidget *widget)
{
  GtkStyleContext *context = gtk_widget_get_style_context (widget);
  GdkRGBA          ink;

  /* The theme's own ink: that of a widget which is not sensitive is paler. */
  if (!gtk_style_context_lookup_color (context, "theme_fg_color", &ink))
    gtk_style_context_get_color (context, &ink);
  return 0.299 * ink.red + 0.587 * ink.green + 0.114 * ink.blue > 0.5 ? &RC_PALETTE_DARK : &RC_PALETTE_PAPER;
}

double
rc_palette_get_font_size (GtkWidget *widget)
{
  PangoContext               *context = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *font = pango_context_get_font_description (context);
  double                      size = pango_font_description_get_size (font) / (double)PANGO_SCALE;

  return pango_font_description_get_size_is_absolute (font) ? size
                                                            : size * pango_cairo_context_get_resolution (context) / 72;
}
