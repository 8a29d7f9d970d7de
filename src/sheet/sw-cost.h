/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet/sw-sheet.h"

G_BEGIN_DECLS

/* What a batch costs, in the sheet's currency. What the dyer gave no price for counts as 0 and is named as such. */
typedef struct
{
  double yarn, dye, acid, label, batch, work; /* of the batch */
  double total;
  double per_skein;
  double price;                          /* per skein, so that the margin is that share of it */
  gboolean no_yarn_price, no_acid_price; /* of acid: only if any is used */
  gboolean no_work;                      /* no minutes of one's own, or no rate */
  guint n_unpriced_dyes;
} SwCost;

/* Dye counts as weighed for the stock, since what is left over cannot be kept for ever. */
void sw_cost_of (const SwSheet *sheet, SwCost *cost);

G_END_DECLS
