#include "csv.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

gboolean
rc_csv_reader_init (RcCsvReader *reader, const char *csv, const char *name, GError **error)
{
  static const char byte_order_mark[] = "\xEF\xBB\xBF";

  if (strnlen (csv, RC_CSV_MAX_BYTES + 1) > RC_CSV_MAX_BYTES)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s: a table has at most %d MiB"), name,
                   RC_CSV_MAX_BYTES >> 20);
      return FALSE;
    }
  if (!g_utf8_validate (csv, -1, NULL))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s: the text is not UTF-8; save the table in that encoding"),
                   name);
      return FALSE;
    }
  reader->name = name;
  reader->next = g_str_has_prefix (csv, byte_order_mark) ? csv + strlen (byte_order_mark) : csv;
  reader->next_line = 1;
  reader->line = 1;
  return TRUE;
}

static gboolean
is_field_end (char c)
{
  return c == '\0' || c == ',' || c == '\n' || c == '\r';
}

static gboolean
read_quoted (RcCsvReader *reader, GString *field, GError **error)
{
  guint begun = reader->next_line;

  for (reader->next++; *reader->next != '"' || reader->next[1] == '"'; reader->next++)
    {
      if (*reader->next == '\0')
        {
          g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s, line %u: a quotation mark is never closed"),
                       reader->name, begun);
          return FALSE;
        }
      if (*reader->next == '"')
        reader->next++;
      if (*reader->next == '\n')
        reader->next_line++;
      g_string_append_c (field, *reader->next);
    }
  reader->next++;
  if (is_field_end (*reader->next))
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_FORMAT,
               _ ("%s, line %u: after a closing quotation mark a comma or the line's end should follow; double a mark "
                  "that belongs to the text"),
               reader->name, reader->next_line);
  return FALSE;
}

static gboolean
read_field (RcCsvReader *reader, GString *field, GError **error)
{
  if (*reader->next == '"')
    return read_quoted (reader, field, error);
  while (!is_field_end (*reader->next))
    g_string_append_c (field, *reader->next++);
  return TRUE;
}

static void
skip_line_end (RcCsvReader *reader)
{
  if (*reader->next == '\0')
    return;
  if (reader->next[0] == '\r' && reader->next[1] == '\n')
    reader->next++;
  reader->next++;
  reader->next_line++;
}

static GPtrArray *
read_row (RcCsvReader *reader, GError **error)
{
  g_autoptr (GPtrArray) row = g_ptr_array_new_with_free_func (g_free);

  reader->line = reader->next_line;
  for (;;)
    {
      g_autoptr (GString) field = g_string_new (NULL);

      if (!read_field (reader, field, error))
        return NULL;
      g_ptr_array_add (row, g_strdup (field->str));
      if (*reader->next != ',')
        break;
      reader->next++;
    }
  skip_line_end (reader);
  return g_steal_pointer (&row);
}

GPtrArray *
rc_csv_reader_next (RcCsvReader *reader, GError **error)
{
  while (*reader->next == '\n' || *reader->next == '\r')
    skip_line_end (reader);
  return *reader->next == '\0' ? NULL : read_row (reader, error);
}

void
rc_csv_append (GString *csv, const char *field, gboolean is_first)
{
  if (!is_first)
    g_string_append_c (csv, ',');
  if (field == NULL)
    return;
  if (strpbrk (field, ",\"\r\n") == NULL)
    {
      g_string_append (csv, field);
      return;
    }
  g_string_append_c (csv, '"');
  for (const char *p = field; *p != '\0'; p++)
    {
      if (*p == '"')
        g_string_append_c (csv, '"');
      g_string_append_c (csv, *p);
    }
  g_string_append_c (csv, '"');
}

/* A character that begins a formula, behind any number of apostrophes. */
static gboolean
looks_like_formula (const char *text)
{
  text += strspn (text, "'");
  return *text != '\0' && strchr ("=+-@\t\r", *text) != NULL;
}

char *
rc_csv_neutralize (const char *text)
{
  if (text == NULL)
    return NULL;
  return looks_like_formula (text) ? g_strconcat ("'", text, NULL) : g_strdup (text);
}

char *
rc_csv_restore (const char *field)
{
  return g_strdup (*field == '\'' && looks_like_formula (field) ? field + 1 : field);
}
