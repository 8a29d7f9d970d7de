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

/**
 * sw_colour_names:
 * @colours: (array length=n): the most important first
 *
 * Names for colours that stand together, in a palette or a table. Where one
 * would be called like another before it, it gets the name of the nearest
 * colour beyond it as seen from that one: of two dusty blues, the paler is a
 * pale blue.
 *
 * Returns: (transfer full): @n names and NULL; no two alike unless the colours are the same, or more vivid than wool can be
 */
char **sw_colour_names (const SwLab *colours, gsize n) G_GNUC_WARN_UNUSED_RESULT;

/* @given: (array length=n): the names of those that have one, NULL for the others, which get none of these */
char **sw_colour_names_with (const SwLab *colours, gsize n, const char *const *given) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
