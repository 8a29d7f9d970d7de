/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "forecast/sw-repeat.h"

#include "sheet/sw-sheet.h"
#include "sketch/sw-member.h"

#include <math.h>

#define WEIGHED_BY 0.05
#define POURED_BY_ML 1.0
#define WORST_SHARE 0.01

/* One question after the other to the same forecaster, so that only what a slip changes is computed again. */
typedef struct
{
  SwForecaster *forecaster;
  SwSketch *sketch;    /* every pour by its volume */
  GPtrArray *plain;    /* of SwForecast or NULL, per group of skeins */
  GArray *differences; /* of double, one per stitch */
  GArray *effects;
  GCancellable *cancellable;
} Slips;

/* A member's limits hold for slips too: stock at its strongest cannot be made stronger. */
static double
within (SwRecord record, const char *name, double value)
{
  const SwMember *member = sw_record_find_member (record, name);

  return CLAMP (value, member->min, member->max);
}

/* Slips are made with the jug and the scale: what was to be poured by depth is a volume by then, if it is one that can be poured. */
static SwSketch *
by_volume (const SwSketch *sketch)
{
  SwSketch *copy = sw_sketch_copy (sketch);

  for (guint i = 0; i < copy->steps->len; i++)
    {
      SwStep *step = copy->steps->pdata[i];
      double ml = sw_step_is_pour (step) && step->depth_percent > 0.0 ? sw_schedule_pour_ml (sketch, step) : -1.0;

      if (ml < 0.0 || ml > within (SW_RECORD_STEP, "amount_ml", ml))
        continue;
      step->amount_ml = ml;
      step->depth_percent = 0.0;
    }
  return copy;
}

const char *
sw_slip_name (SwSlip slip)
{
  static const char *const names[SW_N_SLIPS] = { "weighed-more", "weighed-less", "poured-more", "poured-less", "rounded" };

  g_return_val_if_fail ((guint) slip < SW_N_SLIPS, NULL);

  return names[slip];
}

static int
smaller_first (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/*
 * Skeins in the lanes of the pan are looked at in groups, as many as are
 * forecast at once: a slip at a pour in those that it lies over, any other in
 * the first group.
 */
static gint64
group_at (const SwSketch *sketch, const SwStep *pour)
{
  gint64 lane = pour != NULL ? (gint64) floor (pour->y_cm / sketch->lay.width_cm) : 0;

  return CLAMP (lane, 0, sketch->lay.skeins - 1) / SW_MOST_ALTERNATE;
}

static void
look_at_group (SwSketch *sketch, gint64 group)
{
  gint64 first = group * SW_MOST_ALTERNATE;

  sketch->cloth.skein = first + 1;
  sketch->cloth.alternate_skeins = MIN (sketch->lay.skeins - first, SW_MOST_ALTERNATE);
  sketch->cloth.alternate_shift_cm = 0.0;
}

/* Colour of a stitch: the mean of its two legs. */
static SwLab
stitch_colour (const SwSkeinLegs *legs, gsize stitch)
{
  gsize i = 2 * stitch, j = i + 1;

  return sw_lab_from_xyz ((SwXyz){
      (double) (legs->leg_x[i] + legs->leg_x[j]) / 2.0,
      (double) (legs->leg_y[i] + legs->leg_y[j]) / 2.0,
      (double) (legs->leg_z[i] + legs->leg_z[j]) / 2.0,
  });
}

/* Stitch by stitch, since the strands lie where they lay. */
static void
compare (GArray *differences, const SwForecast *plain, const SwForecast *slipped, SwSlipEffect *effect)
{
  double sum = 0.0, worst_sum = 0.0;
  guint worst;

  g_array_set_size (differences, 0);
  for (gsize skein = 0; skein < plain->n_skeins; skein++)
    for (gsize i = 0; i < plain->skeins[skein].n_stitches; i++)
      {
        double difference = sw_ciede2000 (stitch_colour (&plain->skeins[skein], i), stitch_colour (&slipped->skeins[skein], i));

        sum += difference;
        g_array_append_val (differences, difference);
      }
  g_array_sort (differences, smaller_first);
  worst = MAX (1, (guint) (WORST_SHARE * differences->len));
  for (guint i = differences->len - worst; i < differences->len; i++)
    worst_sum += g_array_index (differences, double, i);
  effect->mean = sum / differences->len;
  effect->most = worst_sum / worst;
}

/* (transfer none): the drawing without any slip */
static const SwForecast *
plain_for (Slips *slips, gint64 group, GError **error)
{
  if (slips->plain->pdata[group] == NULL)
    {
      look_at_group (slips->sketch, group);
      slips->plain->pdata[group] = sw_forecaster_run (slips->forecaster, slips->sketch, slips->cancellable, error);
    }
  return slips->plain->pdata[group];
}

static gboolean
measure (Slips *slips, SwSketch *slipped, gint64 group, SwSlipEffect *effect, GError **error)
{
  const SwForecast *plain = plain_for (slips, group, error);
  g_autoptr (SwForecast) forecast = NULL;

  if (plain == NULL)
    return FALSE;
  look_at_group (slipped, group);
  forecast = sw_forecaster_run (slips->forecaster, slipped, slips->cancellable, error);
  if (forecast == NULL)
    return FALSE;
  compare (slips->differences, plain, forecast, effect);
  return TRUE;
}

static gboolean
add (Slips *slips, SwSketch *slipped, gint64 group, SwSlipEffect effect, GError **error)
{
  if (!measure (slips, slipped, group, &effect, error))
    return FALSE;
  g_array_append_val (slips->effects, effect);
  return TRUE;
}

static gboolean
is_poured (const SwSketch *sketch, const SwDye *dye)
{
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (sw_step_is_pour (step) && step->dye == dye->id)
        return TRUE;
    }
  return FALSE;
}

/* More or less powder in the same water, and of grains. */
static gboolean
add_weighed (Slips *slips, guint index, SwSlip slip, GError **error)
{
  g_autoptr (SwSketch) slipped = sw_sketch_copy (slips->sketch);
  SwDye *dye = slipped->dyes->pdata[index];
  double by = slip == SW_SLIP_WEIGHED_MORE ? 1.0 + WEIGHED_BY : 1.0 - WEIGHED_BY;

  dye->stock_percent = within (SW_RECORD_DYE, "stock_percent", dye->stock_percent * by);
  for (guint i = 0; i < slipped->steps->len; i++)
    {
      SwStep *step = slipped->steps->pdata[i];

      if (step->kind == SW_STEP_SPECKLE && step->dry && step->dye == dye->id)
        step->grams = within (SW_RECORD_STEP, "grams", step->grams * by);
    }
  return add (slips, slipped, 0, (SwSlipEffect){ .slip = slip, .dye = (int) index }, error);
}

static gboolean
add_poured (Slips *slips, guint index, SwSlip slip, GError **error)
{
  g_autoptr (SwSketch) slipped = sw_sketch_copy (slips->sketch);
  SwStep *step = slipped->steps->pdata[index];
  double by = slip == SW_SLIP_POURED_MORE ? POURED_BY_ML : -POURED_BY_ML;

  step->amount_ml = within (SW_RECORD_STEP, "amount_ml", step->amount_ml + by);
  return add (slips, slipped, group_at (slipped, step), (SwSlipEffect){ .slip = slip, .step = step->id, .dye = -1 }, error);
}

/* Crystals rounded by the scale make another strength of the same volume. */
static void
round_acid (double *ml, double *percent, SwAmount poured, SwAmount crystals_g, double part)
{
  if (crystals_g.exact > 0.0)
    *percent = CLAMP (*percent * crystals_g.rounded / crystals_g.exact, 0.1, 100.0);
  else
    *ml = poured.rounded / part;
}

/* The drawing as it is when one kind of pan is poured by scale and measure. */
static SwSketch *
rounded_sketch (const SwSketch *sketch, const SwSheet *sheet, gboolean lesser)
{
  SwSketch *rounded = sw_sketch_copy (sketch);
  const SwSheetLiquor *liquor = lesser ? &sheet->lesser_liquor : &sheet->liquor;
  double part = (double) (lesser ? sheet->lesser : sheet->fullest) / (double) sketch->lay.skeins;
  gsize pour = 0;

  rounded->bath.water_ml = within (SW_RECORD_BATH, "water_ml", liquor->water_ml.rounded / part);
  round_acid (&rounded->bath.acid_ml, &rounded->bath.acid_percent, liquor->acid_ml, liquor->crystals_g, part);
  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      SwDye *dye = rounded->dyes->pdata[sheet->dyes[i].dye];

      dye->stock_percent = within (SW_RECORD_DYE, "stock_percent", sheet->dyes[i].strength_percent);
    }
  for (guint i = 0; i < rounded->steps->len; i++)
    {
      SwStep *step = rounded->steps->pdata[i];
      const SwSheetStep *row = &sheet->steps[i];
      SwAmount added = lesser ? row->lesser_added_ml : row->added_ml;

      if (step->kind == SW_STEP_WATER)
        step->volume_ml = added.rounded / part;
      if (step->kind == SW_STEP_ACID)
        round_acid (&step->volume_ml, &step->acid_percent, added, lesser ? row->lesser_crystals_g : row->crystals_g, part);
      if (!sw_step_is_pour (step))
        continue;
      step->depth_percent = 0.0;
      step->amount_ml = within (SW_RECORD_STEP, "amount_ml", (lesser ? sheet->pours[pour].lesser_stock_ml : sheet->pours[pour].stock_ml).rounded / part);
      step->grams = sheet->pours[pour].dry ? (lesser ? sheet->pours[pour].lesser_dye_g : sheet->pours[pour].dye_g).rounded / part : step->grams;
      pour++;
    }
  return rounded;
}

/* In the kind of pan that rounding hits harder. */
static gboolean
add_rounded (Slips *slips, const SwSketch *sketch, GError **error)
{
  g_autoptr (SwSheet) sheet = sw_sheet_new (sketch, NULL);
  SwSlipEffect worse = { .slip = SW_SLIP_ROUNDED, .dye = -1 };

  for (int lesser = 0; lesser <= (sheet->lesser > 0); lesser++)
    {
      g_autoptr (SwSketch) rounded = rounded_sketch (sketch, sheet, lesser);
      SwSlipEffect effect = worse;

      if (!measure (slips, rounded, 0, &effect, error))
        return FALSE;
      if (effect.mean >= worse.mean)
        worse = effect;
    }
  g_array_append_val (slips->effects, worse);
  return TRUE;
}

static gboolean
add_all (Slips *slips, GError **error)
{
  const SwSketch *sketch = slips->sketch;

  for (guint i = 0; i < sketch->dyes->len; i++)
    if (is_poured (sketch, sketch->dyes->pdata[i]))
      for (SwSlip slip = SW_SLIP_WEIGHED_MORE; slip <= SW_SLIP_WEIGHED_LESS; slip++)
        if (!add_weighed (slips, i, slip, error))
          return FALSE;
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (!sw_step_is_pour (step) || (step->kind == SW_STEP_SPECKLE && step->dry) || step->depth_percent > 0.0)
        continue;
      for (SwSlip slip = SW_SLIP_POURED_MORE; slip <= SW_SLIP_POURED_LESS; slip++)
        if (!add_poured (slips, i, slip, error))
          return FALSE;
    }
  return TRUE;
}

static void
unref_forecast (gpointer forecast)
{
  if (forecast != NULL)
    sw_forecast_unref (forecast);
}

GArray *
sw_slips_new (const SwSketch *sketch, GCancellable *cancellable, GError **error)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwSketch) by_hand = NULL;
  g_autoptr (GPtrArray) plain = g_ptr_array_new_with_free_func (unref_forecast);
  g_autoptr (GArray) differences = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) effects = g_array_new (FALSE, FALSE, sizeof (SwSlipEffect));
  Slips slips;

  g_return_val_if_fail (sketch != NULL, NULL);

  if (!sw_sketch_validate (sketch, error))
    return NULL;
  by_hand = by_volume (sketch);
  g_ptr_array_set_size (plain, (int) (sketch->lay.skeins + SW_MOST_ALTERNATE - 1) / SW_MOST_ALTERNATE);
  slips = (Slips){ forecaster, by_hand, plain, differences, effects, cancellable };
  if (!add_all (&slips, error) || !add_rounded (&slips, sketch, error))
    return NULL;
  return g_steal_pointer (&effects);
}
