#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "text.h"

const char *
rc_words_get_place (const RcPlan *plan, const char *id)
{
  const RcRoom  *room;
  const RcStair *stair;

  if (!id)
    return "";
  room = rc_measure_find_room (plan->measure, id);
  if (room)
    return room->name ? room->name : room->id;
  stair = rc_measure_find_stair (plan->measure, id);
  return stair && stair->name ? stair->name : id;
}

const char *
rc_words_get_goods (const RcPlan *plan, const char *id)
{
  const RcGoods *goods = id ? rc_job_find_goods (plan->job, id) : NULL;

  if (!id)
    return "";

  return goods && goods->name ? goods->name : id;
}

const char *
rc_words_get_area (const RcPlan *plan, const char *id)
{
  const RcFloorArea *area = id ? rc_measure_find_area (plan->measure, id) : NULL;

  if (!id)
    return "";

  return area && area->name ? area->name : id;
}

const char *
rc_words_get_piece_kind (const RcPiece *piece)
{
  switch (piece->kind)
    {
    case RC_PIECE_DROP:
      return _ ("Drop");
    case RC_PIECE_STAIR:
      return _ ("Stair");
    case RC_PIECE_FILL:
      break;
    }

  return piece->fill ? _ ("Joined fill") : _ ("Fill");
}

const char *
rc_words_get_seam_kind (RcSeamKind kind)
{
  return kind == RC_SEAM_SIDE ? _ ("Side seam") : _ ("Cross seam");
}

char *
rc_words_dup_pile (double degrees)
{
  double           turn = degrees - 360 * floor (degrees / 360);
  g_autofree char *number = NULL;

  if (turn == 0)
    return g_strdup (_ ("to the right of the plan"));
  if (turn == 90)
    return g_strdup (_ ("to the top of the plan"));
  if (turn == 180)
    return g_strdup (_ ("to the left of the plan"));
  if (turn == 270)
    return g_strdup (_ ("to the bottom of the plan"));
  number = rc_text_format_double (turn < 180 ? turn : 360 - turn, 0);

  return g_strdup_printf (
      turn < 180 ? _ ("%s° up from the right of the plan") : _ ("%s° down from the right of the plan"), number);
}

char *
rc_words_dup_floor (int floor)
{
  if (floor == 0)
    return g_strdup (_ ("Ground floor"));
  if (floor == -1)
    return g_strdup (_ ("Basement"));
  if (floor < 0)
    return g_strdup_printf (_ ("Basement %d"), -floor);

  return g_strdup_printf (_ ("Floor %d above ground"), floor);
}

char *
rc_words_dup_packs (gint64 packs, RcUnit pack_unit)
{
  gulong n = (gulong)CLAMP (packs, 0, G_MAXINT32);

  if (packs <= 0)
    return g_strdup ("");
  switch (pack_unit)
    {
    case RC_UNIT_ROLL:
      return g_strdup_printf (ngettext ("%lu roll", "%lu rolls", n), n);
    case RC_UNIT_CARTON:
      return g_strdup_printf (ngettext ("%lu carton", "%lu cartons", n), n);
    case RC_UNIT_BOX:
      return g_strdup_printf (ngettext ("%lu box", "%lu boxes", n), n);
    case RC_UNIT_TUB:
      return g_strdup_printf (ngettext ("%lu tub", "%lu tubs", n), n);
    default:
      return g_strdup_printf (ngettext ("%lu piece", "%lu pieces", n), n);
    }
}

char *
rc_words_dup_customer (const RcCustomer *customer)
{
  const char *parts[] = { customer->name, customer->address, customer->phone, customer->email };
  GString    *text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i] && *parts[i])
      g_string_append_printf (text, "%s%s", text->len ? "\n" : "", parts[i]);

  return g_string_free (text, FALSE);
}
