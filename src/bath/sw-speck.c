/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-speck.h"

#include "sketch/sw-chance.h"

#include <math.h>

#define MOST_SPECKS 200000.0
#define MOST_DEVIATION 2.5 /* sds of ln diameter: no droplet as large as a splotch by chance */

/* Parts of a speck's address. */
enum
{
  ALONG = 1,
  ACROSS,
  SIZE,
};

gsize
sw_speck_count (const SwSpeckZone *zone)
{
  return (gsize) CLAMP (round (zone->per_100_cm2 * zone->width * zone->length / 100.0), 0.0, MOST_SPECKS);
}

static SwSpeck
speck_at (const SwSpeckZone *zone, gsize i)
{
  guint64 address = sw_chance_mix (zone->seed, i);
  double along = (sw_chance_even (sw_chance_mix (address, ALONG)) - 0.5) * zone->width;
  double across = (sw_chance_even (sw_chance_mix (address, ACROSS)) - 0.5) * zone->length;
  double deviation = CLAMP (sw_chance_normal (sw_chance_mix (address, SIZE)), -MOST_DEVIATION, MOST_DEVIATION);
  double angle = zone->angle_deg * G_PI / 180.0;

  return (SwSpeck){
    (float) (zone->x + along * cos (angle) - across * sin (angle)),
    (float) (zone->y + along * sin (angle) + across * cos (angle)),
    (float) (0.05 * zone->median_mm * exp (zone->variation * deviation)),
    0.0f,
  };
}

static double
cube (double x)
{
  return x * x * x;
}

void
sw_speck_scatter (const SwSpeckZone *zone, SwSpeck *specks)
{
  gsize n = sw_speck_count (zone);
  double volume = 0.0;

  for (gsize i = 0; i < n; i++)
    {
      specks[i] = speck_at (zone, i);
      volume += cube (specks[i].radius);
    }

  for (gsize i = 0; i < n; i++)
    specks[i].grams = (float) (zone->grams * cube (specks[i].radius) / volume);
}

double
sw_speck_spread (gboolean dry)
{
  return dry ? 0.03 : 0.06;
}
