/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-ph.h"

#include <math.h>

/* Goldberg, Kishore & Lennen 2002, J. Phys. Chem. Ref. Data 31:231 (from memory, high). */
const SwAcidSystem sw_acetic_acid = { 1, { 4.756 }, 60.052 };

/* Benezeth, Palmer & Wesolowski 1997, J. Solution Chem. 26:63. */
const SwAcidSystem sw_citric_acid = { 3, { 3.127, 4.759, 6.397 }, 192.124 };

/* Harned & Davis 1943; Harned & Scholes 1941 (from memory, high). No molar mass: it is never weighed. */
static const SwAcidSystem carbonic_acid = { 2, { 6.352, 10.329 }, 0.0 };

#define PKW 13.995 /* CRC Handbook, 25 C (from memory, high) */

/* No dye bath leaves this range; the root is bracketed by it. */
#define PH_LEAST -2.0
#define PH_MOST 16.0

/* Mean negative charge of one molecule: sum of j x [H(n-j)A] over the sum of all forms. */
static double
acid_charge (const SwAcidSystem *acid, double ph)
{
  double form = 1.0, forms = 1.0, charges = 0.0;

  for (int j = 0; j < acid->n; j++)
    {
      form *= pow (10.0, ph - acid->pka[j]);
      forms += form;
      charges += (j + 1) * form;
    }

  return charges / forms;
}

/* Positive charge that the acid must balance; falls steadily as pH rises. */
static double
charge_left (double ph, double alkalinity, double carbonate)
{
  return pow (10.0, -ph) - pow (10.0, ph - PKW) + alkalinity - carbonate * acid_charge (&carbonic_acid, ph);
}

double
sw_ph (const SwAcidSystem *acid, double molar, double alkalinity, double carbonate)
{
  double low = PH_LEAST, high = PH_MOST;

  /* Bisection: the balance is monotone, so it cannot go astray, and 50 halvings leave 2e-14. */
  for (int i = 0; i < 50; i++)
    {
      double ph = 0.5 * (low + high);

      if (charge_left (ph, alkalinity, carbonate) > molar * acid_charge (acid, ph))
        low = ph;
      else
        high = ph;
    }

  return 0.5 * (low + high);
}

double
sw_carbonate_of_water (double alkalinity, double ph)
{
  return MAX (0.0, charge_left (ph, alkalinity, 0.0) / acid_charge (&carbonic_acid, ph));
}

double
sw_acid_for_ph (const SwAcidSystem *acid, double ph, double alkalinity, double carbonate)
{
  return MAX (0.0, charge_left (ph, alkalinity, carbonate) / acid_charge (acid, ph));
}
