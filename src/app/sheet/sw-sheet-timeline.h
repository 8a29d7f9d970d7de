/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-subject.h"
#include "sheet/sw-sheet.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwSheetTimeline: the dye day in order, with each deed's minutes and
 * temperature to be changed where they stand.
 * Signal "step-chosen" (guint id).
 */
#define SW_TYPE_SHEET_TIMELINE (sw_sheet_timeline_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetTimeline, sw_sheet_timeline, SW, SHEET_TIMELINE, AdwBin)

/* @subject: of the sheet's settings; once */
void sw_sheet_timeline_set_subject (SwSheetTimeline *self, SwSubject *subject);
void sw_sheet_timeline_show (SwSheetTimeline *self, const SwSheet *sheet);
void sw_sheet_timeline_choose (SwSheetTimeline *self, guint step);

G_END_DECLS
