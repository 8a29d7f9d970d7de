/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-mix.h"

#include <math.h>

/* Darker than any dyed wool, and keeps K/S finite. */
#define MIN_REFLECTANCE 1e-6

double
sw_ks_from_reflectance (double reflectance)
{
  double r = MAX (reflectance, MIN_REFLECTANCE);

  return (1 - r) * (1 - r) / (2 * r);
}

/* 1 + K/S - sqrt ((K/S)^2 + 2 K/S) as a quotient, since that difference loses all digits where K/S is large. */
double
sw_reflectance_from_ks (double ks)
{
  return 1 / (1 + ks + sqrt (ks * (ks + 2)));
}

void
sw_palette_set_yarn (SwPalette *palette, const double *reflectance)
{
  g_return_if_fail (palette != NULL);
  g_return_if_fail (reflectance != NULL);

  palette->n_dyes = 0;
  for (int band = 0; band < SW_BANDS; band++)
    palette->yarn[band] = (float) sw_ks_from_reflectance (reflectance[band]);
}

void
sw_palette_add_dye (SwPalette *palette, const double *sample_reflectance, double sample_depth_percent)
{
  float *slope;

  g_return_if_fail (palette != NULL);
  g_return_if_fail (sample_reflectance != NULL);
  g_return_if_fail (sample_depth_percent > 0);
  g_return_if_fail (palette->n_dyes < SW_MAX_DYES);

  slope = palette->slope[palette->n_dyes++];
  for (int band = 0; band < SW_BANDS; band++)
    {
      double gain = sw_ks_from_reflectance (sample_reflectance[band]) - (double) palette->yarn[band];

      /* A sample lighter than its yarn at a band is noise or brightener: dye never takes absorption away. */
      slope[band] = (float) (MAX (gain, 0) / sample_depth_percent);
    }
}

void
sw_mix_reflectance (const SwPalette *palette, const double *depths, double *reflectance)
{
  g_return_if_fail (palette != NULL);
  g_return_if_fail (depths != NULL || palette->n_dyes == 0);
  g_return_if_fail (reflectance != NULL);

  for (int band = 0; band < SW_BANDS; band++)
    {
      double ks = (double) palette->yarn[band];

      for (int dye = 0; dye < palette->n_dyes; dye++)
        ks += MAX (depths[dye], 0) * (double) palette->slope[dye][band];
      reflectance[band] = sw_reflectance_from_ks (ks);
    }
}
