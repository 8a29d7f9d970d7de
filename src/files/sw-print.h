/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-draw-sheet.h"
#include "draw/sw-template.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* What is printed, as PDF in memory. The same sketch gives the same bytes. */

/**
 * sw_print_sheet_pdf:
 * @sheet: of the forecast's sketch
 * @error: SW_FILE_ERROR_PICTURE
 */
GBytes *sw_print_sheet_pdf (SwForecast *forecast, const SwSheet *sheet, const SwSheetOptions *options, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The pan full size, over several pages. */
GBytes *sw_print_template_pdf (const SwSketch *sketch, SwPaper paper, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
