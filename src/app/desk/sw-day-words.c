/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-day-words.h"

#include "app/desk/sw-sheet-words.h"
#include "app/desk/sw-step-words.h"
#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>

void
sw_day_words_clear (SwDayWords *words)
{
  g_clear_pointer (&words->title, g_free);
  g_clear_pointer (&words->amount, g_free);
  g_clear_pointer (&words->beside, g_free);
  g_clear_pointer (&words->detail, g_free);
  g_clear_pointer (&words->caution, g_free);
  g_clear_pointer (&words->caution_text, g_free);
}

static gsize
step_index (const SwSheet *sheet, guint step)
{
  for (gsize i = 0; i < sheet->n_steps; i++)
    if (sheet->steps[i].step == step)
      return i;
  return sheet->n_steps;
}

/* Amounts of the deeds that have one */

/* How many pans get it, where there are more. */
static char *
each_pan (const SwSheet *sheet)
{
  if (sheet->pans < 2)
    return NULL;
  /* Translators: so much goes into each of several pans */
  return g_strdup_printf (ngettext ("into %u pan", "into each of %u pans", sheet->pans), (guint) sheet->pans);
}

static void
append (char **text, const char *between, char *more)
{
  g_autofree char *before = *text, *added = more;

  if (added == NULL || *added == '\0')
    *text = g_steal_pointer (&before);
  else
    *text = before != NULL && *before != '\0' ? g_strconcat (before, between, added, NULL) : g_steal_pointer (&added);
}

/* What pans get that hold a skein less than the others. */
static char *
lesser_words (const SwSheet *sheet, const char *amount)
{
  if (sheet->lesser == 0)
    return NULL;
  /* Translators: an amount, for pans that hold fewer skeins than the others */
  return g_strdup_printf (ngettext ("%2$s in a pan with %1$d skein", "%2$s in a pan with %1$d skeins", (gulong) sheet->lesser), (int) sheet->lesser, amount);
}

static void
pour_words (const SwSheet *sheet, const SwDayDeed *deed, SwSystem system, SwDayWords *words)
{
  const SwSheetPour *pour = sw_sheet_find_pour (sheet, deed->step);
  const SwStep *step = sw_sketch_find_step (sheet->sketch, deed->step);
  const SwMeasureSystem measures = sw_sheet_measures (system);
  g_autofree char *grams = NULL, *lesser = NULL;

  if (pour == NULL)
    return;
  lesser = pour->dry ? sw_dye_text (pour->lesser_dye_g.rounded) : sw_volume_text (pour->lesser_stock_ml.rounded, measures);
  grams = sw_dye_text (pour->dye_g.rounded);
  words->amount = pour->dry ? g_strdup (grams) : sw_volume_text (pour->stock_ml.rounded, measures);
  if (pour->dry)
    words->beside = g_strdup (_ ("dry grains"));
  else
    words->beside = sw_spoons_text (pour->stock_ml.rounded, measures);
  /* Translators: which dye is poured: "of Teal" */
  append (&words->beside, " · ", g_strdup_printf (_ ("of %s"), sw_dye_title (sheet->sketch->dyes->pdata[pour->dye])));
  append (&words->beside, " · ", each_pan (sheet));
  append (&words->detail, "\n", lesser_words (sheet, lesser));
  append (&words->detail, "\n", sw_step_place (sheet->sketch, step, system));
  if (step->worked_in > 0)
    /* Translators: how far a pour is pushed through the yarn */
    append (&words->detail, "\n", g_strdup_printf (_ ("worked in %.0f %%"), 100 * step->worked_in));
}

static void
added_words (const SwSheet *sheet, const SwDayDeed *deed, SwSystem system, SwDayWords *words)
{
  const SwMeasureSystem measures = sw_sheet_measures (system);
  const gsize i = step_index (sheet, deed->step);
  g_autofree char *lesser = NULL;

  if (i == sheet->n_steps)
    return;
  lesser = sw_volume_text (sheet->steps[i].lesser_added_ml.rounded, measures);
  words->amount = sw_volume_text (sheet->steps[i].added_ml.rounded, measures);
  words->beside = sw_spoons_text (sheet->steps[i].added_ml.rounded, measures);
  append (&words->beside, " · ", each_pan (sheet));
  append (&words->detail, "\n", lesser_words (sheet, lesser));
  append (&words->detail, "\n", sw_sheet_step_detail (sheet, i, system));
}

/* One dye a line, as it is weighed. */
static void
stock_words (const SwSheet *sheet, const SwDayDeed *deed, SwSystem system, SwDayWords *words)
{
  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      const SwSheetDye *dye = &sheet->dyes[i];
      const char *name = sw_dye_title (sheet->sketch->dyes->pdata[dye->dye]);
      g_autofree char *grams = sw_dye_text (dye->weigh_g.rounded);
      g_autofree char *grains = sw_dye_text (dye->dry_g.rounded);
      g_autofree char *water = sw_volume_text (dye->water_ml, sw_sheet_measures (system));

      if (dye->weigh_g.rounded > 0)
        /* Translators: a dye, its grams, and the water to dissolve it in */
        append (&words->detail, "\n", g_strdup_printf (_ ("%1$s: %2$s in %3$s of water"), name, grams, water));
      if (dye->dry_g.rounded > 0)
        /* Translators: a dye and grams of it that stay dry */
        append (&words->detail, "\n", g_strdup_printf (_ ("%1$s: %2$s, dry"), name, grains));
    }
}

static void
fill_words (const SwSheet *sheet, const SwDayDeed *deed, SwSystem system, SwDayWords *words)
{
  const SwMeasureSystem measures = sw_sheet_measures (system);
  const SwSheetLiquor *liquor = &sheet->liquor;
  g_autofree char *acid = sw_volume_text (liquor->acid_ml.rounded, measures);
  g_autofree char *spoons = sw_spoons_text (liquor->acid_ml.rounded, measures);
  g_autofree char *crystals = sw_dye_text (liquor->crystals_g.rounded);
  g_autofree char *lesser = sw_volume_text (sheet->lesser_liquor.water_ml.rounded, measures);

  words->amount = sw_volume_text (liquor->water_ml.rounded, measures);
  words->beside = each_pan (sheet);
  append (&words->detail, "\n", lesser_words (sheet, lesser));
  append (&words->detail, "\n", sw_sheet_spread (sheet, system));
  if (liquor->crystals_g.rounded > 0)
    /* Translators: citric acid, and the water to dissolve it in */
    append (&words->detail, "\n", g_strdup_printf (_ ("Acid: %1$s of crystals in %2$s of water"), crystals, acid));
  else if (liquor->acid_ml.rounded > 0)
    /* Translators: a volume of acid, its strength, and the same in spoons */
    append (&words->detail, "\n", g_strdup_printf (_ ("Acid: %1$s of %2$.3g %%, %3$s"), acid, sheet->sketch->bath.acid_percent, spoons));
}

static void
heat_words (const SwSheet *sheet, const SwDayDeed *deed, SwSystem system, SwDayWords *words)
{
  if (deed->temperature_c > 0)
    words->amount = sw_temperature_text (deed->temperature_c, sw_sheet_measures (system));
}

/* Which of several it is. */
static void
rinse_words (const SwSheet *sheet, const SwDayDeed *deed, SwSystem system, SwDayWords *words)
{
  heat_words (sheet, deed, system, words);
  /* Translators: "Rinse 2 of 3" without the word before it */
  words->beside = g_strdup_printf (_ ("%1$u of %2$u"), deed->nth + 1, (guint) sheet->sketch->sheet.rinses);
}

static void
cautions_of (const SwSheet *sheet, const SwDayDeed *deed, SwDayWords *words)
{
  const guint bits = sw_cautions_for_deed (sheet->sketch, (int) deed->kind, deed->step);

  for (SwCaution caution = 0; caution < SW_N_CAUTIONS; caution++)
    if (bits & (1u << caution))
      {
        append (&words->caution, " · ", g_strdup (sw_caution_title (caution)));
        append (&words->caution_text, "\n", g_strdup (sw_caution_text (caution)));
      }
}

void
sw_day_words (const SwSheet *sheet, const SwDayDeed *deed, SwSystem system, SwDayWords *words)
{
  static void (*const tellers[SW_N_DEEDS]) (const SwSheet *, const SwDayDeed *, SwSystem, SwDayWords *) = {
    [SW_DEED_PRESOAK] = heat_words,
    [SW_DEED_STOCK] = stock_words,
    [SW_DEED_FILL] = fill_words,
    [SW_DEED_HEAT] = heat_words,
    [SW_DEED_POUR] = pour_words,
    [SW_DEED_REST] = heat_words,
    [SW_DEED_ACID] = added_words,
    [SW_DEED_WATER] = added_words,
    [SW_DEED_SET] = heat_words,
    [SW_DEED_WASH] = heat_words,
    [SW_DEED_RINSE] = rinse_words,
  };

  g_return_if_fail (sheet != NULL && deed != NULL && words != NULL);

  *words = (SwDayWords){ .title = g_strdup (deed->title) };
  if (tellers[deed->kind] != NULL)
    tellers[deed->kind](sheet, deed, system, words);
  if (words->amount == NULL)
    words->amount = g_strdup ("");
  if (words->beside == NULL)
    words->beside = g_strdup ("");
  if (words->detail == NULL)
    words->detail = g_strdup ("");
  cautions_of (sheet, deed, words);
}

char *
sw_day_next_words (const SwSheet *sheet, const SwDayDeed *deed, SwSystem system)
{
  g_auto (SwDayWords) words = { NULL };
  g_autofree char *time = sw_minutes_text (deed->minutes);

  sw_day_words (sheet, deed, system, &words);
  if (deed->waits)
    /* Translators: a deed and how long it takes, or how much it is of: "Rest, 10 min"; "Canal, 16 mL" */
    return g_strdup_printf (_ ("%1$s, %2$s"), words.title, time);
  if (*words.amount != '\0')
    return g_strdup_printf (_ ("%1$s, %2$s"), words.title, words.amount);
  return g_strdup (words.title);
}

char *
sw_day_digits (gint64 left_us)
{
  /* A timer of a minute begins at 1:00 and is up at 0:00. */
  const gint64 seconds = left_us > 0 ? (left_us + G_USEC_PER_SEC - 1) / G_USEC_PER_SEC : -left_us / G_USEC_PER_SEC;
  const char *sign = left_us < 0 ? "+" : "";

  if (seconds >= 3600)
    return g_strdup_printf ("%s%d:%02d:%02d", sign, (int) (seconds / 3600), (int) (seconds / 60 % 60), (int) (seconds % 60));
  return g_strdup_printf ("%s%d:%02d", sign, (int) (seconds / 60), (int) (seconds % 60));
}

char *
sw_day_timer_title (const SwDayTimer *timer)
{
  if (timer->pan == 0)
    return g_strdup (timer->label);
  /* Translators: what a timer is for, and the number of a pan */
  return g_strdup_printf (_ ("%1$s, pan %2$u"), timer->label, timer->pan);
}

char *
sw_day_timer_detail (const SwDayTimer *timer)
{
  g_autoptr (GDateTime) end = g_date_time_new_from_unix_local (timer->end_us / G_USEC_PER_SEC);
  g_autofree char *clock = end != NULL ? g_date_time_format (end, "%H:%M") : g_strdup ("?");

  if (timer->paused)
    /* Translators: of a timer */
    return g_strdup (_ ("paused"));
  if (timer->rung)
    /* Translators: of a timer; the time of day at which it ended */
    return g_strdup_printf (_ ("time is up since %s"), clock);
  /* Translators: of a timer; the time of day at which it ends */
  return g_strdup_printf (_ ("until %s"), clock);
}

char *
sw_day_done_words (const SwDayClock *clock)
{
  const SwDayDeed *deed = sw_day_clock_deed (clock, 0), *next = sw_day_clock_deed (clock, 1);
  const guint unfinished = sw_day_clock_unfinished_pan (clock);

  if (deed == NULL && unfinished > 0)
    /* Translators: a large button: the number of a pan that has not come so far */
    return g_strdup_printf (_ ("Go On with Pan %u"), unfinished);
  if (deed == NULL)
    return g_strdup (_ ("Note This Batch"));
  if (sw_day_clock_is_unbegun (clock))
    /* Translators: a large button: the pan has come to something that waits */
    return g_strdup (_ ("Start the Timer"));
  /* Translators: a large button: the next thing is done while this one's timer runs */
  return g_strdup (deed->waits && next != NULL && next->beside ? _ ("Go On Meanwhile") : _ ("Done"));
}

SwSketch *
sw_day_sketch_in_hand (const SwSketch *drawing, const SwDayClock *clock)
{
  SwSketch *sketch = sw_sketch_copy (drawing);
  g_autoptr (SwSheet) sheet = NULL;

  if (clock->hand == 0)
    return sketch;
  sheet = sw_sheet_new (sketch, NULL);
  sketch->sheet.skeins = (gint64) (clock->hand <= sheet->fuller_pans ? sheet->fullest : sheet->lesser);
  sketch->sheet.pans = 1;
  return sketch;
}
