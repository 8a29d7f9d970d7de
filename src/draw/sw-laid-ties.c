/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-laid-ties.h"

#include <math.h>

#define PINCH 0.085 /* of the bundle's width */
#define MOST_PINCH_CM 0.8 /* of it */
#define PINCH_CM 1.3
#define PER_LOOP 4

/* Runs side by side: each tie has a run of its own, as far as there are enough. */
static SwLaidTie
tie_beside (const SwLaySettings *lay, double length, int skein, int k, double chance)
{
  const double at = (k + 0.30 + 0.3 * chance) / PER_LOOP * (double) lay->runs, on = at - floor (at);
  const int run = (int) at;

  return (SwLaidTie){ length * (0.12 + 0.76 * (run % 2 == 0 ? on : 1 - on)), skein * (int) lay->runs + run };
}

void
sw_laid_ties_init (SwLaidTies *ties, const SwSketch *sketch)
{
  const SwLaySettings *lay = &sketch->lay;
  const double length = sw_sketch_lay_length (sketch);
  const gboolean beside = lay->folding == SW_FOLDING_SIDE_BY_SIDE && lay->runs > 1;
  const int each = beside ? PER_LOOP : CLAMP (PER_LOOP / (int) lay->runs, 1, PER_LOOP); /* that are seen */

  *ties = (SwLaidTies){ .n = each * (int) lay->skeins, .seed = sw_chance_mix (0x74696573, (guint64) sketch->seed), .pinch = MIN (PINCH, MOST_PINCH_CM / (lay->width_cm / (double) (beside ? lay->runs : 1))) };
  ties->ties = g_new (SwLaidTie, ties->n);
  for (int i = 0; i < ties->n; i++)
    {
      const double chance = sw_chance_even (sw_chance_mix (ties->seed, (guint64) i));

      ties->ties[i] = beside ? tie_beside (lay, length, i / each, i % each, chance) : (SwLaidTie){ length * ((i % each + 0.5) / each + 0.06 * (chance - 0.5)), i / each };
    }
}

void
sw_laid_ties_clear (SwLaidTies *ties)
{
  g_clear_pointer (&ties->ties, g_free);
}

double
sw_laid_ties_pinch (const SwLaidTies *ties, int bundle, double x_cm)
{
  double pinch = 0;

  for (int i = 0; i < ties->n; i++)
    {
      const double off = (x_cm - ties->ties[i].x_cm) / PINCH_CM;

      if (ties->ties[i].bundle == bundle && off * off < 20)
        pinch += ties->pinch * exp (-off * off);
    }
  return pinch;
}
