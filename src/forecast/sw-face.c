/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-forecast.h"

#include <math.h>
#include <string.h>

/*
 * What a person sees looking down on the skein, and along one loop of it.
 */

/* Lines of the face that are mixed at once, so that their dyes stay in the processor's near memory. */
#define FACE_LINES 16

/* Where each pixel lies between two cell centres; the outer half cells hold their centre's value. */
typedef struct
{
  int *lower, *upper;
  float *on;
} Between;

/* Of the @n pixels from @first, of @n_pixels in all. */
static void
between_init (Between *between, int first, int n, int n_pixels, int n_cells)
{
  between->lower = g_new (int, n);
  between->upper = g_new (int, n);
  between->on = g_new (float, n);
  for (int i = 0; i < n; i++)
    {
      double at = CLAMP ((first + i + 0.5) / n_pixels * n_cells - 0.5, 0.0, n_cells - 1.0);

      between->lower[i] = (int) at;
      between->upper[i] = MIN (between->lower[i] + 1, n_cells - 1);
      between->on[i] = (float) (at - between->lower[i]);
    }
}

static void
between_clear (Between *between)
{
  g_free (between->lower);
  g_free (between->upper);
  g_free (between->on);
}

typedef struct
{
  const SwForecast *forecast;
  const SwFaceWindow *window;
  int layer;
  Between across, along; /* columns, lines */
  float *cells;          /* one line of cells */
} Face;

/* One dye of the outermost layer along line @j of the window, by straight lines between cell centres. */
static void
read_line (const Face *face, int dye, int j, float *depths)
{
  const SwGrid *grid = &face->forecast->grid;
  const float *layer = face->forecast->fields[dye].depth + (gsize) face->layer * (gsize) grid->ny * (gsize) grid->nx;
  const float *near = layer + (gsize) face->along.lower[j] * (gsize) grid->nx, *far = layer + (gsize) face->along.upper[j] * (gsize) grid->nx;
  const float on = face->along.on[j];
  float *cells = face->cells;

  for (int i = 0; i < grid->nx; i++)
    cells[i] = near[i] + on * (far[i] - near[i]);
  for (int i = 0; i < face->window->width; i++)
    {
      float low = cells[face->across.lower[i]];

      depths[i] = low + face->across.on[i] * (cells[face->across.upper[i]] - low);
    }
}

/*
 * One speck's dye along a line of @n pixels that passes it at @dy, as far as it can be seen.
 * @amount: % owf per unit of its mark; @x: from the line's start, cm
 */
static void
add_speck (const SwMark *mark, double amount, double reach, double x, double dy, double px, int n, float *line)
{
  double half = sqrt (MAX (reach * reach - dy * dy, 0.0));
  int i0 = MAX ((int) ceil ((x - half) / px - 0.5), 0);
  int i1 = MIN ((int) floor ((x + half) / px - 0.5), n - 1);

  for (int i = i0; i <= i1; i++)
    {
      double dx = (i + 0.5) * px - x;

      line[i] += (float) (amount * sw_mark_density (mark, dx * dx + dy * dy));
    }
}

/* Adds what of one pour's specks falls on the @n lines from @first of the window. */
static void
add_specks (const Face *face, const SwSpecks *specks, int first, int n, float *depths)
{
  const SwGrid *grid = &face->forecast->grid;
  const SwFaceWindow *window = face->window;
  double px = grid->lx / window->nx, py = grid->ly / window->ny;
  double left = window->left * px, near = (window->near + first) * py;
  double scale = 100.0 * (grid->lx / grid->nx) * (grid->ly / grid->ny) / face->forecast->grams_per_cell;

  for (gsize k = 0; k < specks->n_specks; k++)
    {
      const SwSpeck *speck = &specks->specks[k];
      const SwMark *mark = &specks->marks[specks->class_of[k]];
      double amount = scale * (double) speck->grams * (double) mark->depth[face->layer];
      double x = (double) speck->x - left, y = (double) speck->y - near;
      double away = MAX (MAX (-y, y - n * py), 0.0), reach = 0.0;

      if (away < mark->reach_cm && amount > 0.0)
        reach = sw_mark_extent (mark, SW_LEAST_AMOUNT / amount);
      if (away >= reach)
        continue;

      for (int j = 0; j < n; j++)
        {
          double dy = (j + 0.5) * py - y;

          if (fabs (dy) < reach)
            add_speck (mark, amount, reach, x, dy, px, window->width, depths + (gsize) j * (gsize) window->width);
        }
    }
}

static void
read_lines (const Face *face, int dye, int first, int n, float *depths)
{
  const SwForecast *forecast = face->forecast;

  for (int j = 0; j < n; j++)
    read_line (face, dye, first + j, depths + (gsize) j * (gsize) face->window->width);
  for (gsize i = 0; i < forecast->n_specks; i++)
    if (forecast->specks[i]->dye == dye)
      add_specks (face, forecast->specks[i], first, n, depths);
}

void
sw_forecast_face_window (const SwForecast *forecast, gboolean second, const SwFaceWindow *window, float *x, float *y, float *z)
{
  gsize width = (gsize) window->width, block = width * FACE_LINES;
  g_autofree float *room = g_new (float, block * (gsize) MAX (forecast->n_dyes, 1));
  g_autofree float *cells = g_new (float, forecast->grid.nx);
  const float *depths[SW_MAX_DYES];
  Face face = { forecast, window, second ? forecast->grid.nz - 1 : 0, .cells = cells };

  between_init (&face.across, window->left, window->width, window->nx, forecast->grid.nx);
  between_init (&face.along, window->near, window->height, window->ny, forecast->grid.ny);
  for (int first = 0; first < window->height; first += FACE_LINES)
    {
      int n = MIN (FACE_LINES, window->height - first);
      gsize at = (gsize) first * width;

      for (int dye = 0; dye < forecast->n_dyes; dye++)
        {
          read_lines (&face, dye, first, n, room + block * (gsize) dye);
          depths[dye] = room + block * (gsize) dye;
        }
      sw_mix_xyz (&forecast->palette, depths, width * (gsize) n, x + at, y + at, z + at);
    }
  between_clear (&face.across);
  between_clear (&face.along);
}

void
sw_forecast_face (const SwForecast *forecast, gboolean second, int nx, int ny, float *x, float *y, float *z)
{
  const SwFaceWindow whole = { nx, ny, 0, 0, nx, ny };

  sw_forecast_face_window (forecast, second, &whole, x, y, z);
}

void
sw_forecast_strip (const SwForecast *forecast, gsize n, float *x, float *y, float *z)
{
  g_autofree guint *counts = g_new0 (guint, n);
  gsize filled = n;

  memset (x, 0, n * sizeof (float));
  memset (y, 0, n * sizeof (float));
  memset (z, 0, n * sizeof (float));

  for (gsize i = 0; i < 2 * forecast->n_stitches; i++)
    {
      double t = forecast->sketch->cloth.start_cm +
                 ((double) (i / 2) + (i % 2 == 0 ? SW_LEG_FIRST : SW_LEG_SECOND)) * forecast->stitch_length_cm;
      double loop = sw_reel_loop (&forecast->reel, MIN (t, forecast->strand_length_cm));
      gsize at = MIN ((gsize) (loop * (double) n), n - 1);

      counts[at]++;
      x[at] += forecast->leg_x[i];
      y[at] += forecast->leg_y[i];
      z[at] += forecast->leg_z[i];
    }

  for (gsize at = 0; at < n; at++)
    if (counts[at] > 0)
      {
        x[at] /= (float) counts[at];
        y[at] /= (float) counts[at];
        z[at] /= (float) counts[at];
        filled = at;
      }

  /* A short strand may leave places bare: they take the colour before them, going round. */
  for (gsize at = 0, last = filled; at < n && filled < n; at++)
    if (counts[at] > 0)
      last = at;
    else
      {
        x[at] = x[last];
        y[at] = y[last];
        z[at] = z[last];
      }
}
