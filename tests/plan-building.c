#include "plan-building.h"

#include "plan-maker.h"

#define N_CARPETS 6

void
building_weights (const RcGoods *carpet, RcPlanWeights *weights, gpointer user_data)
{
  *weights = (RcPlanWeights){
    .carpet_per_m = 5000, .side_seam_per_m = 600, .cross_seam_per_m = 800, .cross_seam_each = 800
  };
}

RcJob *
make_building (guint n_rooms)
{
  RcJob     *job = make_job (FT (12));
  RcSettings defaults;
  GRand     *rand = g_rand_new_with_seed (20260301);
  guint      n_flats = n_rooms / 3;
  rc_settings_init (&defaults, &job->currency);
  job->settings = defaults;
  g_ptr_array_set_size (job->goods, 0);
  for (guint i = 0; i < N_CARPETS; i++)
    {
      g_autofree char *id = g_strdup_printf ("carpet-%u", i + 1);
      RcGoods         *carpet = rc_goods_new (id, RC_GOODS_CARPET, id);
      carpet->roll_width = i % 2 ? MM (4000) : FT (12);
      carpet->length_step = IN (6);
      carpet->unit = RC_UNIT_SQ_YD;
      g_ptr_array_add (job->goods, carpet);
    }
  guint32 kinds[8][3][2];
  for (guint k = 0; k < 8; k++)
    for (guint r = 0; r < 3; r++)
      for (guint d = 0; d < 2; d++)
        kinds[k][r][d] = (guint32)g_rand_int_range (rand, 60, 240);
  for (guint f = 0; f < n_flats; f++)
    {
      g_autofree char *flat = g_strdup_printf ("flat-%u", f + 1);
      RcLength         x = (f % 10) * FT (80), y = (f / 10) * FT (80);
      guint            kind = (guint)g_rand_int_range (rand, 0, 12);
      for (guint r = 0; r < 3; r++)
        {
          g_autofree char *id = g_strdup_printf ("room-%u-%u", f + 1, r + 1);
          g_autofree char *next = g_strdup_printf ("room-%u-%u", f + 1, r + 2);
          RcLength         width = IN (kind < 8 ? kinds[kind][r][0] : (guint32)g_rand_int_range (rand, 60, 240));
          RcLength         length = IN (kind < 8 ? kinds[kind][r][1] : (guint32)g_rand_int_range (rand, 60, 240));
          RcRoom          *room = add_rectangle (job, id, x, y, width, length, flat);
          if (r < 2)
            add_door (room, "D1", 1, IN (12), IN (30), IN (4.5), next);
          else
            add_door (room, "D2", 1, IN (12), IN (30), IN (4.5), NULL);
          x += width + IN (4.5);
        }
      RcFloorArea *area = get_area (job, flat);
      g_free (area->carpet);
      area->carpet = g_strdup_printf ("carpet-%u", f % N_CARPETS + 1);
    }
  g_rand_free (rand);
  return job;
}
