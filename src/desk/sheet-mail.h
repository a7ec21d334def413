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

/* A quotation, its options and the seam plan go to the customer, an order to its supplier, all else to whom the person
 * chooses; in the set's language. `number`: of the quotation or order; NULL: a draft. For the main thread. */
void rc_sheet_letter_init (RcSheetLetter *letter, const RcSheetSet *set, guint sheet, const char *number);
void rc_sheet_letter_clear (RcSheetLetter *letter);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RcSheetLetter, rc_sheet_letter_clear)

/* Writes the PDF where mail programs find it and hands it over. rc_mail_compose_finish tells how it ended; FALSE when
 * the file could not be written. */
gboolean rc_sheet_mail_async (const RcSheetSet *set, guint sheet, RcPaper paper, const char *number,
                              GAsyncReadyCallback done, gpointer data, GError **error);
