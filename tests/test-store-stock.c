/* Stock and orders: promises, cutting, history; two programs on one roll; orders received in part. */
#include <gio/gio.h>

#include "store-maker.h"
#include "store-office.h"
#include "store-private.h"

#define FT RC_TICKS_PER_FOOT

typedef struct
{
  char    *folder, *path;
  RcStore *store, *other;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcRoll) roll = rc_roll_new ("R-7", "twist", 40 * FT);
  RcFlaw           flaw = { 20 * FT, 21 * FT };
  g_autofree char *id = NULL;
  g_autoptr (GError) error = NULL;

  fixture->folder = rc_store_maker_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "shop.db", NULL);
  fixture->store = rc_store_open (fixture->path, NULL, NULL);
  fixture->other = rc_store_open (fixture->path, NULL, NULL);
  roll->lot = g_strdup ("L-1");
  g_array_append_val (roll->flaws, flaw);
  id = rc_store_receive_roll (fixture->store, roll, "from the mill", NOW, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (id, ==, "R-7");
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  rc_store_maker_assert_sound (fixture->store);
  rc_store_close (fixture->store);
  rc_store_close (fixture->other);
  rc_store_maker_remove_folder (fixture->folder);
  g_free (fixture->path);
}

static RcLength
get_available (RcStore *store, const char *job_id)
{
  RcLength length = -1;

  g_assert_true (rc_store_get_available (store, "R-7", job_id, &length, NULL));
  return length;
}

static void
assert_range (gboolean done, GError **error)
{
  g_assert_false (done);
  g_assert_error (*error, RC_ERROR, RC_ERROR_RANGE);
  g_clear_error (error);
}

/* Whoever comes first has the length; the other is told what there is. */
static void
test_two_jobs (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) rolls = NULL;

  g_assert_true (rc_store_reserve_roll (fixture->store, "R-7", "J-1", 30 * FT, NOW, &error));
  g_assert_cmpint (get_available (fixture->other, "J-2"), ==, 10 * FT);
  g_assert_cmpint (get_available (fixture->other, "J-1"), ==, 40 * FT);
  assert_range (rc_store_reserve_roll (fixture->other, "R-7", "J-2", 10 * FT + 1, NOW, &error), &error);
  assert_range (rc_store_cut_roll (fixture->other, "R-7", "J-2", 10 * FT + 1, NULL, NULL, -1, NOW, &error), &error);
  g_assert_true (rc_store_reserve_roll (fixture->other, "R-7", "J-2", 10 * FT, NOW, &error));
  assert_range (rc_store_reserve_roll (fixture->store, "R-7", "J-1", 30 * FT + 1, NOW, &error), &error);
  rolls = rc_store_load_rolls_for_job (fixture->store, "J-3", &error);
  g_assert_cmpuint (rolls->len, ==, 0);
  assert_range (rc_store_correct_roll (fixture->store, "R-7", 40 * FT - 1, "moths", NOW, &error), &error);
  /* Given back, it is there for others. */
  g_assert_true (rc_store_reserve_roll (fixture->store, "R-7", "J-1", 0, NOW, &error));
  g_assert_cmpint (get_available (fixture->other, "J-2"), ==, 40 * FT);
  g_assert_no_error (error);
}

/* Each job is told what is kept for it, and of all rolls what it can have, be it nothing. */
static void
test_held (Fixture *fixture, gconstpointer data)
{
  RcCurrency usd = { "USD", 2 };
  g_autoptr (RcJob) job = rc_job_new ("J-1", &usd);
  g_autoptr (GPtrArray) rolls = NULL;
  g_autoptr (RcHeld) before = NULL, held = NULL;
  g_autoptr (GError) error = NULL;

  before = rc_store_load_held (fixture->store, job, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (before->orders->len, ==, 0);
  g_assert_true (rc_store_reserve_roll (fixture->other, "R-7", "J-1", 30 * FT, NOW, &error));
  g_assert_true (rc_store_reserve_roll (fixture->other, "R-7", "J-2", 10 * FT, NOW, &error));
  rolls = rc_store_load_rolls_for_job (fixture->store, "J-1", &error);
  g_assert_cmpint (((const RcRoll *)rolls->pdata[0])->length, ==, 30 * FT);
  g_assert_cmpint (((const RcRoll *)rolls->pdata[0])->kept, ==, 30 * FT);
  held = rc_store_load_held (fixture->store, job, &error);
  g_assert_no_error (error);
  g_assert_false (rc_held_equal (before, held));
  g_free (job->id);
  job->id = g_strdup ("J-3");
  g_clear_pointer (&held, rc_held_unref);
  held = rc_store_load_held (fixture->store, job, &error);
  g_assert_cmpint (((const RcRoll *)held->rolls->pdata[0])->length, ==, 0);
  g_assert_cmpint (((const RcRoll *)held->rolls->pdata[0])->kept, ==, 0);
}

/* Not even another program may promise what is not there. */
static void
test_triggers (Fixture *fixture, gconstpointer data)
{
  sqlite3 *db = NULL;

  g_assert_true (rc_store_reserve_roll (fixture->store, "R-7", "J-1", 30 * FT, NOW, NULL));
  g_assert_cmpint (sqlite3_open (fixture->path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, "INSERT INTO reservations VALUES ('R-7', 'J-9', 99999999, '')", NULL, NULL, NULL),
                   ==, SQLITE_CONSTRAINT);
  g_assert_cmpint (sqlite3_exec (db, "UPDATE rolls SET length_ticks = 5", NULL, NULL, NULL), ==, SQLITE_CONSTRAINT);
  g_assert_cmpint (sqlite3_exec (db, "UPDATE rolls SET length_ticks = -1", NULL, NULL, NULL), ==, SQLITE_CONSTRAINT);
  sqlite3_close (db);
}

/* 12 ft come off: a piece for the job, a measured remnant beside it, the balance, and the damage nearer to the start.
 */
static void
test_cut (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_piece_free);
  g_autoptr (GPtrArray) remnants = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  g_autoptr (GPtrArray) moves = NULL, cut = NULL, rolls = NULL, promises = NULL;
  g_autoptr (GError) error = NULL;
  RcRoll       *remnant = rc_roll_new (NULL, NULL, 11 * FT);
  const RcRoll *left;

  remnant->width = 4 * FT;
  remnant->place = g_strdup ("bin 2");
  g_ptr_array_add (remnants, remnant);
  g_ptr_array_add (pieces, rc_cut_piece_new ("3", 8 * FT, 12 * FT));
  g_assert_true (rc_store_reserve_roll (fixture->store, "R-7", "J-1", 15 * FT, NOW, &error));
  g_assert_true (
      rc_store_cut_roll (fixture->store, "R-7", "J-1", 12 * FT, pieces, remnants, 28 * FT - 100, NOW, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (remnant->id, ==, "R-1");

  rolls = rc_store_load_rolls_for_job (fixture->other, "J-1", &error);
  g_assert_cmpuint (rolls->len, ==, 2);
  left = rolls->pdata[1];
  g_assert_cmpstr (left->id, ==, "R-7");
  g_assert_cmpint (left->length, ==, 28 * FT - 100);
  g_assert_cmpuint (left->flaws->len, ==, 1);
  g_assert_cmpint (g_array_index (left->flaws, RcFlaw, 0).from, ==, 8 * FT);
  left = rolls->pdata[0];
  g_assert_true (left->remnant);
  g_assert_cmpstr (left->goods_id, ==, "twist");
  g_assert_cmpstr (left->lot, ==, "L-1");
  g_assert_cmpint (left->width, ==, 4 * FT);
  g_assert_cmpint (left->length, ==, 11 * FT);

  promises = rc_store_find_reservations (fixture->store, "R-7", "J-1", &error);
  g_assert_cmpuint (promises->len, ==, 1);
  g_assert_cmpint (((const RcReservation *)promises->pdata[0])->length, ==, 3 * FT);
  cut = rc_store_find_cut_pieces (fixture->store, "J-1", &error);
  g_assert_cmpuint (cut->len, ==, 1);
  g_assert_cmpint (((const RcCutPiece *)cut->pdata[0])->width, ==, 8 * FT);
  g_assert_cmpstr (((const RcCutPiece *)cut->pdata[0])->lot, ==, "L-1");
  moves = rc_store_find_moves (fixture->store, "R-7", &error);
  g_assert_cmpuint (moves->len, ==, 3);
  g_assert_cmpint (((const RcRollMove *)moves->pdata[2])->kind, ==, RC_MOVE_CUT);
  g_assert_cmpint (((const RcRollMove *)moves->pdata[2])->balance, ==, 28 * FT - 100);
}

/* All or nothing: a bad piece leaves roll, promise and history as they were. */
static void
test_bad_cut (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_piece_free);
  g_autoptr (GPtrArray) moves = NULL;
  g_autoptr (GError) error = NULL;

  g_ptr_array_add (pieces, rc_cut_piece_new ("3", 0, 12 * FT));
  assert_range (rc_store_cut_roll (fixture->store, "R-7", "J-1", 12 * FT, pieces, NULL, -1, NOW, &error), &error);
  assert_range (rc_store_cut_roll (fixture->store, "R-7", "J-1", 41 * FT, NULL, NULL, -1, NOW, &error), &error);
  assert_range (rc_store_cut_roll (fixture->store, "R-7", "J-1", -1, NULL, NULL, -1, NOW, &error), &error);
  g_assert_cmpint (get_available (fixture->store, NULL), ==, 40 * FT);
  moves = rc_store_find_moves (fixture->store, "R-7", NULL);
  g_assert_cmpuint (moves->len, ==, 1);
  g_assert_false (rc_store_reserve_roll (fixture->store, "R-8", "J-1", 1, NOW, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
}

/* A thousand random moves by two programs: what is promised and cut is never more than what there was. */
static void
test_random (Fixture *fixture, gconstpointer data)
{
  RcLength cut = 0;

  for (guint i = 0; i < 300; i++)
    {
      RcStore         *store = g_test_rand_bit () ? fixture->store : fixture->other;
      g_autofree char *job = g_strdup_printf ("J-%d", g_test_rand_int_range (1, 4));
      RcLength         length = g_test_rand_int_range (0, 12 * FT), after;
      g_autoptr (GPtrArray) promises = NULL;
      RcLength promised = 0;

      if (g_test_rand_bit ())
        rc_store_reserve_roll (store, "R-7", job, length, NOW, NULL);
      else if (g_test_rand_int_range (0, 3) == 0)
        {
          if (rc_store_cut_roll (store, "R-7", job, length / 8, NULL, NULL, -1, NOW, NULL))
            cut += length / 8;
        }
      else
        rc_store_reserve_roll (store, "R-7", job, 0, NOW, NULL);
      after = get_available (store, NULL);
      g_assert_cmpint (after, >=, 0);
      promises = rc_store_find_reservations (store, "R-7", NULL, NULL);
      for (guint k = 0; k < promises->len; k++)
        promised += ((const RcReservation *)promises->pdata[k])->length;
      g_assert_cmpint (after + promised + cut, ==, 40 * FT);
    }
}

static void
assert_n_rolls (RcStore *store, guint n)
{
  g_autoptr (GPtrArray) rolls = rc_store_load_rolls (store, NULL);

  g_assert_cmpuint (rolls->len, ==, n);
}

static guint
count_moves (RcStore *store, const char *roll)
{
  g_autoptr (GPtrArray) moves = rc_store_find_moves (store, roll, NULL);

  return moves->len;
}

/* Length, place and damage are one correction: refused in one, it is refused in all. */
static void
test_amend (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GPtrArray) before = rc_store_load_rolls (fixture->store, NULL), after = NULL;
  g_autoptr (RcRoll) roll = rc_roll_copy (before->pdata[0]);
  const guint n_moves = count_moves (fixture->store, roll->id);
  RcFlaw      flaw = { 0, roll->length };
  g_autoptr (GError) error = NULL;

  roll->length -= FT;
  g_free (roll->place);
  roll->place = g_strdup ("rack 9");
  g_array_set_size (roll->flaws, 0);
  g_array_append_val (roll->flaws, flaw); /* beyond the new end */
  assert_range (rc_store_amend_roll (fixture->store, roll, NULL, NOW, &error), &error);
  after = rc_store_load_rolls (fixture->store, NULL);
  g_assert_cmpint (((const RcRoll *)after->pdata[0])->length, ==, roll->length + FT);
  g_assert_cmpstr (((const RcRoll *)after->pdata[0])->place, !=, "rack 9");
  g_array_index (roll->flaws, RcFlaw, 0).to = FT;
  rc_store_amend_roll (fixture->store, roll, "moths", NOW, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (count_moves (fixture->store, roll->id), ==, n_moves + 3);
  /* Nothing is other than it was: nothing is noted. */
  g_assert_true (rc_store_amend_roll (fixture->store, roll, "moths", NOW, &error));
  g_assert_cmpuint (count_moves (fixture->store, roll->id), ==, n_moves + 3);
  g_free (roll->id);
  roll->id = g_strdup ("R-none");
  g_assert_false (rc_store_amend_roll (fixture->store, roll, NULL, NOW, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
}

/* A roll that cannot be taken in leaves the order's lines open too. */
static void
check_arrival (RcStore *store, const char *order)
{
  g_autoptr (RcRoll) roll = rc_roll_new (NULL, "twist", 30 * FT), empty = rc_roll_new (NULL, "twist", 0);
  RcArrival parts[] = { { 0, 20 * RC_MICRO, roll, 0 }, { 0, 16 * RC_MICRO, empty, 0 } };
  g_autoptr (GArray) arrivals = g_array_new (FALSE, FALSE, sizeof (RcArrival));
  g_autoptr (RcPurchase) purchase = NULL;
  g_autoptr (GError) error = NULL;

  g_array_append_vals (arrivals, parts, G_N_ELEMENTS (parts));
  assert_range (rc_store_receive_order (store, order, arrivals, "2026-04-18", NOW, &error), &error);
  assert_n_rolls (store, 1);
  purchase = rc_store_load_purchase (store, order, &error);
  g_assert_cmpint (g_array_index (purchase->received_micro, gint64, 0), ==, 0);
}

static void
test_purchase (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GPtrArray) jobs = g_ptr_array_new ();
  g_autoptr (GPtrArray) found = NULL;
  g_autoptr (RcPurchase) purchase = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *number = NULL;
  RcOrder         *order = store_office_new_order ();

  g_ptr_array_add (order->lines,
                   rc_quote_line_new_plain ("tape", "Tape", 2 * RC_MICRO, RC_UNIT_ROLL, 500, 500, FALSE, NULL));
  order->net = order->total = 36 * 1140 + 1000;
  g_ptr_array_add (jobs, (gpointer) "J-1");
  g_ptr_array_add (jobs, (gpointer) "J-2");
  number = rc_store_make_purchase (fixture->store, order, jobs, "2026-04-01", &error);
  g_assert_no_error (error);
  rc_order_free (order);
  g_assert_cmpstr (number, ==, "O-1");

  g_assert_true (rc_store_send_purchase (fixture->store, number, "2026-04-02", &error));
  g_assert_true (rc_store_confirm_purchase (fixture->other, number, "SM 4711", "2026-04-20", "2026-04-03", &error));
  check_arrival (fixture->store, number);
  g_assert_true (rc_store_receive_line (fixture->store, number, 0, 20 * RC_MICRO, "2026-04-18", &error));
  assert_range (rc_store_receive_line (fixture->store, number, 0, 17 * RC_MICRO, "2026-04-19", &error), &error);
  assert_range (rc_store_cancel_purchase (fixture->store, number, "2026-04-19", &error), &error);
  g_assert_true (rc_store_receive_line (fixture->store, number, 0, 16 * RC_MICRO, "2026-04-19", &error));
  found = rc_store_find_purchases (fixture->store, "J-2", &error);
  g_assert_cmpuint (found->len, ==, 1);
  g_assert_cmpint (((const RcPurchase *)found->pdata[0])->state, ==, RC_PURCHASE_PARTLY);
  g_assert_cmpuint (((const RcPurchase *)found->pdata[0])->n_open, ==, 1);
  g_assert_true (rc_store_receive_line (fixture->store, number, 1, 2 * RC_MICRO, "2026-04-20", &error));
  purchase = rc_store_load_purchase (fixture->other, number, &error);
  g_assert_no_error (error);
  g_assert_cmpint (purchase->state, ==, RC_PURCHASE_RECEIVED);
  g_assert_cmpstr (purchase->reference, ==, "SM 4711");
  g_assert_cmpstr (purchase->jobs, ==, "J-1, J-2");
  g_assert_cmpuint (purchase->lines->len, ==, 2);
  g_assert_cmpint (g_array_index (purchase->received_micro, gint64, 0), ==, 36 * RC_MICRO);
  g_assert_null (rc_store_load_purchase (fixture->store, "O-9", &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
}

/* Nobody noted it as sent: what has come says that it was. */
static void
test_unsent (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcPurchase) purchase = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *number = store_office_make_order (fixture->store, &error);

  g_assert_true (rc_store_receive_line (fixture->store, number, 0, 20 * RC_MICRO, "2026-04-18", &error));
  purchase = rc_store_load_purchase (fixture->other, number, &error);
  g_assert_no_error (error);
  g_assert_cmpint (purchase->state, ==, RC_PURCHASE_PARTLY);
  g_assert_cmpstr (purchase->received, ==, "2026-04-18");
  g_assert_cmpstr (rc_purchase_state_get_label (purchase->state), ==, "Partly received");
  g_clear_pointer (&purchase, rc_purchase_free);

  g_assert_true (rc_store_receive_line (fixture->store, number, 0, 16 * RC_MICRO, "2026-04-20", &error));
  purchase = rc_store_load_purchase (fixture->other, number, &error);
  g_assert_cmpint (purchase->state, ==, RC_PURCHASE_RECEIVED);
  g_assert_cmpstr (purchase->received, ==, "2026-04-20");
}

/* What is open is shown to three decimals, and comes in as it is shown. */
static void
test_thousandths (Fixture *fixture, gconstpointer data)
{
  static const gint64 parts[][2] = { { 82667000, 0 }, { 40 * RC_MICRO, 42667000 }, { 40000400, 42666000 } };

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_autoptr (GPtrArray) jobs = g_ptr_array_new ();
      g_autoptr (RcPurchase) purchase = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *number = NULL;
      RcOrder         *order = store_office_new_order ();

      ((RcQuoteLine *)order->lines->pdata[0])->quantity_micro = 82666667; /* 62 ft of a roll 12 ft wide */
      g_ptr_array_add (jobs, (gpointer) "J-1");
      number = rc_store_make_purchase (fixture->store, order, jobs, "2026-04-01", &error);
      rc_order_free (order);
      for (guint k = 0; k < 2 && parts[i][k] > 0; k++)
        g_assert_true (rc_store_receive_line (fixture->store, number, 0, parts[i][k], "2026-04-18", &error));
      purchase = rc_store_load_purchase (fixture->store, number, &error);
      g_assert_no_error (error);
      g_assert_cmpint (purchase->state, ==, RC_PURCHASE_RECEIVED);
      assert_range (rc_store_receive_line (fixture->store, number, 0, 1, "2026-04-19", &error), &error);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)
  ADD ("/store-stock/two-jobs-cannot-take-one-length", test_two_jobs);
  ADD ("/store-stock/what-a-job-has", test_held);
  ADD ("/store-stock/other-programs-cannot-either", test_triggers);
  ADD ("/store-stock/a-correction-is-one", test_amend);
  ADD ("/store-stock/a-cut-leaves-balance-and-remnant", test_cut);
  ADD ("/store-stock/a-bad-cut-changes-nothing", test_bad_cut);
  ADD ("/store-stock/random-moves-of-two-programs", test_random);
  ADD ("/store-stock/an-order-comes-in-in-parts", test_purchase);
  ADD ("/store-stock/what-is-open-comes-in-as-shown", test_thousandths);
  ADD ("/store-stock/what-has-come-of-an-order-was-sent", test_unsent);
  return g_test_run ();
}
