/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-units.h"
#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/*
 * The running forecast in words: what the bath is, what has struck and what
 * is left after a step. The forecast may be a little behind the drawing, so a
 * step is looked up by its id and may not be there.
 */

/* One dye's account after a step. */
typedef struct
{
  guint dye;       /* id */
  double poured_g; /* so far; above 0 */
  double struck_g, left_g;
} SwAccount;

/**
 * sw_dyeing_state:
 * Returns: (nullable): the bath during and after the step
 */
const SwBathState *sw_dyeing_state (const SwForecast *forecast, guint step);

/**
 * sw_dyeing_accounts:
 * Returns: (element-type SwAccount) (transfer full): the dyes that are in the pan by the end of the step
 */
GArray *sw_dyeing_accounts (const SwForecast *forecast, guint step) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_dyeing_struck_share:
 * Returns: 0 .. 1 of all dye poured so far; -1 if there is none yet
 */
double sw_dyeing_struck_share (const GArray *accounts);

/* Returns: (transfer full): "83 % struck, 0.03 g left" */
char *sw_account_words (const SwAccount *account) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_dyeing_short:
 * Returns: (transfer full): of a step, in a few words: "pH 4.1, 83 % struck"; empty before the first forecast
 */
char *sw_dyeing_short (const SwForecast *forecast, guint step) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_dyeing_bath:
 * Returns: (transfer full): the bath after a step: "pH 4.1, 85 °C, 1.4 L"; empty before the first forecast
 */
char *sw_dyeing_bath (const SwForecast *forecast, guint step, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_dyeing_sentence:
 * Returns: (transfer full): all of it: "Then pH 4.1, 85 °C, 1.4 L. Teal: 83 % struck, 0.03 g left."; empty before the first forecast
 */
char *sw_dyeing_sentence (const SwForecast *forecast, guint step, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
