/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bath/sw-sample.h"
#include "forecast/sw-cache.h"
#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/*
 * The stages. Each says what it depends on by its key, and computes from that
 * alone: sw_stage_x() looks its key up and computes what is missing.
 */

/* Everything a run hands from stage to stage. */
typedef struct
{
  const SwSketch *sketch;
  SwCache *cache;
  GCancellable *cancellable;
  guint *counts; /* SW_N_STAGES */
} SwRun;

typedef struct
{
  SwPart part;
  SwKey key;
  SwPalette palette;
} SwPalettePart;

typedef struct
{
  SwPart part;
  SwKey key;
  SwBasis *basis;
  SwGrid grid;
  double grams_per_cell;
  double *transfer, *struck; /* modes: room for sums, used by one run at a time */
} SwBasisPart;

typedef struct
{
  SwPart part;
  SwKey key;
  gsize n_steps;
  SwBathState *states;   /* n_steps + 1 */
  SwSpan *spans;         /* [dye][share][step] */
  gboolean *second_face; /* per step: which face is up when it begins */
} SwSchedulePart;

typedef struct
{
  SwPart part;
  double *plane; /* nx * ny modes */
  double *depth; /* nz modes */
} SwPourPart;

typedef struct
{
  SwPart part;
  SwKey key;
  SwSpecks specks;
} SwSpecksPart;

typedef struct
{
  SwPart part;
  SwKey key;
  float *depth; /* % owf per cell */
} SwFieldPart;

typedef struct
{
  SwPart part;
  SwKey key;
  SwReel reel;
  SwLay lay;
  double wraps;
  double stitch_length_cm;
  gsize n_stitches;
  float *x, *y, *z; /* 2 per stitch, fractions of the pan */
  SwPlaces places;
  SwBins bins;
} SwStrandPart;

typedef struct
{
  SwPart part;
  SwKey key;
  float *values; /* 2 per stitch, % owf */
} SwReadPart;

typedef struct
{
  SwPart part;
  SwKey key;
  float *x, *y, *z; /* 2 per stitch */
} SwLegsPart;

typedef struct
{
  SwPart part;
  SwKey key;
  float *l, *a, *b; /* per stitch */
  double *gamma;
  gsize n_lags;
  double gamma_inf;
  SwStripe stripes[SW_MAX_STRIPES];
  gsize n_stripes;
  double mean_run;
} SwSeriesPart;

/* Struck fields and specks of the whole dyeing. */
typedef struct
{
  SwFieldPart **fields;  /* per dye */
  SwSpecksPart **specks; /* per speckle pour, in order */
  gsize n_specks;
  SwDyeForecast *balances;      /* per dye; names not set */
  SwStepBalance *step_balances; /* n_steps x n_dyes */
} SwBathResult;

SwPalettePart *sw_stage_palette (SwRun *run, GError **error);
SwBasisPart *sw_stage_basis (SwRun *run);
SwSchedulePart *sw_stage_schedule (SwRun *run, const SwBasisPart *basis);

/* Spans of a dye's share (0 main, 1 quick), one per step. */
const SwSpan *sw_schedule_part_spans (const SwSchedulePart *schedule, gsize dye, int share);

gboolean sw_stage_bath (SwRun *run, const SwBasisPart *basis, const SwSchedulePart *schedule, SwBathResult *result, GError **error);
void sw_bath_result_clear (SwBathResult *result);

/* @turn: which of the skeins that are knitted in turn, 0 the first */
SwStrandPart *sw_stage_strand (SwRun *run, const SwBasisPart *basis, gsize turn, GError **error);
SwLegsPart *sw_stage_legs (SwRun *run, const SwBasisPart *basis, const SwPalettePart *palette, const SwBathResult *bath, const SwStrandPart *strand, GError **error);

/* @alternating: its alternation, shift and cast-on say how many lags are needed */
SwSeriesPart *sw_stage_series (SwRun *run, const SwLegsPart *legs, gsize n_stitches, const SwPoolingInput *alternating);

/* Starts a key for a stage. */
SwKey sw_stage_key (SwStage stage);

G_END_DECLS
