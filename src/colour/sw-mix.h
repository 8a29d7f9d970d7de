/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "colour/sw-spectrum.h"

G_BEGIN_DECLS

/*
 * Single-constant Kubelka-Munk, the textile form: absorption over scattering
 * of the mix is that of the yarn plus each dye's, by depth.
 * Kubelka & Munk 1931; Berns, Billmeyer & Saltzman's Principles of Color
 * Technology.
 */

/* K/S = (1 - R)^2 / (2 R); R is held at 1e-6 or more. */
double sw_ks_from_reflectance (double reflectance);
double sw_reflectance_from_ks (double ks);

/* More dyes than this cannot be mixed in one pan. */
#define SW_MAX_DYES 24

/**
 * SwPalette: one yarn and its dyes, ready for mixing.
 * @yarn: K/S of the undyed yarn per band
 * @slope: K/S per 1 % owf, per dye and band; never below 0
 */
typedef struct
{
  int n_dyes;
  float yarn[SW_BANDS];
  float slope[SW_MAX_DYES][SW_BANDS];
} SwPalette;

void sw_palette_set_yarn (SwPalette *palette, const double *reflectance);

/**
 * sw_palette_add_dye:
 * @sample_reflectance: of the dyed sample
 * @sample_depth_percent: its depth, % owf, > 0
 */
void sw_palette_add_dye (SwPalette *palette, const double *sample_reflectance, double sample_depth_percent);

/**
 * sw_mix_reflectance:
 * @depths: (array length=n_dyes): % owf, >= 0
 * @reflectance: (out caller-allocates): SW_BANDS
 * In doubles, for one place.
 */
void sw_mix_reflectance (const SwPalette *palette, const double *depths, double *reflectance);

/**
 * sw_mix_xyz:
 * @depths: n_dyes arrays of @n values each, % owf; below 0 counts as 0
 * @n: places
 * @x, @y, @z: (out caller-allocates): @n each
 *
 * The mixing of many places at once, vectorised for the processor it runs on.
 * A palette without dyes gives the yarn everywhere.
 */
void sw_mix_xyz (const SwPalette *palette, const float *const *depths, gsize n, float *x, float *y, float *z);

/**
 * sw_lab_from_xyz_many: CIELAB of @n places, single precision (error under 1e-3 in each of L, a, b); may work in place
 */
void sw_lab_from_xyz_many (const float *x, const float *y, const float *z, gsize n, float *l, float *a, float *b);

/**
 * sw_pixels_from_xyz:
 * @stride: of x, y, z in elements, 1 for planar
 * @pixels: (out caller-allocates): @n of 0xffRRGGBB (CAIRO_FORMAT_RGB24 / opaque ARGB32)
 * Gamut-mapped like sw_srgb_from_xyz(); exact to half a code.
 */
void sw_pixels_from_xyz (const float *x, const float *y, const float *z, gsize stride, gsize n, guint32 *pixels);

G_END_DECLS
