#include "sheet-mail.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "translation.h"

static const RcSupplier *
find_supplier (const RcSheetSet *set, const RcOrder *order)
{
  return order != NULL ? rc_price_book_find_supplier (set->outcome->book, order->supplier) : NULL;
}

/* "Quotation Q-12, Gull Cottage": what, which, and what for. */
static char *
dup_subject (const RcSheetSet *set, RcSheetKind kind, const char *number)
{
  const RcJob *job = set->outcome->job;
  GString     *text = g_string_new (rc_sheet_kind_get_label (kind));

  if (number != NULL)
    g_string_append_printf (text, " %s", number);
  else if (job->number != NULL && *job->number != '\0')
    g_string_append_printf (text, _ (", job %s"), job->number);
  /* What the shop calls a job is no supplier's business. */
  if (kind != RC_SHEET_ORDER && job->title != NULL && *job->title != '\0')
    g_string_append_printf (text, ", %s", job->title);
  return g_string_free (text, FALSE);
}

static char *
dup_signature (const RcPriceBook *book)
{
  return g_strjoin ("\n", book->shop_name != NULL ? book->shop_name : "",
                    book->shop_address != NULL ? book->shop_address : "", NULL);
}

static char *
dup_customer_text (const RcSheetSet *set, const char *subject, const char *signature)
{
  const char *name = set->outcome->job->customer.name;

  if (name != NULL && *name != '\0')
    return g_strdup_printf (_ ("Dear %s,\n\nplease find attached: %s.\n\nKind regards,\n%s"), name, subject, signature);
  return g_strdup_printf (_ ("Hello,\n\nplease find attached: %s.\n\nKind regards,\n%s"), subject, signature);
}

static char *
dup_order_text (const RcSupplier *supplier, const char *subject, const char *signature)
{
  const char      *account = supplier != NULL ? supplier->account : NULL;
  g_autofree char *ours
      = account != NULL ? g_strdup_printf (_ (" Our number with you is %s."), account) : g_strdup ("");

  return g_strdup_printf (_ ("Hello,\n\nplease find attached: %s.%s Please confirm goods, dye lot, price and day of "
                             "delivery.\n\nKind regards,\n%s"),
                          subject, ours, signature);
}

void
rc_sheet_letter_init (RcSheetLetter *letter, const RcSheetSet *set, guint sheet, const char *number)
{
  RcSheetKind       kind = rc_sheet_set_get_kind (set, sheet);
  const RcSupplier *supplier = find_supplier (set, rc_sheet_set_get_order (set, sheet));
  g_autofree char  *signature = dup_signature (set->outcome->book);

  rc_translation_begin (set->language);
  letter->subject = dup_subject (set, kind, number);
  if (kind == RC_SHEET_ORDER)
    {
      letter->address = supplier != NULL ? g_strdup (supplier->email) : NULL;
      letter->text = dup_order_text (supplier, letter->subject, signature);
    }
  else if (rc_sheet_kind_is_customers (kind))
    {
      letter->address = g_strdup (set->outcome->job->customer.email);
      letter->text = dup_customer_text (set, letter->subject, signature);
    }
  else
    {
      letter->address = NULL;
      letter->text = g_strdup_printf (_ ("Hello,\n\nplease find attached: %s.\n\nKind regards,\n%s"), letter->subject,
                                      signature);
    }
  rc_translation_end ();
}

void
rc_sheet_letter_clear (RcSheetLetter *letter)
{
  g_clear_pointer (&letter->address, g_free);
  g_clear_pointer (&letter->subject, g_free);
  g_clear_pointer (&letter->text, g_free);
}

/* Mail programs read an attachment when it is sent: the file stays, and the next of that name takes its place. */
static char *
dup_path (const RcSheetSet *set, guint sheet, const char *number, GError **error)
{
  g_autofree char *folder = g_build_filename (g_get_user_cache_dir (), "rowcut", "mail", NULL);
  g_autofree char *plain = rc_sheet_set_dup_file_name (set, sheet);
  g_autofree char *name = number != NULL ? g_strdup_printf ("%s-%s", number, plain) : g_strdup (plain);

  if (g_mkdir_with_parents (folder, 0700) == 0)
    return g_build_filename (folder, name, NULL);
  g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_FAILED, _ ("Cannot make the folder “%s”"), folder);
  return NULL;
}

gboolean
rc_sheet_mail_async (const RcSheetSet *set, guint sheet, RcPaper paper, const char *number, GAsyncReadyCallback done,
                     gpointer data, GError **error)
{
  g_auto (RcSheetLetter) letter = { 0 };
  g_autofree char *path = dup_path (set, sheet, number, error);
  RcSheetData      sheet_data;

  if (path == NULL)
    return FALSE;
  rc_sheet_set_get_data (set, sheet, paper, number, &sheet_data);
  if (!rc_sheet_write_pdf (rc_sheet_set_get_kind (set, sheet), &sheet_data, path, error))
    return FALSE;
  rc_sheet_letter_init (&letter, set, sheet, number);
  rc_mail_compose_async (&(RcMail){ letter.address, letter.subject, letter.text, path }, done, data);
  return TRUE;
}
