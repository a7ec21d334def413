#include "document-options.h"

#include "rowcut-error.h"
#include "translation.h"

#include <glib/gi18n-lib.h>
#include <string.h>

void
rc_document_options_clear (RcDocumentOptions *options)
{
  g_clear_pointer (&options->pdf, g_free);
  g_clear_pointer (&options->ubl, g_free);
  g_clear_pointer (&options->number, g_free);
  g_clear_pointer (&options->revises, g_free);
  g_clear_pointer (&options->paper_text, g_free);
  g_clear_pointer (&options->language, g_free);
}

GOptionEntry
rc_paper_option_get_entry (char **text)
{
  return (
      GOptionEntry){ "paper", 0, 0, G_OPTION_ARG_FILENAME, text, N_ ("Paper size: letter (default) or a4"), "SIZE" };
}

gboolean
rc_paper_option_parse (const char *text, RcPaper *paper, GError **error)
{
  if (text == NULL || g_ascii_strcasecmp (text, "letter") == 0)
    *paper = RC_PAPER_LETTER;
  else if (g_ascii_strcasecmp (text, "a4") == 0)
    *paper = RC_PAPER_A4;
  else
    {
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("--paper: “%s” is not a paper size; it is letter or a4"), text);
      return FALSE;
    }
  return TRUE;
}

GOptionEntry
rc_language_option_get_entry (char **code)
{
  return (GOptionEntry){ "language", 0,
                         0,          G_OPTION_ARG_FILENAME,
                         code,       N_ ("Language of what is written: en, es, fr (default: yours)"),
                         "LANG" };
}

gboolean
rc_language_option_apply (const char *code, GError **error)
{
  if (code == NULL || rc_translation_set_language (code, error))
    return TRUE;
  g_prefix_error (error, "--language: ");
  return FALSE;
}

void
rc_document_options_get_entries (RcDocumentOptions *options, GOptionEntry entries[RC_DOCUMENT_N_ENTRIES])
{
  entries[0] = (GOptionEntry){ "pdf", 0, 0, G_OPTION_ARG_FILENAME, &options->pdf, N_ ("Write it as PDF"), "FILE" };
  entries[1]
      = (GOptionEntry){ "ubl", 0, 0, G_OPTION_ARG_FILENAME, &options->ubl, N_ ("Write it as UBL 2.1 XML"), "FILE" };
  entries[2] = (GOptionEntry){
    "number", 0, 0, G_OPTION_ARG_FILENAME, &options->number, N_ ("Number to print on it (default: a draft)"), "TEXT"
  };
  entries[3] = rc_paper_option_get_entry (&options->paper_text);
  entries[4] = (GOptionEntry){
    "keep", 0, 0, G_OPTION_ARG_NONE, &options->keep, N_ ("Number it and keep it in the store"), NULL
  };
  entries[5] = (GOptionEntry){ "revises",
                               0,
                               0,
                               G_OPTION_ARG_FILENAME,
                               &options->revises,
                               N_ ("The quotation that it takes the place of (with --keep)"),
                               "NUMBER" };
  entries[6] = rc_language_option_get_entry (&options->language);
  entries[7] = (GOptionEntry)G_OPTION_ENTRY_NULL;
}

gboolean
rc_document_options_complete (RcDocumentOptions *options, GError **error)
{
  return rc_paper_option_parse (options->paper_text, &options->paper, error)
         && rc_language_option_apply (options->language, error);
}

char *
rc_document_dup_numbered_path (const char *path, guint index, guint count)
{
  const char *name = strrchr (path, G_DIR_SEPARATOR);
  const char *dot = strrchr (name != NULL ? name : path, '.');
  int         stem = dot != NULL ? (int)(dot - path) : (int)strlen (path);

  if (count == 1)
    return g_strdup (path);
  return g_strdup_printf ("%.*s-%u%s", stem, path, index + 1, path + stem);
}
