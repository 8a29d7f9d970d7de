/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-cloth-camera.h"

#include <math.h>

#define NEAR 1e-9

static SwClothCamera
camera_of (double columns, double rows)
{
  return (SwClothCamera){ .stitch = 10, .gauge = 0.75, .columns = columns, .rows = rows, .width = 800, .height = 500 };
}

static void
test_fit (void)
{
  SwClothCamera camera = camera_of (64, 600);

  camera.stitch = sw_cloth_camera_fit (&camera);
  sw_cloth_camera_settle (&camera);
  g_assert_cmpfloat_with_epsilon (sw_cloth_camera_x (&camera, 0), SW_CAMERA_MARGIN, NEAR);
  g_assert_cmpfloat_with_epsilon (sw_cloth_camera_x (&camera, 64), 800 - SW_CAMERA_MARGIN, NEAR);

  camera = camera_of (3, 600);
  g_assert_cmpfloat (sw_cloth_camera_fit (&camera), ==, SW_CAMERA_MOST_PX);
}

/* A small cloth lies in the middle and does not scroll. */
static void
test_centred (void)
{
  SwClothCamera camera = camera_of (20, 10);

  sw_cloth_camera_settle (&camera);
  g_assert_cmpfloat_with_epsilon (sw_cloth_camera_x (&camera, 0), 800 - sw_cloth_camera_x (&camera, 20), NEAR);
  g_assert_cmpfloat_with_epsilon (sw_cloth_camera_y (&camera, 10), 500 - sw_cloth_camera_y (&camera, 0), NEAR);
  g_assert_cmpfloat (sw_cloth_camera_extent_x (&camera), ==, 800);
  g_assert_cmpfloat (sw_cloth_camera_scroll_y (&camera), ==, 0);
}

/* Whatever is under the pointer stays there while stitches grow and shrink. */
static void
test_zoom_keeps_the_point (void)
{
  SwClothCamera camera = camera_of (400, 900);
  double column, row;

  sw_cloth_camera_scroll_to (&camera, 1500, 3000);
  column = sw_cloth_camera_column (&camera, 300);
  row = sw_cloth_camera_row (&camera, 200);
  for (int i = 0; i < 12; i++)
    {
      sw_cloth_camera_zoom (&camera, camera.stitch * (i < 6 ? 1.1 : 1 / 1.1), 300, 200);
      g_assert_cmpfloat_with_epsilon (sw_cloth_camera_x (&camera, column), 300, 1e-6);
      g_assert_cmpfloat_with_epsilon (sw_cloth_camera_y (&camera, row), 200, 1e-6);
    }
  g_assert_cmpfloat_with_epsilon (camera.stitch, 10, NEAR);

  sw_cloth_camera_zoom (&camera, 1e6, 0, 0);
  g_assert_cmpfloat (camera.stitch, ==, SW_CAMERA_MOST_PX);
}

/* What a scroll bar is told is what it shows. */
static void
test_scroll_round_trip (void)
{
  SwClothCamera camera = camera_of (400, 900);

  for (double x = 0; x <= 3200; x += 400)
    for (double y = 0; y <= 6000; y += 750)
      {
        sw_cloth_camera_scroll_to (&camera, x, y);
        g_assert_cmpfloat_with_epsilon (sw_cloth_camera_scroll_x (&camera), x, 1e-6);
        g_assert_cmpfloat_with_epsilon (sw_cloth_camera_scroll_y (&camera), y, 1e-6);
      }

  sw_cloth_camera_scroll_to (&camera, 1e9, 1e9);
  g_assert_cmpfloat_with_epsilon (sw_cloth_camera_scroll_x (&camera), sw_cloth_camera_extent_x (&camera) - 800, 1e-6);
  g_assert_cmpfloat_with_epsilon (sw_cloth_camera_y (&camera, 0), 500 - SW_CAMERA_MARGIN, 1e-6);
}

/* A cloth that grows a stitch wider does not move under the eye. */
static void
test_place_is_kept (void)
{
  SwClothCamera camera = camera_of (400, 900);
  double x, y;

  sw_cloth_camera_scroll_to (&camera, 1500, 3000);
  x = sw_cloth_camera_x (&camera, 200);
  y = sw_cloth_camera_y (&camera, 500);
  camera.columns = 404;
  camera.rows = 891;
  sw_cloth_camera_settle (&camera);
  g_assert_cmpfloat_with_epsilon (sw_cloth_camera_x (&camera, 200), x, NEAR);
  g_assert_cmpfloat_with_epsilon (sw_cloth_camera_y (&camera, 500), y, NEAR);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/app/cloth-camera/fit", test_fit);
  g_test_add_func ("/app/cloth-camera/centred", test_centred);
  g_test_add_func ("/app/cloth-camera/zoom", test_zoom_keeps_the_point);
  g_test_add_func ("/app/cloth-camera/scroll", test_scroll_round_trip);
  g_test_add_func ("/app/cloth-camera/place", test_place_is_kept);
  return g_test_run ();
}
