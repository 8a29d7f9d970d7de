/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-cost.h"

static void
cost_dyes (const SwSheet *sheet, SwCost *cost)
{
  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      const SwSheetDye *row = &sheet->dyes[i];
      double price = ((const SwDye *) sheet->sketch->dyes->pdata[row->dye])->price_per_g;

      cost->dye += price * (row->weigh_g.rounded + row->dry_g.rounded);
      cost->n_unpriced_dyes += price <= 0.0;
    }
}

void
sw_cost_of (const SwSheet *sheet, SwCost *cost)
{
  const SwSheetSettings *settings = &sheet->sketch->sheet;
  double skeins = (double) sheet->skeins;

  *cost = (SwCost){
    .yarn = settings->yarn_price * skeins,
    .acid = settings->acid_price_per_l * sheet->acid_ml.rounded / 1000.0,
    .label = settings->label_price * skeins,
    .batch = settings->batch_price,
    .work = settings->rate_per_hour * settings->hands_on_min / 60.0,
    .no_yarn_price = settings->yarn_price <= 0.0,
    .no_acid_price = settings->acid_price_per_l <= 0.0 && sheet->acid_ml.exact > 0.0,
    .no_work = settings->rate_per_hour <= 0.0 || settings->hands_on_min <= 0.0,
  };
  cost_dyes (sheet, cost);
  cost->total = cost->yarn + cost->dye + cost->acid + cost->label + cost->batch + cost->work;
  cost->per_skein = cost->total / skeins;
  cost->price = cost->per_skein / (1.0 - settings->margin_percent / 100.0);
}
