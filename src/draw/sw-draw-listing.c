/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-cloth-piece.h"
#include "draw/sw-ground.h"
#include "draw/sw-hank.h"
#include "draw/sw-laid.h"
#include "draw/sw-listing-layout.h"

#include "forecast/sw-colour-words.h"
#include "forecast/sw-listing-cloth.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Cloth beside a laid skein, which is drawn smaller than it: so many cm go across the picture. */
#define CLOTH_ALONE_CM 30.0
#define APART 1.50 /* from one hank of a batch to the next, at most, in widths of one */
#define SMALLEST_LETTERS 7.0
#define TURNED_CM 1.0 /* of cloth whose edge is not to be seen, more than its room */

/* Light of yarn at its clean places, between the shadows in its plies, over the mean of all of it: measured in drawn cloth. No chip is whiter than the lightest paper. */
#define CLEAN 1.22
#define WHITEST 0.90

typedef struct
{
  SwCanvas canvas;
  const SwForecast *forecast;
  const SwListingSettings *listing;
  SwGround ground;
  SwMainColour colours[SW_MOST_COLOURS];
  int n_colours;
  char **names;
  char *small; /* line of small letters */
  SwListingFoot foot;
  SwListingLayout layout;
  double per_cm; /* px, of hanks and cloth */
} Listing;

/* Cloth at true gauge; see sw_listing_layout() for where its edges are. */
static void
draw_cloth (const Listing *self, double per_cm)
{
  SwForecast wide;

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

  if (sw_listing_cloth_is_wide (self->forecast))
    {
      /* All of the skein between its lower edge and the picture's upper. */
      const double high = (room->y + room->height) / cos (tilt) + MAX (sin (tilt), 0) * room->width; /* px, of the longer edge */

      sw_listing_cloth_widen (self->forecast, MAX (high, 1) / per_cm + TURNED_CM, &wide);
      sw_cloth_piece_draw (&self->canvas, &wide, &piece, per_cm);
      return;
    }
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

/* The colour as the eye takes it from the yarn, which it sees at its clean places. */
static SwSrgb
chip_colour (SwLab lab)
{
  const SwXyz xyz = sw_xyz_from_lab (lab);
  const double gain = MIN (CLEAN, WHITEST * 100 / MAX (xyz.y, 1));

  return sw_srgb_from_xyz ((SwXyz){ xyz.x * MAX (gain, 1), xyz.y * MAX (gain, 1), xyz.z * MAX (gain, 1) });
}

/* Black or white, whichever stands out more: WCAG 2.1 puts the middle at a luminance of 0.18, where both do by 4.5 : 1. */
static double
ink_on (SwSrgb srgb)
{
  return sw_xyz_from_srgb (srgb).y > 17.9 ? 0 : 1;
}

static void
draw_chip (const SwCanvas *canvas, const SwMainColour *colour, int percent, const SwBox *box, double size)
{
  /* Translators: a share of the yarn */
  g_autofree char *share = g_strdup_printf (_ ("%d %%"), percent);
  const SwSrgb srgb = chip_colour (colour->lab);
  const double ink = ink_on (srgb);

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
  const double ink = sw_ground_ink (self->ground, FALSE), chip = self->layout.chip;
  const int n = self->n_colours;
  int percents[SW_MOST_COLOURS];
  double letters, width, size, gap;

  sw_listing_palette_room (n, canvas->width, canvas->height, &letters, &width);
  gap = n > 1 ? MIN ((room->width - n * width) / (n - 1), 0.016 * room->width) : 0;
  size = letters_that_fit (canvas, self->names, letters, width);
  sw_main_colour_percents (self->colours, n, percents);
  for (int i = 0; i < n; i++)
    {
      const SwBox box = { room->x + i * (width + gap), room->y, width, chip };

      draw_chip (canvas, &self->colours[i], percents[i], &box, 0.52 * chip);
      cairo_set_source_rgb (canvas->cr, ink, ink, ink);
      if (size >= SMALLEST_LETTERS)
        sw_canvas_words (canvas, self->names[i], box.x, room->y + self->layout.names, size, width);
    }
}

/* Lines of @words at @size. */
static int
lines_of (const SwCanvas *canvas, const char *words, double size, double width)
{
  double wide, high, line_wide, line_high;

  sw_canvas_words_size (canvas, words, size, width, &wide, &high);
  sw_canvas_text_size (canvas, "x", size, &line_wide, &line_high);
  return (int) lround (high / MAX (line_high, 1));
}

/* In two lines before smaller letters. */
static void
draw_caption (const Listing *self)
{
  const SwCanvas *canvas = &self->canvas;
  const SwBox *room = &self->layout.caption;
  const double ink = sw_ground_ink (self->ground, FALSE);
  const char *words = self->listing->caption;
  double size, width, wide, high;

  sw_listing_caption_room (self->listing, self->foot.mark_aspect, canvas->width, canvas->height, &size, &width);
  for (;; size *= 0.95)
    {
      sw_canvas_words_size (canvas, words, size, width, &wide, &high);
      if (size < 2 || (wide <= width && high <= 1.12 * room->height))
        break;
    }
  cairo_set_source_rgb (canvas->cr, ink, ink, ink);
  sw_canvas_words (canvas, words, room->x, room->y + room->height - high, size, width);
}

static void
draw_small (const Listing *self)
{
  const SwCanvas *canvas = &self->canvas;
  const SwBox *room = &self->layout.small;
  const double ink = sw_ground_ink (self->ground, FALSE);
  double size = 0.8 * room->height, width, height;

  sw_canvas_text_size (canvas, self->small, size, &width, &height);
  size *= MIN (1, room->width / MAX (width, 1));
  cairo_set_source_rgb (canvas->cr, ink, ink, ink);
  sw_canvas_text (canvas, self->small, room->x, room->y + room->height, 0, 1, size, NULL);
}

/* Who dyed it, where no label says so, and that it is drawn. */
static char *
small_line (const SwListingSettings *listing)
{
  const char *maker = sw_listing_on_label (listing) ? "" : listing->maker;
  const char *drawn = listing->drawn_line ? _ ("Drawn forecast, not a photograph") : "";

  /* Translators: between two parts of a line of small letters */
  return g_strconcat (maker, maker[0] != '\0' && drawn[0] != '\0' ? _ (" · ") : "", drawn, NULL);
}

static int
name_lines (const Listing *self)
{
  double letters, room;
  int most = 1;

  sw_listing_palette_room (self->n_colours, self->canvas.width, self->canvas.height, &letters, &room);
  for (int i = 0; i < self->n_colours; i++)
    most = MAX (most, lines_of (&self->canvas, self->names[i], letters, room));
  return MIN (most, 2);
}

/* What stands beneath the yarn. */
static void
measure_foot (Listing *self, cairo_surface_t *mark)
{
  const SwCanvas *canvas = &self->canvas;
  double letters, room;

  if (mark != NULL)
    self->foot.mark_aspect = (double) cairo_image_surface_get_width (mark) / MAX (cairo_image_surface_get_height (mark), 1);
  self->n_colours = sw_main_colours (self->forecast, self->colours);
  self->names = sw_main_colour_names (self->forecast, self->colours, self->n_colours);
  self->small = small_line (self->listing);
  self->foot.small = self->small[0] != '\0';
  self->foot.name_lines = name_lines (self);
  sw_listing_caption_room (self->listing, self->foot.mark_aspect, canvas->width, canvas->height, &letters, &room);
  if (self->listing->caption[0] != '\0')
    self->foot.caption_lines = CLAMP (lines_of (canvas, self->listing->caption, letters, room), 1, 2);
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

/* A batch lies together about the middle of the stage: from one hank's middle to the next, cm. */
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
  return MIN (APART * widest, (layout->lying ? room->height : room->width) / self->per_cm);
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
  Listing self = { .forecast = forecast, .listing = &forecast->sketch->listing, .ground = sw_ground_for (forecast->sketch, look) };

  sw_canvas_begin (&self.canvas, cr, width, height, look);
  self.canvas.font = SW_SHOP_FONT;
  measure_foot (&self, mark);
  sw_listing_layout (self.listing, &self.foot, sw_hank_slim (forecast->sketch), width, height, &self.layout);
  sw_ground_draw (&self.canvas, self.ground);
  draw_yarn (&self, mark);
  if (self.layout.palette.width > 0)
    draw_palette (&self);
  if (self.layout.caption.width > 0)
    draw_caption (&self);
  if (self.layout.small.width > 0)
    draw_small (&self);
  if (self.layout.mark.width > 0)
    draw_mark (&self, mark);
  sw_canvas_end (&self.canvas);
  g_strfreev (self.names);
  g_free (self.small);
}
