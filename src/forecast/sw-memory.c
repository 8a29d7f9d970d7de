/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-memory.h"

#ifdef __GLIBC__
#include <malloc.h>
#include <stdlib.h>
#include <sys/mman.h>

/* Large enough for all that one forecast of twenty skeins frees. */
#define KEPT_BYTES (256 * 1024 * 1024)

/* The C library does not take more than this from its own heap. */
#define LARGEST_BYTES (32 * 1024 * 1024)

#ifdef MADV_HUGEPAGE
/* Pages of two megabytes on x86-64, and what other machines have is a part or a multiple of it. */
#define PAGE_BYTES ((guintptr) 2 * 1024 * 1024)

/*
 * A first forecast touches some three thousand pages of 4 kB, and each costs
 * a visit to the kernel. So that large ones are used, the heap grows at once
 * by what such a forecast needs; nothing is fetched before it is touched.
 */
static void
prefer_large_pages (void)
{
  char *block = malloc (LARGEST_BYTES / 2);
  guintptr from = ((guintptr) block + PAGE_BYTES - 1) / PAGE_BYTES * PAGE_BYTES;
  guintptr to = ((guintptr) block + LARGEST_BYTES / 2) / PAGE_BYTES * PAGE_BYTES;

  if (block != NULL && to > from)
    madvise ((gpointer) from, to - from, MADV_HUGEPAGE);
  free (block);
}
#endif
#endif

void
sw_memory_keep (void)
{
#ifdef __GLIBC__
  mallopt (M_TRIM_THRESHOLD, KEPT_BYTES);
  mallopt (M_MMAP_THRESHOLD, LARGEST_BYTES);
#ifdef MADV_HUGEPAGE
  prefer_large_pages ();
#endif
#endif
}
