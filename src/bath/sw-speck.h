/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bath/sw-transfer.h"

G_BEGIN_DECLS

/*
 * Specks are smaller than a cell, so each is kept by itself: where it fell,
 * how large, how much dye, and how its mark falls off with distance.
 */

typedef struct
{
  float x, y;   /* cm */
  float radius; /* cm, of the wet droplet or grain */
  float grams;
} SwSpeck;

/* A zone of specks: a box turned about its centre. */
typedef struct
{
  double x, y, width, length, angle_deg;
  double per_100_cm2;
  double median_mm; /* diameter */
  double variation; /* sd of ln diameter */
  double grams;     /* in all, shared by volume */
  guint64 seed;     /* of the sketch and the pour: see sw-chance.h */
} SwSpeckZone;

/**
 * sw_speck_count: how many specks the zone has, to the nearest; 200 000 at most
 */
gsize sw_speck_count (const SwSpeckZone *zone);

/**
 * sw_speck_scatter:
 * @specks: (out caller-allocates): sw_speck_count() of them. Speck i depends
 *   on the seed and i alone, not on the count, so that asking for more adds
 *   to those that are there. Their grams sum to the zone's.
 */
void sw_speck_scatter (const SwSpeckZone *zone, SwSpeck *specks);

/* Steps of the tabled mark, and moments of the day at which its dye is summed. */
#define SW_MARK_STEPS 128
#define SW_MARK_SPOTS 16

/**
 * SwMark: struck dye around one speck's centre, per gram of the speck.
 * @reach_cm: all but 1e-5 of it lies within
 * @share: struck by the end, of the speck's dye
 * @density: g per cm2 at distance (i / (SW_MARK_STEPS - 1))^2 x reach: close together in the middle, where it is steep
 * @depth: nz shares from the first face down, summing to 1
 * @spot_share, @spot_variance: the same mark as a sum of round Gaussians, cm2 along each axis
 */
typedef struct
{
  double reach_cm;
  double share;
  float density[SW_MARK_STEPS];
  float depth[64];
  float spot_share[SW_MARK_SPOTS], spot_variance[SW_MARK_SPOTS];
} SwMark;

/**
 * sw_mark_for:
 * @radius_cm: of the speck; it starts as a round Gaussian of sd radius / 2
 * @spans: from the speck's fall to the end, spreads those of a speck (see sw_speck_spread)
 * @worked_in, @from_below: as for a pour
 *
 * Struck dye is the integral of k x mobile over time; the mobile spot is a
 * Gaussian of variance sd^2 + 2 Dxy t in free space (Crank, The Mathematics of
 * Diffusion, 2nd ed., ch. 3). The table is scaled so that its integral over
 * the plane is @share.
 */
void sw_mark_for (double radius_cm, const SwSpan *spans, gsize n_spans, int nz, double lz, double worked_in, gboolean from_below, SwMark *mark);

/* g per cm2 per gram of the speck at squared distance @r2 (cm2); 0 beyond the reach. */
double sw_mark_density (const SwMark *mark, double r2);

/*
 * Dye fainter than this need not be followed, % owf: a vivid dye on pale yarn
 * then changes by a tenth of a CIELAB unit. Pale yarn shows much: the outermost
 * thousandth of a large grain's mark still makes four units.
 */
#define SW_LEAST_AMOUNT 5e-5

/* Returns: the distance, cm, beyond which a mark is nowhere denser than @density; at most its reach */
double sw_mark_extent (const SwMark *mark, double density);

/**
 * sw_speck_spread:
 * Returns: factor on a span's spreads for a droplet or a dry grain, which has
 *   no water of its own to carry it beyond what it lies on. It multiplies the
 *   spread as sw_schedule_spans() gives it, cover and all: on damp yarn a
 *   speck runs even less. Ours, to be fitted; chosen so that a speck of 1 mm
 *   in a hot acid bath keeps half its dye within one stitch.
 */
double sw_speck_spread (gboolean dry);

G_END_DECLS
