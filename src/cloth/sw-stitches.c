/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-stitches.h"

#include <math.h>

/* Index of the stitch that a row begins with. */
static gsize
row_start (const SwLayout *layout, gsize row)
{
  gsize turns = 0;

  if (layout->worked == SW_WORKED_FLAT)
    turns = (gsize) floor ((double) row * layout->turn);

  /* = floor (row x (width + turn)), with the whole part kept out of the rounding */
  return layout->cast_on + row * layout->width + turns;
}

gsize
sw_layout_rows (const SwLayout *layout)
{
  double step = (double) layout->width + (layout->worked == SW_WORKED_FLAT ? layout->turn : 0.0);
  gsize rows;

  if (layout->width == 0 || layout->n < layout->cast_on + layout->width)
    return 0;

  /* One row more or less than by division: the turns are rounded down. */
  rows = (gsize) ((double) (layout->n - layout->cast_on) / step);
  while (row_start (layout, rows) + layout->width <= layout->n)
    rows++;
  while (rows > 0 && row_start (layout, rows - 1) + layout->width > layout->n)
    rows--;

  return rows;
}

gboolean
sw_layout_rightward (const SwLayout *layout, gsize row)
{
  return layout->worked == SW_WORKED_FLAT && row % 2 == 1;
}

gsize
sw_layout_stitch (const SwLayout *layout, gsize row, gsize column)
{
  gsize position, index;

  g_return_val_if_fail (column < layout->width, G_MAXSIZE);

  position = sw_layout_rightward (layout, row) ? column : layout->width - 1 - column;
  index = row_start (layout, row) + position;

  return index < layout->n ? index : G_MAXSIZE;
}
