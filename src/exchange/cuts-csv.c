#include "cuts-csv.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

enum
{
  MOST_CUTS = 100000 /* over all rows, quantities counted */
};

typedef enum
{
  COLUMN_LABEL,
  COLUMN_WIDTH,
  COLUMN_LENGTH,
  COLUMN_QUANTITY,
  COLUMN_REPEAT,
  COLUMN_PHASE,
  COLUMN_LOT,
  N_COLUMNS
} Column;

static const char *const COLUMN_NAMES[N_COLUMNS] = { "label", "width", "length", "quantity", "repeat", "phase", "lot" };

typedef struct
{
  const char    *name; /* of the file */
  const char    *next; /* what is still to be read */
  guint          line; /* of the row last read, from 1 */
  guint          next_line;
  RcLengthUnit   bare_unit;
  int            field_of[N_COLUMNS]; /* -1: not there */
  RcNestProblem *problem;
  guint          n_cuts;
} Reader;

G_GNUC_PRINTF (4, 5)
static gboolean
fail (const Reader *reader, const char *column, GError **error, const char *format, ...)
{
  va_list          arguments;
  g_autofree char *text = NULL;

  va_start (arguments, format);
  text = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  if (column != NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s, line %u, column %s: %s"), reader->name, reader->line, column,
                 text);
  else
    g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s, line %u: %s"), reader->name, reader->line, text);
  return FALSE;
}

/* A field that starts with a quotation mark runs to the next single one (RFC 4180); elsewhere the mark is an inch. */
static gboolean
read_field (Reader *reader, GString *field, GError **error)
{
  const char *p = reader->next;

  g_string_truncate (field, 0);
  if (*p != '"')
    {
      gsize length = strcspn (p, ",\r\n");

      g_string_append_len (field, p, (gssize)length);
      reader->next = p + length;
      return TRUE;
    }
  for (p++; *p != '"' || p[1] == '"'; p++)
    {
      if (*p == '\0')
        return fail (reader, NULL, error, _ ("a quotation mark is opened but not closed"));
      if (*p == '"')
        p++;
      if (*p == '\n')
        reader->next_line++;
      g_string_append_c (field, *p);
    }
  reader->next = p + 1;
  if (*reader->next != '\0' && strchr (",\r\n", *reader->next) == NULL)
    return fail (reader, NULL, error, _ ("after a closing quotation mark a comma or the end of the line must follow"));
  return TRUE;
}

/* The next row that is not empty; *fields NULL at the end of the text. */
static gboolean
read_row (Reader *reader, GPtrArray **fields, GError **error)
{
  g_autoptr (GPtrArray) row = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GString) field = g_string_new (NULL);

  *fields = NULL;
  for (;;)
    {
      while (*reader->next == '\n' || *reader->next == '\r')
        if (*reader->next++ == '\n')
          reader->next_line++;
      reader->line = reader->next_line;
      if (*reader->next == '\0')
        return TRUE;
      for (;;)
        {
          if (!read_field (reader, field, error))
            return FALSE;
          if (!g_utf8_validate (field->str, (gssize)field->len, NULL))
            return fail (reader, NULL, error, _ ("the text is not UTF-8"));
          g_ptr_array_add (row, g_strstrip (g_strdup (field->str)));
          if (*reader->next != ',')
            break;
          reader->next++;
        }
      if (row->len > 1 || *(char *)row->pdata[0] != '\0')
        break;
      g_ptr_array_set_size (row, 0);
    }
  *fields = g_steal_pointer (&row);
  return TRUE;
}

static gboolean
read_header (Reader *reader, GError **error)
{
  g_autoptr (GPtrArray) fields = NULL;

  for (int c = 0; c < N_COLUMNS; c++)
    reader->field_of[c] = -1;
  if (!read_row (reader, &fields, error))
    return FALSE;
  for (guint f = 0; fields != NULL && f < fields->len; f++)
    {
      const char *title = fields->pdata[f];
      int         c = 0;

      while (c < N_COLUMNS && g_ascii_strcasecmp (title, COLUMN_NAMES[c]) != 0)
        c++;
      if (c == N_COLUMNS)
        return fail (reader, NULL, error,
                     _ ("“%s” is no column of a list of cuts; there may be label, width, length, quantity, repeat, "
                        "phase and lot"),
                     title);
      if (reader->field_of[c] >= 0)
        return fail (reader, title, error, _ ("the column is there twice"));
      reader->field_of[c] = (int)f;
    }
  for (int c = COLUMN_LABEL; c <= COLUMN_QUANTITY; c++)
    if (reader->field_of[c] < 0)
      return fail (reader, NULL, error,
                   _ ("the first line must name the columns label,width,length,quantity; %s is missing"),
                   COLUMN_NAMES[c]);
  return TRUE;
}

static const char *
get_field (const Reader *reader, const GPtrArray *fields, Column column)
{
  int f = reader->field_of[column];

  return f >= 0 && f < (int)fields->len ? fields->pdata[f] : "";
}

/* An empty field leaves *length at 0 where that is allowed. */
static gboolean
read_length (const Reader *reader, const GPtrArray *fields, Column column, gboolean may_be_empty, RcLength *length,
             GError **error)
{
  const char *text = get_field (reader, fields, column);
  g_autoptr (GError) why = NULL;

  if (*text == '\0' && may_be_empty)
    return TRUE;
  if (!rc_length_parse (text, reader->bare_unit, length, &why))
    return fail (reader, COLUMN_NAMES[column], error, "%s", why->message);
  if (*length <= 0 && !may_be_empty)
    return fail (reader, COLUMN_NAMES[column], error, _ ("must be more than zero"));
  return TRUE;
}

static gboolean
read_cut (Reader *reader, const GPtrArray *fields, GError **error)
{
  const char *label = get_field (reader, fields, COLUMN_LABEL), *lot = get_field (reader, fields, COLUMN_LOT);
  const char *quantity_text = get_field (reader, fields, COLUMN_QUANTITY);
  RcLength    width = 0, length = 0, repeat = 0, phase = 0;
  guint64     quantity = 0;
  RcNestCut  *cut;

  if (*label == '\0')
    return fail (reader, COLUMN_NAMES[COLUMN_LABEL], error, _ ("the cut has no label"));
  if (!read_length (reader, fields, COLUMN_WIDTH, FALSE, &width, error)
      || !read_length (reader, fields, COLUMN_LENGTH, FALSE, &length, error)
      || !read_length (reader, fields, COLUMN_REPEAT, TRUE, &repeat, error)
      || !read_length (reader, fields, COLUMN_PHASE, TRUE, &phase, error))
    return FALSE;
  if (repeat == 0 && phase != 0)
    return fail (reader, COLUMN_NAMES[COLUMN_PHASE], error, _ ("a phase needs a repeat beside it"));
  if (!g_ascii_string_to_unsigned (quantity_text, 10, 1, MOST_CUTS, &quantity, NULL))
    return fail (reader, COLUMN_NAMES[COLUMN_QUANTITY], error, _ ("“%s” is not a whole number from 1 to %d"),
                 quantity_text, MOST_CUTS);
  if ((reader->n_cuts += (guint)quantity) > MOST_CUTS)
    return fail (reader, COLUMN_NAMES[COLUMN_QUANTITY], error, _ ("more than %d cuts in all"), MOST_CUTS);
  cut = rc_nest_cut_new (label, width, length, (guint)quantity);
  cut->repeat = repeat;
  cut->phase = phase;
  cut->group = *lot != '\0' ? g_strdup (lot) : NULL;
  g_ptr_array_add (reader->problem->cuts, cut);
  return TRUE;
}

gboolean
rc_cuts_csv_parse (const char *csv, const char *name, RcLengthUnit bare_unit, RcNestProblem *problem, GError **error)
{
  Reader reader = { name, csv, 1, 1, bare_unit, { 0 }, problem, 0 };
  guint  n_before = problem->cuts->len;

  if (g_str_has_prefix (csv, "\xef\xbb\xbf"))
    reader.next += 3;
  if (!read_header (&reader, error))
    return FALSE;
  for (;;)
    {
      g_autoptr (GPtrArray) fields = NULL;

      if (!read_row (&reader, &fields, error))
        return FALSE;
      if (fields == NULL)
        break;
      if (fields->len > N_COLUMNS)
        return fail (&reader, NULL, error, _ ("%u fields, more than there are columns"), fields->len);
      if (!read_cut (&reader, fields, error))
        return FALSE;
    }
  if (problem->cuts->len == n_before)
    return fail (&reader, NULL, error, _ ("no cut follows the line that names the columns"));
  return TRUE;
}
