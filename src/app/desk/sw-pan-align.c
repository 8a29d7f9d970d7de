/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-pan-align.h"

#include <glib/gi18n-lib.h>

/* @at: which part lines up, 0 the lower side .. 1 the upper */
static const struct
{
  const char *name, *label;
  gboolean across, spread;
  double at;
} aligns[SW_N_ALIGNS] = {
  [SW_ALIGN_LEFT] = { "left", N_ ("Align Left"), FALSE, FALSE, 0 },
  [SW_ALIGN_CENTRE] = { "centre", N_ ("Align Centres"), FALSE, FALSE, 0.5 },
  [SW_ALIGN_RIGHT] = { "right", N_ ("Align Right"), FALSE, FALSE, 1 },
  [SW_ALIGN_TOP] = { "top", N_ ("Align Top"), TRUE, FALSE, 1 },
  [SW_ALIGN_MIDDLE] = { "middle", N_ ("Align Middles"), TRUE, FALSE, 0.5 },
  [SW_ALIGN_BOTTOM] = { "bottom", N_ ("Align Bottom"), TRUE, FALSE, 0 },
  /* Translators: the same gap from each pour to the next along the skein */
  [SW_ALIGN_SPREAD_ALONG] = { "spread-along", N_ ("Even Gaps Along"), FALSE, TRUE, 0 },
  [SW_ALIGN_SPREAD_ACROSS] = { "spread-across", N_ ("Even Gaps Across"), TRUE, TRUE, 0 },
};

const char *
sw_align_name (SwAlign align)
{
  g_return_val_if_fail (align < SW_N_ALIGNS, NULL);
  return aligns[align].name;
}

const char *
sw_align_label (SwAlign align)
{
  g_return_val_if_fail (align < SW_N_ALIGNS, NULL);
  return _ (aligns[align].label);
}

SwAlign
sw_align_from_name (const char *name)
{
  SwAlign align = 0;

  while (align < SW_N_ALIGNS && g_strcmp0 (aligns[align].name, name) != 0)
    align++;
  return align;
}

gsize
sw_align_least (SwAlign align)
{
  g_return_val_if_fail (align < SW_N_ALIGNS, 0);
  return aligns[align].spread ? 3 : 1;
}

typedef struct
{
  double low, high;
} Span;

static Span
span_of (const SwSketch *sketch, const SwPourPlace *place, gboolean across)
{
  const SwExtent extent = sw_pour_extent (sketch, place);

  return across ? (Span){ extent.y0, extent.y1 } : (Span){ extent.x0, extent.x1 };
}

static void
shift (SwPourPlace *place, gboolean across, double by)
{
  sw_pour_place_move (place, across ? 0 : by, across ? by : 0);
  sw_pour_place_tidy (place);
}

static Span
common_span (const SwSketch *sketch, const SwPourPlace *places, gsize n, gboolean across)
{
  Span all = span_of (sketch, &places[0], across);

  if (n == 1)
    return (Span){ 0, across ? sw_sketch_lay_width (sketch) : sw_sketch_lay_length (sketch) };
  for (gsize i = 1; i < n; i++)
    {
      const Span span = span_of (sketch, &places[i], across);

      all = (Span){ MIN (all.low, span.low), MAX (all.high, span.high) };
    }
  return all;
}

typedef struct
{
  gsize index;
  Span span;
} Ranked;

static int
compare_ranked (gconstpointer a, gconstpointer b)
{
  const Ranked *one = a, *other = b;
  const double by = one->span.low + one->span.high - other->span.low - other->span.high;

  if (by < 0 || by > 0)
    return by < 0 ? -1 : 1;
  return one->index < other->index ? -1 : 1;
}

/* The first and the last stay where they are; the gaps between share what is left, which may be less than nothing. */
static void
spread (const SwSketch *sketch, SwPourPlace *places, gsize n, gboolean across)
{
  g_autofree Ranked *ranked = g_new (Ranked, n);
  double taken = 0, gap, at;

  for (gsize i = 0; i < n; i++)
    {
      ranked[i] = (Ranked){ i, span_of (sketch, &places[i], across) };
      taken += ranked[i].span.high - ranked[i].span.low;
    }
  qsort (ranked, n, sizeof (Ranked), compare_ranked);
  gap = (ranked[n - 1].span.high - ranked[0].span.low - taken) / (double) (n - 1);
  at = ranked[0].span.low;
  for (gsize i = 0; i < n; i++)
    {
      shift (&places[ranked[i].index], across, at - ranked[i].span.low);
      at += ranked[i].span.high - ranked[i].span.low + gap;
    }
}

void
sw_pan_align (const SwSketch *sketch, SwAlign align, SwPourPlace *places, gsize n)
{
  Span all;

  g_return_if_fail (align < SW_N_ALIGNS);
  g_return_if_fail (n >= sw_align_least (align));

  if (aligns[align].spread)
    {
      spread (sketch, places, n, aligns[align].across);
      return;
    }
  all = common_span (sketch, places, n, aligns[align].across);
  for (gsize i = 0; i < n; i++)
    {
      const Span span = span_of (sketch, &places[i], aligns[align].across);
      const double room = (all.high - all.low) - (span.high - span.low);

      shift (&places[i], aligns[align].across, all.low + aligns[align].at * room - span.low);
    }
}
