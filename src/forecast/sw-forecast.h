/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bath/sw-basis.h"
#include "bath/sw-schedule.h"
#include "bath/sw-speck.h"
#include "cloth/sw-pooling.h"
#include "cloth/sw-stitches.h"
#include "cloth/sw-stripes.h"
#include "colour/sw-mix.h"
#include "sketch/sw-sketch.h"
#include "skein/sw-strand.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* What one dye did. */
typedef struct
{
  char *name;
  double poured_g, struck_g, left_g;
} SwDyeForecast;

/* What one dye has done by the end of one step. */
typedef struct
{
  double struck_g, left_g;
} SwStepBalance;

/* The specks of one pour, and their marks by size class. */
typedef struct
{
  guint step; /* id */
  int dye;    /* index */
  gsize n_specks;
  SwSpeck *specks;
  guint8 *class_of; /* per speck, index into marks */
  int n_marks;
  SwMark *marks;
} SwSpecks;

/* The colours of one of the skeins that are knitted in turn. */
typedef struct
{
  gsize n_stitches;
  const float *leg_x, *leg_y, *leg_z; /* XYZ, 2 per stitch in strand order */
} SwSkeinLegs;

/* One dye's struck dye over the pan. */
typedef struct
{
  float *depth; /* grid cells, % owf; tiny negative values are rounding. Specks are not in it */
} SwDyeField;

/**
 * SwForecast: everything computed from one sketch. Read-only once published;
 * reference-counted, may cross threads. Parts are shared with other forecasts.
 */
typedef struct
{
  const SwSketch *sketch; /* frozen copy of what it was made from */

  /* the pan */
  SwGrid grid;
  double grams_per_cell; /* of fibre */
  SwPalette palette;
  int n_dyes;
  const SwDyeForecast *dyes;
  const SwDyeField *fields; /* per dye */
  gsize n_specks;
  const SwSpecks *const *specks; /* per speckle pour */
  gsize n_steps;
  const SwBathState *states;          /* n_steps + 1: see sw_schedule_run() */
  const SwStepBalance *step_balances; /* n_steps x n_dyes, row-major: the bath after each step */
  double clear_percent;               /* of all dye poured, struck by the end */

  /* the strand of the skein that is knitted */
  SwReel reel;
  SwLay lay;
  double strand_length_cm;
  double wraps;
  double repeat_cm;
  double stitch_length_cm;
  double stitch_width_cm, row_height_cm;
  gsize n_stitches;
  const float *leg_x, *leg_y, *leg_z; /* XYZ, 2 per stitch in strand order */
  const float *lab_l, *lab_a, *lab_b; /* per stitch, of its mean XYZ */

  /* the skeins that the cloth is knitted from in turn; the first is that strand */
  gsize n_skeins;
  SwSkeinLegs skeins[SW_MOST_ALTERNATE];

  /* the cloth */
  SwLayout layout;
  SwPoolingInput pooling_input;
  SwPooling pooling;
  gsize n_stripes;
  const SwStripe *stripes;

  /*< private >*/
  gatomicrefcount ref_count;
  gpointer parts;
} SwForecast;

SwForecast *sw_forecast_ref (SwForecast *forecast);
void sw_forecast_unref (SwForecast *forecast);

/* The stages, in order. Each is computed again only if what it depends on changed. */
typedef enum
{
  SW_STAGE_PALETTE,  /* yarn and dye colours */
  SW_STAGE_BASIS,    /* grid and transforms */
  SW_STAGE_SCHEDULE, /* bath states and spans */
  SW_STAGE_POUR,     /* one pour's modes, or its specks (counted per pour) */
  SW_STAGE_FIELD,    /* struck dye over the pan (counted per dye) */
  SW_STAGE_STRAND,   /* places of the stitches' legs */
  SW_STAGE_READ,     /* dye at those places (counted per field and per pour of specks) */
  SW_STAGE_LEGS,     /* their colours */
  SW_STAGE_SERIES,   /* CIELAB, variogram, stripes */
  SW_STAGE_POOLING,  /* verdict at the width */
  SW_N_STAGES,
} SwStage;

/**
 * SwForecaster: keeps each stage's result between runs. One run at a time; use one per thread of questions.
 */
typedef struct _SwForecaster SwForecaster;

SwForecaster *sw_forecaster_new (void) G_GNUC_WARN_UNUSED_RESULT;
void sw_forecaster_free (SwForecaster *self);

/**
 * sw_forecaster_run:
 * @sketch: validated here
 * Returns: (transfer full): the forecast; NULL with @error (SW_SKETCH_ERROR, SW_COLOUR_ERROR, G_IO_ERROR_CANCELLED)
 */
SwForecast *sw_forecaster_run (SwForecaster *self, const SwSketch *sketch, GCancellable *cancellable, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* How often a stage was computed since the forecaster was made: for the tests and the bench. */
guint sw_forecaster_count (const SwForecaster *self, SwStage stage);

/* A scan reaches to this width in any forecast; a cloth may be wider, up to the member's own limit. */
#define SW_SCAN_WIDEST 600
#define SW_CLOTH_WIDEST 2000

/**
 * sw_forecast_scan:
 * @to: at most SW_SCAN_WIDEST
 * @results: (out caller-allocates): to - from + 1 verdicts
 */
void sw_forecast_scan (const SwForecast *forecast, SwWorked worked, gsize from, gsize to, SwPooling *results);

/**
 * sw_forecast_face:
 * @second: which face of the laid skein
 * @nx, @ny: pixels over the laid length and width
 * @x, @y, @z: (out caller-allocates): nx x ny XYZ, row-major, row 0 at y = 0
 * What a person sees looking down on the skein, specks sharp.
 */
void sw_forecast_face (const SwForecast *forecast, gboolean second, int nx, int ny, float *x, float *y, float *z);

/**
 * SwFaceWindow: a part of a face that is @nx x @ny pixels in all: @width x
 * @height pixels from column @left and line @near, lines counted from y = 0.
 */
typedef struct
{
  int nx, ny;
  int left, near, width, height;
} SwFaceWindow;

/**
 * sw_forecast_face_window:
 * @x, @y, @z: (out caller-allocates): width x height; each pixel as sw_forecast_face() has it
 */
void sw_forecast_face_window (const SwForecast *forecast, gboolean second, const SwFaceWindow *window, float *x, float *y, float *z);

/**
 * sw_forecast_strip:
 * @n: places along one loop, evenly
 * @x, @y, @z: (out caller-allocates): XYZ of the loop's colours, the mean over its wraps' places
 */
void sw_forecast_strip (const SwForecast *forecast, gsize n, float *x, float *y, float *z);

/* @legs: of a skein dyed like the forecast's own */
typedef struct
{
  SwSkeinLegs legs;
  /*< private >*/
  gpointer part;
} SwForecastSkein;

/**
 * sw_forecast_skein:
 * @turn: 0: the skein that the forecast follows; then the others of its pan,
 *   lane by lane; then those of more pans poured by the same recipe
 * @skein: (out): as many stitches as the forecast's; lives no longer than it.
 *   To be cleared
 */
void sw_forecast_skein (const SwForecast *forecast, gsize turn, SwForecastSkein *skein);
void sw_forecast_skein_clear (SwForecastSkein *skein);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwForecast, sw_forecast_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwForecaster, sw_forecaster_free)

G_END_DECLS
