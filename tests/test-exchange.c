/* The job file, in and out: the shipped demo job, small files written by hand, and files with a fault in them. */
#include <string.h>

#include <glib/gstdio.h>

#include "house.h"
#include "job-file.h"
#include "rowcut-error.h"
#include "shipped.h"

#define IN   RC_TICKS_PER_INCH
#define HEAD "<job xmlns=\"urn:rowcut:job:1\">"

static RcJob *
parse (const char *xml, GError **error)
{
  return rc_job_file_parse (xml, strlen (xml), "JOB.xml", NULL, error);
}

static RcJob *
parse_well (const char *xml)
{
  g_autoptr (GError) error = NULL;
  RcJob *job = parse (xml, &error);

  g_assert_no_error (error);
  g_assert_nonnull (job);
  return job;
}

/* --- the demo job --- */

static void
test_demo_is_sound (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) job = rc_shipped_load_demo_job (&error);

  g_assert_no_error (error);
  g_assert_cmpuint (job->measures->len, ==, 2);
  for (guint i = 0; i < job->measures->len; i++)
    {
      const RcMeasure *measure = job->measures->pdata[i];

      rc_job_check (job, measure, &error);
      g_assert_no_error (error);
      g_assert_cmpuint (measure->rooms->len, >=, 8);
      g_assert_cmpuint (measure->stairs->len, ==, 1);
    }
}

/* Every area is one floor: its rooms are joined through their doors. */
static void
test_demo_areas_are_joined (void)
{
  g_autoptr (RcJob) job = rc_shipped_load_demo_job (NULL);
  const RcMeasure *measure = rc_job_get_measure (job, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (RcHouse) house = rc_house_new (measure, &job->settings.closure, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < measure->areas->len; i++)
    {
      RcArea exact = 0;
      g_autoptr (GPtrArray) floor = rc_house_compute_floor (house, measure->areas->pdata[i], &exact, &error);

      g_assert_no_error (error);
      g_assert_cmpuint (floor->len, ==, 1);
      g_assert_true (rc_polygon_check (floor->pdata[0], NULL));
      g_assert_cmpint (ABS (rc_region_compute_area (floor) - exact), <=,
                       4 * rc_ring_compute_length (((RcPolygon *)floor->pdata[0])->outer));
    }
}

/* Only the living room differs between the visits. */
static void
test_demo_measures_differ_in_one_room (void)
{
  g_autoptr (RcJob) job = rc_shipped_load_demo_job (NULL);
  const RcMeasure *first = rc_job_get_measure (job, "M1"), *second = rc_job_get_measure (job, "M2");
  guint            n_changed = 0;

  for (guint i = 0; i < first->rooms->len; i++)
    {
      g_autoptr (RcPolygon) before = rc_room_compute_polygon (first->rooms->pdata[i], &job->settings.closure, NULL);
      g_autoptr (RcPolygon) after = rc_room_compute_polygon (second->rooms->pdata[i], &job->settings.closure, NULL);

      if (rc_polygon_compute_area (before) != rc_polygon_compute_area (after))
        {
          n_changed++;
          g_assert_cmpstr (((RcRoom *)first->rooms->pdata[i])->id, ==, "living");
        }
    }
  g_assert_cmpuint (n_changed, ==, 1);
}

static void
assert_same_after_round_trip (const RcJob *job, const RcPriceBook *book)
{
  g_autofree char *xml = rc_job_file_format (job, book), *again = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPriceBook) book_back = NULL;
  g_autoptr (RcJob) back = rc_job_file_parse (xml, strlen (xml), "JOB.xml", &book_back, &error);

  g_assert_no_error (error);
  g_assert_true ((book == NULL) == (book_back == NULL));
  again = rc_job_file_format (back, book_back);
  g_assert_cmpstr (again, ==, xml);
}

static void
test_demo_round_trip (void)
{
  g_autoptr (RcJob) job = rc_shipped_load_demo_job (NULL);
  g_autoptr (RcPriceBook) book = rc_shipped_load_price_book (NULL);

  assert_same_after_round_trip (job, NULL);
  assert_same_after_round_trip (job, book);
}

/* --- files written by hand --- */

#define ROOM_15_BY_20                                                                                                  \
  "<room name='Parlour'><wall bearing='E' length='15 ft'/><wall bearing='N' length='20 ft'/>"                          \
  "<wall bearing='W' length='15 ft'/><wall bearing='S' length='20 ft'/></room>"

static void
test_least_file (void)
{
  g_autoptr (RcJob) job = parse_well (HEAD "<settings trim='0'/><goods><carpet id='twist' roll-width='12 ft'/></goods>"
                                           "<measure>" ROOM_15_BY_20 "</measure></job>");
  const RcMeasure   *measure = rc_job_get_measure (job, "M1");
  const RcFloorArea *area;
  g_autoptr (GError) error = NULL;

  g_assert_nonnull (measure);
  g_assert_cmpstr (((RcRoom *)measure->rooms->pdata[0])->id, ==, "parlour");
  g_assert_cmpuint (measure->areas->len, ==, 1);
  area = measure->areas->pdata[0];
  g_assert_cmpstr (area->carpet, ==, "twist");
  g_assert_cmpstr (area->name, ==, "Parlour");
  g_assert_cmpint (job->settings.trim_length, ==, 0);
  g_assert_cmpint (job->settings.trim_width, ==, 0);
  g_assert_cmpstr (job->currency.code, ==, "USD");
  rc_job_check (job, measure, &error);
  g_assert_no_error (error);
}

/* Rooms that doors join make one area each set; an area that names none has them all. */
static void
test_areas_follow_doors (void)
{
  const char      *three = "<room id='a'><outline><point x='0' y='0'/><point x='10ft' y='0'/><point x='10ft' y='10ft'/>"
                           "<point x='0' y='10ft'/></outline><door wall='2' width='30' to='b'/></room>"
                           "<room id='b'><outline><point x='0' y='0'/><point x='10ft' y='0'/><point x='10ft' y='10ft'/>"
                           "<point x='0' y='10ft'/></outline><door wall='4' width='30' to='a'/></room>"
                           "<room id='c'><outline><point x='0' y='0'/><point x='10ft' y='0'/><point x='10ft' y='10ft'/>"
                           "<point x='0' y='10ft'/></outline></room>";
  g_autofree char *by_doors = g_strconcat (HEAD "<goods><carpet id='t' roll-width='12ft'/></goods><measure>", three,
                                           "</measure></job>", NULL);
  g_autofree char *all = g_strconcat (HEAD "<goods><carpet id='t' roll-width='12ft'/></goods><measure>", three,
                                      "<area name='All'/></measure></job>", NULL);
  g_autofree char *none = g_strconcat (HEAD "<goods><carpet id='t' roll-width='12ft'/></goods><measure areas='none'>",
                                       three, "</measure></job>", NULL);
  g_autoptr (RcJob) one = parse_well (by_doors), two = parse_well (all), three_jobs = parse_well (none);
  const RcFloorArea *area;

  g_assert_cmpuint (rc_job_get_measure (one, NULL)->areas->len, ==, 2);
  area = rc_job_get_measure (one, NULL)->areas->pdata[0];
  g_assert_cmpuint (area->rooms->len, ==, 2);
  area = rc_job_get_measure (two, NULL)->areas->pdata[0];
  g_assert_cmpuint (area->rooms->len, ==, 3);
  g_assert_cmpstr (area->id, ==, "all");
  g_assert_cmpuint (rc_job_get_measure (three_jobs, NULL)->areas->len, ==, 0);
  assert_same_after_round_trip (one, NULL);
  assert_same_after_round_trip (two, NULL);
  assert_same_after_round_trip (three_jobs, NULL);
}

/* A turn is relative to the wall before. */
static void
test_relative_bearings (void)
{
  g_autoptr (RcJob) job = parse_well (
      HEAD "<goods><carpet id='t' roll-width='12ft'/></goods><measure><room id='r'><wall bearing='E' length='10ft'/>"
           "<wall turn='left' length='8ft'/><wall turn='-90' length='10ft'/><wall turn='left' length='8ft'/>"
           "</room></measure></job>");
  const RcRoom *room = rc_measure_find_room (rc_job_get_measure (job, NULL), "r");
  const double  bearings[] = { 90, 0, 270, 180 };

  for (guint i = 0; i < 4; i++)
    g_assert_cmpfloat (g_array_index (room->walls, RcWall, i).bearing_degrees, ==, bearings[i]);
}

/* A bare number counts in the job's unit. */
static void
test_bare_numbers (void)
{
  g_autoptr (RcJob) metric = parse_well ("<job xmlns='urn:rowcut:job:1' units='metric'><goods><carpet id='t' "
                                         "roll-width='4000'/></goods><measure/></job>");
  g_autoptr (RcJob) imperial = parse_well (HEAD "<goods><carpet id='t' roll-width='144'/></goods><measure/></job>");

  g_assert_cmpint (((RcGoods *)metric->goods->pdata[0])->roll_width, ==, 4 * RC_TICKS_PER_M);
  g_assert_cmpint (((RcGoods *)imperial->goods->pdata[0])->roll_width, ==, 12 * RC_TICKS_PER_FOOT);
}

/* --- files with a fault --- */

typedef struct
{
  const char *what;
  const char *xml;
  const char *names[3]; /* words of the message */
} Fault;

#define GOODS   "<goods><carpet id='t' roll-width='12ft'/></goods>"
#define OUTLINE "<outline><point x='0' y='0'/><point x='9ft' y='0'/><point x='9ft' y='9ft'/></outline>"

static const Fault faults[] = {
  { "an element of another name",
    HEAD "\n" GOODS "\n<measure>\n<room id='r'><wal bearing='E'/></room></measure></job>",
    { "JOB.xml:4", "<wal>", "wall, outline" } },
  { "an attribute of another name",
    HEAD "\n<goods><carpet id='t' rollwidth='12ft'/></goods><measure/></job>",
    { "JOB.xml:2", "<carpet>", "“rollwidth”" } },
  { "an attribute that lacks",
    HEAD GOODS "<measure>\n<room id='r'><wall bearing='E'/></room></measure></job>",
    { "JOB.xml:2", "<wall>", "“length”" } },
  { "a word that is none of those allowed",
    HEAD "<goods><carpet id='t' roll-width='12ft' match='sett'/></goods><measure/></job>",
    { "match: “sett”", "set, half-drop, quarter-drop", "<carpet>" } },
  { "text where none belongs", HEAD GOODS "<measure>hello</measure></job>", { "<measure>", "text", "JOB.xml:1" } },
  { "an element too many", HEAD GOODS GOODS "<measure/></job>", { "JOB.xml:1", "<goods>", "twice" } },
  { "no measure", HEAD GOODS "</job>", { "JOB.xml:1", "<job>", "<measure>" } },
  { "another root", "<house/>", { "JOB.xml:1", "<house>", "urn:rowcut:job:1" } },
  { "another namespace", "<job xmlns='urn:other'/>", { "JOB.xml:1", "<job>", "urn:rowcut:job:1" } },
  { "a foreign element",
    HEAD GOODS "<measure><x:room xmlns:x='urn:other'/></measure></job>",
    { "<room>", "namespace", "" } },
  { "no XML", "a job", { "JOB.xml:1", "no XML", "" } },
  { "XML cut short", HEAD GOODS "<measure>", { "JOB.xml:1", "no XML", "" } },
  { "nothing", "", { "JOB.xml", "empty", "" } },
  { "a document type",
    "<!DOCTYPE job [<!ENTITY a 'b'>]>" HEAD GOODS "<measure/></job>",
    { "JOB.xml:1", "DOCTYPE", "" } },
  { "a length that is none",
    HEAD GOODS "<measure>\n<room id='r'><wall bearing='E' length='12 fot'/></room></measure></job>",
    { "JOB.xml:2", "<wall> length", "12 fot" } },
  { "a bearing that is none",
    HEAD GOODS "<measure><room id='r'><wall bearing='up' length='1'/></room></measure></job>",
    { "<wall> bearing", "“up”", "degrees" } },
  { "a first wall that turns",
    HEAD GOODS "<measure><room id='r'><wall turn='left' length='1'/></room></measure></job>",
    { "<wall>", "first", "bearing" } },
  { "walls and an outline",
    HEAD GOODS "<measure><room id='r'><wall bearing='E' length='1'/>" OUTLINE "</room></measure></job>",
    { "<room>", "walls and an outline", "" } },
  { "neither walls nor outline", HEAD GOODS "<measure><room id='r'/></measure></job>", { "<room>", "neither", "" } },
  { "a room without a name",
    HEAD GOODS "<measure><room>" OUTLINE "</room></measure></job>",
    { "<room>", "neither id nor name", "" } },
  { "a carpet without a width",
    HEAD "<goods><carpet id='t'/></goods><measure/></job>",
    { "<carpet>", "“t”", "roll-width" } },
  { "goods without a name", HEAD "<goods><tape/></goods><measure/></job>", { "<tape>", "id or a name", "" } },
  { "money with too many digits",
    HEAD "<settings><rule name='piece-too-short' cost='1.234'/></settings><measure/></job>",
    { "<rule> cost", "1.234", "" } },
  { "a supplier's language that there is not",
    "<job xmlns='urn:rowcut:job:1'><measure/><prices><supplier name='Mill' language='xx'/></prices></job>",
    { "<supplier> language", "xx", "en, es, fr" } },
  { "a customer's language that there is not",
    "<job xmlns='urn:rowcut:job:1'><customer name='A' language='xx'/><measure/></job>",
    { "<customer> language", "xx", "en, es, fr" } },
  { "an unknown currency",
    "<job xmlns='urn:rowcut:job:1' currency='XXQ'><measure/></job>",
    { "<job> currency", "XXQ", "" } },
  { "an unknown unit",
    HEAD "<goods><tape id='t' unit='furlong'/></goods><measure/></job>",
    { "<tape> unit", "furlong", "" } },
  { "a stair that turns by a ramp",
    HEAD GOODS
    "<measure><stair id='s' steps='9' rise='7' going='9' width='36'><turn kind='ramp' going='36' width='36'/>"
    "</stair></measure></job>",
    { "<turn> kind", "“ramp”", "landing, winders" } },
  { "a turn without its going",
    HEAD GOODS
    "<measure><stair id='s' steps='9' rise='7 in' going='9 in' width='36 in'><turn kind='landing' width='36'/>"
    "</stair></measure></job>",
    { "<turn>", "going", "" } },
  { "half of a place",
    HEAD GOODS "<measure><room id='r' at-x='0'>" OUTLINE "</room></measure></job>",
    { "<room>", "at-x and at-y", "" } },
};

static void
test_fault (gconstpointer data)
{
  const Fault *fault = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) job = parse (fault->xml, &error);

  g_assert_null (job);
  g_assert_nonnull (error);
  g_assert_true (error->domain == RC_ERROR);
  g_test_message ("%s", error->message);
  for (guint i = 0; i < G_N_ELEMENTS (fault->names); i++)
    if (strstr (error->message, fault->names[i]) == NULL)
      g_error ("“%s” does not name “%s”", error->message, fault->names[i]);
}

/* A stair told of its only turn by itself before it could have more; what it said beside "straight" counted for
 * nothing.
 */
static void
test_turns_of_before (void)
{
  static const RcStairTurn WINDERS = { RC_TURN_WINDERS, RC_BEND_RIGHT, 6, 3, 28 * IN, 42 * IN };
  g_autoptr (RcJob) job = parse_well (
      HEAD GOODS "<measure><stair id='a' steps='9' rise='7 in' going='9 in' width='36 in' turn='winders' bend='right'"
                 " turn-after='6' winders='3' turn-going='28 in' turn-width='42 in'/>"
                 "<stair id='b' steps='9' rise='7 in' going='9 in' width='36 in' turn='straight' turn-after='6'/>"
                 "<stair id='c' steps='9' rise='7 in' going='9 in' width='36 in'><turn kind='landing' going='36 in'"
                 " width='40 in'/><turn kind='winders' bend='right' after='6' winders='3' going='28 in' width='42 in'/>"
                 "</stair></measure></job>");
  const RcMeasure *measure = rc_job_get_measure (job, NULL);
  const GArray    *old = rc_measure_find_stair (measure, "a")->turns;
  const GArray    *both = rc_measure_find_stair (measure, "c")->turns;
  g_assert_cmpmem (old->data, old->len * sizeof WINDERS, &WINDERS, sizeof WINDERS);
  g_assert_cmpuint (rc_measure_find_stair (measure, "b")->turns->len, ==, 0);
  g_assert_cmpuint (both->len, ==, 2);
  g_assert_cmpmem (&g_array_index (both, RcStairTurn, 1), sizeof WINDERS, &WINDERS, sizeof WINDERS);
  g_assert_cmpint (g_array_index (both, RcStairTurn, 0).width, ==, 40 * IN);
}

static void
test_too_deep (void)
{
  g_autoptr (GString) xml = g_string_new (NULL);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < 10000; i++)
    g_string_append (xml, "<a>");
  g_assert_null (parse (xml->str, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_FORMAT);
  g_assert_nonnull (strstr (error->message, "deeper than 32"));
}

static void
test_too_large (void)
{
  g_autofree char *xml = g_malloc (RC_JOB_FILE_MAX_BYTES + 2);
  g_autoptr (GError) error = NULL;

  memset (xml, ' ', RC_JOB_FILE_MAX_BYTES + 1);
  xml[RC_JOB_FILE_MAX_BYTES + 1] = '\0';
  g_assert_null (parse (xml, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_FORMAT);
  g_assert_nonnull (strstr (error->message, "16 MiB"));
}

/* A file that cannot be read leaves what was there. */
static void
test_write_and_read (void)
{
  g_autofree char *folder = g_dir_make_tmp ("rowcut-XXXXXX", NULL), *path = g_build_filename (folder, "job.xml", NULL);
  g_autoptr (RcJob) job = rc_shipped_load_demo_job (NULL);
  g_autoptr (RcJob) back = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *before = rc_job_file_format (job, NULL), *after = NULL;

  g_assert_true (rc_job_file_write (job, NULL, path, &error));
  g_assert_no_error (error);
  back = rc_job_file_read (path, NULL, &error);
  g_assert_no_error (error);
  after = rc_job_file_format (back, NULL);
  g_assert_cmpstr (before, ==, after);
  g_assert_false (rc_job_file_write (job, NULL, "/nowhere/at/all.xml", &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  g_assert_null (rc_job_file_read ("/nowhere/at/all.xml", NULL, &error));
  g_assert_nonnull (error);
  g_unlink (path);
  g_rmdir (folder);
}

/* A seam held by its place in the house becomes a pin in the first room that it crosses, in the room's coordinates: of
 * the two rooms one stands 20 ft further east, and the seam is 9 ft from its west wall. It is written as the pin. */
#define WALLS(length)                                                                                                  \
  "<wall bearing='N' length='12 ft'/><wall bearing='E' length='" length                                                \
  "'/><wall bearing='S' length='12 ft'/><wall bearing='W' length='" length "'/>"
#define SEAM_LINE(attributes)                                                                                          \
  HEAD "<goods><carpet id='c' roll-width='12 ft'/><carpet id='d' roll-width='12 ft'/><carpet id='e' roll-width='15 "   \
       "ft'/></goods><measure id='M1'><room id='a' at-x='0' at-y='0'>" WALLS (                                         \
           "10 ft") "</room><room id='b' at-x='20 ft' at-y='0'>" WALLS ("15 ft") "</room><area id='x' rooms='a b' "    \
                                                                                 "carpet='c' " attributes              \
                                                                                 "/></measure></job>"

static void
test_seam_line (void)
{
  g_autoptr (RcJob) upright = parse_well (SEAM_LINE ("pile-degrees='270' seam-line='29ft'"));
  g_autoptr (RcJob) level = parse_well (SEAM_LINE ("pile-degrees='0' seam-line='5ft'"));
  g_autoptr (GError) error = NULL;
  const RcFloorArea *area = rc_job_get_measure (upright, NULL)->areas->pdata[0];
  const RcPin       *pin = area->pins->pdata[0];
  g_autofree char   *written = NULL;

  g_assert_cmpuint (area->pins->len, ==, 1);
  g_assert_cmpint (pin->kind, ==, RC_PIN_SEAM);
  g_assert_cmpstr (pin->room, ==, "b");
  g_assert_cmpint (rc_ring_get (pin->points, 0)->x, ==, 9 * RC_TICKS_PER_FOOT);
  g_assert_cmpint (rc_ring_get (pin->points, 0)->y, ==, 0);
  g_assert_cmpint (rc_ring_get (pin->points, 1)->x, ==, 9 * RC_TICKS_PER_FOOT);
  g_assert_cmpint (rc_ring_get (pin->points, 1)->y, ==, 12 * RC_TICKS_PER_FOOT);
  written = rc_job_file_format (upright, NULL);
  g_assert_null (strstr (written, "seam-line"));
  g_assert_nonnull (strstr (written, "<pin kind=\"seam\" room=\"b\""));

  area = rc_job_get_measure (level, NULL)->areas->pdata[0];
  pin = area->pins->pdata[0];
  g_assert_cmpstr (pin->room, ==, "a");
  g_assert_cmpint (rc_ring_get (pin->points, 1)->x, ==, 10 * RC_TICKS_PER_FOOT);
  g_assert_cmpint (rc_ring_get (pin->points, 1)->y, ==, 5 * RC_TICKS_PER_FOOT);

  g_assert_null (parse (SEAM_LINE ("pile-degrees='270' seam-line='15ft'"), &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_GEOMETRY);
  g_assert_nonnull (strstr (error->message, "seam-line"));
  g_assert_nonnull (strstr (error->message, "no room of area “x”"));
}

/* A pinned seam holds in an alternative with another carpet of that width, and not in one of another width. */
static void
test_seam_in_alternatives (void)
{
  g_autoptr (RcJob) job = parse_well (SEAM_LINE ("pile-degrees='270' seam-line='29ft'"));

  for (guint i = 0; i < 2; i++)
    {
      RcAlternative *alternative = rc_alternative_new ("A", "Other carpet");
      g_autoptr (GError) error = NULL;

      g_ptr_array_add (alternative->swaps, rc_swap_new ("x", i == 0 ? "d" : "e", NULL));
      g_autoptr (RcJob) other = rc_job_new_alternative (job, NULL, alternative, &error);
      g_assert_no_error (error);
      const RcFloorArea *area = rc_job_get_measure (other, NULL)->areas->pdata[0];
      g_assert_cmpuint (area->pins->len, ==, i == 0 ? 1 : 0);
      rc_alternative_free (alternative);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/demo/is sound", test_demo_is_sound);
  g_test_add_func ("/exchange/demo/areas are joined", test_demo_areas_are_joined);
  g_test_add_func ("/exchange/demo/measures differ in one room", test_demo_measures_differ_in_one_room);
  g_test_add_func ("/exchange/demo/round trip", test_demo_round_trip);
  g_test_add_func ("/exchange/job-file/least file", test_least_file);
  g_test_add_func ("/exchange/job-file/areas follow doors", test_areas_follow_doors);
  g_test_add_func ("/exchange/job-file/relative bearings", test_relative_bearings);
  g_test_add_func ("/exchange/job-file/bare numbers", test_bare_numbers);
  g_test_add_func ("/exchange/job-file/seam line", test_seam_line);
  g_test_add_func ("/exchange/job-file/seam in alternatives", test_seam_in_alternatives);
  g_test_add_func ("/exchange/job-file/turns of before", test_turns_of_before);
  g_test_add_func ("/exchange/job-file/too deep", test_too_deep);
  g_test_add_func ("/exchange/job-file/too large", test_too_large);
  g_test_add_func ("/exchange/job-file/write and read", test_write_and_read);
  for (guint i = 0; i < G_N_ELEMENTS (faults); i++)
    {
      g_autofree char *path = g_strdup_printf ("/exchange/job-file/refuses/%s", faults[i].what);

      g_test_add_data_func (path, &faults[i], test_fault);
    }
  return g_test_run ();
}
