/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"
#include "sheet/sw-sheet.h"

G_BEGIN_DECLS

/* What the dye sheet advises, put into the drawing: one step to undo each, named. */

/* The acid for the wanted pH, before the first step. @sheet says what that is. */
gboolean sw_sheet_use_acid (SwDocument *document, const SwSheet *sheet, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The water for the wanted liquor ratio, or what just covers the skeins if none is wanted. */
gboolean sw_sheet_use_water (SwDocument *document, const SwSheet *sheet, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* mL that sw_sheet_use_water() puts into the bath; as it can be measured, not below the member's least. */
double sw_sheet_wanted_water (const SwSheet *sheet);

G_END_DECLS
