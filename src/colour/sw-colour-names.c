/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "colour/sw-colour-name.h"

#include <math.h>

/* How far from a colour another name for it is looked for, CIELAB units. */
#define FARTHEST 40
#define MUCH_NEARER 0.6

/* Which of the names so far is @name; -1: none is. */
static int
find (char *const *names, gsize n, const char *name)
{
  for (gsize i = 0; i < n; i++)
    if (g_strcmp0 (names[i], name) == 0)
      return (int) i;
  return -1;
}

/* The first free name on the way from @lab in the direction of @way. @steps: (inout): at most so many; how many it took */
static char *
name_towards (SwLab lab, SwLab way, char *const *names, gsize n, int *steps)
{
  const double length = sqrt (way.l * way.l + way.a * way.a + way.b * way.b);

  for (int step = 1; length > 0 && step <= *steps; step++)
    {
      const double by = step / length;
      g_autofree char *name = sw_colour_name ((SwLab){ lab.l + way.l * by, lab.a + way.a * by, lab.b + way.b * by });

      if (find (names, n, name) < 0)
        {
          *steps = step - 1;
          return g_steal_pointer (&name);
        }
    }
  return NULL;
}

/* Going on from a namesake over the colour and beyond: of the paler of two, a paler name. Where another is much nearer by lightness alone or by hue, that. */
static char *
name_beyond (SwLab namesake, SwLab lab, char *const *names, gsize n)
{
  const double up = lab.l >= namesake.l ? 1 : -1;
  const SwLab ways[] = {
    { lab.l - namesake.l, lab.a - namesake.a, lab.b - namesake.b },
    { up, 0, 0 },
    { 0, -lab.a, -lab.b },
    { 0, lab.b, -lab.a },
    { 0, -lab.b, lab.a },
    { -up, 0, 0 },
  };
  int steps = FARTHEST;
  char *name = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      char *nearer = name_towards (lab, ways[i], names, n, &steps);

      if (nearer == NULL)
        continue;
      g_free (name);
      name = nearer;
      steps = (int) (steps * MUCH_NEARER);
    }
  return name;
}

char **
sw_colour_names_with (const SwLab *colours, gsize n, const char *const *given)
{
  char **names = g_new0 (char *, n + 1);

  for (gsize i = 0; i < n; i++)
    names[i] = g_strdup (given[i]);
  for (gsize i = 0; i < n; i++)
    if (names[i] == NULL)
      {
        g_autofree char *name = sw_colour_name (colours[i]);
        const int namesake = find (names, n, name);
        char *other = namesake >= 0 ? name_beyond (colours[namesake], colours[i], names, n) : NULL;

        names[i] = other != NULL ? other : g_steal_pointer (&name);
      }
  return names;
}

char **
sw_colour_names (const SwLab *colours, gsize n)
{
  g_autofree const char **given = g_new0 (const char *, n + 1);

  return sw_colour_names_with (colours, n, given);
}
