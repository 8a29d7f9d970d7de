/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-dyeing-words.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* SwAccountRow: what has become of one dye by the end of a step: in words, and as a bar. */
#define SW_TYPE_ACCOUNT_ROW (sw_account_row_get_type ())
G_DECLARE_FINAL_TYPE (SwAccountRow, sw_account_row, SW, ACCOUNT_ROW, AdwPreferencesRow)

void sw_account_row_show (SwAccountRow *self, const SwForecast *forecast, guint step, const SwAccount *account);

G_END_DECLS
