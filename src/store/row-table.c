#include "row-table.h"

#include <glib/gi18n-lib.h>

#define GOODS_COLUMNS                                                                                                  \
  "id, position, kind, name, supplier, unit, roll_width_ticks, usable_width_ticks, repeat_length_ticks, "              \
  "repeat_width_ticks, match, length_step_ticks, full_roll_ticks, pack_micro, pack_unit, tape_width_ticks, "           \
  "pack_covers_area, pack_covers_length_ticks, least_cut_ticks"
#define N_GOODS_COLUMNS 19

static const RcRowTable tables[] = {
  [RC_TABLE_JOBS]
  = { "jobs", "id, number, title, opened, notes, units, currency, currency_digits, tax_ppm", 9, 0, "job" },
  [RC_TABLE_CUSTOMERS] = { "customers", "name, address, phone, email, language", 5, 0, "job" },
  [RC_TABLE_SETTINGS] = { "settings",
                          "trim_length_ticks, trim_width_ticks, least_fill_width_ticks, least_piece_length_ticks, "
                          "most_joins, door_distance_ticks, stagger_ticks, strip_double_from_ticks, "
                          "closure_error_max_ticks, closure_close_max_ticks",
                          10, 0, "job" },
  [RC_TABLE_RULE_COSTS] = { "rule_costs", "rule, cost_minor", 2, 1, "rule" },
  [RC_TABLE_JOB_GOODS] = { "job_goods", GOODS_COLUMNS, N_GOODS_COLUMNS, 1, "position" },
  [RC_TABLE_JOB_ROLLS]
  = { "job_rolls", "id, position, goods, lot, length_ticks, remnant, place, width_ticks, cut, flaws", 10, 1,
      "position" },
  [RC_TABLE_MEASURES] = { "measures", "id, position, taken, taken_by, notes", 5, 1, "position" },
  [RC_TABLE_ROOMS] = { "rooms", "measure, id, position, name, floor, spread, placed, at_x_ticks, at_y_ticks, notes", 10,
                       2, "measure, position" },
  [RC_TABLE_WALLS]
  = { "walls", "measure, room, position, bearing_degrees, length_ticks, bow_ticks", 6, 3, "measure, room, position" },
  [RC_TABLE_OUTLINE_POINTS]
  = { "outline_points", "measure, room, position, x_ticks, y_ticks", 5, 3, "measure, room, position" },
  [RC_TABLE_CUTOUTS] = { "cutouts", "measure, room, position, name, kind, diameter_ticks, strip, counted", 8, 3,
                         "measure, room, position" },
  [RC_TABLE_CUTOUT_POINTS]
  = { "cutout_points", "measure, room, cutout, position, x_ticks, y_ticks", 6, 4, "measure, room, cutout, position" },
  [RC_TABLE_OPENINGS] = { "openings",
                          "measure, room, id, position, kind, wall, offset_ticks, width_ticks, depth_ticks, swing, "
                          "hinge_at_end, to_room, to_opening, transition",
                          14, 3, "measure, room, position" },
  [RC_TABLE_DIAGONALS]
  = { "diagonals", "measure, room, position, from_corner, to_corner, length_ticks", 6, 3, "measure, room, position" },
  [RC_TABLE_STAIRS] = { "stairs",
                        "measure, id, position, name, steps, rise_ticks, going_ticks, width_ticks, style, "
                        "nose_extra_ticks, end_extra_ticks, width_extra_ticks, carpet, cushion, notes, cutting, "
                        "runner_width_ticks, curved_width_ticks, turn, turn_after, winders, turn_going_ticks, "
                        "turn_width_ticks, piece_extra_ticks, bend, placed, floor, at_x_ticks, at_y_ticks, "
                        "bearing_degrees",
                        30, 2, "measure, position" },
  [RC_TABLE_STAIR_TURNS]
  = { "stair_turns", "measure, stair, position, kind, bend, after, winders, going_ticks, width_ticks", 9, 3,
      "measure, stair, position" },
  [RC_TABLE_AREAS] = { "areas",
                       "measure, id, position, name, carpet, cushion, fixing, pile_degrees, option, seam_line_pinned, "
                       "seam_line_ticks",
                       11, 2, "measure, position" },
  [RC_TABLE_AREA_ROOMS] = { "area_rooms", "measure, area, position, room", 4, 3, "measure, area, position" },
  [RC_TABLE_JOB_STATES] = { "job_states", "state, reached", 2, 1, "state" },
  [RC_TABLE_ATTACHMENTS] = { "attachments", "id, position, name, place, digest, notes, added", 7, 1, "position" },
  [RC_TABLE_PICTURES]
  = { "job_pictures",
      "storey, name, digest, page, x_ticks, y_ticks, ticks_per_1000px, turn_millidegrees, strength_percent", 9, 1,
      "storey" },
  [RC_TABLE_OFFERS] = { "offers", "discount_ppm, discount_minor, detail, valid_days, terms, tax_area", 6, 0, "job" },
  [RC_TABLE_OFFER_LINES]
  = { "offer_lines", "item, position, optional, hidden, discount_ppm, tax_ppm", 6, 1, "position" },
  [RC_TABLE_OFFER_EXTRAS]
  = { "offer_extras", "id, position, item, name, quantity_micro, unit, price_minor, cost_minor, is_work", 9, 1,
      "position" },
  [RC_TABLE_OFFER_PAYMENTS] = { "offer_payments", "position, name, part_ppm, days", 4, 1, "position" },
  [RC_TABLE_ALTERNATIVES] = { "alternatives", "id, position, name", 3, 1, "position" },
  [RC_TABLE_SWAPS] = { "swaps", "alternative, position, place, carpet, option", 5, 2, "alternative, position" },
  [RC_TABLE_PINS] = { "pins", "measure, area, position, kind, room, roll", 6, 3, "measure, area, position" },
  [RC_TABLE_PIN_POINTS]
  = { "pin_points", "measure, area, pin, position, x_ticks, y_ticks", 6, 4, "measure, area, pin, position" },
  [RC_TABLE_PRICE_BOOK] = { "price_book",
                            "book, currency, currency_digits, tax_ppm, deposit_ppm, shop_name, shop_address, terms, "
                            "valid_days, logo, job_numbers",
                            11, 1, "book" },
  [RC_TABLE_CATALOGUE] = { "catalogue", GOODS_COLUMNS, N_GOODS_COLUMNS, 1, "position" },
  [RC_TABLE_BOOK_PAYMENTS] = { "book_payments", "position, name, part_ppm, days", 4, 1, "position" },
  [RC_TABLE_TAX_AREAS] = { "tax_areas", "id, position, name, goods_ppm, work_ppm", 5, 1, "position" },
  [RC_TABLE_SUPPLIERS] = { "suppliers",
                           "name, position, address, phone, email, account, freight_cost_minor, freight_sale_minor, "
                           "freight_free_from_minor, lead_days, language",
                           11, 1, "position" },
  [RC_TABLE_PRICES]
  = { "prices", "position, item, unit, cost_minor, sale_minor, valid_from, valid_to, from_micro", 8, 1, "position" },
};
G_STATIC_ASSERT (G_N_ELEMENTS (tables) == RC_N_TABLES);

const RcRowTable *
rc_row_table_get (RcTableId table)
{
  return &tables[table];
}

gboolean
rc_row_table_is_of_job (RcTableId table)
{
  return table < RC_N_JOB_TABLES;
}

const char *
rc_row_table_get_label (RcTableId table)
{
  switch (table)
    {
    case RC_TABLE_RULE_COSTS:
      return _ ("rule");
    case RC_TABLE_JOB_GOODS:
    case RC_TABLE_CATALOGUE:
      return _ ("goods");
    case RC_TABLE_JOB_ROLLS:
      return _ ("roll");
    case RC_TABLE_MEASURES:
      return _ ("measure");
    case RC_TABLE_ROOMS:
      return _ ("room");
    case RC_TABLE_OPENINGS:
      return _ ("opening");
    case RC_TABLE_STAIRS:
      return _ ("stair");
    case RC_TABLE_AREAS:
      return _ ("area");
    case RC_TABLE_ATTACHMENTS:
      return _ ("attachment");
    case RC_TABLE_PICTURES:
      return _ ("plan picture");
    case RC_TABLE_OFFER_LINES:
    case RC_TABLE_OFFER_EXTRAS:
      return _ ("line");
    case RC_TABLE_ALTERNATIVES:
      return _ ("alternative");
    case RC_TABLE_TAX_AREAS:
      return _ ("tax area");
    case RC_TABLE_SUPPLIERS:
      return _ ("supplier");
    default:
      return tables[table].name;
    }
}

/* "job = ? AND room = ?" over the job and the first `n_columns` columns. */
static void
append_condition (GString *sql, RcTableId table, guint n_columns)
{
  g_auto (GStrv) names = g_strsplit (tables[table].columns, ", ", -1);
  const char *joint = " WHERE ";

  if (rc_row_table_is_of_job (table))
    {
      g_string_append (sql, " WHERE job = ?");
      joint = " AND ";
    }
  for (guint i = 0; i < n_columns; i++, joint = " AND ")
    g_string_append_printf (sql, "%s%s = ?", joint, names[i]);
}

char *
rc_row_table_dup_select (RcTableId table, gboolean by_key)
{
  GString *sql = g_string_new (NULL);
  g_auto (GStrv) names = g_strsplit (tables[table].columns, ", ", -1);

  g_string_append_printf (sql, "SELECT %s FROM %s", tables[table].columns, tables[table].name);
  append_condition (sql, table, 0);
  if (!by_key)
    g_string_append_printf (sql, " ORDER BY %s", tables[table].order);
  for (guint i = 0; by_key && i < tables[table].n_key; i++)
    g_string_append_printf (sql, "%s%s", i == 0 ? " ORDER BY " : ", ", names[i]);
  return g_string_free (sql, FALSE);
}

char *
rc_row_table_dup_insert (RcTableId table)
{
  GString *sql = g_string_new (NULL);
  gboolean of_job = rc_row_table_is_of_job (table);

  g_string_append_printf (sql, "INSERT INTO %s (%s%s) VALUES (?", tables[table].name, of_job ? "job, " : "",
                          tables[table].columns);
  for (guint i = of_job ? 0 : 1; i < tables[table].n_columns; i++)
    g_string_append (sql, ", ?");
  g_string_append_c (sql, ')');
  return g_string_free (sql, FALSE);
}

char *
rc_row_table_dup_update (RcTableId table)
{
  GString *sql = g_string_new (NULL);
  g_auto (GStrv) names = g_strsplit (tables[table].columns, ", ", -1);

  g_string_append_printf (sql, "UPDATE %s SET ", tables[table].name);
  for (guint i = tables[table].n_key; i < tables[table].n_columns; i++)
    g_string_append_printf (sql, "%s%s = ?", i == tables[table].n_key ? "" : ", ", names[i]);
  append_condition (sql, table, tables[table].n_key);
  return g_string_free (sql, FALSE);
}

char *
rc_row_table_dup_delete (RcTableId table)
{
  GString *sql = g_string_new (NULL);

  g_string_append_printf (sql, "DELETE FROM %s", tables[table].name);
  append_condition (sql, table, tables[table].n_key);
  return g_string_free (sql, FALSE);
}
