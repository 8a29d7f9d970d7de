/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-edit.h"

G_BEGIN_DECLS

/* The usual yarn weights with the gauge they are knitted at: starting points, not rules. */
typedef struct
{
  const char *label;        /* for people, marked with N_() */
  double least, most;       /* stitches to 4 in; 0: no lower end */
  double stitches_per_10cm; /* the middle, to start from */
} SwGaugeClass;

#define SW_N_GAUGE_CLASSES 8
extern const SwGaugeClass sw_gauge_classes[SW_N_GAUGE_CLASSES];

/**
 * sw_gauge_class_of:
 * Returns: index of the class whose start is nearest to that gauge; -1 if it is finer than all of them
 */
int sw_gauge_class_of (double stitches_per_10cm);

/**
 * sw_gauge_class_edit:
 * Returns: (transfer full): the cloth at that class's gauge, with rows and yarn worked out from it
 */
SwEdit *sw_gauge_class_edit (int index) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
