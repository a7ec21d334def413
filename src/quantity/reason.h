/* The words of a quantity line's reason: names, piece numbers, lengths and areas as the job prints them. Shared by
 * quantities and orders.
 */
#pragma once

#include "plan.h"

/* All (transfer full). */
char *rc_reason_format_length (const RcPlan *plan, RcLength length);
char *rc_reason_format_area (const RcPlan *plan, RcArea area);

/* A length of roll in the measure that the goods are sold in (metres where they are priced by m or m2, else feet and
 * inches), which a supplier cuts by. */
char *rc_reason_format_sold_length (const RcGoods *goods, RcLength length);

/* The same for the job's people: as the job prints it, followed by the goods' measure where that is the other one:
 * 15' 5 1/16" (4.700 m). */
char *rc_reason_format_roll_length (const RcPlan *plan, const RcGoods *goods, RcLength length);

/* "pieces 1, 3–5": numbers in any order, repeated or not. "" for none. */
char *rc_reason_format_pieces (const GArray *numbers);

/* A room's or a stair's name by its id; the id itself where it names nothing; "" for NULL. (transfer none) */
const char *rc_reason_get_place (const RcPlan *plan, const char *id);

/* "Living room, Hall": the rooms of an area. */
char *rc_reason_format_rooms (const RcPlan *plan, const RcFloorArea *area);

/* Names put in a list once each, in the order of first appearance. */
void  rc_reason_add_name (GPtrArray *names, const char *name);
char *rc_reason_format_names (const GPtrArray *names);

/* Adds a part, parted from the last by "; ". `part` is taken. */
void rc_reason_add_part (GString *reason, char *part);
