#include "job-file-parts.h"

#include <glib/gi18n-lib.h>

static RcGoods *
read_entry (RcXmlIn *in, const xmlNode *node, RcIdGiver *ids)
{
  RcGoodsKind      kind;
  RcGoods         *goods;
  GError          *error = NULL;
  g_autofree char *id = rc_xml_in_dup (node, "id"), *name = rc_xml_in_dup_text (node, "name");
  g_autofree char *match = rc_xml_in_dup (node, "match");

  if (!rc_goods_kind_parse ((const char *)node->name, &kind, &error))
    {
      rc_xml_in_take_error (in, node, NULL, error);
      return NULL;
    }
  if (id == NULL && name == NULL)
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("needs an id or a name"));
  if (id == NULL)
    id = rc_id_giver_give (ids, name, (const char *)node->name);
  goods = rc_goods_new (id, kind, name != NULL || rc_xml_in_has (node, "name") ? name : id);
  goods->supplier = rc_xml_in_dup_text (node, "supplier");
  goods->unit = rc_xml_in_unit (in, node, "unit", goods->unit);
  goods->roll_width = rc_xml_in_length (in, node, "roll-width", 0);
  goods->usable_width = rc_xml_in_length (in, node, "usable-width", 0);
  goods->repeat_length = rc_xml_in_length (in, node, "repeat-length", 0);
  goods->repeat_width = rc_xml_in_length (in, node, "repeat-width", 0);
  if (match != NULL && !rc_match_parse (match, &goods->match, &error))
    rc_xml_in_take_error (in, node, "match", error);
  goods->length_step = rc_xml_in_length (in, node, "length-step", 0);
  goods->full_roll = rc_xml_in_length (in, node, "full-roll", 0);
  goods->least_cut = rc_xml_in_length (in, node, "least-cut", 0);
  goods->pack_micro = rc_xml_in_quantity (in, node, "pack", 0);
  goods->pack_unit = rc_xml_in_unit (in, node, "pack-unit", goods->pack_unit);
  goods->tape_width = rc_xml_in_length (in, node, "tape-width", 0);
  goods->pack_covers_area = rc_xml_in_area (in, node, "covers-area", 0);
  goods->pack_covers_length = rc_xml_in_length (in, node, "covers-length", 0);
  if (kind == RC_GOODS_CARPET && goods->roll_width == 0)
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("“%s” needs its roll-width, as 12 ft or 4 m"), id);
  return goods;
}

void
rc_job_file_read_goods (RcXmlIn *in, const xmlNode *parent, GPtrArray *goods)
{
  RcIdGiver ids;

  rc_id_giver_init (&ids);
  for (const xmlNode *node = parent->children; node != NULL; node = node->next)
    if (node->type == XML_ELEMENT_NODE)
      {
        g_autofree char *id = rc_xml_in_dup (node, "id");

        rc_id_giver_take (&ids, id);
      }
  for (const xmlNode *node = parent->children; node != NULL && in->error == NULL; node = node->next)
    if (node->type == XML_ELEMENT_NODE)
      {
        RcGoods *entry = read_entry (in, node, &ids);

        if (entry != NULL)
          g_ptr_array_add (goods, entry);
      }
  rc_id_giver_clear (&ids);
}

static void
write_entry (RcXmlOut *out, const RcGoods *goods)
{
  rc_xml_out_open (out, rc_goods_kind_get_name (goods->kind));
  rc_xml_out_attribute (out, "id", goods->id);
  rc_xml_out_attribute_or_none (out, "name", goods->name);
  rc_xml_out_attribute (out, "supplier", goods->supplier);
  rc_xml_out_attribute (out, "unit", rc_unit_get_name (goods->unit));
  rc_xml_out_length_unless (out, "roll-width", goods->roll_width, 0);
  rc_xml_out_length_unless (out, "usable-width", goods->usable_width, 0);
  rc_xml_out_length_unless (out, "repeat-length", goods->repeat_length, 0);
  rc_xml_out_length_unless (out, "repeat-width", goods->repeat_width, 0);
  if (goods->match != RC_MATCH_SET || goods->repeat_length != 0)
    rc_xml_out_attribute (out, "match", rc_match_get_name (goods->match));
  rc_xml_out_length_unless (out, "length-step", goods->length_step, 0);
  rc_xml_out_length_unless (out, "full-roll", goods->full_roll, 0);
  rc_xml_out_length_unless (out, "least-cut", goods->least_cut, 0);
  if (goods->pack_micro != 0)
    rc_xml_out_quantity (out, "pack", goods->pack_micro);
  if (goods->pack_micro != 0 || goods->pack_unit != RC_UNIT_EACH)
    rc_xml_out_attribute (out, "pack-unit", rc_unit_get_name (goods->pack_unit));
  rc_xml_out_length_unless (out, "tape-width", goods->tape_width, 0);
  if (goods->pack_covers_area != 0)
    rc_xml_out_area (out, "covers-area", goods->pack_covers_area);
  rc_xml_out_length_unless (out, "covers-length", goods->pack_covers_length, 0);
  rc_xml_out_close (out);
}

void
rc_job_file_write_goods (RcXmlOut *out, const char *parent, const GPtrArray *goods)
{
  if (goods->len == 0)
    return;
  rc_xml_out_open (out, parent);
  for (guint i = 0; i < goods->len; i++)
    write_entry (out, goods->pdata[i]);
  rc_xml_out_close (out);
}

/* --- rolls --- */

void
rc_job_file_read_rolls (RcXmlIn *in, const xmlNode *parent, RcJob *job)
{
  for (const xmlNode *node = parent->children; node != NULL; node = node->next)
    {
      g_autofree char *id = NULL, *goods = NULL;
      RcRoll          *roll;

      if (!rc_xml_in_is (node, "roll"))
        continue;
      id = rc_xml_in_dup (node, "id");
      goods = rc_xml_in_dup_or (node, "goods", rc_job_file_find_only_carpet (job));
      roll = rc_roll_new (id, goods, rc_xml_in_length (in, node, "length", 0));
      roll->lot = rc_xml_in_dup_text (node, "lot");
      roll->remnant = rc_xml_in_yes (node, "remnant");
      roll->place = rc_xml_in_dup_text (node, "place");
      roll->width = rc_xml_in_length (in, node, "width", 0);
      roll->cut = rc_xml_in_yes (node, "cut");
      for (const xmlNode *child = node->children; child != NULL; child = child->next)
        if (rc_xml_in_is (child, "flaw"))
          {
            RcFlaw flaw = { rc_xml_in_length (in, child, "from", 0), rc_xml_in_length (in, child, "to", 0) };

            g_array_append_val (roll->flaws, flaw);
          }
      g_ptr_array_add (job->rolls, roll);
    }
}

void
rc_job_file_write_rolls (RcXmlOut *out, const GPtrArray *rolls)
{
  if (rolls->len == 0)
    return;
  rc_xml_out_open (out, "rolls");
  for (guint i = 0; i < rolls->len; i++)
    {
      const RcRoll *roll = rolls->pdata[i];

      rc_xml_out_open (out, "roll");
      rc_xml_out_attribute (out, "id", roll->id);
      rc_xml_out_attribute_or_none (out, "goods", roll->goods_id);
      rc_xml_out_attribute (out, "lot", roll->lot);
      rc_xml_out_length (out, "length", roll->length);
      rc_xml_out_attribute (out, "remnant", roll->remnant ? "yes" : NULL);
      rc_xml_out_attribute (out, "place", roll->place);
      rc_xml_out_length_unless (out, "width", roll->width, 0);
      rc_xml_out_attribute (out, "cut", roll->cut ? "yes" : NULL);
      for (guint k = 0; k < roll->flaws->len; k++)
        {
          rc_xml_out_open (out, "flaw");
          rc_xml_out_length (out, "from", g_array_index (roll->flaws, RcFlaw, k).from);
          rc_xml_out_length (out, "to", g_array_index (roll->flaws, RcFlaw, k).to);
          rc_xml_out_close (out);
        }
      rc_xml_out_close (out);
    }
  rc_xml_out_close (out);
}

const char *
rc_job_file_find_only_carpet (const RcJob *job)
{
  const char *found = NULL;

  for (guint i = 0; i < job->goods->len; i++)
    {
      const RcGoods *goods = job->goods->pdata[i];

      if (goods->kind != RC_GOODS_CARPET)
        continue;
      if (found != NULL)
        return NULL;
      found = goods->id;
    }
  return found;
}
