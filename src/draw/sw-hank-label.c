/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-hank-label.h"

#include "draw/sw-canvas.h"

#include <math.h>
#include <pango/pangocairo.h>

/* How much light the papers throw back, and by how much that differs from place to place. */
static const float papers[] = { [SW_LABEL_WHITE] = 0.86f, [SW_LABEL_GREY] = 0.42f };
#define FIBRES 0.030f
#define LEVEL_LIGHT 0.90f /* on open, level paper: see sw_hank_body_light() */

/*
 * The strip's end is laid over its beginning, below the print: radians from the
 * front; lengths in radii. It stands off a little and throws a shade; its cut
 * edges are paler.
 */
#define SEAM 0.80
#define SEAM_ASLANT 0.05
#define SEAM_SHADE 0.30f
#define SEAM_REACH 0.05
#define CUT 0.013
#define CUT_LIGHT 1.05f
#define SMOOTHED 0.22f /* paper is smoother than the yarn whose light and shade it is given: mean over so many radii each way */

/* The hank is turned so far, degrees, before the print reads round it. */
#define ALONG_UP_TO 50

/* Print: shares of the band's width and of its front, and the letters' height in that of the front. */
#define PRINT_WIDE 0.84
#define PRINT_HIGH 0.74
#define LETTERS 0.22
#define MAKER_LETTERS 0.62 /* of the words' */
#define INK 0.13
#define MOST_PX 2400

static const char *
words_for (const SwSketch *sketch)
{
  const char *caption = sketch->listing.caption;

  return caption[0] != '\0' ? caption : sketch->title;
}

/* Along the hank, from one end of the band to the other: the middles are the mean of opposite points. */
static SwHankHold
find_hold (const SwBundle *band, double angle)
{
  const float *first = band->points, *last = band->points + 3 * (gsize) (band->n_rings - 1) * (gsize) (band->n_around + 1);
  const gsize opposite = 3 * (gsize) (band->n_around / 2);
  const float axis[2] = { (float) cos (angle), (float) sin (angle) };

  return (SwHankHold){
    { axis[0], axis[1] },
    0.5f * ((first[0] + first[opposite]) * axis[0] + (first[1] + first[opposite + 1]) * axis[1]),
    0.5f * ((last[0] + last[opposite]) * axis[0] + (last[1] + last[opposite + 1]) * axis[1])
  };
}

void
sw_hank_label_init (SwHankLabel *label, const SwHankShape *shape, guint64 seed, double angle, const SwSketch *sketch, cairo_surface_t *mark)
{
  *label = (SwHankLabel){ .width_cm = shape->label_cm, .paper = sketch->listing.label, .across = fabs (angle) > ALONG_UP_TO * G_PI / 180 };
  if (shape->label_cm <= 0)
    return;
  label->radius_cm = sw_hank_shape_label (shape, seed, &label->band);
  sw_bundle_turn (&label->band, angle);
  sw_bundle_find_boxes (&label->band);
  label->hold = find_hold (&label->band, angle);
  if (!sketch->listing.label_words)
    return;
  label->words = g_strdup (words_for (sketch));
  label->maker = g_strdup (sketch->listing.maker);
  label->mark = mark != NULL ? cairo_surface_reference (mark) : NULL;
}

void
sw_hank_label_clear (SwHankLabel *label)
{
  if (label->band.n_rings > 0)
    sw_bundle_clear (&label->band);
  g_free (label->words);
  g_free (label->maker);
  g_clear_pointer (&label->mark, cairo_surface_destroy);
}

static PangoLayout *
layout_for (cairo_t *cr, const char *words, double size, double width)
{
  PangoLayout *layout = pango_cairo_create_layout (cr);
  PangoFontDescription *font = pango_font_description_new ();

  pango_font_description_set_family_static (font, SW_SHOP_FONT);
  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_text (layout, words, -1);
  pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD);
  pango_layout_set_alignment (layout, PANGO_ALIGN_CENTER);
  pango_font_description_free (font);
  return layout;
}

/* Whether words fit at a size, none of them broken. @high: (out): their height */
static gboolean
fit (PangoLayout *layout, double width, double height, int *high)
{
  PangoRectangle ink;

  pango_layout_get_pixel_extents (layout, &ink, NULL);
  pango_layout_get_pixel_size (layout, NULL, high);
  return *high <= height && ink.width <= width;
}

/* More lines, and then smaller letters, until the words fit. @size: (inout). Returns: their height */
static double
fit_words (cairo_t *cr, const char *words, double width, double height, double *size)
{
  for (;; *size *= 0.92)
    {
      g_autoptr (PangoLayout) layout = layout_for (cr, words, *size, width);
      int high;

      if (fit (layout, width, height, &high) || *size <= 2)
        return high;
    }
}

static void
draw_words (cairo_t *cr, const char *words, double width, double size)
{
  g_autoptr (PangoLayout) layout = layout_for (cr, words, size, width);

  pango_cairo_show_layout (cr, layout);
}

static void
draw_mark (cairo_t *cr, cairo_surface_t *mark, double wide, double scale)
{
  cairo_save (cr);
  cairo_translate (cr, -wide / 2, 0);
  cairo_scale (cr, scale, scale);
  cairo_set_source_surface (cr, mark, 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_BEST);
  cairo_paint (cr);
  cairo_restore (cr);
}

/* The mark above, the words below, and the maker's name in smaller letters, all in the middle of a box about the origin. */
static void
draw_print (cairo_t *cr, const SwHankLabel *label, double width, double height)
{
  const double letters = LETTERS * height / PRINT_HIGH, gap = 0.3 * letters;
  const gboolean maker = label->maker[0] != '\0';
  double mark_wide = 0, mark_high = 0, words_high, maker_high = 0, scale = 1, size = letters, small;

  if (label->mark != NULL)
    {
      const double w = cairo_image_surface_get_width (label->mark), h = cairo_image_surface_get_height (label->mark);

      scale = MIN (0.8 * width / w, 0.5 * height / h);
      mark_wide = w * scale;
      mark_high = h * scale + 0.4 * letters;
    }
  words_high = fit_words (cr, label->words, width, (maker ? 0.64 : 1) * (height - mark_high), &size);
  small = MAKER_LETTERS * size;
  if (maker)
    maker_high = fit_words (cr, label->maker, width, 0.36 * (height - mark_high) - gap, &small) + gap;
  cairo_translate (cr, 0, -(mark_high + words_high + maker_high) / 2);
  if (label->mark != NULL)
    draw_mark (cr, label->mark, mark_wide, scale);
  cairo_translate (cr, -width / 2, mark_high);
  cairo_set_source_rgb (cr, INK, INK, INK);
  draw_words (cr, label->words, width, size);
  cairo_translate (cr, 0, words_high + gap);
  if (maker)
    draw_words (cr, label->maker, width, small);
}

cairo_surface_t *
sw_hank_label_print (const SwHankLabel *label, double px_per_cm)
{
  const double along = label->width_cm * px_per_cm, round = G_PI * label->radius_cm * px_per_cm;
  const double front = 2 * label->radius_cm * px_per_cm; /* as wide as it is seen */
  cairo_surface_t *surface;
  cairo_t *cr;

  if (label->words == NULL || along > MOST_PX || round > MOST_PX)
    return NULL;
  surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, MAX ((int) ceil (along), 1), MAX ((int) ceil (round), 1));
  cr = cairo_create (surface);
  cairo_translate (cr, along / 2, round / 2);
  if (label->across)
    cairo_rotate (cr, G_PI_2);
  draw_print (cr, label, label->across ? PRINT_WIDE * front : PRINT_WIDE * along, label->across ? PRINT_HIGH * along : PRINT_HIGH * front);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

/* The print's pixel at a place of the band; 0 beside it. */
static guint32
pixel_at (cairo_surface_t *print, double along_px, double down_px)
{
  const int i = (int) floor (along_px), j = (int) floor (down_px + cairo_image_surface_get_height (print) / 2.0);
  const guint8 *line;

  if (i < 0 || j < 0 || i >= cairo_image_surface_get_width (print) || j >= cairo_image_surface_get_height (print))
    return 0;
  line = cairo_image_surface_get_data (print) + (gsize) j * (gsize) cairo_image_surface_get_stride (print);
  return ((const guint32 *) (gconstpointer) line)[i];
}

/* What falls on the paper: the mean of what falls near by. */
static float
paper_light (const SwHankLabel *label, const SwHankLight *light, const float *normal, float x, float y)
{
  const float off = SMOOTHED * (float) label->radius_cm;
  const float *axis = label->hold.axis;
  const float at = x * axis[0] + y * axis[1], inside = CLAMP (at, label->hold.from + 1.5f * off, label->hold.to - 1.5f * off) - at;
  float sum = 0;

  /* Not what falls beside the strip. */
  x += inside * axis[0];
  y += inside * axis[1];
  for (int j = -1; j <= 1; j++)
    for (int i = -1; i <= 1; i++)
      sum += sw_hank_body_light (light, normal, x + off * (float) i, y + off * (float) j);
  return sum / (9 * LEVEL_LIGHT);
}

/* Light and shade of the strip's cut edges; @down: cm round from the front, downwards; @soft: cm over which one goes over into the other. */
static float
edge_light (const SwHankLabel *label, double along, double down, double soft)
{
  const double r = label->radius_cm, seam = (SEAM + SEAM_ASLANT * (along / label->width_cm - 0.5)) * r;
  const double over = seam - down, in = MIN (along, label->width_cm - along);
  const double upper = CLAMP (over / soft + 0.5, 0, 1);
  const float shade = 1 - SEAM_SHADE * (float) exp (MIN (over, 0) / (SEAM_REACH * r));

  return shade + (float) upper * ((MIN (over, in) < CUT * r ? CUT_LIGHT : 1) - shade);
}

void
sw_hank_label_light (const SwHankLabel *label, const SwHankLight *light, const SwLinear *linear, cairo_surface_t *print, double px_per_cm, const SwSkinSample *sample, float x, float y, float *rgb)
{
  const SwBundle *band = &label->band;
  const int i = sample->patch / band->n_around;
  const double along = (double) (band->along[i] + (band->along[i + 1] - band->along[i]) * sample->v);
  const double turn = ((double) (sample->patch % band->n_around) + (double) sample->u) / band->n_around; /* up from the front */
  const double down = -2 * G_PI * label->radius_cm * (turn > 0.5 ? turn - 1 : turn);
  const guint32 pixel = print != NULL ? pixel_at (print, along * px_per_cm, down * px_per_cm) : 0;
  const float ink = (float) (pixel >> 24) / 255;
  const float paper = papers[label->paper] * (1 + FIBRES * sw_grain_cloud (light->grain, (float) (120 + 22 * down), 255, (float) along * 22));
  float normal[3], colour[3] = { 0 }, here;

  sw_skin_normal (band, sample, normal, NULL);
  here = paper_light (label, light, normal, x, y) * edge_light (label, along, down, 3 / px_per_cm);
  if (pixel >> 24 != 0)
    sw_linear_decode (linear, sw_linear_unpremultiply (pixel), colour);
  for (int k = 0; k < 3; k++)
    rgb[k] = (paper * (1 - ink) + colour[k] * ink) * here;
}
