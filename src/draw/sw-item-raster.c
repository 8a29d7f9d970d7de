/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-item-raster.h"

#include "cloth/sw-fabric.h"
#include "draw/sw-cloth-raster.h"
#include "draw/sw-item-outline.h"
#include "draw/sw-stitch-painter.h"
#include "sketch/sw-chance.h"

#include <math.h>
#include <string.h>

#define BAND_LINES 48

/* Pixels averaged to one, along a side, at most. */
#define MOST_TIMES 32

/* A stitch in them, px: an item of which less is left is a speck, and not drawn. */
#define SMALLEST 2.0

/* One piece as it is knitted, not yet turned: its own pixels. */
typedef struct
{
  const SwForecast *forecast;
  const SwItemPiece *piece;
  double stitch, row; /* px */
  int left, top;      /* of the pixels, from the beginning of the piece's middle line; upwards is negative */
  int width, height;
  guint32 *pixels;
  gsize beyond;     /* stitches to both sides that are not seen */
  gboolean beneath; /* the next piece */
  const SwItemRow *below[2]; /* the row that the first one is knitted into, if another piece has it, and the one that this is knitted into */
  SwStitchPainter painter;
  float *xyz, *edge_xyz;
} Sheet;

void
sw_item_yarn (const SwForecast *forecast, SwItemYarn *yarn)
{
  const SwClothSettings *cloth = &forecast->sketch->cloth;
  const double plain = 1 / sw_fabric_courses (SW_FABRIC_RIB, 1 / forecast->stitch_width_cm);

  *yarn = (SwItemYarn){
    .fabric = cloth->fabric,
    .stitch_cm = forecast->stitch_width_cm,
    .row_cm = forecast->row_height_cm,
    .rib_cm = cloth->fabric == SW_FABRIC_STOCKINETTE || cloth->fabric == SW_FABRIC_RIB ? forecast->row_height_cm : plain,
    .stitch_length_cm = forecast->stitch_length_cm,
    .alternation = forecast->layout.alternation,
    .cast_on = cloth->cast_on,
  };
  for (gsize skein = 0; skein < forecast->n_skeins; skein++)
    yarn->n_stitches[skein] = forecast->skeins[skein].n_stitches;
}

/* How much of the row below is drawn with a piece, rows: the heads that its own feet come out of, then ever less. */
#define BELOW_ROWS 0.8
#define BELOW_WHOLE 0.4

/* Rows count from here: there may be two below the first, and a fabric repeats after two. */
#define ROWS_BEFORE 2

/* The legs of a row that are seen, and their neighbours. */
static void
read_row (const Sheet *sheet, const SwItemRow *row)
{
  const SwSkeinLegs *skein = &sheet->forecast->skeins[row->skein];
  const gsize n = row->seen + 2 * sheet->beyond, stride = 2 * (n + 2), flip = row->rightward ? 0 : 1;
  float *x = sheet->xyz, *y = x + stride, *z = y + stride;

  /* Behind a fold the row goes on; beyond the end of a flat one there is only its last stitch's yarn. */
  const gssize past = row->seen < row->stitches ? (gssize) sheet->beyond : 0;

  for (gsize c = 0; c < n + 2; c++)
    {
      const gssize column = CLAMP ((gssize) c - 1 - (gssize) sheet->beyond, -past, (gssize) row->seen - 1 + past);
      const gsize stitch = sw_item_stitch (row, column);

      for (gsize leg = 0; leg < 2; leg++)
        {
          const gsize from = 2 * stitch + (leg ^ flip), to = 2 * c + leg;

          x[to] = skein->leg_x[from];
          y[to] = skein->leg_y[from];
          z[to] = skein->leg_z[from];
        }
    }
}

/* The cast-on is knitted from what lies before the first row, the cast-off from the last row's own yarn. */
static void
read_edge (const Sheet *sheet, const SwItemRow *row, gboolean begins)
{
  const SwSkeinLegs *skein = &sheet->forecast->skeins[begins ? 0 : row->skein];
  const gsize n = row->seen + 2 * sheet->beyond;

  for (gsize c = 0; c < n; c++)
    {
      const gsize stitch = begins ? MIN (sheet->piece->cast_on + c, skein->n_stitches - 1) : sw_item_stitch (row, CLAMP ((gssize) (c - sheet->beyond), 0, (gssize) row->seen - 1));

      sheet->edge_xyz[c] = skein->leg_x[2 * stitch];
      sheet->edge_xyz[n + c] = skein->leg_y[2 * stitch];
      sheet->edge_xyz[2 * n + c] = skein->leg_z[2 * stitch];
    }
}

/* @r: of the piece; -1 and -2 are those below */
static void
add_row (Sheet *sheet, gssize r)
{
  const SwItemPiece *piece = sheet->piece;
  const SwItemRow *row = r < 0 ? sheet->below[-1 - r] : &piece->rows[r];
  SwStitchRow stitches = {
    .row = (gsize) (r + ROWS_BEFORE),
    .column = row->column - sheet->beyond,
    .n = row->seen + 2 * sheet->beyond,
    .x = (row->left - (double) sheet->beyond) * sheet->stitch - sheet->left,
    .y = -(double) (r + 1) * sheet->row - sheet->top,
    .left_edge = sheet->beyond == 0,
    .right_edge = sheet->beyond == 0,
    .xyz = sheet->xyz,
    .address = sw_chance_mix (0x6974656d, row->start),
  };

  if (row->seen == 0)
    return;
  read_row (sheet, row);
  if ((piece->begins && r == 0) || (piece->ends && r + 1 == (gssize) piece->n_rows))
    {
      stitches.edges = r == 0 && piece->begins ? SW_EDGE_CAST_ON : SW_EDGE_CAST_OFF;
      stitches.edge_xyz = sheet->edge_xyz;
      read_edge (sheet, row, r == 0 && piece->begins);
    }
  else if (piece->closed && r + 1 == (gssize) piece->n_rows)
    stitches.edges = SW_EDGE_TOP;
  sw_stitch_painter_add (&sheet->painter, &stitches);
}

static void
measure_sheet (Sheet *sheet)
{
  const SwItemPiece *piece = sheet->piece;
  const double room = piece->bend != 0 ? SW_ITEM_BEYOND : 0.5;
  double left = 0, right = 0;

  for (gsize r = 0; r < piece->n_rows; r++)
    {
      left = MIN (left, piece->rows[r].left);
      right = MAX (right, piece->rows[r].left + (double) piece->rows[r].seen);
    }
  sheet->left = (int) floor ((left - room) * sheet->stitch);
  sheet->width = (int) ceil ((right + room) * sheet->stitch) - sheet->left;
  sheet->top = (int) floor (-(double) piece->n_rows * sheet->row - sheet->stitch);
  sheet->height = (int) ceil (sheet->stitch) - sheet->top;
}

/* Of the row below only its heads belong to this piece. */
static void
cut_below (Sheet *sheet)
{
  if (sheet->below[0] == NULL)
    return;
  for (int j = MAX (-sheet->top, 0); j < sheet->height; j++)
    {
      const double cover = CLAMP ((BELOW_ROWS - (sheet->top + j + 0.5) / sheet->row) / (BELOW_ROWS - BELOW_WHOLE), 0, 1);
      guint32 *line = sheet->pixels + (gsize) j * (gsize) sheet->width;

      for (int i = 0; i < sheet->width; i++)
        line[i] = sw_item_fade (line[i], (float) cover);
    }
}

static void
paint_sheet (Sheet *sheet)
{
  const double reach = sw_stitch_mask_get_reach (sheet->painter.mask);

  for (int line = 0; line < sheet->height; line += BAND_LINES)
    {
      const int lines = MIN (BAND_LINES, sheet->height - line);

      sw_stitch_painter_begin (&sheet->painter, line, lines);
      for (gssize r = sheet->below[0] != NULL ? -2 : 0; r < (gssize) sheet->piece->n_rows; r++)
        {
          const double top = -(double) (r + 1) * sheet->row - sheet->top;

          if (top - reach < line + lines && top + sheet->row + reach > line)
            add_row (sheet, r);
        }
      sw_stitch_painter_end (&sheet->painter, sheet->width, sheet->pixels + (gsize) line * (gsize) sheet->width);
    }
  cut_below (sheet);
}

static void
cut_sheet (Sheet *sheet)
{
  SwItemOutline outline;

  if (sheet->beyond == 0)
    return;
  sw_item_outline_init (&outline, sheet->piece, sheet->stitch, sheet->row, sheet->top, sheet->height, sheet->beneath);
  sw_item_outline_cut (&outline, sheet->left, sheet->width, sheet->pixels);
  sw_item_outline_clear (&outline);
}

/* @sheet's pixels over what is there, turned; @x, @y: of the beginning of its middle line. */
static void
lay_sheet (const Sheet *sheet, int x, int y, int width, int height, int stride, guint32 *pixels)
{
  static const int rights[4][2] = { { 1, 0 }, { 0, 1 }, { -1, 0 }, { 0, -1 } };
  const int *right = rights[sheet->piece->quarters & 3];
  /* A pixel's middle keeps its place when it is turned: one whole pixel less where an axis points back. */
  const int back_x = (right[0] - right[1] < 0) ? -1 : 0, back_y = (right[0] + right[1] < 0) ? -1 : 0;

  for (int j = 0; j < sheet->height; j++)
    for (int i = 0; i < sheet->width; i++)
      {
        const guint32 over = sheet->pixels[(gsize) j * (gsize) sheet->width + (gsize) i], alpha = over >> 24;
        const int u = sheet->left + i, v = sheet->top + j;
        const int to_x = x + u * right[0] - v * right[1] + back_x, to_y = y + u * right[1] + v * right[0] + back_y;
        guint32 *to;

        if (alpha == 0 || to_x < 0 || to_y < 0 || to_x >= width || to_y >= height)
          continue;
        to = &pixels[(gsize) to_y * (gsize) stride + (gsize) to_x];
        *to = alpha == 255 ? over : sw_linear_over (over, *to);
      }
}

/* Whether @next goes on from @piece in a straight line. */
static gboolean
goes_on (const SwItemPiece *piece, const SwItemPiece *next)
{
  return piece->quarters == next->quarters && piece->x_cm == next->x_cm;
}

/* Where a piece's first row is picked up from others, those below are taken to be like it. */
static void
rows_below (const SwItemKnit *knit, gsize p, const SwItemRow **below)
{
  const SwItemPiece *piece = &knit->pieces[p], *before = piece - 1;

  if (piece->begins || piece->n_rows == 0)
    return;
  for (gsize i = 0; i < 2; i++)
    below[i] = p > 0 && before->n_rows > i && goes_on (before, piece) ? &before->rows[before->n_rows - 1 - i] : &piece->rows[0];
}

static void
raster_piece (const SwForecast *forecast, const SwItemKnit *knit, gsize p, double scale, int x, int y, int width, int height, int stride, guint32 *pixels)
{
  const SwItemPiece *piece = &knit->pieces[p];
  const SwClothGeometry geometry = { .stitch = piece->stitch_cm * scale, .row = piece->row_cm * scale };
  Sheet sheet = { forecast, piece, geometry.stitch, geometry.row };
  SwStitchStyle style;
  gsize most = 0;

  rows_below (knit, p, sheet.below);

  for (gsize r = 0; r < piece->n_rows; r++)
    most = MAX (most, piece->rows[r].seen);
  if (most == 0)
    return;
  for (gsize i = 0; i < 2 && sheet.below[i] != NULL; i++)
    most = MAX (most, sheet.below[i]->seen);
  sw_cloth_style (forecast, &geometry, 1, &style);
  style.fabric = piece->fabric;
  style.quarters = piece->quarters;
  sheet.beyond = sw_item_is_cut (piece) ? SW_ITEM_BEYOND : 0;
  sheet.beneath = p + 1 < knit->n_pieces && piece->bend > 0;
  most += 2 * sheet.beyond;
  measure_sheet (&sheet);
  sheet.pixels = g_new (guint32, (gsize) sheet.width * (gsize) sheet.height);
  sheet.xyz = g_new (float, 6 * (most + 2));
  sheet.edge_xyz = g_new (float, 3 * most);
  sw_stitch_painter_init (&sheet.painter, &style, 0, sheet.width, BAND_LINES, most);
  paint_sheet (&sheet);
  cut_sheet (&sheet);
  lay_sheet (&sheet, x, y, width, height, stride, pixels);
  sw_stitch_painter_clear (&sheet.painter);
  g_free (sheet.pixels);
  g_free (sheet.xyz);
  g_free (sheet.edge_xyz);
}

static void
raster_pieces (const SwForecast *forecast, const SwItemKnit *knit, double scale, int x, int y, int width, int height, int stride, guint32 *pixels)
{
  for (gsize p = 0; p < knit->n_pieces; p++)
    {
      const SwItemPiece *piece = &knit->pieces[p];

      raster_piece (forecast, knit, p, scale, x + (int) lround ((piece->x_cm - knit->left_cm) * scale), y + (int) lround ((piece->y_cm - knit->top_cm) * scale), width, height, stride, pixels);
    }
}

/* The mean of @times x @times pixels, as light, over what is there. */
static guint32
mean_pixel (const SwLinear *linear, const guint32 *from, int times, int stride)
{
  const float share = 1.0f / (float) (times * times);
  float sum[4] = { 0 };

  for (int j = 0; j < times; j++)
    for (int i = 0; i < times; i++)
      {
        const guint32 pixel = from[j * stride + i], alpha = pixel >> 24;
        float rgb[3];

        if (alpha == 0)
          continue;
        sw_linear_decode (linear, alpha == 255 ? pixel : sw_linear_unpremultiply (pixel), rgb);
        for (int c = 0; c < 3; c++)
          sum[c] += rgb[c] * (float) alpha;
        sum[3] += (float) alpha;
      }
  if (sum[3] <= 0)
    return 0;
  for (int c = 0; c < 3; c++)
    sum[c] /= sum[3];
  return sw_linear_premultiply (sw_linear_pixel (linear, sum), sum[3] * share / 255);
}

void
sw_item_raster (const SwForecast *forecast, const SwItemKnit *knit, double scale, int x, int y, int width, int height, int stride, guint32 *pixels)
{
  const double stitch = forecast->stitch_width_cm * scale;
  const int times = (int) CLAMP (ceil (1.05 * SW_CLOTH_AVERAGE_BELOW / stitch), 1, MOST_TIMES);
  const int wide = width * times, high = height * times;
  guint32 *large;
  SwLinear linear;

  if (stitch * times < SMALLEST)
    return;
  if (times == 1)
    {
      raster_pieces (forecast, knit, scale, x, y, width, height, stride, pixels);
      return;
    }
  sw_linear_init (&linear);
  large = g_new0 (guint32, (gsize) wide * (gsize) high);
  raster_pieces (forecast, knit, scale * times, x * times, y * times, wide, high, wide, large);
  for (int j = 0; j < height; j++)
    for (int i = 0; i < width; i++)
      {
        const guint32 over = mean_pixel (&linear, large + (gsize) (j * times) * (gsize) wide + (gsize) (i * times), times, wide);
        guint32 *to = &pixels[(gsize) j * (gsize) stride + (gsize) i];

        *to = sw_linear_over (over, *to);
      }
  g_free (large);
}
