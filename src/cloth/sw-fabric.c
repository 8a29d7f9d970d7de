/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-fabric.h"

#include "cloth/sw-gauge.h"

/*
 * Two rows of garter stitch draw together into a ridge: as many ridges as
 * stitches. Seed stitch stands between the two. Both: common practice, no
 * source. 0: as plain knit.
 */
static const struct
{
  gsize row_repeat, column_repeat;
  double courses_per_wale;
} fabrics[] = {
  [SW_FABRIC_STOCKINETTE] = { 1, 1, 0 },
  [SW_FABRIC_GARTER] = { 2, 1, 2.0 },
  [SW_FABRIC_SEED] = { 2, 2, 1.6 },
  [SW_FABRIC_RIB] = { 1, 2, 0 },
};

gboolean
sw_fabric_is_purl (SwFabric fabric, gsize row, gsize column)
{
  const gsize odd_row = fabrics[fabric].row_repeat == 2 ? row % 2 : 0;
  const gsize odd_column = fabrics[fabric].column_repeat == 2 ? column % 2 : 0;

  return (odd_row ^ odd_column) == 1;
}

gsize
sw_fabric_row_repeat (SwFabric fabric)
{
  return fabrics[fabric].row_repeat;
}

gsize
sw_fabric_column_repeat (SwFabric fabric)
{
  return fabrics[fabric].column_repeat;
}

double
sw_fabric_courses (SwFabric fabric, double wales_per_cm)
{
  if (fabrics[fabric].courses_per_wale > 0)
    return wales_per_cm * fabrics[fabric].courses_per_wale;
  return sw_courses_from_wales (wales_per_cm);
}
