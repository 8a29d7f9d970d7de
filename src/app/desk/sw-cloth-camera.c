/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-cloth-camera.h"

static double
row_px (const SwClothCamera *camera)
{
  return camera->stitch * camera->gauge;
}

double
sw_cloth_camera_fit (const SwClothCamera *camera)
{
  const double room = MAX (camera->width - 2 * SW_CAMERA_MARGIN, 1);

  return CLAMP (room / MAX (camera->columns, 1), SW_CAMERA_LEAST_PX, SW_CAMERA_MOST_PX);
}

/* One axis: where the view begins, in @unit px; @count units lie there and @view px are seen. */
static double
settle_axis (double begin, double unit, double count, double view)
{
  const double margin = SW_CAMERA_MARGIN / unit, seen = view / unit;

  if (count + 2 * margin <= seen)
    return (count - seen) / 2;
  return CLAMP (begin, -margin, count + margin - seen);
}

void
sw_cloth_camera_settle (SwClothCamera *camera)
{
  camera->column = settle_axis (camera->column, camera->stitch, camera->columns, camera->width);
  camera->row = settle_axis (camera->row, row_px (camera), camera->rows, camera->height);
}

void
sw_cloth_camera_zoom (SwClothCamera *camera, double stitch, double x, double y)
{
  const double column = sw_cloth_camera_column (camera, x), row = sw_cloth_camera_row (camera, y);

  camera->stitch = CLAMP (stitch, SW_CAMERA_LEAST_PX, SW_CAMERA_MOST_PX);
  camera->column = column - x / camera->stitch;
  camera->row = row - (camera->height - y) / row_px (camera);
  sw_cloth_camera_settle (camera);
}

double
sw_cloth_camera_x (const SwClothCamera *camera, double column)
{
  return (column - camera->column) * camera->stitch;
}

double
sw_cloth_camera_y (const SwClothCamera *camera, double row)
{
  return camera->height - (row - camera->row) * row_px (camera);
}

double
sw_cloth_camera_column (const SwClothCamera *camera, double x)
{
  return camera->column + x / camera->stitch;
}

double
sw_cloth_camera_row (const SwClothCamera *camera, double y)
{
  return camera->row + (camera->height - y) / row_px (camera);
}

double
sw_cloth_camera_extent_x (const SwClothCamera *camera)
{
  return MAX (camera->columns * camera->stitch + 2 * SW_CAMERA_MARGIN, camera->width);
}

double
sw_cloth_camera_extent_y (const SwClothCamera *camera)
{
  return MAX (camera->rows * row_px (camera) + 2 * SW_CAMERA_MARGIN, camera->height);
}

double
sw_cloth_camera_scroll_x (const SwClothCamera *camera)
{
  const double range = sw_cloth_camera_extent_x (camera) - camera->width;

  return CLAMP (camera->column * camera->stitch + SW_CAMERA_MARGIN, 0, range);
}

double
sw_cloth_camera_scroll_y (const SwClothCamera *camera)
{
  const double range = sw_cloth_camera_extent_y (camera) - camera->height;

  return CLAMP (range - camera->row * row_px (camera) - SW_CAMERA_MARGIN, 0, range);
}

void
sw_cloth_camera_scroll_to (SwClothCamera *camera, double x, double y)
{
  const double range = sw_cloth_camera_extent_y (camera) - camera->height;

  camera->column = (x - SW_CAMERA_MARGIN) / camera->stitch;
  camera->row = (range - y - SW_CAMERA_MARGIN) / row_px (camera);
  sw_cloth_camera_settle (camera);
}
