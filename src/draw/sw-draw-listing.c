/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-cloth-raster.h"
#include "draw/sw-ground.h"
#include "draw/sw-hank.h"
#include "draw/sw-laid.h"
#include "draw/sw-listing-layout.h"
#include "draw/sw-relief.h"
#include "draw/sw-shadow.h"

#include "forecast/sw-main-colours.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Cloth beside a laid skein, which is drawn smaller than it: so many cm go across the picture. */
#define CLOTH_ALONE_CM 30.0
#define CLOTH_THICK_CM 0.28
#define LEAST_STITCH_PX 2.0
#define SMALLEST_LETTERS 7.0

typedef struct
{
  SwCanvas canvas;
  const SwForecast *forecast;
  const SwListingSettings *listing;
  SwGround ground;
  SwListingLayout layout;
  double per_cm; /* px, of hanks and cloth */
} Listing;

/* A sheet lying flat keeps light off what is beneath its lower right. */
static void
draw_sheet_shadow (const SwCanvas *canvas, const SwBox *box, double per_cm)
{
  const double thick = CLOTH_THICK_CM, room = 1.2, step = 0.07, width = box->width / per_cm, height = box->height / per_cm;
  SwRelief relief;

  sw_relief_init (&relief, -room, -room, width + room, height + room, step, 0);
  for (int j = 0; j < relief.height; j++)
    for (int i = 0; i < relief.width; i++)
      {
        const double x = (double) (relief.left + relief.step * (float) i), y = (double) (relief.top + relief.step * (float) j);

        if (x >= 0 && y >= 0 && x <= width && y <= height)
          relief.heights[(gsize) j * (gsize) relief.width + (gsize) i] = (float) thick;
      }
  sw_relief_light (&relief, 1.0);
  sw_shadow_draw (&relief, canvas, box->x, box->y, per_cm);
  sw_relief_clear (&relief);
}

/* Cloth at true gauge with its cast-on at the foot of @room; it runs off the picture above and to the right if it is larger. */
static void
draw_cloth (const Listing *self, double per_cm)
{
  const SwForecast *forecast = self->forecast;
  const SwBox *room = &self->layout.cloth;
  const gboolean runs_off = room->x + room->width >= self->canvas.width - 0.5;
  SwLook look = *self->canvas.look;
  SwClothGeometry geometry;
  SwRaster raster;
  SwBox cloth;
  double stitch = forecast->stitch_width_cm * per_cm, columns = floor (room->width / stitch);

  if (!runs_off)
    columns = MIN (columns, (double) forecast->layout.width);
  look.stitch_px = MAX (stitch, LEAST_STITCH_PX);
  look.first_row = look.first_column = 0;
  sw_cloth_geometry (forecast, runs_off ? room->width : columns * stitch, room->height, &look, &geometry);
  if (geometry.rows == 0)
    return;
  cloth = geometry.cloth;
  cloth.x += room->x + (runs_off ? 0 : (room->width - columns * stitch) / 2);
  cloth.y += room->y;
  draw_sheet_shadow (&self->canvas, &cloth, per_cm);
  geometry.cloth = cloth;
  {
    /* The lowest row's feet and the highest row's heads reach beyond their cells. */
    const SwBox box = { cloth.x - geometry.stitch, cloth.y - geometry.row, cloth.width + 2 * geometry.stitch, cloth.height + 2 * geometry.row };

    if (!sw_raster_begin (&raster, &self->canvas, &box))
      return;
  }
  sw_cloth_raster (forecast, &geometry, raster.scale, raster.x, raster.y, raster.width, raster.height, raster.stride, raster.pixels);
  sw_raster_end (&raster, &self->canvas);
}

static void
draw_skein (const Listing *self)
{
  g_autoptr (SwLaid) laid = sw_laid_new (self->forecast, self->canvas.look->second_face);
  const SwSketch *sketch = self->forecast->sketch;
  const SwBox *room = &self->layout.skein;
  const double length = sw_sketch_lay_length (sketch), across = sw_sketch_lay_width (sketch), scale = MIN (room->width / length, 0.92 * room->height / across);
  const SwBox box = { room->x + (room->width - length * scale) / 2, room->y + (room->height - across * scale) / 2, length * scale, across * scale };

  sw_laid_draw (laid, &self->canvas, &box);
}

static void
draw_hank (const Listing *self, SwHank *hank, int i)
{
  const SwBox box = sw_hank_get_box (hank);
  const SwHankPlace *place = &self->layout.hanks[i];

  sw_hank_draw (hank, &self->canvas, round (place->x - (box.x + box.width / 2) * self->per_cm), round (place->y - (box.y + box.height / 2) * self->per_cm), self->per_cm);
}

/* The size of letters at which the longest name fits, at most @size. */
static double
letters_that_fit (const SwCanvas *canvas, char **names, double size, double width)
{
  double longest = 1;

  for (int i = 0; names[i] != NULL; i++)
    {
      double name_width, name_height;

      sw_canvas_text_size (canvas, names[i], size, &name_width, &name_height);
      longest = MAX (longest, name_width);
    }
  return size * MIN (1, width / longest);
}

/* A filled box with its colour's name and share beside it, for each of the main colours. */
static void
draw_palette (const Listing *self)
{
  const SwCanvas *canvas = &self->canvas;
  const SwBox *room = &self->layout.palette;
  const double ink = sw_ground_ink (self->ground, FALSE), faint = sw_ground_ink (self->ground, TRUE);
  SwMainColour colours[SW_MOST_COLOURS];
  const int n = sw_main_colours (self->forecast, colours);
  g_auto (GStrv) names = sw_main_colour_names (colours, n);
  const double gap = 0.02 * room->width, width = MIN ((room->width - gap * (n - 1)) / MAX (n, 1), 0.24 * room->width), chip = 0.46 * room->height;
  const double size = letters_that_fit (canvas, names, 0.21 * room->height, width);

  for (int i = 0; i < n; i++)
    {
      const SwBox box = { room->x + i * (width + gap), room->y, MIN (width, 4.2 * chip), chip };
      /* Translators: a share of the yarn */
      g_autofree char *share = g_strdup_printf (_ ("%.0f %%"), 100 * colours[i].share);
      const SwSrgb srgb = sw_srgb_from_xyz (sw_xyz_from_lab (colours[i].lab));

      sw_canvas_rounded (canvas, &box, 0.18 * chip);
      cairo_set_source_rgb (canvas->cr, srgb.r, srgb.g, srgb.b);
      cairo_fill (canvas->cr);
      if (size < SMALLEST_LETTERS)
        continue;
      cairo_set_source_rgb (canvas->cr, ink, ink, ink);
      sw_canvas_text (canvas, names[i], box.x, room->y + 0.55 * room->height, 0, 0, size, NULL);
      cairo_set_source_rgb (canvas->cr, faint, faint, faint);
      sw_canvas_text (canvas, share, box.x, room->y + 0.57 * room->height + 1.3 * size, 0, 0, 0.92 * size, NULL);
    }
}

static void
draw_caption (const Listing *self)
{
  const SwBox *room = &self->layout.caption;
  const double ink = sw_ground_ink (self->ground, FALSE);
  double size = 0.8 * room->height, width, height;

  sw_canvas_text_size (&self->canvas, self->listing->caption, size, &width, &height);
  size *= MIN (1, room->width / MAX (width, 1));
  cairo_set_source_rgb (self->canvas.cr, ink, ink, ink);
  sw_canvas_text (&self->canvas, self->listing->caption, room->x, room->y + room->height, 0, 1, size, NULL);
}

static void
draw_mark (const Listing *self, cairo_surface_t *mark)
{
  const SwBox *room = &self->layout.mark;
  cairo_t *cr = self->canvas.cr;
  const double scale = room->width / cairo_image_surface_get_width (mark);

  cairo_save (cr);
  cairo_translate (cr, room->x, room->y);
  cairo_scale (cr, scale, scale);
  cairo_set_source_surface (cr, mark, 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_BEST);
  cairo_paint (cr);
  cairo_restore (cr);
}

static void
draw_yarn (Listing *self)
{
  SwHank *hanks[SW_MOST_HANKS];
  const int n = self->layout.n_hanks;

  self->per_cm = n > 0 ? INFINITY : self->canvas.width / CLOTH_ALONE_CM;
  for (int i = 0; i < n; i++)
    {
      const SwBox *room = &self->layout.hank_room[i];
      SwBox box;

      hanks[i] = sw_hank_new (self->forecast, i, self->layout.hanks[i].angle);
      box = sw_hank_get_box (hanks[i]);
      self->per_cm = MIN (self->per_cm, MIN (0.96 * room->width / box.width, room->height / box.height));
    }
  if (self->layout.cloth.width > 0)
    draw_cloth (self, self->per_cm);
  if (self->layout.skein.width > 0)
    draw_skein (self);
  for (int i = 0; i < n; i++)
    {
      draw_hank (self, hanks[i], i);
      sw_hank_free (hanks[i]);
    }
}

void
sw_draw_listing (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  cairo_surface_t *mark = look->mark;
  const double mark_aspect = mark != NULL ? (double) cairo_image_surface_get_width (mark) / MAX (cairo_image_surface_get_height (mark), 1) : 0;
  Listing self = { .forecast = forecast, .listing = &forecast->sketch->listing, .ground = sw_ground_for (forecast->sketch, look) };

  sw_listing_layout (self.listing, mark_aspect, width, height, &self.layout);
  sw_canvas_begin (&self.canvas, cr, width, height, look);
  sw_ground_draw (&self.canvas, self.ground);
  draw_yarn (&self);
  if (self.layout.palette.width > 0)
    draw_palette (&self);
  if (self.layout.caption.width > 0)
    draw_caption (&self);
  if (self.layout.mark.width > 0)
    draw_mark (&self, mark);
  sw_canvas_end (&self.canvas);
}
