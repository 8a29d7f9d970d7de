/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwYarnWeightRow: which of the usual weights the yarn is; choosing another
 * fills in its put-up and gauge to begin with.
 */
#define SW_TYPE_YARN_WEIGHT_ROW (sw_yarn_weight_row_get_type ())
G_DECLARE_FINAL_TYPE (SwYarnWeightRow, sw_yarn_weight_row, SW, YARN_WEIGHT_ROW, AdwPreferencesRow)

/* @document: (nullable) */
void sw_yarn_weight_row_set_document (SwYarnWeightRow *self, SwDocument *document);

G_END_DECLS
