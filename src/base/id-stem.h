/* What ids are made of. */
#pragma once

/* Letters and digits of the name, small, parted by hyphens: "Harbour Twist, slate" is harbour-twist-slate; "" when it
 * has no Latin ones. (transfer full) */
char *rc_id_stem_new (const char *name);
