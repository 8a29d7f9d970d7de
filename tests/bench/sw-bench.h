/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include <stdlib.h>

/* What every bench needs: a clock, and the middle of several runs. */

static inline double
sw_bench_now_ms (void)
{
  return (double) g_get_monotonic_time () / 1000.0;
}

static inline int
sw_bench_compare (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Sorts @times and returns the median. */
static inline double
sw_bench_median (double *times, gsize n)
{
  qsort (times, n, sizeof (double), sw_bench_compare);
  return times[n / 2];
}

/**
 * sw_bench_run:
 * Times @run on @bench several times and prints the median and the least.
 */
#define SW_BENCH_RUNS 41
static inline void
sw_bench_run (const char *name, void (*run) (gpointer bench), gpointer bench)
{
  double times[SW_BENCH_RUNS], middle;

  for (gsize i = 0; i < SW_BENCH_RUNS; i++)
    {
      double begin = sw_bench_now_ms ();

      run (bench);
      times[i] = sw_bench_now_ms () - begin;
    }
  middle = sw_bench_median (times, SW_BENCH_RUNS);
  g_print ("%-42s %8.3f ms median, %8.3f least\n", name, middle, times[0]);
}
