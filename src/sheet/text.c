#include "text.h"

#include <string.h>

typedef struct
{
  double   size;
  gboolean bold;
  double   grey;
} Style;

static const Style styles[RC_N_TEXT_STYLES] = {
  [RC_TEXT_TITLE] = { 19, TRUE, 0.08 },   [RC_TEXT_SHOP] = { 15, TRUE, 0.08 },
  [RC_TEXT_HEADING] = { 11, TRUE, 0.08 }, [RC_TEXT_SUBHEADING] = { 9, TRUE, 0.08 },
  [RC_TEXT_BODY] = { 8.5, FALSE, 0.10 },  [RC_TEXT_STRONG] = { 8.5, TRUE, 0.08 },
  [RC_TEXT_NOTE] = { 7.25, FALSE, 0.36 }, [RC_TEXT_LABEL] = { 6.75, TRUE, 0.36 },
  [RC_TEXT_TOTAL] = { 11.5, TRUE, 0.05 },
};

PangoContext *
rc_text_context_new (PangoFontMap *fonts)
{
  PangoContext         *context = pango_font_map_create_context (fonts);
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (context, options);
  pango_cairo_context_set_resolution (context, 72);
  pango_context_set_round_glyph_positions (context, FALSE);
  /* The locale's language must not choose the font: the same job gives the same bytes everywhere. */
  pango_context_set_language (context, pango_language_from_string ("en"));
  pango_context_set_base_dir (context, PANGO_DIRECTION_LTR);
  cairo_font_options_destroy (options);

  return context;
}

/* Keeps a length in one line: 2' 11 1/2" has two spaces at which a line may not end. */
static void
keep_lengths_together (PangoLayout *layout, const char *text)
{
  PangoAttrList *attributes = NULL;

  for (const char *space = strchr (text, ' '); space != NULL; space = strchr (space + 1, ' '))
    {
      PangoAttribute *attribute;

      if (space == text || !g_ascii_isdigit (space[1]) || !(g_ascii_isdigit (space[-1]) || space[-1] == '\''))
        continue;
      if (attributes == NULL)
        attributes = pango_attr_list_new ();
      attribute = pango_attr_allow_breaks_new (FALSE);
      attribute->start_index = (guint)(space - 1 - text);
      attribute->end_index = (guint)(space + 2 - text);
      pango_attr_list_insert (attributes, attribute);
    }
  if (attributes == NULL)
    return;
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
}

PangoLayout *
rc_text_layout_new (PangoContext *context, RcTextStyle style, const char *text, double width)
{
  PangoLayout          *layout = pango_layout_new (context);
  PangoFontDescription *font = pango_font_description_new ();
  g_autofree char      *valid = g_utf8_make_valid (text ? text : "", -1);

  pango_font_description_set_family_static (font, RC_TEXT_FAMILY);
  pango_font_description_set_absolute_size (font, styles[style].size * PANGO_SCALE);
  pango_font_description_set_weight (font, styles[style].bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_line_spacing (layout, 1.12f);
  pango_layout_set_text (layout, valid, -1);
  if (width > 0)
    {
      keep_lengths_together (layout, valid);
      pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
      /* Half a unit more, lest a text measured before wraps in its own width. */
      pango_layout_set_width (layout, (int)(width * PANGO_SCALE) + 1);
    }

  return layout;
}

void
rc_text_measure (PangoLayout *layout, double *width, double *height)
{
  int pango_width, pango_height;

  pango_layout_get_size (layout, &pango_width, &pango_height);
  if (width)
    *width = (double)pango_width / PANGO_SCALE;
  if (height)
    *height = (double)pango_height / PANGO_SCALE;
}

double
rc_text_style_get_grey (RcTextStyle style)
{
  return styles[style].grey;
}

double
rc_text_style_get_size (RcTextStyle style)
{
  return styles[style].size;
}

char *
rc_text_format_double (double value, int decimals)
{
  char format[8] = "%.0f";
  char text[64];

  format[2] = (char)('0' + CLAMP (decimals, 0, 6));
  return g_strdup (g_ascii_formatd (text, sizeof text, format, value));
}

char *
rc_text_format_length (const RcJob *job, RcLength length)
{
  return rc_length_format (length, rc_job_get_length_style (job));
}

char *
rc_text_format_size (const RcJob *job, RcLength width, RcLength length)
{
  g_autofree char *across = rc_text_format_length (job, width);
  g_autofree char *along = rc_text_format_length (job, length);

  return g_strdup_printf ("%s × %s", across, along);
}

char *
rc_text_format_area (const RcJob *job, RcArea area)
{
  if (job->units == RC_UNITS_METRIC)
    return rc_area_format (area, RC_AREA_UNIT_M2, 2, TRUE);

  return rc_area_format (area, RC_AREA_UNIT_SQ_YD, 2, TRUE);
}

char *
rc_text_format_percent (gint64 ppm)
{
  g_autofree char *number = rc_quantity_format (ppm * 100, 4);

  return g_strdup_printf ("%s %%", number);
}

char *
rc_text_format_tenths (gint64 ppm)
{
  gint64 tenths = (ABS (ppm) + 500) / 1000;

  return g_strdup_printf ("%s%" G_GINT64_FORMAT ".%" G_GINT64_FORMAT " %%", ppm < 0 && tenths > 0 ? "-" : "",
                          tenths / 10, tenths % 10);
}

char *
rc_text_format_amount (RcMoney money, const RcCurrency *currency)
{
  g_autofree char *text = rc_money_format (money, currency);
  g_autofree char *tail = g_strdup_printf (" %s", currency->code);

  if (g_str_has_suffix (text, tail))
    text[strlen (text) - strlen (tail)] = '\0';

  return g_steal_pointer (&text);
}
