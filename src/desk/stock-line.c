#include "stock-line.h"

#include <glib/gi18n-lib.h>

RcStockLine *
rc_stock_line_copy (const RcStockLine *line)
{
  RcStockLine *copy = g_memdup2 (line, sizeof *line);

  copy->roll = rc_roll_copy (line->roll);
  copy->goods_name = g_strdup (line->goods_name);
  copy->jobs = g_strdup (line->jobs);
  copy->stretches = g_array_copy (line->stretches);
  return copy;
}

void
rc_stock_line_free (RcStockLine *line)
{
  rc_roll_free (line->roll);
  g_free (line->goods_name);
  g_free (line->jobs);
  g_array_unref (line->stretches);
  g_free (line);
}

static const RcGoods *
find_goods (const RcPriceBook *book, const RcJob *job, const char *id)
{
  const RcGoods *goods = rc_price_book_find_goods (book, id);

  return goods == NULL && job != NULL ? rc_job_find_goods (job, id) : goods;
}

static void
add_stretch (GArray *stretches, RcStretchKind kind, RcLength length, const char *job)
{
  RcStretch stretch = { kind, length, "" };

  g_utf8_strncpy (stretch.job, job != NULL ? job : "", (sizeof stretch.job - 1) / 4);
  if (length > 0)
    g_array_append_val (stretches, stretch);
}

/* Takes the promises on its roll: the open job's first. */
static void
take_promises (RcStockLine *line, const GPtrArray *promises, const char *job_id)
{
  GString *jobs = g_string_new (NULL);

  for (int own = 1; own >= 0; own--)
    for (guint i = 0; i < promises->len; i++)
      {
        const RcReservation *promise = g_ptr_array_index (promises, i);
        gboolean             is_own = g_strcmp0 (promise->job_id, job_id) == 0;

        if (is_own != own || g_strcmp0 (promise->roll_id, line->roll->id) != 0)
          continue;
        line->kept += promise->length;
        line->kept_here += is_own ? promise->length : 0;
        g_string_append_printf (jobs, "%s%s", jobs->len > 0 ? ", " : "", promise->job_id);
        add_stretch (line->stretches, is_own ? RC_STRETCH_KEPT_HERE : RC_STRETCH_KEPT, promise->length,
                     promise->job_id);
      }
  add_stretch (line->stretches, RC_STRETCH_FREE, line->roll->length - line->kept, NULL);
  line->jobs = g_string_free (jobs, FALSE);
}

static RcStockLine *
stock_line_new (const RcRoll *roll, const RcGoods *goods, const GPtrArray *promises, const char *job_id)
{
  RcStockLine *line = g_new0 (RcStockLine, 1);

  line->roll = rc_roll_copy (roll);
  line->goods_name = g_strdup (goods != NULL ? goods->name : roll->goods_id);
  line->width = roll->width > 0 ? roll->width : goods != NULL ? rc_goods_get_usable_width (goods) : 0;
  line->stretches = g_array_new (FALSE, FALSE, sizeof (RcStretch));
  take_promises (line, promises, job_id);
  return line;
}

GPtrArray *
rc_stock_lines_load (RcStore *store, const RcPriceBook *book, const RcJob *job, GError **error)
{
  g_autoptr (GPtrArray) rolls = rc_store_load_rolls (store, error);
  g_autoptr (GPtrArray) promises = rolls != NULL ? rc_store_find_reservations (store, NULL, NULL, error) : NULL;
  GPtrArray *lines;

  if (promises == NULL)
    return NULL;
  lines = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_stock_line_free);
  for (guint i = 0; i < rolls->len; i++)
    {
      const RcRoll *roll = g_ptr_array_index (rolls, i);

      if (roll->length > 0)
        g_ptr_array_add (lines, stock_line_new (roll, find_goods (book, job, roll->goods_id), promises,
                                                job != NULL ? job->id : NULL));
    }
  return lines;
}

gboolean
rc_stock_line_has_words (const RcStockLine *line, const char *words)
{
  g_autofree char *text = g_strdup_printf (
      "%s %s %s %s %s %s", line->roll->id, line->goods_name, line->roll->lot ? line->roll->lot : "",
      line->roll->place ? line->roll->place : "", line->jobs, line->roll->remnant ? _ ("remnant") : "");

  return words == NULL || *words == '\0' || g_str_match_string (words, text, TRUE);
}

GArray *
rc_stock_line_list_stretches (const RcStockLine *line, const GPtrArray *moves)
{
  GArray *stretches = g_array_new (FALSE, FALSE, sizeof (RcStretch));

  for (guint i = 0; i < moves->len; i++)
    {
      const RcRollMove *move = g_ptr_array_index (moves, i);

      if (move->kind == RC_MOVE_CUT)
        add_stretch (stretches, RC_STRETCH_GONE, -move->length, move->job_id);
    }
  g_array_append_vals (stretches, line->stretches->data, line->stretches->len);
  return stretches;
}

char *
rc_stock_line_dup_damage (const RcStockLine *line, const RcLengthStyle *style)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < line->roll->flaws->len; i++)
    {
      const RcFlaw    *flaw = &g_array_index (line->roll->flaws, RcFlaw, i);
      g_autofree char *from = rc_length_format (flaw->from, style), *to = rc_length_format (flaw->to, style);

      if (text->len > 0)
        g_string_append (text, ", ");
      /* Translators: a damaged length of a roll, from here to there. */
      g_string_append_printf (text, _ ("%s to %s"), from, to);
    }
  return g_string_free (text, FALSE);
}

char *
rc_stock_line_dup_said (const RcStockLine *line, const RcLengthStyle *style)
{
  g_autofree char *length = rc_length_format (line->roll->length, style);
  g_autofree char *kept = rc_length_format (line->kept, style);
  g_autofree char *damage = rc_stock_line_dup_damage (line, style);

  return *damage != '\0'
             ? g_strdup_printf (_ ("Roll %s: %s left, %s promised, damaged %s"), line->roll->id, length, kept, damage)
             : g_strdup_printf (_ ("Roll %s: %s left, %s promised"), line->roll->id, length, kept);
}
