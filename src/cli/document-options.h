/* Options of the commands that write papers: where to, which number, which size. */
#pragma once

#include "sheet.h"

typedef struct
{
  char    *pdf, *ubl; /* files to write; nullable */
  char    *number;    /* nullable: a draft */
  gboolean keep;      /* keep it in the store, under the store's next number */
  char    *revises;   /* number of the quotation that it takes the place of; nullable */
  char    *paper_text;
  RcPaper  paper;
  char    *language; /* of what is written; nullable: the reader's */
} RcDocumentOptions;

void rc_document_options_clear (RcDocumentOptions *options);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RcDocumentOptions, rc_document_options_clear)

#define RC_DOCUMENT_N_ENTRIES 8

/* Entries for --pdf, --ubl, --number, --paper, --language, --keep and --revises that fill in `options`, ended. */
void rc_document_options_get_entries (RcDocumentOptions *options, GOptionEntry entries[RC_DOCUMENT_N_ENTRIES]);

/* Reads `paper_text` into `paper`, none is Letter, and goes over to `language`. Errors: RC_ERROR_PARSE naming the sizes
 * or languages there are. */
gboolean rc_document_options_complete (RcDocumentOptions *options, GError **error);

/* --paper by itself. */
GOptionEntry rc_paper_option_get_entry (char **text);
gboolean     rc_paper_option_parse (const char *text, RcPaper *paper, GError **error);

/* --language by itself; NULL leaves the language as it is. */
GOptionEntry rc_language_option_get_entry (char **code);
gboolean     rc_language_option_apply (const char *code, GError **error);

/* "order.pdf" for the only one of `count`, else "order-1.pdf", "order-2.pdf" ... (`index` from 0). (transfer full) */
char *rc_document_dup_numbered_path (const char *path, guint index, guint count);
