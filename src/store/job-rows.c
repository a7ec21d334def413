#include "job-rows.h"

#include <glib/gi18n-lib.h>

#include "roll-rows.h"

static const char *const unit_system_names[] = { "imperial", "metric" };

static void
add_settings (const RcSettings *settings, RcRowSet *rows)
{
  rc_row_set_add (
      rows, RC_TABLE_SETTINGS,
      RC_VALUES (rc_value_integer (settings->trim_length), rc_value_integer (settings->trim_width),
                 rc_value_integer (settings->least_fill_width), rc_value_integer (settings->least_piece_length),
                 rc_value_integer (settings->most_joins), rc_value_integer (settings->door_distance),
                 rc_value_integer (settings->stagger), rc_value_integer (settings->strip_double_from),
                 rc_value_integer (settings->closure.error_max), rc_value_integer (settings->closure.close_max)));
  for (RcRule rule = 0; rule < RC_N_RULES; rule++)
    rc_row_set_add (rows, RC_TABLE_RULE_COSTS,
                    RC_VALUES (rc_value_text (rc_rule_get_name (rule)), rc_value_integer (settings->rule_cost[rule])));
}

static void
add_rolls (const GPtrArray *rolls, RcRowSet *rows)
{
  for (guint i = 0; i < rolls->len; i++)
    {
      const RcRoll *roll = rolls->pdata[i];

      rc_row_set_add (rows, RC_TABLE_JOB_ROLLS,
                      RC_VALUES (rc_value_text (roll->id), rc_value_integer (i), rc_value_text (roll->goods_id),
                                 rc_value_text (roll->lot), rc_value_integer (roll->length),
                                 rc_value_integer (roll->remnant != FALSE), rc_value_text (roll->place),
                                 rc_value_integer (roll->width), rc_value_integer (roll->cut != FALSE),
                                 rc_value_text (rc_row_set_keep (rows, rc_roll_rows_format_flaws (roll->flaws)))));
    }
}

void
rc_job_rows_add (const RcJob *job, RcRowSet *rows)
{
  const RcCustomer *customer = &job->customer;

  rc_row_set_add (rows, RC_TABLE_JOBS,
                  RC_VALUES (rc_value_text (job->id), rc_value_text (job->number), rc_value_text (job->title),
                             rc_value_text (job->date), rc_value_text (job->notes),
                             rc_value_text (unit_system_names[job->units == RC_UNITS_METRIC]),
                             rc_value_text (job->currency.code), rc_value_integer (job->currency.digits),
                             rc_value_integer (job->tax_ppm)));
  rc_row_set_add (rows, RC_TABLE_CUSTOMERS,
                  RC_VALUES (rc_value_text (customer->name), rc_value_text (customer->address),
                             rc_value_text (customer->phone), rc_value_text (customer->email),
                             rc_value_text (customer->language)));
  add_settings (&job->settings, rows);
  rc_goods_rows_add (job->goods, RC_TABLE_JOB_GOODS, rows);
  add_rolls (job->rolls, rows);
  for (guint i = 0; i < job->measures->len; i++)
    rc_measure_rows_add (job->measures->pdata[i], i, rows);
  rc_offer_rows_add (job, rows);
}

static gboolean
build_head (const RcValue *row, RcJob *job, GError **error)
{
  job->number = rc_value_dup_text (&row[1]);
  job->title = rc_value_dup_text (&row[2]);
  job->date = rc_value_dup_text (&row[3]);
  job->notes = rc_value_dup_text (&row[4]);
  job->tax_ppm = rc_value_get_integer (&row[8]);
  if (g_strcmp0 (rc_value_get_text (&row[5]), unit_system_names[0]) != 0
      && g_strcmp0 (rc_value_get_text (&row[5]), unit_system_names[1]) != 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("the units “%s” are neither %s nor %s"),
                   rc_value_get_text (&row[5]), unit_system_names[0], unit_system_names[1]);
      return FALSE;
    }
  job->units = g_str_equal (rc_value_get_text (&row[5]), unit_system_names[1]) ? RC_UNITS_METRIC : RC_UNITS_IMPERIAL;
  return TRUE;
}

static void
build_customer (const RcRowSet *rows, RcCustomer *customer)
{
  const RcValue *row;

  if (rc_row_set_get_n_rows (rows, RC_TABLE_CUSTOMERS) == 0)
    return;
  row = rc_row_set_get (rows, RC_TABLE_CUSTOMERS, 0);
  customer->name = rc_value_dup_text (&row[0]);
  customer->address = rc_value_dup_text (&row[1]);
  customer->phone = rc_value_dup_text (&row[2]);
  customer->email = rc_value_dup_text (&row[3]);
  customer->language = rc_value_dup_text (&row[4]);
}

/* What is not stored keeps its default: a rule that is younger than the job. */
static gboolean
build_settings (const RcRowSet *rows, RcSettings *settings, GError **error)
{
  if (rc_row_set_get_n_rows (rows, RC_TABLE_SETTINGS) > 0)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_SETTINGS, 0);

      settings->trim_length = rc_value_get_integer (&row[0]);
      settings->trim_width = rc_value_get_integer (&row[1]);
      settings->least_fill_width = rc_value_get_integer (&row[2]);
      settings->least_piece_length = rc_value_get_integer (&row[3]);
      settings->most_joins = (guint)rc_value_get_integer (&row[4]);
      settings->door_distance = rc_value_get_integer (&row[5]);
      settings->stagger = rc_value_get_integer (&row[6]);
      settings->strip_double_from = rc_value_get_integer (&row[7]);
      settings->closure.error_max = rc_value_get_integer (&row[8]);
      settings->closure.close_max = rc_value_get_integer (&row[9]);
    }
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_RULE_COSTS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_RULE_COSTS, i);
      RcRule         rule;

      if (!rc_rule_parse (rc_value_get_text (&row[0]), &rule, error))
        return FALSE;
      settings->rule_cost[rule] = rc_value_get_integer (&row[1]);
    }
  return TRUE;
}

static void
build_rolls (const RcRowSet *rows, GPtrArray *rolls)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_JOB_ROLLS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_JOB_ROLLS, i);
      RcRoll        *roll
          = rc_roll_new (rc_value_get_text (&row[0]), rc_value_get_text (&row[2]), rc_value_get_integer (&row[4]));

      g_free (roll->lot);
      roll->lot = rc_value_dup_text (&row[3]);
      roll->remnant = rc_value_get_integer (&row[5]) != 0;
      roll->place = rc_value_dup_text (&row[6]);
      roll->width = rc_value_get_integer (&row[7]);
      roll->cut = rc_value_get_integer (&row[8]) != 0;
      rc_roll_rows_parse_flaws (rc_value_get_text (&row[9]), roll->flaws);
      g_ptr_array_add (rolls, roll);
    }
}

RcJob *
rc_job_rows_build (const RcRowSet *rows, GError **error)
{
  g_autoptr (RcJob) job = NULL;
  const RcValue *row;
  RcCurrency     currency = { "", 0 };

  if (rc_row_set_get_n_rows (rows, RC_TABLE_JOBS) == 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("There is no such job in the store"));
      return NULL;
    }
  row = rc_row_set_get (rows, RC_TABLE_JOBS, 0);
  if (rc_value_get_text (&row[6]) != NULL)
    g_strlcpy (currency.code, rc_value_get_text (&row[6]), sizeof currency.code);
  currency.digits = (int)rc_value_get_integer (&row[7]);
  job = rc_job_new (rc_value_get_text (&row[0]), &currency);
  g_ptr_array_set_size (job->measures, 0);
  build_customer (rows, &job->customer);
  build_rolls (rows, job->rolls);
  if (!build_head (row, job, error) || !build_settings (rows, &job->settings, error)
      || !rc_goods_rows_build (rows, RC_TABLE_JOB_GOODS, job->goods, error) || !rc_measure_rows_build (rows, job, error)
      || !rc_offer_rows_build (rows, job, error))
    {
      g_prefix_error (error, _ ("Job %s: "), job->id);
      return NULL;
    }
  return g_steal_pointer (&job);
}
