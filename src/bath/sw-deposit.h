/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bath/sw-basis.h"

G_BEGIN_DECLS

/* A pour's outline in the pan, cm and degrees. See SwStep for what the members mean. */
typedef struct
{
  gboolean ellipse; /* else a parallelogram (band) */
  double x, y;
  double width, length; /* a band's length of 0 goes right across */
  double angle_deg;
} SwOutline;

/**
 * sw_deposit_plane:
 * @grid: of the pan
 * @mass: g
 * @plane: (out caller-allocates): nx x ny cell amounts, summing to @mass;
 *   cells at the edge by their covered share
 *
 * Returns: FALSE if the outline misses the skein: then the dye went into the
 *   liquor beside it and is spread evenly
 */
gboolean sw_deposit_plane (const SwGrid *grid, const SwOutline *outline, double mass, double *plane);

/*
 * Least blur of a pour, in cells: dye wicks along the strand as it lands, and
 * an outline cut off sharper than the grid can carry would ring when it spreads.
 */
#define SW_DEPOSIT_LEAST_BLUR 0.6

/**
 * sw_deposit_blur:
 * @sigma_cm: sd of the Gaussian along x and y; along each axis at least SW_DEPOSIT_LEAST_BLUR cells
 * @plane_modes: (inout): nx x ny modes
 */
void sw_deposit_blur (const SwGrid *grid, double sigma_cm, double *plane_modes);

/* Sideways blur of a pour worked in by that much: up to 0.6 cm. */
double sw_deposit_blur_for (double worked_in);

/**
 * sw_deposit_depth:
 * @worked_in: 0 surface only (e-folding 0.12 of the depth) .. 1 even
 * @from_below: poured on the second face
 * @weights: (out caller-allocates): nz cell shares from the first face down, summing to 1
 */
void sw_deposit_depth (int nz, double worked_in, gboolean from_below, double *weights);

/**
 * sw_deposit_depth_modes: the same as nz cosine modes, mode 0 = 1
 */
void sw_deposit_depth_modes (int nz, double worked_in, gboolean from_below, double *modes);

G_END_DECLS
