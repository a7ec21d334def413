#include "job-pictures.h"

#include "house.h"
#include "palette.h"
#include "small-picture.h"

#define WIDTH       44
#define HEIGHT      40
#define MOST_KEPT   2000
#define MOST_WANTED 400 /* a list has no more rows at a time */

/* A job's floor, as it was in that revision. */
typedef struct
{
  gint64       revision;
  RcFloorSmall floor;
} Kept;

typedef struct
{
  char    *job;
  GWeakRef picture;
} Wanted;

struct _RcJobPictures
{
  GObject     parent_instance;
  RcStore    *store;  /* borrowed; NULL: stopped */
  GHashTable *kept;   /* job id -> Kept */
  GQueue      wanted; /* of Wanted, the latest last */
  guint       source;
};

struct _RcJobPicture
{
  GtkDrawingArea parent_instance;
  RcJobPictures *pictures;
  char          *job;
};

G_DEFINE_FINAL_TYPE (RcJobPictures, rc_job_pictures, G_TYPE_OBJECT)
G_DEFINE_FINAL_TYPE (RcJobPicture, rc_job_picture, GTK_TYPE_DRAWING_AREA)

static void
kept_free (gpointer data)
{
  rc_floor_small_clear (&((Kept *)data)->floor);
  g_free (data);
}

static void
wanted_free (gpointer data)
{
  Wanted *wanted = data;

  g_weak_ref_clear (&wanted->picture);
  g_free (wanted->job);
  g_free (wanted);
}

/* --- reading them --- */

static void
read_floor (RcJobPictures *self, const char *id)
{
  Kept *kept = g_new0 (Kept, 1);
  g_autoptr (RcJob) job = rc_store_get_revision (self->store, id, &kept->revision, NULL)
                              ? rc_store_read_job (self->store, id, NULL)
                              : NULL;
  const RcMeasure *measure = job ? rc_job_get_measure (job, NULL) : NULL;
  g_autoptr (RcHouse) house = measure ? rc_house_new_rooms (measure, &job->settings.closure, NULL) : NULL;

  rc_floor_small_init (&kept->floor, house);
  if (g_hash_table_size (self->kept) >= MOST_KEPT)
    g_hash_table_remove_all (self->kept);
  g_hash_table_replace (self->kept, g_strdup (id), kept);
}

static gboolean
is_in_view (GtkWidget *picture)
{
  GtkWidget      *view = gtk_widget_get_ancestor (picture, GTK_TYPE_SCROLLED_WINDOW);
  graphene_rect_t bounds, seen;

  if (view == NULL || !gtk_widget_compute_bounds (picture, view, &bounds))
    return TRUE;
  graphene_rect_init (&seen, 0, 0, (float)gtk_widget_get_width (view), (float)gtk_widget_get_height (view));
  return graphene_rect_intersection (&bounds, &seen, NULL);
}

/* The picture that still wants it; NULL: none does. (transfer full) */
static RcJobPicture *
get_picture (Wanted *wanted)
{
  g_autoptr (RcJobPicture) picture = g_weak_ref_get (&wanted->picture);

  return picture != NULL && gtk_widget_get_mapped (GTK_WIDGET (picture)) && g_strcmp0 (picture->job, wanted->job) == 0
             ? g_steal_pointer (&picture)
             : NULL;
}

/* One in view, else the latest; those that nobody wants any more are forgotten. (transfer full) */
static Wanted *
take_next (RcJobPictures *self)
{
  GList *next = NULL;

  for (GList *link = self->wanted.tail, *before; link != NULL; link = before)
    {
      g_autoptr (RcJobPicture) picture = get_picture (link->data);

      before = link->prev;
      if (picture == NULL)
        {
          wanted_free (link->data);
          g_queue_delete_link (&self->wanted, link);
          continue;
        }
      if (next == NULL)
        next = link;
      if (is_in_view (GTK_WIDGET (picture)))
        {
          next = link;
          break;
        }
    }
  if (next == NULL)
    return NULL;
  g_queue_unlink (&self->wanted, next);
  Wanted *wanted = next->data;
  g_list_free (next);
  return wanted;
}

/* One at a time: a key that is pressed meanwhile waits for no more. */
static gboolean
read_next (gpointer data)
{
  RcJobPictures *self = data;
  Wanted        *wanted = take_next (self);

  if (wanted == NULL)
    {
      self->source = 0;
      return G_SOURCE_REMOVE;
    }
  g_autoptr (RcJobPicture) picture = get_picture (wanted);
  read_floor (self, wanted->job);
  if (picture != NULL)
    gtk_widget_queue_draw (GTK_WIDGET (picture));
  wanted_free (wanted);
  return G_SOURCE_CONTINUE;
}

static void
want (RcJobPictures *self, RcJobPicture *picture)
{
  Wanted *wanted = g_new0 (Wanted, 1);

  wanted->job = g_strdup (picture->job);
  g_weak_ref_init (&wanted->picture, picture);
  g_queue_push_tail (&self->wanted, wanted);
  if (g_queue_get_length (&self->wanted) > MOST_WANTED)
    wanted_free (g_queue_pop_head (&self->wanted));
  if (self->source == 0)
    self->source = g_idle_add_full (G_PRIORITY_LOW, read_next, self, NULL);
}

guint
rc_job_pictures_get_n_waiting (RcJobPictures *self)
{
  return g_queue_get_length (&self->wanted);
}

void
rc_job_pictures_stop (RcJobPictures *self)
{
  g_clear_handle_id (&self->source, g_source_remove);
  g_queue_clear_full (&self->wanted, wanted_free);
  self->store = NULL;
}

static void
rc_job_pictures_finalize (GObject *object)
{
  rc_job_pictures_stop (RC_JOB_PICTURES (object));
  g_hash_table_unref (RC_JOB_PICTURES (object)->kept);
  G_OBJECT_CLASS (rc_job_pictures_parent_class)->finalize (object);
}

static void
rc_job_pictures_class_init (RcJobPicturesClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_job_pictures_finalize;
}

static void
rc_job_pictures_init (RcJobPictures *self)
{
  self->kept = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, kept_free);
  g_queue_init (&self->wanted);
}

RcJobPictures *
rc_job_pictures_new (RcStore *store)
{
  RcJobPictures *self = g_object_new (RC_TYPE_JOB_PICTURES, NULL);

  self->store = store;
  return self;
}

/* --- the widget --- */

/* What was known last is shown until it is read anew. */
static void
draw (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  RcJobPicture  *self = RC_JOB_PICTURE (area);
  RcJobPictures *pictures = self->pictures;
  gint64         revision = 0;

  if (pictures == NULL || pictures->store == NULL || self->job == NULL)
    return;
  const Kept *kept = g_hash_table_lookup (pictures->kept, self->job);
  if (kept != NULL)
    rc_small_picture_draw_floor (&kept->floor, rc_palette_for_widget (GTK_WIDGET (area)), width, height, cr);
  if (rc_store_get_revision (pictures->store, self->job, &revision, NULL) && revision != 0
      && (kept == NULL || kept->revision != revision))
    want (pictures, self);
}

enum
{
  PROP_PICTURES = 1,
  PROP_JOB,
};

static void
rc_job_picture_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  RcJobPicture *self = RC_JOB_PICTURE (object);

  if (id == PROP_PICTURES)
    g_set_object (&self->pictures, g_value_get_object (value));
  else
    {
      g_free (self->job);
      self->job = g_value_dup_string (value);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
rc_job_picture_finalize (GObject *object)
{
  g_clear_object (&RC_JOB_PICTURE (object)->pictures);
  g_free (RC_JOB_PICTURE (object)->job);
  G_OBJECT_CLASS (rc_job_picture_parent_class)->finalize (object);
}

static void
rc_job_picture_class_init (RcJobPictureClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags   flags = G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS;

  object_class->set_property = rc_job_picture_set_property;
  object_class->finalize = rc_job_picture_finalize;
  g_object_class_install_property (object_class, PROP_PICTURES,
                                   g_param_spec_object ("pictures", NULL, NULL, RC_TYPE_JOB_PICTURES, flags));
  g_object_class_install_property (object_class, PROP_JOB, g_param_spec_string ("job", NULL, NULL, NULL, flags));
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
rc_job_picture_init (RcJobPicture *self)
{
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self), WIDTH);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self), HEIGHT);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self), draw, NULL, NULL);
}

GtkWidget *
rc_job_picture_new (RcJobPictures *pictures, const char *job)
{
  return g_object_new (RC_TYPE_JOB_PICTURE, "pictures", pictures, "job", job, NULL);
}
