/* The tickets of rolls. A roll in stock has the one that is tied to it; what is cut for a job, or on its way to it,
 * goes among the job's rolls under a ticket made here, which says what it is.
 */
#pragma once

#include <glib.h>

/* All parts but `index`, which tells tickets of one job apart, are nullable: not known. (transfer full) */
char *rc_ticket_new_cut (guint index, const char *piece, const char *roll);
char *rc_ticket_new_on_order (guint index, const char *order);

/* What a ticket is of. */
gboolean rc_ticket_is_cut (const char *ticket);      /* nullable */
gboolean rc_ticket_is_on_order (const char *ticket); /* nullable */

/* For people, in the reader's language: "roll R-12"; "piece 3, cut from roll R-12"; "order O-1". (transfer full) */
char *rc_ticket_format (const char *ticket);
/* The same without the word where the ticket is a roll's own: "R-12". (transfer full) */
char *rc_ticket_format_bare (const char *ticket);
