#include "job-model.h"

#include <glib/gi18n-lib.h>

struct _RcJobRow
{
  GObject        parent_instance;
  char          *id, *title, *detail, *state;
  double         step;
  RcJobPictures *pictures;
};

G_DEFINE_FINAL_TYPE (RcJobRow, rc_job_row, G_TYPE_OBJECT)

enum
{
  PROP_TITLE = 1,
  PROP_DETAIL,
  PROP_STATE,
  PROP_STEP,
  PROP_PICTURES,
  PROP_ID,
};

static void
rc_job_row_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  RcJobRow *self = RC_JOB_ROW (object);

  if (id == PROP_STEP)
    g_value_set_double (value, self->step);
  else if (id == PROP_PICTURES)
    g_value_set_object (value, self->pictures);
  else
    g_value_set_string (value, id == PROP_TITLE    ? self->title
                               : id == PROP_DETAIL ? self->detail
                               : id == PROP_STATE  ? self->state
                                                   : self->id);
}

static void
rc_job_row_finalize (GObject *object)
{
  RcJobRow *self = RC_JOB_ROW (object);

  g_clear_object (&self->pictures);
  g_free (self->id);
  g_free (self->title);
  g_free (self->detail);
  g_free (self->state);
  G_OBJECT_CLASS (rc_job_row_parent_class)->finalize (object);
}

static void
rc_job_row_class_init (RcJobRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags   flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = rc_job_row_get_property;
  object_class->finalize = rc_job_row_finalize;
  g_object_class_install_property (object_class, PROP_TITLE, g_param_spec_string ("title", NULL, NULL, "", flags));
  g_object_class_install_property (object_class, PROP_DETAIL, g_param_spec_string ("detail", NULL, NULL, "", flags));
  g_object_class_install_property (object_class, PROP_STATE, g_param_spec_string ("state", NULL, NULL, "", flags));
  g_object_class_install_property (object_class, PROP_STEP,
                                   g_param_spec_double ("step", NULL, NULL, 0, RC_N_JOB_STATES - 1, 0, flags));
  g_object_class_install_property (object_class, PROP_PICTURES,
                                   g_param_spec_object ("pictures", NULL, NULL, RC_TYPE_JOB_PICTURES, flags));
  g_object_class_install_property (object_class, PROP_ID, g_param_spec_string ("id", NULL, NULL, NULL, flags));
}

static void
rc_job_row_init (RcJobRow *self)
{
}

static void
append_part (GString *text, const char *part)
{
  if (part && *part)
    g_string_append_printf (text, "%s%s", text->len ? ", " : "", part);
}

/* "Accepted 2026-03-02": looked up for the rows that are seen only. */
static void
take_state (RcJobRow *self, RcStore *store)
{
  g_autofree char *reached = NULL;
  RcJobState       state = RC_JOB_ENQUIRY;

  rc_store_find_state (store, self->id, &state, &reached, NULL);
  self->step = state;
  self->state = g_strdup_printf ("%s %s", rc_job_state_get_label (state), reached != NULL ? reached : "");
}

static RcJobRow *
job_row_new (RcStore *store, RcJobPictures *pictures, const RcJobSummary *summary)
{
  RcJobRow *self = g_object_new (RC_TYPE_JOB_ROW, NULL);
  GString  *detail = g_string_new (NULL);

  append_part (detail, summary->customer);
  if (summary->address)
    {
      g_autofree char *address = g_strdelimit (g_strdup (summary->address), "\n", ' ');
      append_part (detail, address);
    }
  append_part (detail, summary->number);
  append_part (detail, summary->date);
  self->id = g_strdup (summary->id);
  self->pictures = g_object_ref (pictures);
  self->title = g_strdup (summary->title && *summary->title ? summary->title : _ ("without a title"));
  self->detail = g_string_free (detail, FALSE);
  take_state (self, store);
  return self;
}

struct _RcJobModel
{
  GObject        parent_instance;
  RcStore       *store; /* borrowed */
  RcJobPictures *pictures;
  GPtrArray     *summaries;
};

static GType
rc_job_model_get_item_type (GListModel *model)
{
  return RC_TYPE_JOB_ROW;
}

static guint
rc_job_model_get_n_items (GListModel *model)
{
  return RC_JOB_MODEL (model)->summaries->len;
}

static gpointer
rc_job_model_get_item (GListModel *model, guint position)
{
  RcJobModel *self = RC_JOB_MODEL (model);
  return position < self->summaries->len
             ? job_row_new (self->store, self->pictures, g_ptr_array_index (self->summaries, position))
             : NULL;
}

static void
rc_job_model_list_init (GListModelInterface *iface)
{
  iface->get_item_type = rc_job_model_get_item_type;
  iface->get_n_items = rc_job_model_get_n_items;
  iface->get_item = rc_job_model_get_item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (RcJobModel, rc_job_model, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, rc_job_model_list_init))

static void
rc_job_model_finalize (GObject *object)
{
  g_ptr_array_unref (RC_JOB_MODEL (object)->summaries);
  g_clear_object (&RC_JOB_MODEL (object)->pictures);
  G_OBJECT_CLASS (rc_job_model_parent_class)->finalize (object);
}

static void
rc_job_model_class_init (RcJobModelClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_job_model_finalize;
}

static void
rc_job_model_init (RcJobModel *self)
{
}

RcJobModel *
rc_job_model_new (RcStore *store, RcJobPictures *pictures, GPtrArray *summaries)
{
  RcJobModel *self = g_object_new (RC_TYPE_JOB_MODEL, NULL);

  self->store = store;
  self->pictures = g_object_ref (pictures);
  self->summaries = summaries;
  return self;
}

const char *
rc_job_model_get_id (RcJobModel *self, guint position)
{
  return position < self->summaries->len ? ((const RcJobSummary *)g_ptr_array_index (self->summaries, position))->id
                                         : NULL;
}
