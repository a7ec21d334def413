#include "usual-units.h"

#include <gtk/gtk.h>
#include <langinfo.h>

RcUnitSystem
rc_usual_units_find (void)
{
  const char *measurement = nl_langinfo (_NL_MEASUREMENT_MEASUREMENT);

  return measurement && *measurement == 2 ? RC_UNITS_IMPERIAL : RC_UNITS_METRIC;
}

const RcLengthStyle *
rc_usual_units_get_style (const RcJob *job)
{
  if (job != NULL)
    return rc_job_get_length_style (job);
  return rc_usual_units_find () == RC_UNITS_IMPERIAL ? &RC_LENGTH_STYLE_IMPERIAL : &RC_LENGTH_STYLE_METRIC;
}

RcLengthUnit
rc_usual_units_get_bare (const RcJob *job)
{
  if (job != NULL)
    return rc_job_get_bare_unit (job);
  return rc_usual_units_find () == RC_UNITS_IMPERIAL ? RC_LENGTH_UNIT_FOOT_INCH : RC_LENGTH_UNIT_MM;
}

RcPaper
rc_usual_paper_find (void)
{
  return g_strcmp0 (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER) == 0 ? RC_PAPER_LETTER : RC_PAPER_A4;
}
