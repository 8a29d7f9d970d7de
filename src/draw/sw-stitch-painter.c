/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-stitch-painter.h"

#include "cloth/sw-stitches.h"
#include "colour/sw-mix.h"
#include "draw/sw-stitch-drift.h"
#include "draw/sw-stitch-masks.h"
#include "sketch/sw-chance.h"

#include <math.h>
#include <string.h>

/* From this cover on a pixel at the edge is all cloth. */
#define WHOLE 0.6f
#define LEAST_COVER 0.002f

/* How far in a selvedge may leave its cells free, stitch widths. */
#define RIM (0.12 + SW_STITCH_DRIFT)

/* What is laid on a pixel: one vector for the light, one for the cover, one for the dye. */
enum
{
  LIT,
  FLAT,
  DEEP,
  N_VECTORS,
};

void
sw_stitch_painter_init (SwStitchPainter *painter, const SwStitchStyle *style, int x, int width, int most_lines, gsize most_stitches)
{
  *painter = (SwStitchPainter){ .x = x, .width = width, .stitch = style->stitch, .row = style->row, .room = 2 * (most_stitches + 2) };
  painter->mask = sw_stitch_masks_take (style);
  painter->peak = sw_stitch_mask_get_peak (painter->mask);
  painter->segments = sw_stitch_mask_get_segments (painter->mask);
  sw_linear_init (&painter->linear);
  painter->gather = g_aligned_alloc ((gsize) width * (gsize) most_lines, sizeof (SwGather), sizeof (SwGather));
  painter->under = g_aligned_alloc ((gsize) width * (gsize) most_lines, sizeof (SwGather), sizeof (SwGather));
  painter->inside = g_new (guint8, (gsize) width * (gsize) most_lines);
  painter->legs = g_aligned_alloc (N_VECTORS * (painter->room + most_stitches), sizeof (SwGather), sizeof (SwGather));
  painter->colours = g_aligned_alloc (N_VECTORS * (gsize) (painter->segments + 1), sizeof (SwGather), sizeof (SwGather));
  painter->codes = g_new (guint32, painter->room);
}

void
sw_stitch_painter_clear (SwStitchPainter *painter)
{
  sw_stitch_masks_give_back (painter->mask);
  g_aligned_free (painter->gather);
  g_aligned_free (painter->under);
  g_free (painter->inside);
  g_aligned_free (painter->legs);
  g_aligned_free (painter->colours);
  g_free (painter->codes);
}

void
sw_stitch_painter_begin (SwStitchPainter *painter, int y, int lines)
{
  painter->y = y;
  painter->lines = lines;
  memset (painter->gather, 0, sizeof (SwGather) * (gsize) painter->width * (gsize) lines);
  memset (painter->under, 0, sizeof (SwGather) * (gsize) painter->width * (gsize) lines);
  memset (painter->inside, 0, (gsize) painter->width * (gsize) lines);
}

/* Small stitches show less of it, so that nothing jumps where they become too small to draw. */
static float
detail_for (double stitch)
{
  return (float) CLAMP ((stitch - 3) / 4, 0.2, 1);
}

/*
 * How much of the light and shade a colour takes, so that its highlights stay
 * within the white. Pale yarn is softer in life too: it lights its own hollows.
 */
static float
contrast_for (const float *rgb, float peak)
{
  const float room = 1 / MAX (MAX (rgb[0], rgb[1]), MAX (rgb[2], 0.01f));

  return CLAMP ((room - 1) / (peak - 1), 0.65f, 1);
}

/* The natural logarithm, near enough: only the hue of grooves hangs on it. */
static float
logarithm (float value)
{
  guint32 bits;

  memcpy (&bits, &value, sizeof bits);
  return (float) ((double) bits * 8.2629582e-8 - 87.989971);
}

/*
 * A stitch's light sums to its cover, so any mix of the two keeps the
 * colour's mean; its dye sums to nothing. More dye is the colour to a higher
 * power: c^(1 + d) = c + d c ln c, about.
 */
static void
mix_colours (const SwStitchPainter *painter, const float *xyz, gsize n, gsize stride, SwGather *to)
{
  const float detail = detail_for (painter->stitch);

  sw_pixels_from_xyz (xyz, xyz + stride, xyz + 2 * stride, 1, n, painter->codes);
  for (gsize i = 0; i < n; i++, to += N_VECTORS)
    {
      float rgb[3], contrast;
      SwGather colour;

      sw_linear_decode (&painter->linear, painter->codes[i], rgb);
      contrast = detail * contrast_for (rgb, painter->peak);
      colour = (SwGather){ rgb[0], rgb[1], rgb[2], 0 };
      to[LIT] = colour * contrast;
      to[FLAT] = colour * (1 - contrast) + (SwGather){ 0, 0, 0, 1 };
      to[DEEP] = colour * (SwGather){ logarithm (rgb[0] + 0.004f), logarithm (rgb[1] + 0.004f), logarithm (rgb[2] + 0.004f), 0 };
    }
}

/*
 * The colours of one stitch's segments: the strand's own between the middles
 * of its legs and those of the neighbours, a little lighter and darker here
 * and there.
 */
static void
spread_colours (const SwStitchPainter *painter, const SwGather *legs, guint64 chance)
{
  static const float at[] = { -1 + (float) SW_LEG_SECOND, (float) SW_LEG_FIRST, (float) SW_LEG_SECOND, 1 + (float) SW_LEG_FIRST };
  const float tones[] = { 0.12f * ((float) (chance >> 40 & 0xff) / 255.0f - 0.5f), 0.12f * ((float) (chance >> 48 & 0xff) / 255.0f - 0.5f) };
  SwGather *to = painter->colours;

  for (int s = 0; s < painter->segments; s++)
    {
      const float place = ((float) s + 0.5f) / (float) painter->segments;
      const int leg = place < at[1] ? 0 : place < at[2] ? 1
                                                        : 2;
      const float on = (place - at[leg]) / (at[leg + 1] - at[leg]), tone = 1 + (place < 0.5f ? tones[0] * 8 * place * (1 - 2 * place) : tones[1] * 8 * (2 * place - 1) * (1 - place));
      const float a = tone * (1 - on), b = tone * on;
      const SwGather *from = legs + N_VECTORS * leg, *next = from + N_VECTORS;

      for (int v = 0; v < N_VECTORS; v++)
        *to++ = from[v] * a + next[v] * b;
      to[FLAT - N_VECTORS][3] = 1;
    }
}

static void
add_clipped (SwStitchPainter *painter, const SwStitchPatch *patch, const SwStitchLayer *layer, int left, int top, SwGather *gather)
{
  const int from = MAX (0, -top), to = MIN (patch->height, painter->lines - top);

  for (int j = from; j < to; j++)
    {
      SwGather *line = gather + (gsize) (top + j) * (gsize) painter->width;

      for (guint i = layer->lines[j]; i < layer->lines[j + 1]; i++)
        {
          const SwStitchFragment *f = &layer->fragments[i];
          const SwGather *colour = painter->colours + N_VECTORS * f->segment;
          const int x = left + f->x;

          if (x >= 0 && x < painter->width)
            line[x] += colour[LIT] * f->light + colour[FLAT] * f->cover + colour[DEEP] * f->dye;
        }
    }
}

static void
add_inside (SwStitchPainter *painter, const SwStitchPatch *patch, const SwStitchLayer *layer, int left, int top, SwGather *gather)
{
  const int from = MAX (0, -top), to = MIN (patch->height, painter->lines - top);

  for (int j = from; j < to; j++)
    {
      SwGather *line = gather + (gsize) (top + j) * (gsize) painter->width + left;
      const SwStitchFragment *f = layer->fragments + layer->lines[j], *end = layer->fragments + layer->lines[j + 1];

      for (; f < end; f++)
        {
          const SwGather *colour = painter->colours + N_VECTORS * f->segment;

          line[f->x] += colour[LIT] * f->light + colour[FLAT] * f->cover + colour[DEEP] * f->dye;
        }
    }
}

/* Whole 65536ths of a pixel add up exactly, so that parts of a cloth that are painted one by one fit. */
static double
in_steps (double px)
{
  return round (px * 65536) / 65536;
}

static void
add_stitch (SwStitchPainter *painter, const SwStitchRow *row, gsize i, const SwGather *edge)
{
  const double stitch = painter->stitch;
  const guint64 chance = sw_chance_mix (row->address, row->column + i);
  const guint edges = row->edges | (i == 0 && row->left_edge ? SW_EDGE_LEFT : 0) | (i + 1 == row->n && row->right_edge ? SW_EDGE_RIGHT : 0);
  const SwStitchPatch *patch;
  double right, up;
  int x, y, left, top;

  sw_stitch_drift (row->row, row->column + i, &right, &up);
  patch = sw_stitch_mask_patch (painter->mask, row->row, row->column + i, edges, row->x + (double) i * stitch + in_steps (right * stitch),
                                row->y - in_steps (up * stitch), chance, &x, &y);
  left = x + patch->x - painter->x;
  top = y + patch->y - painter->y;
  if (top >= painter->lines || top + patch->height <= 0 || left >= painter->width || left + patch->width <= 0)
    return;
  spread_colours (painter, painter->legs + N_VECTORS * (2 * i + 1), chance);
  if (edge != NULL)
    memcpy (painter->colours + N_VECTORS * painter->segments, edge + N_VECTORS * i, N_VECTORS * sizeof (SwGather));
  if (left >= 0 && left + patch->width <= painter->width)
    {
      add_inside (painter, patch, &patch->seen, left, top, painter->gather);
      add_inside (painter, patch, &patch->under, left, top, painter->under);
    }
  else
    {
      add_clipped (painter, patch, &patch->seen, left, top, painter->gather);
      add_clipped (painter, patch, &patch->under, left, top, painter->under);
    }
}

/* The cells are cloth through and through, but for the rim of those at an edge. */
static void
mark_inside (SwStitchPainter *painter, const SwStitchRow *row)
{
  const double right = row->x + (double) row->n * painter->stitch, height = painter->row;
  const double high = (row->edges & (SW_EDGE_TOP | SW_EDGE_CAST_OFF)) != 0 ? height / 2 : 0;
  const int from_x = (int) CLAMP (ceil (row->x + (row->left_edge ? RIM * painter->stitch : 0)) - painter->x, 0, painter->width);
  const int to_x = (int) CLAMP (floor (right - (row->right_edge ? RIM * painter->stitch : 0)) - painter->x, from_x, painter->width);
  const int from_y = (int) CLAMP (floor (row->y + high) - painter->y, 0, painter->lines);
  const double low = (row->edges & SW_EDGE_CAST_ON) != 0 ? sw_stitch_mask_get_foot (painter->mask) : 0;
  const int to_y = (int) CLAMP (ceil (row->y + height + low) - painter->y, from_y, painter->lines);

  for (int j = from_y; j < to_y; j++)
    memset (painter->inside + (gsize) j * (gsize) painter->width + from_x, 1, (gsize) (to_x - from_x));
}

void
sw_stitch_painter_add (SwStitchPainter *painter, const SwStitchRow *row)
{
  const gsize legs = 2 * (row->n + 2);
  SwGather *edge = NULL;

  g_return_if_fail (legs <= painter->room);
  mix_colours (painter, row->xyz, legs, legs, painter->legs);
  if (row->edge_xyz != NULL)
    {
      edge = painter->legs + N_VECTORS * legs;
      mix_colours (painter, row->edge_xyz, row->n, row->n, edge);
    }
  mark_inside (painter, row);
  for (gsize i = 0; i < row->n; i++)
    add_stitch (painter, row, i, edge);
}

/* Stitches overlap a little, since each has a shape of its own: what they cover is made one. */
static guint32
pixel_of (const SwStitchPainter *painter, const SwGather *gather)
{
  const float whole = 1 / (*gather)[3];
  const float rgb[] = { (*gather)[0] * whole, (*gather)[1] * whole, (*gather)[2] * whole };

  return sw_linear_pixel (&painter->linear, rgb);
}

/* What is seen may leave a share of the pixel free: what lies under it fills that. */
static inline void
show_under (SwGather *gather, SwGather under)
{
  const float free = 1 - (*gather)[3];

  if (free > 0 && under[3] > 0)
    *gather += under * MIN (free / under[3], 1.0f);
}

void
sw_stitch_painter_end (SwStitchPainter *painter, int stride, guint32 *pixels)
{
  for (int j = 0; j < painter->lines; j++)
    {
      SwGather *gather = painter->gather + (gsize) j * (gsize) painter->width;
      const SwGather *under = painter->under + (gsize) j * (gsize) painter->width;
      const guint8 *inside = painter->inside + (gsize) j * (gsize) painter->width;
      guint32 *line = pixels + (gsize) j * (gsize) stride;

      for (int i = 0; i < painter->width; i++)
        {
          float cover;

          show_under (&gather[i], under[i]);
          cover = gather[i][3];

          if (cover < LEAST_COVER) /* where two stitches both left a pixel to the other, it is as the one before */
            line[i] = inside[i] && i > 0 ? line[i - 1] : 0;
          else if (cover >= WHOLE || inside[i])
            line[i] = pixel_of (painter, &gather[i]);
          else
            line[i] = sw_linear_premultiply (pixel_of (painter, &gather[i]), cover / WHOLE);
        }
    }
}
