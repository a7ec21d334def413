/* A sheet by mail: whom it goes to, what is said, and the file.
 */
#pragma once

#include "mail.h"
#include "sheet-set.h"

typedef struct
{
  char *address; /* NULL: nobody is known */
  char *subject, *text;
} RcSheetLetter;

/* What a letter is about. */
typedef struct
{
  RcSheetKind        kind;
  const char        *language; /* as of a sheet */
  const char        *number;   /* of the quotation or order; NULL: a draft */
  const RcJob       *job;      /* nullable for an order */
  const RcPriceBook *book;
  const char        *supplier; /* of an order */
} RcSheetLetterOf;

/* A quotation, its options and the seam plan go to the customer, an order to its supplier, all else to whom the person
 * chooses. For the main thread. */
void rc_sheet_letter_init (RcSheetLetter *letter, const RcSheetLetterOf *of);
void rc_sheet_letter_init_for_set (RcSheetLetter *letter, const RcSheetSet *set, guint sheet, const char *number);
void rc_sheet_letter_clear (RcSheetLetter *letter);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RcSheetLetter, rc_sheet_letter_clear)

/* Writes the PDF where mail programs find it and hands it over. rc_mail_compose_finish tells how it ended; FALSE when
 * the file could not be written. */
gboolean rc_sheet_mail_async (const RcSheetSet *set, guint sheet, RcPaper paper, const char *number,
                              GAsyncReadyCallback done, gpointer data, GError **error);
