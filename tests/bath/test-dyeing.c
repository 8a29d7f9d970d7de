/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tests/bath/dye-day.h"

/* A sign on every odd depth mode turns the skein over. */
static void
turn_over (double *modes)
{
  for (gsize i = 0; i < N_CELLS; i++)
    if (i / N_PLANE % 2 == 1)
      modes[i] = -modes[i];
}

/* The same by evolving the liquor forwards, the skein itself turned at each flip and each pour from above. */
static double *
play_turning (const Day *day)
{
  g_autoptr (SwBasis) basis = sw_basis_new (&pan);
  SwBathState states[MOST_STEPS + 1];
  SwSpan spans[MOST_STEPS];
  double *mobile = zeroes (N_CELLS), *struck = zeroes (N_CELLS), *plane = sw_field_new (N_PLANE), depth[8];

  sw_schedule_run (day->sketch, states);
  sw_schedule_spans (day->sketch, states, day->dye, 0, spans);
  for (guint i = 0; i < day->sketch->steps->len; i++)
    {
      const SwStep *step = g_ptr_array_index (day->sketch->steps, i);

      if (step->kind == SW_STEP_FLIP)
        {
          turn_over (mobile);
          turn_over (struck);
        }
      if (sw_step_is_pour (step))
        {
          pour_modes (day, basis, step, FALSE, plane, depth);
          for (gsize j = 0; j < N_CELLS; j++)
            mobile[j] += plane[j % N_PLANE] * depth[j / N_PLANE];
        }
      sw_transfer_evolve (&pan, &spans[i], mobile, struck);
    }
  if (states[day->sketch->steps->len].second_face)
    turn_over (struck);
  sw_basis_inverse (basis, struck, mobile);

  sw_field_free (struck);
  sw_field_free (plane);
  return mobile;
}

static void
assert_same (const double *a, const double *b)
{
  double most = peak (a);

  g_assert_cmpfloat (most, >, 0.0);
  for (gsize i = 0; i < N_CELLS; i++)
    assert_near (a[i] / most, b[i] / most, 1e-9);
}

/* A day with a bit of everything. */
static void
fill_day (Day *day)
{
  SwStep *splotch;

  day_band (day, 20.0, 6.0, 15.0)->worked_in = 0.4;
  day_wait (day, SW_STEP_REST, 5.0, 80.0);
  day_step (day, SW_STEP_FLIP);
  splotch = day_step (day, SW_STEP_SPLOTCH);
  splotch->dye = 1;
  splotch->x_cm = 50.0;
  splotch->angle_deg = 30.0;
  day_step (day, SW_STEP_ACID);
  day_wait (day, SW_STEP_REST, 4.0, 85.0);
  day_step (day, SW_STEP_FLIP);
  day_band (day, 5.0, 3.0, 0.0);
  day_wait (day, SW_STEP_SET, 20.0, 95.0);
  day_step (day, SW_STEP_FLIP);
}

static void
test_flips_are_signs (void)
{
  g_auto (Day) day = day_new ();
  double *here, *turning;

  fill_day (&day);
  here = play (&day);
  turning = play_turning (&day);
  assert_same (here, turning);

  sw_field_free (here);
  sw_field_free (turning);
}

/* Dye struck = dye poured x what the strike rates say, to 1e-9; the two shares of a dye too. */
static void
test_mass (void)
{
  g_auto (Day) day = day_new ();
  SwBathState states[MOST_STEPS + 1];
  SwSpan spans[MOST_STEPS];
  double expected = 0.0, *struck;

  fill_day (&day);
  day.dye->quick_share = 0.4;
  sw_schedule_run (day.sketch, states);
  for (int share = 0; share < 2; share++)
    {
      sw_schedule_spans (day.sketch, states, day.dye, share, spans);
      for (guint i = 0; i < day.sketch->steps->len; i++)
        {
          const SwStep *step = g_ptr_array_index (day.sketch->steps, i);

          if (sw_step_is_pour (step))
            expected += sw_schedule_pour_grams (day.sketch, step) * (share == 1 ? 0.4 : 0.6) * sw_transfer_share (spans + i, day.sketch->steps->len - i);
        }
    }
  struck = play (&day);
  assert_near (total (struck) / expected, 1.0, 1e-9);

  sw_field_free (struck);
}

static void
test_flip_twice (void)
{
  g_auto (Day) plain = day_new ();
  g_auto (Day) flipped = day_new ();
  double *a, *b;

  day_band (&plain, 20.0, 6.0, 0.0);
  day_wait (&plain, SW_STEP_REST, 10.0, 85.0);
  day_band (&plain, 50.0, 6.0, 0.0);
  day_wait (&plain, SW_STEP_SET, 30.0, 95.0);

  day_band (&flipped, 20.0, 6.0, 0.0);
  day_step (&flipped, SW_STEP_FLIP);
  day_wait (&flipped, SW_STEP_REST, 10.0, 85.0);
  day_step (&flipped, SW_STEP_FLIP);
  day_band (&flipped, 50.0, 6.0, 0.0);
  day_wait (&flipped, SW_STEP_SET, 30.0, 95.0);

  a = play (&plain);
  b = play (&flipped);
  g_assert_cmpmem (a, N_CELLS * sizeof (double), b, N_CELLS * sizeof (double));

  sw_field_free (a);
  sw_field_free (b);
}

/* Two pours with no time between them; stock and liquor mix at once, so only the order of rests counts. */
static void
test_order_is_free (void)
{
  g_auto (Day) there = day_new ();
  g_auto (Day) back = day_new ();
  double *a, *b;

  day_band (&there, 20.0, 6.0, 10.0);
  day_band (&there, 50.0, 4.0, -20.0);
  day_wait (&there, SW_STEP_SET, 30.0, 95.0);
  day_band (&back, 50.0, 4.0, -20.0);
  day_band (&back, 20.0, 6.0, 10.0);
  day_wait (&back, SW_STEP_SET, 30.0, 95.0);

  a = play (&there);
  b = play (&back);
  assert_same (a, b);

  sw_field_free (a);
  sw_field_free (b);
}

/* Pours add, and twice the dye is twice the mark: amounts in stock so strong that their water does not count. */
static void
test_pours_add (void)
{
  g_auto (Day) one = day_new ();
  g_auto (Day) other = day_new ();
  g_auto (Day) both = day_new ();
  double *a, *b, *sum;
  Day *days[] = { &one, &other, &both };

  day_band (&one, 20.0, 6.0, 10.0);
  day_band (&other, 24.0, 4.0, -20.0);
  day_band (&both, 20.0, 6.0, 10.0);
  day_band (&both, 24.0, 4.0, -20.0);
  for (guint i = 0; i < G_N_ELEMENTS (days); i++)
    {
      for (guint j = 0; j < days[i]->sketch->steps->len; j++)
        ((SwStep *) g_ptr_array_index (days[i]->sketch->steps, j))->amount_ml = (i == 2 ? 2e-6 : 1e-6);
      day_wait (days[i], SW_STEP_SET, 30.0, 95.0);
    }

  a = play (&one);
  b = play (&other);
  sum = play (&both);
  for (gsize i = 0; i < N_CELLS; i++)
    a[i] = 2.0 * (a[i] + b[i]);
  assert_same (sum, a);

  sw_field_free (a);
  sw_field_free (b);
  sw_field_free (sum);
}

static void
test_mirror (void)
{
  g_auto (Day) left = day_new ();
  g_auto (Day) right = day_new ();
  double most, *a, *b;

  day_band (&left, 20.0, 6.0, 25.0);
  day_wait (&left, SW_STEP_SET, 30.0, 95.0);
  day_band (&right, 75.0 - 20.0, 6.0, -25.0);
  day_wait (&right, SW_STEP_SET, 30.0, 95.0);

  a = play (&left);
  b = play (&right);
  most = peak (a);
  for (gsize i = 0; i < N_CELLS; i++)
    assert_near (a[i] / most, b[i - i % 300 + 299 - i % 300] / most, 1e-9);

  sw_field_free (a);
  sw_field_free (b);
}

/*
 * Nothing rings: the least of the field is no hole of negative dye. The worst
 * case is a sharp edge struck before it has spread over a cell: a fast dye on
 * damp yarn.
 */
static void
test_no_ringing (void)
{
  const double half_times[] = { 3.0, 1.0 }, worked_in[] = { 0.0, 0.3, 1.0 };
  const double angles[] = { 0.0, 20.0, 45.0 };
  double worst = 0.0;

  for (guint i = 0; i < G_N_ELEMENTS (half_times); i++)
    for (guint j = 0; j < G_N_ELEMENTS (worked_in); j++)
      for (guint k = 0; k < G_N_ELEMENTS (angles); k++)
        {
          g_auto (Day) day = day_new ();
          SwStep *band = day_band (&day, 30.0, 4.0, angles[k]), *splotch = day_step (&day, SW_STEP_SPLOTCH);
          double most, *struck;

          day.dye->half_time_min = half_times[i];
          day.sketch->bath.water_ml = 120.0;
          day.sketch->bath.acid_ml = 6.0;
          splotch->dye = 1;
          splotch->x_cm = 60.0;
          splotch->width_cm = splotch->length_cm = 1.0;
          band->amount_ml = splotch->amount_ml = 1.0;
          band->length_cm = 3.0;
          band->worked_in = splotch->worked_in = worked_in[j];
          day_wait (&day, SW_STEP_REST, 10.0, 90.0);
          day_wait (&day, SW_STEP_SET, 30.0, 95.0);
          struck = play (&day);
          most = peak (struck);
          for (gsize l = 0; l < N_CELLS; l++)
            worst = MIN (worst, struck[l] / most);
          sw_field_free (struck);
        }

  g_test_message ("most negative dye: %.3f %% of the peak", 100.0 * worst);
  g_assert_cmpfloat (worst, >, -0.005);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bath/dyeing/flips-are-signs", test_flips_are_signs);
  g_test_add_func ("/bath/dyeing/mass", test_mass);
  g_test_add_func ("/bath/dyeing/flip-twice", test_flip_twice);
  g_test_add_func ("/bath/dyeing/order-is-free", test_order_is_free);
  g_test_add_func ("/bath/dyeing/pours-add", test_pours_add);
  g_test_add_func ("/bath/dyeing/mirror", test_mirror);
  g_test_add_func ("/bath/dyeing/no-ringing", test_no_ringing);
  return g_test_run ();
}
