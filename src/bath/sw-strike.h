/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/* How a fibre takes dye against shrink-resist wool: as if @lag_c cooler, @factor times as fast. */
typedef struct
{
  const char *name; /* as in files: "superwash-wool" */
  double lag_c;
  double factor;
  double most_depth_percent; /* what it takes at most, owf; common practice */
  const char *source;
} SwFibreResponse;

const SwFibreResponse *sw_fibre_response (SwFibre fibre);

/* theta(pH) / theta(4), theta = 1 / (1 + 10^(pH - 4.2)): protonated carboxyls of the fibre. */
double sw_strike_ph_factor (double ph);

/* Arrhenius against 90 C. */
double sw_strike_temperature_factor (double activation_kj_per_mol, double temperature_c);

/**
 * sw_strike_rate:
 * @half_time_min: at pH 4, 90 C, shrink-resist wool; > 0
 * Returns: k, per minute
 */
double sw_strike_rate (double half_time_min, double activation_kj_per_mol, double ph, double temperature_c, SwFibre fibre);

/* Usual pH window, default half-time and ease of migration of a dye class. Broadbent 2001, table 13.1. */
typedef struct
{
  double ph_low, ph_high;
  double half_time_min; /* ours */
  const char *source;
} SwDyeClassFacts;

const SwDyeClassFacts *sw_dye_class_facts (SwDyeClass dye_class);

G_END_DECLS
