/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-units.h"
#include "sheet/sw-measure.h"
#include "sheet/sw-sheet-remarks.h"

G_BEGIN_DECLS

/* The dye sheet in words, as the place shows it; figures are those of the sheet. */

/* The household's measures that go with the units of the window. */
SwMeasureSystem sw_sheet_measures (SwSystem system);

/* Returns: (transfer full): how the skeins are spread over the pans: "5 skeins, 500 g: 2 pans of 2, 1 pan of 1" */
char *sw_sheet_spread (const SwSheet *sheet, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): the acid that brings the wanted pH, or that none does; "" if no pH is wanted */
char *sw_sheet_target_acid (const SwSheet *sheet, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): the water for the wanted ratio, or what just covers the skeins */
char *sw_sheet_target_water (const SwSheet *sheet, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): what stands under a dye's name: its depth and its shares of colour and mass */
char *sw_sheet_dye_detail (const SwSheetDye *dye) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): what stands under a step's name: time and heat of those that wait, depth of a pour, and other amounts for pans with fewer skeins */
char *sw_sheet_step_detail (const SwSheet *sheet, gsize step, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (nullable): the pour that a step is */
const SwSheetPour *sw_sheet_find_pour (const SwSheet *sheet, guint step);

/* Where a remark stands. */
typedef enum
{
  SW_REMARK_PLACE_SHEET, /* of the dyeing as a whole */
  SW_REMARK_PLACE_DYE,
  SW_REMARK_PLACE_STEP,
  SW_REMARK_PLACE_LIQUOR,
} SwRemarkPlace;

SwRemarkPlace sw_remark_place (const SwRemark *remark);

/**
 * sw_sheet_remarks_at:
 * @remarks: of sw_sheet_remarks()
 * @which: id of the step, or index of the dye; not looked at for the other places
 * Returns: (transfer full) (nullable): the sentences that stand there, a line each
 */
char *sw_sheet_remarks_at (const SwSheet *sheet, const GArray *remarks, SwRemarkPlace place, guint which, SwMeasureSystem system) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
