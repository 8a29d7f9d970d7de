/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-paper.h"
#include "forecast/sw-forecast.h"
#include "sheet/sw-sheet.h"

#include <cairo.h>

G_BEGIN_DECLS

/*
 * The dye sheet on paper, to be read at arm's length by someone with wet
 * hands: what to weigh, the pan to scale, every step with its amount, and a
 * box to tick. One page where it fits, else as many as it takes.
 */

/**
 * SwSheetOptions:
 * @us: US customary units
 */
typedef struct
{
  SwPaper paper;
  gboolean us;
} SwSheetOptions;

typedef struct _SwSheetLayout SwSheetLayout;

/**
 * sw_sheet_layout_new:
 * @forecast: kept
 * @sheet: of its sketch; must outlive the layout
 * To be painted on the thread it was made on, since its texts are set in that thread's fonts.
 */
SwSheetLayout *sw_sheet_layout_new (SwForecast *forecast, const SwSheet *sheet, const SwSheetOptions *options) G_GNUC_WARN_UNUSED_RESULT;
void sw_sheet_layout_free (SwSheetLayout *self);

gsize sw_sheet_pages (const SwSheetLayout *self);

/**
 * sw_draw_sheet_page:
 * @cr: in points from the page's upper left
 * @page: from 0
 */
void sw_draw_sheet_page (cairo_t *cr, const SwSheetLayout *self, gsize page);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwSheetLayout, sw_sheet_layout_free)

G_END_DECLS
