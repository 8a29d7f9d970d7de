/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-main-colours.h"

#include <math.h>
#include <stdlib.h>

#define CELL 2.5 /* side of the boxes in which colours are counted, CIELAB units */
#define SIDE 100 /* boxes along each axis */
#define MOST_LEGS 16000 /* looked at: every so many */

/* The fixed places that colours are gathered from, so far apart, and how wide each looks round itself, CIELAB units. */
#define LATTICE 10.0
#define NODES 51 /* along each axis */
#define WIDE 6.0
#define CLIMBS 3

#define FAR 60.0 /* farther is not odder */
#define ROUNDS 8
#define CANDIDATES 400
#define MOST_GROUPS 12 /* to begin with */

/* Shares of the strand below which a colour is left out: as a rule, as the passage between two others, and an accent, which is one at least so far (CIEDE2000) from every other. */
#define LEAST_SHARE 0.025
#define LEAST_PASSAGE 0.10
#define LEAST_ACCENT 0.003
#define ACCENT 20.0
#define FEW 0.05
#define BESIDE 0.32 /* so far beside the line between two colours, in its length, is no passage: dyes that thin out keep more of their hue than half of each */

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

/* What the box at @lab adds to a place looking round itself. */
static double
seen_from (SwLab place, SwLab lab, double wide)
{
  const double d = distance (place, lab);

  return d > 9 * wide * wide ? 0 : exp (-d / (2 * wide * wide));
}

/* Moves a place up to where there is more of the strand: mean shift, Fukunaga and Hostetler 1975. Returns: how much it sees there */
static double
climb (const GArray *boxes, double wide, SwLab *place)
{
  double sum = 0;

  for (int round = 0; round <= CLIMBS; round++)
    {
      SwLab mean = { 0, 0, 0 };

      sum = 0;
      for (guint i = 0; i < boxes->len; i++)
        {
          const Group *box = &g_array_index (boxes, Group, i);
          const double part = box->n * seen_from (*place, box->lab, wide);

          sum += part;
          mean.l += part * box->lab.l;
          mean.a += part * box->lab.a;
          mean.b += part * box->lab.b;
        }
      if (!(sum > 0) || round == CLIMBS)
        break;
      *place = (SwLab){ mean.l / sum, mean.a / sum, mean.b / sum };
    }
  return sum;
}

/* Marks the places of the lattice nearest to each box. */
static void
mark_nodes (const GArray *boxes, double lattice, guint8 *near)
{
  for (guint i = 0; i < boxes->len; i++)
    {
      const SwLab *lab = &g_array_index (boxes, Group, i).lab;
      const int l = (int) lround (lab->l / lattice), a = (int) lround (lab->a / lattice) + NODES / 2, b = (int) lround (lab->b / lattice) + NODES / 2;

      near[(CLAMP (l, 0, NODES - 1) * NODES + CLAMP (a, 0, NODES - 1)) * NODES + CLAMP (b, 0, NODES - 1)] = 1;
    }
}

/*
 * The same places whatever the strand, so that a little dye more or less moves
 * a colour a little, instead of making another the first to be found.
 * Returns: (element-type Group)
 */
static GArray *
find_candidates (const GArray *boxes, double fine)
{
  const double lattice = fine * LATTICE;
  g_autofree guint8 *near = g_new0 (guint8, NODES *NODES *NODES);
  GArray *candidates = g_array_new (FALSE, FALSE, sizeof (Group));

  mark_nodes (boxes, lattice, near);
  for (int i = 0; i < NODES * NODES * NODES && candidates->len < CANDIDATES; i++)
    if (near[i] != 0)
      {
        Group group = { { i / (NODES * NODES) * lattice, (i / NODES % NODES - NODES / 2) * lattice, (i % NODES - NODES / 2) * lattice }, 0 };

        group.n = climb (boxes, fine * WIDE, &group.lab);
        g_array_append_val (candidates, group);
      }
  return candidates;
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

/* CIEDE2000 to the nearest of the first @n but @own. */
static double
apart (const Group *groups, int n, int own, SwLab lab)
{
  double least = FAR;

  for (int i = 0; i < n; i++)
    if (i != own)
      least = MIN (least, sw_ciede2000 (groups[i].lab, lab));
  return least;
}

/* How far beside the straight line from @a to @b, in its length, where that line passes at all. */
static double
off_line (SwLab a, SwLab b, SwLab lab)
{
  const SwLab way = { b.l - a.l, b.a - a.a, b.b - a.b }, to = { lab.l - a.l, lab.a - a.a, lab.b - a.b };
  const double length = way.l * way.l + way.a * way.a + way.b * way.b;
  const double at = length > 0 ? (to.l * way.l + to.a * way.a + to.b * way.b) / length : 0;

  if (at <= 0.1 || at >= 0.9)
    return 1;
  return sqrt (distance (lab, (SwLab){ a.l + at * way.l, a.a + at * way.a, a.b + at * way.b }) / length);
}

/* 0: on the way between two of the others, as where one dye runs out into another or into bare wool; 1: a colour of its own. */
static double
own_colour (const Group *groups, int n, int own, SwLab lab)
{
  double least = BESIDE;

  for (int i = 0; i < n; i++)
    for (int j = 0; j < i; j++)
      if (i != own && j != own)
        least = MIN (least, off_line (groups[i].lab, groups[j].lab, lab));
  return least / BESIDE;
}

/* The share that a colour must have to be told of. */
static double
least_share (double off, double own)
{
  const double least = off < ACCENT ? LEAST_SHARE : LEAST_ACCENT;

  return own * least + (1 - own) * MAX (least, LEAST_PASSAGE);
}

/* How much the eye makes of a candidate: much of it, unlike those before, and not the passage between two of them. @off: CIEDE2000 from the nearest of those; 0: not at all */
static double
matter_of (const Group *candidate, const Group *groups, int n, double off, double all, double fine)
{
  const double own = own_colour (groups, n, -1, candidate->lab), share = candidate->n / all;

  if (n > 0 && (off < fine * SW_COLOURS_APART || share < 0.5 * least_share (off, own)))
    return 0;
  return share * off * off * off * off * (0.2 + 0.8 * own);
}

/* Those that matter most, one after the other. Returns: how many */
static int
choose (const GArray *candidates, Group *groups, double all, double fine)
{
  g_autofree double *off = g_new (double, candidates->len);
  int n = 0;

  for (guint i = 0; i < candidates->len; i++)
    off[i] = FAR;
  while (n < MOST_GROUPS)
    {
      double most = 0;
      const Group *best = NULL;

      for (guint i = 0; i < candidates->len; i++)
        {
          const Group *candidate = &g_array_index (candidates, Group, i);
          const double matter = matter_of (candidate, groups, n, off[i], all, fine);

          if (matter > most)
            {
              most = matter;
              best = candidate;
            }
        }
      if (best == NULL)
        break;
      groups[n++] = *best;
      for (guint i = 0; i < candidates->len; i++)
        off[i] = MIN (off[i], sw_ciede2000 (best->lab, g_array_index (candidates, Group, i).lab));
    }
  return n;
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

static void
sort_into (const GArray *boxes, Group *groups, int n)
{
  for (int k = 0; k < n; k++)
    groups[k].n = 0;
  for (guint i = 0; i < boxes->len; i++)
    {
      const Group *box = &g_array_index (boxes, Group, i);

      groups[nearest (groups, n, box->lab)].n += box->n;
    }
}

/*
 * Moves the groups' colours to what is most their own. A group has passages to
 * the others in it, so that its plain mean is paler than what the eye sees:
 * specks on a light ground came out nearly as light as the ground. So each
 * place counts by the cube of its distance from the other groups, or where there
 * are few of it by the fourth power, and less the farther it is from where the
 * group is now.
 */
static void
settle (const GArray *boxes, Group *groups, int n, double wide, double few)
{
  Group moved[MOST_GROUPS] = { 0 };

  for (guint i = 0; i < boxes->len; i++)
    {
      Group box = g_array_index (boxes, Group, i);
      const int k = nearest (groups, n, box.lab);
      const double off = off_others (groups, n, k, box.lab);

      box.n *= off * (groups[k].n < few ? off : sqrt (off)) * exp (-distance (groups[k].lab, box.lab) / (4 * wide * wide));
      if (box.n > 0)
        join (&moved[k], &box);
    }
  for (int k = 0; k < n; k++)
    if (moved[k].n > 0)
      groups[k].lab = moved[k].lab;
}

/* Under 1: it is not to be told of. Where there are too many: how much would be lost with it, by its share and the square of its difference. */
static double
reach (const Group *groups, int n, int k, double all, double fine)
{
  const double off = apart (groups, n, k, groups[k].lab), share = groups[k].n / all;

  if (n > SW_MOST_COLOURS)
    return share * off * off;
  return MIN (share / least_share (off, own_colour (groups, n, k, groups[k].lab)), off / (fine * SW_COLOURS_APART));
}

/* Drops the one that reaches least, if any. */
static gboolean
drop_one (Group *groups, int *n, double all, double fine)
{
  double least = *n > SW_MOST_COLOURS ? G_MAXDOUBLE : 1;
  int at = -1;

  for (int k = 0; k < *n && *n > 1; k++)
    {
      const double here = reach (groups, *n, k, all, fine);

      if (here < least)
        {
          least = here;
          at = k;
        }
    }
  if (at < 0)
    return FALSE;
  groups[at] = groups[--*n];
  return TRUE;
}

static int
compare_cb (gconstpointer a, gconstpointer b)
{
  const Group *first = a, *second = b;

  return first->n < second->n ? 1 : first->n > second->n ? -1
                                                         : 0;
}

/* @fine: how much smaller a difference counts than usual. Returns: how many groups */
static int
gather (const GArray *boxes, double all, double fine, Group *groups)
{
  g_autoptr (GArray) candidates = find_candidates (boxes, fine);
  int n = choose (candidates, groups, all, fine);

  do
    {
      for (int round = 0; round < ROUNDS; round++)
        settle (boxes, groups, n, fine * WIDE, 0);
      sort_into (boxes, groups, n);
    }
  while (drop_one (groups, &n, all, fine));
  for (int round = 0; round < ROUNDS; round++)
    settle (boxes, groups, n, fine * WIDE, FEW * all);
  qsort (groups, (gsize) n, sizeof *groups, compare_cb);
  return n;
}

int
sw_main_colours (const SwForecast *forecast, SwMainColour *colours)
{
  g_autoptr (GArray) boxes = count (forecast);
  Group groups[MOST_GROUPS];
  double all = 0;
  int n;

  for (guint i = 0; i < boxes->len; i++)
    all += g_array_index (boxes, Group, i).n;
  n = gather (boxes, all, 1, groups);
  if (n == 1)
    n = gather (boxes, all, SW_TONES_APART / SW_COLOURS_APART, groups);
  for (int i = 0; i < n; i++)
    colours[i] = (SwMainColour){ groups[i].lab, groups[i].n / all };
  return n;
}

void
sw_main_colour_percents (const SwMainColour *colours, int n, int *percents)
{
  int left = 100;

  for (int i = 0; i < n; i++)
    {
      percents[i] = MAX ((int) floor (100 * colours[i].share), 1);
      left -= percents[i];
    }
  for (; left != 0 && n > 0; left -= left > 0 ? 1 : -1)
    {
      double most = -INFINITY;
      int best = 0;

      for (int i = 0; i < n; i++)
        {
          const double lacks = 100 * colours[i].share - percents[i], matters = left > 0 ? lacks : -lacks;

          if (matters > most && (left > 0 || percents[i] > 1))
            {
              most = matters;
              best = i;
            }
        }
      percents[best] += left > 0 ? 1 : -1;
    }
}
