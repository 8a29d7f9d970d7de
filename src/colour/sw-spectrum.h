/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-value.h"

G_BEGIN_DECLS

/* Reflectances on SW_BANDS bands, and the colours they make under D65 for the CIE 1931 2 degree observer. */

typedef struct
{
  double x, y, z;
} SwXyz; /* a perfect white has Y = 100 */

typedef struct
{
  double l, a, b;
} SwLab;

typedef struct
{
  double r, g, b;
} SwSrgb; /* encoded, 0..1 */

/* (array length=SW_BANDS) weights of each band, summing to SW_WHITE over a perfect white. From the CIE 15 tables by plain sum. */
extern const double sw_weight_x[SW_BANDS];
extern const double sw_weight_y[SW_BANDS];
extern const double sw_weight_z[SW_BANDS];
extern const SwXyz sw_white;

SwXyz sw_xyz_from_reflectance (const double *reflectance);

/* CIE 15; white is that of the 36 bands, so a perfect white is exactly L* 100, a* 0, b* 0. */
SwLab sw_lab_from_xyz (SwXyz xyz);
SwXyz sw_xyz_from_lab (SwLab lab);

/**
 * sw_srgb_from_xyz:
 * IEC 61966-2-1. XYZ is first scaled from the 36-band white to the standard's.
 * A colour outside sRGB loses chroma at constant CIELAB hue and lightness
 * until it fits; channels are never clipped one by one.
 * Returns: each 0..1
 */
SwSrgb sw_srgb_from_xyz (SwXyz xyz);
gboolean sw_xyz_in_gamut (SwXyz xyz);
SwXyz sw_xyz_from_srgb (SwSrgb srgb);

/* CIEDE2000 with unit weights, by lcms2. Sharma, Wu & Dalal 2005. */
double sw_ciede2000 (SwLab a, SwLab b);

/**
 * sw_spectrum_from_text:
 * @text: lines "nm,reflectance" (comma, semicolon, tab or blanks between), a
 *   heading and lines starting with # allowed; wavelengths rising, from 450 nm
 *   or less to 650 nm or more; reflectance as a fraction, 0 to 1.2
 * @reflectance: (out caller-allocates): SW_BANDS values, by straight lines
 *   between the given ones, the end values held beyond them
 * @error: SW_COLOUR_ERROR_TEXT, names the line
 */
gboolean sw_spectrum_from_text (const char *text, double *reflectance, GError **error) G_GNUC_WARN_UNUSED_RESULT;

#define SW_COLOUR_ERROR (sw_colour_error_quark ())
GQuark sw_colour_error_quark (void);
typedef enum
{
  SW_COLOUR_ERROR_TEXT,
  SW_COLOUR_ERROR_UNREACHABLE, /* no reflectance within 0..1 has that colour */
} SwColourError;

G_END_DECLS
