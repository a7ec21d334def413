/* Rolls in stock: what is promised to jobs, what was cut, what became of each. Public like store.h, which includes it.
 *
 * Nothing goes below nothing, and no length is promised twice: that is checked within each transaction and, for other
 * programs' sake, by triggers in the file. Lengths are ticks of roll. `now` is an ISO 8601 time. Errors name the roll,
 * what it has and what was asked: RC_ERROR_RANGE; RC_ERROR_REFERENCE when there is no such roll.
 */
#pragma once

#include "quote.h"
#include "remeasure.h"

typedef struct _RcStore RcStore;

/* A length of a roll promised to a job; one for each roll and job. */
typedef struct
{
  char    *roll_id, *job_id;
  RcLength length;
  char    *made;
} RcReservation;

void rc_reservation_free (RcReservation *reservation);

typedef enum
{
  RC_MOVE_RECEIVED,
  RC_MOVE_RESERVED, /* the length is what was promised */
  RC_MOVE_RELEASED,
  RC_MOVE_CUT,
  RC_MOVE_CORRECTED,
  RC_MOVE_PLACED,    /* the notes are the new place */
  RC_MOVE_TAKEN_OUT, /* out of the stock */
  RC_N_MOVES
} RcMoveKind;

const char *rc_move_kind_get_name (RcMoveKind kind);  /* stable: "received", "reserved", ... */
const char *rc_move_kind_get_label (RcMoveKind kind); /* translated */

/* One line of a roll's history. */
typedef struct
{
  char      *roll_id;
  RcMoveKind kind;
  char      *job_id;  /* nullable */
  RcLength   length;  /* added; below 0: taken off. Of a reservation: promised; below 0: given back */
  RcLength   balance; /* left on the roll after it */
  char      *made;
  char      *notes; /* in the reader's language, as far as the program wrote them; nullable */
} RcRollMove;

void rc_roll_move_free (RcRollMove *move);

/* A piece cut for a job. */
typedef struct
{
  char    *piece; /* its number on the plan; nullable */
  RcLength width, length;
  char    *job_id, *roll_id, *goods_id, *lot, *made; /* filled in by the store */
} RcCutPiece;

RcCutPiece *rc_cut_piece_new (const char *piece, RcLength width, RcLength length);
void        rc_cut_piece_free (RcCutPiece *piece);

/* A new roll comes in; `roll->id` NULL: the next free ticket R-n. (transfer full) its id. */
char *rc_store_receive_roll (RcStore *store, const RcRoll *roll, const char *notes, const char *now, GError **error);

/* The roll promises `length` in all to the job from now on (0: nothing). Refused when others are promised so much that
 * it does not have that; whoever comes first has it. */
gboolean rc_store_reserve_roll (RcStore *store, const char *roll_id, const char *job_id, RcLength length,
                                const char *now, GError **error);

/* Cuts `length` (>= 0) off the roll's start for a job. The job's promise is used up first; what others are promised is
 * not touched. `pieces` (of RcCutPiece, nullable) are what was cut for the job, `remnants` (of RcRoll, nullable) what
 * is left of the length beside them and worth keeping: each comes into stock as a remnant of the roll's goods and lot,
 * with its own measured length and width, under its id or the next free ticket, which is put into it. `balance` is what
 * is left on the roll as measured, -1: as computed. All or nothing. */
gboolean rc_store_cut_roll (RcStore *store, const char *roll_id, const char *job_id, RcLength length,
                            const GPtrArray *pieces, GPtrArray *remnants, RcLength balance, const char *now,
                            GError **error);

/* The roll was measured and has `length`; refused below what is promised. */
gboolean rc_store_correct_roll (RcStore *store, const char *roll_id, RcLength length, const char *notes,
                                const char *now, GError **error);
/* The roll is damaged on these lengths (of RcFlaw) and nowhere else; refused beyond its ends. */
gboolean rc_store_mark_damage (RcStore *store, const char *roll_id, const GArray *flaws, const char *now,
                               GError **error);
gboolean rc_store_place_roll (RcStore *store, const char *roll_id, const char *place, const char *now, GError **error);

/* The roll is as it is written here: its length, its place, its damage. What is other than it was is noted, all of it
 * or nothing. */
gboolean rc_store_amend_roll (RcStore *store, const RcRoll *roll, const char *notes, const char *now, GError **error);

/* What the roll has for the job: its length less what is promised to others. */
gboolean rc_store_get_available (RcStore *store, const char *roll_id, const char *job_id, RcLength *length,
                                 GError **error);

/* The rolls that have something for the job (nullable: for a new one), each with as much as it has for it and what of
 * that is kept for it. (transfer full) GPtrArray of RcRoll. */
GPtrArray *rc_store_load_rolls_for_job (RcStore *store, const char *job_id, GError **error);

/* Each (transfer full), oldest first; NULL for a roll or job: of all. */
GPtrArray *rc_store_find_reservations (RcStore *store, const char *roll_id, const char *job_id, GError **error);
GPtrArray *rc_store_find_moves (RcStore *store, const char *roll_id, GError **error);     /* of RcRollMove */
GPtrArray *rc_store_find_cut_pieces (RcStore *store, const char *job_id, GError **error); /* of RcCutPiece */
/* What the job has already: pieces cut for it, lengths cut whose pieces were not noted, what is ordered for it, the
 * whole stock as far as it can have it, and what the customer has accepted. (transfer full) */
RcHeld *rc_store_load_held (RcStore *store, const RcJob *job, GError **error);
