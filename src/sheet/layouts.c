#include "layouts.h"

#include "text.h"

#define MOST_KEPT 4096

struct _RcLayouts
{
  PangoContext *context;
  GHashTable   *kept; /* Words -> PangoLayout */
};

/* Words in a font: what a layout is found again by. */
typedef struct
{
  double   size;
  gboolean bold;
  char    *text;
} Words;

static guint
words_hash (gconstpointer data)
{
  const Words *words = data;

  return g_str_hash (words->text) ^ (guint)(words->size * 64) ^ (words->bold ? 0x5555 : 0);
}

static gboolean
words_equal (gconstpointer a, gconstpointer b)
{
  const Words *one = a, *other = b;

  return one->size == other->size && one->bold == other->bold && g_str_equal (one->text, other->text);
}

static void
words_free (gpointer data)
{
  Words *words = data;

  g_free (words->text);
  g_free (words);
}

RcLayouts *
rc_layouts_new (PangoFontMap *fonts)
{
  RcLayouts *self = g_new0 (RcLayouts, 1);

  self->context = rc_text_context_new (fonts);
  self->kept = g_hash_table_new_full (words_hash, words_equal, words_free, g_object_unref);

  return self;
}

void
rc_layouts_free (RcLayouts *self)
{
  g_hash_table_unref (self->kept);
  g_object_unref (self->context);
  g_free (self);
}

static PangoLayout *
lay_out (RcLayouts *self, const char *text, double size, gboolean bold)
{
  PangoLayout          *layout = pango_layout_new (self->context);
  PangoFontDescription *font = pango_font_description_new ();
  g_autofree char      *valid = g_utf8_make_valid (text, -1);

  pango_font_description_set_family_static (font, RC_TEXT_FAMILY);
  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_font_description_set_weight (font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  pango_layout_set_text (layout, valid, -1);

  return layout;
}

PangoLayout *
rc_layouts_get (RcLayouts *self, const char *text, double size, gboolean bold)
{
  const Words  probe = { size, bold, (char *)text };
  PangoLayout *layout = g_hash_table_lookup (self->kept, &probe);
  Words       *words;

  if (layout)
    return layout;
  if (g_hash_table_size (self->kept) >= MOST_KEPT)
    g_hash_table_remove_all (self->kept);
  layout = lay_out (self, text, size, bold);
  words = g_new (Words, 1);
  *words = (Words){ size, bold, g_strdup (text) };
  g_hash_table_insert (self->kept, words, layout);

  return layout;
}
