/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cloth/sw-stitches.h"

G_BEGIN_DECLS

/* How colours stack in cloth, from the strand's variogram alone. */

#define SW_POOLING_ROWS 8    /* dr = 1 .. 8 */
#define SW_POOLING_STITCHES 6 /* dj = -6 .. 6 */

typedef enum
{
  SW_VERDICT_SCATTERS, /* nothing above chance */
  SW_VERDICT_COLUMNS,  /* colours stand above one another */
  SW_VERDICT_DRIFTS,   /* they move over row by row: spirals in the round */
  SW_VERDICT_STRIPES,  /* one colour lasts longer than about a row */
  SW_VERDICT_EVEN,     /* too little difference in colour to see any pattern */
} SwVerdict;

const char *sw_verdict_name (SwVerdict verdict); /* in files: "columns" */

typedef struct
{
  const double *gamma;
  gsize n_lags;           /* at longer lags the strand is taken to be no more alike than by chance */
  gsize n;                /* stitches in the strand: neighbours that fewer than half of them have are not weighed; 0 weighs all */
  double gamma_inf;
  double turn;            /* as in SwLayout */
  double stripe_stitches; /* mean run of one colour along the strand, each stitch counted once */
  double stitch_width_cm, row_height_cm;
  SwAlternation alternation; /* of skeins of one recipe: one is taken to be to the next as it is to itself */
  double shift;              /* further in, stitches, that each next skein starts */
  double cast_on;            /* stitches' worth of yarn in the first skein's cast-on, per stitch of width */
} SwPoolingInput;

typedef struct
{
  gsize width;
  SwWorked worked;
  double stack;    /* of the best neighbour: 1 the same colour, 0 chance; quantised to 1e-3 */
  int row_step;    /* 1 .. 8 */
  int stitch_step; /* -6 .. 6, to the right as seen */
  gboolean beyond;  /* the stack still rises past the widest stitch step: the colours move over by more */
  double angle_deg; /* of the drift from straight up, towards the right: atan2 (stitch_step x width, row_step x height) */
  SwVerdict verdict;
} SwPooling;

/* Lags needed for widths up to @width, with room for turns of up to SW_POOLING_TURN stitches. */
#define SW_POOLING_TURN 64
gsize sw_pooling_lags (gsize width);

/* More than those, needed for widths up to @width when skeins alternate: from the first skein's cast-on and the later starts. */
gsize sw_pooling_lags_apart (const SwPoolingInput *input, gsize width);

/**
 * sw_pooling_stack:
 * Mean over the columns of 1 - gamma / gamma_inf for the neighbour @dr rows up
 * and @dj stitches to the right. In the round its lag is one number; worked
 * flat and @dr odd it depends on the column: the mean is taken by running sums
 * in constant time (@sums from sw_pooling_sums()).
 */
double sw_pooling_stack (const SwPoolingInput *input, const double *sums, SwWorked worked, gsize width, int dr, int dj);

/**
 * sw_pooling_sums:
 * @sums: (out caller-allocates): n_lags running sums of gamma over every second lag
 */
void sw_pooling_sums (const SwPoolingInput *input, double *sums);

/**
 * sw_pooling_judge:
 * The verdict at one width. The best neighbour has the highest stack to three
 * decimals, and of equals the nearest in the cloth; if a nearer one in the same
 * direction (one row instead of seven) comes within 0.02 of it, that one.
 */
void sw_pooling_judge (const SwPoolingInput *input, const double *sums, SwWorked worked, gsize width, SwPooling *pooling);

/**
 * sw_pooling_scan:
 * @results: (out caller-allocates): to - from + 1 of them
 */
void sw_pooling_scan (const SwPoolingInput *input, SwWorked worked, gsize from, gsize to, SwPooling *results);

/**
 * sw_pooling_sentence:
 * Returns: (transfer full): the verdict in a translated sentence: "At 64 stitches in the round ..."
 */
char *sw_pooling_sentence (const SwPooling *pooling) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
