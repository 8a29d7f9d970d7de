/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-main-colours.h"

#include "colour/sw-colour-name.h"

#include <math.h>
#include <stdlib.h>

#define CELL 5.0 /* side of the boxes in which colours are counted, CIELAB units */
#define SIDE 60  /* boxes along each axis */
#define NEAR 9.0 /* what is so near a seed speaks for it, CIELAB units */
#define FAR 60.0 /* farther is not odder */
#define SEEDS 16
#define ROUNDS 3
#define MOST_LEGS 16000 /* looked at: every so many */

/* Shares of the strand below which a colour is left out, and an accent, which is one at least so far (CIEDE2000) from every other. */
#define LEAST_SHARE 0.025
#define LEAST_ACCENT 0.004
#define ACCENT 20.0

/* Legs of stitches of nearly one colour, or a group of such. */
typedef struct
{
  SwLab lab; /* mean */
  double n;
} Group;

static int
box_of (double l, double a, double b)
{
  const int i = CLAMP ((int) (l / CELL), 0, SIDE - 1);
  const int j = CLAMP ((int) floor (a / CELL) + SIDE / 2, 0, SIDE - 1), k = CLAMP ((int) floor (b / CELL) + SIDE / 2, 0, SIDE - 1);

  return (i * SIDE + j) * SIDE + k;
}

/* Plain, squared: only for grouping. */
static double
distance (SwLab a, SwLab b)
{
  return (a.l - b.l) * (a.l - b.l) + (a.a - b.a) * (a.a - b.a) + (a.b - b.b) * (a.b - b.b);
}

static void
join (Group *group, const Group *other)
{
  const double part = other->n / (group->n + other->n);

  group->lab.l += (other->lab.l - group->lab.l) * part;
  group->lab.a += (other->lab.a - group->lab.a) * part;
  group->lab.b += (other->lab.b - group->lab.b) * part;
  group->n += other->n;
}

/* The strand's legs, which are what is seen of a stitch, by the box that they fall into. Returns: (element-type Group) */
static GArray *
count (const SwForecast *forecast)
{
  const gsize step = 2 * forecast->n_stitches / MOST_LEGS + 1;
  g_autofree int *places = g_new0 (int, SIDE *SIDE *SIDE); /* 1 + index */
  GArray *boxes = g_array_new (FALSE, FALSE, sizeof (Group));

  for (gsize s = 0; s < 2 * forecast->n_stitches; s += step)
    {
      const Group leg = { sw_lab_from_xyz ((SwXyz){ (double) forecast->leg_x[s], (double) forecast->leg_y[s], (double) forecast->leg_z[s] }), 1 };
      int *place = &places[box_of (leg.lab.l, leg.lab.a, leg.lab.b)];

      if (*place == 0)
        {
          g_array_append_val (boxes, leg);
          *place = (int) boxes->len;
        }
      else
        join (&g_array_index (boxes, Group, *place - 1), &leg);
    }
  return boxes;
}

/* The box whose neighbourhood is the worst served by the seeds so far: how much is there, times its squared distance from them. */
static guint
worst_served (const GArray *boxes, const double *off)
{
  double most = -1;
  guint worst = 0;

  for (guint i = 0; i < boxes->len; i++)
    {
      double sum = 0;

      for (guint j = 0; j < boxes->len; j++)
        {
          const Group *other = &g_array_index (boxes, Group, j);

          if (distance (g_array_index (boxes, Group, i).lab, other->lab) < NEAR * NEAR)
            sum += other->n * off[j];
        }
      if (sum > most)
        {
          most = sum;
          worst = i;
        }
    }
  return worst;
}

static int
find_seeds (const GArray *boxes, Group *groups)
{
  g_autofree double *off = g_new (double, boxes->len);
  const int n = (int) MIN (boxes->len, SEEDS);

  for (guint i = 0; i < boxes->len; i++)
    off[i] = 1;
  for (int k = 0; k < n; k++)
    {
      groups[k] = g_array_index (boxes, Group, worst_served (boxes, off));
      for (guint i = 0; i < boxes->len; i++)
        off[i] = MIN (k == 0 ? FAR * FAR : off[i], distance (groups[k].lab, g_array_index (boxes, Group, i).lab));
    }
  return n;
}

static int
nearest (const Group *groups, int n, SwLab lab)
{
  int best = 0;

  for (int i = 1; i < n; i++)
    if (distance (groups[i].lab, lab) < distance (groups[best].lab, lab))
      best = i;
  return best;
}

/* The squared distance from the nearest group but its own. */
static double
off_others (const Group *groups, int n, int own, SwLab lab)
{
  double least = FAR * FAR;

  for (int k = 0; k < n; k++)
    if (k != own)
      least = MIN (least, distance (groups[k].lab, lab));
  return least;
}

/* Sorts each box into the nearest group. @of: (out): per box, its group */
static void
sort_into (const GArray *boxes, Group *groups, int n, int *of)
{
  for (int k = 0; k < n; k++)
    groups[k].n = 0;
  for (guint i = 0; i < boxes->len; i++)
    {
      const Group *box = &g_array_index (boxes, Group, i);

      of[i] = nearest (groups, n, box->lab);
      groups[of[i]].n += box->n;
    }
}

/*
 * Moves the groups' colours to what is most their own. A group has passages to
 * the others in it, so that its plain mean is paler than what the eye sees:
 * specks on a light ground came out nearly as light as the ground. Taken is the
 * mean of the neighbourhood that holds the most, each place counted by its
 * squared distance from the other groups.
 */
static void
settle (const GArray *boxes, Group *groups, int n)
{
  g_autofree int *of = g_new (int, boxes->len);
  g_autofree double *off = g_new (double, boxes->len);
  double most[SEEDS] = { 0 };
  Group moved[SEEDS];

  sort_into (boxes, groups, n, of);
  for (guint i = 0; i < boxes->len; i++)
    off[i] = off_others (groups, n, of[i], g_array_index (boxes, Group, i).lab);
  for (guint i = 0; i < boxes->len; i++)
    {
      Group near = { { 0, 0, 0 }, 0 };
      double sum = 0;

      for (guint j = 0; j < boxes->len; j++)
        if (of[j] == of[i] && distance (g_array_index (boxes, Group, i).lab, g_array_index (boxes, Group, j).lab) < NEAR * NEAR)
          {
            join (&near, &g_array_index (boxes, Group, j));
            sum += g_array_index (boxes, Group, j).n * off[j];
          }
      if (sum > most[of[i]])
        {
          most[of[i]] = sum;
          moved[of[i]] = near;
        }
    }
  for (int k = 0; k < n; k++)
    if (most[k] > 0)
      groups[k].lab = moved[k].lab;
}

/* The two that are most alike become one of the greater's colour, until none are alike. */
static int
join_alike (Group *groups, int n)
{
  for (;;)
    {
      double least = SW_COLOURS_APART;
      int from = 0, to = 0;

      for (int i = 0; i < n; i++)
        for (int j = 0; j < i; j++)
          {
            const double off = sw_ciede2000 (groups[i].lab, groups[j].lab);

            if (off < least)
              {
                least = off;
                from = i;
                to = j;
              }
          }
      if (from == to)
        return n;
      if (groups[from].n > groups[to].n)
        groups[to].lab = groups[from].lab;
      groups[to].n += groups[from].n;
      groups[from] = groups[--n];
    }
}

/* CIEDE2000 to the nearest of those kept so far. */
static double
apart (const Group *groups, int kept, const Group *group)
{
  double least = FAR;

  for (int i = 0; i < kept; i++)
    least = MIN (least, sw_ciede2000 (groups[i].lab, group->lab));
  return least;
}

/* Puts those in front that matter most to the eye: much of it, and unlike the ones before. (By the square of the difference, tints and passages went before specks of another hue.) Returns: how many do */
static int
choose (Group *groups, int n, double all)
{
  int kept = 0;

  while (kept < MIN (n, SW_MOST_COLOURS))
    {
      double most = 0;
      int best = -1;
      Group chosen;

      for (int i = kept; i < n; i++)
        {
          const double off = apart (groups, kept, &groups[i]), share = groups[i].n / all;

          if (kept > 0 && share < (off < ACCENT ? LEAST_SHARE : LEAST_ACCENT))
            continue;
          if (share * off * off * off > most)
            {
              most = share * off * off * off;
              best = i;
            }
        }
      if (best < 0)
        break;
      chosen = groups[best];
      groups[best] = groups[kept];
      groups[kept++] = chosen;
    }
  return kept;
}

static int
compare_cb (gconstpointer a, gconstpointer b)
{
  const Group *first = a, *second = b;

  return first->n < second->n ? 1 : first->n > second->n ? -1
                                                         : 0;
}

int
sw_main_colours (const SwForecast *forecast, SwMainColour *colours)
{
  g_autoptr (GArray) boxes = count (forecast);
  Group groups[SEEDS];
  double all = 0;
  int n = find_seeds (boxes, groups);
  g_autofree int *of = g_new (int, boxes->len);

  for (int round = 0; round < ROUNDS; round++)
    settle (boxes, groups, n);
  sort_into (boxes, groups, n, of);
  n = join_alike (groups, n);
  for (int i = 0; i < n; i++)
    all += groups[i].n;
  n = choose (groups, n, all);
  sort_into (boxes, groups, n, of);
  qsort (groups, (gsize) n, sizeof *groups, compare_cb);
  for (int i = 0; i < n; i++)
    colours[i] = (SwMainColour){ groups[i].lab, groups[i].n / all };
  return n;
}

char **
sw_main_colour_names (const SwMainColour *colours, int n)
{
  SwLab labs[SW_MOST_COLOURS];

  for (int i = 0; i < n; i++)
    labs[i] = colours[i].lab;
  return sw_colour_names (labs, (gsize) n);
}
