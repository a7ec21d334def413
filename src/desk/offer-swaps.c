#include "offer-swaps.h"

#include <glib/gi18n-lib.h>

#include "job-edit.h"
#include "offer-entry.h"
#include "pick.h"

#define PLACE_KEY "rowcut-place"

struct _RcOfferSwaps
{
  GtkBox parent_instance;

  RcDocument *document;
  char       *id;
  GtkGrid    *grid;
  gboolean    is_showing;
};

G_DEFINE_FINAL_TYPE (RcOfferSwaps, rc_offer_swaps, GTK_TYPE_BOX)

/* The planner's goals that an area's option may be best by. */
static const RcMerit MERITS[]
    = { RC_MERIT_LEAST_COST, RC_MERIT_FEWEST_SEAMS, RC_MERIT_FEWEST_JOINS, RC_MERIT_LEAST_CARPET };

void
rc_offer_swaps_set (RcOfferSwaps *self, const char *place, const char *carpet, const char *option)
{
  RcJob         *job = rc_document_dup_job (self->document);
  RcAlternative *alternative = rc_offer_edit_find_option (job->offer, self->id);
  g_autoptr (GPtrArray) stock = rc_store_load_rolls_for_job (rc_document_get_store (self->document), job->id, NULL);

  if (alternative == NULL)
    {
      rc_job_free (job);
      return;
    }
  if (carpet != NULL)
    rc_job_edit_take_goods (job, rc_document_get_price_book (self->document), stock, carpet);
  rc_offer_edit_swap (alternative, place, carpet, option);
  rc_offer_commit (GTK_WIDGET (self), self->document, job, _ ("Another option of the quotation"), NULL);
}

static void
on_selected (GtkDropDown *drop, GParamSpec *pspec, RcOfferSwaps *self)
{
  const char          *place = g_object_get_data (G_OBJECT (drop), PLACE_KEY), *chosen = rc_pick_get_selected (drop);
  const RcOffer       *offer = rc_document_get_job (self->document)->offer;
  const RcAlternative *alternative = rc_offer_edit_find_option (offer, self->id);
  const RcSwap        *swap = alternative != NULL ? rc_offer_edit_find_swap (alternative, place) : NULL;
  gboolean             is_carpet = g_object_get_data (G_OBJECT (drop), "rowcut-carpet") != NULL;

  if (self->is_showing)
    return;
  g_autofree char *carpet = g_strdup (is_carpet ? chosen : swap != NULL ? swap->carpet : NULL);
  g_autofree char *option = g_strdup (!is_carpet ? chosen : swap != NULL ? swap->option : NULL);
  g_autofree char *at = g_strdup (place);
  rc_offer_swaps_set (self, at, carpet, option);
}

static GtkDropDown *
add_drop (RcOfferSwaps *self, const char *place, const char *name, gboolean is_carpet, int row)
{
  GtkWidget       *drop = gtk_drop_down_new (NULL, NULL);
  g_autofree char *said = g_strdup_printf (is_carpet ? _ ("Carpet of %s") : _ ("Plan of %s"), name);

  g_object_set_data_full (G_OBJECT (drop), PLACE_KEY, g_strdup (place), g_free);
  g_object_set_data (G_OBJECT (drop), "rowcut-carpet", is_carpet ? drop : NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (drop), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);
  gtk_grid_attach (self->grid, drop, is_carpet ? 1 : 2, row, 1, 1);
  return GTK_DROP_DOWN (drop);
}

static void
add_place (RcOfferSwaps *self, const char *place, const char *name, gboolean has_plan)
{
  const RcJob  *job = rc_document_get_job (self->document);
  const RcSwap *swap = rc_offer_edit_find_swap (rc_offer_edit_find_option (job->offer, self->id), place);
  GtkWidget    *heading = gtk_label_new (name);
  int           row = 0;
  GtkDropDown  *carpet_drop, *option_drop;
  g_auto (RcPick) carpets = { 0 }, options = { 0 };

  while (gtk_grid_get_child_at (self->grid, 0, row) != NULL)
    row++;
  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_label_set_wrap (GTK_LABEL (heading), TRUE);
  gtk_grid_attach (self->grid, heading, 0, row, 1, 1);
  rc_pick_init (&carpets);
  rc_pick_add (&carpets, NULL, _ ("carpet as it is"));
  rc_pick_add_goods (&carpets, job, rc_document_get_price_book (self->document), RC_GOODS_CARPET);
  carpet_drop = add_drop (self, place, name, TRUE, row);
  rc_pick_show (&carpets, carpet_drop, swap != NULL ? swap->carpet : NULL);
  g_signal_connect (carpet_drop, "notify::selected", G_CALLBACK (on_selected), self);
  if (!has_plan)
    return;
  rc_pick_init (&options);
  rc_pick_add (&options, NULL, _ ("plan as it is"));
  for (guint i = 0; i < G_N_ELEMENTS (MERITS); i++)
    {
      const RcOption   option = { .merits = MERITS[i] };
      g_autofree char *label = rc_option_dup_label (&option);

      rc_pick_add (&options, rc_merit_get_name (MERITS[i]), label);
    }
  option_drop = add_drop (self, place, name, FALSE, row);
  rc_pick_show (&options, option_drop, swap != NULL ? swap->option : NULL);
  g_signal_connect (option_drop, "notify::selected", G_CALLBACK (on_selected), self);
}

static void
show (RcOfferSwaps *self)
{
  const RcMeasure *measure = rc_document_get_measure (self->document);
  GtkWidget       *child;

  if (rc_offer_edit_find_option (rc_document_get_job (self->document)->offer, self->id) == NULL)
    return;
  self->is_showing = TRUE;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->grid))) != NULL)
    gtk_grid_remove (self->grid, child);
  for (guint i = 0; i < measure->areas->len; i++)
    {
      const RcFloorArea *area = g_ptr_array_index (measure->areas, i);

      add_place (self, area->id, area->name != NULL ? area->name : area->id, TRUE);
    }
  for (guint i = 0; i < measure->stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (measure->stairs, i);

      add_place (self, stair->id, stair->name != NULL ? stair->name : stair->id, FALSE);
    }
  self->is_showing = FALSE;
}

GtkWidget *
rc_offer_swaps_new (RcDocument *document, const char *id)
{
  RcOfferSwaps *self = g_object_new (RC_TYPE_OFFER_SWAPS, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", 6, NULL);
  const RcOfferSpot spot = { RC_OFFER_OPTION_NAME, id, 0 };
  GtkWidget        *entry = rc_offer_entry_new (document, &spot, _ ("Name of the option"), _ ("Name of an option"));

  self->document = g_object_ref (document);
  self->id = g_strdup (id);
  self->grid = GTK_GRID (gtk_grid_new ());
  gtk_grid_set_column_spacing (self->grid, 8);
  gtk_grid_set_row_spacing (self->grid, 4);
  gtk_box_append (GTK_BOX (self), entry);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->grid));
  show (self);
  g_signal_connect_object (document, "edited", G_CALLBACK (show), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

static void
rc_offer_swaps_finalize (GObject *object)
{
  g_clear_object (&RC_OFFER_SWAPS (object)->document);
  g_free (RC_OFFER_SWAPS (object)->id);
  G_OBJECT_CLASS (rc_offer_swaps_parent_class)->finalize (object);
}

static void
rc_offer_swaps_class_init (RcOfferSwapsClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_offer_swaps_finalize;
}

static void
rc_offer_swaps_init (RcOfferSwaps *self)
{
  gtk_widget_add_css_class (GTK_WIDGET (self), "form");
}
