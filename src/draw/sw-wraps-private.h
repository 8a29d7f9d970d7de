/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-wraps.h"

#include <math.h>

G_BEGIN_DECLS

/* What lies between two points of a wrap's course, cm. */
#define SW_WRAPS_STEP_CM 0.4f
#define SW_WRAPS_TURN 14 /* parts of a dive */

/* A strand's room beside its neighbours, of its width. */
#define SW_WRAPS_PITCH 0.90f

/* All lengths in cm; y counts from the near edge while wraps are laid. */
typedef struct
{
  SwWraps *wraps;
  const SwGrain *grain;
  const SwLaidTies *ties;
  guint64 seed;
  float length, width; /* of all that is laid */
  float lane, strand, height;
  int runs;
  gboolean ring;
} SwWeaver;

/* How a wrap goes over the end of its bundle. */
typedef struct
{
  float tip;   /* how far from the end of the lay it turns back */
  float reach; /* along the lay, from where it begins to bend to its tip */
  float aside; /* how far to the side it comes back */
} SwWrapDive;

static inline float
sw_wraps_chance (guint64 address, guint64 part)
{
  return (float) sw_chance_even (sw_chance_mix (address, part));
}

static inline float
sw_wraps_smooth (float t)
{
  t = CLAMP (t, 0.0f, 1.0f);
  return t * t * (3 - 2 * t);
}

/* Chance along a wrap, -1 .. 1: @row is its own. */
static inline float
sw_wraps_tone (const SwWeaver *weaver, guint32 row, float knots)
{
  return sw_grain_tone (weaver->grain, (int) (row & 0xff), knots + 7.3f * (float) (row >> 8 & 0xff));
}

/* A wrap's point where its bundle lies straight. */
typedef struct
{
  float y, z;
} SwWrapSpot;

/* @wide: of a strand's width */
void sw_weaver_begin (SwWeaver *weaver, guint64 address, float wide);
void sw_weaver_add (SwWeaver *weaver, float x, float y, float z);

/* From the tip of a dive up to the straight bundle (@down FALSE) or from there to the tip and under it. @right: which end of the lay. */
void sw_weaver_dive (SwWeaver *weaver, const SwWrapDive *dive, SwWrapSpot spot, gboolean right, gboolean down);

/* All wraps of one skein whose runs lie side by side. */
void sw_weaver_lay_rope (SwWeaver *weaver, int skein);

G_END_DECLS
