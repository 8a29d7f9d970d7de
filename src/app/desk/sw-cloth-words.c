/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-cloth-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

char *
sw_cloth_drift (const SwPooling *pooling)
{
  const int degrees = (int) lround (fabs (pooling->angle_deg));

  if (pooling->verdict == SW_VERDICT_COLUMNS)
    return g_strdup (_ ("The colours run straight up."));
  if (pooling->verdict != SW_VERDICT_DRIFTS)
    return g_strdup ("");
  if (pooling->worked == SW_WORKED_FLAT)
    /* Translators: %d is an angle in degrees; colours lean both ways in cloth worked to and fro */
    return g_strdup_printf (_ ("The colours lean %d° from upright, to either side."), degrees);
  return g_strdup_printf (pooling->stitch_step > 0
                              /* Translators: %d is an angle in degrees, as seen on the knit side */
                              ? _ ("The colours lean %d° to the right of upright.")
                              : _ ("The colours lean %d° to the left of upright."),
                          degrees);
}

double
sw_cloth_rounded (double amount, double grain)
{
  return MAX (round (amount / grain), amount > 0 ? 1 : 0) * grain;
}

char *
sw_cloth_stripe (const SwForecast *forecast, const SwStripe *stripe, SwSystem system)
{
  g_autofree char *share = sw_units_format (SW_QUANTITY_PERCENT, sw_cloth_rounded (100 * stripe->share, 1), system);
  g_autofree char *length = sw_units_format (SW_QUANTITY_LENGTH, stripe->mean_stitches * forecast->stitch_length_cm, system);
  g_autofree char *stitches = sw_units_format (SW_QUANTITY_NONE, sw_cloth_rounded (stripe->mean_stitches, 0.1), system);
  g_autofree char *rows = sw_units_format (SW_QUANTITY_NONE, sw_cloth_rounded (stripe->mean_stitches / (double) forecast->layout.width, 0.01), system);

  /* Translators: one colour of the yarn: its share of all yarn; then its usual length along the yarn, the same in stitches, and in rows of the cloth */
  return g_strdup_printf (_ ("%s of the yarn · each %s, %s stitches, %s rows"), share, length, stitches, rows);
}

char *
sw_cloth_width (const SwForecast *forecast, gsize width, SwSystem system)
{
  g_autofree char *length = sw_units_format (SW_QUANTITY_LENGTH, (double) width * forecast->stitch_width_cm, system);

  /* Translators: width of a cloth: stitches, then the same as a length */
  return g_strdup_printf (ngettext ("%d stitch, %s", "%d stitches, %s", width), (int) width, length);
}

char *
sw_cloth_scan_words (const SwPooling *pooling, const char *piece)
{
  g_autofree char *sentence = sw_pooling_sentence (pooling);
  const int percent = (int) lround (100 * CLAMP (pooling->stack, 0, 1));

  if (piece != NULL)
    /* Translators: %s is a sentence on a width of cloth; then how alike the colours above one another are, from 0 (chance) to 100 %; then a piece of knitting */
    return g_strdup_printf (_ ("%s Stacking %d %%. A usual width: %s."), sentence, percent, piece);
  /* Translators: %s is a sentence on a width of cloth; then how alike the colours above one another are, from 0 (chance) to 100 % */
  return g_strdup_printf (_ ("%s Stacking %d %%."), sentence, percent);
}
