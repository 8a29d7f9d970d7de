/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwSheetSurety: how surely the colourway comes out the same again: how alike
 * the skeins of one batch are, and what a slip does. Each is worked out when
 * it is asked for, beside the main thread; an answer of a drawing that has
 * changed since is taken away.
 * Property "inches".
 */
#define SW_TYPE_SHEET_SURETY (sw_sheet_surety_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetSurety, sw_sheet_surety, SW, SHEET_SURETY, AdwBin)

void sw_sheet_surety_set_document (SwSheetSurety *self, SwDocument *document);

G_END_DECLS
