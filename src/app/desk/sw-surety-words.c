/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-surety-words.h"

#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>
#include <math.h>

char *
sw_surety_share (const SwRange *range)
{
  if (lround (100 * range->least) == lround (100 * range->most))
    /* Translators: a percentage */
    return g_strdup_printf (_ ("%.0f\u00a0%%"), 100 * range->mean);
  /* Translators: the least and the most of several percentages */
  return g_strdup_printf (_ ("%.0f to %.0f\u00a0%%"), 100 * range->least, 100 * range->most);
}

char *
sw_surety_number (const SwRange *range, int decimals)
{
  g_autofree char *least = g_strdup_printf ("%.*f", decimals, range->least);
  g_autofree char *most = g_strdup_printf ("%.*f", decimals, range->most);

  /* Translators: the least and the most of several numbers */
  return g_strdup_printf (_ ("%1$s to %2$s"), least, most);
}

static const struct
{
  double below;
  const char *words;
} verdicts[] = {
  /* Translators: whether a difference of colour can be seen */
  { 0.5, N_ ("not seen") },
  { 1.0, N_ ("hardly seen") },
  { 2.0, N_ ("seen side by side") },
  { 5.0, N_ ("seen") },
  { G_MAXDOUBLE, N_ ("another colour") },
};

const char *
sw_surety_verdict (double difference)
{
  for (gsize i = 0; i < G_N_ELEMENTS (verdicts); i++)
    if (difference < verdicts[i].below)
      return _ (verdicts[i].words);
  return _ (verdicts[G_N_ELEMENTS (verdicts) - 1].words);
}

char *
sw_surety_twist (const SwRepeat *repeat, SwSystem system)
{
  g_autofree char *length = sw_units_format (SW_QUANTITY_LENGTH, repeat->twist_start_cm, system);

  /* Translators: %s is a length along the loop of the skein */
  return g_strdup_printf (_ ("Begin the twist %s along the loop, in the middle of the longest stretch of one colour: then the hanks of a batch show the same face."), length);
}

char *
sw_surety_slip (const SwSketch *sketch, const SwSlipEffect *effect)
{
  const SwDye *dye = effect->dye >= 0 && (guint) effect->dye < sketch->dyes->len ? sketch->dyes->pdata[effect->dye] : NULL;
  const SwStep *step = sw_sketch_find_step (sketch, effect->step);
  g_autofree char *title = step != NULL ? sw_step_title (sketch, step) : g_strdup ("");

  switch (effect->slip)
    {
    case SW_SLIP_WEIGHED_MORE:
      return g_strdup_printf (_ ("%s weighed 5 %% more"), sw_dye_title (dye));
    case SW_SLIP_WEIGHED_LESS:
      return g_strdup_printf (_ ("%s weighed 5 %% less"), sw_dye_title (dye));
    case SW_SLIP_POURED_MORE:
      return g_strdup_printf (_ ("%s: 1 mL more poured"), title);
    case SW_SLIP_POURED_LESS:
      return g_strdup_printf (_ ("%s: 1 mL less poured"), title);
    case SW_SLIP_ROUNDED:
    case SW_N_SLIPS:
    default:
      return g_strdup (_ ("Everything as scale and measure round it"));
    }
}
