/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-usual-widths.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Finished widths, cm, and the multiple of stitches: common practice, no source. */
typedef struct
{
  const char *label;
  SwWorked worked;
  double sizes_cm[SW_USUAL_SIZES];
  gsize multiple;
} Piece;

static const Piece pieces[SW_N_USUAL] = {
  /* Translators: pieces of knitting, below a bracket on a narrow chart: keep them short */
  { NC_ ("knitting", "sock"), SW_WORKED_ROUND, { 18.5, 20, 21.5, 24 }, 4 },
  { NC_ ("knitting", "hat"), SW_WORKED_ROUND, { 40, 44, 48, 56 }, 8 },
  { NC_ ("knitting", "cowl"), SW_WORKED_ROUND, { 62, 66, 70 }, 8 },
  { NC_ ("knitting", "jumper"), SW_WORKED_ROUND, { 84, 92, 102, 112 }, 4 },
  { NC_ ("knitting", "scarf"), SW_WORKED_FLAT, { 18, 22, 26, 30 }, 2 },
  { NC_ ("knitting", "wrap, back"), SW_WORKED_FLAT, { 42, 46, 51, 56 }, 2 },
  { NC_ ("knitting", "blanket"), SW_WORKED_FLAT, { 76, 90, 102 }, 2 },
};

static void
size_up (const Piece *piece, double stitches_per_10cm, SwUsualWidths *usual)
{
  *usual = (SwUsualWidths){ .label = piece->label, .worked = piece->worked };
  for (gsize i = 0; i < SW_USUAL_SIZES && piece->sizes_cm[i] > 0; i++)
    {
      const double stitches = piece->sizes_cm[i] * stitches_per_10cm / 10;
      const gsize width = (gsize) MAX (lround (stitches / (double) piece->multiple), 1) * piece->multiple;

      if (usual->n == 0 || usual->widths[usual->n - 1] != width)
        usual->widths[usual->n++] = width;
    }
}

void
sw_usual_widths (double stitches_per_10cm, SwUsualWidths *usual)
{
  for (gsize i = 0; i < SW_N_USUAL; i++)
    size_up (&pieces[i], stitches_per_10cm, &usual[i]);
}

const char *
sw_usual_piece (double stitches_per_10cm, SwWorked worked, gsize width)
{
  SwUsualWidths usual[SW_N_USUAL];

  sw_usual_widths (stitches_per_10cm, usual);
  for (gsize i = 0; i < SW_N_USUAL; i++)
    for (gsize j = 0; j < usual[i].n; j++)
      if (usual[i].worked == worked && usual[i].widths[j] == width)
        return g_dpgettext2 (NULL, "knitting", usual[i].label);
  return NULL;
}
