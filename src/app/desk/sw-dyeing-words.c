/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-dyeing-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static int
index_of (const SwForecast *forecast, guint step)
{
  const GPtrArray *steps = forecast->sketch->steps;

  for (guint i = 0; i < steps->len; i++)
    if (((const SwStep *) steps->pdata[i])->id == step)
      return (int) i;
  return -1;
}

const SwBathState *
sw_dyeing_state (const SwForecast *forecast, guint step)
{
  int index = forecast != NULL ? index_of (forecast, step) : -1;

  return index >= 0 ? &forecast->states[index + 1] : NULL;
}

GArray *
sw_dyeing_accounts (const SwForecast *forecast, guint step)
{
  GArray *accounts = g_array_new (FALSE, FALSE, sizeof (SwAccount));
  int index = forecast != NULL ? index_of (forecast, step) : -1;

  for (int i = 0; index >= 0 && i < forecast->n_dyes; i++)
    {
      const SwStepBalance *balance = &forecast->step_balances[index * forecast->n_dyes + i];
      SwAccount account = {
        .dye = ((const SwDye *) forecast->sketch->dyes->pdata[i])->id,
        .poured_g = balance->struck_g + balance->left_g,
        .struck_g = balance->struck_g,
        .left_g = balance->left_g,
      };

      if (account.poured_g > 0)
        g_array_append_val (accounts, account);
    }
  return accounts;
}

double
sw_dyeing_struck_share (const GArray *accounts)
{
  double poured = 0, struck = 0;

  for (guint i = 0; i < accounts->len; i++)
    {
      poured += g_array_index (accounts, SwAccount, i).poured_g;
      struck += g_array_index (accounts, SwAccount, i).struck_g;
    }
  return poured > 0 ? struck / poured : -1;
}

/* Whole per cents, but what is not all is never said to be all. */
static int
per_cent (double share)
{
  return share < 1 && share > 0.985 ? (int) floor (share * 100) : (int) lround (share * 100);
}

char *
sw_account_words (const SwAccount *account)
{
  /* Dye is weighed in grams wherever it is weighed. */
  g_autofree char *left = sw_units_format (SW_QUANTITY_MASS, account->left_g, SW_SYSTEM_METRIC);

  /* Translators: of a dye after a step: "83 % struck, 0.03 g left". Struck: gone from the water to the fibre */
  return g_strdup_printf (_ ("%1$d\u00a0%% struck, %2$s left"), per_cent (account->struck_g / account->poured_g), left);
}

static char *
ph_text (double ph)
{
  return sw_units_format (SW_QUANTITY_NONE, round (ph * 10) / 10, SW_SYSTEM_METRIC);
}

char *
sw_dyeing_short (const SwForecast *forecast, guint step)
{
  const SwBathState *state = sw_dyeing_state (forecast, step);
  g_autoptr (GArray) accounts = NULL;
  g_autofree char *ph = NULL;
  double share;

  if (state == NULL)
    return g_strdup ("");
  accounts = sw_dyeing_accounts (forecast, step);
  share = sw_dyeing_struck_share (accounts);
  ph = ph_text (state->ph);
  if (share < 0)
    /* Translators: of the bath: "pH 4.1" */
    return g_strdup_printf (_ ("pH\u00a0%s"), ph);
  /* Translators: of the bath after a step: "pH 4.1, 83 % struck". Struck: gone from the water to the fibre */
  return g_strdup_printf (_ ("pH\u00a0%1$s, %2$d\u00a0%% struck"), ph, per_cent (share));
}

char *
sw_dyeing_bath (const SwForecast *forecast, guint step, SwSystem system)
{
  const SwBathState *state = sw_dyeing_state (forecast, step);
  g_autofree char *ph = NULL;
  g_autofree char *temperature = NULL;
  g_autofree char *liquor = NULL;

  if (state == NULL)
    return g_strdup ("");
  ph = ph_text (state->ph);
  temperature = sw_units_format (SW_QUANTITY_TEMPERATURE, state->temperature_c, system);
  liquor = sw_units_format (SW_QUANTITY_VOLUME, state->liquor_ml, system);
  /* Translators: of the bath: pH, temperature, amount of liquor: "pH 4.1, 85 °C, 1.4 L" */
  return g_strdup_printf (_ ("pH\u00a0%1$s, %2$s, %3$s"), ph, temperature, liquor);
}

char *
sw_dyeing_sentence (const SwForecast *forecast, guint step, SwSystem system)
{
  g_autofree char *bath = sw_dyeing_bath (forecast, step, system);
  g_autoptr (GArray) accounts = NULL;
  GString *sentence;

  if (*bath == '\0')
    return g_strdup ("");

  sentence = g_string_new (NULL);
  accounts = sw_dyeing_accounts (forecast, step);
  /* Translators: the bath after a step: "Then pH 4.1, 85 °C, 1.4 L." */
  g_string_append_printf (sentence, _ ("Then %s."), bath);
  for (guint i = 0; i < accounts->len; i++)
    {
      const SwAccount *account = &g_array_index (accounts, SwAccount, i);
      const SwDye *dye = sw_sketch_find_dye (forecast->sketch, account->dye);
      g_autofree char *words = sw_account_words (account);

      g_string_append_c (sentence, ' ');
      if (*dye->name != '\0')
        /* Translators: a dye and what became of it: "Teal: 83 % struck, 0.03 g left." */
        g_string_append_printf (sentence, _ ("%1$s: %2$s."), dye->name, words);
      else
        /* Translators: what became of a dye that has no name */
        g_string_append_printf (sentence, _ ("A dye without a name: %s."), words);
    }
  return g_string_free (sentence, FALSE);
}
