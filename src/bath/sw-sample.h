/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bath/sw-basis.h"
#include "bath/sw-speck.h"

G_BEGIN_DECLS

/*
 * Reading the pan at the strand's places: the field by straight lines between
 * cell centres, the specks by their own marks.
 */

/**
 * SwPlaces: places in the pan, made ready for reading.
 * @cell: (array length=n): index of the cell whose centre is next below in x, y and z
 * @fx, @fy, @fz: (array length=n): how far on to the next centre, 0 .. 1
 * Beyond the outermost centres the field is held.
 */
typedef struct
{
  gsize n;
  gint32 *cell;
  float *fx, *fy, *fz;
} SwPlaces;

/**
 * sw_places_init:
 * @x, @y, @z: (array length=n): fractions 0 .. 1 of the grid's box
 */
void sw_places_init (SwPlaces *places, const SwGrid *grid, const float *x, const float *y, const float *z, gsize n);
void sw_places_clear (SwPlaces *places);

/**
 * sw_places_read:
 * @field: grid cells
 * @values: (out caller-allocates): n of them, @scale times the field
 */
void sw_places_read (const SwPlaces *places, const SwGrid *grid, const float *field, float scale, float *values);

/* Places sorted into square bins over the pan, for finding those near a speck. */
typedef struct
{
  int nx, ny;
  double size_cm;
  guint32 *start; /* nx * ny + 1 */
  guint32 *place; /* n, by bin */
} SwBins;

void sw_bins_init (SwBins *bins, const SwGrid *grid, double size_cm, const float *x, const float *y, gsize n);
void sw_bins_clear (SwBins *bins);

/**
 * sw_specks_read:
 * @bins: of the places
 * @x, @y, @z: (array length=n): the places, fractions of the grid's box
 * @half_cm: half the length of strand that a place stands for, > 0; it lies along x, and the mark is averaged over it
 * @specks: (array length=n_specks)
 * @class_of: (array length=n_specks): index into @marks
 * @scale: amount, % owf, per (g per cm2 of one layer)
 * @values: (inout): n of them; what the specks bring is added, unless too faint to see
 */
void sw_specks_read (const SwBins *bins, const SwGrid *grid, const float *x, const float *y, const float *z, double half_cm, const SwSpeck *specks, const guint8 *class_of, gsize n_specks, const SwMark *marks, float scale, float *values);

G_END_DECLS
