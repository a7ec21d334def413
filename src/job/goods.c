#include "goods.h"

#include <glib/gi18n-lib.h>

#include "words.h"

static const char *const kind_names[] = { "carpet", "cushion", "tape", "sealer", "strip", "adhesive", "transition" };
G_STATIC_ASSERT (G_N_ELEMENTS (kind_names) == RC_N_GOODS_KINDS);

/* The unit a kind is usually priced in: common practice, no source. */
static const RcUnit usual_units[] = {
  RC_UNIT_SQ_YD, RC_UNIT_SQ_YD, RC_UNIT_FT, RC_UNIT_EACH, RC_UNIT_FT, RC_UNIT_GALLON, RC_UNIT_EACH,
};
G_STATIC_ASSERT (G_N_ELEMENTS (usual_units) == RC_N_GOODS_KINDS);

static const char *const match_names[] = { "set", "half-drop", "quarter-drop" };

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

const char *
rc_match_get_name (RcMatch match)
{
  g_return_val_if_fail ((guint)match < G_N_ELEMENTS (match_names), "");
  return match_names[match];
}

gboolean
rc_match_parse (const char *name, RcMatch *match, GError **error)
{
  guint index;

  if (!rc_words_parse (match_names, G_N_ELEMENTS (match_names), _ ("pattern match"), name, &index, error))
    return FALSE;
  *match = index;
  return TRUE;
}

RcLength
rc_goods_get_usable_width (const RcGoods *goods)
{
  return goods->usable_width > 0 ? goods->usable_width : goods->roll_width;
}

RcLength
rc_goods_get_drop (const RcGoods *goods)
{
  switch (goods->match)
    {
    case RC_MATCH_HALF_DROP:
      return goods->repeat_length / 2;
    case RC_MATCH_QUARTER_DROP:
      return goods->repeat_length / 4;
    case RC_MATCH_SET:
    default:
      return 0;
    }
}
