/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-draw-sheet.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * sw_sheet_printing_new:
 * @forecast: kept while the operation lives
 * @paper: that the printer is first asked for
 * @us: whether amounts are in US units
 *
 * Returns: (transfer full): the dye sheet as a print operation, ready to run. It is laid out for the paper that
 *   the printer turns out to have, and on any other paper it is drawn as large as it fits
 */
GtkPrintOperation *sw_sheet_printing_new (SwForecast *forecast, SwPaper paper, gboolean us) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
