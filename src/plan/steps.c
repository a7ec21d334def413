#include "steps.h"

typedef struct
{
  guint      n_steps;
  RcStepFunc take;
  gpointer   user_data;
  GError   **errors; /* of each step */
  int        next;   /* the first that nobody has begun */
} Steps;

static gpointer
take_next_ones (gpointer data)
{
  Steps *steps = data;
  for (int i; (i = g_atomic_int_add (&steps->next, 1)) < (int)steps->n_steps;)
    steps->take ((guint)i, steps->user_data, &steps->errors[i]);
  return NULL;
}

guint
rc_steps_count_at_once (guint n_steps)
{
  return MIN (g_get_num_processors (), n_steps);
}

gboolean
rc_steps_take (guint n_steps, RcStepFunc take, gpointer user_data, GError **error)
{
  g_autofree GError **errors = g_new0 (GError *, n_steps + 1);
  g_autoptr (GPtrArray) threads = g_ptr_array_new ();
  Steps    steps = { n_steps, take, user_data, errors, 0 };
  gboolean fine = TRUE;
  for (guint i = 1; i < rc_steps_count_at_once (n_steps); i++)
    g_ptr_array_add (threads, g_thread_new ("steps", take_next_ones, &steps));
  take_next_ones (&steps);
  for (guint i = 0; i < threads->len; i++)
    g_thread_join (g_ptr_array_index (threads, i));
  for (guint i = 0; i < n_steps; i++)
    {
      if (errors[i] != NULL && fine)
        g_propagate_error (error, g_steal_pointer (&errors[i]));
      else if (errors[i] == NULL)
        continue;
      g_clear_error (&errors[i]);
      fine = FALSE;
    }
  return fine;
}
