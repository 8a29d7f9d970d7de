/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-memory.h"

#ifdef __GLIBC__
#include <malloc.h>
#endif

/* Large enough for all that one forecast of twenty skeins frees. */
#define KEPT_BYTES (256 * 1024 * 1024)

/* The C library does not take more than this from its own heap. */
#define LARGEST_BYTES (32 * 1024 * 1024)

void
sw_memory_keep (void)
{
#ifdef __GLIBC__
  mallopt (M_TRIM_THRESHOLD, KEPT_BYTES);
  mallopt (M_MMAP_THRESHOLD, LARGEST_BYTES);
#endif
}
