/* SPDX-License-Identifier: GPL-3.0-or-later */

/*
 * What a dyer waits for in the dye sheet: how alike eight skeins come out, and
 * what every slip does. Prints lines "figure<tab>median<tab>unit".
 */

#include "config.h"

#include "files/sw-colourway.h"
#include "forecast/sw-repeat.h"
#include "sw-bench.h"

#define ROUNDS 5
#define SEEDS 8

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = g_file_new_for_path (argc > 1 ? argv[1] : "");
  g_autoptr (SwSketch) sketch = sw_colourway_load (file, NULL, NULL, &error);
  double repeats[ROUNDS], slips[ROUNDS];
  guint n_slips = 0;

  if (sketch == NULL)
    g_error ("%s", error->message);

  for (gsize i = 0; i < ROUNDS; i++)
    {
      double begin = sw_bench_now_ms ();
      g_autoptr (SwRepeat) repeat = sw_repeat_new (sketch, SEEDS, NULL, &error);
      double between = sw_bench_now_ms ();
      g_autoptr (GArray) effects = sw_slips_new (sketch, NULL, &error);

      if (repeat == NULL || effects == NULL)
        g_error ("%s", error->message);
      repeats[i] = between - begin;
      slips[i] = sw_bench_now_ms () - between;
      n_slips = effects->len;
    }
  g_print ("repeat_%d_skeins\t%.1f\tms\n", SEEDS, sw_bench_median (repeats, ROUNDS));
  g_print ("slips_%u\t%.1f\tms\n", n_slips, sw_bench_median (slips, ROUNDS));
  return 0;
}
