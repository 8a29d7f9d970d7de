/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-item-outline.h"

#include <math.h>
#include <string.h>

/* Rows to each side over which steps between rows are evened out, twice. */
#define EVEN_ROWS 3

/* A step of more stitches than this is meant, and stays. */
#define STEP 4.5

/* Of the last row that closes a piece only the lower part is seen: its heads are drawn together. Rows. */
#define CLOSED_ROWS 0.5

/* In how many rows a tip is rounded off: so many to a stitch of its width, between two bounds. */
#define TIP_ROWS 0.6
#define LEAST_TIP_ROWS 1.5
#define MOST_TIP_ROWS 7

/* How far each row's stitches stand out in the outline, stitch widths. */
#define BULGE 0.05

/* How far a piece goes on beneath the one that lies across its end, stitch widths. */
#define BENEATH 1.6
#define BENEATH_FROM 3

/* Inside a bend cloth is drawn over into a curve of this radius, cm, of so many stitches at most. */
#define INSIDE_CM 4
#define INSIDE_STITCHES 12

/* Where two pieces meet at a slant their row ends reach between each other: by this, stitch widths. */
#define INTERLOCK 0.13

/* How wide the crease along that line is to each side, stitch widths, and how dark. */
#define CREASE 0.42f
#define CREASE_SHADE 0.17f

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

/* Its width at @up rows, as a share of what the rows have: a closed tip is round, an ellipse. */
static double
tip_at (const double *left, const double *right, gsize n, double up)
{
  const double rows = CLAMP (TIP_ROWS * (right[n - 1] - left[n - 1]), LEAST_TIP_ROWS, MOST_TIP_ROWS);
  const double in = 1 - ((double) n - CLOSED_ROWS - up) / MIN (rows, (double) n);

  return in <= 0 ? 1 : in < 1 ? sqrt (1 - in * in)
                              : 0;
}

/* How far a quarter of a circle of radius @radius stands off its tangent, @on from where the next tangent leaves it. */
static double
arc (double radius, double on)
{
  return on >= radius ? 0 : radius - sqrt (radius * radius - (radius - on) * (radius - on));
}

static double
inside_radius (const SwItemPiece *piece)
{
  return MIN (INSIDE_CM / piece->stitch_cm, INSIDE_STITCHES);
}

/* At a bend the right side is on the inside; lengths in stitch widths, @along from the inside's corner into the straight part. */
static void
bend_at (const SwItemPiece *piece, double quarter, double along, double *left, double *right)
{
  const double radius = inside_radius (piece), heel = piece->bend_radius_cm / piece->stitch_cm;
  const double from_end = along + 2 * quarter;

  *right = quarter + (along > 0 ? MIN (along, arc (radius, along)) : along);
  *left = -quarter + arc (heel, MAX (from_end, 0));
}

/* The line on which the pieces of a bend meet, and the piece's edges there. */
static void
bend_line (SwItemOutline *outline, int j, const SwItemPiece *piece, double quarter, double stitch, double up, gboolean beneath)
{
  const double along = piece->bend * (piece->bend_cm - up * piece->row_cm) / piece->stitch_cm;
  const double seam = quarter + along, farthest = (1 - G_SQRT2 / 2) * inside_radius (piece);
  double left, right;

  if (along > INSIDE_STITCHES)
    return;
  bend_at (piece, quarter, along, &left, &right);
  if (right >= seam - 1e-9)
    right += beneath ? BENEATH * CLAMP ((farthest - along) / BENEATH_FROM, 0, 1) : INTERLOCK * cos (2 * G_PI * up);
  outline->seam[j] = (float) (stitch * seam);
  outline->left[j] = MAX (outline->left[j], (float) (stitch * left));
  outline->right[j] = (float) (stitch * right);
}

void
sw_item_outline_init (SwItemOutline *outline, const SwItemPiece *piece, double stitch, double row, int top, int lines, gboolean beneath)
{
  const gsize n = piece->n_rows;
  g_autofree double *left = g_new (double, 3 * n);
  double *right = left + n, quarter = 0;

  g_return_if_fail (n > 0 && stitch > 0 && row > 0);
  for (gsize r = 0; r < n; r++)
    {
      left[r] = piece->rows[r].left - (piece->bend != 0 ? (double) piece->rows[r].first : 0);
      right[r] = piece->rows[r].left + (double) piece->rows[r].seen;
      quarter = MAX (quarter, right[r]);
    }
  even_out (left, n, right + n);
  even_out (right, n, right + n);
  *outline = (SwItemOutline){ lines, (float) stitch, g_new (float, 4 * lines) };
  outline->right = outline->left + lines;
  outline->share = outline->right + lines;
  outline->seam = outline->share + lines;
  for (int j = 0; j < lines; j++)
    {
      const double up = -(top + j + 0.5) / row, share = share_at (piece, up), bulge = -BULGE * cos (2 * G_PI * up);
      const double from = edge_at (left, n, up), to = edge_at (right, n, up), tip = piece->closed ? tip_at (left, right, n, up) : 1;
      const double middle = (from + to) / 2, half = tip > 0 ? tip * (to - from) / 2 + bulge : -1;

      outline->left[j] = (float) (stitch * (share * (middle - half)));
      outline->right[j] = (float) (stitch * (share * (middle + half)));
      outline->share[j] = (float) share;
      outline->seam[j] = SW_ITEM_NO_SEAM;
      if (piece->bend != 0)
        bend_line (outline, j, piece, quarter, stitch, up, beneath);
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

guint32
sw_item_fade (guint32 pixel, float cover)
{
  const guint32 share = (guint32) (cover * 256);
  guint32 faded = 0;

  for (int shift = 0; shift < 32; shift += 8)
    faded |= ((pixel >> shift & 0xff) * share >> 8) << shift;
  return faded;
}

/* Two fabrics that meet are drawn together in a crease. */
static float
crease_at (const SwItemOutline *outline, int j, float x)
{
  const float off = (x - outline->seam[j]) * (float) G_SQRT2 / 2 / (CREASE * outline->stitch);

  return fabsf (off) < 2 ? 1 - CREASE_SHADE * expf (-off * off) : 1;
}

static guint32
dim (guint32 pixel, float light)
{
  const guint32 share = (guint32) (light * 256);
  guint32 out = pixel & 0xff000000u;

  for (int shift = 0; shift < 24; shift += 8)
    out |= ((pixel >> shift & 0xff) * share >> 8) << shift;
  return out;
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
          if (outline->seam[j] < SW_ITEM_NO_SEAM)
            line[i] = dim (line[i], crease_at (outline, j, x));
          if (cover < 1)
            line[i] = sw_item_fade (line[i], cover);
        }
    }
}
