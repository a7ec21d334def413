#include "floor-layers.h"

#include "walk-drawing.h"

#define STALE_ALPHA   0.35
#define POINTED_ALPHA 0.6

/* The chosen room's walls as typed: where the plan does not show them, or the one at hand. */
static void
draw_walk (RcDocument *document, const RcFloorScene *scene, cairo_t *cr)
{
  RcChoice            choice = rc_document_get_choice (document);
  gboolean            is_open = rc_document_is_stale (document);
  const RcPlacedRoom *placed
      = choice.thing == RC_THING_ROOM ? rc_house_find_room (scene->outcome->plan->house, choice.id) : NULL;
  const RcRoom *room = placed ? rc_measure_find_room (rc_document_get_measure (document), choice.id) : NULL;

  if (room && room->floor == scene->floor && (is_open || choice.wall))
    rc_walk_drawing_draw (room, placed->at, choice.wall, is_open, scene->palette, &scene->view, cr);
}

/* What is chosen, over the picture of the floor. */
static void
draw_choice (RcDocument *document, const RcFloorScene *scene, cairo_t *cr)
{
  RcChoice       choice = rc_document_get_choice (document);
  RcFloorDrawing drawing = { .palette = scene->palette,
                             .font_size = scene->font_size,
                             .selected_piece = choice.piece,
                             .selected_room = choice.thing == RC_THING_ROOM ? choice.id : NULL,
                             .selected_stair = choice.thing == RC_THING_STAIR ? choice.id : NULL,
                             .floor = scene->floor,
                             .plan = scene->outcome->plan };

  rc_floor_drawing_draw_selected (&drawing, &scene->view, cr);
}

/* The pieces under the pointer, here or in a list. */
static void
draw_pointed (RcDocument *document, const RcFloorScene *scene, cairo_t *cr)
{
  const GArray  *pointed = rc_document_get_pointed (document);
  guint          chosen = rc_document_get_choice (document).piece;
  RcFloorDrawing drawing = {
    .palette = scene->palette, .font_size = scene->font_size, .floor = scene->floor, .plan = scene->outcome->plan
  };

  if (pointed->len == 0)
    return;
  cairo_push_group (cr);
  for (guint i = 0; i < pointed->len; i++)
    {
      const RcPiece *piece = rc_plan_find_piece (scene->outcome->plan, g_array_index (pointed, guint, i));
      drawing.selected_piece = piece && piece->number != chosen ? piece->number : 0;
      drawing.selected_stair = piece && piece->kind == RC_PIECE_STAIR ? piece->room : NULL;
      if (drawing.selected_piece)
        rc_floor_drawing_draw_selected (&drawing, &scene->view, cr);
    }
  cairo_pop_group_to_source (cr);
  cairo_paint_with_alpha (cr, POINTED_ALPHA);
}

void
rc_floor_layers_draw (RcDocument *document, RcFloorHand *hand, RcFloorPainter *painter, const RcFloorScene *scene,
                      cairo_t *cr)
{
  gboolean is_stale = scene->outcome == NULL || rc_document_is_stale (document);

  cairo_set_source_rgb (cr, scene->palette->paper[0], scene->palette->paper[1], scene->palette->paper[2]);
  cairo_paint (cr);
  if (scene->outcome)
    {
      rc_floor_painter_want (painter, scene);
      rc_floor_painter_draw (painter, scene, is_stale ? STALE_ALPHA : 1, cr);
      draw_choice (document, scene, cr);
      draw_pointed (document, scene, cr);
    }
  rc_floor_hand_draw_picture (hand, scene->palette, &scene->view, cr);
  rc_floor_hand_draw_below (hand, scene->palette, &scene->view, cr);
  if (is_stale)
    rc_floor_hand_draw_rooms (hand, scene->palette, scene->font_size, &scene->view, cr);
  if (scene->outcome)
    draw_walk (document, scene, cr);
  rc_floor_hand_draw (hand, scene->palette, scene->font_size, &scene->view, cr);
}
