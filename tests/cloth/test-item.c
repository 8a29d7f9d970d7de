/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cloth/sw-item.h"

#include <math.h>

/* What holds for everything to wear: it takes the strand stitch by stitch, each once and in order, and has the size it should. */

/* Sock yarn at 31 stitches to 10 cm; @n stitches of it. */
static SwItemYarn
yarn_of (gsize n)
{
  return (SwItemYarn){ .fabric = SW_FABRIC_STOCKINETTE, .stitch_cm = 0.3226, .row_cm = 0.2452, .rib_cm = 0.2452, .stitch_length_cm = 1.226, .n_stitches = { n }, .cast_on = 3 };
}

#define PLENTY 400000

static void
test_names (void)
{
  for (int item = 0; item < SW_N_ITEMS; item++)
    g_assert_cmpint (sw_item_from_name (sw_item_name ((SwItem) item)), ==, item);
  g_assert_cmpint (sw_item_from_name ("sail"), ==, -1);
}

/* Each row begins where the one before ended, and between pieces with a cast-on only its yarn lies. */
static void
test_strand (void)
{
  for (int item = 0; item < SW_N_ITEMS; item++)
    {
      const SwItemYarn yarn = yarn_of (PLENTY);
      SwItemKnit knit;
      gsize next = 0;

      sw_item_knit ((SwItem) item, &yarn, &knit);
      g_assert_true (knit.whole);
      for (gsize p = 0; p < knit.n_pieces; p++)
        {
          const SwItemPiece *piece = &knit.pieces[p];

          g_assert_cmpuint (piece->n_rows, >, 0);
          for (gsize r = 0; r < piece->n_rows; r++)
            {
              const SwItemRow *row = &piece->rows[r];

              if (r == 0 && piece->begins)
                g_assert_cmpuint (row->start - next, ==, (gsize) lround (3 * 0.3226 / 1.226 * (double) row->stitches));
              else
                g_assert_cmpuint (row->start, ==, next);
              g_assert_cmpuint (row->first + row->seen, <=, row->stitches);
              next = row->start + row->stitches;
              for (gsize c = 0; c < row->seen; c++)
                {
                  const gsize stitch = sw_item_stitch (row, c);

                  g_assert_cmpuint (stitch, >=, row->start);
                  g_assert_cmpuint (stitch, <, next);
                  if (c > 0)
                    g_assert_cmpuint (stitch, ==, row->rightward ? sw_item_stitch (row, c - 1) + 1 : sw_item_stitch (row, c - 1) - 1);
                }
            }
        }
      g_assert_cmpuint (knit.stitches, ==, next);
      sw_item_knit_clear (&knit);
    }
}

/* Sizes of grown persons, cm: common practice, no source. Width and height as laid flat. */
static const struct
{
  SwItem item;
  double width[2], height[2];
} sizes[] = {
  { SW_ITEM_SOCK, { 24, 34 }, { 24, 34 } },
  { SW_ITEM_HAT, { 21, 27 }, { 18, 26 } },
  { SW_ITEM_MITTEN, { 10, 15 }, { 22, 32 } },
  { SW_ITEM_SCARF, { 19, 21 }, { 149, 151 } },
  { SW_ITEM_SHAWL, { 137, 141 }, { 60, 140 } },
};

static void
test_sizes (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      const SwItemYarn yarn = yarn_of (PLENTY);
      SwItemKnit knit;
      double width, height;

      sw_item_knit (sizes[i].item, &yarn, &knit);
      width = knit.right_cm - knit.left_cm;
      height = knit.bottom_cm - knit.top_cm;
      g_test_message ("%s: %.1f x %.1f cm, %" G_GSIZE_FORMAT " stitches", sw_item_name (sizes[i].item), width, height, knit.stitches);
      g_assert_cmpfloat (width, >=, sizes[i].width[0]);
      g_assert_cmpfloat (width, <=, sizes[i].width[1]);
      g_assert_cmpfloat (height, >=, sizes[i].height[0]);
      g_assert_cmpfloat (height, <=, sizes[i].height[1]);
      sw_item_knit_clear (&knit);
    }
}

/* With less yarn the rows are the same as far as they go. */
static void
test_too_little (void)
{
  for (int item = 0; item < SW_N_ITEMS; item++)
    for (gsize n = 1; n < 6000; n = n * 3 + 7)
      {
        const SwItemYarn little = yarn_of (n), plenty = yarn_of (PLENTY);
        SwItemKnit some, all;

        sw_item_knit ((SwItem) item, &little, &some);
        sw_item_knit ((SwItem) item, &plenty, &all);
        g_assert_cmpuint (some.stitches, <=, n);
        g_assert_cmpint (some.whole, ==, n >= all.stitches);
        g_assert_cmpuint (some.n_pieces, <=, all.n_pieces);
        for (gsize p = 0; p < some.n_pieces; p++)
          {
            g_assert_cmpuint (some.pieces[p].n_rows, <=, all.pieces[p].n_rows);
            for (gsize r = 0; r < some.pieces[p].n_rows; r++)
              g_assert_cmpuint (some.pieces[p].rows[r].start, ==, all.pieces[p].rows[r].start);
          }
        sw_item_knit_clear (&some);
        sw_item_knit_clear (&all);
      }
}

/* Skeins knitted in turn change every second row, whatever is knitted, and each goes on where it was left. */
static void
test_alternate (void)
{
  for (int item = 0; item < SW_N_ITEMS; item++)
    {
      SwItemYarn yarn = yarn_of (PLENTY);
      SwItemKnit knit, of_one;
      gsize row = 0, next[2] = { 0 };

      sw_item_knit ((SwItem) item, &yarn, &of_one);
      yarn.alternation = (SwAlternation){ 2, 2 };
      yarn.n_stitches[1] = PLENTY;
      sw_item_knit ((SwItem) item, &yarn, &knit);
      next[0] = knit.pieces[0].rows[0].start;
      for (gsize p = 0; p < knit.n_pieces; p++)
        for (gsize r = 0; r < knit.pieces[p].n_rows; r++, row++)
          {
            const SwItemRow *at = &knit.pieces[p].rows[r];

            g_assert_cmpuint (at->skein, ==, row / 2 % 2);
            if (r > 0 || !knit.pieces[p].begins)
              g_assert_cmpuint (at->start, ==, next[at->skein]);
            next[at->skein] = at->start + at->stitches;
          }
      g_assert_cmpuint (next[1], >, 0);
      g_assert_cmpuint (next[0] + next[1], ==, of_one.stitches);
      g_assert_cmpuint (knit.stitches, ==, of_one.stitches);
      sw_item_knit_clear (&knit);
      sw_item_knit_clear (&of_one);
    }
}

/* A shawl grows by a stitch at either end of every second row, so that it is a triangle. */
static void
test_shawl (void)
{
  const SwItemYarn yarn = yarn_of (PLENTY);
  SwItemKnit knit;

  sw_item_knit (SW_ITEM_SHAWL, &yarn, &knit);
  for (gsize r = 0; r < knit.pieces[0].n_rows; r++)
    {
      const SwItemRow *row = &knit.pieces[0].rows[r];

      g_assert_cmpuint (row->stitches, ==, 3 + r / 2 * 2);
      g_assert_cmpfloat_with_epsilon (row->left, -(double) row->stitches / 2, 1e-12);
      g_assert_cmpint (row->rightward, ==, r % 2 == 1);
    }
  sw_item_knit_clear (&knit);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/item/names", test_names);
  g_test_add_func ("/item/strand", test_strand);
  g_test_add_func ("/item/sizes", test_sizes);
  g_test_add_func ("/item/too-little", test_too_little);
  g_test_add_func ("/item/alternate", test_alternate);
  g_test_add_func ("/item/shawl", test_shawl);
  return g_test_run ();
}
