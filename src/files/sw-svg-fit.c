/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-svg-private.h"

#include <math.h>

/*
 * Which pour an outline stands for. An outline's area, centre and second
 * moments are those of exactly one ellipse and of exactly one band, so a
 * shape that is one of them comes back exactly, and any other as the one
 * that is as large, lies where it lies and stretches as it stretches.
 */

#define ROUND_ENOUGH 1e-3 /* relative difference of the main moments below which a shape has no direction */
#define LINES 160         /* across an outline, to measure what two shapes share */

gboolean
sw_moments_of_ring (const SwPoint *points, gsize n, SwMoments *moments)
{
  const SwPoint origin = n > 0 ? points[0] : (SwPoint){ 0, 0 };
  double area = 0, x = 0, y = 0, xx = 0, xy = 0, yy = 0;

  for (gsize i = 0; i < n; i++)
    {
      const SwPoint a = { points[i].x - origin.x, points[i].y - origin.y };
      const SwPoint b = { points[(i + 1) % n].x - origin.x, points[(i + 1) % n].y - origin.y };
      const double cross = a.x * b.y - b.x * a.y;

      area += cross / 2;
      x += (a.x + b.x) * cross / 6;
      y += (a.y + b.y) * cross / 6;
      xx += (a.x * a.x + a.x * b.x + b.x * b.x) * cross / 12;
      yy += (a.y * a.y + a.y * b.y + b.y * b.y) * cross / 12;
      xy += (a.x * b.y + 2 * a.x * a.y + 2 * b.x * b.y + b.x * a.y) * cross / 24;
    }
  if (!(fabs (area) > 1e-12))
    return FALSE;
  x /= area;
  y /= area;
  *moments = (SwMoments){ fabs (area), origin.x + x, origin.y + y, xx / area - x * x, xy / area - x * y, yy / area - y * y };
  /* A ring that crosses itself may cancel out to what no area has. */
  return moments->xx > 0 && moments->yy > 0 && moments->xx * moments->yy > moments->xy * moments->xy && isfinite (moments->xx + moments->yy);
}

gboolean
sw_moments_of_ellipse (double x, double y, double rx, double ry, const cairo_matrix_t *matrix, SwMoments *moments)
{
  const double a = matrix->xx * rx, b = matrix->yx * rx, c = matrix->xy * ry, d = matrix->yy * ry;

  cairo_matrix_transform_point (matrix, &x, &y);
  *moments = (SwMoments){ G_PI * fabs (a * d - b * c), x, y, (a * a + c * c) / 4, (a * b + c * d) / 4, (b * b + d * d) / 4 };
  return moments->area > 1e-12 && isfinite (moments->area + x + y);
}

/* @angle turned by quarter turns until it is nearest to @wanted. Returns: how many */
static int
nearest_quarter (double angle, double wanted)
{
  int best = 0;

  for (int quarter = 1; quarter < 4; quarter++)
    if (fabs (remainder (angle + 90 * quarter - wanted, 360)) < fabs (remainder (angle + 90 * best - wanted, 360)))
      best = quarter;
  return best;
}

/* Half of what the moment along @angle has more than the one at right angles to it. */
static double
off_along (const SwMoments *m, double angle)
{
  const double turn = 2 * angle * G_PI / 180;

  return (m->xx - m->yy) / 2 * cos (turn) + m->xy * sin (turn);
}

void
sw_fit_turned (const SwMoments *m, SwStepKind kind, double angle, SwPourPlace *place)
{
  const double mean = (m->xx + m->yy) / 2, off = hypot ((m->xx - m->yy) / 2, m->xy);
  const gboolean directed = off > ROUND_ENOUGH * mean;
  const double turn = directed ? atan2 (m->xy, (m->xx - m->yy) / 2) / 2 * 180 / G_PI : angle;
  const int quarter = directed ? nearest_quarter (turn, angle) : 0;
  const double per_area = kind == SW_STEP_SPLOTCH ? G_PI_4 : 1;
  /* What has no direction of its own is measured along the angle that it is given: its longer side may be either. */
  const double stretch = directed ? off : off_along (m, angle);
  const double ratio = sqrt (MAX (mean + stretch, 0) / MAX (mean - stretch, 1e-12));
  const double along = sqrt (m->area / per_area * ratio), across = sqrt (m->area / per_area / ratio);

  *place = (SwPourPlace){ kind, m->x, m->y, along, across, turn + 90 * quarter };
  if (quarter % 2 == 1)
    {
      place->width = across;
      place->length = along;
    }
}

void
sw_fit_band (const SwMoments *m, SwPourPlace *place)
{
  const double length = sqrt (12 * m->yy);

  *place = (SwPourPlace){ SW_STEP_BAND, m->x, m->y, m->area / length, length, atan (m->xy / m->yy) * 180 / G_PI };
}

gboolean
sw_fit_spans (double near, double far, double across)
{
  const double slack = MAX (0.3, 0.05 * across);

  return near <= slack && far >= across - slack;
}

/* What of the outline lies between two lines along the skein (Sutherland and Hodgman). */
static GArray *
clipped (const SwPoint *points, gsize n, double limit, gboolean above)
{
  GArray *inside = g_array_new (FALSE, FALSE, sizeof (SwPoint));

  for (gsize i = 0; i < n; i++)
    {
      const SwPoint a = points[i], b = points[(i + 1) % n];
      const gboolean a_in = above ? a.y >= limit : a.y <= limit, b_in = above ? b.y >= limit : b.y <= limit;

      if (a_in)
        g_array_append_val (inside, a);
      if (a_in != b_in)
        {
          const SwPoint edge = { a.x + (b.x - a.x) * (limit - a.y) / (b.y - a.y), limit };

          g_array_append_val (inside, edge);
        }
    }
  return inside;
}

/* Where the line at @y enters and leaves the outline: pairs, from the left. */
static int
compare_numbers (gconstpointer a, gconstpointer b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return x < y ? -1 : x > y;
}

static void
crossings (const SwPoint *points, gsize n, double y, GArray *at)
{
  g_array_set_size (at, 0);
  for (gsize i = 0; i < n; i++)
    {
      const SwPoint a = points[i], b = points[(i + 1) % n];

      if ((a.y <= y) != (b.y <= y))
        {
          const double x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);

          g_array_append_val (at, x);
        }
    }
  g_array_sort (at, compare_numbers);
}

/* Where the line at @y is in a band or a splotch. FALSE if it misses it. */
static gboolean
interval (const SwPourPlace *place, double across, double y, double *from, double *to)
{
  const double turn = place->angle * G_PI / 180, dy = y - place->y;

  if (place->kind == SW_STEP_BAND)
    {
      const double near = place->length > 0 ? place->y - place->length / 2 : 0, far = place->length > 0 ? place->y + place->length / 2 : across;

      *from = place->x + dy * tan (turn) - place->width / 2;
      *to = *from + place->width;
      return y >= near && y <= far;
    }
  else
    {
      const double a = place->width / 2, b = place->length / 2, c = cos (turn), s = sin (turn);
      const double p = c * c / (a * a) + s * s / (b * b), q = c * s * (1 / (a * a) - 1 / (b * b)) * dy;
      const double rest = (s * s / (a * a) + c * c / (b * b)) * dy * dy - 1, root = q * q - p * rest;

      if (root <= 0)
        return FALSE;
      *from = place->x + (-q - sqrt (root)) / p;
      *to = place->x + (-q + sqrt (root)) / p;
      return TRUE;
    }
}

static void
extent_across (const SwPoint *points, gsize n, double *least, double *most)
{
  *least = G_MAXDOUBLE;
  *most = -G_MAXDOUBLE;
  for (gsize i = 0; i < n; i++)
    {
      *least = MIN (*least, points[i].y);
      *most = MAX (*most, points[i].y);
    }
}

/* What outline and pour have in common, over all that either covers: 1 for the same shape. */
static double
likeness (const SwPoint *points, gsize n, const SwPourPlace *place, double across)
{
  g_autoptr (GArray) at = g_array_new (FALSE, FALSE, sizeof (double));
  const double reach = place->kind == SW_STEP_BAND && place->length <= 0 ? across / 2 : hypot (place->width, place->length) / 2;
  const double middle = place->kind == SW_STEP_BAND && place->length <= 0 ? across / 2 : place->y;
  double least, most, own = 0, theirs = 0, common = 0;

  extent_across (points, n, &least, &most);
  least = MIN (least, middle - reach);
  most = MAX (most, middle + reach);
  for (int line = 0; line < LINES; line++)
    {
      const double y = least + (most - least) * (line + 0.5) / LINES;
      double from = 0, to = 0;
      const gboolean hit = interval (place, across, y, &from, &to);

      crossings (points, n, y, at);
      theirs += hit ? to - from : 0;
      for (guint i = 0; i + 1 < at->len; i += 2)
        {
          const double in = g_array_index (at, double, i), out = g_array_index (at, double, i + 1);

          own += out - in;
          if (hit)
            common += MAX (MIN (out, to) - MAX (in, from), 0);
        }
    }
  return own + theirs > common ? common / (own + theirs - common) : 0;
}

/* A band right across, from what of the outline lies on the skein. Returns: how alike they are; 0 if it does not reach across */
static double
fit_whole_band (const SwPoint *points, gsize n, double across, SwPourPlace *place)
{
  g_autoptr (GArray) above = clipped (points, n, 0, TRUE);
  g_autoptr (GArray) inside = clipped ((const SwPoint *) (gpointer) above->data, above->len, across, FALSE);
  const SwPoint *ring = (const SwPoint *) (gpointer) inside->data;
  SwMoments moments;

  if (!sw_moments_of_ring (ring, inside->len, &moments))
    return 0;
  sw_fit_band (&moments, place);
  if (!sw_fit_spans (place->y - place->length / 2, place->y + place->length / 2, across) || fabs (place->angle) > SW_MAX_SLANT_DEG)
    return 0;
  place->x += (across / 2 - place->y) * tan (place->angle * G_PI / 180);
  place->y = across / 2;
  place->length = 0;
  return likeness (ring, inside->len, place, across);
}

#define AS_GOOD 0.01 /* a band right across is meant if it is nearly as like */

void
sw_fit_nearest (const SwPoint *points, gsize n, const SwMoments *moments, double across, SwPourPlace *place)
{
  SwPourPlace band, whole;
  double best, like;

  sw_fit_turned (moments, SW_STEP_SPLOTCH, 0, place);
  best = likeness (points, n, place, across);
  sw_fit_band (moments, &band);
  like = fabs (band.angle) <= SW_MAX_SLANT_DEG ? likeness (points, n, &band, across) : 0;
  if (like > best)
    {
      best = like;
      *place = band;
    }
  like = fit_whole_band (points, n, across, &whole);
  if (like > best - AS_GOOD)
    *place = whole;
}
