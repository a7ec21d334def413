#include "goods.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "room.h"
#include "rowcut-error.h"
#include "wide.h"
#include "words.h"

static const char *const kind_names[] = { "carpet", "cushion", "tape", "sealer", "strip", "adhesive", "transition" };
G_STATIC_ASSERT (G_N_ELEMENTS (kind_names) == RC_N_GOODS_KINDS);

/* The unit a kind is usually priced in: common practice, no source. */
static const RcUnit usual_units[] = {
  RC_UNIT_SQ_YD, RC_UNIT_SQ_YD, RC_UNIT_FT, RC_UNIT_EACH, RC_UNIT_FT, RC_UNIT_GALLON, RC_UNIT_EACH,
};
G_STATIC_ASSERT (G_N_ELEMENTS (usual_units) == RC_N_GOODS_KINDS);

/* Matches with a name of their own. */
static const char *const match_names[] = { "set", "half-drop", "quarter-drop" };
static const RcMatch     matches[] = { RC_MATCH_SET, RC_MATCH_HALF_DROP, RC_MATCH_QUARTER_DROP };

RcGoods *
rc_goods_new (const char *id, RcGoodsKind kind, const char *name)
{
  RcGoods *goods = g_new0 (RcGoods, 1);

  goods->id = g_strdup (id);
  goods->kind = kind;
  goods->name = g_strdup (name);
  goods->unit = usual_units[kind];
  goods->pack_unit = RC_UNIT_EACH;
  return goods;
}

RcGoods *
rc_goods_copy (const RcGoods *goods)
{
  RcGoods *copy = g_memdup2 (goods, sizeof *goods);

  copy->id = g_strdup (goods->id);
  copy->name = g_strdup (goods->name);
  copy->supplier = g_strdup (goods->supplier);
  return copy;
}

void
rc_goods_free (RcGoods *goods)
{
  if (goods == NULL)
    return;
  g_free (goods->id);
  g_free (goods->name);
  g_free (goods->supplier);
  g_free (goods);
}

gboolean
rc_goods_equal (const RcGoods *a, const RcGoods *b)
{
  return g_strcmp0 (a->id, b->id) == 0 && a->kind == b->kind && g_strcmp0 (a->name, b->name) == 0
         && g_strcmp0 (a->supplier, b->supplier) == 0 && a->unit == b->unit && a->roll_width == b->roll_width
         && a->usable_width == b->usable_width && a->repeat_length == b->repeat_length
         && a->repeat_width == b->repeat_width && a->match == b->match && a->length_step == b->length_step
         && a->least_cut == b->least_cut && a->full_roll == b->full_roll && a->pack_micro == b->pack_micro
         && a->pack_unit == b->pack_unit && a->tape_width == b->tape_width && a->pack_covers_area == b->pack_covers_area
         && a->pack_covers_length == b->pack_covers_length;
}

static const void *
find_carpet_fault (const RcGoods *goods, char **fault)
{
  const RcLength *const lengths[]
      = { &goods->repeat_length, &goods->repeat_width, &goods->length_step, &goods->full_roll, &goods->least_cut };

  if (goods->roll_width <= 0)
    *fault = g_strdup_printf (_ ("Carpet “%s” has no roll width; it must be more than 0, as 12 ft or 4 m"), goods->id);
  else if (goods->roll_width > RC_ROOM_MAX_SIDE)
    *fault = g_strdup_printf (_ ("Carpet “%s”: a roll is at most 1 km wide"), goods->id);
  if (*fault != NULL)
    return &goods->roll_width;
  if (goods->usable_width < 0 || goods->usable_width > goods->roll_width)
    {
      *fault = g_strdup_printf (_ ("Carpet “%s”: the usable width must not be more than the roll width"), goods->id);
      return &goods->usable_width;
    }
  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    if (*lengths[i] < 0)
      {
        *fault = g_strdup_printf (
            _ ("Carpet “%s”: repeats, length step, full roll and shortest cut must not be less than 0"), goods->id);
        return lengths[i];
      }
  if (goods->match == RC_MATCH_SET || goods->repeat_length > 0)
    return NULL;
  *fault = g_strdup_printf (_ ("Carpet “%s” has a %s match but no repeat length"), goods->id,
                            rc_match_get_name (goods->match));
  return &goods->repeat_length;
}

const void *
rc_goods_find_fault (const RcGoods *goods, char **fault)
{
  const void *member = goods->pack_micro < 0           ? (const void *)&goods->pack_micro
                       : goods->pack_covers_area < 0   ? (const void *)&goods->pack_covers_area
                       : goods->pack_covers_length < 0 ? (const void *)&goods->pack_covers_length
                                                       : NULL;

  *fault = NULL;
  if (member != NULL)
    *fault = g_strdup_printf (_ ("Goods “%s”: a pack must not hold or cover less than 0"), goods->id);
  else if (goods->kind == RC_GOODS_CARPET)
    member = find_carpet_fault (goods, fault);
  return member;
}

gboolean
rc_goods_check (const RcGoods *goods, GError **error)
{
  g_autofree char *fault = NULL;

  if (rc_goods_find_fault (goods, &fault) == NULL)
    return TRUE;
  g_set_error_literal (error, RC_ERROR, RC_ERROR_RANGE, fault);
  return FALSE;
}

const char *
rc_goods_kind_get_name (RcGoodsKind kind)
{
  g_return_val_if_fail ((guint)kind < RC_N_GOODS_KINDS, "");
  return kind_names[kind];
}

gboolean
rc_goods_kind_parse (const char *name, RcGoodsKind *kind, GError **error)
{
  guint index;

  if (!rc_words_parse (kind_names, G_N_ELEMENTS (kind_names), _ ("kind of goods"), name, &index, error))
    return FALSE;
  *kind = index;
  return TRUE;
}

guint
rc_match_get_numerator (RcMatch match)
{
  return match >> 16;
}

guint
rc_match_get_denominator (RcMatch match)
{
  return MAX (1, match & 0xffff);
}

const char *
rc_match_get_name (RcMatch match)
{
  for (guint i = 0; i < G_N_ELEMENTS (matches); i++)
    if (match == matches[i])
      return match_names[i];
  g_autofree char *name
      = g_strdup_printf ("%u/%u-drop", rc_match_get_numerator (match), rc_match_get_denominator (match));
  return g_intern_string (name);
}

/* "1/3-drop"; FALSE when it is no such thing. */
static gboolean
parse_fraction (const char *name, RcMatch *match)
{
  g_auto (GStrv) parts = g_strsplit (name, "/", 2);
  guint64 numerator, denominator;

  if (g_strv_length (parts) != 2 || !g_str_has_suffix (parts[1], "-drop"))
    return FALSE;
  parts[1][strlen (parts[1]) - strlen ("-drop")] = '\0';
  if (!g_ascii_string_to_unsigned (parts[0], 10, 1, RC_MATCH_MOST - 1, &numerator, NULL)
      || !g_ascii_string_to_unsigned (parts[1], 10, 2, RC_MATCH_MOST, &denominator, NULL) || numerator >= denominator)
    return FALSE;
  guint64 common = (guint64)rc_wide_find_divisor (numerator, denominator);
  *match = RC_MATCH (numerator / common, denominator / common);
  return TRUE;
}

gboolean
rc_match_parse (const char *name, RcMatch *match, GError **error)
{
  const char *word = name != NULL ? name : "";

  for (guint i = 0; i < G_N_ELEMENTS (matches); i++)
    if (g_str_equal (word, match_names[i]))
      {
        *match = matches[i];
        return TRUE;
      }
  if (parse_fraction (word, match))
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_PARSE,
               _ ("“%s” is no pattern match; it should be one of: %s, or a fraction of the repeat, as 1/3-drop"), word,
               "set, half-drop, quarter-drop");
  return FALSE;
}

RcLength
rc_goods_get_usable_width (const RcGoods *goods)
{
  return goods->usable_width > 0 ? goods->usable_width : goods->roll_width;
}

RcLength
rc_goods_compute_matching_width (const RcGoods *goods)
{
  RcLength width = rc_goods_get_usable_width (goods), repeat = goods->repeat_width;

  return repeat <= 0 || repeat > width ? width : width / repeat * repeat;
}

RcLength
rc_goods_compute_drop (const RcGoods *goods, gint64 widths)
{
  gint64 denominator = rc_match_get_denominator (goods->match);
  gint64 parts = widths % denominator * rc_match_get_numerator (goods->match) % denominator;

  if (parts < 0)
    parts += denominator;
  return (RcLength)((__int128)goods->repeat_length * parts / denominator);
}

RcLength
rc_goods_compute_bought (const RcGoods *goods, RcLength length)
{
  return length > 0 ? rc_length_round_up (MAX (length, goods->least_cut), goods->length_step) : 0;
}

RcLength
rc_goods_compute_longest (const RcGoods *goods)
{
  RcLength step = MAX (goods->length_step, 1);
  if (goods->full_roll <= 0)
    return G_MAXINT64;
  RcLength roll = MAX (goods->full_roll / step * step, rc_goods_compute_bought (goods, 1));
  return MAX (1, roll - goods->repeat_length);
}
