/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-dyeing-words.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwBalanceBar: a thin bar of the dye in the pan: what has struck in its full
 * colour, what is still in the water pale behind it. Words beside it say the
 * same; to a screen reader it is only decoration.
 */
#define SW_TYPE_BALANCE_BAR (sw_balance_bar_get_type ())
G_DECLARE_FINAL_TYPE (SwBalanceBar, sw_balance_bar, SW, BALANCE_BAR, GtkWidget)

/**
 * sw_balance_bar_set_step:
 * @forecast: (nullable)
 * @dye: 0 for all dyes: the bar's full length is then all dye of the dyeing,
 *   so that pours make it longer; else the id of one: its full length is what was poured of that one so far
 */
void sw_balance_bar_set_step (SwBalanceBar *self, const SwForecast *forecast, guint step, guint dye);

G_END_DECLS
