/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-main-colours.h"

#include "colour/sw-colour-name.h"

#include <stdlib.h>

#define CELL 6.0   /* side of the boxes in which colours are counted, CIELAB units */
#define SIDE 48    /* boxes along each axis */
#define APART 18.0 /* middles are this far from each other */
#define SEEDS 16
#define ROUNDS 8
#define LEAST_SHARE 0.025
#define MOST_STITCHES 12000 /* looked at: every so many */

typedef struct
{
  double l, a, b;
  double sum_l, sum_a, sum_b, n;
} Group;

static int
box_of (double l, double a, double b)
{
  const int i = CLAMP ((int) (l / CELL), 0, SIDE - 1);
  const int j = CLAMP ((int) (a / CELL + SIDE / 2.0), 0, SIDE - 1), k = CLAMP ((int) (b / CELL + SIDE / 2.0), 0, SIDE - 1);

  return (i * SIDE + j) * SIDE + k;
}

/* Squared. */
static double
distance (const Group *group, double l, double a, double b)
{
  return (group->l - l) * (group->l - l) + (group->a - a) * (group->a - a) + (group->b - b) * (group->b - b);
}

static void
middle_of (int box, Group *group)
{
  *group = (Group){ .l = (box / (SIDE * SIDE) + 0.5) * CELL, .a = (box / SIDE % SIDE + 0.5 - SIDE / 2.0) * CELL, .b = (box % SIDE + 0.5 - SIDE / 2.0) * CELL };
}

/* The fullest boxes that lie apart from those before. */
static int
find_middles (guint *counts, Group *groups)
{
  int n = 0;

  while (n < SEEDS)
    {
      int best = 0;

      for (int i = 1; i < SIDE * SIDE * SIDE; i++)
        if (counts[i] > counts[best])
          best = i;
      if (counts[best] == 0)
        break;
      middle_of (best, &groups[n++]);
      for (int i = 0; i < SIDE * SIDE * SIDE; i++)
        {
          Group box;

          if (counts[i] == 0)
            continue;
          middle_of (i, &box);
          if (distance (&groups[n - 1], box.l, box.a, box.b) < APART * APART)
            counts[i] = 0;
        }
    }
  return n;
}

static void
sort_into (const SwForecast *forecast, gsize step, Group *groups, int n)
{
  for (int i = 0; i < n; i++)
    groups[i].n = groups[i].sum_l = groups[i].sum_a = groups[i].sum_b = 0;
  for (gsize s = 0; s < forecast->n_stitches; s += step)
    {
      const double l = (double) forecast->lab_l[s], a = (double) forecast->lab_a[s], b = (double) forecast->lab_b[s];
      int nearest = 0;

      for (int i = 1; i < n; i++)
        if (distance (&groups[i], l, a, b) < distance (&groups[nearest], l, a, b))
          nearest = i;
      groups[nearest].n++;
      groups[nearest].sum_l += l;
      groups[nearest].sum_a += a;
      groups[nearest].sum_b += b;
    }
  for (int i = 0; i < n; i++)
    if (groups[i].n > 0)
      {
        groups[i].l = groups[i].sum_l / groups[i].n;
        groups[i].a = groups[i].sum_a / groups[i].n;
        groups[i].b = groups[i].sum_b / groups[i].n;
      }
}

static int
compare_cb (gconstpointer a, gconstpointer b)
{
  const Group *first = a, *second = b;

  return first->n < second->n ? 1 : first->n > second->n ? -1
                                                         : 0;
}

/* Two groups that a person would call by one name are one colour. */
static int
join_namesakes (Group *groups, int n)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  int kept = 0;

  for (int i = 0; i < n; i++)
    {
      char *name = sw_colour_name ((SwLab){ groups[i].l, groups[i].a, groups[i].b });
      guint at;

      if (!g_ptr_array_find_with_equal_func (names, name, g_str_equal, &at))
        {
          g_ptr_array_add (names, name);
          groups[kept++] = groups[i];
          continue;
        }
      g_free (name);
      groups[at].l += (groups[i].l - groups[at].l) * groups[i].n / (groups[at].n + groups[i].n);
      groups[at].a += (groups[i].a - groups[at].a) * groups[i].n / (groups[at].n + groups[i].n);
      groups[at].b += (groups[i].b - groups[at].b) * groups[i].n / (groups[at].n + groups[i].n);
      groups[at].n += groups[i].n;
    }
  return kept;
}

int
sw_main_colours (const SwForecast *forecast, SwMainColour *colours)
{
  g_autofree guint *counts = g_new0 (guint, SIDE * SIDE * SIDE);
  const gsize step = forecast->n_stitches / MOST_STITCHES + 1;
  Group groups[SEEDS];
  double all = 0;
  int n, kept = 0;

  for (gsize s = 0; s < forecast->n_stitches; s += step)
    counts[box_of ((double) forecast->lab_l[s], (double) forecast->lab_a[s], (double) forecast->lab_b[s])]++;
  n = find_middles (counts, groups);
  for (int round = 0; round < ROUNDS; round++)
    sort_into (forecast, step, groups, n);
  qsort (groups, (gsize) n, sizeof *groups, compare_cb);
  n = join_namesakes (groups, n);
  qsort (groups, (gsize) n, sizeof *groups, compare_cb);
  while (kept < MIN (n, SW_MOST_COLOURS) && (kept == 0 || groups[kept].n * (double) step >= LEAST_SHARE * (double) forecast->n_stitches))
    kept++;
  for (int i = 0; i < kept; i++)
    all += groups[i].n;
  for (int i = 0; i < kept; i++)
    colours[i] = (SwMainColour){ { groups[i].l, groups[i].a, groups[i].b }, groups[i].n / all };
  return kept;
}
