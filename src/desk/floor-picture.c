#include "floor-picture.h"

#include <glib/gi18n-lib.h>

#include "picture-decode.h"
#include "picture-edit.h"
#include "viewport.h"

struct _RcFloorPicture
{
  gatomicrefcount refs;     /* the view's, and one for each file being read */
  GtkWidget      *floor;    /* NULL once the view is gone */
  RcDocument     *document; /* borrowed; NULL: none open */
  GHashTable     *images;   /* digest and page -> cairo_surface_t; NULL: being read, or not to be had */
};

static void
destroy_image (gpointer image)
{
  if (image)
    cairo_surface_destroy (image);
}

RcFloorPicture *
rc_floor_picture_new (GtkWidget *floor)
{
  RcFloorPicture *self = g_new0 (RcFloorPicture, 1);

  g_atomic_ref_count_init (&self->refs);
  self->floor = floor;
  self->images = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, destroy_image);
  return self;
}

static void
unref (RcFloorPicture *self)
{
  if (!g_atomic_ref_count_dec (&self->refs))
    return;
  g_hash_table_unref (self->images);
  g_free (self);
}

void
rc_floor_picture_free (RcFloorPicture *self)
{
  self->floor = NULL;
  self->document = NULL;
  unref (self);
}

static void
tell (RcFloorPicture *self, const GError *error)
{
  if (self->floor && error)
    gtk_widget_activate_action (self->floor, "win.tell", "s", error->message);
}

static const RcPlanPicture *
find (RcFloorPicture *self, int storey)
{
  return self->document ? rc_job_find_picture (rc_document_get_job (self->document), storey) : NULL;
}

gboolean
rc_floor_picture_has (RcFloorPicture *self, int storey)
{
  return find (self, storey) != NULL;
}

static char *
dup_key (const RcPlanPicture *picture)
{
  return g_strdup_printf ("%s %u", picture->digest, picture->page);
}

/* Reading. */

typedef struct
{
  RcFloorPicture *self;
  GBytes         *bytes;
  RcPlanPicture  *added;    /* to be kept once it has been read; NULL: it is kept already */
  RcDocument     *document; /* borrowed, to be compared only */
  char           *key;
  RcBox           box;
} Reading;

static void
reading_free (Reading *reading)
{
  unref (reading->self);
  g_bytes_unref (reading->bytes);
  g_clear_pointer (&reading->added, rc_plan_picture_free);
  g_free (reading->key);
  g_free (reading);
}

/* Saves a job with another picture as a step. */
static gboolean
commit (RcFloorPicture *self, RcJob *job, const char *step)
{
  g_autoptr (GError) error = NULL;
  gboolean done = rc_document_commit_picture (self->document, job, step, &error);

  tell (self, error);
  return done;
}

/* The picture could be read: it becomes the storey's. */
static void
take_added (Reading *reading, cairo_surface_t *image)
{
  RcFloorPicture *self = reading->self;
  g_autoptr (GError) error = NULL;

  if (self->document == NULL || self->document != reading->document)
    return;
  reading->added->digest = rc_store_add_file (rc_document_get_store (self->document), reading->bytes, &error);
  if (reading->added->digest == NULL)
    {
      tell (self, error);
      return;
    }
  rc_picture_edit_fit (reading->added, (guint)cairo_image_surface_get_width (image), reading->box);
  g_autofree char *key = dup_key (reading->added);
  g_hash_table_insert (self->images, g_steal_pointer (&key), cairo_surface_reference (image));
  g_autoptr (RcJob) job = rc_document_dup_job (self->document);
  rc_job_take_picture (job, g_steal_pointer (&reading->added));
  commit (self, g_steal_pointer (&job), _ ("Put a plan picture under the floor"));
}

static void
on_read (GObject *source, GAsyncResult *result, gpointer data)
{
  Reading        *reading = data;
  RcFloorPicture *self = reading->self;
  g_autoptr (GError) error = NULL;
  cairo_surface_t *image = rc_picture_read_finish (result, &error);

  if (image == NULL)
    tell (self, error);
  else
    {
      if (reading->added)
        take_added (reading, image);
      else if (reading->key)
        g_hash_table_insert (self->images, g_strdup (reading->key), cairo_surface_reference (image));
      cairo_surface_destroy (image);
      if (self->floor)
        gtk_widget_queue_draw (self->floor);
    }
  reading_free (reading);
}

static void
read_picture (RcFloorPicture *self, GBytes *bytes, RcPlanPicture *added, const char *key, guint page, RcBox box)
{
  Reading *reading = g_new0 (Reading, 1);

  g_atomic_ref_count_inc (&self->refs);
  reading->self = self;
  reading->bytes = g_bytes_ref (bytes);
  reading->added = added;
  reading->key = g_strdup (key);
  reading->document = self->document;
  reading->box = box;
  rc_picture_read_async (bytes, page, on_read, reading);
}

void
rc_floor_picture_follow (RcFloorPicture *self)
{
  const GPtrArray *pictures = self->document ? rc_document_get_job (self->document)->pictures : NULL;

  for (guint i = 0; pictures && i < pictures->len; i++)
    {
      const RcPlanPicture *picture = g_ptr_array_index (pictures, i);
      g_autofree char     *key = dup_key (picture);
      if (picture->digest == NULL || g_hash_table_contains (self->images, key))
        continue;
      g_hash_table_insert (self->images, g_strdup (key), NULL);
      g_autoptr (GBytes) bytes = rc_store_load_file (rc_document_get_store (self->document), picture->digest, NULL);
      if (bytes)
        read_picture (self, bytes, NULL, key, picture->page, (RcBox){ 0 });
    }
}

void
rc_floor_picture_set_document (RcFloorPicture *self, RcDocument *document)
{
  self->document = document;
  rc_floor_picture_follow (self);
}

/* Changes. */

void
rc_floor_picture_add (RcFloorPicture *self, int storey, GFile *file, RcBox box)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GFileInfo) info
      = g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_SIZE, G_FILE_QUERY_INFO_NONE, NULL, &error);

  if (info && g_file_info_get_size (info) > RC_PICTURE_MAX_BYTES)
    g_set_error (&error, G_IO_ERROR, G_IO_ERROR_FAILED, "%s", _ ("The picture has more than 32 MiB: save it smaller."));
  g_autoptr (GBytes) bytes = error ? NULL : g_file_load_bytes (file, NULL, NULL, &error);
  if (bytes == NULL)
    {
      tell (self, error);
      return;
    }
  RcPlanPicture *added = g_new0 (RcPlanPicture, 1);
  added->storey = storey;
  added->name = g_file_get_basename (file);
  added->page = 1;
  added->strength_percent = 100;
  read_picture (self, bytes, added, NULL, 1, box);
}

void
rc_floor_picture_turn_page (RcFloorPicture *self, int storey, RcBox box)
{
  const RcPlanPicture *picture = find (self, storey);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes
      = picture ? rc_store_load_file (rc_document_get_store (self->document), picture->digest, &error) : NULL;

  if (bytes)
    {
      RcPlanPicture *added = g_new0 (RcPlanPicture, 1);
      added->storey = storey;
      added->name = g_strdup (picture->name);
      added->page = picture->page + 1;
      added->strength_percent = 100;
      read_picture (self, bytes, added, NULL, added->page, box);
    }
  tell (self, error);
}

/* A copy of the job and in it the storey's picture, to be changed; NULL when it has none. (transfer full) */
static RcJob *
dup_job (RcFloorPicture *self, int storey, RcPlanPicture **picture)
{
  if (find (self, storey) == NULL)
    return NULL;
  RcJob *job = rc_document_dup_job (self->document);
  *picture = rc_job_find_picture (job, storey);
  return job;
}

void
rc_floor_picture_remove (RcFloorPicture *self, int storey)
{
  RcPlanPicture *picture = NULL;
  g_autoptr (RcJob) job = dup_job (self, storey, &picture);

  if (job == NULL)
    return;
  g_ptr_array_remove (job->pictures, picture);
  commit (self, g_steal_pointer (&job), _ ("Take the plan picture away"));
}

void
rc_floor_picture_lighten (RcFloorPicture *self, int storey)
{
  RcPlanPicture *picture = NULL;
  g_autoptr (RcJob) job = dup_job (self, storey, &picture);

  if (job == NULL)
    return;
  rc_picture_edit_lighten (picture);
  const char *step = picture->strength_percent == 0 ? _ ("Hide the plan picture") : _ ("Plan picture lighter");
  commit (self, g_steal_pointer (&job), step);
}

void
rc_floor_picture_turn (RcFloorPicture *self, int storey, RcPoint about, gint64 millidegrees)
{
  RcPlanPicture *picture = NULL;
  g_autoptr (RcJob) job = dup_job (self, storey, &picture);

  if (job == NULL)
    return;
  rc_picture_edit_turn (picture, about, millidegrees);
  commit (self, g_steal_pointer (&job), _ ("Turn the plan picture"));
}

void
rc_floor_picture_change (RcFloorPicture *self, int storey, const RcPictureChange *change)
{
  RcPlanPicture *picture = NULL;
  g_autoptr (RcJob) job = dup_job (self, storey, &picture);

  if (job == NULL)
    return;
  if (change->kind == RC_PICTURE_TURN)
    rc_picture_edit_turn (picture, change->from, change->millidegrees);
  else if (change->kind == RC_PICTURE_SCALE)
    rc_picture_edit_scale (picture, change->from, change->to, change->length);
  else
    rc_picture_edit_move (picture, (RcPoint){ change->to.x - change->from.x, change->to.y - change->from.y });
  commit (self, g_steal_pointer (&job),
          change->kind == RC_PICTURE_SCALE  ? _ ("Scale of the plan picture")
          : change->kind == RC_PICTURE_TURN ? _ ("Turn the plan picture")
                                            : _ ("Move the plan picture"));
}

/* Dark lines on white paper darken what is drawn; on a dark desk the picture is turned light on dark. */
void
rc_floor_picture_draw (RcFloorPicture *self, int storey, gboolean is_dark, const RcView *view, cairo_t *cr)
{
  const RcPlanPicture *picture = find (self, storey);
  g_autofree char     *key = picture ? dup_key (picture) : NULL;
  cairo_surface_t     *image = key ? g_hash_table_lookup (self->images, key) : NULL;
  double               x = 0, y = 0;

  if (image == NULL || picture->strength_percent == 0)
    return;
  double scale = view->scale * (double)picture->ticks_per_1000px / 1000;
  rc_viewport_from_house (*view, picture->at, &x, &y);
  cairo_save (cr);
  cairo_push_group (cr);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_translate (cr, x, y);
  cairo_rotate (cr, -(double)picture->turn_millidegrees / 1000 * G_PI / 180);
  cairo_scale (cr, scale, scale);
  cairo_set_source_surface (cr, image, 0, 0);
  cairo_paint (cr);
  if (is_dark)
    {
      cairo_identity_matrix (cr);
      cairo_set_operator (cr, CAIRO_OPERATOR_DIFFERENCE);
      cairo_set_source_rgb (cr, 1, 1, 1);
      cairo_paint (cr);
    }
  cairo_pop_group_to_source (cr);
  cairo_set_operator (cr, is_dark ? CAIRO_OPERATOR_SCREEN : CAIRO_OPERATOR_MULTIPLY);
  cairo_paint_with_alpha (cr, picture->strength_percent / 100.0);
  cairo_restore (cr);
}
