#include "price-item.h"

struct _RcPriceItem
{
  GObject parent_instance;

  char *item;
  int   price;
};

G_DEFINE_FINAL_TYPE (RcPriceItem, rc_price_item, G_TYPE_OBJECT)

RcPriceItem *
rc_price_item_new (RcPriceLine line)
{
  RcPriceItem *self = g_object_new (RC_TYPE_PRICE_ITEM, NULL);

  self->item = g_strdup (line.item);
  self->price = line.price;
  return self;
}

RcPriceLine
rc_price_item_get_line (RcPriceItem *self)
{
  return (RcPriceLine){ self->item, self->price };
}

void
rc_price_item_set_price (RcPriceItem *self, int price)
{
  self->price = price;
}

static void
rc_price_item_finalize (GObject *object)
{
  g_free (RC_PRICE_ITEM (object)->item);
  G_OBJECT_CLASS (rc_price_item_parent_class)->finalize (object);
}

static void
rc_price_item_class_init (RcPriceItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_price_item_finalize;
}

static void
rc_price_item_init (RcPriceItem *self)
{
}
