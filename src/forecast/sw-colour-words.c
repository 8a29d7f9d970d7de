/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-colour-words.h"

#include "colour/sw-colour-name.h"
#include "colour/sw-sample-forms.h"

#include <glib/gi18n-lib.h>

static gboolean
is_undyed (const SwForecast *forecast, SwLab colour)
{
  return sw_ciede2000 (sw_sample_lab (&forecast->sketch->yarn.undyed), colour) <= SW_UNDYED_WITHIN;
}

char *
sw_forecast_colour_name (const SwForecast *forecast, SwLab colour)
{
  if (is_undyed (forecast, colour))
    /* Translators: the colour of yarn that no dye has reached */
    return g_strdup (_ ("undyed"));
  return sw_colour_name (colour);
}

char **
sw_forecast_colour_names (const SwForecast *forecast, const SwLab *colours, gsize n)
{
  char **names = sw_colour_names (colours, n);

  for (gsize i = 0; i < n; i++)
    if (is_undyed (forecast, colours[i]))
      {
        g_free (names[i]);
        names[i] = sw_forecast_colour_name (forecast, colours[i]);
      }
  return names;
}

char **
sw_forecast_stripe_names (const SwForecast *forecast)
{
  SwLab colours[SW_MAX_STRIPES];

  for (gsize i = 0; i < forecast->n_stripes; i++)
    colours[i] = (SwLab){ (double) forecast->stripes[i].l, (double) forecast->stripes[i].a, (double) forecast->stripes[i].b };
  return sw_forecast_colour_names (forecast, colours, forecast->n_stripes);
}
