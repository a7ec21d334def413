#include "item.h"

#include <glib/gi18n-lib.h>

struct _RcItem
{
  GObject  parent_instance;
  RcChoice choice;
  char    *texts[3];
  gboolean is_lit;
};

G_DEFINE_FINAL_TYPE (RcItem, rc_item, G_TYPE_OBJECT)

enum
{
  PROP_MARK = 1,
  PROP_TITLE,
  PROP_DETAIL,
  PROP_CLASSES,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

static void
rc_item_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  static const char *const LIT[] = { "lit", NULL };

  if (id == PROP_CLASSES)
    g_value_set_boxed (value, RC_ITEM (object)->is_lit ? LIT : LIT + 1);
  else
    g_value_set_string (value, RC_ITEM (object)->texts[id - PROP_MARK]);
}

static void
rc_item_finalize (GObject *object)
{
  for (guint i = 0; i < G_N_ELEMENTS (RC_ITEM (object)->texts); i++)
    g_free (RC_ITEM (object)->texts[i]);
  G_OBJECT_CLASS (rc_item_parent_class)->finalize (object);
}

static void
rc_item_class_init (RcItemClass *klass)
{
  static const char *const NAMES[] = { NULL, "mark", "title", "detail" };

  G_OBJECT_CLASS (klass)->get_property = rc_item_get_property;
  G_OBJECT_CLASS (klass)->finalize = rc_item_finalize;
  for (guint i = PROP_MARK; i <= PROP_DETAIL; i++)
    properties[i] = g_param_spec_string (NAMES[i], NULL, NULL, "", G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  properties[PROP_CLASSES]
      = g_param_spec_boxed ("classes", NULL, NULL, G_TYPE_STRV, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, properties);
}

static void
rc_item_init (RcItem *self)
{
}

RcItem *
rc_item_new (RcChoice choice, const char *mark, const char *title, const char *detail)
{
  RcItem *self = g_object_new (RC_TYPE_ITEM, NULL);

  self->choice = choice;
  self->texts[0] = g_strdup (mark);
  self->texts[1] = g_strdup (title);
  self->texts[2] = g_strdup (detail);
  return self;
}

void
rc_item_set_lit (RcItem *self, gboolean lit)
{
  if (lit == self->is_lit)
    return;
  self->is_lit = lit;
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_CLASSES]);
}

RcChoice
rc_item_get_choice (RcItem *self)
{
  return self->choice;
}

gboolean
rc_item_is_chosen (RcItem *self, RcChoice choice)
{
  if (self->choice.piece)
    return self->choice.piece == choice.piece;
  return self->choice.thing == choice.thing && self->choice.id == choice.id;
}

/* Takes the texts of `from`, telling those that change. */
static void
take_texts (RcItem *self, RcItem *from)
{
  for (guint i = 0; i < G_N_ELEMENTS (self->texts); i++)
    if (g_strcmp0 (self->texts[i], from->texts[i]) != 0)
      {
        g_free (self->texts[i]);
        self->texts[i] = g_strdup (from->texts[i]);
        g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_MARK + i]);
      }
}

/* Makes `rows` say what `wanted` (of RcItem) says. Rows of the same things stay the same objects, so that a list keeps
 * its place and its focus. */
static void
take_rows (GListStore *rows, GPtrArray *wanted)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (rows));
  guint same = 0;

  for (; same < n && same < wanted->len; same++)
    {
      g_autoptr (RcItem) row = g_list_model_get_item (G_LIST_MODEL (rows), same);
      RcItem *want = g_ptr_array_index (wanted, same);
      if (!rc_choice_equal (row->choice, want->choice))
        break;
      take_texts (row, want);
    }
  if (same < n || same < wanted->len)
    g_list_store_splice (rows, same, n - same, wanted->pdata + same, wanted->len - same);
}

static void
add (GPtrArray *wanted, RcChoice choice, const char *mark, const char *title, const char *detail)
{
  g_ptr_array_add (wanted, rc_item_new (choice, mark, title && *title ? title : _ ("without a name"), detail));
}

/* Things. */

static char *
dup_room_detail (const RcRoom *room, const RcJob *job)
{
  g_autoptr (RcPolygon) polygon = rc_room_compute_polygon (room, &job->settings.closure, NULL);

  if (polygon == NULL)
    return g_strdup (rc_room_get_n_walls (room) == 0 ? _ ("no walls yet") : _ ("walls to be mended"));
  RcBox                box = rc_ring_compute_box (polygon->outer);
  const RcLengthStyle *style = rc_job_get_length_style (job);
  g_autofree char     *width = rc_length_format (box.x1 - box.x0, style);
  g_autofree char     *length = rc_length_format (box.y1 - box.y0, style);
  return g_strdup_printf (_ ("%s by %s"), width, length);
}

static void
add_room (GPtrArray *wanted, const RcRoom *room, const RcJob *job, gboolean is_in_area)
{
  g_autofree char *detail = dup_room_detail (room, job);
  add (wanted, rc_choice_of_thing (RC_THING_ROOM, room->id), is_in_area ? "   ▫" : "▫", room->name, detail);
}

static char *
dup_stair_detail (const RcStair *stair)
{
  guint n = rc_stair_count_steps (stair);

  return g_strdup_printf (ngettext ("%u riser", "%u risers", n), n);
}

static void
add_area (GPtrArray *wanted, const RcFloorArea *area, const RcMeasure *measure, const RcJob *job)
{
  const RcGoods *goods = area->carpet ? rc_job_find_goods (job, area->carpet) : NULL;

  add (wanted, rc_choice_of_thing (RC_THING_AREA, area->id), "▦", area->name,
       goods ? goods->name : _ ("no carpet yet"));
  for (guint r = 0; r < area->rooms->len; r++)
    {
      const RcRoom *room = rc_measure_find_room (measure, g_ptr_array_index (area->rooms, r));
      if (room)
        add_room (wanted, room, job, TRUE);
    }
}

void
rc_item_fill_things (GListStore *rows, RcDocument *document)
{
  const RcJob     *job = rc_document_get_job (document);
  const RcMeasure *measure = rc_document_get_measure (document);
  g_autoptr (GPtrArray) wanted = g_ptr_array_new_with_free_func (g_object_unref);

  add (wanted, rc_choice_of_thing (RC_THING_JOB, NULL), "⌂", job->title,
       job->customer.name && *job->customer.name ? job->customer.name : _ ("no customer yet"));
  for (guint i = 0; i < measure->areas->len; i++)
    add_area (wanted, g_ptr_array_index (measure->areas, i), measure, job);
  for (guint i = 0; i < measure->rooms->len; i++)
    {
      const RcRoom *room = g_ptr_array_index (measure->rooms, i);
      if (rc_choice_find_area_of_room (measure, room->id) == NULL)
        add_room (wanted, room, job, FALSE);
    }
  for (guint i = 0; i < measure->stairs->len; i++)
    {
      const RcStair   *stair = g_ptr_array_index (measure->stairs, i);
      g_autofree char *detail = dup_stair_detail (stair);
      add (wanted, rc_choice_of_thing (RC_THING_STAIR, stair->id), "☰", stair->name, detail);
    }
  take_rows (rows, wanted);
}

/* Pieces. */

static const char *
get_kind_label (RcPieceKind kind)
{
  static const char *const LABELS[] = { N_ ("Drop"), N_ ("Fill"), N_ ("Stair") };
  return _ (LABELS[kind]);
}

static const char *
find_name (const RcMeasure *measure, const RcPiece *piece)
{
  const RcRoom  *room = rc_measure_find_room (measure, piece->room);
  const RcStair *stair = rc_choice_find_stair (measure, piece->room);
  return room ? room->name : stair ? stair->name : "";
}

/* Where the piece comes off a roll; FALSE when it comes off none. */
static gboolean
find_place (const RcPlan *plan, guint number, RcLength *along, const char **roll)
{
  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);
      for (guint p = 0; p < cutting->answer->placements->len; p++)
        {
          const RcNestPlacement *placement = &g_array_index (cutting->answer->placements, RcNestPlacement, p);
          if (g_array_index (cutting->piece_numbers, guint, placement->cut) != number)
            continue;
          const RcNestUse *use = g_ptr_array_index (cutting->answer->rolls, placement->roll);
          *along = placement->along;
          *roll = use->source < cutting->roll_ids->len ? g_ptr_array_index (cutting->roll_ids, use->source) : NULL;
          return TRUE;
        }
    }
  return FALSE;
}

/* "R-1041 at 12' 0\"" */
static char *
dup_place (const RcPlan *plan, const RcPiece *piece, const RcLengthStyle *style)
{
  RcLength    along = 0;
  const char *roll = NULL;

  if (!find_place (plan, piece->number, &along, &roll))
    return g_strdup ("");
  g_autofree char *at = rc_length_format (along, style);
  return g_strdup_printf (_ ("%s at %s"), roll ? roll : _ ("new goods"), at);
}

/* A length that a line is not broken in. */
static char *
dup_length (RcLength length, const RcLengthStyle *style)
{
  g_autofree char *text = rc_length_format (length, style);
  g_auto (GStrv) words = g_strsplit (text, " ", -1);

  return g_strjoinv ("\302\240", words);
}

static char *
dup_title (const RcOutcome *outcome, const RcPiece *piece)
{
  const RcLengthStyle *style = rc_job_get_length_style (outcome->job);
  g_autofree char     *width = dup_length (piece->cut_width, style);
  g_autofree char     *length = dup_length (piece->cut_length, style);
  return g_strdup_printf (_ ("%s %s × %s"), get_kind_label (piece->kind), width, length);
}

static char *
dup_detail (const RcOutcome *outcome, const RcPiece *piece)
{
  g_autofree char *place = dup_place (outcome->plan, piece, rc_job_get_length_style (outcome->job));
  return g_strdup_printf ("%s, %s", find_name (outcome->measure, piece), place);
}

/* The line that the piece's carpet is charged by. */
static const RcQuoteLine *
find_quote_line (const RcOutcome *outcome, const RcPiece *piece)
{
  const RcFloorArea *area = piece->area ? rc_measure_find_area (outcome->measure, piece->area) : NULL;
  const RcStair     *stair = rc_choice_find_stair (outcome->measure, piece->room);
  const char        *carpet = area ? area->carpet : stair ? stair->carpet : NULL;
  const char        *roll = NULL;
  RcLength           along = 0;

  find_place (outcome->plan, piece->number, &along, &roll);
  for (guint i = 0; outcome->quote && i < outcome->quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (outcome->quote->lines, i);
      if (g_strcmp0 (line->item, carpet) == 0 && line->from_stock == (roll != NULL))
        return line;
    }
  return NULL;
}

char *
rc_item_dup_pointed_words (RcDocument *document)
{
  RcOutcome     *outcome = document ? rc_document_get_outcome (document) : NULL;
  guint          number = outcome ? rc_document_get_pointed (document) : 0;
  const RcPiece *piece = number ? rc_plan_find_piece (outcome->plan, number) : NULL;

  if (piece == NULL)
    return NULL;
  const RcQuoteLine *line = find_quote_line (outcome, piece);
  g_autofree char   *title = dup_title (outcome, piece), *detail = dup_detail (outcome, piece);
  if (line == NULL)
    return g_strdup_printf ("%u  %s\n%s", number, title, detail);
  g_autofree char *amount = rc_money_format (line->amount, &outcome->quote->currency);
  g_autofree char *charged = g_strdup_printf (_ ("On the quotation: part of %s, %s"), line->name, amount);
  return g_strdup_printf ("%u  %s\n%s\n%s", number, title, detail, charged);
}

void
rc_item_fill_pieces (GListStore *rows, RcDocument *document)
{
  RcOutcome *outcome = rc_document_get_outcome (document);
  g_autoptr (GPtrArray) wanted = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; outcome && i < outcome->plan->pieces->len; i++)
    {
      const RcPiece   *piece = g_ptr_array_index (outcome->plan->pieces, i);
      g_autofree char *mark = g_strdup_printf ("%u", piece->number);
      g_autofree char *title = dup_title (outcome, piece), *detail = dup_detail (outcome, piece);
      RcChoice         choice = rc_choice_of_piece (outcome->plan, piece->number);
      add (wanted, choice, mark, title, detail);
    }
  take_rows (rows, wanted);
}
