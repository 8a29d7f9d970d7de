/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tests/bath/dye-day.h"

/* What dyers know of their pans: common practice, no source. */

/* Width of the mark along the skein, as an sd. */
static double
sd_along (const double *cells)
{
  double mean = 0.0, square = 0.0, sum = total (cells);

  for (gsize i = 0; i < N_CELLS; i++)
    {
      double x = ((double) (i % 300) + 0.5) * 0.25;

      mean += cells[i] * x / sum;
      square += cells[i] * x * x / sum;
    }
  return sqrt (square - mean * mean);
}

static double
layer_share (const double *cells, gsize layer)
{
  double sum = 0.0;

  for (gsize i = layer * N_PLANE; i < (layer + 1) * N_PLANE; i++)
    sum += cells[i];
  return sum / total (cells);
}

/* Sd of a 1 cm band's mark after 40 hot minutes; the acid by its strength, since its volume would float the yarn. */
static double
mark_sd (SwFibre fibre, double acid_percent, double half_time, double quick_share)
{
  g_auto (Day) day = day_new ();
  double sd, *struck;

  day.sketch->yarn.fibre = fibre;
  day.sketch->bath.acid_percent = acid_percent;
  day.dye->half_time_min = half_time;
  day.dye->quick_share = quick_share;
  day_band (&day, 37.5, 1.0, 0.0);
  day_wait (&day, SW_STEP_SET, 40.0, 90.0);
  struck = play (&day);
  sd = sd_along (struck);

  sw_field_free (struck);
  return sd;
}

static void
test_marks (void)
{
  double usual = mark_sd (SW_FIBRE_SUPERWASH_WOOL, 5.0, 3.0, 0.0);

  g_test_message ("sd of a 1 cm band: %.2f cm; acid x 4 %.2f; little acid %.2f; untreated %.2f; fast dye %.2f; slow %.2f", usual,
                  mark_sd (SW_FIBRE_SUPERWASH_WOOL, 20.0, 3.0, 0.0), mark_sd (SW_FIBRE_SUPERWASH_WOOL, 1.0, 3.0, 0.0),
                  mark_sd (SW_FIBRE_WOOL, 5.0, 3.0, 0.0), mark_sd (SW_FIBRE_SUPERWASH_WOOL, 5.0, 1.0, 0.0),
                  mark_sd (SW_FIBRE_SUPERWASH_WOOL, 5.0, 8.0, 0.0));
  g_assert_cmpfloat (mark_sd (SW_FIBRE_SUPERWASH_WOOL, 20.0, 3.0, 0.0), <, usual);
  g_assert_cmpfloat (mark_sd (SW_FIBRE_SUPERWASH_WOOL, 1.0, 3.0, 0.0), >, 1.1 * usual);
  g_assert_cmpfloat (mark_sd (SW_FIBRE_WOOL, 5.0, 3.0, 0.0), >, 1.1 * usual);
  g_assert_cmpfloat (mark_sd (SW_FIBRE_SUPERWASH_WOOL, 5.0, 1.0, 0.0), <, 0.9 * usual);
  g_assert_cmpfloat (mark_sd (SW_FIBRE_SUPERWASH_WOOL, 5.0, 3.0, 0.5), <, usual);
}

/* poured from above and not worked in, the underside stays mostly undyed; worked in, it does not. */
static void
test_underside (void)
{
  g_auto (Day) day = day_new ();
  SwStep *band = day_band (&day, 37.5, 10.0, 0.0);
  double *left, *worked;

  day_wait (&day, SW_STEP_REST, 10.0, 90.0);
  day_wait (&day, SW_STEP_SET, 30.0, 95.0);
  left = play (&day);
  g_test_message ("left alone: top layer %.3f, bottom %.3f of the dye", layer_share (left, 0), layer_share (left, 7));
  g_assert_cmpfloat (layer_share (left, 7), <, 0.1 * layer_share (left, 0));
  band->worked_in = 1.0;
  worked = play (&day);
  g_assert_cmpfloat (layer_share (worked, 7), >, 0.95 * layer_share (worked, 0));

  sw_field_free (left);
  sw_field_free (worked);
}

/* after 10 min of hot rest a fast dye is on, of a slow one more than a third still swims; 30 min of set clears. */
static void
test_clearing (void)
{
  g_auto (Day) day = day_new ();
  SwBathState states[3];
  SwSpan spans[2];

  day_wait (&day, SW_STEP_REST, 10.0, 85.0);
  day_wait (&day, SW_STEP_SET, 30.0, 95.0);
  sw_schedule_run (day.sketch, states);
  day.dye->half_time_min = 1.0;
  sw_schedule_spans (day.sketch, states, day.dye, 0, spans);
  g_assert_cmpfloat (sw_transfer_share (spans, 1), >, 0.9);
  day.dye->half_time_min = 8.0;
  sw_schedule_spans (day.sketch, states, day.dye, 0, spans);
  g_assert_cmpfloat (sw_transfer_share (spans, 1), <, 0.65);
  day.dye->half_time_min = 3.0;
  sw_schedule_spans (day.sketch, states, day.dye, 0, spans);
  g_assert_cmpfloat (1.0 - sw_transfer_share (spans, 2), <, 0.02);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bath/practice/marks", test_marks);
  g_test_add_func ("/bath/practice/underside", test_underside);
  g_test_add_func ("/bath/practice/clearing", test_clearing);
  return g_test_run ();
}
