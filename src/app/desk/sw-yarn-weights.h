/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-edit.h"

G_BEGIN_DECLS

/*
 * The usual weights of yarn, as starting points. Ranges of gauge and put-up:
 * Source: Craft Yarn Council's www.YarnStandards.com; the figures within them
 * are ours.
 */
typedef struct
{
  const char *name; /* for people, marked with N_() */
  double metres_per_100_g;
  double stitches_per_10cm;
  double thickest; /* m per 100 g: yarn with at least so many belongs here, unless a finer weight claims it */
} SwYarnWeight;

/* From the finest on. */
extern const SwYarnWeight sw_yarn_weights[];
extern const gsize sw_n_yarn_weights;

/* Returns: index of the weight that a yarn of that put-up belongs to. */
gsize sw_yarn_weight_of (double metres_per_100_g);

/**
 * sw_yarn_weight_edit:
 * Put-up and stitch gauge of that weight; row gauge and stitch length are worked out again.
 */
SwEdit *sw_yarn_weight_edit (gsize weight) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
