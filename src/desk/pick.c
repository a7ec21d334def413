#include "pick.h"

#include <glib/gi18n-lib.h>

#include "translation.h"

#define IDS_KEY "rowcut-pick-ids"

static const char *
get (const GPtrArray *array, guint i)
{
  return g_ptr_array_index (array, i);
}

void
rc_pick_init (RcPick *pick)
{
  pick->ids = g_ptr_array_new_with_free_func (g_free);
  pick->labels = g_ptr_array_new_with_free_func (g_free);
}

void
rc_pick_clear (RcPick *pick)
{
  g_clear_pointer (&pick->ids, g_ptr_array_unref);
  g_clear_pointer (&pick->labels, g_ptr_array_unref);
}

void
rc_pick_add (RcPick *pick, const char *id, const char *label)
{
  g_ptr_array_add (pick->ids, g_strdup (id));
  g_ptr_array_add (pick->labels, g_strdup (label));
}

static gboolean
has_id (const RcPick *pick, const char *id)
{
  for (guint i = 0; i < pick->ids->len; i++)
    if (g_strcmp0 (get (pick->ids, i), id) == 0)
      return TRUE;
  return FALSE;
}

void
rc_pick_add_goods (RcPick *pick, const RcJob *job, const RcPriceBook *book, RcGoodsKind kind)
{
  const GPtrArray *lists[] = { job ? job->goods : NULL, book ? book->goods : NULL };

  for (guint l = 0; l < G_N_ELEMENTS (lists); l++)
    for (guint i = 0; lists[l] != NULL && i < lists[l]->len; i++)
      {
        const RcGoods *goods = g_ptr_array_index (lists[l], i);
        if (goods->kind == kind && !has_id (pick, goods->id))
          rc_pick_add (pick, goods->id, goods->name);
      }
}

static gboolean
shows (const RcPick *pick, GtkDropDown *drop_down)
{
  GListModel *model = gtk_drop_down_get_model (drop_down);
  GPtrArray  *ids = g_object_get_data (G_OBJECT (drop_down), IDS_KEY);

  if (ids == NULL || ids->len != pick->ids->len)
    return FALSE;
  for (guint i = 0; i < ids->len; i++)
    if (g_strcmp0 (get (ids, i), get (pick->ids, i)) != 0
        || g_strcmp0 (gtk_string_list_get_string (GTK_STRING_LIST (model), i), get (pick->labels, i)) != 0)
      return FALSE;
  return TRUE;
}

/* The list stays the same object: it may be that its selection is just changing. */
static void
set_list (const RcPick *pick, GtkDropDown *drop_down)
{
  g_autofree const char **labels = g_new0 (const char *, pick->labels->len + 1);
  gboolean                is_new = g_object_get_data (G_OBJECT (drop_down), IDS_KEY) == NULL;
  GListModel             *now = gtk_drop_down_get_model (drop_down);

  for (guint i = 0; i < pick->labels->len; i++)
    labels[i] = get (pick->labels, i);
  g_object_set_data_full (G_OBJECT (drop_down), IDS_KEY, g_ptr_array_ref (pick->ids),
                          (GDestroyNotify)g_ptr_array_unref);
  if (!is_new)
    {
      gtk_string_list_splice (GTK_STRING_LIST (now), 0, g_list_model_get_n_items (now), labels);
      return;
    }
  g_autoptr (GtkStringList) list = gtk_string_list_new (labels);
  gtk_drop_down_set_model (drop_down, G_LIST_MODEL (list));
}

void
rc_pick_show (const RcPick *pick, GtkDropDown *drop_down, const char *selected)
{
  if (!has_id (pick, selected))
    rc_pick_add ((RcPick *)pick, selected, selected ? selected : "—");

  if (!shows (pick, drop_down))
    set_list (pick, drop_down);
  for (guint i = 0; i < pick->ids->len; i++)
    if (g_strcmp0 (get (pick->ids, i), selected) == 0)
      {
        gtk_drop_down_set_selected (drop_down, i);
        return;
      }
}

const char *
rc_pick_get_selected (GtkDropDown *drop_down)
{
  GPtrArray *ids = g_object_get_data (G_OBJECT (drop_down), IDS_KEY);
  guint      at = gtk_drop_down_get_selected (drop_down);

  return ids && at < ids->len ? get (ids, at) : NULL;
}

void
rc_pick_show_languages (GtkDropDown *drop_down, const char *selected)
{
  g_auto (RcPick) pick = { 0 };

  rc_pick_init (&pick);
  rc_pick_add (&pick, NULL, _ ("As the program"));
  for (const char *const *code = rc_translation_list (); *code != NULL; code++)
    rc_pick_add (&pick, *code, rc_translation_get_name (*code));
  rc_pick_show (&pick, drop_down, selected);
}

gboolean
rc_pick_step_to_letter (GtkDropDown *drop_down, gunichar letter)
{
  GListModel *model = gtk_drop_down_get_model (drop_down);
  guint       n = model && GTK_IS_STRING_LIST (model) ? g_list_model_get_n_items (model) : 0;
  guint       at = gtk_drop_down_get_selected (drop_down);

  for (guint i = 1; i <= n; i++)
    {
      guint       next = at < n ? (at + i) % n : i - 1;
      const char *label = gtk_string_list_get_string (GTK_STRING_LIST (model), next);
      if (g_unichar_tolower (g_utf8_get_char (label)) != letter)
        continue;
      gtk_drop_down_set_selected (drop_down, next);
      return TRUE;
    }
  return FALSE;
}
