#include "item.h"

#include <glib/gi18n-lib.h>

struct _RcItem
{
  GObject  parent_instance;
  RcChoice choice;
  char    *texts[3];
  GArray  *pieces; /* of guint; nullable */
  gboolean answers;
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
  g_clear_pointer (&RC_ITEM (object)->pieces, g_array_unref);
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

static gboolean
has_piece (RcItem *self, guint number)
{
  for (guint i = 0; self->pieces && i < self->pieces->len; i++)
    if (g_array_index (self->pieces, guint, i) == number)
      return TRUE;
  return FALSE;
}

void
rc_item_set_pieces (RcItem *self, GArray *pieces, gboolean answers)
{
  g_clear_pointer (&self->pieces, g_array_unref);
  self->pieces = pieces;
  self->answers = answers;
}

const GArray *
rc_item_get_pieces (RcItem *self)
{
  return self->pieces;
}

/* Where many pieces are pointed at, as in a list, their own rows alone are lit. */
void
rc_item_show_pointed (RcItem *self, const GArray *pointed)
{
  gboolean is_asked = self->answers && (pointed->len == 1 || self->choice.piece), lit = FALSE;

  for (guint i = 0; is_asked && !lit && i < pointed->len; i++)
    lit = has_piece (self, g_array_index (pointed, guint, i));
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

RcChoice
rc_item_choice_of_line (const char *key)
{
  return (RcChoice){ .thing = RC_THING_JOB, .id = g_intern_string (key) };
}

gboolean
rc_item_is_thing (RcItem *self)
{
  return self->choice.thing != RC_THING_JOB || self->choice.id == NULL;
}

gboolean
rc_item_is_chosen (RcItem *self, RcChoice choice)
{
  if (!rc_item_is_thing (self))
    return self->answers && choice.piece && has_piece (self, choice.piece);
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

/* As the rows stay the same objects, a list keeps its place and its focus. */
void
rc_item_take_rows (GListStore *rows, GPtrArray *wanted)
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
      rc_item_set_pieces (row, want->pieces ? g_array_ref (want->pieces) : NULL, want->answers);
    }
  if (same < n || same < wanted->len)
    g_list_store_splice (rows, same, n - same, wanted->pdata + same, wanted->len - same);
}

void
rc_item_add (GPtrArray *wanted, RcChoice choice, const char *mark, const char *title, const char *detail)
{
  g_ptr_array_add (wanted, rc_item_new (choice, mark, title && *title ? title : _ ("without a name"), detail));
}

/* Things. */

static void
note_piece (GHashTable *pieces, const char *id, guint number)
{
  GArray *of_id = id ? g_hash_table_lookup (pieces, id) : NULL;

  if (id == NULL)
    return;
  if (of_id == NULL)
    g_hash_table_insert (pieces, (gpointer)id, of_id = g_array_new (FALSE, FALSE, sizeof (guint)));
  g_array_append_val (of_id, number);
}

/* Pointing at the row of a thing lights its pieces, and a piece the row of its room or stair. */
static void
add_pieces (GPtrArray *wanted, const RcOutcome *outcome)
{
  g_autoptr (GHashTable) of_areas
      = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, (GDestroyNotify)g_array_unref);
  g_autoptr (GHashTable) of_rooms
      = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, (GDestroyNotify)g_array_unref);

  for (guint i = 0; outcome && i < outcome->plan->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (outcome->plan->pieces, i);
      note_piece (of_areas, piece->area, piece->number);
      note_piece (of_rooms, piece->room, piece->number);
    }
  for (guint i = 0; i < wanted->len; i++)
    {
      RcItem  *row = g_ptr_array_index (wanted, i);
      gboolean is_area = row->choice.thing == RC_THING_AREA;
      GArray  *pieces = row->choice.id ? g_hash_table_lookup (is_area ? of_areas : of_rooms, row->choice.id) : NULL;
      rc_item_set_pieces (row, pieces ? g_array_ref (pieces) : NULL, !is_area);
    }
}

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
  rc_item_add (wanted, rc_choice_of_thing (RC_THING_ROOM, room->id), is_in_area ? "   ▫" : "▫", room->name, detail);
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

  rc_item_add (wanted, rc_choice_of_thing (RC_THING_AREA, area->id), "▦", area->name,
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

  rc_item_add (wanted, rc_choice_of_thing (RC_THING_JOB, NULL), "⌂", job->title,
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
      rc_item_add (wanted, rc_choice_of_thing (RC_THING_STAIR, stair->id), "☰", stair->name, detail);
    }
  add_pieces (wanted, rc_document_get_outcome (document));
  rc_item_take_rows (rows, wanted);
}
