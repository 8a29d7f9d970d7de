/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwGuide: a few words for a newcomer, each pointing at the thing it speaks
 * of. Can be left at any time.
 *
 * Signal "finished": gone through or left.
 */
#define SW_TYPE_GUIDE (sw_guide_get_type ())
G_DECLARE_FINAL_TYPE (SwGuide, sw_guide, SW, GUIDE, GtkPopover)

/* It belongs to @parent, a widget around all it will point at. */
SwGuide *sw_guide_new (GtkWidget *parent) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_guide_add:
 * @target: skipped if it cannot be seen when its turn comes
 * @title, @text: translated
 */
void sw_guide_add (SwGuide *self, GtkWidget *target, const char *title, const char *text);

void sw_guide_start (SwGuide *self);

G_END_DECLS
