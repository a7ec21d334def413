/* Choosing a file to read or to write. */
#pragma once

#include <gtk/gtk.h>

typedef struct
{
  const char        *title;
  gboolean           saves;    /* a file to write; else one to read */
  const char        *name;     /* proposed for a file to write; nullable */
  const char        *kind;     /* of files, in words; NULL: all files are shown */
  const char *const *patterns; /* of their names, ended by NULL */
} RcFileDialog;

/* One at a time for an owner, which lies in a window; `take` gets it with the file, if one is chosen. */
void rc_file_dialog_open (gpointer owner, const RcFileDialog *dialog, void (*take) (gpointer owner, GFile *file));
