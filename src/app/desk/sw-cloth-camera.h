/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Which part of the cloth is seen, at which size. Its place is kept in
 * stitches and rows from the cast-on's left end, so that another width or a
 * longer strand does not move what is looked at.
 */

#define SW_CAMERA_LEAST_PX 1.5
#define SW_CAMERA_MOST_PX 80.0
#define SW_CAMERA_MARGIN 24.0 /* ground left around the cloth, px */

typedef struct
{
  double stitch;        /* px of one stitch's width */
  double gauge;         /* a row's height over a stitch's width */
  double columns, rows; /* of the cloth */
  double width, height; /* of the view, px */
  double column, row;   /* at the view's lower left; less than 0 in the margin */
} SwClothCamera;

/* The largest stitch at which the whole width is seen. */
double sw_cloth_camera_fit (const SwClothCamera *camera);

/* A cloth that leaves room is put in the middle, one that does not fills the view. */
void sw_cloth_camera_settle (SwClothCamera *camera);

/* Stitches become @stitch px wide (within the limits), and what is at @x, @y stays there. */
void sw_cloth_camera_zoom (SwClothCamera *camera, double stitch, double x, double y);

/* From stitches and rows to px of the view and back; a row's y is its lower edge. */
double sw_cloth_camera_x (const SwClothCamera *camera, double column);
double sw_cloth_camera_y (const SwClothCamera *camera, double row);
double sw_cloth_camera_column (const SwClothCamera *camera, double x);
double sw_cloth_camera_row (const SwClothCamera *camera, double y);

/* Length of the scrolled whole in px, at least the view's. */
double sw_cloth_camera_extent_x (const SwClothCamera *camera);
double sw_cloth_camera_extent_y (const SwClothCamera *camera);

/* What a scroll bar shows, px from the left or from the top. */
double sw_cloth_camera_scroll_x (const SwClothCamera *camera);
double sw_cloth_camera_scroll_y (const SwClothCamera *camera);
void sw_cloth_camera_scroll_to (SwClothCamera *camera, double x, double y);

G_END_DECLS
