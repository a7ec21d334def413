#include "sheet-mail.h"

#include <glib/gi18n-lib.h>

#include "translation.h"

/* "Quotation Q-12, Gull Cottage": what, which, and what for. */
static char *
dup_subject (const RcSheetLetterOf *of)
{
  const RcJob *job = of->job;
  GString     *text = g_string_new (rc_sheet_kind_get_label (of->kind));

  if (of->number != NULL)
    g_string_append_printf (text, " %s", of->number);
  else if (job != NULL && job->number != NULL && *job->number != '\0')
    g_string_append_printf (text, _ (", job %s"), job->number);
  /* What the shop calls a job is no supplier's business. */
  if (of->kind != RC_SHEET_ORDER && job != NULL && job->title != NULL && *job->title != '\0')
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
dup_customer_text (const RcCustomer *customer, const char *subject, const char *signature)
{
  if (customer != NULL && customer->name != NULL && *customer->name != '\0')
    return g_strdup_printf (_ ("Dear %s,\n\nplease find attached: %s.\n\nKind regards,\n%s"), customer->name, subject,
                            signature);
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
rc_sheet_letter_init (RcSheetLetter *letter, const RcSheetLetterOf *of)
{
  const RcSupplier *supplier = of->supplier != NULL ? rc_price_book_find_supplier (of->book, of->supplier) : NULL;
  const RcCustomer *customer = of->job != NULL && rc_sheet_kind_is_customers (of->kind) ? &of->job->customer : NULL;
  g_autofree char  *signature = dup_signature (of->book);

  rc_translation_begin (of->language);
  letter->subject = dup_subject (of);
  if (of->kind == RC_SHEET_ORDER)
    {
      letter->address = supplier != NULL ? g_strdup (supplier->email) : NULL;
      letter->text = dup_order_text (supplier, letter->subject, signature);
    }
  else
    {
      letter->address = customer != NULL ? g_strdup (customer->email) : NULL;
      letter->text = dup_customer_text (customer, letter->subject, signature);
    }
  rc_translation_end ();
}

void
rc_sheet_letter_init_for_set (RcSheetLetter *letter, const RcSheetSet *set, guint sheet, const char *number)
{
  const RcOrder *order = rc_sheet_set_get_order (set, sheet);

  rc_sheet_letter_init (letter, &(RcSheetLetterOf){ rc_sheet_set_get_kind (set, sheet), set->language, number,
                                                    set->outcome->job, set->outcome->book,
                                                    order != NULL ? order->supplier : NULL });
}

void
rc_sheet_letter_clear (RcSheetLetter *letter)
{
  g_clear_pointer (&letter->address, g_free);
  g_clear_pointer (&letter->subject, g_free);
  g_clear_pointer (&letter->text, g_free);
}

gboolean
rc_sheet_mail_async (const RcSheetSet *set, guint sheet, RcPaper paper, const char *number, GAsyncReadyCallback done,
                     gpointer data, GError **error)
{
  g_auto (RcSheetLetter) letter = { 0 };
  g_autofree char *plain = rc_sheet_set_dup_file_name (set, sheet);
  g_autofree char *name = number != NULL ? g_strdup_printf ("%s-%s", number, plain) : g_strdup (plain);
  g_autofree char *path = rc_mail_dup_path (name, error);
  RcSheetData      sheet_data;

  if (path == NULL)
    return FALSE;
  rc_sheet_set_get_data (set, sheet, paper, number, &sheet_data);
  if (!rc_sheet_write_pdf (rc_sheet_set_get_kind (set, sheet), &sheet_data, path, error))
    return FALSE;
  rc_sheet_letter_init_for_set (&letter, set, sheet, number);
  rc_mail_compose_async (&(RcMail){ letter.address, letter.subject, letter.text, path }, done, data);
  return TRUE;
}
