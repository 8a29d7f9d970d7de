/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-pan-snap.h"

#include <math.h>

/* The ruler catches within this share of its marks, so that places between them stay within reach. */
#define RULER_SHARE 0.2

typedef struct
{
  SwSnapKind kind;
  double at;
} Line;

struct _SwSnap
{
  GArray *lines[2]; /* of Line, by axis */
  double ruler_cm;
};

static void
add (SwSnap *snap, SwAxis axis, SwSnapKind kind, double at)
{
  const Line line = { kind, at };

  g_array_append_val (snap->lines[axis], line);
}

/* The skein itself comes first: on equal terms it is caught rather than a pour. */
static void
add_skein (SwSnap *snap, const SwSketch *sketch)
{
  const double extent[] = { sw_sketch_lay_length (sketch), sw_sketch_lay_width (sketch) };
  const gint64 runs = sketch->lay.folding == SW_FOLDING_SIDE_BY_SIDE ? sketch->lay.runs : 1;
  const gint64 gaps = sketch->lay.skeins * runs;

  for (int axis = 0; axis < 2; axis++)
    {
      add (snap, axis, SW_SNAP_EDGE, 0);
      add (snap, axis, SW_SNAP_EDGE, extent[axis]);
      add (snap, axis, SW_SNAP_MIDDLE, extent[axis] / 2);
    }
  for (gint64 i = 1; i < gaps; i++)
    add (snap, SW_AXIS_ACROSS, SW_SNAP_GAP, extent[SW_AXIS_ACROSS] * (double) i / (double) gaps);
}

static gboolean
is_in (const guint *ids, gsize n, guint id)
{
  for (gsize i = 0; i < n; i++)
    if (ids[i] == id)
      return TRUE;
  return FALSE;
}

static void
add_pour (SwSnap *snap, const SwSketch *sketch, const SwStep *step)
{
  const SwPourPlace place = sw_pour_place (step);
  const SwExtent extent = sw_pour_extent (sketch, &place);

  add (snap, SW_AXIS_ALONG, SW_SNAP_POUR, extent.x0);
  add (snap, SW_AXIS_ALONG, SW_SNAP_POUR, extent.x1);
  add (snap, SW_AXIS_ALONG, SW_SNAP_CENTRE, place.x);
  if (step->kind == SW_STEP_BAND && step->length_cm <= 0)
    return; /* right across: the skein's own edges */
  add (snap, SW_AXIS_ACROSS, SW_SNAP_POUR, extent.y0);
  add (snap, SW_AXIS_ACROSS, SW_SNAP_POUR, extent.y1);
  add (snap, SW_AXIS_ACROSS, SW_SNAP_CENTRE, place.y);
}

SwSnap *
sw_snap_new (const SwSketch *sketch, gboolean second_face, const guint *skip, gsize n_skip, double ruler_cm)
{
  SwSnap *snap;
  gboolean second = FALSE;

  g_return_val_if_fail (sketch != NULL, NULL);
  g_return_val_if_fail (ruler_cm > 0, NULL);

  snap = g_new0 (SwSnap, 1);
  snap->ruler_cm = ruler_cm;
  for (int axis = 0; axis < 2; axis++)
    snap->lines[axis] = g_array_new (FALSE, FALSE, sizeof (Line));
  add_skein (snap, sketch);
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (step->kind == SW_STEP_FLIP)
        second = !second;
      else if (sw_step_is_pour (step) && second == !!second_face && !is_in (skip, n_skip, step->id))
        add_pour (snap, sketch, step);
    }
  return snap;
}

void
sw_snap_free (SwSnap *snap)
{
  if (snap == NULL)
    return;
  g_array_unref (snap->lines[SW_AXIS_ALONG]);
  g_array_unref (snap->lines[SW_AXIS_ACROSS]);
  g_free (snap);
}

SwSnapHit
sw_snap_find (const SwSnap *snap, SwAxis axis, const double *points, gsize n, double reach)
{
  SwSnapHit hit = { SW_SNAP_NONE, 0, 0 };
  const GArray *lines = snap->lines[axis];
  double nearest = reach, mark;

  for (guint i = 0; i < lines->len; i++)
    for (gsize k = 0; k < n; k++)
      {
        const Line *line = &g_array_index (lines, Line, i);
        const double off = fabs (line->at - points[k]);

        if (off < nearest || (off <= nearest && hit.kind == SW_SNAP_NONE))
          {
            nearest = off;
            hit = (SwSnapHit){ line->kind, line->at - points[k], line->at };
          }
      }
  if (hit.kind != SW_SNAP_NONE || n == 0)
    return hit;

  mark = snap->ruler_cm * round (points[0] / snap->ruler_cm);
  if (fabs (mark - points[0]) <= MIN (reach, RULER_SHARE * snap->ruler_cm))
    hit = (SwSnapHit){ SW_SNAP_RULER, mark - points[0], mark };
  return hit;
}
