/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-cloth-piece.h"
#include "draw/sw-ground.h"
#include "draw/sw-hank.h"
#include "draw/sw-laid.h"
#include "draw/sw-listing-layout.h"

#include "forecast/sw-colour-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Cloth beside a laid skein, which is drawn smaller than it: so many cm go across the picture. */
#define CLOTH_ALONE_CM 30.0
#define CLOSE 1.10 /* from one hank of a batch to the next, in widths of one */
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

/* Cloth at true gauge; see sw_listing_layout() for where its edges are. */
static void
draw_cloth (const Listing *self, double per_cm)
{
  const SwListingLayout *layout = &self->layout;
  const SwBox *room = &layout->cloth;
  const double tilt = layout->cloth_tilt, off = fabs (sin (tilt)) * (room->width + room->height);
  const gboolean to_right = room->x + room->width >= self->canvas.width - 0.5;
  const SwClothPiece piece = {
    .x = room->x,
    .y = room->y + room->height,
    .width = room->width + (to_right ? off : 0),
    .height = room->height + off,
    .tilt = tilt,
    .to_right = to_right ? room->x + room->width + off : -INFINITY,
    .to_top = INFINITY,
  };

  sw_cloth_piece_draw (&self->canvas, self->forecast, &piece, per_cm);
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

/* The size of letters at which every name fits into two lines of @width, at most @size. */
static double
letters_that_fit (const SwCanvas *canvas, char **names, double size, double width)
{
  for (int i = 0; names[i] != NULL; i++)
    while (size > SMALLEST_LETTERS)
      {
        double wide, high, line_wide, line_high;

        sw_canvas_words_size (canvas, names[i], size, width, &wide, &high);
        sw_canvas_text_size (canvas, names[i], size, &line_wide, &line_high);
        if (wide <= width && high < 2.5 * line_high)
          break;
        size *= 0.96;
      }
  return size;
}

/* Black or white, whichever stands out more from @lab: WCAG 2.1 puts the middle at a luminance of 0.18. */
static double
ink_on (SwLab lab)
{
  return sw_xyz_from_lab (lab).y > 18 ? 0.10 : 1;
}

static void
draw_chip (const SwCanvas *canvas, const SwMainColour *colour, const SwBox *box, double size)
{
  /* Translators: a share of the yarn */
  g_autofree char *share = g_strdup_printf (_ ("%.0f %%"), 100 * colour->share);
  const SwSrgb srgb = sw_srgb_from_xyz (sw_xyz_from_lab (colour->lab));
  const double ink = ink_on (colour->lab);

  sw_canvas_rounded (canvas, box, 0.16 * box->height);
  cairo_set_source_rgb (canvas->cr, srgb.r, srgb.g, srgb.b);
  cairo_fill (canvas->cr);
  cairo_set_source_rgb (canvas->cr, ink, ink, ink);
  if (size >= SMALLEST_LETTERS)
    sw_canvas_text (canvas, share, box->x + box->width / 2, box->y + box->height / 2, 0.5, 0.5, size, NULL);
}

/* A filled box with its share in it and its name beneath for each of the main colours. */
static void
draw_palette (const Listing *self)
{
  const SwCanvas *canvas = &self->canvas;
  const SwBox *room = &self->layout.palette;
  const double ink = sw_ground_ink (self->ground, FALSE);
  SwMainColour colours[SW_MOST_COLOURS];
  const int n = sw_main_colours (self->forecast, colours);
  g_auto (GStrv) names = sw_main_colour_names (self->forecast, colours, n);
  const double gap = 0.016 * room->width, width = MIN ((room->width - gap * (n - 1)) / MAX (n, 1), 0.24 * room->width), chip = 0.40 * room->height;
  const double size = letters_that_fit (canvas, names, 0.225 * room->height, width);

  for (int i = 0; i < n; i++)
    {
      const SwBox box = { room->x + i * (width + gap), room->y, width, chip };

      draw_chip (canvas, &colours[i], &box, 0.5 * chip);
      cairo_set_source_rgb (canvas->cr, ink, ink, ink);
      if (size >= SMALLEST_LETTERS)
        sw_canvas_words (canvas, names[i], box.x, room->y + 0.46 * room->height, size, width);
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

/* Hanks where the layout has them, as large as all of their rooms allow. */
static void
make_hanks (Listing *self, SwHank **hanks, cairo_surface_t *mark)
{
  self->per_cm = INFINITY;
  for (int i = 0; i < self->layout.n_hanks; i++)
    {
      const SwBox *room = &self->layout.hank_room[i];
      SwBox box;

      hanks[i] = sw_hank_new (self->forecast, i, self->layout.hanks[i].angle, mark);
      box = sw_hank_get_box (hanks[i]);
      self->per_cm = MIN (self->per_cm, MIN (0.96 * room->width / box.width, (self->layout.lying ? 0.94 : 1) * room->height / box.height));
    }
}

/* A batch lies close together about the middle of the stage: from one hank's middle to the next, cm. */
static double
pitch_of (const Listing *self, SwHank *const *hanks)
{
  const SwListingLayout *layout = &self->layout;
  const SwBox *room = &layout->hank_room[0];
  double widest = 0;

  for (int i = 0; i < layout->n_hanks; i++)
    {
      const SwBox box = sw_hank_get_box (hanks[i]);

      widest = MAX (widest, layout->lying ? box.height : box.width);
    }
  return MIN (CLOSE * widest, (layout->lying ? room->height : room->width) / self->per_cm);
}

static void
lay_hanks (const Listing *self, SwHank *const *hanks)
{
  const SwListingLayout *layout = &self->layout;
  const int n = layout->n_hanks;
  const double pitch = pitch_of (self, hanks);
  double x[SW_MOST_HANKS], y[SW_MOST_HANKS];

  for (int i = 0; i < n; i++)
    {
      const SwBox box = sw_hank_get_box (hanks[i]);
      const SwHankPlace *place = &layout->hanks[i];
      const double along = (i - (n - 1) / 2.0) * pitch;

      x[i] = place->x / self->per_cm - (box.x + box.width / 2);
      y[i] = place->y / self->per_cm - (box.y + box.height / 2);
      if (n > 1 && layout->lying)
        y[i] = (layout->stage.y + layout->stage.height / 2) / self->per_cm + along - (box.y + box.height / 2);
      else if (n > 1)
        x[i] = (layout->stage.x + layout->stage.width / 2) / self->per_cm + along - (box.x + box.width / 2);
    }
  sw_hanks_lay (hanks, n, x, y);
}

static void
draw_yarn (Listing *self, cairo_surface_t *mark)
{
  SwHank *hanks[SW_MOST_HANKS];
  const int n = self->layout.n_hanks;

  make_hanks (self, hanks, mark);
  if (n > 0)
    lay_hanks (self, hanks);
  if (self->layout.cloth.width > 0)
    draw_cloth (self, n > 0 ? self->per_cm : self->canvas.width / CLOTH_ALONE_CM);
  if (self->layout.skein.width > 0)
    draw_skein (self);
  if (n > 0)
    sw_hanks_draw (hanks, n, &self->canvas, 0, 0, self->per_cm);
  for (int i = 0; i < n; i++)
    sw_hank_free (hanks[i]);
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
  draw_yarn (&self, mark);
  if (self.layout.palette.width > 0)
    draw_palette (&self);
  if (self.layout.caption.width > 0)
    draw_caption (&self);
  if (self.layout.mark.width > 0)
    draw_mark (&self, mark);
  sw_canvas_end (&self.canvas);
}
