/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * sw_memory_keep:
 * Asks the C library to keep freed memory for the process. Each forecast of a
 * drag frees and takes some two megabytes; pages fetched anew from the kernel
 * each time cost as much as all the computing. Large pages are asked for,
 * too: fetching small ones is most of a process's first forecast. For a program's main(), before
 * any thread; does nothing where the C library has no such wish.
 */
void sw_memory_keep (void);

G_END_DECLS
