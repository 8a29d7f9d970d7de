/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cloth/sw-stitches.h"

#include <math.h>

static const SwLayout layouts[] = {
  { SW_WORKED_ROUND, .width = 64, .cast_on = 192, .n = 5000 },
  { SW_WORKED_ROUND, .width = 10, .n = 100 },
  { SW_WORKED_ROUND, .width = 7, .turn = 3.5, .n = 200 },
  { SW_WORKED_FLAT, .width = 30, .cast_on = 90, .n = 3000 },
  { SW_WORKED_FLAT, .width = 31, .cast_on = 93, .turn = 0.4, .n = 3000 },
  { SW_WORKED_FLAT, .width = 12, .turn = 2.75, .n = 777 },
  { SW_WORKED_FLAT, .width = 1, .turn = 1, .n = 9 },
};

/* Knits the strand stitch by stitch, as hands do, and finds each one where the layout says. */
static void
test_knitted_by_hand (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (layouts); i++)
    {
      const SwLayout *layout = &layouts[i];
      gboolean flat = layout->worked == SW_WORKED_FLAT;
      double turn = flat ? layout->turn : 0;
      gsize row = 0;

      while (TRUE)
        {
          gsize first = layout->cast_on + (gsize) floor ((double) row * ((double) layout->width + turn));
          gboolean rightward = flat && row % 2 == 1;

          if (first + layout->width > layout->n)
            break;
          g_assert_cmpint (sw_layout_rightward (layout, row), ==, rightward);
          for (gsize position = 0; position < layout->width; position++)
            {
              gsize column = rightward ? position : layout->width - 1 - position;

              g_assert_cmpuint (sw_layout_stitch (layout, row, column), ==, first + position);
            }
          row++;
        }

      g_assert_cmpuint (sw_layout_rows (layout), ==, row);
      g_assert_cmpuint (row, >, 0);
    }
}

/* Without turns every stitch after the cast-on is used once; where flat work turns, it goes on in the same column. */
static void
test_whole_strand_used (void)
{
  static const SwWorked ways[] = { SW_WORKED_FLAT, SW_WORKED_ROUND };

  for (gsize way = 0; way < G_N_ELEMENTS (ways); way++)
    {
      SwLayout layout = { ways[way], .width = 17, .cast_on = 51, .n = 51 + 17 * 20 };
      gboolean used[51 + 17 * 20] = { FALSE };

      g_assert_cmpuint (sw_layout_rows (&layout), ==, 20);
      for (gsize row = 0; row < 20; row++)
        for (gsize column = 0; column < 17; column++)
          {
            gsize stitch = sw_layout_stitch (&layout, row, column);

            g_assert_cmpuint (stitch, <, layout.n);
            g_assert_false (used[stitch]);
            used[stitch] = TRUE;
          }
      for (gsize i = 0; i < layout.n; i++)
        g_assert_cmpint (used[i], ==, i >= layout.cast_on);

      for (gsize row = 0; row + 1 < 20; row++)
        {
          gsize edge = sw_layout_rightward (&layout, row) ? 16 : 0;
          gsize next = ways[way] == SW_WORKED_FLAT ? edge : 16;

          g_assert_cmpuint (sw_layout_stitch (&layout, row + 1, next), ==, sw_layout_stitch (&layout, row, edge) + 1);
        }
    }
}

/* The row that the strand breaks off in: the part it reaches is there, the rest is not. */
static void
test_end_of_strand (void)
{
  SwLayout layout = { SW_WORKED_ROUND, .width = 10, .cast_on = 5, .n = 28 };

  g_assert_cmpuint (sw_layout_rows (&layout), ==, 2);
  g_assert_cmpuint (sw_layout_stitch (&layout, 2, 9), ==, 25);
  g_assert_cmpuint (sw_layout_stitch (&layout, 2, 7), ==, 27);
  g_assert_cmpuint (sw_layout_stitch (&layout, 2, 6), ==, G_MAXSIZE);
  g_assert_cmpuint (sw_layout_stitch (&layout, 1000, 0), ==, G_MAXSIZE);

  layout.n = 14;
  g_assert_cmpuint (sw_layout_rows (&layout), ==, 0);
  layout.cast_on = 100;
  g_assert_cmpuint (sw_layout_rows (&layout), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cloth/stitches/knitted-by-hand", test_knitted_by_hand);
  g_test_add_func ("/cloth/stitches/whole-strand-used", test_whole_strand_used);
  g_test_add_func ("/cloth/stitches/end-of-strand", test_end_of_strand);
  return g_test_run ();
}
