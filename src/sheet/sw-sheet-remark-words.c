/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-sheet-remarks.h"

#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>

/* What a sentence may name. */
typedef struct
{
  const SwSheet *sheet;
  const SwRemark *remark;
  const char *step, *dye, *other_dye;
  SwMeasureSystem system;
} Subject;

static const char *
dye_name (const SwSheet *sheet, int dye)
{
  return dye >= 0 ? sw_dye_title (sheet->sketch->dyes->pdata[dye]) : "";
}

static char *
depth_text (const Subject *it)
{
  double grams = 0.0;

  for (gsize i = 0; i < it->sheet->n_dyes; i++)
    grams += it->sheet->dyes[i].poured_g.exact;
  /* Translators: grams of dye, grams of yarn, two depths in percent on the weight of fibre */
  return g_strdup_printf (_ ("%.4g g of dye on %.4g g of yarn is a depth of %.3g %%, more than the %.3g %% that the fibre usually takes: the rest would not strike."),
                          grams, it->sheet->fibre_g, it->remark->is, it->remark->limit);
}

static char *
short_rest_text (const Subject *it)
{
  /* Translators: a pour, its dye, a percentage */
  return g_strdup_printf (_ ("%s: only %.0f %% of %s has struck before the next pour or flip. The rest runs on; wait longer or hotter if its edge should stay."),
                          it->step, it->remark->is, it->dye);
}

static char *
swamped_text (const Subject *it)
{
  /* Translators: two dyes, the dark one first; percentages. Where the two meet the pale one is lost */
  return g_strdup_printf (_ ("%1$s is %3$.0f %% of the colour of %1$s and %2$s together, with %4$.0f %% of their weight: where they meet it swamps %2$s."),
                          it->dye, it->other_dye, it->remark->is, it->remark->limit);
}

static char *
pan_small_text (const Subject *it)
{
  const SwSketch *sketch = it->sheet->sketch;
  g_autofree char *length = sw_length_text (sw_sketch_lay_length (sketch), it->system);
  g_autofree char *width = sw_length_text (sketch->lay.width_cm * (double) it->sheet->fullest, it->system);
  g_autofree char *pan_length = sw_length_text (sketch->lay.pan_length_cm, it->system);
  g_autofree char *pan_width = sw_length_text (sketch->lay.pan_width_cm, it->system);

  /* Translators: length and width of the laid skeins, then of the pan */
  return g_strdup_printf (_ ("The skein lies %s by %s, and the pan is %s by %s: fold it once more or take a larger pan."), length, width, pan_length, pan_width);
}

static char *
runs_over_text (const Subject *it)
{
  g_autofree char *liquor = sw_volume_text (it->remark->is, it->system), *most = sw_volume_text (it->remark->limit, it->system);
  g_autofree char *above = sw_length_text (1.0, it->system);

  /* Translators: two volumes, and a length */
  return g_strdup_printf (_ ("All the liquor is %s, and the pan holds %s up to %s above the yarn: it may run over."), liquor, most, above);
}

static char *
not_covered_text (const Subject *it)
{
  g_autofree char *liquor = sw_volume_text (it->remark->is, it->system), *covers = sw_volume_text (sw_round_to (it->remark->limit, 10.0), it->system);

  /* Translators: two volumes */
  return g_strdup_printf (_ ("The skeins stand out of the liquor: %s is in the pan, and some %s would cover them. That is usual where they are steamed: pours keep their edges, and the yarn must not dry out. For softer edges take more water."), liquor, covers);
}

static char *
left_text (const Subject *it)
{
  /* Translators: percentage, dye */
  return g_strdup_printf (_ ("%.0f %% of %s is still in the bath at the end: set it longer, hotter or with more acid, or use less."), it->remark->is, it->dye);
}

static char *
ph_window_text (const Subject *it)
{
  if (it->remark->is < it->remark->limit)
    /* Translators: pour, its dye, pH, the least pH of its class */
    return g_strdup_printf (_ ("%s: %s is poured at pH %.1f, and dyes of its class like pH %.0f or more: it may strike at once and unevenly."), it->step, it->dye, it->remark->is, it->remark->limit);
  /* Translators: pour, its dye, pH, the highest pH of its class */
  return g_strdup_printf (_ ("%s: %s is poured at pH %.1f, and dyes of its class like pH %.0f or less: it may hardly strike."), it->step, it->dye, it->remark->is, it->remark->limit);
}

static char *
no_set_text (const Subject *it)
{
  (void) it;
  return g_strdup (_ ("Nothing sets the dye after the last pour: add a set at the end, or it will wash out."));
}

static char *
rounded_away_text (const Subject *it)
{
  const SwSheet *sheet = it->sheet;
  gboolean dry = FALSE;

  for (gsize i = 0; i < sheet->n_pours; i++)
    if (sheet->pours[i].step == it->remark->step)
      dry = sheet->pours[i].dry;
  if (dry)
    /* Translators: pour, grams, what the scale shows in grams */
    return g_strdup_printf (_ ("%s: %.3g g is too little for a scale that reads to %.3g g. Dye more skeins at once, or use a finer scale."), it->step, it->remark->is, it->remark->limit);
  /* Translators: pour, mL, what the measure shows in mL */
  return g_strdup_printf (_ ("%s: %.3g mL is too little for a measure that reads to %.3g mL. Use a thinner stock and more of it, or a finer measure."), it->step, it->remark->is, it->remark->limit);
}

static char *
white_edges_text (const Subject *it)
{
  (void) it;
  return g_strdup (_ ("Nothing is worked in and nothing is poured on the second face: covered edges and the underside stay pale. That may be what you want."));
}

static const struct
{
  const char *name; /* in files */
  char *(*text) (const Subject *);
} kinds[SW_N_REMARKS] = {
  [SW_REMARK_DEPTH] = { "depth", depth_text },
  [SW_REMARK_SHORT_REST] = { "short-rest", short_rest_text },
  [SW_REMARK_SWAMPED] = { "swamped", swamped_text },
  [SW_REMARK_PAN_SMALL] = { "pan-small", pan_small_text },
  [SW_REMARK_RUNS_OVER] = { "runs-over", runs_over_text },
  [SW_REMARK_NOT_COVERED] = { "not-covered", not_covered_text },
  [SW_REMARK_LEFT] = { "left", left_text },
  [SW_REMARK_PH_WINDOW] = { "ph-window", ph_window_text },
  [SW_REMARK_NO_SET] = { "no-set", no_set_text },
  [SW_REMARK_ROUNDED_AWAY] = { "rounded-away", rounded_away_text },
  [SW_REMARK_WHITE_EDGES] = { "white-edges", white_edges_text },
};

const char *
sw_sheet_remark_name (SwRemarkKind kind)
{
  g_return_val_if_fail ((guint) kind < SW_N_REMARKS, NULL);

  return kinds[kind].name;
}

char *
sw_sheet_remark_text (const SwSheet *sheet, const SwRemark *remark, SwMeasureSystem system)
{
  const SwStep *step;
  g_autofree char *title = NULL;

  g_return_val_if_fail (sheet != NULL && remark != NULL && (guint) remark->kind < SW_N_REMARKS, NULL);

  step = sw_sketch_find_step (sheet->sketch, remark->step);
  title = step != NULL ? sw_step_title (sheet->sketch, step) : NULL;
  return kinds[remark->kind].text (&(const Subject){ sheet, remark, title, dye_name (sheet, remark->dye), dye_name (sheet, remark->other_dye), system });
}
