/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cloth/sw-fabric.h"

#include "cloth/sw-gauge.h"

/* Which stitches show as purl, as any knitter's chart has them: rows from below. */
static const struct
{
  SwFabric fabric;
  const char *chart[2];
} charts[SW_N_FABRICS] = {
  { SW_FABRIC_STOCKINETTE, { "kkkk", "kkkk" } },
  { SW_FABRIC_GARTER, { "kkkk", "pppp" } },
  { SW_FABRIC_SEED, { "kpkp", "pkpk" } },
  { SW_FABRIC_RIB, { "kpkp", "kpkp" } },
};

static void
test_charts (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (charts); i++)
    for (gsize row = 0; row < 6; row++)
      for (gsize column = 0; column < 8; column++)
        g_assert_cmpint (sw_fabric_is_purl (charts[i].fabric, row, column), ==, charts[i].chart[row % 2][column % 4] == 'p');
}

static void
test_repeats (void)
{
  for (int fabric = 0; fabric < SW_N_FABRICS; fabric++)
    for (gsize row = 0; row < 5; row++)
      for (gsize column = 0; column < 5; column++)
        {
          const gsize rows = sw_fabric_row_repeat ((SwFabric) fabric), columns = sw_fabric_column_repeat ((SwFabric) fabric);

          g_assert_cmpint (sw_fabric_is_purl ((SwFabric) fabric, row, column), ==, sw_fabric_is_purl ((SwFabric) fabric, row + rows, column + columns));
        }
}

/* Plain knit by Munden; garter has a ridge of two rows to a stitch's width (common practice, no source); seed stitch lies between. */
static void
test_courses (void)
{
  g_assert_cmpfloat (sw_fabric_courses (SW_FABRIC_STOCKINETTE, 3.1), ==, sw_courses_from_wales (3.1));
  g_assert_cmpfloat (sw_fabric_courses (SW_FABRIC_RIB, 3.1), ==, sw_courses_from_wales (3.1));
  g_assert_cmpfloat_with_epsilon (sw_fabric_courses (SW_FABRIC_GARTER, 2.2), 4.4, 1e-12);
  g_assert_cmpfloat (sw_fabric_courses (SW_FABRIC_SEED, 2.2), >, sw_fabric_courses (SW_FABRIC_STOCKINETTE, 2.2));
  g_assert_cmpfloat (sw_fabric_courses (SW_FABRIC_SEED, 2.2), <, sw_fabric_courses (SW_FABRIC_GARTER, 2.2));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fabric/charts", test_charts);
  g_test_add_func ("/fabric/repeats", test_repeats);
  g_test_add_func ("/fabric/courses", test_courses);
  return g_test_run ();
}
