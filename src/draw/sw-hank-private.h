/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-hank-label.h"
#include "draw/sw-hank.h"
#include "draw/sw-hank-strands.h"
#include "draw/sw-linear.h"

G_BEGIN_DECLS

/* The table that hanks lie on together, with the light that each leaves to the others: a GLib reference-counted box. */
typedef struct
{
  SwRelief relief;
} SwHankTable;

struct _SwHank
{
  guint64 seed;
  const SwSketch *sketch;
  SwHankShape shape;
  SwHankYarn yarn;
  SwBundle bundle;
  SwBundle core; /* what is seen in the gaps between strands */
  SwHankStrands strands;
  SwHankLabel label;
  SwHankTable *table; /* (owned) */
  double x, y;        /* the hank's origin on it, cm */
  SwGrain *grain;
  SwLinear linear;
  float logs[256];
  SwBox box;
};

G_END_DECLS
