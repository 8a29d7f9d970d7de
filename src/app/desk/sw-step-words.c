/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-step-words.h"

#include "bath/sw-schedule.h"
#include "draw/sw-pan-geometry.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
pour_amount (const SwSketch *sketch, const SwStep *step, SwSystem system)
{
  if (step->kind == SW_STEP_SPECKLE && step->dry)
    return sw_units_format (SW_QUANTITY_MASS, step->grams, system);
  return sw_units_format (SW_QUANTITY_VOLUME, sw_schedule_pour_ml (sketch, step), system);
}

char *
sw_step_detail (const SwSketch *sketch, const SwStep *step, SwSystem system)
{
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;
  g_autofree char *third = NULL;

  g_return_val_if_fail (sketch != NULL && step != NULL, NULL);

  switch (step->kind)
    {
    case SW_STEP_REST:
    case SW_STEP_SET:
      first = sw_units_format (SW_QUANTITY_TIME, step->minutes, system);
      second = sw_units_format (SW_QUANTITY_TEMPERATURE, step->temperature_c, system);
      /* Translators: a time and a temperature: 30 min at 95 °C */
      return g_strdup_printf (_ ("%s at %s"), first, second);
    case SW_STEP_FLIP:
      return g_strdup ("");
    case SW_STEP_ACID:
      first = sw_units_format (SW_QUANTITY_VOLUME, step->volume_ml, system);
      second = sw_units_format (SW_QUANTITY_PERCENT, step->acid_percent, system);
      /* Translators: a volume and a strength: 30 mL of 5 % */
      return g_strdup_printf (_ ("%s of %s"), first, second);
    case SW_STEP_WATER:
      return sw_units_format (SW_QUANTITY_VOLUME, step->volume_ml, system);
    case SW_STEP_BAND:
    case SW_STEP_SPLOTCH:
    case SW_STEP_SPECKLE:
    default:
      first = pour_amount (sketch, step, system);
      second = sw_units_format (SW_QUANTITY_LENGTH, step->x_cm, system);
      third = sw_units_format (SW_QUANTITY_LENGTH, step->width_cm, system);
      /* Translators: of a pour: amount, place along the skein, width: 30 mL at 42 cm, 12 cm wide */
      return g_strdup_printf (_ ("%s at %s, %s wide"), first, second, third);
    }
}

char *
sw_step_place (const SwSketch *sketch, const SwStep *step, SwSystem system)
{
  g_autofree char *place = NULL;
  g_autofree char *width = NULL;

  g_return_val_if_fail (sketch != NULL && step != NULL, NULL);

  place = sw_units_format (SW_QUANTITY_LENGTH, step->x_cm, system);
  width = sw_units_format (SW_QUANTITY_LENGTH, step->width_cm, system);
  /* Translators: of a pour: place along the skein, width: at 42 cm, 12 cm wide */
  return g_strdup_printf (_ ("at %s, %s wide"), place, width);
}

/* A band that runs right across the skein, whose place across says nothing. */
static char *
band_sentence (const char *title, const char *detail, const char *angle, int worked_in)
{
  if (angle == NULL)
    /* Translators: a band of colour: title, amounts and place, per cent: "Band of Teal: 30 mL at 42 cm, 12 cm wide; from edge to edge, worked in 30 %." */
    return g_strdup_printf (_ ("%s: %s; from edge to edge, worked in %d\u00a0%%."), title, detail, worked_in);
  /* Translators: the same, and how far it leans: "slanted 10°" */
  return g_strdup_printf (_ ("%s: %s; from edge to edge, slanted %s, worked in %d\u00a0%%."), title, detail, angle, worked_in);
}

/* Where it is across the skein, how it is turned if it is, how far it is worked in. */
static char *
pour_sentence (const SwSketch *sketch, const SwStep *step, SwSystem system)
{
  g_autofree char *title = sw_step_title (sketch, step);
  g_autofree char *detail = sw_step_detail (sketch, step, system);
  g_autofree char *across = sw_units_format (SW_QUANTITY_LENGTH, step->length_cm, system);
  g_autofree char *place = sw_units_format (SW_QUANTITY_LENGTH, step->y_cm, system);
  g_autofree char *angle = fabs (remainder (step->angle_deg, 180)) >= 0.05 ? sw_units_format (SW_QUANTITY_ANGLE, step->angle_deg, system) : NULL;
  int worked_in = (int) lround (step->worked_in * 100);

  if (step->kind == SW_STEP_BAND && step->length_cm <= 0)
    return band_sentence (title, detail, angle, worked_in);
  if (angle == NULL)
    /* Translators: title, amounts and place, extent across, place across, per cent */
    return g_strdup_printf (_ ("%s: %s; %s across at %s, worked in %d\u00a0%%."), title, detail, across, place, worked_in);
  if (step->kind == SW_STEP_BAND)
    /* Translators: title, amounts and place, extent across, place across, angle, per cent */
    return g_strdup_printf (_ ("%s: %s; %s across at %s, slanted %s, worked in %d\u00a0%%."), title, detail, across, place, angle, worked_in);
  /* Translators: title, amounts and place, extent across, place across, angle, per cent */
  return g_strdup_printf (_ ("%s: %s; %s across at %s, turned %s, worked in %d\u00a0%%."), title, detail, across, place, angle, worked_in);
}

char *
sw_step_sentence (const SwSketch *sketch, const SwStep *step, SwSystem system)
{
  g_autofree char *title = NULL;
  g_autofree char *detail = NULL;

  g_return_val_if_fail (sketch != NULL && step != NULL, NULL);

  if (sw_step_is_pour (step))
    return pour_sentence (sketch, step, system);

  title = sw_step_title (sketch, step);
  detail = sw_step_detail (sketch, step, system);
  if (*detail == '\0')
    /* Translators: a step of the dyeing that has no amounts, as a sentence: "Flip." */
    return g_strdup_printf (_ ("%s."), title);
  /* Translators: a step of the dyeing and its amounts, as a sentence: "Rest: 10 min at 85 °C." */
  return g_strdup_printf (_ ("%s: %s."), title, detail);
}

static char *
pour_reading (const SwSketch *sketch, const SwStep *step, const char *sentence)
{
  guint number = sw_pan_pour_number (sketch, step->id);
  gboolean second = sw_pan_pour_on_second (sketch, step->id);

  if (step->name != NULL && *step->name != '\0')
    {
      if (second)
        /* Translators: a pour's number, its name, a sentence about it: "3, Canal. Band of Teal: 30 mL at 42 cm. On the second face." */
        return g_strdup_printf (_ ("%1$u, %2$s. %3$s On the second face."), number, step->name, sentence);
      /* Translators: a pour's number, its name, a sentence about it: "3, Canal. Band of Teal: 30 mL at 42 cm. On the first face." */
      return g_strdup_printf (_ ("%1$u, %2$s. %3$s On the first face."), number, step->name, sentence);
    }
  if (second)
    /* Translators: a pour's number, a sentence about it */
    return g_strdup_printf (_ ("%1$u. %2$s On the second face."), number, sentence);
  /* Translators: a pour's number, a sentence about it */
  return g_strdup_printf (_ ("%1$u. %2$s On the first face."), number, sentence);
}

char *
sw_step_reading (const SwSketch *sketch, const SwStep *step, SwSystem system)
{
  SwStep nameless;
  g_autofree char *sentence = NULL;

  g_return_val_if_fail (sketch != NULL && step != NULL, NULL);

  nameless = *step;
  nameless.name = NULL;
  sentence = sw_step_sentence (sketch, &nameless, system);
  if (sw_step_is_pour (step))
    return pour_reading (sketch, step, sentence);
  if (step->name != NULL && *step->name != '\0')
    /* Translators: a step's own name, a sentence about it: "Tea break. Rest: 10 min at 85 °C." */
    return g_strdup_printf (_ ("%1$s. %2$s"), step->name, sentence);
  return g_steal_pointer (&sentence);
}

/* Later pours count, too: of several that wait for heat, the last one says so for all. */
static gboolean
is_heated_or_followed (const SwSketch *sketch, const SwStep *step)
{
  guint i = 0;

  if (!g_ptr_array_find (sketch->steps, step, &i))
    return FALSE;
  while (++i < sketch->steps->len)
    {
      const SwStep *later = sketch->steps->pdata[i];

      if (sw_step_is_pour (later) || ((later->kind == SW_STEP_REST || later->kind == SW_STEP_SET) && later->minutes > 0))
        return TRUE;
    }
  return FALSE;
}

char *
sw_step_remark (const SwSketch *sketch, const SwStep *step)
{
  g_return_val_if_fail (sketch != NULL && step != NULL, NULL);

  if (!sw_step_is_pour (step) || is_heated_or_followed (sketch, step))
    return NULL;
  /* Translators: of a pour among the steps, on a narrow line: it has no time and heat in which its dye could strike */
  return g_strdup (_ ("No rest or set follows"));
}
