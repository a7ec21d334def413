/* The command line's own parts: JSON, tables, numbered names, options. What the commands do is tested end to end. */
#include "command.h"
#include "document-options.h"
#include "json-out.h"
#include "text-table.h"

#include <gio/gio.h>
#include <locale.h>
#include <string.h>

static char *
write_string (const char *value)
{
  g_autoptr (RcJson) json = rc_json_new ();

  rc_json_add_string (json, NULL, value);
  return rc_json_dup_text (json);
}

/* Escapes of RFC 8259, section 7. */
static void
test_json_strings (void)
{
  static const struct
  {
    const char *value, *json;
  } cases[] = {
    { "", "\"\"\n" },
    { "Bedroom 1", "\"Bedroom 1\"\n" },
    { "12' 6\" \\", "\"12' 6\\\" \\\\\"\n" },
    { "a\nb\tc", "\"a\\nb\\tc\"\n" },
    { "\x01\x1f", "\"\\u0001\\u001f\"\n" },
    { "caf\xc3\xa9 \xe2\x80\x9cx\xe2\x80\x9d", "\"caf\xc3\xa9 \xe2\x80\x9cx\xe2\x80\x9d\"\n" },
    { "bad \xff byte", "\"bad \xef\xbf\xbd byte\"\n" },
    { NULL, "null\n" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = write_string (cases[i].value);

      g_assert_cmpstr (text, ==, cases[i].json);
    }
}

static char *
write_micro (gint64 micro)
{
  g_autoptr (RcJson) json = rc_json_new ();

  rc_json_add_micro (json, NULL, micro);
  return rc_json_dup_text (json);
}

static void
test_json_numbers (void)
{
  static const struct
  {
    gint64      micro;
    const char *json;
  } cases[] = {
    { 0, "0\n" },
    { 1, "0.000001\n" },
    { 2500000, "2.5\n" },
    { 12000000, "12\n" },
    { -1250000, "-1.25\n" },
    { -500000, "-0.5\n" },
    { G_MAXINT64, "9223372036854.775807\n" },
    { G_MININT64, "-9223372036854.775808\n" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = write_micro (cases[i].micro);

      g_assert_cmpstr (text, ==, cases[i].json);
    }
}

static char *
write_room (void)
{
  const RcCurrency dollars = { "USD", 2 };
  g_autoptr (RcJson) json = rc_json_new ();

  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "name", "Hall");
  rc_json_add_length (json, "length", 12 * RC_TICKS_PER_FOOT);
  rc_json_add_area (json, "area", rc_area_from_rectangle (3 * RC_TICKS_PER_M, 4 * RC_TICKS_PER_M));
  rc_json_add_money (json, "total", 123456, &dollars);
  rc_json_add_bool (json, "chosen", TRUE);
  rc_json_begin_array (json, "outline");
  rc_json_add_point (json, NULL, 0, RC_TICKS_PER_MM / 2);
  rc_json_end_array (json);
  rc_json_begin_array (json, "none");
  rc_json_end_array (json);
  rc_json_end_object (json);
  return rc_json_dup_text (json);
}

static void
test_json_object (void)
{
  g_autofree char *text = write_room ();

  /* 12 ft = 3657.6 mm by the exact foot (0.3048 m; NIST SP 811 App. B, from memory). */
  g_assert_cmpstr (text, ==,
                   "{\n  \"name\": \"Hall\",\n  \"length\": 3657.6,\n  \"area\": 12.000000,\n"
                   "  \"total\": \"1234.56\",\n  \"chosen\": true,\n  \"outline\": [[0, 0.5]],\n"
                   "  \"none\": []\n}\n");
}

static void
test_json_in_comma_locale (void)
{
  g_autofree char *plain = write_room ();
  g_autofree char *comma = NULL;

  if (setlocale (LC_ALL, "es_ES.UTF-8") == NULL && setlocale (LC_ALL, "de_DE.UTF-8") == NULL)
    {
      g_test_skip ("no locale with a decimal comma here");
      return;
    }
  comma = write_room ();
  setlocale (LC_ALL, "C");
  g_assert_cmpstr (comma, ==, plain);
}

static void
test_table_columns (void)
{
  g_autoptr (RcTextTable) table = rc_text_table_new ("lrl");
  g_autofree char *text = NULL;

  rc_text_table_add (table, "Item");
  rc_text_table_add (table, "Qty");
  rc_text_table_add (table, "Note");
  rc_text_table_add (table, "caf\xc3\xa9"); /* five bytes, four columns */
  rc_text_table_add_take (table, g_strdup ("12.5"));
  rc_text_table_add (table, NULL);
  text = rc_text_table_dup_text (table, TRUE);
  g_assert_cmpstr (text, ==,
                   "Item   Qty  Note\n"
                   "----------------\n"
                   "caf\xc3\xa9  12.5  \n");
}

static void
test_numbered_paths (void)
{
  static const struct
  {
    const char *path;
    guint       index, count;
    const char *numbered;
  } cases[] = {
    { "order.pdf", 0, 1, "order.pdf" },
    { "order.pdf", 0, 2, "order-1.pdf" },
    { "a.b/order", 1, 2, "a.b/order-2" },
    { "a.b/order.x.xml", 9, 10, "a.b/order.x-10.xml" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = rc_document_dup_numbered_path (cases[i].path, cases[i].index, cases[i].count);

      g_assert_cmpstr (path, ==, cases[i].numbered);
    }
}

static void
test_paper_sizes (void)
{
  RcPaper paper = RC_PAPER_A4;
  g_autoptr (GError) error = NULL;

  g_assert_true (rc_paper_option_parse (NULL, &paper, NULL));
  g_assert_cmpint (paper, ==, RC_PAPER_LETTER);
  g_assert_true (rc_paper_option_parse ("A4", &paper, NULL));
  g_assert_cmpint (paper, ==, RC_PAPER_A4);
  g_assert_false (rc_paper_option_parse ("a5", &paper, &error));
  g_assert_nonnull (strstr (error->message, "a5"));
}

/* Parses `line` (words parted by spaces) as the job command "plan"; the status, -1 when it goes on. */
static int
parse_line (const char *line, RcJobOptions *options, GStrv *arguments)
{
  const RcCommandUsage usage
      = { .name = "plan", .parameters = "JOB.xml", .job_options = options, .n_least = 1, .n_most = 1 };
  g_auto (GStrv) words = g_strsplit (line, " ", -1);
  int status = -1;

  rc_job_options_init (options);
  rc_command_parse (&usage, (int)g_strv_length (words), words, arguments, &status);
  return status;
}

static void
test_options_are_read (void)
{
  g_auto (RcJobOptions) options = { 0 };
  g_auto (GStrv) arguments = NULL;

  g_assert_cmpint (
      parse_line ("plan --json a.xml --date 2028-02-29 --seconds 0.5 --seed 7 --measure M1", &options, &arguments), ==,
      -1);
  g_assert_cmpstr (arguments[0], ==, "a.xml");
  g_assert_true (options.json);
  g_assert_cmpstr (options.date, ==, "2028-02-29");
  g_assert_cmpstr (options.measure, ==, "M1");
  g_assert_cmpint (options.seed, ==, 7);
  g_assert_cmpfloat (options.seconds, ==, 0.5);
}

static void
test_wrong_usage_is_refused (void)
{
  static const char *const lines[] = {
    "plan",
    "plan a.xml b.xml",
    "plan a.xml --no-such-option",
    "plan a.xml --date 2027-02-29",
    "plan a.xml --date 1/2/2027",
    "plan a.xml --date 2027-1-02",
    "plan a.xml --seconds -1",
    "plan a.xml --seconds many",
    "plan a.xml --seed -3",
    "plan a.xml --store",
  };

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_auto (RcJobOptions) options = { 0 };
      g_auto (GStrv) arguments = NULL;

      g_test_message ("%s", lines[i]);
      g_assert_cmpint (parse_line (lines[i], &options, &arguments), ==, RC_EXIT_USAGE);
      g_assert_null (arguments);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/json/strings are escaped", test_json_strings);
  g_test_add_func ("/json/decimals are exact and short", test_json_numbers);
  g_test_add_func ("/json/an object is laid out", test_json_object);
  g_test_add_func ("/json/the same in a locale with a comma", test_json_in_comma_locale);
  g_test_add_func ("/table/columns line up", test_table_columns);
  g_test_add_func ("/document/several files are numbered", test_numbered_paths);
  g_test_add_func ("/document/paper sizes", test_paper_sizes);
  g_test_add_func ("/command/options are read", test_options_are_read);
  g_test_add_func ("/command/wrong usage is refused", test_wrong_usage_is_refused);
  return g_test_run ();
}
