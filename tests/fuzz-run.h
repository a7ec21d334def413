/* What the fuzz targets share. A target is a program with LLVMFuzzerTestOneInput, which looks at one input, and a
 * FuzzTarget. Alone it tries the inputs once found to be trouble (tests/corpus/NAME/) and mutations of its samples, the
 * same ones at every run, as part of the suite. Built with -DRC_FUZZER a fuzzing engine brings main and the inputs
 * (tests/fuzz.sh). */
#pragma once

#include <glib.h>

typedef struct
{
  const char        *name;
  const char *const *words; /* put in here and there; up to NULL */
  guint              n_runs;
  guint              most_changes;           /* to one input */
  void (*add_samples) (GPtrArray *samples);  /* GBytes to mutate, at least one */
  void (*repair) (guint8 *data, gsize size); /* makes check sums right again, so that what was mutated is looked at */
  void (*check_outcomes) (void);             /* after all: that enough of the input got as far as it should */
} FuzzTarget;

extern const FuzzTarget fuzz_target;

int LLVMFuzzerTestOneInput (const guint8 *data, gsize size);
