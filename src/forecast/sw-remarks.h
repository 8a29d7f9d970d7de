/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/**
 * sw_sketch_remarks:
 * @sketch: validated
 *
 * What is allowed and yet worth a second look: members that are kept but not
 * used (a slip of the pen, more often than a note), a pour that misses the
 * skein, more dye than the fibre takes, a pan too small for the lay.
 *
 * Returns: (transfer full) (element-type utf8): translated sentences, each
 *   beginning with the place in the file; none for a sketch without such
 */
GPtrArray *sw_sketch_remarks (const SwSketch *sketch) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
