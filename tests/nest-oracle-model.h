/* Integer programs for GLPK: what the oracles of src/nest share. */
#pragma once

#include <glpk.h>

#include "nest.h"

enum
{
  MOST = 8,
  MOST_ROLLS = 3
};

typedef struct
{
  double w, h, repeat, phase;
} Piece;

typedef struct
{
  Piece     pieces[MOST]; /* widest first */
  int       n, n_rolls;
  double    width, grid;
  double    roll[MOST_ROLLS];
  glp_prob *lp;
} Model;

/* A row  sum of value x variable  <= (or =, or >=) bound. */
typedef struct
{
  int    n, column[4 * MOST * MOST];
  double value[4 * MOST * MOST];
} Row;

void add_term (Row *row, double value, int column);

/* `kind` is GLP_UP, GLP_LO or GLP_FX. */
void add_row (Model *model, const Row *row, int kind, double bound);

/* Variables: their columns. */
int add_binary (Model *model);
int add_length (Model *model, double most, double cost); /* from 0 to most */

/* a + size <= b unless the binaries say otherwise; a, b 0: no such variable. */
void add_order (Model *model, int a, double size, int b, const int *binaries, int n_binaries, double big);

/* FALSE when GLPK proved nothing; *least -1 when there is no solution. */
gboolean minimise (Model *model, RcLength *least);
