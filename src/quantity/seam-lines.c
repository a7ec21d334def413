/* What seams take: tape, sealer, labour. */
#include <glib/gi18n-lib.h>

#include "reason.h"
#include "take-off.h"

/* Both edges of a seam are sealed (CRI 2015 13.7, p. 25). */
#define SEAM_EDGES 2

gboolean
rc_floor_area_is_taped (const RcFloorArea *area)
{
  return area->fixing == RC_FIXING_STRETCH || area->cushion != NULL;
}

static gboolean
seam_is_taped (const RcPlan *plan, const RcSeam *seam)
{
  const RcAreaPlan *area = seam->area != NULL ? rc_plan_find_area (plan, seam->area) : NULL;

  return area == NULL || rc_floor_area_is_taped (area->area);
}

RcLength
rc_seam_compute_tape (const RcSeam *seam, RcLength tape_width)
{
  if (seam->kind == RC_SEAM_SIDE)
    return seam->length;
  /* Half the width at each end, formed as one halving: an odd width loses nothing to two roundings. */
  return MAX (0, seam->length - tape_width * (RcLength)seam->side_ends / 2);
}

RcLength
rc_quantity_compute_tape (const RcPlan *plan, RcLength tape_width)
{
  RcLength tape = 0;

  for (guint i = 0; i < plan->seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (plan->seams, i);

      if (seam_is_taped (plan, seam))
        tape += rc_seam_compute_tape (seam, tape_width);
    }
  return tape;
}

RcLength
rc_quantity_compute_seam_edges (const RcPlan *plan)
{
  RcLength edges = 0;

  for (guint i = 0; i < plan->seams->len; i++)
    edges += SEAM_EDGES * ((const RcSeam *)g_ptr_array_index (plan->seams, i))->length;
  return edges;
}

/* The seams of one kind that a line is about. */
typedef struct
{
  guint      n_seams;
  RcLength   length;
  GArray    *pieces; /* of guint, numbers */
  GPtrArray *places; /* of const char*, room names */
} Seams;

static void
seams_clear (Seams *seams)
{
  g_array_unref (seams->pieces);
  g_ptr_array_unref (seams->places);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Seams, seams_clear)

static void
seams_init (Seams *seams, const RcPlan *plan, RcSeamKind kind, gboolean taped_only)
{
  *seams = (Seams){ .pieces = g_array_new (FALSE, FALSE, sizeof (guint)), .places = g_ptr_array_new () };
  for (guint i = 0; i < plan->seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (plan->seams, i);

      if (seam->kind != kind || (taped_only && !seam_is_taped (plan, seam)))
        continue;
      seams->n_seams++;
      seams->length += seam->length;
      g_array_append_val (seams->pieces, seam->piece_a);
      g_array_append_val (seams->pieces, seam->piece_b);
      rc_reason_add_name (seams->places, rc_reason_get_place (plan, seam->room));
    }
}

/* "(Living room, pieces 1–3)". */
static char *
format_where (const Seams *seams)
{
  g_autofree char *places = rc_reason_format_names (seams->places);
  g_autofree char *pieces = rc_reason_format_pieces (seams->pieces);

  return g_strdup_printf ("(%s, %s)", places, pieces);
}

/* "side seam 20' (...)", "2 side seams, 38' 4" in all (...)". */
static char *
format_seams (const Seams *seams, const RcPlan *plan, RcSeamKind kind)
{
  g_autofree char *length = rc_reason_format_length (plan, seams->length);
  g_autofree char *where = format_where (seams);

  if (kind == RC_SEAM_SIDE)
    return g_strdup_printf (ngettext ("%u side seam, %s %s", "%u side seams, %s in all %s", seams->n_seams),
                            seams->n_seams, length, where);
  return g_strdup_printf (ngettext ("%u cross seam, %s %s", "%u cross seams, %s in all %s", seams->n_seams),
                          seams->n_seams, length, where);
}

static char *
format_all_seams (const RcPlan *plan, gboolean taped_only, RcLength setback)
{
  g_auto (Seams) side, cross;
  GString *reason = g_string_new (NULL);

  seams_init (&side, plan, RC_SEAM_SIDE, taped_only);
  seams_init (&cross, plan, RC_SEAM_CROSS, taped_only);
  if (side.n_seams > 0)
    rc_reason_add_part (reason, format_seams (&side, plan, RC_SEAM_SIDE));
  if (cross.n_seams > 0)
    rc_reason_add_part (reason, format_seams (&cross, plan, RC_SEAM_CROSS));
  if (setback > 0)
    {
      g_autofree char *printed = rc_reason_format_length (plan, setback);

      g_string_append_printf (reason, _ (" less %s of setback (half the tape at each side seam)"), printed);
    }
  return g_string_free (reason, FALSE);
}

static RcLength
sum_taped_seams (const RcPlan *plan)
{
  return rc_quantity_compute_tape (plan, 0);
}

gboolean
rc_take_off_add_tape (RcTakeOff *take_off, GError **error)
{
  RcLength       seams = sum_taped_seams (take_off->plan), tape;
  const RcGoods *goods;
  RcPacking      packing;

  if (seams == 0)
    return TRUE;
  goods = rc_take_off_find_kind (take_off, RC_GOODS_TAPE, error);
  if (goods == NULL)
    return FALSE;
  tape = rc_quantity_compute_tape (take_off->plan, goods->tape_width);
  if (!rc_packing_from_length (goods, tape, &packing, error))
    return FALSE;
  rc_take_off_add_goods (take_off, goods, &packing, format_all_seams (take_off->plan, TRUE, seams - tape));
  return TRUE;
}

gboolean
rc_take_off_add_sealer (RcTakeOff *take_off, GError **error)
{
  RcLength         edges = rc_quantity_compute_seam_edges (take_off->plan);
  const RcGoods   *goods;
  RcPacking        packing;
  g_autofree char *printed = NULL, *seams = NULL;

  if (edges == 0)
    return TRUE;
  goods = rc_take_off_find_kind (take_off, RC_GOODS_SEALER, error);
  if (goods == NULL || !rc_packing_from_length (goods, edges, &packing, error))
    return FALSE;
  printed = rc_reason_format_length (take_off->plan, edges);
  seams = format_all_seams (take_off->plan, FALSE, 0);
  rc_take_off_add_goods (take_off, goods, &packing,
                         g_strdup_printf (_ ("%s of edge, both edges of every seam: %s"), printed, seams));
  return TRUE;
}

gboolean
rc_take_off_add_seaming (RcTakeOff *take_off, GError **error)
{
  const RcPlan *plan = take_off->plan;
  RcUnit        unit = rc_work_get_unit (RC_WORK_SIDE_SEAM, plan->job->units);
  g_auto (Seams) side, cross;

  seams_init (&side, plan, RC_SEAM_SIDE, FALSE);
  seams_init (&cross, plan, RC_SEAM_CROSS, FALSE);
  if (side.n_seams > 0)
    rc_take_off_add_work (take_off, RC_WORK_SIDE_SEAM, rc_unit_from_length (side.length, unit),
                          format_seams (&side, plan, RC_SEAM_SIDE));
  if (cross.n_seams > 0)
    rc_take_off_add_work (take_off, RC_WORK_CROSS_SEAM, cross.n_seams * RC_MICRO,
                          format_seams (&cross, plan, RC_SEAM_CROSS));
  return TRUE;
}
