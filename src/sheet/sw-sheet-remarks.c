/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-sheet-remarks.h"

#include "bath/sw-strike.h"
#include "bath/sw-transfer.h"
#include "sheet/sw-measure.h"

#include <math.h>

/*
 * Limits. Where none is published they are ours, and docs/science-sheet.md
 * gives the reason for each.
 */
#define LEAST_STRUCK 0.5      /* by the next pour or flip: one half-time */
#define SWAMPS 0.95           /* of the strength of two dyes */
#define SWAMPS_BY 3.0         /* times as strong by the gram */
#define LEAST_COVERED 0.5     /* of the liquor that covers the lay */
#define MOST_LEFT_PERCENT 5.0 /* a good set leaves under 2 */
#define PH_TOLERANCE 0.25     /* what paper strips tell apart */
#define CLEAR_PERCENT 95.0    /* without a set at the end */
#define MOST_ROUNDED 0.1      /* of the amount */
#define WORKED_THROUGH 0.5    /* less leaves the lowest third with a seventh of an even share */

/* Gathers what is found. */
typedef struct
{
  const SwSheet *sheet;
  const SwSketch *sketch;
  GArray *remarks;
} Finder;

static void
found (Finder *finder, SwRemark remark)
{
  g_array_append_val (finder->remarks, remark);
}

/* A remark of the sheet as a whole. */
static void
found_of_all (Finder *finder, SwRemarkKind kind, double is, double limit)
{
  found (finder, (SwRemark){ .kind = kind, .dye = -1, .other_dye = -1, .is = is, .limit = limit });
}

static const SwDye *
dye_at (const Finder *finder, guint index)
{
  return finder->sketch->dyes->pdata[index];
}

static void
find_depth (Finder *finder)
{
  double most = sw_fibre_response (finder->sketch->yarn.fibre)->most_depth_percent;
  double depth = 0.0;

  for (gsize i = 0; i < finder->sheet->n_dyes; i++)
    depth += finder->sheet->dyes[i].depth_percent;
  if (depth > most)
    found_of_all (finder, SW_REMARK_DEPTH, depth, most);
}

/*
 * The share of a dye poured at a step that has struck before the next pour or
 * flip disturbs it. Pours made in one go count as one; -1 if nothing follows.
 */
static double
struck_before_next (const Finder *finder, const SwSpan *spans, guint step)
{
  const GPtrArray *steps = finder->sketch->steps;
  guint end = step + 1;
  gboolean waited = FALSE;

  for (; end < steps->len; end++)
    {
      const SwStep *next = steps->pdata[end];

      if (next->kind == SW_STEP_FLIP || (waited && sw_step_is_pour (next)))
        return sw_transfer_share (&spans[step], end - step);
      waited |= spans[end].minutes > 0.0;
    }
  return -1.0;
}

/* Of each dye, the pour with the least time. */
static void
find_short_rest (Finder *finder)
{
  gsize n = finder->sheet->n_steps;
  g_autofree SwBathState *states = g_new (SwBathState, n + 1);
  g_autofree SwSpan *spans = g_new (SwSpan, n + 1);

  sw_schedule_run (finder->sketch, states);
  for (gsize i = 0; i < finder->sheet->n_dyes; i++)
    {
      const SwDye *dye = dye_at (finder, finder->sheet->dyes[i].dye);
      double least = LEAST_STRUCK;
      guint worst = 0;

      sw_schedule_spans (finder->sketch, states, dye, 0, spans);
      for (guint step = 0; step < n; step++)
        {
          const SwStep *pour = finder->sketch->steps->pdata[step];
          double struck = sw_step_is_pour (pour) && pour->dye == dye->id ? struck_before_next (finder, spans, step) : -1.0;

          if (struck >= 0.0 && struck < least)
            {
              least = struck;
              worst = pour->id;
            }
        }
      if (worst != 0)
        found (finder, (SwRemark){ .kind = SW_REMARK_SHORT_REST, .step = worst, .dye = (int) finder->sheet->dyes[i].dye, .other_dye = -1, .is = 100.0 * least, .limit = 100.0 * LEAST_STRUCK });
    }
}

/* The strong dye's share of the strength of both, if it is out of proportion; else 0. */
static double
swamping (const SwSheetDye *strong, const SwSheetDye *pale)
{
  double strength = strong->strength_share / (strong->strength_share + pale->strength_share);
  double by_gram = strong->strength_share * pale->mass_share / MAX (strong->mass_share * pale->strength_share, 1e-12);

  return strength > SWAMPS && by_gram > SWAMPS_BY ? strength : 0.0;
}

/* Of each pale dye, the one that swamps it most. */
static void
find_swamped (Finder *finder)
{
  const SwSheet *sheet = finder->sheet;

  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      const SwSheetDye *pale = &sheet->dyes[i], *strongest = NULL;
      double most = 0.0;

      for (gsize j = 0; j < sheet->n_dyes && pale->mass_share > 0.0 && pale->strength_share >= 0.0; j++)
        if (j != i && swamping (&sheet->dyes[j], pale) > most)
          {
            strongest = &sheet->dyes[j];
            most = swamping (strongest, pale);
          }
      if (strongest != NULL)
        found (finder, (SwRemark){
                           .kind = SW_REMARK_SWAMPED,
                           .dye = (int) strongest->dye,
                           .other_dye = (int) pale->dye,
                           .is = 100.0 * most,
                           .limit = 100.0 * strongest->mass_share / (strongest->mass_share + pale->mass_share),
                       });
    }
}

/* The lay of the fullest pan against the pan. */
static void
find_pan (Finder *finder)
{
  const SwLaySettings *lay = &finder->sketch->lay;
  const SwSheetLiquor *liquor = &finder->sheet->liquor;
  double length = sw_sketch_lay_length (finder->sketch);
  double width = lay->width_cm * (double) finder->sheet->fullest;
  double in_pan = liquor->water_ml.exact + liquor->acid_ml.exact;

  for (gsize i = 0; i < finder->sheet->n_steps; i++)
    in_pan += finder->sheet->steps[i].added_ml.exact;
  for (gsize i = 0; i < finder->sheet->n_pours; i++)
    in_pan += finder->sheet->pours[i].stock_ml.exact;

  if (length > lay->pan_length_cm)
    found_of_all (finder, SW_REMARK_PAN_SMALL, length, lay->pan_length_cm);
  else if (width > lay->pan_width_cm)
    found_of_all (finder, SW_REMARK_PAN_SMALL, width, lay->pan_width_cm);
  if (in_pan > liquor->pan_ml)
    found_of_all (finder, SW_REMARK_RUNS_OVER, in_pan, liquor->pan_ml);
  if (liquor->water_ml.exact + liquor->acid_ml.exact < LEAST_COVERED * liquor->lay_cover_ml)
    found_of_all (finder, SW_REMARK_NOT_COVERED, liquor->water_ml.exact + liquor->acid_ml.exact, liquor->lay_cover_ml);
}

static void
find_left (Finder *finder)
{
  for (gsize i = 0; i < finder->sheet->n_dyes; i++)
    if (finder->sheet->dyes[i].left_percent > MOST_LEFT_PERCENT)
      found (finder, (SwRemark){ .kind = SW_REMARK_LEFT, .dye = (int) finder->sheet->dyes[i].dye, .other_dye = -1, .is = finder->sheet->dyes[i].left_percent, .limit = MOST_LEFT_PERCENT });
}

/* Of each dye, the pour at which the pH is furthest out of its class's window. Acid that comes later finishes the dyeing, as it should. */
static void
find_ph (Finder *finder)
{
  for (gsize i = 0; i < finder->sheet->n_dyes; i++)
    {
      guint index = finder->sheet->dyes[i].dye;
      const SwDyeClassFacts *facts = sw_dye_class_facts (dye_at (finder, index)->dye_class);
      SwRemark worst = { .kind = SW_REMARK_PH_WINDOW, .dye = (int) index, .other_dye = -1 };
      double most = PH_TOLERANCE;

      for (gsize step = 0; step < finder->sheet->n_steps; step++)
        {
          const SwStep *pour = finder->sketch->steps->pdata[step];
          double ph = finder->sheet->steps[step].ph;
          double out = MAX (facts->ph_low - ph, ph - facts->ph_high);

          if (!sw_step_is_pour (pour) || pour->dye != dye_at (finder, index)->id || out <= most)
            continue;
          most = out;
          worst.step = pour->id;
          worst.is = ph;
          worst.limit = ph < facts->ph_low ? facts->ph_low : facts->ph_high;
        }
      if (worst.step != 0)
        found (finder, worst);
    }
}

static void
find_no_set (Finder *finder)
{
  const GPtrArray *steps = finder->sketch->steps;
  gboolean open = FALSE;

  for (guint i = 0; i < steps->len; i++)
    {
      const SwStep *step = steps->pdata[i];

      if (sw_step_is_pour (step))
        open = TRUE;
      if (step->kind == SW_STEP_SET && step->minutes > 0.0)
        open = FALSE;
    }
  if (open && finder->sheet->clear_percent < CLEAR_PERCENT)
    found_of_all (finder, SW_REMARK_NO_SET, 0.0, 0.0);
}

/* Rounding that takes a good part of the amount with it, in any pan. */
static gboolean
rounded_away (SwAmount amount)
{
  return fabs (amount.rounded - amount.exact) > MOST_ROUNDED * amount.exact;
}

static void
find_rounded (Finder *finder)
{
  const SwSheetSettings *settings = &finder->sketch->sheet;

  for (gsize i = 0; i < finder->sheet->n_pours; i++)
    {
      const SwSheetPour *pour = &finder->sheet->pours[i];
      SwAmount fuller = pour->dry ? pour->dye_g : pour->stock_ml, lesser = pour->dry ? pour->lesser_dye_g : pour->lesser_stock_ml;
      SwAmount worse = rounded_away (fuller) ? fuller : lesser;

      if (rounded_away (worse))
        found (finder, (SwRemark){ .kind = SW_REMARK_ROUNDED_AWAY, .step = pour->step, .dye = (int) pour->dye, .other_dye = -1, .is = worse.exact, .limit = pour->dry ? settings->weigh_step_g : settings->measure_step_ml });
    }
}

static void
find_white_edges (Finder *finder)
{
  const GPtrArray *steps = finder->sketch->steps;
  double most = -1.0;
  gboolean second_face = FALSE;

  for (guint i = 0; i < steps->len; i++)
    {
      const SwStep *step = steps->pdata[i];

      if (step->kind == SW_STEP_FLIP)
        second_face = !second_face;
      if (!sw_step_is_pour (step))
        continue;
      if (second_face)
        return;
      most = MAX (most, step->worked_in);
    }
  if (most >= 0.0 && most < WORKED_THROUGH)
    found_of_all (finder, SW_REMARK_WHITE_EDGES, most, WORKED_THROUGH);
}

/* The gravest first: what spoils the dyeing before what changes it. */
static const SwRemarkKind gravity[SW_N_REMARKS] = {
  SW_REMARK_RUNS_OVER,
  SW_REMARK_PAN_SMALL,
  SW_REMARK_NO_SET,
  SW_REMARK_LEFT,
  SW_REMARK_DEPTH,
  SW_REMARK_NOT_COVERED,
  SW_REMARK_ROUNDED_AWAY,
  SW_REMARK_PH_WINDOW,
  SW_REMARK_SHORT_REST,
  SW_REMARK_SWAMPED,
  SW_REMARK_WHITE_EDGES,
};

static int
rank_of (SwRemarkKind kind)
{
  for (int i = 0; i < SW_N_REMARKS; i++)
    if (gravity[i] == kind)
      return i;
  g_return_val_if_reached (SW_N_REMARKS);
}

static int
graver_first (gconstpointer a, gconstpointer b)
{
  return rank_of (((const SwRemark *) a)->kind) - rank_of (((const SwRemark *) b)->kind);
}

GArray *
sw_sheet_remarks (const SwSheet *sheet)
{
  static void (*const finders[]) (Finder *) = {
    find_depth, find_short_rest, find_swamped, find_pan, find_left, find_ph, find_no_set, find_rounded, find_white_edges
  };
  Finder finder = { sheet, sheet->sketch, g_array_new (FALSE, FALSE, sizeof (SwRemark)) };

  for (gsize i = 0; i < G_N_ELEMENTS (finders); i++)
    finders[i](&finder);
  g_array_sort (finder.remarks, graver_first);
  return finder.remarks;
}
