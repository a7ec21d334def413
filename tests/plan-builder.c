#include "plan-builder.h"

RcJob *
build_job (RcUnitSystem units)
{
  RcCurrency currency = { "USD", 2 };
  RcJob     *job = rc_job_new ("J-1", &currency);

  job->units = units;
  return job;
}

RcGoods *
build_goods (GPtrArray *list, RcGoodsKind kind, const char *id, RcUnit unit, gint64 pack_micro, RcUnit pack_unit)
{
  RcGoods *goods = rc_goods_new (id, kind, id);

  goods->unit = unit;
  goods->pack_micro = pack_micro;
  goods->pack_unit = pack_unit;
  g_ptr_array_add (list, goods);
  return goods;
}

RcGoods *
build_carpet (RcJob *job, const char *id, RcLength roll_width, RcUnit unit)
{
  RcGoods *carpet = build_goods (job->goods, RC_GOODS_CARPET, id, unit, 0, RC_UNIT_EACH);

  carpet->roll_width = roll_width;
  return carpet;
}

static RcMeasure *
get_measure (RcJob *job)
{
  return g_ptr_array_index (job->measures, job->measures->len - 1);
}

static RcRoom *
add_room (RcJob *job, const char *id, const char *name)
{
  RcRoom *room = rc_room_new (id, name);

  g_ptr_array_add (get_measure (job)->rooms, room);
  return room;
}

RcRoom *
build_room (RcJob *job, const char *id, const char *name, RcLength width, RcLength length, RcLength x)
{
  RcRoom *room = add_room (job, id, name);
  RcWall  walls[] = { { 0, length, 0 }, { 90, width, 0 }, { 180, length, 0 }, { 270, width, 0 } };

  g_array_append_vals (room->walls, walls, G_N_ELEMENTS (walls));
  room->placed = TRUE;
  room->at.x = x;
  return room;
}

RcRoom *
build_outline_room (RcJob *job, const char *id, const char *name, const RcPoint *points, guint n_points)
{
  RcRoom *room = add_room (job, id, name);

  g_array_append_vals (room->outline, points, n_points);
  return room;
}

RcOpening *
build_opening (RcRoom *room, const char *id, RcOpeningKind kind, guint wall, RcLength offset, RcLength width)
{
  RcOpening *opening = rc_opening_new (id, kind);

  opening->wall = wall;
  opening->offset = offset;
  opening->width = width;
  g_ptr_array_add (room->openings, opening);
  return opening;
}

RcFloorArea *
build_area (RcJob *job, const char *id, const char *carpet, ...)
{
  RcFloorArea *area = rc_floor_area_new (id, id);
  const char  *room;
  va_list      rooms;

  area->carpet = g_strdup (carpet);
  va_start (rooms, carpet);
  while ((room = va_arg (rooms, const char *)) != NULL)
    g_ptr_array_add (area->rooms, g_strdup (room));
  va_end (rooms);
  g_ptr_array_add (get_measure (job)->areas, area);
  return area;
}

RcStair *
build_stair (RcJob *job, const char *id, guint steps, RcLength rise, RcLength going, RcLength width, RcStairStyle style)
{
  RcStair *stair = rc_stair_new (id, id);

  stair->steps = steps;
  stair->rise = rise;
  stair->going = going;
  stair->width = width;
  stair->style = style;
  g_ptr_array_add (get_measure (job)->stairs, stair);
  return stair;
}

static void
piece_free (RcPiece *piece)
{
  g_free (piece->area);
  g_free (piece->room);
  g_free (piece->goods);
  g_free (piece);
}

static void
seam_free (RcSeam *seam)
{
  g_free (seam->area);
  g_free (seam->room);
  g_free (seam);
}

static void
area_plan_free (RcAreaPlan *area_plan)
{
  g_ptr_array_unref (area_plan->floor);
  g_ptr_array_unref (area_plan->options);
  g_free (area_plan);
}

static void
cutting_free (RcCutting *cutting)
{
  g_array_unref (cutting->answer->placements);
  g_ptr_array_unref (cutting->answer->rolls);
  g_free (cutting->answer);
  g_array_unref (cutting->piece_numbers);
  g_ptr_array_unref (cutting->roll_ids);
  g_free (cutting);
}

RcPlan *
build_plan (const RcJob *job)
{
  RcPlan *plan = g_new0 (RcPlan, 1);

  plan->job = job;
  plan->measure = rc_job_get_measure (job, NULL);
  plan->house = rc_house_new (plan->measure, &job->settings.closure, NULL);
  g_assert_nonnull (plan->house);
  plan->areas = g_ptr_array_new_with_free_func ((GDestroyNotify)area_plan_free);
  plan->pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)piece_free);
  plan->seams = g_ptr_array_new_with_free_func ((GDestroyNotify)seam_free);
  plan->cuttings = g_ptr_array_new_with_free_func ((GDestroyNotify)cutting_free);
  for (guint i = 0; i < plan->measure->areas->len; i++)
    {
      RcAreaPlan *area_plan = g_new0 (RcAreaPlan, 1);

      area_plan->area = g_ptr_array_index (plan->measure->areas, i);
      area_plan->options = g_ptr_array_new ();
      area_plan->floor = rc_house_compute_floor (plan->house, area_plan->area, &area_plan->floor_area, NULL);
      g_assert_nonnull (area_plan->floor);
      g_ptr_array_add (plan->areas, area_plan);
    }
  return plan;
}

void
build_plan_free (RcPlan *plan)
{
  rc_house_free (plan->house);
  g_ptr_array_unref (plan->areas);
  g_ptr_array_unref (plan->pieces);
  g_ptr_array_unref (plan->seams);
  for (guint i = 0; i < plan->cuttings->len; i++)
    rc_nest_problem_free (((RcCutting *)g_ptr_array_index (plan->cuttings, i))->problem);
  g_ptr_array_unref (plan->cuttings);
  g_free (plan);
}

RcPiece *
build_piece (RcPlan *plan, RcPieceKind kind, const char *area, const char *room, const char *goods, RcLength width,
             RcLength length)
{
  RcPiece *piece = g_new0 (RcPiece, 1);

  piece->number = plan->pieces->len + 1;
  piece->kind = kind;
  piece->area = g_strdup (area);
  piece->room = g_strdup (room);
  piece->goods = g_strdup (goods);
  piece->cut_width = width;
  piece->cut_length = length;
  g_ptr_array_add (plan->pieces, piece);
  return piece;
}

RcSeam *
build_seam (RcPlan *plan, RcSeamKind kind, const char *area, const char *room, RcLength length, guint piece_a,
            guint piece_b, guint side_ends)
{
  RcSeam *seam = g_new0 (RcSeam, 1);

  seam->kind = kind;
  seam->area = g_strdup (area);
  seam->room = g_strdup (room);
  seam->length = length;
  seam->piece_a = piece_a;
  seam->piece_b = piece_b;
  seam->side_ends = side_ends;
  g_ptr_array_add (plan->seams, seam);
  return seam;
}

RcCutting *
build_cutting (RcPlan *plan, const RcGoods *carpet)
{
  RcCutting *cutting = g_new0 (RcCutting, 1);

  cutting->goods = carpet;
  cutting->problem = rc_nest_problem_new (rc_goods_get_usable_width (carpet));
  g_ptr_array_set_size (cutting->problem->rolls, 0);
  cutting->answer = g_new0 (RcNestAnswer, 1);
  cutting->answer->placements = g_array_new (FALSE, TRUE, sizeof (RcNestPlacement));
  cutting->answer->rolls = g_ptr_array_new_with_free_func (g_free);
  cutting->piece_numbers = g_array_new (FALSE, FALSE, sizeof (guint));
  cutting->roll_ids = g_ptr_array_new_with_free_func (g_free);
  g_ptr_array_add (plan->cuttings, cutting);
  return cutting;
}

RcNestRoll *
build_roll (RcCutting *cutting, const char *id, RcLength used, RcLength length)
{
  RcNestUse  *use = g_new0 (RcNestUse, 1);
  RcNestRoll *roll = rc_nest_roll_new (id, NULL, id != NULL ? length : 0, 1);

  use->source = cutting->roll_ids->len;
  use->used = used;
  use->length = length;
  cutting->answer->used_length += used;
  g_ptr_array_add (cutting->answer->rolls, use);
  g_ptr_array_add (cutting->roll_ids, g_strdup (id));
  g_ptr_array_add (cutting->problem->rolls, roll);
  return roll;
}

void
build_placement (RcCutting *cutting, const RcPiece *piece, RcLength across, RcLength along)
{
  RcNestPlacement placement = { .cut = cutting->piece_numbers->len,
                                .roll = cutting->answer->rolls->len - 1,
                                .across = across,
                                .along = along,
                                .width = piece->cut_width,
                                .length = piece->cut_length };

  g_array_append_val (cutting->piece_numbers, piece->number);
  g_array_append_val (cutting->answer->placements, placement);
}

RcPlan *
build_joined_fill (RcJob **job)
{
  RcCutting *cutting;
  RcPlan    *plan;
  RcGoods   *carpet;

  *job = build_job (RC_UNITS_IMPERIAL);
  carpet = build_carpet (*job, "twist", FT (12), RC_UNIT_SQ_YD);
  build_room (*job, "living", "Living room", FT (15), FT (20), 0);
  build_area (*job, "A", "twist", "living", NULL);
  plan = build_plan (*job);

  cutting = build_cutting (plan, carpet);
  build_roll (cutting, NULL, FT (27), FT (27));
  build_placement (cutting, build_piece (plan, RC_PIECE_DROP, "A", "living", "twist", FT (12), FT (20)), 0, 0);
  for (int i = 0; i < 3; i++)
    build_placement (cutting, build_piece (plan, RC_PIECE_FILL, "A", "living", "twist", FT (4), FT (7)), FT (4 * i),
                     FT (20));
  build_seam (plan, RC_SEAM_SIDE, "A", "living", FT (20), 1, 2, 0);
  build_seam (plan, RC_SEAM_CROSS, "A", "living", FT (4), 2, 3, 1);
  build_seam (plan, RC_SEAM_CROSS, "A", "living", FT (4), 3, 4, 1);
  plan->carpet_length = FT (27);
  plan->carpet_area = rc_area_from_rectangle (FT (12), FT (27));
  return plan;
}
