/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/*
 * The path of the maker's mark. In a file it is told from the file's own
 * folder, so that a folder with both can be moved or sent; in memory it is
 * whole, so that whoever reads it need not know where the colourway came from.
 */

/**
 * sw_mark_path_find:
 * @file: that @sketch was read from
 * Makes the mark's path whole. If nothing is there, but a file of that name is
 * beside @file, it becomes that one's.
 */
void sw_mark_path_find (SwSketch *sketch, GFile *file);

/**
 * sw_mark_path_keep:
 * @file: that @sketch is about to be written to
 * Makes a whole path one from the folder of @file, if the mark is in it,
 * beneath it or at most two folders up; else leaves it as it is.
 */
void sw_mark_path_keep (SwSketch *sketch, GFile *file);

G_END_DECLS
