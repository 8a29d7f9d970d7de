/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Chance with an address: every random number is a function of a seed and of
 * the thing it belongs to, never of how many were drawn before.
 */

/* Mixes a further part of an address into a seed. splitmix64's finaliser: Steele, Lea & Flood 2014, OOPSLA. */
static inline guint64
sw_chance_mix (guint64 seed, guint64 part)
{
  guint64 z = seed + 0x9e3779b97f4a7c15u * (part + 1);

  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
  return z ^ (z >> 31);
}

/* Even in [0, 1). */
static inline double
sw_chance_even (guint64 address)
{
  return (double) (sw_chance_mix (address, 0) >> 11) * 0x1p-53;
}

/* Normal, mean 0 and sd 1. Box & Muller 1958. */
double sw_chance_normal (guint64 address);

G_END_DECLS
