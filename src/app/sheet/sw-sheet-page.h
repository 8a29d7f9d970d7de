/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-day-session.h"
#include "app/desk/sw-live.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwSheetPage: the dye sheet: amounts, the day in order, cost, how surely it
 * comes out the same again, and the batches that were dyed. Figures follow the
 * live forecast while they can be seen.
 * Properties "live" (SwLive) and "inches".
 */
#define SW_TYPE_SHEET_PAGE (sw_sheet_page_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetPage, sw_sheet_page, SW, SHEET_PAGE, AdwBin)

/* Once: the day whose log is noted with a batch. */
void sw_sheet_page_set_session (SwSheetPage *self, SwDaySession *session);

/* Shows one of its parts: "amounts", "day", "cost", "surety", "batches". */
void sw_sheet_page_show_part (SwSheetPage *self, const char *part);

G_END_DECLS
