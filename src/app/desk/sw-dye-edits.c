/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-dye-edits.h"

#include "colour/sw-sample-forms.h"
#include "app/desk/sw-step-words.h"
#include "app/desk/sw-units.h"
#include "bath/sw-strike.h"
#include "colour/sw-colour-name.h"
#include "draw/sw-pan-geometry.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Pots to begin with: far apart in hue, of the depth that acid dyes have at 1 %. Ours. */
static const double starts[][3] = {
  { 178, 48, 92 },
  { 32, 92, 138 },
  { 226, 160, 44 },
  { 52, 110, 72 },
  { 104, 66, 134 },
  { 196, 84, 46 },
  { 36, 124, 128 },
  { 72, 54, 48 },
  { 222, 132, 150 },
  { 40, 42, 58 },
};

static gboolean
is_taken (const SwSketch *sketch, const SwSample *sample)
{
  for (guint i = 0; i < sketch->dyes->len; i++)
    if (sw_sample_equal (&((const SwDye *) sketch->dyes->pdata[i])->sample, sample))
      return TRUE;
  return FALSE;
}

static SwSample
fresh_sample (const SwSketch *sketch)
{
  SwSample sample = { SW_SAMPLE_SRGB, { 0 } };

  for (gsize i = 0; i < G_N_ELEMENTS (starts); i++)
    {
      for (int j = 0; j < 3; j++)
        sample.numbers[j] = starts[i][j];
      if (!is_taken (sketch, &sample))
        break;
    }
  return sample;
}

/* "deep blue" as a name: "Deep blue". */
static char *
capitalised (const char *words)
{
  g_autofree char *first = g_utf8_substring (words, 0, 1);
  g_autofree char *upper = g_utf8_strup (first, -1);

  return g_strconcat (upper, g_utf8_next_char (words), NULL);
}

SwEdit *
sw_dye_edits_new (const SwSketch *sketch, guint *id)
{
  g_autoptr (SwDye) dye = NULL;
  g_autofree char *colour = NULL;

  g_return_val_if_fail (sketch != NULL && id != NULL, NULL);

  *id = sw_sketch_fresh_id (sketch);
  dye = sw_dye_new (*id);
  dye->sample = fresh_sample (sketch);
  colour = sw_colour_name (sw_sample_lab (&dye->sample));
  g_free (dye->name);
  dye->name = capitalised (colour);
  return sw_edit_insert_dye (-1, dye);
}

static int
index_of (const SwSketch *sketch, guint dye)
{
  for (guint i = 0; i < sketch->dyes->len; i++)
    if (((const SwDye *) sketch->dyes->pdata[i])->id == dye)
      return (int) i;
  return -1;
}

SwEdit *
sw_dye_edits_duplicate (const SwSketch *sketch, guint dye, guint *id)
{
  g_autoptr (SwDye) copy = NULL;
  g_autofree char *name = NULL;
  int index;

  g_return_val_if_fail (sketch != NULL && id != NULL, NULL);

  index = index_of (sketch, dye);
  if (index < 0)
    return NULL;
  *id = sw_sketch_fresh_id (sketch);
  copy = sw_dye_copy (sketch->dyes->pdata[index]);
  copy->id = *id;
  name = g_steal_pointer (&copy->name);
  /* Translators: the name of a copied dye pot; %s is the name of the first */
  copy->name = *name != '\0' ? g_strdup_printf (_ ("%s, copy"), name) : g_strdup ("");
  return sw_edit_insert_dye (index + 1, copy);
}

GArray *
sw_dye_pours (const SwSketch *sketch, guint dye)
{
  GArray *pours = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (sw_step_is_pour (step) && step->dye == dye)
        g_array_append_val (pours, step->id);
    }
  return pours;
}

SwEdit *
sw_dye_edits_delete (const SwSketch *sketch, guint dye)
{
  g_autoptr (GArray) pours = NULL;
  g_autofree SwEdit **edits = NULL;

  g_return_val_if_fail (sketch != NULL, NULL);

  pours = sw_dye_pours (sketch, dye);
  edits = g_new (SwEdit *, pours->len + 1);
  for (guint i = 0; i < pours->len; i++)
    edits[i] = sw_edit_remove (SW_RECORD_STEP, g_array_index (pours, guint, i));
  edits[pours->len] = sw_edit_remove (SW_RECORD_DYE, dye);
  return sw_edit_group (edits, pours->len + 1);
}

SwEdit *
sw_dye_edits_class (guint dye, SwDyeClass dye_class)
{
  SwValue class_value = sw_value_choice ((int) dye_class);
  SwValue half_time = sw_value_number (sw_dye_class_facts (dye_class)->half_time_min);
  SwEdit *edits[] = {
    sw_edit_set (SW_RECORD_DYE, dye, "dye_class", &class_value),
    sw_edit_set (SW_RECORD_DYE, dye, "half_time_min", &half_time),
  };

  return sw_edit_group (edits, G_N_ELEMENTS (edits));
}

/* As many pours are named as can be read at a glance. */
#define NAMED 4

static char *
name_pours (const SwSketch *sketch, const GArray *pours)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < MIN (pours->len, NAMED); i++)
    {
      const SwStep *step = sw_sketch_find_step (sketch, g_array_index (pours, guint, i));
      g_autofree char *title = sw_step_title (sketch, step);

      /* Translators: the number that a pour bears in the picture, and its name */
      g_ptr_array_add (names, g_strdup_printf (_ ("%1$u %2$s"), sw_pan_pour_number (sketch, step->id), title));
    }
  g_ptr_array_add (names, NULL);
  /* Translators: between the pours in a list: "1 Canal, 4 Sky" */
  return g_strjoinv (_ (", "), (char **) names->pdata);
}

char *
sw_dye_pours_sentence (const SwSketch *sketch, guint dye)
{
  g_autoptr (GArray) pours = NULL;
  g_autofree char *names = NULL;

  g_return_val_if_fail (sketch != NULL, NULL);

  pours = sw_dye_pours (sketch, dye);
  if (pours->len == 0)
    return NULL;
  names = name_pours (sketch, pours);
  if (pours->len > NAMED)
    /* Translators: %1$u is more than 4; %2$s are the first of them: "7 pours use it: 1 Canal, 2 Sky, 3 Far bank, 5 Mist and others." */
    return g_strdup_printf (ngettext ("%1$u pour uses it: %2$s and others.", "%1$u pours use it: %2$s and others.", pours->len), pours->len, names);
  /* Translators: %2$s are their numbers and names: "2 pours use it: 1 Canal, 4 Sky." */
  return g_strdup_printf (ngettext ("%1$u pour uses it: %2$s.", "%1$u pours use it: %2$s.", pours->len), pours->len, names);
}

/* pH in tenths, by the locale; whole where it is whole. */
static char *
ph_text (double ph)
{
  return sw_units_format (SW_QUANTITY_NONE, round (ph * 10) / 10, SW_SYSTEM_METRIC);
}

char *
sw_dye_window_words (SwDyeClass dye_class)
{
  const SwDyeClassFacts *facts = sw_dye_class_facts (dye_class);
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  if (dye_class == SW_DYE_CLASS_UNKNOWN)
    return NULL;
  low = ph_text (facts->ph_low);
  high = ph_text (facts->ph_high);
  /* Translators: of a class of dye: "Usually dyed at pH 4 to 6." */
  return g_strdup_printf (_ ("Usually dyed at pH %1$s to %2$s."), low, high);
}

/* How far the pH of the bath goes while there is dye to strike; FALSE if none ever is. */
static gboolean
ph_range (const SwForecast *forecast, guint dye, double *low, double *high)
{
  const SwSketch *sketch = forecast->sketch;
  int index = index_of (sketch, dye);

  *low = G_MAXDOUBLE;
  *high = -G_MAXDOUBLE;
  for (gsize i = 0; index >= 0 && i < forecast->n_steps; i++)
    {
      const SwStepBalance *balance = &forecast->step_balances[i * (gsize) forecast->n_dyes + (gsize) index];
      const SwBathState *state = &forecast->states[i + 1];

      if (state->minutes <= 0 || balance->struck_g + balance->left_g <= 0)
        continue;
      *low = MIN (*low, state->ph);
      *high = MAX (*high, state->ph);
    }
  return *low <= *high;
}

char *
sw_dye_window_warning (const SwForecast *forecast, guint dye)
{
  const SwDye *record = forecast != NULL ? sw_sketch_find_dye (forecast->sketch, dye) : NULL;
  const SwDyeClassFacts *facts;
  g_autofree char *ph = NULL;
  double low, high;

  if (record == NULL || record->dye_class == SW_DYE_CLASS_UNKNOWN || !ph_range (forecast, dye, &low, &high))
    return NULL;

  facts = sw_dye_class_facts (record->dye_class);
  if (low < facts->ph_low)
    {
      ph = ph_text (low);
      /* Translators: %s is a pH */
      return g_strdup_printf (_ ("The bath is at pH %s, more acid than usual for this class: it may strike too fast to be even."), ph);
    }
  if (high > facts->ph_high)
    {
      ph = ph_text (high);
      /* Translators: %s is a pH */
      return g_strdup_printf (_ ("The bath is at pH %s, less acid than usual for this class: dye may stay in the water."), ph);
    }
  return NULL;
}
