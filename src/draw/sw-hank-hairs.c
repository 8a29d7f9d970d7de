/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-hank-hairs.h"

#include "sketch/sw-chance.h"

#include <math.h>

#define FIBRE_CM 0.0045 /* with the blur of a lens; a fibre is half of it */
#define MOST 40000
#define PLAINEST 0.85 /* how opaque: hairs beside the hank ... */
#define FAINTEST 0.30 /* ... and those over it */
#define OVER 0.3     /* of these, so many are drawn */

typedef struct
{
  double x, y, z;
  double out_x, out_y; /* where its strand's side faces, 0 where it faces the eye */
  double along_x, along_y;
  guint32 colour;
} Root;

static double
chance (guint64 address, guint64 part)
{
  return sw_chance_even (sw_chance_mix (address, part));
}

/* A place on the skin, by lot. */
static Root
root_at (const SwBundle *bundle, const SwHankYarn *yarn, guint64 address)
{
  const gsize i = (gsize) (chance (address, 1) * (bundle->n_rings - 1)), j = (gsize) (chance (address, 2) * bundle->n_around);
  const gsize columns = (gsize) bundle->n_around + 1;
  const float *p = bundle->points + (i * columns + j) * 3, *next = p + columns * 3, *normal = bundle->normals + (i * columns + j) * 3;
  const double length = MAX (hypot ((double) (next[0] - p[0]), (double) (next[1] - p[1])), 1e-6);
  const int strand = (int) (j * (gsize) yarn->n / (gsize) bundle->n_around);
  const int place = MIN ((int) (bundle->along[i] / bundle->along[bundle->n_rings - 1] * SW_HANK_PLACES), SW_HANK_PLACES - 1);

  return (Root){
    (double) p[0], (double) p[1], (double) p[2], (double) normal[0], (double) normal[1],
    (double) (next[0] - p[0]) / length, (double) (next[1] - p[1]) / length,
    yarn->pixels[(gsize) strand * SW_HANK_PLACES + (gsize) place]
  };
}

/* Whether nothing lies over it. */
static gboolean
is_seen (const SwRelief *relief, double x, double y, const Root *root)
{
  const int i = (int) lrint ((root->x + x - (double) relief->left) / (double) relief->step), j = (int) lrint ((root->y + y - (double) relief->top) / (double) relief->step);

  if (i < 0 || j < 0 || i >= relief->width || j >= relief->height)
    return FALSE;
  return (double) relief->heights[(gsize) j * (gsize) relief->width + (gsize) i] < root->z + 2.5 * (double) relief->step;
}

/* A hair thinner than a pixel is drawn a pixel wide and as much fainter. */
static void
draw_hair (cairo_t *cr, const Root *root, guint64 address, double length, double px_per_cm, double width)
{
  const double thin = MIN (FIBRE_CM * px_per_cm / width, 1);
  const double side = chance (address, 3) < 0.5 ? -1 : 1, lift = 0.25 + chance (address, 4), bow = 1.6 * (chance (address, 5) - 0.5);
  const double x = root->x * px_per_cm, y = root->y * px_per_cm, far = chance (address, 6), reach = length * px_per_cm * (0.2 + 1.1 * far * far); /* most are short: a halo, and few stand out of it */
  /* Along the strand, lifted towards where its side faces, and bowed. */
  const double dx = side * root->along_x + lift * root->out_x, dy = side * root->along_y + lift * root->out_y;
  const double seen = hypot (root->out_x, root->out_y);

  cairo_set_source_rgba (cr, (root->colour >> 16 & 0xff) / 255.0, (root->colour >> 8 & 0xff) / 255.0, (root->colour & 0xff) / 255.0, thin * (FAINTEST + (PLAINEST - FAINTEST) * seen * seen * seen) * (0.4 + 0.6 * chance (address, 7)));
  cairo_set_line_width (cr, width);
  cairo_move_to (cr, x, y);
  cairo_curve_to (cr, x + 0.35 * reach * dx, y + 0.35 * reach * dy, x + reach * (0.7 * dx - 0.3 * bow * dy), y + reach * (0.7 * dy + 0.3 * bow * dx), x + reach * (dx - 0.7 * bow * dy), y + reach * (dy + 0.7 * bow * dx));
  cairo_stroke (cr);
}

void
sw_hank_hairs_draw (cairo_t *cr, const SwBundle *bundle, const SwHankYarn *yarn, const SwRelief *relief, double x, double y, guint64 seed, double fuzz, double length_cm, double px_per_cm, double pixel)
{
  const double width = MAX (FIBRE_CM * px_per_cm, 0.7 * pixel);
  float least[3], most[3];
  int n;

  sw_bundle_extents (bundle, least, most);
  n = (int) MIN (fuzz * (double) bundle->along[bundle->n_rings - 1] * (double) (most[2] - least[2]), MOST);
  cairo_save (cr);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  for (int i = 0; i < n; i++)
    {
      const guint64 address = sw_chance_mix (sw_chance_mix (seed, 0x68616972), (guint64) i);
      const Root root = root_at (bundle, yarn, address);

      if (hypot (root.out_x, root.out_y) < 0.75 && chance (address, 8) > OVER)
        continue;
      if (is_seen (relief, x, y, &root))
        draw_hair (cr, &root, address, length_cm, px_per_cm, width);
    }
  cairo_restore (cr);
}
