/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-look.h"
#include "draw/sw-pan-geometry.h"

G_BEGIN_DECLS

/* What the picture of the pan is made of, from the ground up. */
typedef enum
{
  SW_PAN_GROUND = 1 << 0, /* the table and the pan on it */
  SW_PAN_SKEIN = 1 << 1,  /* the skein with its shadow */
  SW_PAN_RULERS = 1 << 2,
  SW_PAN_MARKS = 1 << 3, /* if the look wants them */
} SwPanParts;

#define SW_PAN_ALL (SW_PAN_GROUND | SW_PAN_SKEIN | SW_PAN_RULERS | SW_PAN_MARKS)

/**
 * sw_draw_pan_parts:
 * @geometry: any, of a picture of @width x @height: what is outside is not painted
 * @parts: bits of SwPanParts; without the ground the rest goes over what is there
 */
void sw_draw_pan_parts (cairo_t *cr, const SwForecast *forecast, const SwPanGeometry *geometry, guint parts, double width, double height, const SwLook *look);

G_END_DECLS
