/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "colour/sw-colour-name.h"

#include <math.h>

/* How far from a colour another name for it is looked for, CIELAB units. */
#define FARTHEST 40

/* The first of the names before @n that is @name; -1: none is. */
static int
find (const GPtrArray *names, const char *name)
{
  for (guint i = 0; i < names->len; i++)
    if (g_str_equal (names->pdata[i], name))
      return (int) i;
  return -1;
}

/* The first free name on the way from @lab in the direction of @way. */
static char *
name_towards (SwLab lab, SwLab way, const GPtrArray *names)
{
  const double length = sqrt (way.l * way.l + way.a * way.a + way.b * way.b);

  for (int step = 1; length > 0 && step <= FARTHEST; step++)
    {
      const double by = step / length;
      g_autofree char *name = sw_colour_name ((SwLab){ lab.l + way.l * by, lab.a + way.a * by, lab.b + way.b * by });

      if (find (names, name) < 0)
        return g_steal_pointer (&name);
    }
  return NULL;
}

/* Going on from a namesake over the colour and beyond: of the paler of two, a paler name. Where nothing lies beyond, by lightness alone, then greyer, then by hue, to both sides. */
static char *
name_beyond (SwLab namesake, SwLab lab, const GPtrArray *names)
{
  const double up = lab.l >= namesake.l ? 1 : -1;
  const SwLab ways[] = {
    { lab.l - namesake.l, lab.a - namesake.a, lab.b - namesake.b },
    { up, 0, 0 },
    { 0, -lab.a, -lab.b },
    { -up, 0, 0 },
    { 0, -lab.b, lab.a },
    { 0, lab.b, -lab.a },
  };
  char *name = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (ways) && name == NULL; i++)
    name = name_towards (lab, ways[i], names);
  return name;
}

char **
sw_colour_names (const SwLab *colours, gsize n)
{
  GPtrArray *names = g_ptr_array_new ();

  for (gsize i = 0; i < n; i++)
    {
      char *name = sw_colour_name (colours[i]);
      const int namesake = find (names, name);
      char *other = namesake >= 0 ? name_beyond (colours[namesake], colours[i], names) : NULL;

      g_ptr_array_add (names, other != NULL ? other : name);
      if (other != NULL)
        g_free (name);
    }
  g_ptr_array_add (names, NULL);
  return (char **) g_ptr_array_free (names, FALSE);
}
