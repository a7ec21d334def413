#include "cut-proposal.h"

/* The use of that roll in the cutting; -1: none. */
static int
find_use (const RcCutting *cutting, const char *roll_id, RcLength most)
{
  for (guint i = 0; i < cutting->answer->rolls->len; i++)
    {
      const RcNestUse *use = g_ptr_array_index (cutting->answer->rolls, i);
      const char      *id = rc_cutting_get_roll_id (cutting, use);

      if (g_strcmp0 (id, roll_id) == 0 && use->used <= most)
        return (int)i;
    }
  return -1;
}

static void
take_pieces (RcCutProposal *proposal, const RcCutting *cutting, guint use)
{
  for (guint i = 0; i < cutting->answer->placements->len; i++)
    {
      const RcNestPlacement *placement = &g_array_index (cutting->answer->placements, RcNestPlacement, i);
      g_autofree char       *number = NULL;

      if (placement->roll != use || placement->cut >= cutting->piece_numbers->len)
        continue;
      number = g_strdup_printf ("%u", g_array_index (cutting->piece_numbers, guint, placement->cut));
      g_ptr_array_add (proposal->pieces, rc_cut_piece_new (number, placement->width, placement->length));
    }
}

static void
take_remnants (RcCutProposal *proposal, const RcCutting *cutting, guint use)
{
  for (guint i = 0; i < cutting->answer->leftovers->len; i++)
    {
      const RcNestLeftover *left = &g_array_index (cutting->answer->leftovers, RcNestLeftover, i);

      if (left->roll == use && left->along + left->length <= proposal->length && left->width >= RC_LEAST_REMNANT
          && left->length >= RC_LEAST_REMNANT)
        {
          RcRoll *remnant = rc_roll_new (NULL, NULL, left->length);

          remnant->width = left->width;
          g_ptr_array_add (proposal->remnants, remnant);
        }
    }
}

RcCutProposal *
rc_cut_proposal_new (const RcPlan *plan, const RcRoll *roll)
{
  RcCutProposal *proposal = g_new0 (RcCutProposal, 1);

  proposal->pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_piece_free);
  proposal->remnants = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  for (guint i = 0; plan != NULL && i < plan->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, i);
      int              use = -1;

      if (g_strcmp0 (cutting->goods->id, roll->goods_id) == 0
          && ((use = find_use (cutting, roll->id, roll->length)) >= 0
              || (use = find_use (cutting, NULL, roll->length)) >= 0))
        {
          proposal->length = ((const RcNestUse *)g_ptr_array_index (cutting->answer->rolls, (guint)use))->used;
          take_pieces (proposal, cutting, (guint)use);
          take_remnants (proposal, cutting, (guint)use);
        }
    }
  return proposal;
}

void
rc_cut_proposal_free (RcCutProposal *proposal)
{
  g_ptr_array_unref (proposal->pieces);
  g_ptr_array_unref (proposal->remnants);
  g_free (proposal);
}
