/* What an RcAreaChoice holds, for those who look for ways in it. */
#pragma once

#include "area-choice.h"

/* One parting of the doorways. */
typedef struct
{
  GArray *partings;            /* of RcParting */
  gint64  doorways;            /* what their seams cost, in minor units */
  guint   first_cell, n_cells; /* in RcAreaAxis.members */
} RcAxisWay;

/* The ways with the pile along one site. */
typedef struct
{
  const RcSite *site;
  GPtrArray    *cells;   /* of GPtrArray of RcLineRange: every cell of any parting, once */
  GArray       *members; /* of guint: cells of the ways */
  GArray       *ways;    /* of RcAxisWay */
} RcAreaAxis;

struct _RcAreaChoice
{
  GArray *axes; /* of RcAreaAxis */
};
