/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-texture.h"

#define SURFACE "sw-surface"

GdkTexture *
sw_texture_new (cairo_surface_t *surface)
{
  const int width = cairo_image_surface_get_width (surface), height = cairo_image_surface_get_height (surface);
  const gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) bytes = NULL;
  GdkTexture *texture;

  cairo_surface_flush (surface);
  bytes = g_bytes_new_with_free_func (cairo_image_surface_get_data (surface), stride * (gsize) height,
                                      (GDestroyNotify) cairo_surface_destroy, cairo_surface_reference (surface));
  texture = gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, bytes, stride);
  g_object_set_data_full (G_OBJECT (texture), SURFACE, surface, (GDestroyNotify) cairo_surface_destroy);
  return texture;
}

void
sw_texture_append (GtkWidget *widget, GtkSnapshot *snapshot, GdkTexture *texture, const graphene_rect_t *box)
{
  cairo_surface_t *surface = g_object_get_data (G_OBJECT (texture), SURFACE);
  double x_scale, y_scale;
  cairo_t *cr;

  if (!GSK_IS_CAIRO_RENDERER (gtk_native_get_renderer (gtk_widget_get_native (widget))))
    {
      gtk_snapshot_append_texture (snapshot, texture, box);
      return;
    }
  cairo_surface_get_device_scale (surface, &x_scale, &y_scale);
  cr = gtk_snapshot_append_cairo (snapshot, box);
  cairo_translate (cr, (double) box->origin.x, (double) box->origin.y);
  cairo_scale (cr, (double) box->size.width * x_scale / gdk_texture_get_width (texture), (double) box->size.height * y_scale / gdk_texture_get_height (texture));
  cairo_set_source_surface (cr, surface, 0, 0);
  cairo_pattern_set_extend (cairo_get_source (cr), CAIRO_EXTEND_PAD);
  cairo_paint (cr);
  cairo_destroy (cr);
}
