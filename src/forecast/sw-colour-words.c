/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-colour-words.h"

#include "colour/sw-colour-name.h"
#include "colour/sw-sample-forms.h"

#include <glib/gi18n-lib.h>

char *
sw_forecast_colour_name (const SwForecast *forecast, SwLab colour)
{
  const SwLab undyed = sw_sample_lab (&forecast->sketch->yarn.undyed);

  if (sw_ciede2000 (undyed, colour) <= SW_UNDYED_WITHIN)
    /* Translators: the colour of yarn that no dye has reached */
    return g_strdup (_ ("undyed"));
  return sw_colour_name (colour);
}
