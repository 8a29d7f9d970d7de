/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Light and shade are laid on in linear light: a pixel's codes are decoded,
 * multiplied and encoded again. IEC 61966-2-1.
 */

#define SW_LINEAR_STEPS 4096

typedef struct
{
  float decode[256];                  /* code -> 0..1 */
  guint8 encode[SW_LINEAR_STEPS + 1]; /* 0..1 in even steps -> code */
} SwLinear;

void sw_linear_init (SwLinear *linear);

/* Linear light to a code; beyond 0..1 it is held. */
static inline guint32
sw_linear_code (const SwLinear *linear, float light)
{
  light = CLAMP (light, 0.0f, 1.0f);
  return linear->encode[(int) (light * SW_LINEAR_STEPS + 0.5f)];
}

/* A pixel's three channels as linear light, @rgb[0] red. */
static inline void
sw_linear_decode (const SwLinear *linear, guint32 pixel, float *rgb)
{
  rgb[0] = linear->decode[pixel >> 16 & 0xff];
  rgb[1] = linear->decode[pixel >> 8 & 0xff];
  rgb[2] = linear->decode[pixel & 0xff];
}

/* Opaque 0xffRRGGBB. */
static inline guint32
sw_linear_pixel (const SwLinear *linear, const float *rgb)
{
  return 0xff000000u | sw_linear_code (linear, rgb[0]) << 16 | sw_linear_code (linear, rgb[1]) << 8 | sw_linear_code (linear, rgb[2]);
}

/**
 * sw_linear_premultiply:
 * @alpha: 0..1
 * Returns: the opaque @pixel as CAIRO_FORMAT_ARGB32 with that alpha
 */
static inline guint32
sw_linear_premultiply (guint32 pixel, float alpha)
{
  const guint32 a = (guint32) (CLAMP (alpha, 0.0f, 1.0f) * 255.0f + 0.5f);
  const guint32 r = (pixel >> 16 & 0xff) * a / 255, g = (pixel >> 8 & 0xff) * a / 255, b = (pixel & 0xff) * a / 255;

  return a << 24 | r << 16 | g << 8 | b;
}

/* A premultiplied pixel as an opaque one of its colour; its alpha > 0. */
static inline guint32
sw_linear_unpremultiply (guint32 pixel)
{
  const guint32 a = pixel >> 24, half = a / 2;
  const guint32 r = MIN (((pixel >> 16 & 0xff) * 255 + half) / a, 255), g = MIN (((pixel >> 8 & 0xff) * 255 + half) / a, 255), b = MIN (((pixel & 0xff) * 255 + half) / a, 255);

  return 0xff000000u | r << 16 | g << 8 | b;
}

/* @over laid on @under, both premultiplied, as cairo does. */
static inline guint32
sw_linear_over (guint32 over, guint32 under)
{
  const guint32 rest = 255 - (over >> 24);
  guint32 out = 0;

  for (int shift = 0; shift < 32; shift += 8)
    out |= MIN ((over >> shift & 0xff) + ((under >> shift & 0xff) * rest + 127) / 255, 255u) << shift;
  return out;
}

G_END_DECLS
