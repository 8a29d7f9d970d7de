/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "colour/sw-spectrum.h"

G_BEGIN_DECLS

/**
 * sw_colour_name:
 * Returns: (transfer full): a plain translated name from lightness, chroma and
 *   hue ("deep blue", "pale pink"; that a white is undyed is not for it to
 *   say): for the stripe table, the strip and screen readers
 */
char *sw_colour_name (SwLab lab) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
