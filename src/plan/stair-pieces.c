#include "stair-pieces.h"

#include "option.h"
#include "pattern.h"
#include "rowcut-error.h"

#include <glib/gi18n-lib.h>

/* Pieces of a stair share a pattern that runs down it, from its middle. */
static void
hold_stair_piece (RcPiece *piece, const RcGoods *carpet, const RcStairPiece *of, guint n_pieces)
{
  if (n_pieces == 1)
    return;
  RcLength over = (of->cut_length - of->length) / 2;
  piece->repeat = carpet->repeat_length;
  piece->phase = piece->repeat > 0 ? rc_wrap (of->from_top - over, piece->repeat) : 0;
  piece->across_repeat = rc_pattern_compute_across_repeat (carpet);
  piece->across_phase = piece->across_repeat > 0 ? rc_wrap (-of->cut_width / 2, piece->across_repeat) : 0;
}

gboolean
rc_stair_add_pieces (const RcJob *job, const RcStair *stair, GPtrArray *pieces, GError **error)
{
  const RcGoods *carpet = rc_job_find_goods (job, stair->carpet);
  g_autoptr (GArray) parts = rc_stair_compute_pieces (stair);
  if (parts == NULL)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("%s: its sizes are too large"), stair->name);
      return FALSE;
    }
  for (guint i = 0; i < parts->len; i++)
    {
      const RcStairPiece *part = &g_array_index (parts, RcStairPiece, i);
      RcPiece            *piece = rc_piece_new (RC_PIECE_STAIR);
      piece->number = pieces->len + 1;
      piece->room = g_strdup (stair->id);
      piece->goods = g_strdup (stair->carpet);
      piece->cut_width = part->cut_width;
      piece->cut_length = part->cut_length;
      piece->stair_piece = i;
      hold_stair_piece (piece, carpet, part, parts->len);
      g_ptr_array_add (pieces, piece);
    }
  return TRUE;
}

GPtrArray *
rc_stairs_list_pieces (const RcPlan *plan, const RcGoods *carpet, GError **error)
{
  g_autoptr (GPtrArray) stairs = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_piece_free);
  for (guint i = 0; i < plan->measure->stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (plan->measure->stairs, i);
      if (g_strcmp0 (stair->carpet, carpet->id) == 0 && !rc_stair_add_pieces (plan->job, stair, stairs, error))
        return NULL;
    }
  return g_steal_pointer (&stairs);
}
