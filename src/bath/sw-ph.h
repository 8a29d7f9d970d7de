/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * pH of acetic or citric acid in water with some alkalinity, at 25 C, no
 * activity correction: exact charge balance, monotone in pH.
 */

/* An acid of up to three steps: its pKa's at 25 C, molar mass in g. */
typedef struct
{
  int n;
  double pka[3];
  double molar_mass;
} SwAcidSystem;

extern const SwAcidSystem sw_acetic_acid;
extern const SwAcidSystem sw_citric_acid; /* anhydrous */

/**
 * sw_ph:
 * @molar: acid, mol/L, >= 0
 * @alkalinity: of the water, eq/L, >= 0
 * @carbonate: mol/L of carbonic species kept in the bath; 0 when open to the air
 */
double sw_ph (const SwAcidSystem *acid, double molar, double alkalinity, double carbonate);

/**
 * sw_carbonate_of_water:
 * Returns: mol/L of carbonic species in water of that alkalinity at @ph (8.0 for tap water)
 */
double sw_carbonate_of_water (double alkalinity, double ph);

/**
 * sw_acid_for_ph:
 * Returns: mol/L of acid that brings the water to @ph; 0 if it is already at or below it
 */
double sw_acid_for_ph (const SwAcidSystem *acid, double ph, double alkalinity, double carbonate);

G_END_DECLS
