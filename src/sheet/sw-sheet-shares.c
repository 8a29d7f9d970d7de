/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-sheet-private.h"

#include "colour/sw-mix.h"
#include "colour/sw-recover.h"

/* Which dye makes the colour, against which one makes the weight. */

/* Yarn and dyes ready for mixing; FALSE if one has a colour that no surface can have. */
static gboolean
palette_of (const SwSketch *sketch, SwPalette *palette)
{
  double reflectance[SW_BANDS];

  if (!sw_sample_reflectance (&sketch->yarn.undyed, reflectance, NULL))
    return FALSE;
  sw_palette_set_yarn (palette, reflectance);
  for (guint i = 0; i < sketch->dyes->len; i++)
    {
      const SwDye *dye = sketch->dyes->pdata[i];

      if (!sw_sample_reflectance (&dye->sample, reflectance, NULL))
        return FALSE;
      sw_palette_add_dye (palette, reflectance, dye->sample_depth_percent);
    }
  return TRUE;
}

/* K/S of 1 % of a dye as the eye weighs it: over the bands by their share in the luminance Y. */
static double
strength_of (const SwPalette *palette, guint dye)
{
  double sum = 0.0, weights = 0.0;

  for (int band = 0; band < SW_BANDS; band++)
    {
      sum += sw_weight_y[band] * palette->slope[dye][band];
      weights += sw_weight_y[band];
    }
  return sum / weights;
}

void
sw_sheet_fill_shares (SwSheet *sheet)
{
  g_autofree SwPalette *palette = g_new0 (SwPalette, 1);
  gboolean known = palette_of (sheet->sketch, palette);
  double mass = 0.0, strength = 0.0;

  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      SwSheetDye *dye = &sheet->dyes[i];

      dye->mass_share = dye->poured_g.exact;
      dye->strength_share = known ? dye->depth_percent * strength_of (palette, dye->dye) : 0.0;
      mass += dye->mass_share;
      strength += dye->strength_share;
    }
  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      SwSheetDye *dye = &sheet->dyes[i];

      dye->mass_share = mass > 0.0 ? dye->mass_share / mass : 0.0;
      dye->strength_share = strength > 0.0 ? dye->strength_share / strength : -1.0;
    }
}
