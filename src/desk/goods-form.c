#include "goods-form.h"

#include <glib/gi18n-lib.h>

#include "exact-text.h"
#include "form-field.h"
#include "length-entry.h"
#include "pick.h"
#include "price-edit.h"
#include "rowcut-error.h"
#include "supplier-edit.h"
#include "usual-units.h"

/* Each field is a label with a widget below; a kind of goods shows those it needs. */
typedef enum
{
  FIELD_NAME,
  FIELD_KIND,
  FIELD_SUPPLIER,
  FIELD_UNIT,
  FIELD_ROLL_WIDTH,
  FIELD_USABLE_WIDTH,
  FIELD_REPEAT_LENGTH,
  FIELD_REPEAT_WIDTH,
  FIELD_MATCH,
  FIELD_LENGTH_STEP,
  FIELD_LEAST_CUT,
  FIELD_FULL_ROLL,
  FIELD_TAPE_WIDTH,
  FIELD_PACK,
  FIELD_PACK_UNIT,
  FIELD_COVERS_LENGTH,
  FIELD_COVERS_AREA,
  N_FIELDS
} Field;

struct _RcGoodsForm
{
  GtkBox parent_instance;

  GtkLabel  *title_label;
  GtkBox    *first_row, *second_row;
  GtkWidget *boxes[N_FIELDS], *fields[N_FIELDS];
  GtkLabel  *labels[N_FIELDS];
  RcGoods   *before; /* nullable */
};

G_DEFINE_FINAL_TYPE (RcGoodsForm, rc_goods_form, GTK_TYPE_BOX)

/* --- which fields a kind has --- */

#define BIT(field) (1U << (field))
#define ALWAYS     (BIT (FIELD_NAME) | BIT (FIELD_KIND) | BIT (FIELD_SUPPLIER) | BIT (FIELD_UNIT))
#define PACKED     (ALWAYS | BIT (FIELD_PACK) | BIT (FIELD_PACK_UNIT))

static const guint shown[RC_N_GOODS_KINDS] = {
  [RC_GOODS_CARPET] = ALWAYS | BIT (FIELD_ROLL_WIDTH) | BIT (FIELD_USABLE_WIDTH) | BIT (FIELD_REPEAT_LENGTH)
                      | BIT (FIELD_REPEAT_WIDTH) | BIT (FIELD_MATCH) | BIT (FIELD_LENGTH_STEP) | BIT (FIELD_LEAST_CUT)
                      | BIT (FIELD_FULL_ROLL),
  [RC_GOODS_CUSHION] = PACKED | BIT (FIELD_ROLL_WIDTH) | BIT (FIELD_LENGTH_STEP) | BIT (FIELD_FULL_ROLL),
  [RC_GOODS_TAPE] = PACKED | BIT (FIELD_TAPE_WIDTH) | BIT (FIELD_COVERS_LENGTH),
  [RC_GOODS_SEALER] = PACKED | BIT (FIELD_COVERS_LENGTH),
  [RC_GOODS_STRIP] = PACKED | BIT (FIELD_COVERS_LENGTH),
  [RC_GOODS_ADHESIVE] = PACKED | BIT (FIELD_COVERS_AREA),
  [RC_GOODS_TRANSITION] = PACKED | BIT (FIELD_COVERS_LENGTH),
};

#define LENGTHS (BIT (RC_UNIT_FT) | BIT (RC_UNIT_YD) | BIT (RC_UNIT_M))
#define AREAS   (BIT (RC_UNIT_SQ_YD) | BIT (RC_UNIT_SQ_FT) | BIT (RC_UNIT_M2))
#define VOLUMES (BIT (RC_UNIT_GALLON) | BIT (RC_UNIT_LITRE))
#define PACKS   (BIT (RC_UNIT_EACH) | BIT (RC_UNIT_ROLL) | BIT (RC_UNIT_CARTON) | BIT (RC_UNIT_BOX) | BIT (RC_UNIT_TUB))

/* What a kind can be priced in, so that what a job takes of it can be counted. */
static const guint units_of[RC_N_GOODS_KINDS] = {
  [RC_GOODS_CARPET] = LENGTHS | AREAS,     [RC_GOODS_CUSHION] = LENGTHS | AREAS,
  [RC_GOODS_TAPE] = LENGTHS | PACKS,       [RC_GOODS_SEALER] = LENGTHS | VOLUMES | PACKS,
  [RC_GOODS_STRIP] = LENGTHS | PACKS,      [RC_GOODS_ADHESIVE] = AREAS | VOLUMES | PACKS,
  [RC_GOODS_TRANSITION] = LENGTHS | PACKS,
};

/* Where a length of the goods is kept; NULL: the field is no length. */
static RcLength *
get_length (RcGoods *goods, Field field)
{
  switch (field)
    {
    case FIELD_ROLL_WIDTH:
      return &goods->roll_width;
    case FIELD_USABLE_WIDTH:
      return &goods->usable_width;
    case FIELD_REPEAT_LENGTH:
      return &goods->repeat_length;
    case FIELD_REPEAT_WIDTH:
      return &goods->repeat_width;
    case FIELD_LENGTH_STEP:
      return &goods->length_step;
    case FIELD_LEAST_CUT:
      return &goods->least_cut;
    case FIELD_FULL_ROLL:
      return &goods->full_roll;
    case FIELD_TAPE_WIDTH:
      return &goods->tape_width;
    case FIELD_COVERS_LENGTH:
      return &goods->pack_covers_length;
    default:
      return NULL;
    }
}

/* --- reading the fields --- */

static const char *
get_text (RcGoodsForm *self, Field field)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->fields[field]));
}

static const char *
get_picked (RcGoodsForm *self, Field field)
{
  return rc_pick_get_selected (GTK_DROP_DOWN (self->fields[field]));
}

static RcGoodsKind
get_kind (RcGoodsForm *self)
{
  RcGoodsKind kind = RC_GOODS_CARPET;

  rc_goods_kind_parse (get_picked (self, FIELD_KIND), &kind, NULL);
  return kind;
}

static gboolean
read_length (RcGoodsForm *self, Field field, RcLength *length, GError **error)
{
  const char *fault = rc_length_entry_get_fault (RC_LENGTH_ENTRY (self->fields[field]));

  if (fault != NULL)
    {
      g_set_error_literal (error, RC_ERROR, RC_ERROR_PARSE, fault);
      return FALSE;
    }
  *length = MAX (0, rc_length_entry_get_value (RC_LENGTH_ENTRY (self->fields[field])));
  return TRUE;
}

/* A fraction of the repeat, as 2/7; blank: a set match. */
static gboolean
read_match (const char *text, RcMatch *match, GError **error)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text)), *name = g_strconcat (stripped, "-drop", NULL);

  *match = RC_MATCH_SET;
  if (*stripped == '\0' || rc_match_parse (name, match, NULL))
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_PARSE,
               _ ("“%s” is no part of a repeat; write it as 1/2 or 2/7, or nothing for a set match"), text);
  return FALSE;
}

/* Text left blank is 0. */
static gboolean
read_field (RcGoodsForm *self, Field field, RcGoods *goods, GError **error)
{
  RcLength *length = get_length (goods, field);

  if (length != NULL)
    return read_length (self, field, length, error);
  switch (field)
    {
    case FIELD_NAME:
      g_free (goods->name);
      goods->name = g_strdup (get_text (self, field));
      return TRUE;
    case FIELD_SUPPLIER:
      g_free (goods->supplier);
      goods->supplier = g_strdup (get_text (self, field));
      return TRUE;
    case FIELD_UNIT:
      return rc_unit_parse (get_picked (self, field), &goods->unit, error);
    case FIELD_PACK_UNIT:
      return rc_unit_parse (get_picked (self, field), &goods->pack_unit, error);
    case FIELD_MATCH:
      return read_match (get_text (self, field), &goods->match, error);
    case FIELD_PACK:
      goods->pack_micro = 0;
      return *get_text (self, field) == '\0' || rc_quantity_parse (get_text (self, field), &goods->pack_micro, error);
    case FIELD_COVERS_AREA:
      goods->pack_covers_area = 0;
      return *get_text (self, field) == '\0' || rc_area_parse (get_text (self, field), &goods->pack_covers_area, error);
    default:
      return TRUE;
    }
}

RcGoods *
rc_goods_form_read (RcGoodsForm *self, GError **error)
{
  RcGoodsKind kind = get_kind (self);
  g_autoptr (RcGoods) goods = self->before != NULL ? rc_goods_copy (self->before) : rc_goods_new ("", kind, "");

  for (Field field = 0; field < N_FIELDS; field++)
    if ((shown[kind] & BIT (field)) != 0 && !read_field (self, field, goods, error))
      {
        g_prefix_error (error, "%s: ", gtk_label_get_text (self->labels[field]));
        gtk_widget_grab_focus (self->fields[field]);
        return NULL;
      }
  return g_steal_pointer (&goods);
}

void
rc_goods_form_focus_fault (RcGoodsForm *self, RcGoods *goods)
{
  g_autofree char *fault = NULL;
  const void      *member = rc_goods_find_fault (goods, &fault);
  Field            wrong = FIELD_NAME;

  for (Field field = 0; member != NULL && field < N_FIELDS; field++)
    if (get_length (goods, field) == member)
      wrong = field;
  if (member == &goods->pack_micro)
    wrong = FIELD_PACK;
  else if (member == &goods->pack_covers_area)
    wrong = FIELD_COVERS_AREA;
  gtk_widget_grab_focus (self->fields[wrong]);
}

const RcGoods *
rc_goods_form_get_before (RcGoodsForm *self)
{
  return self->before;
}

/* --- showing them --- */

static void
show_units (RcGoodsForm *self, Field field, guint units, RcUnit unit)
{
  g_auto (RcPick) pick = { 0 };

  rc_pick_init (&pick);
  for (RcUnit one = 0; one < RC_N_UNITS; one++)
    if ((units & BIT (one)) != 0 || one == unit)
      rc_pick_add (&pick, rc_unit_get_name (one), rc_unit_get_label (one));
  rc_pick_show (&pick, GTK_DROP_DOWN (self->fields[field]), rc_unit_get_name (unit));
}

static void
show_text (RcGoodsForm *self, Field field, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (self->fields[field]), text != NULL ? text : "");
}

static void
show_match (RcGoodsForm *self, RcMatch match)
{
  g_autofree char *drop = g_strdup_printf ("%u/%u", rc_match_get_numerator (match), rc_match_get_denominator (match));

  show_text (self, FIELD_MATCH, match != RC_MATCH_SET ? drop : NULL);
}

/* What is in a pack is counted in the unit that the goods are priced in. */
static void
show_pack_label (RcGoodsForm *self)
{
  RcUnit           unit = RC_UNIT_EACH;
  g_autofree char *text = NULL;

  if (get_picked (self, FIELD_UNIT) == NULL || !rc_unit_parse (get_picked (self, FIELD_UNIT), &unit, NULL))
    return;
  text = g_strdup_printf (_ ("In a pack, %s"), rc_unit_get_label (unit));
  rc_form_field_set_name (self->labels[FIELD_PACK], self->fields[FIELD_PACK], text);
}

static void
show_kind (RcGoodsForm *self, RcGoodsKind kind, RcUnit unit)
{
  for (Field field = 0; field < N_FIELDS; field++)
    gtk_widget_set_visible (self->boxes[field], (shown[kind] & BIT (field)) != 0);
  show_units (self, FIELD_UNIT, units_of[kind], unit);
  show_pack_label (self);
}

static void
on_kind (RcGoodsForm *self)
{
  g_autoptr (RcGoods) usual = rc_goods_new ("", get_kind (self), "");

  if (self->before == NULL)
    show_kind (self, usual->kind, usual->unit);
}

static void
show_kinds (RcGoodsForm *self, RcGoodsKind kind)
{
  g_auto (RcPick) pick = { 0 };

  rc_pick_init (&pick);
  for (RcGoodsKind one = 0; one < RC_N_GOODS_KINDS; one++)
    rc_pick_add (&pick, rc_goods_kind_get_name (one), rc_price_edit_get_kind_label (one));
  rc_pick_show (&pick, GTK_DROP_DOWN (self->fields[FIELD_KIND]), rc_goods_kind_get_name (kind));
  /* Jobs name goods by their kind: it stays. */
  gtk_widget_set_sensitive (self->fields[FIELD_KIND], self->before == NULL);
}

static void
propose_suppliers (RcGoodsForm *self, const RcPriceBook *book)
{
  g_autoptr (GtkListStore) list = gtk_list_store_new (1, G_TYPE_STRING);
  g_autoptr (GPtrArray) suppliers = rc_supplier_edit_find (book, NULL);
  GtkEntryCompletion *completion = gtk_entry_get_completion (GTK_ENTRY (self->fields[FIELD_SUPPLIER]));

  for (guint i = 0; i < suppliers->len; i++)
    gtk_list_store_insert_with_values (list, NULL, -1, 0, ((const RcSupplier *)suppliers->pdata[i])->name, -1);
  gtk_entry_completion_set_model (completion, GTK_TREE_MODEL (list));
}

void
rc_goods_form_open (RcGoodsForm *self, const RcPriceBook *book, const RcGoods *goods)
{
  g_autoptr (RcGoods) shows = goods != NULL ? rc_goods_copy (goods) : rc_goods_new ("", RC_GOODS_CARPET, "");
  g_autofree char *pack = shows->pack_micro > 0 ? rc_quantity_format (shows->pack_micro, 6) : NULL;
  g_autofree char *area = shows->pack_covers_area > 0 ? rc_exact_area_format (shows->pack_covers_area) : NULL;
  g_autofree char *title = goods != NULL ? g_strdup_printf (_ ("%s, as it comes from the supplier"), goods->name)
                                         : g_strdup (_ ("New goods, as they come from the supplier"));

  g_clear_pointer (&self->before, rc_goods_free);
  self->before = goods != NULL ? rc_goods_copy (goods) : NULL;
  gtk_label_set_text (self->title_label, title);
  show_kinds (self, shows->kind);
  show_kind (self, shows->kind, shows->unit);
  propose_suppliers (self, book);
  show_text (self, FIELD_NAME, shows->name);
  show_text (self, FIELD_SUPPLIER, shows->supplier);
  show_text (self, FIELD_PACK, pack);
  show_text (self, FIELD_COVERS_AREA, area);
  show_units (self, FIELD_PACK_UNIT, PACKS, shows->pack_unit);
  show_match (self, shows->match);
  for (Field field = 0; field < N_FIELDS; field++)
    if (get_length (shows, field) != NULL)
      {
        rc_length_entry_clear (RC_LENGTH_ENTRY (self->fields[field]));
        rc_length_entry_set_value (RC_LENGTH_ENTRY (self->fields[field]), *get_length (shows, field));
      }
  gtk_widget_grab_focus (self->fields[FIELD_NAME]);
}

/* --- made --- */

static void
add_field (RcGoodsForm *self, Field field, const char *label, GtkWidget *widget)
{
  self->boxes[field] = rc_form_field_new (label, widget, &self->labels[field]);
  self->fields[field] = widget;
  gtk_box_append (field <= FIELD_ROLL_WIDTH ? self->first_row : self->second_row, self->boxes[field]);
  if (GTK_IS_ENTRY (widget))
    g_signal_connect_swapped (widget, "activate", G_CALLBACK (rc_form_keep), self);
}

static GtkWidget *
new_length (const char *placeholder)
{
  GtkWidget *entry = rc_length_entry_new ();

  rc_length_entry_set_optional (RC_LENGTH_ENTRY (entry), TRUE);
  rc_length_entry_set_units (RC_LENGTH_ENTRY (entry), rc_usual_units_get_bare (NULL), rc_usual_units_get_style (NULL));
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), placeholder);
  return entry;
}

static GtkWidget *
new_supplier (void)
{
  GtkWidget *entry = rc_form_entry_new (NULL, 24);
  g_autoptr (GtkEntryCompletion) completion = gtk_entry_completion_new ();

  gtk_entry_completion_set_text_column (completion, 0);
  gtk_entry_set_completion (GTK_ENTRY (entry), completion);
  return entry;
}

static void
rc_goods_form_init (RcGoodsForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_field (self, FIELD_NAME, _ ("Name"), rc_form_entry_new (NULL, 26));
  add_field (self, FIELD_KIND, _ ("Kind"), gtk_drop_down_new (NULL, NULL));
  add_field (self, FIELD_SUPPLIER, _ ("Supplier"), new_supplier ());
  add_field (self, FIELD_UNIT, _ ("Unit"), gtk_drop_down_new (NULL, NULL));
  add_field (self, FIELD_ROLL_WIDTH, _ ("Roll width"), new_length (NULL));
  add_field (self, FIELD_USABLE_WIDTH, _ ("Usable width"), new_length (_ ("as the roll")));
  add_field (self, FIELD_REPEAT_LENGTH, _ ("Repeat, length"), new_length (_ ("plain")));
  add_field (self, FIELD_REPEAT_WIDTH, _ ("Repeat, width"), new_length (_ ("none")));
  add_field (self, FIELD_MATCH, _ ("Match: a drop of"), rc_form_entry_new (_ ("none, set"), 8));
  gtk_widget_set_tooltip_text (
      self->fields[FIELD_MATCH],
      _ ("How far the pattern drops from one width to the next, as a part of its repeat: 1/2, 2/7"));
  add_field (self, FIELD_LENGTH_STEP, _ ("Sold in steps of"), new_length (_ ("any length")));
  add_field (self, FIELD_LEAST_CUT, _ ("Shortest cut"), new_length (_ ("any length")));
  add_field (self, FIELD_FULL_ROLL, _ ("Full roll"), new_length (_ ("not known")));
  add_field (self, FIELD_TAPE_WIDTH, _ ("Tape width"), new_length (NULL));
  add_field (self, FIELD_PACK, _ ("In a pack"), rc_form_entry_new (_ ("loose"), 9));
  add_field (self, FIELD_PACK_UNIT, _ ("Packed as"), gtk_drop_down_new (NULL, NULL));
  add_field (self, FIELD_COVERS_LENGTH, _ ("A pack is enough for"), new_length (_ ("as it measures")));
  add_field (self, FIELD_COVERS_AREA, _ ("A pack covers"), rc_form_entry_new ("36 sq yd", 12));
  g_signal_connect_swapped (self->fields[FIELD_KIND], "notify::selected", G_CALLBACK (on_kind), self);
  g_signal_connect_swapped (self->fields[FIELD_UNIT], "notify::selected", G_CALLBACK (show_pack_label), self);
}

static void
rc_goods_form_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_GOODS_FORM);
  G_OBJECT_CLASS (rc_goods_form_parent_class)->dispose (object);
}

static void
rc_goods_form_finalize (GObject *object)
{
  rc_goods_free (RC_GOODS_FORM (object)->before);
  G_OBJECT_CLASS (rc_goods_form_parent_class)->finalize (object);
}

static void
rc_goods_form_class_init (RcGoodsFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_goods_form_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_goods_form_finalize;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/goods-form.ui");
  gtk_widget_class_bind_template_child (widget_class, RcGoodsForm, title_label);
  gtk_widget_class_bind_template_child (widget_class, RcGoodsForm, first_row);
  gtk_widget_class_bind_template_child (widget_class, RcGoodsForm, second_row);
  rc_form_class_add_leave (widget_class);
  rc_form_class_add_keep (widget_class);
}
