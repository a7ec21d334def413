#include "room.h"

#include <glib/gi18n-lib.h>

#include "words.h"

static const char *const style_names[] = { "waterfall", "cap-and-band" };

RcStair *
rc_stair_new (const char *id, const char *name)
{
  RcStair *stair = g_new0 (RcStair, 1);

  stair->id = g_strdup (id);
  stair->name = g_strdup (name);
  /* Litchfield, Renovation, "Carpeting stairs": 1 in a step and 6 in once; 2 1/2 in on the width, 1 1/4 in of tuck at
   * each side. */
  stair->nose_extra = RC_TICKS_PER_INCH;
  stair->end_extra = 6 * RC_TICKS_PER_INCH;
  stair->width_extra = 5 * RC_TICKS_PER_INCH / 2;
  return stair;
}

RcStair *
rc_stair_copy (const RcStair *stair)
{
  RcStair *copy = g_memdup2 (stair, sizeof *stair);

  copy->id = g_strdup (stair->id);
  copy->name = g_strdup (stair->name);
  copy->carpet = g_strdup (stair->carpet);
  copy->cushion = g_strdup (stair->cushion);
  copy->notes = g_strdup (stair->notes);
  return copy;
}

void
rc_stair_free (RcStair *stair)
{
  if (stair == NULL)
    return;
  g_free (stair->id);
  g_free (stair->name);
  g_free (stair->carpet);
  g_free (stair->cushion);
  g_free (stair->notes);
  g_free (stair);
}

gboolean
rc_stair_compute_cut (const RcStair *stair, RcLength *cut_width, RcLength *cut_length)
{
  RcLength step, flight, width, length;

  if (!rc_length_add (stair->going, stair->rise, &step) || !rc_length_add (step, stair->nose_extra, &step)
      || !rc_length_multiply (step, stair->steps, &flight) || !rc_length_add (flight, stair->end_extra, &length)
      || !rc_length_add (stair->width, stair->width_extra, &width))
    return FALSE;
  *cut_width = width;
  *cut_length = length;
  return TRUE;
}

const char *
rc_stair_style_get_name (RcStairStyle style)
{
  g_return_val_if_fail ((guint)style < G_N_ELEMENTS (style_names), "");
  return style_names[style];
}

gboolean
rc_stair_style_parse (const char *name, RcStairStyle *style, GError **error)
{
  guint index;

  if (!rc_words_parse (style_names, G_N_ELEMENTS (style_names), _ ("way to carpet a stair"), name, &index, error))
    return FALSE;
  *style = index;
  return TRUE;
}
