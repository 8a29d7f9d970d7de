/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet/sw-sheet.h"

G_BEGIN_DECLS

/*
 * How the skeins of a batch lie. The sketch draws one pan; where a pan holds
 * more skeins, the drawing is repeated across, from the near edge on; where
 * it holds fewer, the far ones are left out. A pan with one skein less than
 * the fullest lies as that one without its farthest skein.
 */

/* Of a pan with @skeins, how many a picture shows: those drawn, if it holds more than any pan can. */
gsize sw_sheet_laid_skeins (const SwSheet *sheet, gsize skeins);

/* How often the drawing lies in a pan of @laid skeins, the last time perhaps in part. */
gsize sw_sheet_copies (const SwSheet *sheet, gsize laid);

/**
 * sw_sheet_lay_text:
 * Returns: (transfer full) (nullable): in sentences, how pans differ from the drawing; NULL if they are all as drawn
 */
char *sw_sheet_lay_text (const SwSheet *sheet) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
