#include "job-rows.h"

#include <glib/gi18n-lib.h>

void
rc_goods_rows_add (const GPtrArray *goods, RcTableId table, RcRowSet *rows)
{
  for (guint i = 0; i < goods->len; i++)
    {
      const RcGoods *one = goods->pdata[i];

      rc_row_set_add (rows, table,
                      RC_VALUES (rc_value_text (one->id), rc_value_integer (i),
                                 rc_value_text (rc_goods_kind_get_name (one->kind)), rc_value_text (one->name),
                                 rc_value_text (one->supplier), rc_value_text (rc_unit_get_name (one->unit)),
                                 rc_value_integer (one->roll_width), rc_value_integer (one->usable_width),
                                 rc_value_integer (one->repeat_length), rc_value_integer (one->repeat_width),
                                 rc_value_text (rc_match_get_name (one->match)), rc_value_integer (one->length_step),
                                 rc_value_integer (one->full_roll), rc_value_integer (one->pack_micro),
                                 rc_value_text (rc_unit_get_name (one->pack_unit)), rc_value_integer (one->tape_width),
                                 rc_value_integer (one->pack_covers_area), rc_value_integer (one->pack_covers_length),
                                 rc_value_integer (one->least_cut)));
    }
}

static gboolean
read_words (const RcValue *row, RcGoods *goods, GError **error)
{
  return rc_goods_kind_parse (rc_value_get_text (&row[2]), &goods->kind, error)
         && rc_unit_parse (rc_value_get_text (&row[5]), &goods->unit, error)
         && rc_match_parse (rc_value_get_text (&row[10]), &goods->match, error)
         && rc_unit_parse (rc_value_get_text (&row[14]), &goods->pack_unit, error);
}

gboolean
rc_goods_rows_build (const RcRowSet *rows, RcTableId table, GPtrArray *goods, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, table); i++)
    {
      const RcValue *row = rc_row_set_get (rows, table, i);
      RcGoods       *one = rc_goods_new (rc_value_get_text (&row[0]), RC_GOODS_CARPET, rc_value_get_text (&row[3]));

      g_ptr_array_add (goods, one);
      if (!read_words (row, one, error))
        {
          g_prefix_error (error, _ ("goods %s: "), one->id);
          return FALSE;
        }
      one->supplier = rc_value_dup_text (&row[4]);
      one->roll_width = rc_value_get_integer (&row[6]);
      one->usable_width = rc_value_get_integer (&row[7]);
      one->repeat_length = rc_value_get_integer (&row[8]);
      one->repeat_width = rc_value_get_integer (&row[9]);
      one->length_step = rc_value_get_integer (&row[11]);
      one->full_roll = rc_value_get_integer (&row[12]);
      one->pack_micro = rc_value_get_integer (&row[13]);
      one->tape_width = rc_value_get_integer (&row[15]);
      one->pack_covers_area = rc_value_get_integer (&row[16]);
      one->pack_covers_length = rc_value_get_integer (&row[17]);
      one->least_cut = rc_value_get_integer (&row[18]);
    }
  return TRUE;
}
