/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-pan-drag.h"
#include "draw/sw-pan-geometry.h"

#include <math.h>

/*
 * Handles lie on the outline that the draw room traces, and a drag is a
 * function of the press and the pointer: places are compared in cm.
 */

/* Places keep four decimals, sizes two; a centre takes half of a size. */
#define TOLERANCE 2e-3

static const SwStepKind kinds[] = { SW_STEP_BAND, SW_STEP_SPLOTCH, SW_STEP_SPECKLE };
static const SwGrips grips = { 0.5, 1.5 };

/* One skein, 75 cm by 10 cm. */
static SwSketch *
bare_sketch (void)
{
  SwSketch *sketch = sw_sketch_new ();

  sketch->reel.circumference_cm = 150;
  sketch->lay.runs = 2;
  sketch->lay.folding = SW_FOLDING_STACKED;
  sketch->lay.width_cm = 10;
  g_assert_cmpfloat_with_epsilon (sw_sketch_lay_length (sketch), 75, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_sketch_lay_width (sketch), 10, 1e-9);
  return sketch;
}

static SwPourPlace
random_place (SwStepKind kind)
{
  SwPourPlace place = {
    kind,
    g_test_rand_double_range (5, 70),
    g_test_rand_double_range (3, 7),
    g_test_rand_double_range (4, 20),
    g_test_rand_double_range (3, 5),
    g_test_rand_double_range (-180, 180),
  };

  if (kind == SW_STEP_BAND)
    {
      place.angle = g_test_rand_double_range (-60, 60);
      if (g_test_rand_bit ())
        {
          place.length = 0;
          place.y = 5;
        }
    }
  sw_pour_place_tidy (&place);
  return place;
}

static void
assert_same (const SwPourPlace *a, const SwPourPlace *b, double tolerance)
{
  g_assert_cmpint (a->kind, ==, b->kind);
  g_assert_cmpfloat_with_epsilon (a->x, b->x, tolerance);
  g_assert_cmpfloat_with_epsilon (a->y, b->y, tolerance);
  g_assert_cmpfloat_with_epsilon (a->width, b->width, tolerance);
  g_assert_cmpfloat_with_epsilon (a->length, b->length, tolerance);
  g_assert_cmpfloat_with_epsilon (a->angle, b->angle, 0.051);
}

static SwHandle
opposite (SwHandle handle)
{
  for (int i = SW_HANDLE_START; i < SW_HANDLE_TURN; i++)
    if (sw_handle_along (i) == -sw_handle_along (handle) && sw_handle_across (i) == -sw_handle_across (handle))
      return i;
  g_assert_not_reached ();
}

/* Just inside a handle's edge there is the pour, just outside there is not, as the draw room sees it. */
static void
test_on_the_outline (void)
{
  g_autoptr (SwSketch) sketch = bare_sketch ();
  SwPanGeometry geometry;

  sw_pan_geometry (sketch, 1000, 400, &geometry);
  g_ptr_array_add (sketch->dyes, sw_dye_new (1));
  for (int trial = 0; trial < 300; trial++)
    {
      const SwPourPlace place = random_place (kinds[trial % 3]);
      SwStep *step = sw_step_new (2, place.kind);

      sw_pour_place_put (&place, step);
      g_ptr_array_set_size (sketch->steps, 0);
      g_ptr_array_add (sketch->steps, step);
      for (int i = SW_HANDLE_START; i < SW_HANDLE_TURN; i++)
        {
          double x, y, middle_x, middle_y, near_x, near_y;

          /* An ellipse does not reach the corners of its box. */
          if (!sw_handle_applies (i, place.kind) || (place.kind == SW_STEP_SPLOTCH && sw_handle_along (i) != 0 && sw_handle_across (i) != 0))
            continue;
          sw_handle_edge (sketch, &place, i, &x, &y);
          sw_handle_edge (sketch, &place, SW_HANDLE_BODY, &middle_x, &middle_y);
          for (int out = -1; out <= 1; out += 2)
            {
              const double share = 1 + 0.01 * out;

              sw_pan_to_px (&geometry, middle_x + share * (x - middle_x), middle_y + share * (y - middle_y), &near_x, &near_y);
              g_assert_cmpuint (sw_pan_pour_at (&geometry, sketch, FALSE, near_x, near_y), ==, out < 0 ? 2 : 0);
            }
        }
    }
}

/* The pour's place is read from the outline as drawn: its extent is the bounding box, for all but slanted bands. */
static void
test_extent (void)
{
  g_autoptr (SwSketch) sketch = bare_sketch ();

  for (int trial = 0; trial < 100; trial++)
    {
      const SwPourPlace place = random_place (kinds[1 + trial % 2]);
      const SwExtent extent = sw_pour_extent (sketch, &place);
      double x0 = 1e9, x1 = -1e9, y0 = 1e9, y1 = -1e9;

      for (int i = 0; i < 4000; i++)
        {
          const double turn = i * G_PI / 2000, corner = place.kind == SW_STEP_SPLOTCH ? 1 : 1 / MAX (fabs (cos (turn)), fabs (sin (turn)));
          double dx, dy;

          sw_pour_from_own (&place, corner * cos (turn) * place.width / 2, corner * sin (turn) * place.length / 2, &dx, &dy);
          x0 = MIN (x0, place.x + dx);
          x1 = MAX (x1, place.x + dx);
          y0 = MIN (y0, place.y + dy);
          y1 = MAX (y1, place.y + dy);
        }
      g_assert_cmpfloat_with_epsilon (extent.x0, x0, 0.02);
      g_assert_cmpfloat_with_epsilon (extent.x1, x1, 0.02);
      g_assert_cmpfloat_with_epsilon (extent.y0, y0, 0.02);
      g_assert_cmpfloat_with_epsilon (extent.y1, y1, 0.02);
    }
}

/* Each handle is found where it is drawn, and the middle of the smallest pour is free. */
static void
test_handle_at (void)
{
  g_autoptr (SwSketch) sketch = bare_sketch ();

  for (int trial = 0; trial < 200; trial++)
    {
      SwPourPlace place = random_place (kinds[trial % 3]);

      if (trial % 2 == 0)
        place.width = 0.1;
      if (trial % 4 == 0 && place.length > 0)
        place.length = 0.1;
      for (int i = SW_HANDLE_START; i < SW_N_HANDLES; i++)
        {
          double x, y;

          if (!sw_handle_applies (i, place.kind))
            continue;
          sw_handle_place (sketch, &place, i, &grips, &x, &y);
          g_assert_cmpint (sw_handle_at (sketch, &place, &grips, x, y), ==, i);
        }
      g_assert_cmpint (sw_handle_at (sketch, &place, &grips, place.x, place.y), ==, SW_HANDLE_NONE);
    }
}

/* What is tidy stays as it is; one angle has one number. */
static void
test_tidy (void)
{
  for (int trial = 0; trial < 400; trial++)
    {
      SwPourPlace place = random_place (kinds[trial % 3]), again;

      if (place.kind != SW_STEP_BAND)
        place.angle = 180 * g_test_rand_int_range (-4, 5) + 0.2 * g_test_rand_double_range (-1, 1);
      sw_pour_place_tidy (&place);
      again = place;
      sw_pour_place_tidy (&again);
      assert_same (&again, &place, 1e-9);
      g_assert_cmpfloat_with_epsilon (again.angle, place.angle, 1e-9);
      g_assert_cmpfloat (place.angle, >, -180);
      g_assert_cmpfloat (place.angle, <=, 180);
    }
}

/* Nothing dragged is nothing changed, and what was dragged there and back is where it was. */
static void
test_drag_back (void)
{
  g_autoptr (SwSketch) sketch = bare_sketch ();

  for (int trial = 0; trial < 600; trial++)
    {
      const SwPourPlace from = random_place (kinds[trial % 3]);
      const SwHandle handle = SW_HANDLE_BODY + (SwHandle) g_test_rand_int_range (0, SW_N_HANDLES - SW_HANDLE_BODY);
      const double dx = g_test_rand_double_range (-1, 1), dy = g_test_rand_double_range (-1, 1);
      SwPourPlace there, back;

      if (handle != SW_HANDLE_BODY && !sw_handle_applies (handle, from.kind))
        continue;
      there = sw_pan_drag (sketch, &from, handle, &grips, 0, 0, 0);
      assert_same (&there, &from, TOLERANCE);

      /* The far side of a band may run into the skein's edge, from where there is no way back by the same length. */
      if (handle == SW_HANDLE_TURN || (from.kind == SW_STEP_BAND && sw_handle_across (handle) != 0))
        continue;
      there = sw_pan_drag (sketch, &from, handle, &grips, dx, dy, 0);
      back = sw_pan_drag (sketch, &there, handle, &grips, -dx, -dy, 0);
      assert_same (&back, &from, 0.012);
    }
}

static void
test_opposite_stays (void)
{
  g_autoptr (SwSketch) sketch = bare_sketch ();

  for (int trial = 0; trial < 900; trial++)
    {
      const SwPourPlace from = random_place (kinds[trial % 3]);
      const SwHandle handle = SW_HANDLE_START + (SwHandle) g_test_rand_int_range (0, SW_HANDLE_TURN - SW_HANDLE_START);
      const SwDragFlags flags = trial % 2 && sw_handle_along (handle) && sw_handle_across (handle) ? SW_DRAG_STEADY : 0;
      double x0, y0, x1, y1;
      SwPourPlace to;

      if (!sw_handle_applies (handle, from.kind))
        continue;
      to = sw_pan_drag (sketch, &from, handle, &grips, g_test_rand_double_range (-60, 60), g_test_rand_double_range (-60, 60), flags);
      sw_handle_edge (sketch, &from, opposite (handle), &x0, &y0);
      sw_handle_edge (sketch, &to, opposite (handle), &x1, &y1);
      if (from.kind == SW_STEP_BAND && sw_handle_across (handle) == 0)
        y1 = y0;                                     /* the middle of what was cut by the skein's edge */
      g_assert_cmpfloat_with_epsilon (x0, x1, 0.03); /* a slant takes a rounded y by up to tan 60 */
      g_assert_cmpfloat_with_epsilon (y0, y1, 0.01);
      g_assert_cmpfloat_with_epsilon (from.angle, to.angle, 1e-9);
      g_assert_cmpfloat (to.width, >=, 0.1);
      if (flags & SW_DRAG_STEADY && from.width < 100 && to.width < 399 && to.length < 399 && to.width > 0.2 && to.length > 0.2)
        g_assert_cmpfloat_with_epsilon (to.width / to.length, from.width / from.length, 0.2 * from.width / from.length);
    }
}

/* The edge goes as far as the hand along its own direction; the other extent is left alone. */
static void
test_edge_follows (void)
{
  g_autoptr (SwSketch) sketch = bare_sketch ();

  for (int trial = 0; trial < 300; trial++)
    {
      const SwPourPlace from = random_place (kinds[1 + trial % 2]);
      const double by = g_test_rand_double_range (-2, 6);
      double dx, dy, x0, y0, x1, y1;
      SwPourPlace to;

      sw_pour_from_own (&from, by, 0, &dx, &dy);
      to = sw_pan_drag (sketch, &from, SW_HANDLE_END, &grips, dx, dy, 0);
      sw_handle_edge (sketch, &from, SW_HANDLE_END, &x0, &y0);
      sw_handle_edge (sketch, &to, SW_HANDLE_END, &x1, &y1);
      g_assert_cmpfloat_with_epsilon (x1 - x0, dx, 0.01);
      g_assert_cmpfloat_with_epsilon (y1 - y0, dy, 0.01);
      g_assert_cmpfloat_with_epsilon (to.length, from.length, 1e-9);

      to = sw_pan_drag (sketch, &from, SW_HANDLE_END, &grips, dx, dy, SW_DRAG_STEADY);
      g_assert_cmpfloat_with_epsilon (to.x, from.x, TOLERANCE);
      g_assert_cmpfloat_with_epsilon (to.y, from.y, TOLERANCE);
      g_assert_cmpfloat_with_epsilon (to.width, MAX (from.width + 2 * by, 0.1), 0.01);
    }
}

/* What is dragged to an angle points there. */
static void
test_turn (void)
{
  static const struct
  {
    SwStepKind kind;
    double to_x, to_y; /* the pointer from the centre, cm */
    SwDragFlags flags;
    double angle;
  } rows[] = {
    { SW_STEP_SPLOTCH, 0, 8, 0, 0 },
    { SW_STEP_SPLOTCH, -8, 0, 0, 90 },
    { SW_STEP_SPLOTCH, 8, 0, 0, -90 },
    { SW_STEP_SPLOTCH, 0, -8, 0, 180 },
    { SW_STEP_SPLOTCH, -8, 7.5, 0, 46.8 },
    { SW_STEP_SPLOTCH, -8, 7.5, SW_DRAG_DETENT, 45 },
    { SW_STEP_SPECKLE, -8, 7, SW_DRAG_DETENT, 48.8 },
    { SW_STEP_SPECKLE, -2, 7, SW_DRAG_STEADY, 15 },
    { SW_STEP_BAND, 0, 8, 0, 0 },
    { SW_STEP_BAND, 8, 8, 0, 45 },
    { SW_STEP_BAND, -8, 8, 0, -45 },
    { SW_STEP_BAND, 8, -8, 0, 80 },
    { SW_STEP_BAND, 80, 1, SW_DRAG_STEADY, 75 },
    { SW_STEP_BAND, 0.2, 8, SW_DRAG_DETENT, 0 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (SwSketch) sketch = bare_sketch ();
      const SwPourPlace from = { rows[i].kind, 30, 5, 12, rows[i].kind == SW_STEP_BAND ? 0 : 6, 20 };
      double x, y;
      SwPourPlace to;

      sw_handle_place (sketch, &from, SW_HANDLE_TURN, &grips, &x, &y);
      to = sw_pan_drag (sketch, &from, SW_HANDLE_TURN, &grips, from.x + rows[i].to_x - x, from.y + rows[i].to_y - y, rows[i].flags);
      g_assert_cmpfloat_with_epsilon (to.angle, rows[i].angle, 0.06);
      g_assert_cmpfloat_with_epsilon (to.x, from.x, TOLERANCE);
      g_assert_cmpfloat_with_epsilon (to.width, from.width, TOLERANCE);
    }
}

static void
test_band_across (void)
{
  g_autoptr (SwSketch) sketch = bare_sketch ();
  const SwPourPlace whole = { SW_STEP_BAND, 30, 2, 8, 0, 45 };
  SwPourPlace part = sw_pan_drag (sketch, &whole, SW_HANDLE_FAR, &grips, 0, -4, 0), again;

  /* From right across to 0 .. 6; its line still goes through (30, 2). */
  g_assert_cmpfloat_with_epsilon (part.length, 6, TOLERANCE);
  g_assert_cmpfloat_with_epsilon (part.y, 3, TOLERANCE);
  g_assert_cmpfloat_with_epsilon (part.x, 31, TOLERANCE);

  again = sw_pan_drag (sketch, &part, SW_HANDLE_FAR, &grips, 0, 100, 0);
  g_assert_cmpfloat (again.length, <=, 0);
  g_assert_cmpfloat_with_epsilon (again.x - again.y, part.x - part.y, TOLERANCE);

  /* Right across it has no place across; a part of a band has. */
  again = sw_pan_drag (sketch, &whole, SW_HANDLE_BODY, &grips, 3, 3, 0);
  g_assert_cmpfloat_with_epsilon (again.x, 33, TOLERANCE);
  g_assert_cmpfloat_with_epsilon (again.y, 2, TOLERANCE);
  again = sw_pan_drag (sketch, &part, SW_HANDLE_BODY, &grips, 3, 4, SW_DRAG_STEADY);
  g_assert_cmpfloat_with_epsilon (again.x, 31, TOLERANCE);
  g_assert_cmpfloat_with_epsilon (again.y, 7, TOLERANCE);
}

static void
test_draw (void)
{
  static const struct
  {
    SwStepKind kind;
    double x0, y0, x1, y1;
    SwDragFlags flags;
    SwPourPlace place;
  } rows[] = {
    { SW_STEP_BAND, 10, 2, 22, 5, 0, { SW_STEP_BAND, 16, 5, 12, 0, 0 } },
    { SW_STEP_BAND, 22, 5, 10, 2, 0, { SW_STEP_BAND, 16, 5, 12, 0, 0 } },
    { SW_STEP_BAND, 10, 2, 22, 5, SW_DRAG_CENTRED, { SW_STEP_BAND, 10, 5, 24, 0, 0 } },
    { SW_STEP_BAND, 30, 9, 26, 1, 0, { SW_STEP_BAND, 28, 5, 9, 0, 26.6 } },
    { SW_STEP_BAND, 26, 1, 30, 9, 0, { SW_STEP_BAND, 28, 5, 9, 0, 26.6 } },
    { SW_STEP_BAND, 28, 1, 24, 9, 0, { SW_STEP_BAND, 26, 5, 9, 0, -26.6 } },
    { SW_STEP_BAND, 30, 8, 29.9, 0, SW_DRAG_DETENT, { SW_STEP_BAND, 29.95, 5, 9, 0, 0 } },
    { SW_STEP_SPLOTCH, 10, 2, 22, 8, 0, { SW_STEP_SPLOTCH, 16, 5, 12, 6, 0 } },
    { SW_STEP_SPLOTCH, 22, 8, 10, 2, 0, { SW_STEP_SPLOTCH, 16, 5, 12, 6, 0 } },
    { SW_STEP_SPLOTCH, 16, 5, 10, 2, SW_DRAG_CENTRED, { SW_STEP_SPLOTCH, 16, 5, 12, 6, 0 } },
    { SW_STEP_SPLOTCH, 10, 8, 14, 2, SW_DRAG_STEADY, { SW_STEP_SPLOTCH, 13, 5, 6, 6, 0 } },
    { SW_STEP_SPECKLE, 10, 2, 10, 2, 0, { SW_STEP_SPECKLE, 10, 2, 0.1, 0.1, 0 } },
  };
  g_autoptr (SwSketch) sketch = bare_sketch ();

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const SwPourPlace drawn = sw_pan_draw (sketch, rows[i].kind, rows[i].x0, rows[i].y0, rows[i].x1, rows[i].y1, rows[i].flags);

      assert_same (&drawn, &rows[i].place, TOLERANCE);
    }
}

/* Whatever is drawn or dragged is a pour that the document accepts. */
static void
test_always_legal (void)
{
  g_autoptr (SwSketch) sketch = bare_sketch ();

  g_ptr_array_add (sketch->dyes, sw_dye_new (1));
  for (int trial = 0; trial < 600; trial++)
    {
      const SwStepKind kind = kinds[trial % 3];
      const double far = trial % 2 ? 2000 : 40;
      double at[4];
      SwPourPlace place;
      SwStep *step = sw_step_new (2, kind);
      g_autoptr (GError) error = NULL;

      for (gsize i = 0; i < G_N_ELEMENTS (at); i++)
        at[i] = g_test_rand_double_range (-far, far);
      place = trial % 5 == 0 ? sw_pan_click (sketch, kind, at[0], at[1]) : sw_pan_draw (sketch, kind, at[0], at[1], at[2], at[3], (SwDragFlags) (trial % 4));
      place = sw_pan_drag (sketch, &place, (SwHandle) g_test_rand_int_range (1, SW_N_HANDLES), &grips, at[2], at[3], (SwDragFlags) (trial % 8));
      step->dye = 1;
      sw_pour_place_put (&place, step);
      g_ptr_array_set_size (sketch->steps, 0);
      g_ptr_array_add (sketch->steps, step);
      sketch->next_id = 3;
      g_assert_true (sw_sketch_validate (sketch, &error));
      g_assert_no_error (error);
    }
}

static void
test_edit (void)
{
  g_autoptr (SwSketch) sketch = bare_sketch ();
  SwStep *step = sw_step_new (2, SW_STEP_SPLOTCH);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwEdit) edit = NULL;
  g_autoptr (SwEdit) back = NULL;
  SwPourPlace place, now;

  g_ptr_array_add (sketch->dyes, sw_dye_new (1));
  step->dye = 1;
  g_ptr_array_add (sketch->steps, step);
  place = sw_pour_place (step);
  g_assert_null (sw_pour_place_edit (step, &place));

  place = (SwPourPlace){ SW_STEP_SPLOTCH, 11, 3, 7, 5, -30 };
  edit = sw_pour_place_edit (step, &place);
  back = sw_edit_apply (edit, sketch, NULL, &error);
  g_assert_no_error (error);
  now = sw_pour_place (step);
  assert_same (&now, &place, 1e-9);
  g_assert_null (sw_pour_place_edit (step, &place));
}

/* Directions for the pointer's arrows. */
static void
test_direction (void)
{
  const SwPourPlace band = { SW_STEP_BAND, 30, 5, 8, 0, 30 };
  const SwPourPlace turned = { SW_STEP_SPLOTCH, 30, 5, 8, 4, 30 };

  g_assert_cmpfloat_with_epsilon (sw_handle_direction (&band, SW_HANDLE_START), 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_handle_direction (&band, SW_HANDLE_FAR), 90, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_handle_direction (&turned, SW_HANDLE_START), 30, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_handle_direction (&turned, SW_HANDLE_NEAR), 120, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_handle_direction (&turned, SW_HANDLE_END_FAR), 75, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_handle_direction (&turned, SW_HANDLE_START_NEAR), 75, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_handle_direction (&turned, SW_HANDLE_START_FAR), 165, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pan-drag/on-the-outline", test_on_the_outline);
  g_test_add_func ("/pan-drag/extent", test_extent);
  g_test_add_func ("/pan-drag/handle-at", test_handle_at);
  g_test_add_func ("/pan-drag/direction", test_direction);
  g_test_add_func ("/pan-drag/tidy", test_tidy);
  g_test_add_func ("/pan-drag/drag-back", test_drag_back);
  g_test_add_func ("/pan-drag/opposite-stays", test_opposite_stays);
  g_test_add_func ("/pan-drag/edge-follows", test_edge_follows);
  g_test_add_func ("/pan-drag/turn", test_turn);
  g_test_add_func ("/pan-drag/band-across", test_band_across);
  g_test_add_func ("/pan-drag/draw", test_draw);
  g_test_add_func ("/pan-drag/always-legal", test_always_legal);
  g_test_add_func ("/pan-drag/edit", test_edit);
  return g_test_run ();
}
