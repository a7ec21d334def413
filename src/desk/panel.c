#include "panel.h"

#include <glib/gi18n-lib.h>

#include "job-edit.h"
#include "pick.h"
#include "typing.h"

typedef enum
{
  FIELD_TEXT,
  FIELD_BUFFER,
  FIELD_LENGTH,
  FIELD_COUNT,
  FIELD_CHOICE,
  FIELD_SWITCH,
  FIELD_GOODS,
} FieldKind;

typedef struct
{
  FieldKind   kind;
  RcPanel    *panel;
  GtkWidget  *widget; /* borrowed: a child of the panel */
  gsize       offset;
  const char *step;
  char       *key;
  RcGoodsKind goods;       /* FIELD_GOODS: the kind to choose from */
  gboolean    is_optional; /* FIELD_GOODS: there may be none */
} Field;

typedef struct
{
  RcDocument *document;
  GPtrArray  *fields;
  RcChoice    choice; /* as last shown */
  gboolean    is_showing;
} RcPanelPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (RcPanel, rc_panel, GTK_TYPE_BOX)

#define PRIVATE(self) ((RcPanelPrivate *)rc_panel_get_instance_private (self))

static void
field_free (gpointer data)
{
  Field *field = data;
  g_free (field->key);
  g_free (field);
}

static char *
dup_buffer_text (GtkTextView *view)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (view);
  GtkTextIter    start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

static void
set_string (char **at, char *text)
{
  g_free (*at);
  *at = text;
}

/* From the widget into the part. */
static void
read_field (const Field *field, gpointer part)
{
  gpointer at = (char *)part + field->offset;

  switch (field->kind)
    {
    case FIELD_TEXT:
      set_string (at, g_strdup (gtk_editable_get_text (GTK_EDITABLE (field->widget))));
      break;
    case FIELD_BUFFER:
      set_string (at, dup_buffer_text (GTK_TEXT_VIEW (field->widget)));
      break;
    case FIELD_LENGTH:
      *(RcLength *)at = rc_length_entry_get_value (RC_LENGTH_ENTRY (field->widget));
      break;
    case FIELD_COUNT:
      *(int *)at = gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (field->widget));
      break;
    case FIELD_CHOICE:
      *(int *)at = gtk_drop_down_get_selected (GTK_DROP_DOWN (field->widget));
      break;
    case FIELD_GOODS:
      set_string (at, g_strdup (rc_pick_get_selected (GTK_DROP_DOWN (field->widget))));
      break;
    case FIELD_SWITCH:
    default:
      *(gboolean *)at = gtk_check_button_get_active (GTK_CHECK_BUTTON (field->widget));
    }
}

static void
write_text (const Field *field, const char *text)
{
  if (field->kind == FIELD_TEXT)
    {
      if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (field->widget)), text))
        gtk_editable_set_text (GTK_EDITABLE (field->widget), text);
      return;
    }
  g_autofree char *now = dup_buffer_text (GTK_TEXT_VIEW (field->widget));
  if (!g_str_equal (now, text))
    gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (field->widget)), text, -1);
}

static void
write_goods (const Field *field, const char *id, const RcJob *job)
{
  RcDocument *document = rc_panel_get_document (field->panel);
  g_auto (RcPick) pick = { 0 };

  rc_pick_init (&pick);
  if (field->is_optional)
    rc_pick_add (&pick, NULL, _ ("none"));
  rc_pick_add_goods (&pick, job, rc_document_get_price_book (document), field->goods);
  rc_pick_show (&pick, GTK_DROP_DOWN (field->widget), id);
}

/* From the part into the widget. */
static void
write_field (const Field *field, gconstpointer part, const RcJob *job)
{
  const char *at = (const char *)part + field->offset;

  switch (field->kind)
    {
    case FIELD_TEXT:
    case FIELD_BUFFER:
      {
        const char *text = *(char *const *)at;
        write_text (field, text ? text : "");
        break;
      }
    case FIELD_LENGTH:
      rc_length_entry_set_units (RC_LENGTH_ENTRY (field->widget), rc_job_get_bare_unit (job),
                                 rc_job_get_length_style (job));
      rc_length_entry_set_value (RC_LENGTH_ENTRY (field->widget), *(const RcLength *)at);
      break;
    case FIELD_COUNT:
      if (gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (field->widget)) != *(const int *)at)
        gtk_spin_button_set_value (GTK_SPIN_BUTTON (field->widget), *(const int *)at);
      break;
    case FIELD_CHOICE:
      gtk_drop_down_set_selected (GTK_DROP_DOWN (field->widget), *(const int *)at);
      break;
    case FIELD_GOODS:
      write_goods (field, *(char *const *)at, job);
      break;
    case FIELD_SWITCH:
    default:
      gtk_check_button_set_active (GTK_CHECK_BUTTON (field->widget), *(const gboolean *)at);
    }
}

/* Goods that are chosen become the job's own, with what it can have of the rolls in stock. */
static void
take_goods (const Field *field, RcJob *job)
{
  RcDocument *document = rc_panel_get_document (field->panel);
  const char *id = rc_pick_get_selected (GTK_DROP_DOWN (field->widget));
  g_autoptr (GPtrArray) stock = rc_store_load_rolls_for_job (rc_document_get_store (document), job->id, NULL);

  if (id)
    rc_job_edit_take_goods (job, rc_document_get_price_book (document), stock, id);
}

static void
on_field_changed (Field *field)
{
  RcPanel        *self = field->panel;
  RcPanelPrivate *priv = PRIVATE (self);

  if (priv->is_showing || priv->document == NULL)
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (priv->document);
  gpointer part = RC_PANEL_GET_CLASS (self)->find (self, job);
  if (part == NULL)
    return;
  read_field (field, part);
  if (field->kind == FIELD_GOODS)
    take_goods (field, job);
  if (RC_PANEL_GET_CLASS (self)->settle)
    job = RC_PANEL_GET_CLASS (self)->settle (self, job);
  gboolean grows = field->kind == FIELD_TEXT || field->kind == FIELD_BUFFER || field->kind == FIELD_LENGTH
                   || field->kind == FIELD_COUNT;
  rc_panel_commit (self, g_steal_pointer (&job), field->step, grows ? field->key : NULL);
}

static void
on_leave (RcPanel *self)
{
  RcPanelPrivate *priv = PRIVATE (self);
  if (priv->document)
    rc_document_end_step (priv->document);
}

static Field *
bind_field (RcPanel *self, FieldKind kind, GtkWidget *widget, gsize offset, const char *step, GObject *source,
            const char *signal)
{
  Field *field = g_new0 (Field, 1);

  *field = (Field){ .kind = kind, .panel = self, .widget = widget, .offset = offset, .step = step };
  field->key = g_strdup_printf ("field %p", (void *)widget);
  g_ptr_array_add (PRIVATE (self)->fields, field);
  g_signal_connect_swapped (source, signal, G_CALLBACK (on_field_changed), field);

  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_object (focus, "leave", G_CALLBACK (on_leave), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (widget, focus);
  return field;
}

void
rc_panel_bind_text (RcPanel *self, GtkEditable *entry, gsize offset, const char *step)
{
  rc_typing_prepare (entry);
  bind_field (self, FIELD_TEXT, GTK_WIDGET (entry), offset, step, G_OBJECT (entry), "changed");
}

void
rc_panel_bind_buffer (RcPanel *self, GtkTextView *view, gsize offset, const char *step)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (view);

  gtk_text_buffer_set_enable_undo (buffer, FALSE);
  gtk_text_view_set_accepts_tab (view, FALSE);
  bind_field (self, FIELD_BUFFER, GTK_WIDGET (view), offset, step, G_OBJECT (buffer), "changed");
}

void
rc_panel_bind_length (RcPanel *self, RcLengthEntry *entry, gsize offset, const char *step)
{
  bind_field (self, FIELD_LENGTH, GTK_WIDGET (entry), offset, step, G_OBJECT (entry), "edited");
}

/* Turning the wheel over a spin button would change what was measured while the panel is scrolled. */
static void
leave_wheel_alone (GtkWidget *widget)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = g_list_model_get_n_items (controllers); i-- > 0;)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      if (GTK_IS_EVENT_CONTROLLER_SCROLL (controller))
        gtk_widget_remove_controller (widget, controller);
    }
}

void
rc_panel_bind_count (RcPanel *self, GtkSpinButton *spin, gsize offset, const char *step)
{
  leave_wheel_alone (GTK_WIDGET (spin));
  rc_typing_prepare (GTK_EDITABLE (spin));
  bind_field (self, FIELD_COUNT, GTK_WIDGET (spin), offset, step, G_OBJECT (spin), "value-changed");
}

void
rc_panel_bind_choice (RcPanel *self, GtkDropDown *drop_down, gsize offset, const char *step)
{
  bind_field (self, FIELD_CHOICE, GTK_WIDGET (drop_down), offset, step, G_OBJECT (drop_down), "notify::selected");
}

void
rc_panel_bind_switch (RcPanel *self, GtkCheckButton *check, gsize offset, const char *step)
{
  bind_field (self, FIELD_SWITCH, GTK_WIDGET (check), offset, step, G_OBJECT (check), "toggled");
}

void
rc_panel_bind_goods (RcPanel *self, GtkDropDown *drop_down, gsize offset, RcGoodsKind kind, gboolean optional,
                     const char *step)
{
  Field *field
      = bind_field (self, FIELD_GOODS, GTK_WIDGET (drop_down), offset, step, G_OBJECT (drop_down), "notify::selected");
  field->goods = kind;
  field->is_optional = optional;
}

gboolean
rc_panel_is_showing (RcPanel *self)
{
  return PRIVATE (self)->is_showing;
}

RcDocument *
rc_panel_get_document (RcPanel *self)
{
  return PRIVATE (self)->document;
}

gpointer
rc_panel_find_chosen_room (RcPanel *self, RcJob *job)
{
  RcDocument *document = rc_panel_get_document (self);
  RcChoice    choice = rc_document_get_choice (document);

  return choice.thing == RC_THING_ROOM ? rc_measure_find_room (rc_document_get_measure_of (document, job), choice.id)
                                       : NULL;
}

void
rc_panel_show (RcPanel *self)
{
  RcPanelPrivate *priv = PRIVATE (self);
  RcPanelClass   *klass = RC_PANEL_GET_CLASS (self);

  if (priv->document == NULL)
    return;
  const RcJob *job = rc_document_get_job (priv->document);
  gpointer     part = klass->find (self, (RcJob *)job);
  if (part == NULL)
    return;
  priv->is_showing = TRUE;
  for (guint i = 0; i < priv->fields->len; i++)
    write_field (g_ptr_array_index (priv->fields, i), part, job);
  if (klass->show)
    klass->show (self, part);
  priv->is_showing = FALSE;
}

static void
on_chosen (RcPanel *self)
{
  /* Text that did not read as a length belongs to what was chosen before. */
  RcPanelPrivate *priv = PRIVATE (self);
  RcChoice        choice = rc_document_get_choice (priv->document);

  if (choice.thing == priv->choice.thing && choice.id == priv->choice.id)
    return;
  priv->choice = choice;
  for (guint i = 0; i < priv->fields->len; i++)
    {
      const Field *field = g_ptr_array_index (priv->fields, i);
      if (field->kind == FIELD_LENGTH && rc_length_entry_get_fault (RC_LENGTH_ENTRY (field->widget)))
        rc_length_entry_clear (RC_LENGTH_ENTRY (field->widget));
    }
  rc_panel_show (self);
}

/* The panels within a panel, as the cards of a list, edit the same job. */
static void
set_document_within (GtkWidget *widget, RcDocument *document)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child; child = gtk_widget_get_next_sibling (child))
    if (RC_IS_PANEL (child))
      rc_panel_set_document (RC_PANEL (child), document);
    else
      set_document_within (child, document);
}

void
rc_panel_set_document (RcPanel *self, RcDocument *document)
{
  RcPanelPrivate *priv = PRIVATE (self);

  if (priv->document)
    g_signal_handlers_disconnect_by_data (priv->document, self);
  g_set_object (&priv->document, document);
  if (document)
    {
      g_signal_connect_swapped (document, "edited", G_CALLBACK (rc_panel_show), self);
      g_signal_connect_swapped (document, "planned", G_CALLBACK (rc_panel_show), self);
      g_signal_connect_swapped (document, "chosen", G_CALLBACK (on_chosen), self);
    }
  set_document_within (GTK_WIDGET (self), document);
  if (document == NULL)
    return;
  priv->choice = rc_document_get_choice (document);
  rc_panel_show (self);
}

void
rc_panel_commit (RcPanel *self, RcJob *job, const char *step, const char *key)
{
  g_autoptr (GError) error = NULL;

  if (rc_document_commit (PRIVATE (self)->document, job, step, key, &error))
    return;
  gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", error->message);
  rc_panel_show (self);
}

static void
rc_panel_dispose (GObject *object)
{
  rc_panel_set_document (RC_PANEL (object), NULL);
  G_OBJECT_CLASS (rc_panel_parent_class)->dispose (object);
}

static void
rc_panel_finalize (GObject *object)
{
  g_ptr_array_unref (PRIVATE (RC_PANEL (object))->fields);
  G_OBJECT_CLASS (rc_panel_parent_class)->finalize (object);
}

/* A letter typed on a drop-down picks its next entry that begins with it, as one would expect without looking. */
static gboolean
on_key (RcPanel *self, guint keyval, guint keycode, GdkModifierType state)
{
  GtkRoot   *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root ? gtk_root_get_focus (root) : NULL;
  GtkWidget *drop = focus ? gtk_widget_get_ancestor (focus, GTK_TYPE_DROP_DOWN) : NULL;
  gunichar   letter = g_unichar_tolower (gdk_keyval_to_unicode (keyval));

  if (drop == NULL || gtk_widget_get_first_child (drop) != focus || !g_unichar_isalnum (letter)
      || (state & gtk_accelerator_get_default_mod_mask () & ~GDK_SHIFT_MASK) != 0)
    return GDK_EVENT_PROPAGATE;
  return rc_pick_step_to_letter (GTK_DROP_DOWN (drop), letter) ? GDK_EVENT_STOP : GDK_EVENT_PROPAGATE;
}

static void
rc_panel_class_init (RcPanelClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rc_panel_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_panel_finalize;
}

static void
rc_panel_init (RcPanel *self)
{
  PRIVATE (self)->fields = g_ptr_array_new_with_free_func (field_free);
  GtkEventController *keys = gtk_event_controller_key_new ();
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
}
