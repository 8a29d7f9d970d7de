/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/sw-item-outline.h"

#include <math.h>

/* What holds for the outline of a tube laid flat: it is where the rows end, in the mean, and it has no steps. */

#define STITCH 24.0
#define ROW 18.0
#define ROWS 40

/* A tube of 40 stitches, half of them seen, that narrows by a stitch to each side of it every second row from the twentieth on. */
static void
tube_init (SwItemPiece *piece, gboolean narrows)
{
  *piece = (SwItemPiece){ .stitch_cm = 0.32, .row_cm = 0.24, .rows = g_new0 (SwItemRow, ROWS), .n_rows = ROWS };
  for (gsize r = 0; r < ROWS; r++)
    {
      const gsize fewer = narrows && r >= 20 ? (r - 20) / 2 : 0;

      piece->rows[r] = (SwItemRow){ .stitches = 40 - 4 * fewer, .seen = 20 - 2 * fewer, .left = -10 + (double) fewer };
    }
}

static void
test_which (void)
{
  const SwItemYarn yarn = { .stitch_cm = 0.32, .row_cm = 0.24, .rib_cm = 0.24, .stitch_length_cm = 1.2, .n_stitches = { 400000 }, .cast_on = 3 };
  /* Only a scarf has selvedges that run straight. */
  static const gboolean straight[SW_N_ITEMS] = { [SW_ITEM_SCARF] = TRUE };

  for (int item = 0; item < SW_N_ITEMS; item++)
    {
      SwItemKnit knit;

      sw_item_knit ((SwItem) item, &yarn, &knit);
      for (gsize p = 0; p < knit.n_pieces; p++)
        g_assert_cmpint (sw_item_is_cut (&knit.pieces[p]), ==, !straight[item]);
      sw_item_knit_clear (&knit);
    }
}

static void
test_straight (void)
{
  SwItemPiece piece;
  SwItemOutline outline;

  tube_init (&piece, FALSE);
  sw_item_outline_init (&outline, &piece, STITCH, ROW, -(int) (ROWS * ROW), (int) (ROWS * ROW), FALSE);
  for (int j = 0; j < outline.lines; j++)
    {
      g_assert_cmpfloat_with_epsilon (outline.right[j], 10 * STITCH, 0.06 * STITCH);
      g_assert_cmpfloat_with_epsilon (outline.left[j], -outline.right[j], 1e-3);
      g_assert_cmpfloat_with_epsilon (outline.share[j], 1, 1e-6);
    }
  sw_item_outline_clear (&outline);
  g_free (piece.rows);
}

/* Half a stitch a row is the slope that the narrowing means. */
static void
test_no_steps (void)
{
  const double slope = 0.5 * STITCH / ROW;
  SwItemPiece piece;
  SwItemOutline outline;
  double seen = 0, width = 0, steepest = 0;

  tube_init (&piece, TRUE);
  sw_item_outline_init (&outline, &piece, STITCH, ROW, -(int) (ROWS * ROW), (int) (ROWS * ROW), FALSE);
  for (gsize r = 0; r < ROWS; r++)
    seen += (double) piece.rows[r].seen * STITCH * ROW;
  for (int j = 0; j < outline.lines; j++)
    {
      width += (double) (outline.right[j] - outline.left[j]);
      if (j > 0)
        steepest = MAX (steepest, (double) fabsf (outline.right[j] - outline.right[j - 1]));
    }
  g_test_message ("area %.4f of the rows', steepest %.2f of %.2f px a line", width / seen, steepest, slope);
  g_assert_cmpfloat_with_epsilon (width / seen, 1, 0.01);
  g_assert_cmpfloat (steepest, <, 2.2 * slope); /* a step would be a whole stitch in a line */
  sw_item_outline_clear (&outline);
  g_free (piece.rows);
}

/* What is drawn together ends round: ever narrower, bent outwards only, down to nothing, and no more than the last row's heads are lost. */
static void
test_tip (void)
{
  SwItemPiece piece;
  SwItemOutline outline;
  double last = 0, bend = 0;
  int first = -1;

  tube_init (&piece, TRUE);
  piece.closed = TRUE;
  sw_item_outline_init (&outline, &piece, STITCH, ROW, -(int) (ROWS * ROW), (int) (ROWS * ROW), FALSE);
  for (int j = 0; j < (int) (3 * ROW); j++)
    {
      const double width = (double) (outline.right[j] - outline.left[j]);

      if (width <= 0)
        continue;
      if (first < 0)
        {
          first = j;
          g_assert_cmpfloat (width, <, 6 * STITCH / 2); /* a nub would be as wide as the row has stitches */
        }
      else
        {
          g_assert_cmpfloat (width, >=, last - 0.1);
          g_assert_cmpfloat (width - last, <=, (j > first + 1 ? bend : HUGE_VAL) + 0.25 * STITCH / ROW);
          bend = width - last;
        }
      last = width;
    }
  g_test_message ("begins %d px below the last row's upper edge, a row is %.0f px", first, ROW);
  g_assert_cmpint (first, >=, (int) (0.4 * ROW));
  g_assert_cmpint (first, <=, (int) (0.6 * ROW));
  sw_item_outline_clear (&outline);
  g_free (piece.rows);
}

/* A leg whose straight part is 20 rows, or the foot that goes on from it. */
static void
bend_init (SwItemPiece *piece, int bend)
{
  const gsize straight = 40, corner = 27; /* rows as high as 20 stitches are wide */

  *piece = (SwItemPiece){ .stitch_cm = 0.32, .row_cm = 0.24, .rows = g_new0 (SwItemRow, straight + corner), .n_rows = straight + corner, .bend = bend, .bend_radius_cm = 2.5 };
  piece->bend_cm = bend > 0 ? (double) straight * 0.24 : 20 * 0.32;
  for (gsize r = 0; r < piece->n_rows; r++)
    {
      const gsize in = bend > 0 ? MAX (r, straight) - straight : corner - MIN (r, corner);

      piece->rows[r] = (SwItemRow){ .stitches = 40, .seen = MAX (20 - in * 20 / corner, 1), .left = -10 };
    }
}

/* Each in its own way, leg and foot are mirror images: they meet along one line, their curves go on into each other, and nothing is left between them. */
static void
test_bend (void)
{
  const double row_cm = 0.24, stitch_cm = 0.32, row = STITCH * row_cm / stitch_cm;
  const int lines = (int) (67 * row);
  SwItemPiece leg, foot;
  SwItemOutline a, b;
  double most = 0;
  int on_seam = 0;

  bend_init (&leg, 1);
  bend_init (&foot, -1);
  sw_item_outline_init (&a, &leg, STITCH, row, -lines, lines, FALSE);
  sw_item_outline_init (&b, &foot, STITCH, row, -lines, lines, FALSE);
  for (int along = -(int) (19 * STITCH); along < (int) (18 * STITCH); along++)
    {
      /* Lines from the top of what grows upwards. */
      const int j = lines - (int) lround (40 * row) + along, k = lines - (int) lround (20 * STITCH) - along - 1;

      g_assert_cmpfloat_with_epsilon (a.right[j], b.right[k], 0.27 * STITCH); /* but for how row ends reach between each other */
      g_assert_cmpfloat_with_epsilon (a.left[j], b.left[k], 0.15 * STITCH);
      g_assert_cmpfloat (a.right[j], <=, a.seam[j] + 0.14 * STITCH);
      if (along < 0)
        g_assert_cmpfloat_with_epsilon (a.right[j], 10 * STITCH + along, 0.2 * STITCH + 1);
      on_seam += a.seam[j] < SW_ITEM_NO_SEAM;
      most = MAX (most, (double) a.right[j]);
    }
  g_assert_cmpint (on_seam, >, 0);
  /* A circle's arc between two tangents at a right angle: its middle lies 1 - sqrt (1/2) of the radius, here 4 cm or 12 stitches, off both. */
  g_assert_cmpfloat_with_epsilon (most / STITCH, 10 + (1 - G_SQRT2 / 2) * MIN (12, 4 / stitch_cm), 0.25);
  sw_item_outline_clear (&a);
  sw_item_outline_clear (&b);
  g_free (leg.rows);
  g_free (foot.rows);
}

/* A rib draws the stitches together; they all stay in the picture. */
static void
test_drawn_in (void)
{
  SwItemPiece piece;
  SwItemOutline outline;

  tube_init (&piece, FALSE);
  piece.drawn_in[0] = 0.1;
  sw_item_outline_init (&outline, &piece, STITCH, ROW, -(int) (ROWS * ROW), (int) (ROWS * ROW), FALSE);
  g_assert_cmpfloat_with_epsilon (outline.share[outline.lines - 1], 0.9, 1e-3);
  g_assert_cmpfloat_with_epsilon (outline.share[0], 1, 1e-6);
  for (int j = 1; j < outline.lines; j++)
    g_assert_cmpfloat (outline.share[j], <=, outline.share[j - 1] + 1e-6f);
  sw_item_outline_clear (&outline);
  g_free (piece.rows);
}

/* What is cut off is clear, what is left whole, and between the two the pixels' cover adds up to the outline's area. */
static void
test_cut (void)
{
  const int width = (int) (26 * STITCH), left = -width / 2, lines = (int) (ROWS * ROW);
  g_autofree guint32 *pixels = g_new (guint32, (gsize) width * (gsize) lines);
  SwItemPiece piece;
  SwItemOutline outline;
  double area = 0, cover = 0;

  tube_init (&piece, TRUE);
  for (gsize i = 0; i < (gsize) width * (gsize) lines; i++)
    pixels[i] = 0xffc0a080u;
  sw_item_outline_init (&outline, &piece, STITCH, ROW, -lines, lines, FALSE);
  sw_item_outline_cut (&outline, left, width, pixels);
  for (int j = 0; j < lines; j++)
    {
      area += (double) (outline.right[j] - outline.left[j]);
      for (int i = 0; i < width; i++)
        {
          const guint32 pixel = pixels[(gsize) j * (gsize) width + (gsize) i];
          const float x = (float) (left + i) + 0.5f;

          cover += (pixel >> 24) / 255.0;
          if (x < outline.left[j] - 1 || x > outline.right[j] + 1)
            g_assert_cmphex (pixel, ==, 0);
          else if (x > outline.left[j] + 1 && x < outline.right[j] - 1)
            g_assert_cmphex (pixel, ==, 0xffc0a080u);
        }
    }
  g_assert_cmpfloat_with_epsilon (cover / area, 1, 0.002);
  sw_item_outline_clear (&outline);
  g_free (piece.rows);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/item-outline/which", test_which);
  g_test_add_func ("/item-outline/straight", test_straight);
  g_test_add_func ("/item-outline/no-steps", test_no_steps);
  g_test_add_func ("/item-outline/tip", test_tip);
  g_test_add_func ("/item-outline/bend", test_bend);
  g_test_add_func ("/item-outline/drawn-in", test_drawn_in);
  g_test_add_func ("/item-outline/cut", test_cut);
  return g_test_run ();
}
