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
  g_autofree const char **given = g_new0 (const char *, n + 1);

  for (gsize i = 0; i < n; i++)
    if (is_undyed (forecast, colours[i]))
      given[i] = _ ("undyed");
  return sw_colour_names_with (colours, n, given);
}

char **
sw_main_colour_names (const SwForecast *forecast, const SwMainColour *colours, int n)
{
  SwLab labs[SW_MOST_COLOURS];

  for (int i = 0; i < n; i++)
    labs[i] = colours[i].lab;
  return sw_forecast_colour_names (forecast, labs, (gsize) n);
}

/* The stripe that is most like a main colour; @n: none is like it. */
static gsize
stripe_like (const SwLab *stripes, gsize n, SwLab colour)
{
  double least = SW_COLOURS_APART;
  gsize best = n;

  for (gsize i = 0; i < n; i++)
    {
      const double off = sw_ciede2000 (stripes[i], colour);

      if (off < least)
        {
          least = off;
          best = i;
        }
    }
  return best;
}

char **
sw_forecast_stripe_names (const SwForecast *forecast)
{
  const gsize n = forecast->n_stripes;
  SwLab stripes[SW_MAX_STRIPES];
  const char *given[SW_MAX_STRIPES] = { NULL };
  SwMainColour colours[SW_MOST_COLOURS];
  const int n_colours = sw_main_colours (forecast, colours);
  g_auto (GStrv) names = sw_main_colour_names (forecast, colours, n_colours);

  for (gsize i = 0; i < n; i++)
    {
      stripes[i] = (SwLab){ (double) forecast->stripes[i].l, (double) forecast->stripes[i].a, (double) forecast->stripes[i].b };
      if (is_undyed (forecast, stripes[i]))
        given[i] = _ ("undyed");
    }
  for (int k = 0; k < n_colours; k++)
    {
      const gsize like = stripe_like (stripes, n, colours[k].lab);

      if (like < n && given[like] == NULL)
        given[like] = names[k];
    }
  return sw_colour_names_with (stripes, n, given);
}
