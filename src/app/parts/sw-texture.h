/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * sw_texture_new: may be called in any thread
 * @surface: (transfer full): an image that nobody paints on any more, ARGB32 or RGB24
 *
 * Without a copy between cairo and GDK.
 */
GdkTexture *sw_texture_new (cairo_surface_t *surface) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_texture_append:
 * @widget: is being snapshot
 * @texture: of sw_texture_new()
 * @box: where it goes, stretched if need be
 *
 * Use it instead of gtk_snapshot_append_texture(): the software renderer takes
 * a texture's pixels through floats, one by one, in each frame that shows them.
 */
void sw_texture_append (GtkWidget *widget, GtkSnapshot *snapshot, GdkTexture *texture, const graphene_rect_t *box);

G_END_DECLS
