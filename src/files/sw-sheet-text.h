/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-repeat.h"
#include "sheet/sw-measure.h"
#include "sheet/sw-sheet.h"

G_BEGIN_DECLS

/* The dye sheet without a picture: a page of text to read, and JSON to reckon with. */

/* What is told of. */
typedef struct
{
  const SwSheet *sheet;
  const SwRepeat *repeat; /* (nullable): then nothing is said of how alike skeins come out */
  const GArray *slips;    /* (nullable): of SwSlipEffect */
} SwSheetAccount;

/**
 * sw_sheet_text:
 * Returns: (transfer full): one page in the dyer's language: what to weigh and
 *   measure, what to do when, what to think of. Ends with a newline
 */
char *sw_sheet_text (const SwSheetAccount *account, SwMeasureSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_sheet_json:
 * Returns: (transfer full): the same as JSON, in the core's units with each
 *   unit in the member's name, whatever the locale; sentences are translated.
 *   Numbers are rounded to a millionth. What is not known is null
 */
char *sw_sheet_json (const SwSheetAccount *account) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
