#include "picture-dialog.h"

#include <glib/gi18n-lib.h>

#include "file-dialog.h"

static void
take (gpointer floor, GFile *file)
{
  rc_floor_view_add_picture (floor, file);
}

void
rc_picture_dialog_open (RcFloorView *floor)
{
  static const char *const PATTERNS[]
      = { "*.png", "*.jpg", "*.jpeg", "*.pdf", "*.PNG", "*.JPG", "*.JPEG", "*.PDF", NULL };
  const RcFileDialog dialog = { .title = _ ("Plan picture"), .kind = _ ("Pictures and PDF"), .patterns = PATTERNS };

  rc_file_dialog_open (floor, &dialog, take);
}
