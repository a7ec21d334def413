/* The parts of JOB.xml, each read and written in one place; private to the folder.
 */
#pragma once

#include "price-book.h"
#include "xml-in.h"
#include "xml-out.h"

/* Ids given to what has none: the name in small letters, a number behind it where it is taken. */
typedef struct
{
  GHashTable *taken;   /* of char*, owned */
  GHashTable *numbers; /* name to the last number behind it */
} RcIdGiver;

void rc_id_giver_init (RcIdGiver *giver);
void rc_id_giver_clear (RcIdGiver *giver);
void rc_id_giver_take (RcIdGiver *giver, const char *id);
/* An id not taken yet, taken now: "living-room" from "Living room", "room-2" from NULL with `kind` "room".
 * (transfer full) */
char *rc_id_giver_give (RcIdGiver *giver, const char *name, const char *kind);

/* <carpet>, <tape>, ... under `parent`, appended to `goods` (of RcGoods). */
void rc_job_file_read_goods (RcXmlIn *in, const xmlNode *parent, GPtrArray *goods);
void rc_job_file_write_goods (RcXmlOut *out, const char *parent, const GPtrArray *goods);

void rc_job_file_read_rolls (RcXmlIn *in, const xmlNode *parent, RcJob *job);
void rc_job_file_write_rolls (RcXmlOut *out, const GPtrArray *rolls);

void rc_job_file_read_settings (RcXmlIn *in, const xmlNode *node, RcJob *job);
void rc_job_file_write_settings (RcXmlOut *out, const RcJob *job);

/* <states>, <attachments>, <offer>; other elements are not looked at. */
void rc_job_file_read_office (RcXmlIn *in, const xmlNode *node, RcJob *job);
void rc_job_file_write_office (RcXmlOut *out, const RcJob *job);

RcPayment *rc_job_file_read_payment (RcXmlIn *in, const xmlNode *node);
void       rc_job_file_write_payment (RcXmlOut *out, const RcPayment *payment);

RcPriceBook *rc_job_file_read_prices (RcXmlIn *in, const xmlNode *node, const RcJob *job);
void         rc_job_file_write_prices (RcXmlOut *out, const RcPriceBook *book);

/* The node's language, NULL where it names none; a fault where there is no such. (transfer full) */
char *rc_job_file_dup_language (RcXmlIn *in, const xmlNode *node);

/* The <point>s under `parent`. */
RcRing *rc_job_file_read_points (RcXmlIn *in, const xmlNode *parent);
void    rc_job_file_write_points (RcXmlOut *out, const RcRing *ring);

RcRoom *rc_job_file_read_room (RcXmlIn *in, const xmlNode *node);
void    rc_job_file_write_room (RcXmlOut *out, const RcRoom *room);

RcMeasure *rc_job_file_read_measure (RcXmlIn *in, const xmlNode *node, const RcJob *job);
void       rc_job_file_write_measure (RcXmlOut *out, const RcMeasure *measure);

/* The id of the job's only carpet; NULL when there is none or more than one. */
const char *rc_job_file_find_only_carpet (const RcJob *job);

/* One area for each set of rooms joined by openings that lead from one to the other. */
void rc_job_file_add_areas (RcMeasure *measure, const char *carpet);
