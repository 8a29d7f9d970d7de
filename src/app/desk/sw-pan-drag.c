/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-pan-drag.h"

#include <math.h>

#define STEADY_DEG 15.0
#define DETENT_DEG 45.0
#define DETENT_REACH_DEG 2.0
#define LEAST_CM 0.1

/* A stroke goes across the skein when it is this much steeper than even. */
#define ACROSS 1.5

static void
move (SwPourPlace *place, double dx, double dy, SwDragFlags flags)
{
  if (flags & SW_DRAG_STEADY)
    *(fabs (dx) >= fabs (dy) ? &dy : &dx) = 0;
  sw_pour_place_move (place, dx, dy);
}

static double
catch_angle (double angle, SwDragFlags flags)
{
  const double stop = DETENT_DEG * round (angle / DETENT_DEG);

  if (flags & SW_DRAG_STEADY)
    return STEADY_DEG * round (angle / STEADY_DEG);
  if ((flags & SW_DRAG_DETENT) && fabs (angle - stop) < DETENT_REACH_DEG)
    return stop;
  return angle;
}

/* The angle at which the far end of the pour's own line points at @dx, @dy from the centre. */
static double
pointing_angle (SwStepKind kind, double dx, double dy)
{
  const double from_across = atan2 (dx, dy) * 180 / G_PI;

  return kind == SW_STEP_BAND ? from_across : -from_across;
}

static void
turn (const SwSketch *sketch, SwPourPlace *place, const SwGrips *grips, double dx, double dy, SwDragFlags flags)
{
  double x, y, angle;

  sw_handle_place (sketch, place, SW_HANDLE_TURN, grips, &x, &y);
  angle = pointing_angle (place->kind, x + dx - place->x, y + dy - place->y);
  /* Below its pivot a band's line leans the other way; the clamp keeps it from flipping over. */
  if (place->kind == SW_STEP_BAND)
    angle = CLAMP (angle, -SW_MAX_SLANT_DEG, SW_MAX_SLANT_DEG);
  place->angle = catch_angle (angle, flags);
  if (place->kind == SW_STEP_BAND && (flags & SW_DRAG_STEADY))
    place->angle = CLAMP (place->angle, -75, 75);
}

/* A band's ends across the skein. Its line stays where it is though its pivot moves. */
static void
stretch_band_across (const SwSketch *sketch, SwPourPlace *place, int side, double dy, gboolean centred)
{
  const double across = sw_sketch_lay_width (sketch);
  double near, far, y;

  sw_pour_band_ends (sketch, place, &near, &far);
  if (side < 0 || centred)
    near = CLAMP (near + (side < 0 ? dy : -dy), 0, far - LEAST_CM);
  if (side > 0 || centred)
    far = CLAMP (far + (side > 0 ? dy : -dy), near + LEAST_CM, across);
  y = (near + far) / 2;
  place->x += sw_pour_shift (place, y);
  place->y = y;
  place->length = near <= 0 && far >= across ? 0 : far - near;
}

static double
stretched (double size, int side, double by, gboolean centred)
{
  return MAX (size + side * by * (centred ? 2 : 1), LEAST_CM);
}

static void
stretch (const SwSketch *sketch, SwPourPlace *place, SwHandle handle, double dx, double dy, SwDragFlags flags)
{
  const int su = sw_handle_along (handle), sv = sw_handle_across (handle);
  const gboolean corner = su != 0 && sv != 0;
  const gboolean centred = (flags & SW_DRAG_CENTRED) || (!corner && (flags & SW_DRAG_STEADY));
  const double old_width = place->width, old_length = place->length;
  double u, v;

  if (place->kind == SW_STEP_BAND && sv != 0)
    {
      stretch_band_across (sketch, place, sv, dy, centred);
      return;
    }
  sw_pour_to_own (place, dx, dy, &u, &v);
  place->width = stretched (place->width, su, u, centred);
  if (sv != 0)
    place->length = stretched (place->length, sv, v, centred);
  if (corner && (flags & SW_DRAG_STEADY))
    {
      const double by = MAX (place->width / old_width, place->length / old_length);

      place->width = old_width * by;
      place->length = old_length * by;
    }
  sw_pour_place_tidy (place); /* the size first, so that the centre goes with the size that it will have */
  if (!centred)
    {
      sw_pour_from_own (place, su * (place->width - old_width) / 2, sv * (place->length - old_length) / 2, &dx, &dy);
      place->x += dx;
      place->y += dy;
    }
}

SwPourPlace
sw_pan_drag (const SwSketch *sketch, const SwPourPlace *from, SwHandle handle, const SwGrips *grips, double dx, double dy, SwDragFlags flags)
{
  SwPourPlace place = *from;

  if (handle == SW_HANDLE_BODY)
    move (&place, dx, dy, flags);
  else if (handle == SW_HANDLE_TURN)
    turn (sketch, &place, grips, dx, dy, flags);
  else if (handle != SW_HANDLE_NONE)
    stretch (sketch, &place, handle, dx, dy, flags);
  sw_pour_place_tidy (&place);
  return place;
}

static double
usual_width (const SwSketch *sketch, SwStepKind kind)
{
  static const double shares[] = { [SW_STEP_BAND] = 0.12, [SW_STEP_SPLOTCH] = 0.12, [SW_STEP_SPECKLE] = 0.25 };

  return CLAMP (round (sw_sketch_lay_length (sketch) * shares[kind]), 2, 20);
}

static SwPourPlace
draw_band (const SwSketch *sketch, double x0, double y0, double x1, double y1, SwDragFlags flags)
{
  const double middle = sw_sketch_lay_width (sketch) / 2, dx = x1 - x0, dy = y1 - y0;
  SwPourPlace place = { SW_STEP_BAND, (x0 + x1) / 2, middle, fabs (dx), 0, 0 };

  if (fabs (dy) > ACROSS * fabs (dx))
    {
      /* A stroke across is the band's own line: of a usual width, leaning as it leans. */
      place.width = usual_width (sketch, SW_STEP_BAND);
      place.angle = catch_angle (atan2 (dx, dy) * 180 / G_PI - (dy < 0 ? copysign (180, dx) : 0), flags);
      place.x += (middle - (y0 + y1) / 2) * tan (place.angle * G_PI / 180);
    }
  else if (flags & SW_DRAG_CENTRED)
    {
      place.x = x0;
      place.width = 2 * fabs (dx);
    }
  return place;
}

SwPourPlace
sw_pan_draw (const SwSketch *sketch, SwStepKind kind, double x0, double y0, double x1, double y1, SwDragFlags flags)
{
  double dx = x1 - x0, dy = y1 - y0;
  SwPourPlace place;

  if (flags & SW_DRAG_STEADY)
    {
      const double side = MAX (fabs (dx), fabs (dy));

      if (kind != SW_STEP_BAND)
        {
          dx = copysign (side, dx);
          dy = copysign (side, dy);
        }
    }
  if (kind == SW_STEP_BAND)
    place = draw_band (sketch, x0, y0, x1, y1, flags);
  else if (flags & SW_DRAG_CENTRED)
    place = (SwPourPlace){ kind, x0, y0, 2 * fabs (dx), 2 * fabs (dy), 0 };
  else
    place = (SwPourPlace){ kind, x0 + dx / 2, y0 + dy / 2, fabs (dx), fabs (dy), 0 };
  sw_pour_place_tidy (&place);
  return place;
}

SwPourPlace
sw_pan_click (const SwSketch *sketch, SwStepKind kind, double x, double y)
{
  const double across = sw_sketch_lay_width (sketch);
  SwPourPlace place = { kind, round (x * 10) / 10, round (y * 10) / 10, usual_width (sketch, kind), 0, 0 };

  if (kind == SW_STEP_BAND)
    place.y = across / 2;
  else
    place.length = MAX (round (across * 0.6), 1);
  sw_pour_place_tidy (&place);
  return place;
}
