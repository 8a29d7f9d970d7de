/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-strip-runs.h"

#include <math.h>
#include <string.h>

#define LEAST_SHARE 0.02 /* of the loop, to be called a stretch */

double
sw_strip_run_distance (const SwStripRun *a, const SwStripRun *b)
{
  return sqrt ((a->l - b->l) * (a->l - b->l) + (a->a - b->a) * (a->a - b->a) + (a->b - b->b) * (a->b - b->b));
}

/* Joins run @i with the next. */
static gsize
join (SwStripRun *runs, gsize n, gsize i)
{
  SwStripRun *to = &runs[i];
  const SwStripRun *next = &runs[i + 1];
  const double share = (double) (next->to - next->from) / (double) (next->to - to->from);

  to->l += (next->l - to->l) * share;
  to->a += (next->a - to->a) * share;
  to->b += (next->b - to->b) * share;
  to->to = next->to;
  memmove (&runs[i + 1], &runs[i + 2], sizeof *runs * (n - i - 2));
  return n - 1;
}

/* The run @i and its more alike neighbour: the first of the two. */
static gsize
nearest_pair (const SwStripRun *runs, gsize n, gsize i)
{
  if (i == 0)
    return 0;
  if (i + 1 == n)
    return i - 1;
  return sw_strip_run_distance (&runs[i - 1], &runs[i]) <= sw_strip_run_distance (&runs[i], &runs[i + 1]) ? i - 1 : i;
}

static gsize
join_alike (SwStripRun *runs, gsize n)
{
  while (n > 1)
    {
      gsize best = 0;
      double least = INFINITY;

      for (gsize i = 0; i + 1 < n; i++)
        {
          const double distance = sw_strip_run_distance (&runs[i], &runs[i + 1]);

          if (distance < least)
            {
              least = distance;
              best = i;
            }
        }
      if (least >= SW_STRIP_SAME)
        break;
      n = join (runs, n, best);
    }
  return n;
}

gsize
sw_strip_runs (const float *l, const float *a, const float *b, gsize n, SwStripRun *runs)
{
  const double least = LEAST_SHARE * (double) n;

  g_return_val_if_fail (n >= 1 && n <= SW_STRIP_MAX_PLACES, 0);
  for (gsize i = 0; i < n; i++)
    runs[i] = (SwStripRun){ i, i + 1, l[i], a[i], b[i] };
  n = join_alike (runs, n);
  for (gsize i = 0; n > 1 && i < n;)
    if ((double) (runs[i].to - runs[i].from) < least)
      {
        n = join (runs, n, nearest_pair (runs, n, i));
        i = 0;
      }
    else
      i++;
  return join_alike (runs, n);
}
