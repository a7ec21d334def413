/* The same for what the office does: stock, orders, quotations, papers, files, numbers, and what is read of them. */
#include "fault-layer.h"
#include "fault-rounds.h"
#include "store-maker.h"
#include "store-office.h"

#define FT RC_TICKS_PER_FOOT

/* A new text that the work made, if any. */
static gboolean
is_made (char *text)
{
  gboolean made = text != NULL;

  g_free (text);
  return made;
}

static gboolean
is_found (GPtrArray *found, guint n)
{
  if (found == NULL)
    return FALSE;
  g_assert_cmpuint (found->len, ==, n);
  g_ptr_array_unref (found);
  return TRUE;
}

static gboolean
run_receive (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (RcRoll) roll = rc_roll_new (NULL, "twist", 30 * FT);

  return is_made (rc_store_receive_roll (store, roll, "from the mill", NOW, error));
}

static gboolean
run_reserve (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_reserve_roll (store, OFFICE_ROLL, "J-2", 20 * FT, NOW, error);
}

static gboolean
run_cut (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_piece_free);
  g_autoptr (GPtrArray) remnants = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  RcRoll *remnant = rc_roll_new (NULL, NULL, 11 * FT);

  remnant->width = 4 * FT;
  g_ptr_array_add (remnants, remnant);
  g_ptr_array_add (pieces, rc_cut_piece_new ("3", 8 * FT, 12 * FT));
  return rc_store_cut_roll (store, OFFICE_ROLL, "J-1", 12 * FT, pieces, remnants, 27 * FT, NOW, error);
}

static gboolean
run_correct (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_correct_roll (store, OFFICE_ROLL, 33 * FT, "measured", NOW, error);
}

static gboolean
run_place (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_place_roll (store, OFFICE_ROLL, "rack 3", NOW, error);
}

static gboolean
run_damage (FaultFixture *fixture, RcStore *store, GError **error)
{
  RcFlaw flaw = { 20 * FT, 21 * FT };
  g_autoptr (GArray) flaws = g_array_new (FALSE, FALSE, sizeof (RcFlaw));

  g_array_append_val (flaws, flaw);
  return rc_store_mark_damage (store, OFFICE_ROLL, flaws, NOW, error);
}

static gboolean
run_order (FaultFixture *fixture, RcStore *store, GError **error)
{
  return is_made (store_office_make_order (store, error));
}

static gboolean
run_confirm (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_confirm_purchase (store, OFFICE_ORDER, "SM 4711", "2025-04-01", "2025-03-05", error);
}

static gboolean
run_cancel (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_cancel_purchase (store, OFFICE_ORDER, "2025-03-05", error);
}

static gboolean
run_arrive (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_receive_line (store, OFFICE_ORDER, 0, 36 * RC_MICRO, "2025-03-06", error);
}

static gboolean
run_revise (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1);
  g_autoptr (GPtrArray) quotes = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_free);

  g_ptr_array_add (quotes, rc_store_maker_new_quote (rand, 3));
  g_ptr_array_add (quotes, rc_store_maker_new_quote (rand, 2));
  return is_made (rc_store_issue_offer (store, fixture->job, quotes, OFFICE_QUOTE, "2025-03-06", error));
}

static gboolean
run_accept (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_mark_quote (store, OFFICE_QUOTE, RC_QUOTE_ACCEPTED, "2025-03-06", "by letter", error);
}

static gboolean
run_keep_file (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new_take (g_malloc0 (40000), 40000);

  return is_made (rc_store_add_file (store, bytes, error));
}

static gboolean
run_new_job (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (RcJob) job = rc_job_new (NULL, &fixture->job->currency);

  return rc_store_save_new_job (store, job, "new", "2025-03-06", "2025-03-06T10:00:00Z", error);
}

static gboolean
run_read_stock (FaultFixture *fixture, RcStore *store, GError **error)
{
  RcLength available = 0;

  if (!is_found (rc_store_load_rolls (store, error), 1)
      || !is_found (rc_store_load_rolls_for_job (store, "J-2", error), 1)
      || !is_found (rc_store_find_reservations (store, NULL, NULL, error), 1)
      || !is_found (rc_store_find_moves (store, NULL, error), 2)
      || !is_found (rc_store_find_cut_pieces (store, NULL, error), 0)
      || !rc_store_get_available (store, OFFICE_ROLL, "J-2", &available, error))
    return FALSE;
  g_assert_cmpint (available, ==, 30 * FT);
  return TRUE;
}

static gboolean
run_read_papers (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (RcQuote) quote = rc_store_load_quote (store, OFFICE_QUOTE, error);
  g_autoptr (GBytes) paper = quote != NULL ? rc_store_load_paper (store, OFFICE_QUOTE, error) : NULL;
  g_autoptr (RcPurchase) order = paper != NULL ? rc_store_load_purchase (store, OFFICE_ORDER, error) : NULL;

  if (order == NULL)
    return FALSE;
  g_assert_cmpuint (quote->lines->len, ==, 3);
  g_assert_cmpuint (g_bytes_get_size (paper), ==, 8);
  g_assert_cmpuint (order->lines->len, ==, 1);
  return is_found (rc_store_find_quotes (store, NULL, error), 2)
         && is_found (rc_store_find_purchases (store, NULL, error), 1);
}

static gboolean
run_keep_paper (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static ("%PDF-1.7 2", 10);

  return rc_store_keep_paper (store, OFFICE_BARE, bytes, error);
}

static gboolean
run_save_roll (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (RcRoll) roll = rc_roll_new ("R-20", "twist", 30 * FT);

  return rc_store_save_roll (store, roll, error);
}

/* What the lists and the window of a job ask. */
static gboolean
run_read_jobs (FaultFixture *fixture, RcStore *store, GError **error)
{
  RcJobState       state;
  gint64           revision, version;
  gboolean         is_current;
  g_autofree char *reached = NULL;
  g_autoptr (RcPriceBook) book = NULL;
  g_autoptr (RcHeld) held = NULL;

  if (!rc_store_find_state (store, "J-1", &state, &reached, error)
      || !is_found (rc_store_find_jobs_in_state (store, "J", (RcJobState)((state + 1) % RC_N_JOB_STATES), 0, error), 0)
      || !rc_store_get_revision (store, "J-1", &revision, error)
      || !rc_store_is_current (store, "J-1", &is_current, error) || !rc_store_get_data_version (store, &version, error)
      || (held = rc_store_load_held (store, fixture->job, error)) == NULL)
    return FALSE;
  g_assert_cmpint (revision, >, 0);
  g_assert_true (is_current);
  g_assert_cmpuint (held->goods->len, ==, 0);
  book = rc_store_load_price_book (store, error);
  if (book != NULL)
    g_assert_cmpuint (book->goods->len, ==, 3);
  return book != NULL;
}

/* Length, place and damage at once. */
static gboolean
run_amend (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (RcRoll) roll = rc_roll_new (OFFICE_ROLL, "twist", 33 * FT);
  const RcFlaw flaw = { 2 * FT, 3 * FT };

  roll->place = g_strdup ("rack 3");
  g_array_append_val (roll->flaws, flaw);
  return rc_store_amend_roll (store, roll, "measured", NOW, error);
}

/* The line noted, two rolls in stock, one of them kept for the job. */
static gboolean
run_rolls_arrive (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (RcRoll) one = rc_roll_new (NULL, "twist", 15 * FT), two = rc_roll_new (NULL, "twist", 12 * FT);
  const RcArrival parts[] = { { 0, 20 * RC_MICRO, one, 15 * FT }, { 0, 16 * RC_MICRO, two, 0 } };
  g_autoptr (GArray) arrivals = g_array_new (FALSE, FALSE, sizeof (RcArrival));

  g_array_append_vals (arrivals, parts, G_N_ELEMENTS (parts));
  return rc_store_receive_order (store, OFFICE_ORDER, arrivals, "2025-03-06", NOW, error);
}

static const FaultWork works[] = {
  { "receiving-a-roll", run_receive, TRUE, NULL, 0 },
  { "keeping-a-length", run_reserve, TRUE, NULL, 0 },
  { "cutting", run_cut, TRUE, NULL, 0 },
  { "measuring-a-roll", run_correct, TRUE, NULL, 0 },
  { "correcting-a-roll", run_amend, TRUE, NULL, 0 },
  { "moving-a-roll", run_place, TRUE, NULL, 0 },
  { "damage", run_damage, TRUE, NULL, 0 },
  { "making-an-order", run_order, TRUE, NULL, 0 },
  { "confirming-an-order", run_confirm, TRUE, NULL, 0 },
  { "cancelling-an-order", run_cancel, TRUE, NULL, 0 },
  { "rolls-arriving", run_rolls_arrive, TRUE, NULL, 0 },
  { "goods-arriving", run_arrive, TRUE, NULL, 0 },
  { "revising-a-quotation", run_revise, TRUE, NULL, 0 },
  { "accepting-a-quotation", run_accept, TRUE, NULL, 0 },
  { "keeping-a-paper", run_keep_paper, TRUE, NULL, 0 },
  { "saving-a-roll", run_save_roll, TRUE, NULL, 0 },
  { "reading-jobs-and-prices", run_read_jobs, TRUE, NULL, 0 },
  { "keeping-a-file", run_keep_file, TRUE, NULL, 0 },
  { "a-job-number", run_new_job, TRUE, NULL, 0 },
  { "reading-the-stock", run_read_stock, TRUE, NULL, 0 },
  { "reading-papers", run_read_papers, TRUE, NULL, 0 },
};

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  fault_layer_install ();
  fault_rounds_add ("store-faults-office", works, G_N_ELEMENTS (works));
  return g_test_run ();
}
