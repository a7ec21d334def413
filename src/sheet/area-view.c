#include "area-view.h"

typedef struct
{
  RcPlan     plan; /* first: the view is handed out as a plan */
  RcHouse    house;
  RcAreaPlan area_plan;
} AreaView;

static void
fill_house (AreaView *view, const RcHouse *house, const RcFloorArea *area)
{
  view->house = *house;
  view->house.rooms = g_ptr_array_new ();
  view->house.openings = g_ptr_array_new ();
  for (guint i = 0; i < house->rooms->len; i++)
    {
      RcPlacedRoom *placed = g_ptr_array_index (house->rooms, i);

      if (rc_floor_area_find_room (area, placed->room->id) > 0)
        g_ptr_array_add (view->house.rooms, placed);
    }
  for (guint i = 0; i < house->openings->len; i++)
    {
      RcPlacedOpening *placed = g_ptr_array_index (house->openings, i);

      if (rc_floor_area_find_room (area, placed->room->id) > 0
          || (placed->other && rc_floor_area_find_room (area, placed->other->id) > 0))
        g_ptr_array_add (view->house.openings, placed);
    }
}

static void
fill_chosen (AreaView *view, const RcPlan *plan, const RcFloorArea *area)
{
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      RcPiece *piece = g_ptr_array_index (plan->pieces, i);

      if (g_strcmp0 (piece->area, area->id) == 0)
        g_ptr_array_add (view->plan.pieces, piece);
    }
  for (guint i = 0; i < plan->seams->len; i++)
    {
      RcSeam *seam = g_ptr_array_index (plan->seams, i);

      if (g_strcmp0 (seam->area, area->id) == 0)
        g_ptr_array_add (view->plan.seams, seam);
    }
}

RcPlan *
rc_area_view_new (const RcPlan *plan, const RcAreaPlan *area_plan, guint option)
{
  AreaView *view = g_new0 (AreaView, 1);

  view->plan = *plan;
  view->area_plan = *area_plan;
  fill_house (view, plan->house, area_plan->area);
  view->plan.house = &view->house;
  view->plan.areas = g_ptr_array_new ();
  view->plan.pieces = g_ptr_array_new ();
  view->plan.seams = g_ptr_array_new ();
  g_ptr_array_add (view->plan.areas, &view->area_plan);
  if (option < area_plan->options->len)
    {
      const RcOption *the_option = g_ptr_array_index (area_plan->options, option);

      view->area_plan.chosen = option;
      g_ptr_array_extend (view->plan.pieces, the_option->pieces, NULL, NULL);
      g_ptr_array_extend (view->plan.seams, the_option->seams, NULL, NULL);
    }
  else
    fill_chosen (view, plan, area_plan->area);

  return &view->plan;
}

void
rc_area_view_free (gpointer data)
{
  AreaView *view = data;

  if (!view)
    return;
  g_ptr_array_unref (view->house.rooms);
  g_ptr_array_unref (view->house.openings);
  g_ptr_array_unref (view->plan.areas);
  g_ptr_array_unref (view->plan.pieces);
  g_ptr_array_unref (view->plan.seams);
  g_free (view);
}

static int
compare_ints (gconstpointer a, gconstpointer b)
{
  return *(const int *)a - *(const int *)b;
}

GArray *
rc_house_dup_floors (const RcHouse *house)
{
  GArray *floors = g_array_new (FALSE, FALSE, sizeof (int));

  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (house->rooms, i);
      gboolean            known = FALSE;

      for (guint f = 0; f < floors->len; f++)
        known = known || g_array_index (floors, int, f) == placed->room->floor;
      if (!known)
        g_array_append_val (floors, placed->room->floor);
    }
  g_array_sort (floors, compare_ints);

  return floors;
}
