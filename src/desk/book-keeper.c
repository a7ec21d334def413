#include "book-keeper.h"

#include "rowcut-error.h"

#define MOST_STEPS 100

/* A change, with the book on its other side: before what can be undone, after what can be done again. */
typedef struct
{
  RcPriceBook *book;
  char        *doing;
} Step;

struct _RcBookKeeper
{
  GObject parent_instance;

  RcStore     *store;
  RcPriceBook *book;         /* nullable */
  GQueue       undone, done; /* of Step, the last at the head */
};

G_DEFINE_FINAL_TYPE (RcBookKeeper, rc_book_keeper, G_TYPE_OBJECT)

static guint changed_signal;

static void
step_free (Step *step)
{
  rc_price_book_free (step->book);
  g_free (step->doing);
  g_free (step);
}

static void
forget (GQueue *steps)
{
  g_queue_clear_full (steps, (GDestroyNotify)step_free);
}

const RcPriceBook *
rc_book_keeper_get_book (RcBookKeeper *self, GError **error)
{
  if (self->book == NULL)
    self->book = rc_store_load_price_book (self->store, error);
  return self->book;
}

void
rc_book_keeper_follow (RcBookKeeper *self)
{
  RcPriceBook *book = rc_store_load_price_book (self->store, NULL);

  if (book == NULL || (self->book != NULL && book->revision == self->book->revision))
    {
      rc_price_book_free (book);
      return;
    }
  forget (&self->done);
  forget (&self->undone);
  rc_price_book_free (self->book);
  self->book = book;
  g_signal_emit (self, changed_signal, 0, TRUE);
}

/* The book that was goes to the steps. `edited` (transfer full). */
static gboolean
save (RcBookKeeper *self, RcPriceBook *edited, const char *doing, GQueue *steps, GError **error)
{
  g_autoptr (RcPriceBook) book = edited;
  GError *fault = NULL;
  Step   *step;

  if (!rc_store_save_price_book (self->store, book, &fault))
    {
      if (g_error_matches (fault, RC_ERROR, RC_ERROR_CONFLICT))
        rc_book_keeper_follow (self);
      g_propagate_error (error, fault);
      return FALSE;
    }
  step = g_new (Step, 1);
  *step = (Step){ self->book, g_strdup (doing) };
  g_queue_push_head (steps, step);
  if (steps->length > MOST_STEPS)
    step_free (g_queue_pop_tail (steps));
  self->book = g_steal_pointer (&book);
  g_signal_emit (self, changed_signal, 0, FALSE);
  return TRUE;
}

gboolean
rc_book_keeper_take (RcBookKeeper *self, RcPriceBook *edited, const char *doing, GError **error)
{
  g_return_val_if_fail (self->book != NULL && edited != NULL, FALSE);

  if (!save (self, edited, doing, &self->done, error))
    return FALSE;
  forget (&self->undone);
  return TRUE;
}

/* A book of before is saved as a change of the one that is. */
static char *
step_over (RcBookKeeper *self, GQueue *from, GQueue *to, GError **error)
{
  Step            *step = g_queue_pop_head (from);
  g_autofree char *doing = NULL;

  if (step == NULL)
    return NULL;
  doing = g_steal_pointer (&step->doing);
  step->book->revision = self->book->revision;
  if (!save (self, g_steal_pointer (&step->book), doing, to, error))
    g_clear_pointer (&doing, g_free);
  step_free (step);
  return g_steal_pointer (&doing);
}

char *
rc_book_keeper_undo (RcBookKeeper *self, GError **error)
{
  return step_over (self, &self->done, &self->undone, error);
}

char *
rc_book_keeper_redo (RcBookKeeper *self, GError **error)
{
  return step_over (self, &self->undone, &self->done, error);
}

RcBookKeeper *
rc_book_keeper_new (RcStore *store)
{
  RcBookKeeper *self = g_object_new (RC_TYPE_BOOK_KEEPER, NULL);

  self->store = store;
  return self;
}

static void
rc_book_keeper_finalize (GObject *object)
{
  RcBookKeeper *self = RC_BOOK_KEEPER (object);

  forget (&self->done);
  forget (&self->undone);
  rc_price_book_free (self->book);
  G_OBJECT_CLASS (rc_book_keeper_parent_class)->finalize (object);
}

static void
rc_book_keeper_class_init (RcBookKeeperClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_book_keeper_finalize;
  changed_signal = g_signal_new ("changed", RC_TYPE_BOOK_KEEPER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                 G_TYPE_BOOLEAN);
}

static void
rc_book_keeper_init (RcBookKeeper *self)
{
}
