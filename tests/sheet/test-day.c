/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-day-clock.h"

#include "sketch/sw-member.h"
#include "tests/bath/bath-checks.h"
#include "tests/sw-test-sketch.h"

static void
assert_kinds (const SwSketch *sketch, const SwDeedKind *kinds, gsize n_kinds)
{
  gsize n;
  g_autofree SwDeed *deeds = sw_day_new (sketch, &n);

  g_assert_cmpuint (n, ==, n_kinds);
  for (gsize i = 0; i < n; i++)
    g_assert_cmpstr (sw_deed_kind_name (deeds[i].kind), ==, sw_deed_kind_name (kinds[i]));
}

static void
test_order (void)
{
  static const SwDeedKind kinds[] = {
    SW_DEED_PRESOAK, SW_DEED_STOCK, SW_DEED_FILL, SW_DEED_HEAT, SW_DEED_POUR, SW_DEED_POUR, SW_DEED_REST, SW_DEED_FLIP, SW_DEED_POUR,
    SW_DEED_SET, SW_DEED_COOL, SW_DEED_WASH, SW_DEED_RINSE, SW_DEED_RINSE, SW_DEED_SPIN, SW_DEED_DRY
  };
  g_autoptr (SwSketch) sketch = test_sketch (2);

  assert_kinds (sketch, kinds, G_N_ELEMENTS (kinds));
}

/* What takes no time is left out, but for the dyer's own acts; nothing poured needs no stock. */
static void
test_bare (void)
{
  static const SwDeedKind kinds[] = { SW_DEED_FILL, SW_DEED_ACID, SW_DEED_WATER, SW_DEED_DRY };
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);

  test_add_step (sketch, SW_STEP_ACID);
  test_add_step (sketch, SW_STEP_WATER);
  sketch->sheet.presoak_min = sketch->sheet.heat_min = sketch->sheet.cool_min = 0.0;
  sketch->sheet.wash_min = sketch->sheet.spin_min = 0.0;
  sketch->sheet.rinses = 0;
  assert_kinds (sketch, kinds, G_N_ELEMENTS (kinds));
}

/* One after the other without gaps; pours take their time in every pan. */
static void
test_clock (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autofree SwDeed *deeds = NULL;
  double clock = 0.0, poured = 0.0;
  gsize n;

  sketch->sheet.skeins = 3;
  sketch->sheet.pour_min = 1.5;
  deeds = sw_day_new (sketch, &n);
  for (gsize i = 0; i < n; i++)
    {
      if (deeds[i].kind == SW_DEED_STOCK)
        continue;
      assert_near (deeds[i].start_min, clock, 1e-9);
      clock += deeds[i].minutes;
      if (deeds[i].kind == SW_DEED_POUR)
        poured += deeds[i].minutes;
    }
  assert_near (poured, 3 * 3 * 1.5, 1e-9);
}

/* Whatever has minutes says where they are set, and setting them there changes them. */
static void
test_members (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  gsize n;
  g_autofree SwDeed *deeds = sw_day_new (sketch, &n);

  for (gsize i = 0; i < n; i++)
    {
      const SwMember *member;
      SwValue value;

      if (deeds[i].minutes <= 0.0)
        {
          g_assert_null (deeds[i].member);
          continue;
        }
      member = sw_record_find_member (deeds[i].record, deeds[i].member);
      g_assert_nonnull (member);
      sw_member_get (member, sw_sketch_record (sketch, deeds[i].record, deeds[i].step), &value);
      assert_near (value.as.number * deeds[i].times, deeds[i].minutes, 1e-9);
    }
}

static void
test_numbers (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  gsize n;
  g_autofree SwDeed *deeds = sw_day_new (sketch, &n);
  guint pour = 0;

  for (gsize i = 0; i < n; i++)
    {
      const SwStep *step = sw_sketch_find_step (sketch, deeds[i].step);

      g_assert_cmpint (step != NULL && sw_step_is_pour (step), ==, deeds[i].kind == SW_DEED_POUR);
      if (deeds[i].kind == SW_DEED_POUR)
        g_assert_cmpuint (deeds[i].pour, ==, ++pour);
      else
        g_assert_cmpuint (deeds[i].pour, ==, 0);
      g_assert_cmpstr (sw_deed_label (deeds[i].kind), !=, "");
    }
  g_assert_cmpuint (pour, ==, 3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet/day/order", test_order);
  g_test_add_func ("/sheet/day/bare", test_bare);
  g_test_add_func ("/sheet/day/clock", test_clock);
  g_test_add_func ("/sheet/day/members", test_members);
  g_test_add_func ("/sheet/day/numbers", test_numbers);
  return g_test_run ();
}
