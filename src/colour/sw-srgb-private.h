/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "colour/sw-spectrum.h"

/* IEC 61966-2-1, linear RGB to XYZ with Y = 1, as printed. Each row sums to the standard's white. */
static const double sw_srgb_to_xyz[3][3] = {
  { 0.4124, 0.3576, 0.1805 },
  { 0.2126, 0.7152, 0.0722 },
  { 0.0193, 0.1192, 0.9505 },
};

/*
 * From XYZ, each over its own white, to linear RGB. The standard prints the inverse to four decimals too,
 * which does not undo the other: (255, 255, 255) would come back off by up to 1e-4. This is the true inverse, its columns
 * times the standard's white; each row sums to 1 so that greys stay grey.
 */
static const double sw_srgb_from_white[3][3] = {
  { 3.0802145161927110, -1.5372079722103185, -0.5430065439823919 },
  { -0.9209686443502183, 1.8757560608852413, 0.0452125834649768 },
  { 0.0529524694834579, -0.2040210505984867, 1.1510685811150287 },
};

/* Encoding: a straight line below the threshold, a power of 1/2.4 above. */
#define SW_SRGB_THRESHOLD 0.0031308
#define SW_SRGB_SLOPE 12.92
#define SW_SRGB_GAIN 1.055
#define SW_SRGB_OFFSET 0.055
