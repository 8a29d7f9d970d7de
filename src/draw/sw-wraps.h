/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-grain.h"
#include "draw/sw-laid-ties.h"
#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/*
 * The wraps of the laid skeins one by one, as curves in space. Stacked runs
 * are a flat bundle of wraps that dive under at both ends, each a little
 * sooner or later than its neighbour and leaning to the side; runs side by
 * side are a rope of wraps that goes to and fro, a little twisted; an opened
 * ring is a bundle cut at both ends. Only wraps that can be seen are laid:
 * those at the top and what shows between them.
 *
 * How far they stray is by eye (common practice, no source): which place in
 * the pan a wrap was dyed at is the forecast's matter and not decided here.
 */

/**
 * SwWrapPoint: cm
 * @x, @y: from the laid skeins' left end and far edge, as seen
 * @z: above the pan's floor
 * @along: from the wrap's first point
 */
typedef struct
{
  float x, y, z, along;
  guint32 wrap;
} SwWrapPoint;

/**
 * SwWrap: a course through @n points from @first on.
 * @tone: -1 .. 1, how much lighter it is than others
 * @strands: that lie side by side in it: 1, or those of a core
 * @thread: of a tie, not of the skein
 */
typedef struct
{
  guint32 first, n, seed;
  float radius, tone;
  int strands;
  gboolean thread;
} SwWrap;

typedef struct
{
  GArray *points; /* of SwWrapPoint */
  GArray *wraps;  /* of SwWrap */
} SwWraps;

/**
 * sw_wraps_init:
 * @strand_cm: the strand's width, > 0
 * @height_cm: of the bundle
 * The whole of every wrap stays within the laid skeins' box.
 */
void sw_wraps_init (SwWraps *wraps, const SwSketch *sketch, const SwGrain *grain, const SwLaidTies *ties, double strand_cm, double height_cm);
void sw_wraps_clear (SwWraps *wraps);

/* A new course; its points follow. */
void sw_wraps_begin (SwWraps *wraps, float radius, int strands, guint32 seed, gboolean thread);
void sw_wraps_add (SwWraps *wraps, float x, float y, float z);

G_END_DECLS
