/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-skein-raster.h"

#include "colour/sw-mix.h"
#include "draw/sw-skein-light.h"

/* Returns: the window of the forecast's colours, the near edge first */
static guint32 *
read_face (const SwForecast *forecast, gboolean second_face, const SwFaceWindow *window)
{
  const gsize n = (gsize) window->width * (gsize) window->height;
  g_autofree float *xyz = g_new (float, 3 * n);
  guint32 *face = g_new (guint32, n);

  sw_forecast_face_window (forecast, second_face, window, xyz, xyz + n, xyz + 2 * n);
  sw_pixels_from_xyz (xyz, xyz + n, xyz + 2 * n, 1, n, face);
  return face;
}

void
sw_skein_raster (const SwForecast *forecast, gboolean second_face, const SwFaceWindow *window, int stride, guint32 *pixels)
{
  g_autoptr (SwSkeinLight) light = sw_skein_light_get (forecast->sketch, window);
  g_autofree guint32 *face = read_face (forecast, second_face, window);

  sw_skein_light_shade (light, face, stride, pixels);
}
