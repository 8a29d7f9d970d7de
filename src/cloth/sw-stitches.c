/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-stitches.h"

#include <math.h>

gsize
sw_alternation_skein (const SwAlternation *alternation, gsize row)
{
  return alternation->skeins > 1 ? row / alternation->rows % alternation->skeins : 0;
}

gsize
sw_alternation_own_row (const SwAlternation *alternation, gsize row)
{
  if (alternation->skeins <= 1)
    return row;
  return row / (alternation->skeins * alternation->rows) * alternation->rows + row % alternation->rows;
}

/* Which row of the cloth a skein's own row is. */
static gsize
row_of (const SwAlternation *alternation, gsize skein, gsize own_row)
{
  if (alternation->skeins <= 1)
    return own_row;
  return (own_row / alternation->rows * alternation->skeins + skein) * alternation->rows + own_row % alternation->rows;
}

/* Index of the stitch that a skein's own row begins with. */
static gsize
row_start (const SwLayout *layout, gsize skein, gsize own_row)
{
  gsize turns = 0;

  if (layout->worked == SW_WORKED_FLAT)
    turns = (gsize) floor ((double) own_row * layout->turn);

  /* = floor (row x (width + turn)), with the whole part kept out of the rounding */
  return (skein == 0 ? layout->cast_on : 0) + own_row * layout->width + turns;
}

static gsize
stitches_in (const SwLayout *layout, gsize skein)
{
  return skein == 0 ? layout->n : layout->next_n[skein - 1];
}

/* Rows that one skein is enough for. */
static gsize
own_rows (const SwLayout *layout, gsize skein)
{
  const double step = (double) layout->width + (layout->worked == SW_WORKED_FLAT ? layout->turn : 0.0);
  const gsize n = stitches_in (layout, skein), before = row_start (layout, skein, 0);
  gsize rows;

  if (layout->width == 0 || n < before + layout->width)
    return 0;

  /* One row more or less than by division: the turns are rounded down. */
  rows = (gsize) ((double) (n - before) / step);
  while (row_start (layout, skein, rows) + layout->width <= n)
    rows++;
  while (rows > 0 && row_start (layout, skein, rows - 1) + layout->width > n)
    rows--;

  return rows;
}

gsize
sw_layout_rows (const SwLayout *layout)
{
  gsize rows = G_MAXSIZE;

  /* The cloth ends at the first row that its skein is too short for. */
  for (gsize skein = 0; skein < MAX (layout->alternation.skeins, 1); skein++)
    rows = MIN (rows, row_of (&layout->alternation, skein, own_rows (layout, skein)));

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
  const gsize skein = sw_alternation_skein (&layout->alternation, row);
  gsize position, index;

  g_return_val_if_fail (column < layout->width, G_MAXSIZE);

  position = sw_layout_rightward (layout, row) ? column : layout->width - 1 - column;
  index = row_start (layout, skein, sw_alternation_own_row (&layout->alternation, row)) + position;

  return index < stitches_in (layout, skein) ? index : G_MAXSIZE;
}
