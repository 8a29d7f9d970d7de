/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/* Munden's constants of plain knit: wales/cm x courses/cm = k_s / l^2. D. L. Munden 1959, J. Text. Inst. 50:T448. */
typedef struct
{
  double k_s, k_c, k_w;
} SwMunden;

const SwMunden *sw_munden (SwFabricState state);

/* @wales_per_cm and @courses_per_cm > 0. Returns: yarn in one stitch, cm */
double sw_stitch_length (double wales_per_cm, double courses_per_cm, SwFabricState state);

/* Courses per cm when only the stitch gauge is known: wales x 5.0 / 3.8. */
double sw_courses_from_wales (double wales_per_cm);

G_END_DECLS
