#include "json-out.h"

#include <errno.h>
#include <stdio.h>

#define MAX_DEPTH 16

/* An object or array that is open; the first stands for the whole text. */
typedef struct
{
  char     closer;
  gboolean filled; /* it has a member */
  gboolean nested; /* a member is an object or array */
  gsize    start;  /* of its first member in the text */
} Level;

struct _RcJson
{
  GString *text;
  guint    depth;
  Level    levels[MAX_DEPTH + 1];
};

RcJson *
rc_json_new (void)
{
  RcJson *json = g_new0 (RcJson, 1);

  json->text = g_string_new (NULL);
  return json;
}

void
rc_json_free (RcJson *json)
{
  if (json == NULL)
    return;
  g_string_free (json->text, TRUE);
  g_free (json);
}

static void
append_line_break (RcJson *json)
{
  g_string_append_c (json->text, '\n');
  for (guint i = 0; i < json->depth; i++)
    g_string_append (json->text, "  ");
}

/* Puts the members from `start` on one line; a line break in the text is never part of a string. */
static void
join_lines (GString *text, gsize start)
{
  gsize to = start;

  for (gsize from = start; from < text->len;)
    {
      gboolean is_break = text->str[from] == '\n';

      if (!is_break)
        {
          text->str[to++] = text->str[from++];
          continue;
        }
      while (from < text->len && (text->str[from] == '\n' || text->str[from] == ' '))
        from++;
      if (to > start)
        text->str[to++] = ' ';
    }
  g_string_truncate (text, to);
}

static void
append_quoted (GString *text, const char *value)
{
  g_autofree char *valid = g_utf8_make_valid (value, -1);

  g_string_append_c (text, '"');
  for (const char *c = valid; *c != '\0'; c++)
    {
      if (*c == '"' || *c == '\\')
        g_string_append_printf (text, "\\%c", *c);
      else if (*c == '\n')
        g_string_append (text, "\\n");
      else if (*c == '\t')
        g_string_append (text, "\\t");
      else if ((guchar)*c < 0x20 || *c == 0x7f)
        g_string_append_printf (text, "\\u%04x", (guint)(guchar)*c);
      else
        g_string_append_c (text, *c);
    }
  g_string_append_c (text, '"');
}

/* What stands before a value: comma, line break, name. */
static void
begin_value (RcJson *json, const char *name)
{
  Level *level = &json->levels[json->depth];

  if (json->depth == 0)
    g_return_if_fail (!level->filled && name == NULL);
  else
    g_return_if_fail ((name != NULL) == (level->closer == '}'));
  if (level->filled)
    g_string_append_c (json->text, ',');
  level->filled = TRUE;
  if (json->depth > 0)
    append_line_break (json);
  if (name != NULL)
    {
      append_quoted (json->text, name);
      g_string_append (json->text, ": ");
    }
}

static void
begin_nested (RcJson *json, const char *name, char opener, char closer)
{
  g_return_if_fail (json->depth < MAX_DEPTH);
  begin_value (json, name);
  g_string_append_c (json->text, opener);
  json->levels[json->depth].nested = TRUE;
  json->levels[++json->depth] = (Level){ .closer = closer, .start = json->text->len };
}

/* What holds no object or array stands on one line, but for the whole answer. */
static void
end_nested (RcJson *json, char closer)
{
  const Level *level = &json->levels[json->depth];

  g_return_if_fail (json->depth > 0 && level->closer == closer);
  json->depth--;
  if (level->filled && (level->nested || json->depth == 0))
    append_line_break (json);
  else
    join_lines (json->text, level->start);
  g_string_append_c (json->text, closer);
}

void
rc_json_begin_object (RcJson *json, const char *name)
{
  begin_nested (json, name, '{', '}');
}

void
rc_json_end_object (RcJson *json)
{
  end_nested (json, '}');
}

void
rc_json_begin_array (RcJson *json, const char *name)
{
  begin_nested (json, name, '[', ']');
}

void
rc_json_end_array (RcJson *json)
{
  end_nested (json, ']');
}

void
rc_json_add_string (RcJson *json, const char *name, const char *value)
{
  begin_value (json, name);
  if (value == NULL)
    g_string_append (json->text, "null");
  else
    append_quoted (json->text, value);
}

void
rc_json_add_int (RcJson *json, const char *name, gint64 value)
{
  begin_value (json, name);
  g_string_append_printf (json->text, "%" G_GINT64_FORMAT, value);
}

void
rc_json_add_bool (RcJson *json, const char *name, gboolean value)
{
  begin_value (json, name);
  g_string_append (json->text, value ? "true" : "false");
}

static void
append_length (RcJson *json, RcLength length)
{
  g_autofree char *text = rc_length_format_mm (length);

  g_string_append (json->text, text);
}

void
rc_json_add_length (RcJson *json, const char *name, RcLength length)
{
  begin_value (json, name);
  append_length (json, length);
}

void
rc_json_add_area (RcJson *json, const char *name, RcArea area)
{
  g_autofree char *text = rc_area_format (area, RC_AREA_UNIT_M2, 6, FALSE);

  begin_value (json, name);
  g_string_append (json->text, text);
}

void
rc_json_add_point (RcJson *json, const char *name, RcLength x, RcLength y)
{
  begin_value (json, name);
  g_string_append_c (json->text, '[');
  append_length (json, x);
  g_string_append (json->text, ", ");
  append_length (json, y);
  g_string_append_c (json->text, ']');
}

void
rc_json_add_micro (RcJson *json, const char *name, gint64 value_micro)
{
  guint64 size = value_micro < 0 ? -(guint64)value_micro : (guint64)value_micro;
  char    digits[8];
  int     n = 6;

  g_snprintf (digits, sizeof digits, "%06" G_GUINT64_FORMAT, size % 1000000);
  while (n > 0 && digits[n - 1] == '0')
    digits[--n] = '\0';
  begin_value (json, name);
  g_string_append_printf (json->text, "%s%" G_GUINT64_FORMAT "%s%s", value_micro < 0 ? "-" : "", size / 1000000,
                          n > 0 ? "." : "", digits);
}

void
rc_json_add_money (RcJson *json, const char *name, RcMoney money, const RcCurrency *currency)
{
  g_autofree char *text = rc_money_format_plain (money, currency);

  rc_json_add_string (json, name, text);
}

char *
rc_json_dup_text (RcJson *json)
{
  g_return_val_if_fail (json->depth == 0, NULL);
  return g_strconcat (json->text->str, "\n", NULL);
}

gboolean
rc_json_print (RcJson *json)
{
  g_autofree char *text = rc_json_dup_text (json);

  g_assert (text != NULL); /* all that was begun is ended */
  if (fputs (text, stdout) != EOF && fflush (stdout) == 0)
    return TRUE;
  fprintf (stderr, "rowcut-cli: standard output: %s\n", g_strerror (errno));
  return FALSE;
}
