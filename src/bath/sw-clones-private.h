/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/*
 * SW_CLONES before a loop over plain arrays: built for wide vectors too, the
 * processor at hand chooses when the program starts, so that one binary runs
 * everywhere and is fast where it can be. It needs glibc's indirect functions,
 * which the sanitizers start too late for.
 */
#if defined(__GNUC__) && !defined(__clang__) && defined(__x86_64__) && defined(__GLIBC__) \
    && !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define SW_CLONES __attribute__ ((target_clones ("avx512f", "avx2", "default")))
#else
#define SW_CLONES
#endif
