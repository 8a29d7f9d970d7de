/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-yarn-weights.h"

#include <glib/gi18n-lib.h>

const SwYarnWeight sw_yarn_weights[] = {
  /* Translators: weights of yarn, from the finest to the thickest, as the trade names them */
  { N_ ("Lace"), 700, 36, 484 },
  { N_ ("Super fine"), 400, 29, 383 },
  { N_ ("Fine"), 300, 24, 242 },
  { N_ ("Light"), 220, 22, 181.5 },
  { N_ ("Medium"), 165, 18, 121 },
  { N_ ("Bulky"), 100, 13.5, 81 },
  { N_ ("Super bulky"), 65, 9, 0 },
};

const gsize sw_n_yarn_weights = G_N_ELEMENTS (sw_yarn_weights);

gsize
sw_yarn_weight_of (double metres_per_100_g)
{
  gsize i = 0;

  while (i + 1 < sw_n_yarn_weights && metres_per_100_g < sw_yarn_weights[i].thickest)
    i++;
  return i;
}

SwEdit *
sw_yarn_weight_edit (gsize weight)
{
  const SwYarnWeight *chosen = &sw_yarn_weights[weight];
  const SwValue put_up = sw_value_number (chosen->metres_per_100_g);
  const SwValue stitches = sw_value_number (chosen->stitches_per_10cm);
  const SwValue worked_out = sw_value_number (0);
  SwEdit *edits[] = {
    sw_edit_set (SW_RECORD_YARN, 0, "metres_per_100_g", &put_up),
    sw_edit_set (SW_RECORD_CLOTH, 0, "stitches_per_10cm", &stitches),
    sw_edit_set (SW_RECORD_CLOTH, 0, "rows_per_10cm", &worked_out),
    sw_edit_set (SW_RECORD_CLOTH, 0, "stitch_length_cm", &worked_out),
  };

  g_return_val_if_fail (weight < sw_n_yarn_weights, NULL);
  return sw_edit_group (edits, G_N_ELEMENTS (edits));
}
