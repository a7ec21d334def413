#include "ticket.h"

#include <glib/gi18n-lib.h>

#define CUT_PREFIX   "cut/"
#define ORDER_PREFIX "order/"

/* Signs that would part the ticket are written as in an URI. */
static char *
escape (const char *part)
{
  return g_uri_escape_string (part != NULL ? part : "", " ", TRUE);
}

char *
rc_ticket_new_cut (guint index, const char *piece, const char *roll)
{
  g_autofree char *safe_piece = escape (piece), *safe_roll = escape (roll);

  return g_strdup_printf (CUT_PREFIX "%u/%s/%s", index + 1, safe_piece, safe_roll);
}

char *
rc_ticket_new_on_order (guint index, const char *order)
{
  g_autofree char *safe = escape (order);

  return g_strdup_printf (ORDER_PREFIX "%s/%u", safe, index + 1);
}

gboolean
rc_ticket_is_cut (const char *ticket)
{
  return ticket != NULL && g_str_has_prefix (ticket, CUT_PREFIX);
}

gboolean
rc_ticket_is_on_order (const char *ticket)
{
  return ticket != NULL && g_str_has_prefix (ticket, ORDER_PREFIX);
}

/* NULL: not said, or not as it was written here. (transfer full) */
static char *
dup_part (char **parts, guint index)
{
  if (index >= g_strv_length (parts) || *parts[index] == '\0')
    return NULL;
  return g_uri_unescape_string (parts[index], NULL);
}

static char *
format_cut (char **parts)
{
  g_autofree char *piece = dup_part (parts, 2), *roll = dup_part (parts, 3);

  if (piece != NULL && roll != NULL)
    return g_strdup_printf (_ ("piece %s, cut from roll %s"), piece, roll);
  if (roll != NULL)
    return g_strdup_printf (_ ("a piece cut from roll %s"), roll);
  return piece != NULL ? g_strdup_printf (_ ("piece %s, cut already"), piece) : g_strdup (_ ("a piece cut already"));
}

char *
rc_ticket_format_bare (const char *ticket)
{
  g_auto (GStrv) parts = g_strsplit (ticket, "/", -1);

  if (rc_ticket_is_cut (ticket))
    return format_cut (parts);
  if (rc_ticket_is_on_order (ticket))
    {
      g_autofree char *order = dup_part (parts, 1);

      return g_strdup_printf (_ ("order %s"), order != NULL ? order : "–");
    }
  return g_strdup (ticket);
}

char *
rc_ticket_format (const char *ticket)
{
  return rc_ticket_is_cut (ticket) || rc_ticket_is_on_order (ticket) ? rc_ticket_format_bare (ticket)
                                                                     : g_strdup_printf (_ ("roll %s"), ticket);
}
