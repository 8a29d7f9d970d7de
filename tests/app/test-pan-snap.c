/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-pan-align.h"
#include "app/desk/sw-pan-snap.h"

#include <math.h>

/* What a dragged edge catches on, and how several pours line up. */

#define EPSILON 1e-9

/* 75 x 12 cm: two skeins of 6 cm. Pours: a band 20..30; a splotch 40..50 x 2..6; after a flip, a band 60..64. */
static SwSketch *
three_pours (void)
{
  static const SwPourPlace places[] = {
    { SW_STEP_BAND, 25, 6, 10, 0, 20 },
    { SW_STEP_SPLOTCH, 45, 4, 10, 4, 0 },
    { SW_STEP_BAND, 62, 6, 4, 0, 0 },
  };
  SwSketch *sketch = sw_sketch_new ();

  sketch->reel.circumference_cm = 150;
  sketch->lay.runs = 2;
  sketch->lay.folding = SW_FOLDING_STACKED;
  sketch->lay.skeins = 2;
  sketch->lay.width_cm = 6;
  for (guint i = 0; i < 3; i++)
    {
      SwStep *step = sw_step_new (10 + i, places[i].kind);

      if (i == 2)
        g_ptr_array_add (sketch->steps, sw_step_new (20, SW_STEP_FLIP));
      sw_pour_place_put (&places[i], step);
      g_ptr_array_add (sketch->steps, step);
    }
  return sketch;
}

static void
test_lines (void)
{
  static const struct
  {
    SwAxis axis;
    gboolean second_face;
    double point;
    SwSnapKind kind;
    double at;
  } rows[] = {
    { SW_AXIS_ALONG, FALSE, 0.3, SW_SNAP_EDGE, 0 },
    { SW_AXIS_ALONG, FALSE, 74.7, SW_SNAP_EDGE, 75 },
    { SW_AXIS_ALONG, FALSE, 37.3, SW_SNAP_MIDDLE, 37.5 },
    { SW_AXIS_ALONG, FALSE, 20.2, SW_SNAP_POUR, 20 },
    { SW_AXIS_ALONG, FALSE, 30.2, SW_SNAP_POUR, 30 },
    { SW_AXIS_ALONG, FALSE, 45.3, SW_SNAP_CENTRE, 45 },
    { SW_AXIS_ALONG, FALSE, 33.1, SW_SNAP_RULER, 33 },
    { SW_AXIS_ALONG, FALSE, 33.3, SW_SNAP_NONE, 0 },
    { SW_AXIS_ALONG, FALSE, 64.1, SW_SNAP_RULER, 64 },
    { SW_AXIS_ALONG, TRUE, 64.1, SW_SNAP_POUR, 64 },
    { SW_AXIS_ALONG, TRUE, 30.1, SW_SNAP_RULER, 30 },
    { SW_AXIS_ACROSS, FALSE, 11.8, SW_SNAP_EDGE, 12 },
    { SW_AXIS_ACROSS, FALSE, 2.3, SW_SNAP_POUR, 2 },
    { SW_AXIS_ACROSS, FALSE, 4.2, SW_SNAP_CENTRE, 4 },
    { SW_AXIS_ACROSS, FALSE, 5.9, SW_SNAP_MIDDLE, 6 }, /* also the gap between the skeins, and the splotch's edge */
  };
  g_autoptr (SwSketch) sketch = three_pours ();

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (SwSnap) snap = sw_snap_new (sketch, rows[i].second_face, NULL, 0, 1);
      const SwSnapHit hit = sw_snap_find (snap, rows[i].axis, &rows[i].point, 1, 0.4);

      g_assert_cmpint (hit.kind, ==, rows[i].kind);
      if (hit.kind == SW_SNAP_NONE)
        g_assert_cmpfloat_with_epsilon (hit.by, 0, EPSILON);
      else
        {
          g_assert_cmpfloat_with_epsilon (hit.at, rows[i].at, EPSILON);
          g_assert_cmpfloat_with_epsilon (rows[i].point + hit.by, hit.at, EPSILON);
        }
    }
}

static void
test_gaps (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  g_autoptr (SwSnap) snap = NULL;
  const double third = 2.1;
  SwSnapHit hit;

  sketch->lay.runs = 4;
  sketch->lay.folding = SW_FOLDING_SIDE_BY_SIDE;
  sketch->lay.skeins = 1;
  sketch->lay.width_cm = 8;
  snap = sw_snap_new (sketch, FALSE, NULL, 0, 1);
  hit = sw_snap_find (snap, SW_AXIS_ACROSS, &third, 1, 0.5);
  g_assert_cmpint (hit.kind, ==, SW_SNAP_GAP);
  g_assert_cmpfloat_with_epsilon (hit.at, 2, EPSILON);
}

/* What is dragged is no target of its own; any of its points may catch. */
static void
test_skip_and_points (void)
{
  g_autoptr (SwSketch) sketch = three_pours ();
  const guint skip[] = { 10 };
  g_autoptr (SwSnap) snap = sw_snap_new (sketch, FALSE, skip, 1, 1);
  const double at_itself = 20.05, edges[] = { 33.5, 27.4, 39.7 };
  SwSnapHit hit = sw_snap_find (snap, SW_AXIS_ALONG, &at_itself, 1, 0.4);

  g_assert_cmpint (hit.kind, ==, SW_SNAP_RULER);
  hit = sw_snap_find (snap, SW_AXIS_ALONG, edges, 3, 0.4);
  g_assert_cmpint (hit.kind, ==, SW_SNAP_POUR);
  g_assert_cmpfloat_with_epsilon (hit.by, 0.3, EPSILON);
}

static void
test_never_beyond_reach (void)
{
  g_autoptr (SwSketch) sketch = three_pours ();

  for (int trial = 0; trial < 2000; trial++)
    {
      g_autoptr (SwSnap) snap = sw_snap_new (sketch, trial % 2, NULL, 0, trial % 3 == 0 ? 1.27 : 1);
      const double reach = g_test_rand_double_range (0, 1);
      double points[3];
      SwSnapHit hit;

      for (gsize i = 0; i < 3; i++)
        points[i] = g_test_rand_double_range (-5, 80);
      hit = sw_snap_find (snap, trial % 5 == 0 ? SW_AXIS_ACROSS : SW_AXIS_ALONG, points, 3, reach);
      g_assert_cmpfloat (fabs (hit.by), <=, reach);
      if (hit.kind != SW_SNAP_NONE)
        g_assert_cmpfloat (MIN (MIN (fabs (points[0] + hit.by - hit.at), fabs (points[1] + hit.by - hit.at)), fabs (points[2] + hit.by - hit.at)), <, EPSILON);
    }
}

/* Align */

#define N 4

static void
random_places (SwPourPlace places[N])
{
  static const SwStepKind kinds[] = { SW_STEP_BAND, SW_STEP_SPLOTCH, SW_STEP_SPECKLE };

  for (gsize i = 0; i < N; i++)
    {
      places[i] = (SwPourPlace){ kinds[g_test_rand_int_range (0, 3)], g_test_rand_double_range (0, 75), g_test_rand_double_range (3, 9), g_test_rand_double_range (1, 9), g_test_rand_double_range (1, 5), 0 };
      if (places[i].kind != SW_STEP_BAND)
        places[i].angle = g_test_rand_double_range (-180, 180);
      sw_pour_place_tidy (&places[i]);
    }
}

/* The side that is aligned: by hand, apart from the table under test. */
static double
side (const SwSketch *sketch, const SwPourPlace *place, SwAlign align)
{
  const SwExtent extent = sw_pour_extent (sketch, place);

  switch (align)
    {
    case SW_ALIGN_LEFT:
      return extent.x0;
    case SW_ALIGN_CENTRE:
      return (extent.x0 + extent.x1) / 2;
    case SW_ALIGN_RIGHT:
      return extent.x1;
    case SW_ALIGN_TOP:
      return extent.y1;
    case SW_ALIGN_MIDDLE:
      return (extent.y0 + extent.y1) / 2;
    case SW_ALIGN_BOTTOM:
      return extent.y0;
    case SW_ALIGN_SPREAD_ALONG:
    case SW_ALIGN_SPREAD_ACROSS:
    case SW_N_ALIGNS:
    default:
      g_assert_not_reached ();
    }
}

static void
test_align (void)
{
  g_autoptr (SwSketch) sketch = three_pours ();

  for (int trial = 0; trial < 240; trial++)
    {
      const SwAlign align = (SwAlign) (trial % (SW_ALIGN_BOTTOM + 1));
      SwPourPlace places[N], before[N];

      random_places (places);
      memcpy (before, places, sizeof places);
      sw_pan_align (sketch, align, places, N);
      for (gsize i = 0; i < N; i++)
        {
          /* Places are kept to 0.0001 cm. */
          g_assert_cmpfloat_with_epsilon (side (sketch, &places[i], align), side (sketch, &places[0], align), 3e-4);
          g_assert_cmpfloat_with_epsilon (places[i].width, before[i].width, EPSILON);
          g_assert_cmpfloat_with_epsilon (places[i].length, before[i].length, EPSILON);
          if (align <= SW_ALIGN_RIGHT)
            g_assert_cmpfloat_with_epsilon (places[i].y, before[i].y, EPSILON);
          else
            g_assert_cmpfloat_with_epsilon (places[i].x, before[i].x, EPSILON);
        }

      /* Once aligned, there is nothing left to align. */
      memcpy (before, places, sizeof places);
      sw_pan_align (sketch, align, places, N);
      for (gsize i = 0; i < N; i++)
        g_assert_cmpfloat_with_epsilon (places[i].x + places[i].y, before[i].x + before[i].y, 5e-4);
    }
}

static void
test_align_one (void)
{
  g_autoptr (SwSketch) sketch = three_pours ();
  SwPourPlace place = { SW_STEP_SPLOTCH, 20, 3, 10, 4, 0 };

  sw_pan_align (sketch, SW_ALIGN_RIGHT, &place, 1);
  g_assert_cmpfloat_with_epsilon (place.x, 70, EPSILON);
  sw_pan_align (sketch, SW_ALIGN_CENTRE, &place, 1);
  g_assert_cmpfloat_with_epsilon (place.x, 37.5, EPSILON);
  sw_pan_align (sketch, SW_ALIGN_TOP, &place, 1);
  g_assert_cmpfloat_with_epsilon (place.y, 10, EPSILON);
}

static void
test_spread (void)
{
  g_autoptr (SwSketch) sketch = three_pours ();
  SwPourPlace places[] = {
    { SW_STEP_BAND, 60, 6, 10, 0, 0 },    /* 55 .. 65 */
    { SW_STEP_SPLOTCH, 5, 6, 10, 4, 0 },  /* 0 .. 10 */
    { SW_STEP_SPECKLE, 12, 6, 20, 4, 0 }, /* 2 .. 22: 25 cm of gaps are left for two */
  };

  sw_pan_align (sketch, SW_ALIGN_SPREAD_ALONG, places, 3);
  g_assert_cmpfloat_with_epsilon (places[0].x, 60, EPSILON);
  g_assert_cmpfloat_with_epsilon (places[1].x, 5, EPSILON);
  g_assert_cmpfloat_with_epsilon (places[2].x, 10 + 12.5 + 10, EPSILON);
}

static void
test_names (void)
{
  for (SwAlign align = 0; align < SW_N_ALIGNS; align++)
    {
      g_assert_cmpint (sw_align_from_name (sw_align_name (align)), ==, align);
      g_assert_cmpstr (sw_align_label (align), !=, "");
    }
  g_assert_cmpint (sw_align_from_name ("diagonal"), ==, SW_N_ALIGNS);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pan-snap/lines", test_lines);
  g_test_add_func ("/pan-snap/gaps", test_gaps);
  g_test_add_func ("/pan-snap/skip-and-points", test_skip_and_points);
  g_test_add_func ("/pan-snap/never-beyond-reach", test_never_beyond_reach);
  g_test_add_func ("/pan-align/sides", test_align);
  g_test_add_func ("/pan-align/one", test_align_one);
  g_test_add_func ("/pan-align/spread", test_spread);
  g_test_add_func ("/pan-align/names", test_names);
  return g_test_run ();
}
