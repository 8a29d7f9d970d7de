/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-hank-light.h"
#include "draw/sw-hank-shape.h"
#include "draw/sw-linear.h"

#include <cairo.h>

G_BEGIN_DECLS

/* The paper band round a hank's middle, and what is printed on it. */

/**
 * SwHankLabel:
 * @band: turned with the hank; without rings if there is no label
 * @hold: where it lies
 * @across: whether the print reads round the hank instead of along it
 * @words: (nullable): what is printed
 * @maker: and below it; empty: nothing
 * @mark: (nullable): and the maker's own picture above it
 */
typedef struct
{
  SwBundle band;
  SwHankHold hold;
  double width_cm, radius_cm;
  SwLabel paper;
  gboolean across;
  char *words, *maker;
  cairo_surface_t *mark;
} SwHankLabel;

/**
 * sw_hank_label_init:
 * @angle: of the hank, radians: the print reads as nearly level as it can
 * @mark: (nullable)
 */
void sw_hank_label_init (SwHankLabel *label, const SwHankShape *shape, guint64 seed, double angle, const SwSketch *sketch, cairo_surface_t *mark);
void sw_hank_label_clear (SwHankLabel *label);

/* The print on the front of the band at one size: NULL if nothing is printed. */
cairo_surface_t *sw_hank_label_print (const SwHankLabel *label, double px_per_cm) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_hank_label_light:
 * @print: (nullable): of @px_per_cm
 * @rgb: (out): linear light of the paper or the ink there
 */
void sw_hank_label_light (const SwHankLabel *label, const SwHankLight *light, const SwLinear *linear, cairo_surface_t *print, double px_per_cm, const SwSkinSample *sample, float x, float y, float *rgb);

G_END_DECLS
