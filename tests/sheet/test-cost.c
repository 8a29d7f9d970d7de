/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-cost.h"

#include "tests/bath/bath-checks.h"
#include "tests/sw-test-sketch.h"

static SwCost
cost_of (const SwSketch *sketch)
{
  g_autoptr (SwSheet) sheet = sw_sheet_new (sketch, NULL);
  SwCost cost;

  sw_cost_of (sheet, &cost);
  return cost;
}

/* By hand: six skeins in three pans of two; 90 mL of red and 50 of blue at 1 % in a pan of two, 10 % to spare. */
static void
test_by_hand (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  SwCost cost;

  sketch->sheet.skeins = 6;
  sketch->sheet.pans = 3;
  sketch->sheet.yarn_price = 9.5;
  sketch->sheet.acid_price_per_l = 2.0;
  sketch->sheet.label_price = 0.4;
  sketch->sheet.batch_price = 3.0;
  sketch->sheet.hands_on_min = 90.0;
  sketch->sheet.rate_per_hour = 24.0;
  sketch->sheet.margin_percent = 20.0;
  sketch->bath.acid_ml = 50.0;
  ((SwDye *) sketch->dyes->pdata[0])->price_per_g = 0.5;
  ((SwDye *) sketch->dyes->pdata[1])->price_per_g = 2.0;
  cost = cost_of (sketch);

  assert_near (cost.yarn, 57.0, 1e-9);
  assert_near (cost.dye, 0.5 * 2.97 + 2.0 * 1.65, 1e-9); /* 6 x 45 mL x 1.1 and 6 x 25 mL x 1.1 */
  assert_near (cost.acid, 0.6, 1e-9);
  assert_near (cost.label, 2.4, 1e-9);
  assert_near (cost.batch, 3.0, 1e-9);
  assert_near (cost.work, 36.0, 1e-9);
  assert_near (cost.total, 57.0 + 4.785 + 0.6 + 2.4 + 3.0 + 36.0, 1e-9);
  assert_near (cost.per_skein, cost.total / 6.0, 1e-9);
  /* a fifth of the price is margin */
  assert_near (cost.price - cost.per_skein, 0.2 * cost.price, 1e-9);
  g_assert_false (cost.no_yarn_price || cost.no_acid_price || cost.no_work);
  g_assert_cmpuint (cost.n_unpriced_dyes, ==, 0);
}

/* Nothing is invented: without prices all is 0 and named. */
static void
test_nothing_invented (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  SwCost cost;

  test_add_dye (sketch, "Not poured", 1, 2, 3);
  cost = cost_of (sketch);
  g_assert_cmpfloat (cost.total, ==, 0.0);
  g_assert_cmpfloat (cost.price, ==, 0.0);
  g_assert_true (cost.no_yarn_price && cost.no_acid_price && cost.no_work);
  g_assert_cmpuint (cost.n_unpriced_dyes, ==, 2);

  sketch->bath.acid_ml = 0.0;
  g_assert_false (cost_of (sketch).no_acid_price);
  sketch->sheet.rate_per_hour = 20.0;
  g_assert_true (cost_of (sketch).no_work); /* no minutes */
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet/cost/by-hand", test_by_hand);
  g_test_add_func ("/sheet/cost/nothing-invented", test_nothing_invented);
  return g_test_run ();
}
