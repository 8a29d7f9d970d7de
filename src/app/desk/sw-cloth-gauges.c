/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-cloth-gauges.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/*
 * Stitches to 4 in by category: Standard Yarn Weight System. Source: Craft
 * Yarn Council's www.YarnStandards.com. The start is the middle of each,
 * rounded to a half stitch.
 */
const SwGaugeClass sw_gauge_classes[SW_N_GAUGE_CLASSES] = {
  /* Translators: weights of hand-knitting yarn, by the trade's names in your country */
  { N_ ("Lace"), 33, 40, 36 },
  { N_ ("Fingering, sock"), 27, 32, 29 },
  { N_ ("Sport"), 23, 26, 24 },
  /* Translators: double knitting, a weight of yarn */
  { N_ ("DK, light worsted"), 21, 24, 22 },
  { N_ ("Worsted, aran"), 16, 20, 18 },
  { N_ ("Bulky, chunky"), 12, 15, 13.5 },
  { N_ ("Super bulky"), 7, 11, 9 },
  { N_ ("Jumbo"), 0, 6, 5 },
};

int
sw_gauge_class_of (double stitches_per_10cm)
{
  const double per_4_in = stitches_per_10cm * 1.016;
  int nearest = -1;

  if (per_4_in > sw_gauge_classes[0].most + 0.5)
    return -1;
  for (int i = 0; i < SW_N_GAUGE_CLASSES; i++)
    {
      const SwGaugeClass *class = &sw_gauge_classes[i];

      if (nearest < 0 || fabs (class->stitches_per_10cm - stitches_per_10cm) < fabs (sw_gauge_classes[nearest].stitches_per_10cm - stitches_per_10cm))
        nearest = i;
    }
  return nearest;
}

static SwEdit *
set_number (const char *member, double number)
{
  const SwValue value = sw_value_number (number);

  return sw_edit_set (SW_RECORD_CLOTH, 0, member, &value);
}

SwEdit *
sw_gauge_class_edit (int index)
{
  SwEdit *edits[3];

  g_return_val_if_fail (index >= 0 && index < SW_N_GAUGE_CLASSES, NULL);

  edits[0] = set_number ("stitches_per_10cm", sw_gauge_classes[index].stitches_per_10cm);
  edits[1] = set_number ("rows_per_10cm", 0);
  edits[2] = set_number ("stitch_length_cm", 0);
  return sw_edit_group (edits, G_N_ELEMENTS (edits));
}
