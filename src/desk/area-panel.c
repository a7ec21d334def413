#include "area-panel.h"

#include <glib/gi18n-lib.h>

#include "measure-edit.h"
#include "pin-edit.h"

struct _RcAreaPanel
{
  RcPanel parent_instance;

  GtkEntry    *name_entry;
  GtkDropDown *carpet_drop, *cushion_drop, *fixing_drop, *pile_drop;
  GtkBox      *rooms_box, *pins_box;
  GtkLabel    *no_pins_label;
  GtkLabel    *plan_label, *broken_label;
};

G_DEFINE_FINAL_TYPE (RcAreaPanel, rc_area_panel, RC_TYPE_PANEL)

#define ROOM_KEY "rowcut-room"
#define PIN_KEY  "rowcut-pin" /* the entry's place, as in RcAreaPlan.pins */

static gpointer
find_area (RcPanel *panel, RcJob *job)
{
  RcDocument *document = rc_panel_get_document (panel);
  RcChoice    choice = rc_document_get_choice (document);

  return choice.thing == RC_THING_AREA ? rc_measure_find_area (rc_document_get_measure_of (document, job), choice.id)
                                       : NULL;
}

/* Rooms as a list of checks. */

static void
on_room_toggled (GtkCheckButton *check, RcAreaPanel *self)
{
  RcPanel    *panel = RC_PANEL (self);
  RcDocument *document = rc_panel_get_document (panel);

  if (rc_panel_is_showing (panel) || document == NULL)
    return;
  const char *room = g_object_get_data (G_OBJECT (check), ROOM_KEY);
  const char *area = gtk_check_button_get_active (check) ? rc_document_get_choice (document).id : NULL;
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  if (rc_measure_edit_put_room_in_area (rc_document_get_measure_of (document, job), room, area))
    rc_panel_commit (panel, g_steal_pointer (&job), _ ("Rooms of an area"), NULL);
}

static void
fit_checks (RcAreaPanel *self, guint n)
{
  guint      have = 0;
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->rooms_box));

  while (child)
    {
      GtkWidget *next = gtk_widget_get_next_sibling (child);
      if (++have > n)
        gtk_box_remove (self->rooms_box, child);
      child = next;
    }
  for (; have < n; have++)
    {
      GtkWidget *check = gtk_check_button_new ();
      g_signal_connect (check, "toggled", G_CALLBACK (on_room_toggled), self);
      gtk_box_append (self->rooms_box, check);
    }
}

static void
show_rooms (RcAreaPanel *self, const RcFloorArea *area, const RcMeasure *measure)
{
  fit_checks (self, measure->rooms->len);
  GtkWidget *check = gtk_widget_get_first_child (GTK_WIDGET (self->rooms_box));
  for (guint i = 0; i < measure->rooms->len; i++, check = gtk_widget_get_next_sibling (check))
    {
      const RcRoom      *room = g_ptr_array_index (measure->rooms, i);
      const RcFloorArea *in = rc_choice_find_area_of_room (measure, room->id);
      g_autofree char   *label
          = in && in != area ? g_strdup_printf (_ ("%s (now in %s)"), room->name, in->name) : g_strdup (room->name);
      g_object_set_data_full (G_OBJECT (check), ROOM_KEY, g_strdup (room->id), g_free);
      gtk_check_button_set_label (GTK_CHECK_BUTTON (check), label);
      gtk_check_button_set_active (GTK_CHECK_BUTTON (check), in == area);
    }
}

/* What the plan says of the area. */

static char *
dup_plan_text (const RcAreaPlan *area_plan, const RcJob *job)
{
  const RcOption      *option = rc_area_plan_get_chosen (area_plan);
  const RcLengthStyle *style = rc_job_get_length_style (job);
  RcAreaUnit           unit = job->units == RC_UNITS_METRIC ? RC_AREA_UNIT_M2 : RC_AREA_UNIT_SQ_YD;
  g_autofree char     *floor = rc_area_format (area_plan->floor_area, unit, 1, TRUE);
  g_autofree char     *length = rc_length_format (option->carpet_length, style);
  g_autofree char     *bound = rc_length_format (option->length_lower_bound, style);
  g_autofree char     *side = rc_length_format (option->side_seam, style);
  g_autofree char     *cross = rc_length_format (option->cross_seam, style);

  g_autofree char *text
      = g_strdup_printf (_ ("Floor %s\nPieces %u, of it %s off the roll; never less than %s\nSide seams %s, cross "
                            "seams %s"),
                         floor, option->pieces->len, length, bound, side, cross);
  if (option->safe_length == 0)
    return g_steal_pointer (&text);
  g_autofree char *safe = rc_length_format (option->safe_length, style);
  g_autofree char *pattern = g_strdup_printf (_ ("By the safe rule of one repeat a cut %s off the roll"), safe);
  return g_strdup_printf ("%s\n%s", text, pattern);
}

static char *
dup_broken_text (const RcOption *option)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < option->broken->len; i++)
    {
      const RcBrokenRule *broken = g_ptr_array_index (option->broken, i);
      g_autofree char    *reason = rc_broken_rule_dup_reason (broken);
      g_string_append_printf (text, "%s⚠ %s", i ? "\n" : "", reason);
    }
  return g_string_free (text, FALSE);
}

static void
show_plan (RcAreaPanel *self, const char *area_id)
{
  RcDocument       *document = rc_panel_get_document (RC_PANEL (self));
  RcOutcome        *outcome = rc_document_get_outcome (document);
  const RcAreaPlan *area_plan = outcome ? rc_plan_find_area (outcome->plan, area_id) : NULL;
  g_autofree char  *text = NULL, *broken = NULL;

  if (area_plan && !rc_document_is_stale (document))
    {
      text = dup_plan_text (area_plan, outcome->job);
      broken = dup_broken_text (rc_area_plan_get_chosen (area_plan));
    }
  gtk_label_set_text (self->plan_label, text ? text : _ ("No plan yet: an area needs a carpet and at least one room."));
  gtk_label_set_text (self->broken_label, broken ? broken : "");
  gtk_widget_set_visible (GTK_WIDGET (self->broken_label), broken && *broken);
}

/* What is pinned, a row for each pin: what it is and costs, or why it is not kept, and a button to unpin it. */

static void
on_unpin (GtkButton *button, RcAreaPanel *self)
{
  RcPanel    *panel = RC_PANEL (self);
  RcDocument *document = rc_panel_get_document (panel);

  if (document == NULL)
    return;
  guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), PIN_KEY));
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  RcFloorArea *area = find_area (panel, job);
  if (area && rc_pin_edit_remove (area, index))
    rc_panel_commit (panel, g_steal_pointer (&job), _ ("Unpin"), NULL);
}

static void
append_pin_row (RcAreaPanel *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *label = gtk_label_new (NULL);
  GtkWidget *button = gtk_button_new_with_label (_ ("Unpin"));

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect (button, "clicked", G_CALLBACK (on_unpin), self);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (self->pins_box, row);
}

static void
fill_pin_row (GtkWidget *row, guint index, const char *words, gboolean is_kept)
{
  GtkWidget       *label = gtk_widget_get_first_child (row), *button = gtk_widget_get_last_child (row);
  g_autofree char *text = is_kept ? g_strdup (words) : g_strdup_printf ("⚠ %s", words);
  g_autofree char *said = g_strdup_printf (_ ("Unpin: %s"), words);

  gtk_label_set_text (GTK_LABEL (label), text);
  if (is_kept)
    gtk_widget_remove_css_class (label, "fault");
  else
    gtk_widget_add_css_class (label, "fault");
  g_object_set_data (G_OBJECT (button), PIN_KEY, GUINT_TO_POINTER (index));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);
}

/* Costs and reasons stand while the plan shown is of the job as it is. Rows are kept, so that the focus stays. */
static void
show_pins (RcAreaPanel *self, const RcFloorArea *area)
{
  RcDocument       *document = rc_panel_get_document (RC_PANEL (self));
  RcOutcome        *outcome = rc_document_is_planned (document) ? rc_document_get_outcome (document) : NULL;
  const RcAreaPlan *area_plan = outcome ? rc_plan_find_area (outcome->plan, area->id) : NULL;
  const RcCurrency *currency = &rc_document_get_job (document)->currency;
  GtkWidget        *row = gtk_widget_get_first_child (GTK_WIDGET (self->pins_box));

  for (guint i = 0; i < rc_pin_edit_get_n (area); i++)
    {
      const RcPinResult *result = area_plan && area_plan->pins && i < area_plan->pins->len
                                      ? &g_array_index (area_plan->pins, RcPinResult, i)
                                      : NULL;
      g_autofree char   *words = rc_pin_edit_dup_words (rc_document_get_measure (document), area, i, result, currency);
      if (words == NULL)
        continue;
      if (row == NULL)
        {
          append_pin_row (self);
          row = gtk_widget_get_last_child (GTK_WIDGET (self->pins_box));
        }
      fill_pin_row (row, i, words, result == NULL || result->unmet == NULL);
      row = gtk_widget_get_next_sibling (row);
    }
  while (row)
    {
      GtkWidget *next = gtk_widget_get_next_sibling (row);
      gtk_box_remove (self->pins_box, row);
      row = next;
    }
  gtk_widget_set_visible (GTK_WIDGET (self->no_pins_label),
                          gtk_widget_get_first_child (GTK_WIDGET (self->pins_box)) == NULL);
}

static void
rc_area_panel_show (RcPanel *panel, gpointer part)
{
  RcAreaPanel       *self = RC_AREA_PANEL (panel);
  RcDocument        *document = rc_panel_get_document (panel);
  const RcFloorArea *area = part;
  gtk_drop_down_set_selected (self->pile_drop, area->pile_degrees < 0 ? 0 : 1 + area->pile_degrees / 90 % 4);
  show_rooms (self, area, rc_document_get_measure (document));
  show_pins (self, area);
  show_plan (self, area->id);
}

static void
on_pile_changed (RcAreaPanel *self)
{
  RcPanel    *panel = RC_PANEL (self);
  RcDocument *document = rc_panel_get_document (panel);

  if (rc_panel_is_showing (panel) || document == NULL)
    return;
  guint at = gtk_drop_down_get_selected (self->pile_drop);
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  RcFloorArea *area = find_area (panel, job);
  if (area == NULL)
    return;
  area->pile_degrees = at == 0 ? -1 : (int)(at - 1) * 90;
  rc_panel_commit (panel, g_steal_pointer (&job), _ ("Pile direction"), NULL);
}

static void
rc_area_panel_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_AREA_PANEL);
  G_OBJECT_CLASS (rc_area_panel_parent_class)->dispose (object);
}

static void
rc_area_panel_class_init (RcAreaPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_area_panel_dispose;
  RC_PANEL_CLASS (klass)->find = find_area;
  RC_PANEL_CLASS (klass)->show = rc_area_panel_show;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/area-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, RcAreaPanel, name_entry);
  gtk_widget_class_bind_template_child (widget_class, RcAreaPanel, carpet_drop);
  gtk_widget_class_bind_template_child (widget_class, RcAreaPanel, cushion_drop);
  gtk_widget_class_bind_template_child (widget_class, RcAreaPanel, fixing_drop);
  gtk_widget_class_bind_template_child (widget_class, RcAreaPanel, pile_drop);
  gtk_widget_class_bind_template_child (widget_class, RcAreaPanel, rooms_box);
  gtk_widget_class_bind_template_child (widget_class, RcAreaPanel, pins_box);
  gtk_widget_class_bind_template_child (widget_class, RcAreaPanel, no_pins_label);
  gtk_widget_class_bind_template_child (widget_class, RcAreaPanel, plan_label);
  gtk_widget_class_bind_template_child (widget_class, RcAreaPanel, broken_label);
  gtk_widget_class_bind_template_callback (widget_class, on_pile_changed);
}

static void
rc_area_panel_init (RcAreaPanel *self)
{
  RcPanel *panel = RC_PANEL (self);

  gtk_widget_init_template (GTK_WIDGET (self));
  rc_panel_bind_goods (panel, self->carpet_drop, G_STRUCT_OFFSET (RcFloorArea, carpet), RC_GOODS_CARPET, FALSE,
                       _ ("Carpet of an area"));
  rc_panel_bind_goods (panel, self->cushion_drop, G_STRUCT_OFFSET (RcFloorArea, cushion), RC_GOODS_CUSHION, TRUE,
                       _ ("Cushion of an area"));
  rc_panel_bind_text (panel, GTK_EDITABLE (self->name_entry), G_STRUCT_OFFSET (RcFloorArea, name),
                      _ ("Name of an area"));
  rc_panel_bind_choice (panel, self->fixing_drop, G_STRUCT_OFFSET (RcFloorArea, fixing), _ ("Fixing"));
}

void
rc_area_panel_focus_name (RcAreaPanel *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->name_entry));
}
