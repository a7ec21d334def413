#include "roll-form.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "cut-proposal.h"
#include "form-field.h"
#include "length-rows.h"
#include "pick.h"
#include "rowcut-error.h"
#include "usual-units.h"

/* Each field is a label with a widget below; a task shows those it needs. */
typedef enum
{
  FIELD_GOODS,
  FIELD_TICKET,
  FIELD_LOT,
  FIELD_LENGTH,
  FIELD_WIDTH,
  FIELD_BALANCE,
  FIELD_PLACE,
  FIELD_NOTES,
  FIELD_DAMAGE,
  FIELD_PIECES,
  FIELD_REMNANTS,
  N_FIELDS
} Field;

struct _RcRollForm
{
  GtkBox parent_instance;

  GtkLabel    *title_label;
  GtkGrid     *grid;
  GtkButton   *do_button;
  GtkWidget   *boxes[N_FIELDS], *fields[N_FIELDS];
  GtkLabel    *length_label;
  RcStore     *store; /* borrowed */
  RcRollDoing  doing;
  RcStockLine *line;   /* nullable */
  char        *job_id; /* nullable */
};

G_DEFINE_FINAL_TYPE (RcRollForm, rc_roll_form, GTK_TYPE_BOX)

enum
{
  DONE,
  REFUSED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* --- reading the fields --- */

static const char *
get_text (RcRollForm *self, Field field)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->fields[field]));

  return *text != '\0' ? text : NULL;
}

/* A field left blank is `blank`; below 0: it must be written. */
static gboolean
read_length (RcRollForm *self, Field field, RcLength blank, RcLength *length, GError **error)
{
  RcLengthEntry *entry = RC_LENGTH_ENTRY (self->fields[field]);
  const char    *fault = rc_length_entry_get_fault (entry);
  gboolean       is_blank = get_text (self, field) == NULL;

  *length = is_blank ? blank : rc_length_entry_get_value (entry);
  if (!is_blank && fault == NULL)
    return TRUE;
  if (is_blank && blank >= 0)
    return TRUE;
  if (is_blank)
    fault = _ ("Write a length first.");
  g_set_error_literal (error, RC_ERROR, RC_ERROR_PARSE, fault);
  gtk_widget_grab_focus (GTK_WIDGET (entry));
  return FALSE;
}

static gboolean
read_damage (RcRollForm *self, GArray *flaws, GError **error)
{
  RcLengthRows *rows = RC_LENGTH_ROWS (self->fields[FIELD_DAMAGE]);

  for (guint i = 0; i < rc_length_rows_get_n (rows); i++)
    {
      RcFlaw flaw;

      if (!rc_length_rows_read (rows, i, NULL, &flaw.from, &flaw.to, error))
        return FALSE;
      if (flaw.to > 0)
        g_array_append_val (flaws, flaw);
    }
  return TRUE;
}

static gboolean
read_cuts (RcRollForm *self, GPtrArray *pieces, GPtrArray *remnants, GError **error)
{
  RcLengthRows *lists[]
      = { RC_LENGTH_ROWS (self->fields[FIELD_PIECES]), RC_LENGTH_ROWS (self->fields[FIELD_REMNANTS]) };

  for (guint list = 0; list < G_N_ELEMENTS (lists); list++)
    for (guint i = 0; i < rc_length_rows_get_n (lists[list]); i++)
      {
        const char *number;
        RcLength    width, length;

        if (!rc_length_rows_read (lists[list], i, &number, &width, &length, error))
          return FALSE;
        if (width == 0 && length == 0)
          continue;
        if (list == 0)
          {
            g_ptr_array_add (pieces, rc_cut_piece_new (*number ? number : NULL, width, length));
            continue;
          }
        RcRoll *remnant = rc_roll_new (NULL, NULL, length);
        remnant->width = width;
        g_ptr_array_add (remnants, remnant);
      }
  return TRUE;
}

/* --- doing it: each says what was done (transfer full), NULL when it was refused --- */

static char *
receive (RcRollForm *self, const char *now, GError **error)
{
  g_autoptr (RcRoll) roll = rc_roll_new (get_text (self, FIELD_TICKET),
                                         rc_pick_get_selected (GTK_DROP_DOWN (self->fields[FIELD_GOODS])), 0);
  g_autofree char *id = NULL;

  if (!read_length (self, FIELD_LENGTH, -1, &roll->length, error)
      || !read_length (self, FIELD_WIDTH, 0, &roll->width, error) || !read_damage (self, roll->flaws, error))
    return NULL;
  roll->lot = g_strdup (get_text (self, FIELD_LOT));
  roll->place = g_strdup (get_text (self, FIELD_PLACE));
  id = rc_store_receive_roll (self->store, roll, get_text (self, FIELD_NOTES), now, error);
  return id != NULL ? g_strdup_printf (_ ("Roll %s is in stock."), id) : NULL;
}

static char *
correct (RcRollForm *self, const char *now, GError **error)
{
  g_autoptr (RcRoll) roll = rc_roll_copy (self->line->roll);

  g_array_set_size (roll->flaws, 0);
  if (!read_length (self, FIELD_LENGTH, -1, &roll->length, error) || !read_damage (self, roll->flaws, error))
    return NULL;
  g_free (roll->place);
  roll->place = g_strdup (get_text (self, FIELD_PLACE));
  return rc_store_amend_roll (self->store, roll, get_text (self, FIELD_NOTES), now, error)
             ? g_strdup_printf (_ ("Roll %s is corrected."), roll->id)
             : NULL;
}

static char *
reserve (RcRollForm *self, const char *now, GError **error)
{
  RcLength length;

  if (!read_length (self, FIELD_LENGTH, -1, &length, error)
      || !rc_store_reserve_roll (self->store, self->line->roll->id, self->job_id, length, now, error))
    return NULL;
  return length == 0 ? g_strdup_printf (_ ("Roll %s is kept for job %s no more."), self->line->roll->id, self->job_id)
                     : g_strdup_printf (_ ("%s of roll %s is kept for job %s."), get_text (self, FIELD_LENGTH),
                                        self->line->roll->id, self->job_id);
}

static char *
cut (RcRollForm *self, const char *now, GError **error)
{
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_piece_free);
  g_autoptr (GPtrArray) remnants = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  GString *told;
  RcLength length, balance = -1;

  if (!read_length (self, FIELD_LENGTH, -1, &length, error) || !read_cuts (self, pieces, remnants, error))
    return NULL;
  if (get_text (self, FIELD_BALANCE) != NULL && !read_length (self, FIELD_BALANCE, -1, &balance, error))
    return NULL;
  if (!rc_store_cut_roll (self->store, self->line->roll->id, self->job_id, length, pieces, remnants, balance, now,
                          error))
    return NULL;
  told = g_string_new (NULL);
  g_string_printf (told, _ ("%s is cut off roll %s for job %s."), get_text (self, FIELD_LENGTH), self->line->roll->id,
                   self->job_id);
  for (guint i = 0; i < remnants->len; i++)
    {
      g_string_append_c (told, ' ');
      g_string_append_printf (told, _ ("The remnant has ticket %s."),
                              ((const RcRoll *)g_ptr_array_index (remnants, i))->id);
    }
  return g_string_free (told, FALSE);
}

gboolean
rc_roll_form_do (RcRollForm *self)
{
  static char *(*const DOINGS[]) (RcRollForm *, const char *, GError **)
      = { [RC_ROLL_RECEIVE] = receive, [RC_ROLL_CORRECT] = correct, [RC_ROLL_RESERVE] = reserve, [RC_ROLL_CUT] = cut };
  g_autoptr (GError) error = NULL;
  g_autofree char *now = rc_clock_dup_now ();
  g_autofree char *told = DOINGS[self->doing](self, now, &error);

  if (told != NULL)
    g_signal_emit (self, signals[DONE], 0, told);
  else
    g_signal_emit (self, signals[REFUSED], 0, error->message);
  return told != NULL;
}

/* --- opening --- */

static void
set_length (RcRollForm *self, Field field, RcLength value, const RcJob *job)
{
  RcLengthEntry *entry = RC_LENGTH_ENTRY (self->fields[field]);

  rc_length_entry_clear (entry);
  rc_length_entry_set_units (entry, rc_usual_units_get_bare (job), rc_usual_units_get_style (job));
  if (value >= 0)
    rc_length_entry_set_value (entry, value);
}

static void
show_fields (RcRollForm *self, const RcRollTask *task)
{
  static const guint SHOWN[] = {
    [RC_ROLL_RECEIVE] = 1 << FIELD_GOODS | 1 << FIELD_TICKET | 1 << FIELD_LOT | 1 << FIELD_LENGTH | 1 << FIELD_WIDTH
                        | 1 << FIELD_PLACE | 1 << FIELD_NOTES | 1 << FIELD_DAMAGE,
    [RC_ROLL_CORRECT] = 1 << FIELD_LENGTH | 1 << FIELD_PLACE | 1 << FIELD_NOTES | 1 << FIELD_DAMAGE,
    [RC_ROLL_RESERVE] = 1 << FIELD_LENGTH,
    [RC_ROLL_CUT] = 1 << FIELD_LENGTH | 1 << FIELD_BALANCE | 1 << FIELD_PIECES | 1 << FIELD_REMNANTS,
  };
  const char *const LABELS[] = { [RC_ROLL_RECEIVE] = _ ("Length"),
                                 [RC_ROLL_CORRECT] = _ ("Length measured"),
                                 [RC_ROLL_RESERVE] = _ ("Length kept in all"),
                                 [RC_ROLL_CUT] = _ ("Length cut off") };
  const char *const DOINGS[] = { [RC_ROLL_RECEIVE] = _ ("_Take into stock"),
                                 [RC_ROLL_CORRECT] = _ ("_Write down"),
                                 [RC_ROLL_RESERVE] = _ ("_Keep it"),
                                 [RC_ROLL_CUT] = _ ("It _is cut") };

  for (Field field = 0; field < N_FIELDS; field++)
    gtk_widget_set_visible (self->boxes[field], (SHOWN[task->doing] & 1U << field) != 0);
  gtk_label_set_text (self->length_label, LABELS[task->doing]);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->fields[FIELD_LENGTH]), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  LABELS[task->doing], -1);
  gtk_button_set_label (self->do_button, DOINGS[task->doing]);
}

static char *
dup_title (const RcRollTask *task)
{
  const char *roll = task->line != NULL ? task->line->roll->id : "", *job = task->job != NULL ? task->job->id : "";

  switch (task->doing)
    {
    case RC_ROLL_RECEIVE:
      return g_strdup (_ ("A roll comes in"));
    case RC_ROLL_CORRECT:
      return g_strdup_printf (_ ("Roll %s as it lies there"), roll);
    case RC_ROLL_RESERVE:
      return g_strdup_printf (_ ("Roll %s for job %s; 0 gives it free"), roll, job);
    case RC_ROLL_CUT:
      return g_strdup_printf (_ ("Roll %s cut for job %s"), roll, job);
    }
  g_return_val_if_reached (NULL);
}

static void
fill_goods (RcRollForm *self, const RcRollTask *task)
{
  g_auto (RcPick) pick = { 0 };

  rc_pick_init (&pick);
  rc_pick_add_goods (&pick, task->job, task->book, RC_GOODS_CARPET);
  rc_pick_add_goods (&pick, task->job, task->book, RC_GOODS_CUSHION);
  if (pick.ids->len > 0)
    rc_pick_show (&pick, GTK_DROP_DOWN (self->fields[FIELD_GOODS]),
                  task->line != NULL ? task->line->roll->goods_id : g_ptr_array_index (pick.ids, 0));
}

static void
fill_damage (RcRollForm *self, const RcRollTask *task)
{
  RcLengthRows *rows = RC_LENGTH_ROWS (self->fields[FIELD_DAMAGE]);

  rc_length_rows_clear (rows, rc_usual_units_get_bare (task->job), rc_usual_units_get_style (task->job));
  for (guint i = 0; task->doing == RC_ROLL_CORRECT && i < task->line->roll->flaws->len; i++)
    {
      const RcFlaw *flaw = &g_array_index (task->line->roll->flaws, RcFlaw, i);
      rc_length_rows_add (rows, NULL, flaw->from, flaw->to);
    }
}

static void
fill_cuts (RcRollForm *self, const RcRollTask *task, const RcCutProposal *proposal)
{
  RcLengthRows *pieces = RC_LENGTH_ROWS (self->fields[FIELD_PIECES]);
  RcLengthRows *remnants = RC_LENGTH_ROWS (self->fields[FIELD_REMNANTS]);

  rc_length_rows_clear (pieces, rc_usual_units_get_bare (task->job), rc_usual_units_get_style (task->job));
  rc_length_rows_clear (remnants, rc_usual_units_get_bare (task->job), rc_usual_units_get_style (task->job));
  for (guint i = 0; i < proposal->pieces->len; i++)
    {
      const RcCutPiece *piece = g_ptr_array_index (proposal->pieces, i);
      rc_length_rows_add (pieces, piece->piece, piece->width, piece->length);
    }
  for (guint i = 0; i < proposal->remnants->len; i++)
    {
      const RcRoll *remnant = g_ptr_array_index (proposal->remnants, i);
      rc_length_rows_add (remnants, NULL, remnant->width, remnant->length);
    }
}

/* The length that the plan asks for, else what there is already. */
static void
fill_lengths (RcRollForm *self, const RcRollTask *task)
{
  g_autoptr (RcCutProposal) proposal = task->doing == RC_ROLL_RESERVE || task->doing == RC_ROLL_CUT
                                           ? rc_cut_proposal_new (task->plan, task->line->roll)
                                           : NULL;
  RcLength length = -1;

  if (task->doing == RC_ROLL_CORRECT)
    length = task->line->roll->length;
  else if (proposal != NULL)
    length = proposal->length > 0 ? proposal->length : task->line->kept_here > 0 ? task->line->kept_here : -1;
  set_length (self, FIELD_LENGTH, length, task->job);
  set_length (self, FIELD_WIDTH, -1, task->job);
  set_length (self, FIELD_BALANCE, -1, task->job);
  if (proposal != NULL && task->doing == RC_ROLL_CUT)
    fill_cuts (self, task, proposal);
}

void
rc_roll_form_open (RcRollForm *self, RcStore *store, const RcRollTask *task)
{
  const RcRoll    *roll = task->doing == RC_ROLL_CORRECT ? task->line->roll : NULL;
  g_autofree char *title = dup_title (task);

  self->store = store;
  self->doing = task->doing;
  g_clear_pointer (&self->line, rc_stock_line_free);
  self->line = task->line != NULL ? rc_stock_line_copy (task->line) : NULL;
  g_free (self->job_id);
  self->job_id = g_strdup (task->job != NULL ? task->job->id : NULL);
  gtk_label_set_text (self->title_label, title);
  show_fields (self, task);
  fill_goods (self, task);
  fill_damage (self, task);
  fill_lengths (self, task);
  gtk_editable_set_text (GTK_EDITABLE (self->fields[FIELD_TICKET]), "");
  gtk_editable_set_text (GTK_EDITABLE (self->fields[FIELD_LOT]), "");
  gtk_editable_set_text (GTK_EDITABLE (self->fields[FIELD_NOTES]), "");
  gtk_editable_set_text (GTK_EDITABLE (self->fields[FIELD_PLACE]), roll != NULL && roll->place ? roll->place : "");
  gtk_widget_grab_focus (self->fields[task->doing == RC_ROLL_RECEIVE ? FIELD_GOODS : FIELD_LENGTH]);
}

/* --- made --- */

static void
add_field (RcRollForm *self, Field field, const char *label, GtkWidget *widget, int column, int row, int height)
{
  GtkWidget *box = rc_form_field_new (label, widget, field == FIELD_LENGTH ? &self->length_label : NULL);

  gtk_grid_attach (self->grid, box, column, row, 1, height);
  if (GTK_IS_ENTRY (widget))
    g_signal_connect_swapped (widget, "activate", G_CALLBACK (rc_roll_form_do), self);
  self->boxes[field] = box;
  self->fields[field] = widget;
}

static GtkWidget *
new_entry (const char *placeholder)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), placeholder);
  return entry;
}

static GtkWidget *
new_length (const char *placeholder)
{
  GtkWidget *entry = rc_length_entry_new ();

  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), placeholder);
  return entry;
}

static GtkWidget *
new_rows (const char *name, const char *add, const char *between, const char *first, const char *second,
          gboolean has_number)
{
  const RcLengthRowsWords words = { name, add, between, { first, second }, has_number };

  return rc_length_rows_new (&words);
}

static void
rc_roll_form_init (RcRollForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_field (self, FIELD_GOODS, _ ("Goods"), gtk_drop_down_new (NULL, NULL), 0, 0, 1);
  add_field (self, FIELD_TICKET, _ ("Ticket"), new_entry (_ ("the next free one")), 0, 1, 1);
  add_field (self, FIELD_LENGTH, _ ("Length"), new_length (NULL), 1, 0, 1);
  add_field (self, FIELD_WIDTH, _ ("Usable width"), new_length (_ ("as the goods")), 2, 0, 1);
  add_field (self, FIELD_BALANCE, _ ("Balance measured"), new_length (_ ("as computed")), 1, 1, 1);
  add_field (self, FIELD_LOT, _ ("Dye lot"), new_entry (NULL), 1, 1, 1);
  add_field (self, FIELD_PLACE, _ ("Place"), new_entry (NULL), 2, 1, 1);
  add_field (self, FIELD_NOTES, _ ("Notes"), new_entry (NULL), 3, 0, 1);
  add_field (self, FIELD_DAMAGE, _ ("Damaged lengths"),
             new_rows (_ ("Damage"), _ ("Add _damage"), "–", _ ("from"), _ ("to"), FALSE), 4, 0, 2);
  add_field (self, FIELD_PIECES, _ ("Pieces for the job"),
             new_rows (_ ("Piece"), _ ("Add a _piece"), "×", _ ("width"), _ ("length"), TRUE), 4, 0, 2);
  add_field (self, FIELD_REMNANTS, _ ("Remnants to be kept"),
             new_rows (_ ("Remnant"), _ ("Add a re_mnant"), "×", _ ("width"), _ ("length"), FALSE), 5, 0, 2);
}

static void
rc_roll_form_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_ROLL_FORM);
  G_OBJECT_CLASS (rc_roll_form_parent_class)->dispose (object);
}

static void
rc_roll_form_finalize (GObject *object)
{
  RcRollForm *self = RC_ROLL_FORM (object);

  g_clear_pointer (&self->line, rc_stock_line_free);
  g_free (self->job_id);
  G_OBJECT_CLASS (rc_roll_form_parent_class)->finalize (object);
}

static void
rc_roll_form_class_init (RcRollFormClass *klass)
{
  static const char *const NAMES[N_SIGNALS] = { "done", "refused" };
  GtkWidgetClass          *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_roll_form_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_roll_form_finalize;
  for (guint i = 0; i < N_SIGNALS; i++)
    signals[i] = g_signal_new (NAMES[i], RC_TYPE_ROLL_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                               G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/roll-form.ui");
  gtk_widget_class_bind_template_child (widget_class, RcRollForm, title_label);
  gtk_widget_class_bind_template_child (widget_class, RcRollForm, grid);
  gtk_widget_class_bind_template_child (widget_class, RcRollForm, do_button);
  rc_form_class_add_leave (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, rc_roll_form_do);
}
