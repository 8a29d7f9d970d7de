/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * The texture of wraps lying side by side: single strands, and the locks they
 * lie in. Each layer fades out before its pitch comes near the pixels', so
 * that nothing beats with them.
 */

#define SW_WEAVE_LAYERS 3

typedef struct
{
  float pitch_cm, depth, tone;
  float *wander_a, *wander_b; /* per column, cm */
} SwWeaveLayer;

/* Tones repeat after so many strands and knots along them: further than an eye compares. */
#define SW_WEAVE_STRANDS 256
#define SW_WEAVE_KNOTS 64

typedef struct
{
  SwWeaveLayer layers[SW_WEAVE_LAYERS];
  float tones[SW_WEAVE_STRANDS][SW_WEAVE_KNOTS]; /* -1 .. 1 */
  float px_per_cm, first_cm;
  float plies, ply_depth;
} SwWeave;

/**
 * SwWeaveRow: what all pixels of a row share.
 */
typedef struct
{
  float wave_a, wave_b;
} SwWeaveRow;

/**
 * SwWeavePoint:
 * @light: factor in linear light, 1 in the mean
 * @off_cm: from the middle of the strand that is seen; 0 when single strands are not
 * @shift_cm: how far along it the strand lies from its ruler-straight place
 */
typedef struct
{
  float light, off_cm, shift_cm;
} SwWeavePoint;

/**
 * sw_weave_init:
 * @strand_cm: width of one strand
 * @first, @width: columns, each 1 / @px_per_cm; column 0 of sw_weave_at() is the one that is @first from the skein's left end
 */
void sw_weave_init (SwWeave *weave, double strand_cm, int plies, double px_per_cm, int first, int width);
void sw_weave_clear (SwWeave *weave);
SwWeaveRow sw_weave_row (double y_cm);

/* @strand: cm across the strands, as in SwSkeinPoint */
SwWeavePoint sw_weave_at (const SwWeave *weave, const SwWeaveRow *row, int column, float strand);

G_END_DECLS
