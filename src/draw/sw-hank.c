/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-hank-private.h"

#include "draw/sw-hank-hairs.h"
#include "draw/sw-shadow.h"

#include <math.h>

#define RELIEF_STEP 0.08 /* of the rope's radius */
#define GAP_DEEP 1.0     /* strand widths: what is seen in the gaps between strands */
#define ROOM 3.0         /* round the hanks for their shadows, radii */

/* Hairs to a cm2 for each that the kernel has to a strand's diameter; none where strands are not told apart. */
#define HAIRS 34.0
#define HAIRS_FROM_PX 2.5

SwHank *
sw_hank_new (const SwForecast *forecast, int number, double angle, cairo_surface_t *mark)
{
  SwHank *self = g_new0 (SwHank, 1);
  const guint64 seed = sw_chance_mix (sw_chance_mix (0x68616e6b, (guint64) forecast->sketch->seed), (guint64) number);
  SwForecastSkein skein;
  float box[4];

  self->seed = seed;
  self->sketch = forecast->sketch;
  sw_hank_shape_init (&self->shape, forecast->sketch);
  sw_hank_shape_vary (&self->shape, seed);
  sw_hank_shape_bundle (&self->shape, seed, &self->bundle);
  sw_bundle_turn (&self->bundle, angle);
  sw_hank_label_init (&self->label, &self->shape, seed, angle, forecast->sketch, mark);
  sw_forecast_skein (forecast, (gsize) number, &skein);
  sw_hank_yarn_init (&self->yarn, forecast, &skein.legs, &self->shape, seed);
  sw_forecast_skein_clear (&skein);
  self->grain = sw_grain_new (seed);
  sw_bundle_shrunk (&self->bundle, GAP_DEEP * self->shape.strand_cm, &self->core);
  sw_bundle_find_boxes (&self->core);
  sw_hank_strands_init (&self->strands, &self->bundle, &self->yarn, self->grain, &self->label.hold, self->shape.strand_cm, seed);
  sw_hank_strands_extents (&self->strands, box);
  self->box = (SwBox){ (double) box[0], (double) box[1], (double) (box[2] - box[0]), (double) (box[3] - box[1]) };
  sw_linear_init (&self->linear);
  for (int i = 0; i < 256; i++)
    self->logs[i] = logf (MAX (self->linear.decode[i], 0.002f));
  return self;
}

static void
table_clear (gpointer data)
{
  SwHankTable *table = data;

  sw_relief_clear (&table->relief);
}

void
sw_hank_free (SwHank *self)
{
  if (self == NULL)
    return;
  sw_hank_yarn_clear (&self->yarn);
  sw_hank_label_clear (&self->label);
  sw_bundle_clear (&self->bundle);
  sw_bundle_clear (&self->core);
  sw_hank_strands_clear (&self->strands);
  if (self->table != NULL)
    g_rc_box_release_full (self->table, table_clear);
  g_free (self->grain);
  g_free (self);
}

/* Two ropes beside each other; the knot and the fold are as much longer than the path between them as these are thick. */
double
sw_hank_slim (const SwSketch *sketch)
{
  SwHankShape shape;

  sw_hank_shape_init (&shape, sketch);
  return 3.7 * shape.radius_cm / (shape.length_cm + 3.2 * shape.radius_cm);
}

SwBox
sw_hank_get_box (const SwHank *self)
{
  return self->box;
}

void
sw_hanks_lay (SwHank *const *hanks, int n, const double *x, const double *y)
{
  const double r = hanks[0]->shape.radius_cm, room = ROOM * r;
  SwHankTable *table = g_rc_box_new0 (SwHankTable);
  double left = INFINITY, top = INFINITY, right = -INFINITY, bottom = -INFINITY, lowest = INFINITY;

  for (int i = 0; i < n; i++)
    {
      const SwBox *box = &hanks[i]->box;
      float least[3], most[3];

      sw_bundle_extents (&hanks[i]->bundle, least, most);
      left = MIN (left, x[i] + box->x);
      top = MIN (top, y[i] + box->y);
      right = MAX (right, x[i] + box->x + box->width);
      bottom = MAX (bottom, y[i] + box->y + box->height);
      lowest = MIN (lowest, (double) least[2]);
    }
  sw_relief_init (&table->relief, left - room, top - room, right + room, bottom + room, RELIEF_STEP * r, lowest + 0.18 * r);
  for (int i = 0; i < n; i++)
    {
      SwHank *hank = hanks[i];

      hank->x = x[i];
      hank->y = y[i];
      hank->table = i == 0 ? table : g_rc_box_acquire (table);
      sw_relief_add (&table->relief, &hank->bundle, x[i], y[i]);
      if (hank->label.width_cm > 0)
        sw_relief_add (&table->relief, &hank->label.band, x[i], y[i]);
    }
  sw_relief_light (&table->relief, 2.6 * r);
}

/* No hair grows through the paper: paints only beside the band. */
static void
clip_out_label (cairo_t *cr, const SwHankLabel *label, double px_per_cm)
{
  const SwBundle *band = &label->band;
  const int columns = band->n_around + 1, up = band->n_around / 4, down = 3 * band->n_around / 4, last = (band->n_rings - 1) * columns;
  const int corners[] = { up, last + up, last + down, down };

  if (label->width_cm <= 0)
    return;
  cairo_rectangle (cr, -1e5, -1e5, 2e5, 2e5);
  for (gsize i = 0; i < G_N_ELEMENTS (corners); i++)
    cairo_line_to (cr, (double) band->points[3 * corners[i]] * px_per_cm, (double) band->points[3 * corners[i] + 1] * px_per_cm);
  cairo_close_path (cr);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_clip (cr);
}

static void
draw_hairs (const SwHank *self, const SwCanvas *canvas, double x, double y, double px_per_cm, double scale)
{
  SwYarnLight strand;

  if (self->shape.strand_cm * px_per_cm * scale < HAIRS_FROM_PX)
    return;
  sw_yarn_light_init (&strand, self->sketch->yarn.fibre, (int) self->sketch->yarn.plies, 18); /* as fuzzy as it is before single fibres show */
  cairo_save (canvas->cr);
  cairo_translate (canvas->cr, x, y);
  clip_out_label (canvas->cr, &self->label, px_per_cm);
  sw_hank_hairs_draw (canvas->cr, &self->bundle, &self->yarn, &self->table->relief, self->x, self->y, self->seed, HAIRS * (double) strand.fuzz, (double) strand.hair * 2.4 * self->shape.strand_cm, px_per_cm, 1 / scale);
  cairo_restore (canvas->cr);
}

static void
draw_hank (SwHank *self, const SwCanvas *canvas, double x, double y, double px_per_cm)
{
  const SwBox box = { x + self->box.x * px_per_cm - 2, y + self->box.y * px_per_cm - 2, self->box.width * px_per_cm + 4, self->box.height * px_per_cm + 4 };
  SwRaster raster;

  if (!sw_raster_begin (&raster, canvas, &box))
    return;
  sw_hank_raster (self, px_per_cm * raster.scale, raster.x - (int) lrint (x * raster.scale), raster.y - (int) lrint (y * raster.scale), raster.width, raster.height, raster.stride, raster.pixels);
  sw_raster_end (&raster, canvas);
  draw_hairs (self, canvas, x, y, px_per_cm, raster.scale);
}

void
sw_hanks_draw (SwHank *const *hanks, int n, const SwCanvas *canvas, double x, double y, double px_per_cm)
{
  sw_shadow_draw (&hanks[0]->table->relief, canvas, x, y, px_per_cm);
  for (int i = 0; i < n; i++)
    draw_hank (hanks[i], canvas, round (x + hanks[i]->x * px_per_cm), round (y + hanks[i]->y * px_per_cm), px_per_cm);
}
