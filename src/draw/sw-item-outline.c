/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-item-outline.h"

#include <math.h>
#include <string.h>

/* Rows to each side over which steps between rows are evened out, twice. */
#define EVEN_ROWS 2

/* A step of more stitches than this is meant, and stays. */
#define STEP 4.5

/* Rows in which a broad tip is rounded off, and from how many stitches on it is. */
#define ROUND_ROWS 6
#define BROAD 6

/* How far each row's stitches stand out in the outline, stitch widths. */
#define BULGE 0.05

/* How far the right side goes on beneath the next piece, stitch widths. */
#define BENEATH 0.8

/* Over how many cm a piece widens from a rib. */
#define EASE_CM 3

gboolean
sw_item_is_cut (const SwItemPiece *piece)
{
  for (gsize r = 0; r < piece->n_rows; r++)
    if (piece->rows[r].seen < piece->rows[r].stitches || piece->rows[r].seen != piece->rows[0].seen)
      return TRUE;
  return FALSE;
}

static double
smooth (double t)
{
  t = CLAMP (t, 0, 1);
  return t * t * (3 - 2 * t);
}

/* How many rows to both sides of one go on from it, EVEN_ROWS at most. */
static gsize
even_rows (const double *edge, gsize n, gsize row)
{
  gsize half = 0;

  while (half < EVEN_ROWS && half < row && half < n - 1 - row && fabs (edge[row - half - 1] - edge[row - half]) < STEP && fabs (edge[row + half + 1] - edge[row + half]) < STEP)
    half++;
  return half;
}

/* Means over rows to both sides, as many as there are on the shorter one: what is straight stays so, and the ends stay where they are. */
static void
even_out (double *edge, gsize n, double *room)
{
  for (int pass = 0; pass < 2; pass++)
    {
      memcpy (room, edge, n * sizeof *edge);
      for (gsize r = 0; r < n; r++)
        {
          const gsize half = even_rows (room, n, r);
          double sum = 0;

          for (gsize i = r - half; i <= r + half; i++)
            sum += room[i];
          edge[r] = sum / (double) (2 * half + 1);
        }
    }
}

/* A tip is round. */
static void
round_end (double *left, double *right, gsize n)
{
  const double most = 0.42 * (right[n - 1] - left[n - 1]);

  if (right[n - 1] - left[n - 1] < BROAD)
    return;
  for (gsize i = 0; i < MIN (ROUND_ROWS, n); i++)
    {
      const double in = 1 - ((double) i + 0.5) / ROUND_ROWS, by = most * (1 - sqrt (1 - in * in));

      left[n - 1 - i] += by;
      right[n - 1 - i] -= by;
    }
}

/* Where the rows get shorter on the right, another piece lies over their ends. */
static void
go_on_beneath (double *right, gsize n)
{
  double widest = right[0];

  for (gsize r = 1; r < n; r++)
    widest = MAX (widest, right[r]);
  for (gsize r = 0; r < n; r++)
    right[r] += BENEATH * CLAMP (widest - right[r], 0, 1);
}

/* Between the middles of rows; beyond the first and the last as there. */
static double
edge_at (const double *edge, gsize n, double up)
{
  const double at = CLAMP (up - 0.5, 0, (double) (n - 1));
  const gsize low = MIN ((gsize) at, n - 1), high = MIN (low + 1, n - 1);

  if (fabs (edge[high] - edge[low]) > STEP)
    return edge[at - (double) low < 0.5 ? low : high];
  return edge[low] + (edge[high] - edge[low]) * (at - (double) low);
}

static double
share_at (const SwItemPiece *piece, double up)
{
  const double high = (double) piece->n_rows * piece->row_cm, at = CLAMP (up * piece->row_cm, 0, high), *in = piece->drawn_in;

  if (in[0] > 0 && in[1] > 0) /* all of it is a cuff */
    return 1 - (in[0] + (in[1] - in[0]) * smooth (at / high));
  return 1 - in[0] * (1 - smooth (at / MIN (EASE_CM, high))) - in[1] * (1 - smooth ((high - at) / MIN (EASE_CM, high)));
}

void
sw_item_outline_init (SwItemOutline *outline, const SwItemPiece *piece, double stitch, double row, int top, int lines, gboolean beneath)
{
  const gsize n = piece->n_rows;
  g_autofree double *left = g_new (double, 3 * n);
  double *right = left + n;

  g_return_if_fail (n > 0 && stitch > 0 && row > 0);
  for (gsize r = 0; r < n; r++)
    {
      left[r] = piece->rows[r].left;
      right[r] = piece->rows[r].left + (double) piece->rows[r].seen;
    }
  even_out (left, n, right + n);
  even_out (right, n, right + n);
  if (piece->closed)
    round_end (left, right, n);
  if (beneath)
    go_on_beneath (right, n);
  *outline = (SwItemOutline){ lines, g_new (float, 3 * lines) };
  outline->right = outline->left + lines;
  outline->share = outline->right + lines;
  for (int j = 0; j < lines; j++)
    {
      const double up = -(top + j + 0.5) / row, share = share_at (piece, up), bulge = -BULGE * cos (2 * G_PI * up);

      outline->left[j] = (float) (stitch * (share * edge_at (left, n, up) - bulge));
      outline->right[j] = (float) (stitch * (share * edge_at (right, n, up) + bulge));
      outline->share[j] = (float) share;
    }
}

void
sw_item_outline_clear (SwItemOutline *outline)
{
  g_free (outline->left);
}

/* The line at @at pixels from its first one's middle, between two pixels. */
static guint32
between (const guint32 *line, int width, float at)
{
  const int low = CLAMP ((int) floorf (at), 0, width - 1), high = MIN (low + 1, width - 1);
  const guint32 on = (guint32) (CLAMP (at - (float) low, 0.0f, 1.0f) * 256);
  guint32 pixel = 0;

  for (int shift = 0; shift < 32; shift += 8)
    pixel |= (((line[low] >> shift & 0xff) * (256 - on) + (line[high] >> shift & 0xff) * on) >> 8) << shift;
  return pixel;
}

static guint32
fade (guint32 pixel, float cover)
{
  const guint32 share = (guint32) (cover * 256);
  guint32 faded = 0;

  for (int shift = 0; shift < 32; shift += 8)
    faded |= ((pixel >> shift & 0xff) * share >> 8) << shift;
  return faded;
}

void
sw_item_outline_cut (const SwItemOutline *outline, int left, int width, guint32 *pixels)
{
  g_autofree guint32 *whole = g_new (guint32, width);

  for (int j = 0; j < outline->lines; j++)
    {
      guint32 *line = pixels + (gsize) j * (gsize) width;

      memcpy (whole, line, sizeof *whole * (gsize) width);
      for (int i = 0; i < width; i++)
        {
          const float x = (float) (left + i) + 0.5f;
          const float cover = CLAMP (MIN (x - outline->left[j], outline->right[j] - x) + 0.5f, 0.0f, 1.0f);

          if (outline->share[j] < 1)
            line[i] = between (whole, width, x / outline->share[j] - (float) left - 0.5f);
          if (cover < 1)
            line[i] = fade (line[i], cover);
        }
    }
}
