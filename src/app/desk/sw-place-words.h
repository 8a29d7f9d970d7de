/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/**
 * sw_place_in_words:
 * @message: as the core says it, perhaps with a place in the file's words
 *   before it: "dyes[2].sample: No dyed yarn can ..."
 *
 * Returns: (transfer full): the same for someone who looks at a window and not
 *   into a file: the dye or step by its name, other places left out
 */
char *sw_place_in_words (const SwSketch *sketch, const char *message) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
