/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"

G_BEGIN_DECLS

/**
 * sw_cloth_set_width:
 * @width: held between the narrowest and the widest that a sketch may have
 *
 * The several controls of the width are one series to undo. Asking for the
 * width that it has changes nothing.
 */
gboolean sw_cloth_set_width (SwDocument *document, double width, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* As sw_cloth_set_width(), within a group that the caller began. */
gboolean sw_cloth_drag_width (SwDocument *document, double width, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What a change of width is called beside Undo, translated. */
const char *sw_cloth_width_step (void);

G_END_DECLS
