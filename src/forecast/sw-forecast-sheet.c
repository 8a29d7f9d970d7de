/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "forecast/sw-repeat.h"

SwSheet *
sw_forecast_sheet (const SwForecast *forecast)
{
  gsize n;
  g_autofree double *left = NULL;

  g_return_val_if_fail (forecast != NULL, NULL);

  n = forecast->n_steps * (gsize) forecast->n_dyes;
  left = g_new (double, n);
  for (gsize i = 0; i < n; i++)
    left[i] = forecast->step_balances[i].left_g;
  return sw_sheet_new (forecast->sketch, &(const SwSheetBath){ .states = forecast->states, .left_g = left });
}
