/* The open job without a display: edits, steps, plans, figures, what can be put on sheets. */
#include "document-things.h"
#include "document.h"
#include "rowcut-error.h"
#include "desk-fixture.h"
#include "figures.h"
#include "room-edit.h"
#include "sheet-set.h"
#include "shipped.h"

typedef struct
{
  DeskFixture desk;
  RcDocument *document;
  guint       n_edited, n_planned, n_chosen;
} Fixture;

static void
count (guint *n)
{
  (*n)++;
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  desk_fixture_open_store (&fixture->desk);
  g_autoptr (RcJob) demo = rc_shipped_load_demo_job (&error);
  g_assert_no_error (error);
  g_assert_true (rc_store_save_job (fixture->desk.store, demo, "Demo job", "2026-01-01T00:00:00Z", &error));
  fixture->document = rc_document_new (fixture->desk.store, demo->id, &error);
  g_assert_no_error (error);
  rc_document_set_improve_seconds (fixture->document, 0);
  desk_fixture_wait (fixture->document);
  g_signal_connect_swapped (fixture->document, "edited", G_CALLBACK (count), &fixture->n_edited);
  g_signal_connect_swapped (fixture->document, "planned", G_CALLBACK (count), &fixture->n_planned);
  g_signal_connect_swapped (fixture->document, "chosen", G_CALLBACK (count), &fixture->n_chosen);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_assert_finalize_object (fixture->document);
  desk_fixture_close (&fixture->desk);
}

static const RcRoom *
get_room (Fixture *fixture, const char *id)
{
  return rc_measure_find_room (rc_document_get_measure (fixture->document), id);
}

static RcLength
get_length (Fixture *fixture, const char *room, guint wall)
{
  return g_array_index (get_room (fixture, room)->walls, RcWall, wall).length;
}

static void
set_length (Fixture *fixture, const char *room, guint wall, RcLength length, const char *key)
{
  g_autoptr (RcJob) job = rc_document_dup_job (fixture->document);
  g_autoptr (GError) error = NULL;

  rc_room_edit_set_length (rc_measure_find_room (rc_document_get_measure_of (fixture->document, job), room), wall,
                           length);
  g_assert_true (rc_document_commit (fixture->document, g_steal_pointer (&job), "Wall length", key, &error));
  g_assert_no_error (error);
  desk_fixture_wait (fixture->document);
}

static void
undo (Fixture *fixture)
{
  g_autoptr (GError) error = NULL;
  g_assert_true (rc_document_undo (fixture->document, NULL, &error));
  g_assert_no_error (error);
  desk_fixture_wait (fixture->document);
}

static void
test_opens_with_a_plan (Fixture *fixture, gconstpointer data)
{
  const RcFigures *figures = rc_document_get_figures (fixture->document);

  g_assert_null (rc_document_get_fault (fixture->document));
  g_assert_nonnull (figures);
  g_assert_cmpint (figures->to_buy, >, 0);
  g_assert_true (figures->is_priced);
  g_assert_cmpint (figures->total, >, 0);
  g_assert_null (rc_document_get_figures_before (fixture->document));
}

/* Edits that come faster than plans: none waits for one, and what is planned in the end is the last of them. */
static void
test_edits_do_not_wait_for_plans (Fixture *fixture, gconstpointer data)
{
  RcLength   before = get_length (fixture, "dining", 0);
  RcOutcome *shown = rc_document_get_outcome (fixture->document);

  for (int i = 1; i <= 5; i++)
    {
      g_autoptr (RcJob) job = rc_document_dup_job (fixture->document);
      RcMeasure *measure = rc_document_get_measure_of (fixture->document, job);
      rc_room_edit_set_length (rc_measure_find_room (measure, "dining"), 0, before + i);
      g_assert_true (rc_document_commit (fixture->document, g_steal_pointer (&job), "Wall length", NULL, NULL));
      g_assert_false (rc_document_is_planned (fixture->document));
      g_assert_true (rc_document_get_outcome (fixture->document) == shown);
    }
  desk_fixture_wait (fixture->document);
  const RcRoom *planned = rc_measure_find_room (rc_document_get_outcome (fixture->document)->measure, "dining");
  g_assert_cmpint (g_array_index (planned->walls, RcWall, 0).length, ==, before + 5);
}

static void
test_letters_are_one_step (Fixture *fixture, gconstpointer data)
{
  RcLength before = get_length (fixture, "dining", 0);

  /* As typed: 1, then 12, then 12 and an eighth; every state is kept and planned, undo takes all back at once. */
  set_length (fixture, "dining", 0, RC_TICKS_PER_INCH, "dining 0");
  g_assert_nonnull (rc_document_get_fault (fixture->document));
  set_length (fixture, "dining", 0, 12 * RC_TICKS_PER_FOOT + RC_TICKS_PER_INCH / 8, "dining 0");
  g_assert_null (rc_document_get_fault (fixture->document));
  g_assert_cmpuint (fixture->n_edited, ==, 2);
  undo (fixture);
  g_assert_cmpint (get_length (fixture, "dining", 0), ==, before);
  g_assert_false (rc_document_undo (fixture->document, NULL, NULL));
}

/* Typing what was there already makes no step; the next letter must not take an older step back. */
static void
test_empty_step_takes_nothing_back (Fixture *fixture, gconstpointer data)
{
  RcLength before = get_length (fixture, "dining", 0), hall = get_length (fixture, "hall", 0);

  set_length (fixture, "hall", 0, hall + 127, NULL);
  set_length (fixture, "dining", 0, before + 127, "dining 0");
  set_length (fixture, "dining", 0, before, "dining 0");
  set_length (fixture, "dining", 0, before + 254, "dining 0");
  g_assert_cmpint (get_length (fixture, "hall", 0), ==, hall + 127);
  undo (fixture);
  g_assert_cmpint (get_length (fixture, "dining", 0), ==, before);
  g_assert_cmpint (get_length (fixture, "hall", 0), ==, hall + 127);
  undo (fixture);
  g_assert_cmpint (get_length (fixture, "hall", 0), ==, hall);
}

static void
test_a_field_left_is_a_step (Fixture *fixture, gconstpointer data)
{
  RcLength before = get_length (fixture, "dining", 0);

  set_length (fixture, "dining", 0, before + 127, "dining 0");
  rc_document_end_step (fixture->document);
  set_length (fixture, "dining", 0, before + 254, "dining 0");
  undo (fixture);
  g_assert_cmpint (get_length (fixture, "dining", 0), ==, before + 127);
  g_assert_true (rc_document_redo (fixture->document, NULL, NULL));
  g_assert_cmpint (get_length (fixture, "dining", 0), ==, before + 254);
}

static void
test_fault_keeps_the_edit_and_the_last_plan (Fixture *fixture, gconstpointer data)
{
  RcOutcome *outcome = rc_document_get_outcome (fixture->document);

  set_length (fixture, "dining", 0, 0, NULL);
  g_assert_error (rc_document_get_fault (fixture->document), RC_ERROR, RC_ERROR_GEOMETRY);
  g_assert_nonnull (strstr (rc_document_get_fault (fixture->document)->message, "Dining room"));
  g_assert_true (rc_document_get_outcome (fixture->document) == outcome);
  g_autoptr (RcJob) stored = rc_store_load_job (fixture->desk.store, rc_document_get_job (fixture->document)->id, NULL);
  const RcRoom *room = rc_measure_find_room (rc_job_get_measure (stored, NULL), "dining");
  g_assert_cmpint (g_array_index (room->walls, RcWall, 0).length, ==, 0);
  undo (fixture);
  g_assert_null (rc_document_get_fault (fixture->document));
}

static void
test_figures_before_the_change (Fixture *fixture, gconstpointer data)
{
  RcMoney total = rc_document_get_figures (fixture->document)->total;

  /* A room a foot longer: two walls, as when it is typed. */
  set_length (fixture, "garden", 0, get_length (fixture, "garden", 0), NULL);
  g_assert_true (rc_document_add_room (fixture->document, 0, NULL));
  desk_fixture_wait (fixture->document);
  g_assert_cmpint (rc_document_get_figures_before (fixture->document)->total, ==, total);
  g_assert_cmpint (rc_document_get_figures (fixture->document)->total, >, total);
  g_assert_cmpint (rc_figures_compare (rc_document_get_figures_before (fixture->document),
                                       rc_document_get_figures (fixture->document), RC_FIGURE_TOTAL),
                   ==, 1);
}

/* Another program on the same file sets a length. */
static void
set_length_elsewhere (Fixture *fixture, RcStore *other, const char *room, RcLength length)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) job = rc_store_load_job (other, rc_document_get_job (fixture->document)->id, &error);

  g_assert_no_error (error);
  rc_room_edit_set_length (rc_measure_find_room (rc_job_get_measure (job, NULL), room), 0, length);
  g_assert_true (rc_store_save_job (other, job, "Theirs", "2026-01-02T00:00:00Z", &error));
}

static RcStore *
open_other (Fixture *fixture)
{
  g_autofree char *path = g_build_filename (fixture->desk.folder, "store.db", NULL);
  g_autoptr (GError) error = NULL;
  RcStore *other = rc_store_open (path, NULL, &error);

  g_assert_no_error (error);
  return other;
}

static void
test_changes_elsewhere_are_seen (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcStore) other = open_other (fixture);
  g_autoptr (GError) error = NULL;
  RcLength before = get_length (fixture, "dining", 0);

  set_length (fixture, "dining", 0, before + 127, NULL);
  g_assert_false (rc_document_refresh (fixture->document, &error)); /* one's own edits are no news */
  set_length_elsewhere (fixture, other, "dining", before + 254);
  fixture->n_edited = 0;
  g_assert_true (rc_document_refresh (fixture->document, &error));
  g_assert_cmpuint (fixture->n_edited, ==, 1);
  g_assert_cmpint (get_length (fixture, "dining", 0), ==, before + 254);
  g_assert_false (rc_document_refresh (fixture->document, &error));
  g_assert_no_error (error);
  undo (fixture);
  g_assert_cmpint (get_length (fixture, "dining", 0), ==, before + 127);
}

static void
test_an_edit_meets_another (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcStore) other = open_other (fixture);
  g_autoptr (RcJob) job = NULL;
  g_autoptr (GError) error = NULL;
  RcLength before = get_length (fixture, "dining", 0);

  set_length (fixture, "dining", 0, before + 1, "dining 0");
  set_length_elsewhere (fixture, other, "hall", 12345);
  job = rc_document_dup_job (fixture->document);
  rc_room_edit_set_length (rc_measure_find_room (rc_document_get_measure_of (fixture->document, job), "dining"), 0,
                           before + 12);
  g_assert_false (rc_document_commit (fixture->document, g_steal_pointer (&job), "Wall length", "dining 0", &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_CONFLICT);
  g_assert_nonnull (strstr (error->message, "again"));
  /* Theirs is shown, and the edit made again goes through as a step of its own. */
  g_assert_cmpint (get_length (fixture, "hall", 0), ==, 12345);
  set_length (fixture, "dining", 0, before + 12, "dining 0");
  undo (fixture);
  g_assert_cmpint (get_length (fixture, "hall", 0), ==, 12345);
  g_assert_cmpint (get_length (fixture, "dining", 0), ==, before + 1);
}

static void
test_deleted_elsewhere_is_said (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcStore) other = open_other (fixture);
  g_autoptr (GError) error = NULL;

  g_assert_true (rc_store_delete_job (other, rc_document_get_job (fixture->document)->id, NULL));
  g_assert_false (rc_document_refresh (fixture->document, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
  g_clear_error (&error);
  g_assert_false (rc_document_refresh (fixture->document, &error)); /* said once */
  g_assert_no_error (error);
  undo (fixture);
  g_autoptr (RcJob) back = rc_store_load_job (other, rc_document_get_job (fixture->document)->id, &error);
  g_assert_no_error (error);
}

static void
test_things_come_and_go (Fixture *fixture, gconstpointer data)
{
  const RcMeasure *measure = rc_document_get_measure (fixture->document);
  guint            rooms = measure->rooms->len, areas = measure->areas->len, stairs = measure->stairs->len;
  g_autoptr (GError) error = NULL;

  g_assert_true (rc_document_add_room (fixture->document, 0, &error));
  g_assert_true (rc_document_duplicate_chosen (fixture->document, &error));
  g_assert_true (rc_document_remove_chosen (fixture->document, &error));
  g_assert_cmpuint (rc_document_get_measure (fixture->document)->rooms->len, ==, rooms + 1);
  g_assert_true (rc_document_get_choice (fixture->document).thing == RC_THING_JOB);
  g_assert_false (rc_document_remove_chosen (fixture->document, &error));
  g_assert_no_error (error);
  g_assert_true (rc_document_add_area (fixture->document, &error));
  g_assert_true (rc_document_add_stair (fixture->document, &error));
  g_assert_cmpuint (rc_document_get_measure (fixture->document)->areas->len, ==, areas + 1);
  g_assert_cmpuint (rc_document_get_measure (fixture->document)->stairs->len, ==, stairs + 1);
  g_assert_true (rc_document_get_choice (fixture->document).thing == RC_THING_STAIR);
  while (rc_document_undo (fixture->document, NULL, NULL))
    ;
  measure = rc_document_get_measure (fixture->document);
  g_assert_cmpuint (measure->rooms->len, ==, rooms);
  g_assert_cmpuint (measure->areas->len, ==, areas);
  g_assert_cmpuint (measure->stairs->len, ==, stairs);
}

static void
test_measure_again (Fixture *fixture, gconstpointer data)
{
  guint n = rc_document_get_job (fixture->document)->measures->len;
  g_autoptr (GError) error = NULL;

  g_assert_true (rc_document_add_measure (fixture->document, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (rc_document_get_job (fixture->document)->measures->len, ==, n + 1);
  g_assert_true (rc_document_set_measure (fixture->document, "M1"));
  g_assert_cmpstr (rc_document_get_measure (fixture->document)->id, ==, "M1");
  g_assert_false (rc_document_set_measure (fixture->document, "M99"));
}

static void
on_improved (RcDocument *document, gboolean *is_done)
{
  *is_done = !rc_document_is_busy (document);
}

static gboolean
on_late (gpointer data)
{
  *(gboolean *)data = TRUE;
  return G_SOURCE_CONTINUE;
}

static void
test_search_never_makes_it_worse (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcOutcome) first = rc_outcome_ref (rc_document_get_outcome (fixture->document));
  gboolean is_done = FALSE, is_late = FALSE;

  rc_document_set_improve_seconds (fixture->document, 0.2);
  g_autoptr (RcJob) job = rc_document_dup_job (fixture->document);
  g_assert_true (rc_document_commit (fixture->document, g_steal_pointer (&job), "Nothing", NULL, NULL));
  gulong handler = g_signal_connect (fixture->document, "planned", G_CALLBACK (on_improved), &is_done);
  guint  source = g_timeout_add_seconds (60, on_late, &is_late);
  is_done = FALSE;
  while (!is_done && !is_late)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (source);
  g_signal_handler_disconnect (fixture->document, handler);
  g_assert_false (is_late);
  g_assert_false (rc_outcome_is_better (first, rc_document_get_outcome (fixture->document)));
}

static RcOpening *
find_opening (Fixture *fixture, RcJob *job, const char *room, const char *id)
{
  return rc_room_edit_find_opening (rc_measure_find_room (rc_document_get_measure_of (fixture->document, job), room),
                                    id);
}

/* A wall found thicker after its two rooms were drawn: the one that only this door holds goes farther away. */
static void
test_an_edit_of_a_door_brings_its_room_along (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  RcJob  *job = rc_document_dup_job (fixture->document);
  RcRoom *box = rc_measure_find_room (rc_document_get_measure_of (fixture->document, job), "box");

  box->at = rc_house_find_room (rc_document_get_outcome (fixture->document)->plan->house, "box")->at;
  box->placed = TRUE;
  RcLength x = box->at.x;
  g_assert_true (rc_document_commit (fixture->document, job, "Placed", NULL, &error));
  desk_fixture_wait (fixture->document);
  job = rc_document_dup_job (fixture->document);
  find_opening (fixture, job, "hall", "D4")->depth = 9 * RC_TICKS_PER_INCH;
  find_opening (fixture, job, "hall", "D4")->swing = RC_SWING_IN;
  job = rc_document_meet_opening (fixture->document, job, "hall", "D4");
  g_assert_cmpint (find_opening (fixture, job, "box", "D1")->depth, ==, 9 * RC_TICKS_PER_INCH);
  g_assert_cmpint (find_opening (fixture, job, "box", "D1")->swing, ==, RC_SWING_OUT);
  g_assert_true (rc_document_commit (fixture->document, job, "Thicker", NULL, &error));
  desk_fixture_wait (fixture->document);
  g_assert_no_error (rc_document_get_fault (fixture->document));
  const RcHouse *house = rc_document_get_outcome (fixture->document)->plan->house;
  g_assert_cmpint (rc_house_find_room (house, "box")->at.x, ==, x - 9 * RC_TICKS_PER_INCH / 2);
}

/* What contradicts itself is not settled by moving a room that two doors hold. */
static void
test_an_edit_of_a_door_moves_no_room_that_others_hold (Fixture *fixture, gconstpointer data)
{
  RcJob *job = rc_document_dup_job (fixture->document);

  find_opening (fixture, job, "study", "D1")->depth = 9 * RC_TICKS_PER_INCH;
  job = rc_document_meet_opening (fixture->document, job, "study", "D1");
  g_assert_false (rc_measure_find_room (rc_document_get_measure_of (fixture->document, job), "study")->placed);
  g_assert_cmpint (find_opening (fixture, job, "hall", "D3")->depth, ==, 9 * RC_TICKS_PER_INCH);
  rc_job_free (job);
}

/* The picture under the floor is drawn only: what stands of the plan stays, back and forth too. */
static void
test_a_picture_asks_for_no_plan (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  RcJob         *job = rc_document_dup_job (fixture->document);
  RcPlanPicture *picture = g_new0 (RcPlanPicture, 1);
  RcOutcome     *outcome = rc_document_get_outcome (fixture->document);

  g_autoptr (GBytes) bytes = g_bytes_new_static ("x", 1);
  picture->name = g_strdup ("plan.png");
  picture->digest = rc_store_add_file (fixture->desk.store, bytes, &error);
  picture->page = 1;
  picture->ticks_per_1000px = RC_TICKS_PER_FOOT;
  picture->strength_percent = 100;
  rc_job_take_picture (job, picture);
  fixture->n_edited = 0;
  g_assert_true (rc_document_commit_picture (fixture->document, job, "Picture", &error));
  g_assert_no_error (error);
  g_assert_cmpuint (fixture->n_edited, ==, 1);
  g_assert_true (rc_document_is_planned (fixture->document));
  g_assert_true (rc_document_get_outcome (fixture->document) == outcome);
  g_assert_null (rc_document_get_figures_before (fixture->document));

  for (guint i = 0; i < 2; i++)
    {
      g_assert_true (i == 0 ? rc_document_undo (fixture->document, NULL, &error)
                            : rc_document_redo (fixture->document, NULL, &error));
      g_assert_cmpuint (rc_document_get_job (fixture->document)->pictures->len, ==, i);
      g_assert_true (rc_document_is_planned (fixture->document));
      g_assert_true (rc_document_get_outcome (fixture->document) == outcome);
      g_assert_null (rc_document_get_figures_before (fixture->document));
    }
  g_assert_cmpuint (fixture->n_edited, ==, 3);
}

static void
test_sheets_and_their_files (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcSheetSet) set = rc_sheet_set_new (rc_document_get_outcome (fixture->document), NULL, NULL);

  g_assert_cmpint (rc_sheet_set_find (set, RC_SHEET_QUOTATION), >=, 0);
  g_assert_cmpint (rc_sheet_set_find (set, RC_SHEET_ORDER), >=, 0);
  for (guint i = 0; i < set->sheets->len; i++)
    {
      RcSheetData      data_of;
      g_autofree char *label = rc_sheet_set_dup_label (set, i);
      g_autofree char *file = rc_sheet_set_dup_file_name (set, i);
      rc_sheet_set_get_data (set, i, RC_PAPER_A4, NULL, &data_of);
      g_assert_cmpuint (rc_sheet_count_pages (rc_sheet_set_get_kind (set, i), &data_of), >, 0);
      g_assert_null (strchr (file, G_DIR_SEPARATOR));
      g_assert_true (g_str_has_suffix (file, ".pdf"));
      g_assert_cmpstr (label, !=, "");
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)
  ADD ("/desk/document/opens-with-a-plan", test_opens_with_a_plan);
  ADD ("/desk/document/edits-do-not-wait-for-plans", test_edits_do_not_wait_for_plans);
  ADD ("/desk/document/letters-are-one-step", test_letters_are_one_step);
  ADD ("/desk/document/empty-step-takes-nothing-back", test_empty_step_takes_nothing_back);
  ADD ("/desk/document/a-field-left-is-a-step", test_a_field_left_is_a_step);
  ADD ("/desk/document/fault-keeps-the-edit-and-the-last-plan", test_fault_keeps_the_edit_and_the_last_plan);
  ADD ("/desk/document/figures-before-the-change", test_figures_before_the_change);
  ADD ("/desk/document/things-come-and-go", test_things_come_and_go);
  ADD ("/desk/document/changes-elsewhere-are-seen", test_changes_elsewhere_are_seen);
  ADD ("/desk/document/an-edit-meets-another", test_an_edit_meets_another);
  ADD ("/desk/document/deleted-elsewhere-is-said", test_deleted_elsewhere_is_said);
  ADD ("/desk/document/measure-again", test_measure_again);
  ADD ("/desk/document/search-never-makes-it-worse", test_search_never_makes_it_worse);
  ADD ("/desk/document/a-door-brings-its-room-along", test_an_edit_of_a_door_brings_its_room_along);
  ADD ("/desk/document/a-door-moves-no-room-that-others-hold", test_an_edit_of_a_door_moves_no_room_that_others_hold);
  ADD ("/desk/document/a-picture-asks-for-no-plan", test_a_picture_asks_for_no_plan);
  ADD ("/desk/document/sheets-and-their-files", test_sheets_and_their_files);
  return g_test_run ();
}
