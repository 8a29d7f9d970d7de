/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-pan-handles.h"

#include <math.h>

#define ROOM 3.0 /* grips from the centre to a handle, at least */

static const struct
{
  int along, across;
} sides[SW_N_HANDLES] = {
  [SW_HANDLE_START] = { -1, 0 },
  [SW_HANDLE_END] = { 1, 0 },
  [SW_HANDLE_NEAR] = { 0, -1 },
  [SW_HANDLE_FAR] = { 0, 1 },
  [SW_HANDLE_START_NEAR] = { -1, -1 },
  [SW_HANDLE_START_FAR] = { -1, 1 },
  [SW_HANDLE_END_NEAR] = { 1, -1 },
  [SW_HANDLE_END_FAR] = { 1, 1 },
};

int
sw_handle_along (SwHandle handle)
{
  return sides[handle].along;
}

int
sw_handle_across (SwHandle handle)
{
  return sides[handle].across;
}

gboolean
sw_handle_applies (SwHandle handle, SwStepKind kind)
{
  const gboolean corner = sides[handle].along != 0 && sides[handle].across != 0;

  return handle > SW_HANDLE_BODY && (kind != SW_STEP_BAND || !corner);
}

/* A point of a band: a share of its width from its middle, at @y. */
static void
band_point (const SwPourPlace *place, double along, double y, double *px, double *py)
{
  *px = place->x + sw_pour_shift (place, y) + along;
  *py = y;
}

/* The point at @out beyond the edge, cm; the handle's own directions. */
static void
point_off_edge (const SwSketch *sketch, const SwPourPlace *place, SwHandle handle, double out_u, double out_v, double *x, double *y)
{
  const int su = sides[handle].along, sv = sides[handle].across;
  double near, far, dx, dy;

  if (place->kind == SW_STEP_BAND)
    {
      sw_pour_band_ends (sketch, place, &near, &far);
      band_point (place, su * (place->width / 2 + out_u), sv < 0 ? near - out_v : sv > 0 ? far + out_v
                                                                                         : (near + far) / 2,
                  x, y);
      return;
    }
  sw_pour_from_own (place, su * (place->width / 2 + out_u), sv * (place->length / 2 + out_v), &dx, &dy);
  *x = place->x + dx;
  *y = place->y + dy;
}

void
sw_handle_edge (const SwSketch *sketch, const SwPourPlace *place, SwHandle handle, double *x, double *y)
{
  point_off_edge (sketch, place, handle, 0, 0, x, y);
}

/* Beyond the far side, along the band's or the pour's own line. */
static void
turn_place (const SwSketch *sketch, const SwPourPlace *place, double off, double *x, double *y)
{
  double near, far, dx, dy, slant = place->angle * G_PI / 180;

  if (place->kind == SW_STEP_BAND)
    {
      sw_pour_band_ends (sketch, place, &near, &far);
      band_point (place, off * sin (slant), far, x, y);
      *y += off * cos (slant);
      return;
    }
  sw_pour_from_own (place, 0, place->length / 2 + off, &dx, &dy);
  *x = place->x + dx;
  *y = place->y + dy;
}

void
sw_handle_place (const SwSketch *sketch, const SwPourPlace *place, SwHandle handle, const SwGrips *grips, double *x, double *y)
{
  double near, far, length = place->length;

  if (place->kind == SW_STEP_BAND)
    {
      sw_pour_band_ends (sketch, place, &near, &far);
      length = far - near;
    }
  if (handle == SW_HANDLE_TURN)
    turn_place (sketch, place, grips->turn + MAX (0, ROOM * grips->grip - length / 2), x, y);
  else
    point_off_edge (sketch, place, handle, MAX (0, ROOM * grips->grip - place->width / 2), MAX (0, ROOM * grips->grip - length / 2), x, y);
}

SwHandle
sw_handle_at (const SwSketch *sketch, const SwPourPlace *place, const SwGrips *grips, double x, double y)
{
  SwHandle found = SW_HANDLE_NONE;
  double nearest = G_MAXDOUBLE;

  for (int i = SW_HANDLE_BODY + 1; i < SW_N_HANDLES; i++)
    {
      double at_x, at_y, far_off;

      if (!sw_handle_applies (i, place->kind))
        continue;
      sw_handle_place (sketch, place, i, grips, &at_x, &at_y);
      far_off = MAX (fabs (x - at_x), fabs (y - at_y));
      if (far_off <= grips->grip && far_off < nearest)
        {
          nearest = far_off;
          found = i;
        }
    }
  return found;
}

double
sw_handle_direction (const SwPourPlace *place, SwHandle handle)
{
  /* A corner's direction is the even diagonal: which way, not how steep. */
  double direction = atan2 (sides[handle].across, sides[handle].along) * 180 / G_PI;

  if (handle == SW_HANDLE_TURN)
    direction = 0;
  if (place->kind != SW_STEP_BAND)
    direction += place->angle;
  direction = fmod (fmod (direction, 180) + 180, 180);
  return direction < 180 ? direction : 0;
}
