/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "forecast/sw-repeat.h"

#include "sw-test-sketch.h"

#include <math.h>

static SwRepeat *
repeat_of (const SwSketch *sketch, gsize n)
{
  g_autoptr (GError) error = NULL;
  SwRepeat *repeat = sw_repeat_new (sketch, n, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (repeat);
  return repeat;
}

static void
assert_ordered (SwRange range)
{
  g_assert_cmpfloat (range.least, <=, range.mean + 1e-12);
  g_assert_cmpfloat (range.mean, <=, range.most + 1e-12);
}

/* Shares of the strand are shares: they sum to 1, whichever skein. */
static void
test_shares (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwRepeat) repeat = NULL;
  double sum = 0.0, least = 0.0, most = 0.0;

  sketch->reel.wander = 0.06;
  repeat = repeat_of (sketch, 6);
  g_assert_cmpuint (repeat->n_seeds, ==, 6);
  g_assert_cmpuint (repeat->n_colours, >, 1);
  for (gsize i = 0; i < repeat->n_colours; i++)
    {
      assert_ordered (repeat->shares[i]);
      g_assert_cmpstr (repeat->colours[i], !=, "");
      sum += repeat->shares[i].mean;
      least += repeat->shares[i].least;
      most += repeat->shares[i].most;
    }
  g_assert_cmpfloat_with_epsilon (sum, 1.0, 1e-9);
  g_assert_cmpfloat (least, <, 1.0); /* the skeins do differ */
  g_assert_cmpfloat (most, >, 1.0);
  assert_ordered (repeat->stack);
  assert_ordered (repeat->mean_difference);
  g_assert_cmpfloat (repeat->mean_difference.least, >, 0.0);
  g_assert_cmpfloat (repeat->mean_difference.most, <, 3.0); /* one recipe all the same */
}

/* The same question has the same answer, and more skeins only widen it. */
static void
test_again (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwRepeat) three = repeat_of (sketch, 3), again = repeat_of (sketch, 3), five = repeat_of (sketch, 5);

  g_assert_cmpfloat (three->stack.mean, ==, again->stack.mean);
  g_assert_cmpfloat (three->mean_difference.most, ==, again->mean_difference.most);
  g_assert_cmpfloat (five->stack.least, <=, three->stack.least);
  g_assert_cmpfloat (five->stack.most, >=, three->stack.most);
  g_assert_cmpfloat (five->mean_difference.most, >=, three->mean_difference.most);
}

static void
test_one (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwRepeat) repeat = repeat_of (sketch, 1);

  g_assert_cmpfloat (repeat->mean_difference.most, ==, 0.0);
  g_assert_cmpfloat (repeat->stack.least, ==, repeat->stack.most);
}

/* One colour all over: nothing to differ in. */
static void
test_plain (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (1);
  SwDye *red = test_add_dye (sketch, "Red", 178, 60, 52);
  g_autoptr (SwRepeat) repeat = NULL;

  test_add_band (sketch, red, 60.0, 200.0, 100.0, 1.0);
  test_add_step (sketch, SW_STEP_SET)->minutes = 60.0;
  repeat = repeat_of (sketch, 4);
  g_assert_cmpuint (repeat->n_colours, ==, 1);
  g_assert_cmpfloat_with_epsilon (repeat->shares[0].least, 1.0, 1e-9);
  g_assert_cmpfloat (repeat->mean_difference.most, <, 0.02);
}

/* In an opened ring with one worked-in band the twist begins opposite the band while that is short, and in it once it is long. */
static void
assert_twist (double centre, double width, double expected)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (1);
  SwDye *red = test_add_dye (sketch, "Red", 178, 60, 52);
  g_autoptr (SwRepeat) repeat = NULL;

  sketch->bath.spread_cm2_per_min = 0.01;
  test_add_band (sketch, red, centre, width, 60.0, 1.0);
  test_add_step (sketch, SW_STEP_SET)->minutes = 30.0;
  repeat = repeat_of (sketch, 1);
  g_test_message ("twist from %.1f cm", repeat->twist_start_cm);
  g_assert_cmpfloat (fabs (repeat->twist_start_cm - expected), <, 2.0);
}

static void
test_twist (void)
{
  assert_twist (30.0, 24.0, 90.0);
  assert_twist (50.0, 24.0, 110.0);
  assert_twist (60.0, 90.0, 60.0);
}

static void
test_cancelled (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  g_cancellable_cancel (cancellable);
  g_assert_null (sw_repeat_new (sketch, 3, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

/* Lanes of one pan are different skeins of it. */
static void
test_lanes (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwRepeat) repeat = NULL;

  sketch->lay.skeins = 2;
  sketch->lay.pan_width_cm = 30.0;
  ((SwStep *) sketch->steps->pdata[0])->length_cm = 8.0; /* the first band reaches the first lane only */
  ((SwStep *) sketch->steps->pdata[0])->y_cm = 4.0;
  repeat = repeat_of (sketch, 2);
  g_assert_cmpfloat (repeat->mean_difference.most, >, 3.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/forecast/repeat/shares", test_shares);
  g_test_add_func ("/forecast/repeat/again", test_again);
  g_test_add_func ("/forecast/repeat/one", test_one);
  g_test_add_func ("/forecast/repeat/plain", test_plain);
  g_test_add_func ("/forecast/repeat/twist", test_twist);
  g_test_add_func ("/forecast/repeat/lanes", test_lanes);
  g_test_add_func ("/forecast/repeat/cancelled", test_cancelled);
  return g_test_run ();
}
