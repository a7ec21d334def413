/* The planner's search: what an experienced estimator would find on small floors where it is plain to see. */
#include "option.h"
#include "plan-maker.h"

/* A chimney breast leaves a neck of 1 in of fill beside it: nobody joins pieces there. */
static void
test_no_seam_in_a_neck (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  RcSettings defaults;
  rc_settings_init (&defaults, &job->currency);
  job->settings.least_fill_width = defaults.least_fill_width;
  job->settings.most_joins = 4;
  RcRoom *room = add_rectangle (job, "living", 0, 0, FT (13) + IN (7), FT (19.5), "area");
  RcPoint hearth[] = { { 0, FT (7.5) }, { IN (18), FT (7.5) }, { IN (18), FT (12.5) }, { 0, FT (12.5) } };
  g_ptr_array_add (room->cutouts, rc_ring_new_from_points (hearth, G_N_ELEMENTS (hearth)));
  get_area (job, "area")->pile_degrees = 90;
  g_autoptr (RcPlan) plan = make_plan_within (job, 1);
  const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, 0);
  for (guint o = 0; o < area_plan->options->len; o++)
    {
      const RcOption *option = g_ptr_array_index (area_plan->options, o);
      for (guint s = 0; s < option->seams->len; s++)
        {
          const RcSeam *seam = g_ptr_array_index (option->seams, s);
          if (seam->kind == RC_SEAM_CROSS)
            g_assert_cmpint (seam->length, >=, job->settings.least_fill_width);
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/search/no-seam-in-a-neck", test_no_seam_in_a_neck);
  return g_test_run ();
}
