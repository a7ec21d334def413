#include "shipped.h"

#include <gio/gio.h>

#include "job-file.h"
#include "price-csv.h"
#include "rowcut-data.h"

#define PREFIX "/org/rowcut/Rowcut/data/"

/* A file that is part of the program, ended by a zero byte that *length does not count. (transfer full) */
static char *
dup_file (const char *name, gsize *length, GError **error)
{
  g_autofree char *path = g_strconcat (PREFIX, name, NULL);
  g_autoptr (GBytes) bytes = NULL;

  rowcut_data_get_resource ();
  bytes = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, error);
  if (bytes == NULL)
    return NULL;
  *length = g_bytes_get_size (bytes);
  return g_strndup (g_bytes_get_data (bytes, NULL), *length);
}

RcPriceBook *
rc_shipped_load_price_book (GError **error)
{
  const RcCurrency currency = { "USD", 2 };
  gsize            length;
  g_autofree char *csv = dup_file ("price-book.csv", &length, error);

  return csv != NULL ? rc_price_csv_parse (csv, "price-book.csv", &currency, error) : NULL;
}

RcJob *
rc_shipped_load_demo_job (GError **error)
{
  gsize            length;
  g_autofree char *xml = dup_file ("demo-job.xml", &length, error);

  return xml != NULL ? rc_job_file_parse (xml, length, "demo-job.xml", NULL, error) : NULL;
}
