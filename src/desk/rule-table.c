#include "rule-table.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"
#include "typing.h"

struct _RcRuleTable
{
  RcPanel parent_instance;

  GtkLabel *currency_label;
  GtkGrid  *grid;
  GtkEntry *entries[RC_N_RULES];
};

G_DEFINE_FINAL_TYPE (RcRuleTable, rc_rule_table, RC_TYPE_PANEL)

static gpointer
find_settings (RcPanel *panel, RcJob *job)
{
  return &job->settings;
}

static gboolean
read_cost (GtkEntry *entry, const RcCurrency *currency, RcMoney *cost, GError **error)
{
  if (!rc_money_parse (gtk_editable_get_text (GTK_EDITABLE (entry)), currency, cost, error))
    return FALSE;
  if (*cost >= 0)
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("A price is not below 0"));
  return FALSE;
}

/* What is typed stays while it says the same, "7." as well as "7.00", and while it says nothing yet. */
static void
show_cost (GtkEntry *entry, RcMoney cost, const RcCurrency *currency)
{
  g_autofree char *text = rc_money_format_plain (cost, currency);
  RcMoney          typed;

  if (gtk_widget_has_css_class (GTK_WIDGET (entry), "error")
      || (read_cost (entry, currency, &typed, NULL) && typed == cost))
    return;
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static void
rc_rule_table_show (RcPanel *panel, gpointer part)
{
  RcRuleTable      *self = RC_RULE_TABLE (panel);
  const RcSettings *settings = part;
  const RcJob      *job = rc_document_get_job (rc_panel_get_document (panel));
  g_autofree char  *text
      = g_strdup_printf (_ ("What a broken rule is weighed as, in %s; 0: it does not count."), job->currency.code);

  gtk_label_set_text (self->currency_label, text);
  for (RcRule rule = 0; rule < RC_N_RULES; rule++)
    show_cost (self->entries[rule], settings->rule_cost[rule], &job->currency);
}

static RcRule
find_rule (RcRuleTable *self, GtkEntry *entry)
{
  RcRule rule = 0;

  while (self->entries[rule] != entry)
    rule++;
  return rule;
}

static void
on_changed (GtkEntry *entry, RcRuleTable *self)
{
  RcPanel *panel = RC_PANEL (self);
  g_autoptr (GError) error = NULL;

  if (rc_panel_is_showing (panel) || rc_panel_get_document (panel) == NULL)
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (rc_panel_get_document (panel));
  RcRule           rule = find_rule (self, entry);
  g_autofree char *key = g_strdup_printf ("rule %d", (int)rule);
  gboolean         reads = read_cost (entry, &job->currency, &job->settings.rule_cost[rule], &error);
  rc_entry_show_fault (GTK_WIDGET (entry), error != NULL ? error->message : NULL);
  if (reads)
    rc_panel_commit (panel, g_steal_pointer (&job), _ ("Price of a placement rule"), key);
}

/* What never read as anything goes when the field is left. */
static void
on_leave (GtkEventController *focus, RcRuleTable *self)
{
  RcDocument *document = rc_panel_get_document (RC_PANEL (self));

  rc_entry_show_fault (gtk_event_controller_get_widget (focus), NULL);
  if (document == NULL)
    return;
  rc_document_end_step (document);
  rc_panel_show (RC_PANEL (self));
}

static void
add_row (RcRuleTable *self, RcRule rule)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkWidget          *label = gtk_label_new (rc_rule_get_label (rule)), *entry = gtk_entry_new ();

  self->entries[rule] = GTK_ENTRY (entry);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), entry);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, "field-label");
  gtk_editable_set_alignment (GTK_EDITABLE (entry), 1);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 9);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 9);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, rc_rule_get_label (rule), -1);
  rc_typing_prepare (GTK_EDITABLE (entry));
  g_signal_connect_object (entry, "changed", G_CALLBACK (on_changed), self, 0);
  g_signal_connect_object (focus, "leave", G_CALLBACK (on_leave), self, 0);
  gtk_widget_add_controller (entry, focus);
  gtk_grid_attach (self->grid, label, 0, (int)rule, 1, 1);
  gtk_grid_attach (self->grid, entry, 1, (int)rule, 1, 1);
}

static void
rc_rule_table_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_RULE_TABLE);
  G_OBJECT_CLASS (rc_rule_table_parent_class)->dispose (object);
}

static void
rc_rule_table_class_init (RcRuleTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_rule_table_dispose;
  RC_PANEL_CLASS (klass)->find = find_settings;
  RC_PANEL_CLASS (klass)->show = rc_rule_table_show;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/rule-table.ui");
  gtk_widget_class_bind_template_child (widget_class, RcRuleTable, currency_label);
  gtk_widget_class_bind_template_child (widget_class, RcRuleTable, grid);
}

static void
rc_rule_table_init (RcRuleTable *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (RcRule rule = 0; rule < RC_N_RULES; rule++)
    add_row (self, rule);
}
