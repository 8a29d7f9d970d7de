/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-leg-mark.h"
#include "bath/sw-speck.h"

#include "tests/bath/bath-checks.h"

static const SwSpeckZone zone = { 20.0, 5.0, 30.0, 8.0, 20.0, 40.0, 2.0, 0.35, 0.05, 12345 };

/* A hot acid bath with the yarn just covered: rest, then set. */
static const SwSpan day[] = { { 10.0, 0.2, 0.15, 0.05 }, { 30.0, 0.4, 0.15, 0.05 } };

static SwSpeck *
scatter (const SwSpeckZone *of, gsize *n)
{
  SwSpeck *specks;

  *n = sw_speck_count (of);
  specks = g_new (SwSpeck, *n);
  sw_speck_scatter (of, specks);
  return specks;
}

static void
test_scatter (void)
{
  gsize n;
  g_autofree SwSpeck *specks = scatter (&zone, &n);
  double grams = 0.0, logs = 0.0, squares = 0.0, c = cos (20.0 * G_PI / 180.0), s = sin (20.0 * G_PI / 180.0);

  g_assert_cmpuint (n, ==, 96); /* 40 on 100 cm2, 240 cm2 */
  for (gsize i = 0; i < n; i++)
    {
      double dx = specks[i].x - 20.0, dy = specks[i].y - 5.0, deviation = log (specks[i].radius / 0.1);

      g_assert_cmpfloat (fabs (dx * c + dy * s), <=, 15.0 + 1e-5);
      g_assert_cmpfloat (fabs (dy * c - dx * s), <=, 4.0 + 1e-5);
      /* By volume. */
      assert_near (specks[i].grams / specks[0].grams, pow (specks[i].radius / specks[0].radius, 3.0), 1e-4);
      grams += specks[i].grams;
      logs += deviation;
      squares += deviation * deviation;
    }
  assert_near (grams, zone.grams, 1e-7);
  /* Three standard errors of 96 normal deviates of sd 0.35. */
  assert_near (logs / (double) n, 0.0, 3.0 * 0.35 / sqrt (96.0));
  assert_near (sqrt (squares / (double) n), 0.35, 3.0 * 0.35 / sqrt (2.0 * 96.0));
}

/* Asking for more adds to those that are there; another seed is another scatter; the same is the same. */
static void
test_address (void)
{
  SwSpeckZone more = zone, other = zone;
  gsize n, n_more, n_other;
  g_autofree SwSpeck *specks = scatter (&zone, &n), *again = scatter (&zone, &n), *many = NULL, *elsewhere = NULL;

  more.per_100_cm2 *= 2.0;
  many = scatter (&more, &n_more);
  other.seed++;
  elsewhere = scatter (&other, &n_other);

  g_assert_cmpuint (n_more, ==, 2 * n);
  g_assert_cmpmem (specks, n * sizeof *specks, again, n * sizeof *again);
  for (gsize i = 0; i < n; i++)
    {
      g_assert_cmpfloat (many[i].x, ==, specks[i].x);
      g_assert_cmpfloat (many[i].y, ==, specks[i].y);
      g_assert_cmpfloat (many[i].radius, ==, specks[i].radius);
      g_assert_cmpfloat (elsewhere[i].x, !=, specks[i].x);
    }
}

/* Even over the zone: chi squared over 8 x 4 fields of 3200 specks, 31 degrees of freedom, one in a thousand at 61.1. */
static void
test_even (void)
{
  SwSpeckZone wide = { 20.0, 5.0, 40.0, 10.0, 0.0, 800.0, 2.0, 0.35, 1.0, 7 };
  gsize n;
  g_autofree SwSpeck *specks = scatter (&wide, &n);
  int fields[32] = { 0 };
  double chi = 0.0;

  for (gsize i = 0; i < n; i++)
    fields[CLAMP ((int) (specks[i].x / 5.0f), 0, 7) * 4 + CLAMP ((int) (specks[i].y / 2.5f), 0, 3)]++;
  for (guint i = 0; i < 32; i++)
    chi += pow (fields[i] - 100.0, 2.0) / 100.0;
  g_test_message ("chi squared %.1f", chi);
  g_assert_cmpfloat (chi, <, 61.1);
}

static void
speck_spans (gboolean dry, SwSpan *spans)
{
  for (guint i = 0; i < G_N_ELEMENTS (day); i++)
    {
      spans[i] = day[i];
      spans[i].spread_xy *= sw_speck_spread (dry);
      spans[i].spread_z *= sw_speck_spread (dry);
    }
}

/* Dye within @radius of the centre, by rings of the table as it is read. */
static double
mark_within (const SwMark *mark, double radius)
{
  int rings = 20000;
  double sum = 0.0;

  for (int i = 0; i < rings; i++)
    {
      double r = (i + 0.5) / rings * radius;

      sum += sw_mark_density (mark, r * r) * 2.0 * G_PI * r * radius / rings;
    }
  return sum;
}

static void
test_mark_integral (void)
{
  const double radii[] = { 0.01, 0.05, 0.1, 0.3, 1.0 };
  SwSpan spans[2];

  for (int dry = 0; dry < 2; dry++)
    for (guint i = 0; i < G_N_ELEMENTS (radii); i++)
      {
        SwMark mark;
        double depth = 0.0;

        speck_spans (dry, spans);
        sw_mark_for (radii[i], spans, 2, 8, 4.0, 0.0, FALSE, &mark);
        assert_near (mark.share, sw_transfer_share (spans, 2), 1e-12);
        assert_near (mark_within (&mark, mark.reach_cm) / mark.share, 1.0, 1e-4);
        g_assert_cmpfloat (sw_mark_density (&mark, mark.reach_cm * mark.reach_cm * 1.0001), ==, 0.0);
        for (int step = 1; step < SW_MARK_STEPS; step++)
          g_assert_cmpfloat (mark.density[step], <=, mark.density[step - 1]);
        for (int iz = 0; iz < 8; iz++)
          depth += mark.depth[iz];
        assert_near (depth, 1.0, 1e-6);
      }
}

/*
 * With one rate for ever the mark is K0 (r / lambda) / (2 pi lambda^2); the dye
 * beyond r is then (r / lambda) K1 (r / lambda) of it all. K1: Abramowitz & Stegun 1964, table 9.8.
 */
static void
test_mark_is_k0 (void)
{
  static const struct
  {
    double x, k1;
  } rows[] = { { 1.0, 0.601907230197 }, { 2.0, 0.139865881817 }, { 3.0, 0.0401564311282 } };
  const SwSpan span = { 1e3, 0.23, 0.009, 0.003 };
  double lambda = sqrt (0.009 / 0.23);
  SwMark mark;

  sw_mark_for (0.001, &span, 1, 8, 4.0, 0.0, FALSE, &mark);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      double within = mark_within (&mark, rows[i].x * lambda);

      g_test_message ("within %g lambda: %.4f, K1 says %.4f", rows[i].x, within, 1.0 - rows[i].x * rows[i].k1);
      assert_near (within, 1.0 - rows[i].x * rows[i].k1, 1e-3);
    }
}

/* A short hot strike without spread is the droplet itself: a Gaussian of half its radius. */
static void
test_mark_is_gaussian (void)
{
  const SwSpan span = { 5.0, 0.5, 0.0, 0.0 };
  SwMark mark;

  sw_mark_for (0.2, &span, 1, 8, 4.0, 1.0, FALSE, &mark);
  for (double r = 0.0; r < 0.25; r += 0.02)
    assert_near (mark_within (&mark, r + 1e-9) / mark.share, 1.0 - exp (-r * r / (2.0 * 0.01)), 1e-3);
  for (int iz = 0; iz < 8; iz++)
    assert_near (mark.depth[iz], 0.125, 1e-6);
}

/*
 * The centre of a grain is a peak far narrower than the mark reaches. Struck at
 * one rate for ever the integral of k e^(-kt) / (2 pi (v + 2 D t)) is
 * k e^x E1 (x) / (4 pi D), x = k v / (2 D). E1 (0.1): Abramowitz & Stegun 1964, table 5.1.
 */
static void
test_mark_centre (void)
{
  const SwSpan span = { 1e3, 0.4, 0.0045, 0.0015 };
  const double e1 = 1.8229239584;
  double variance = 0.1 * 2.0 * span.spread_xy / span.rate;
  SwMark mark;

  sw_mark_for (2.0 * sqrt (variance), &span, 1, 8, 4.0, 0.0, FALSE, &mark);
  assert_near (sw_mark_density (&mark, 0.0) / (span.rate * exp (0.1) * e1 / (4.0 * G_PI * span.spread_xy)), 1.0, 0.01);
}

/* Beyond its extent a mark is nowhere denser; a step nearer it is. */
static void
test_mark_extent (void)
{
  SwSpan spans[2];
  SwMark mark;

  speck_spans (TRUE, spans);
  sw_mark_for (0.05, spans, 2, 8, 4.0, 0.0, FALSE, &mark);
  g_assert_cmpfloat (sw_mark_extent (&mark, 0.0), ==, mark.reach_cm);
  g_assert_cmpfloat (sw_mark_extent (&mark, 2.0 * (double) mark.density[0]), ==, 0.0);
  for (double density = 1e-4; density < 1.0; density *= 3.0)
    {
      double extent = sw_mark_extent (&mark, density), nearer = 0.96 * extent;

      g_assert_cmpfloat (sw_mark_density (&mark, extent * extent), <=, density * (1.0 + 1e-6));
      g_assert_cmpfloat (sw_mark_density (&mark, nearer * nearer), >, density);
    }
}

/*
 * Over a leg of 4 mm: the mean of many readings along it, for marks wider and far
 * narrower than the leg, within a hundredth of the mean right on the speck.
 */
static void
test_leg_mark (void)
{
  const double radii[] = { 0.02, 0.08, 0.3 };
  const double half = 0.2;

  for (guint i = 0; i < G_N_ELEMENTS (radii); i++)
    {
      g_autofree SwLegMark *leg = g_new (SwLegMark, 1);
      double most = 0.0, worst = 0.0;
      SwSpan spans[2];
      SwMark mark;

      speck_spans (TRUE, spans);
      sw_mark_for (radii[i], spans, 2, 8, 4.0, 0.0, FALSE, &mark);
      sw_leg_mark_for (&mark, half, leg);
      for (double dx = -0.7; dx < 0.7; dx += 0.0137)
        for (double dy = -0.5; dy < 0.5; dy += 0.0119)
          {
            double sum = 0.0;

            for (int step = 0; step < 400; step++)
              {
                double x = dx + half * ((step + 0.5) / 200.0 - 1.0);

                sum += sw_mark_density (&mark, x * x + dy * dy) / 400.0;
              }
            most = MAX (most, sum);
            worst = MAX (worst, fabs (sum - (double) sw_leg_mark_mean (leg, (float) dx, (float) dy)));
          }
      g_test_message ("radius %g cm: at most %.4g, worst error %.4g", radii[i], most, worst);
      g_assert_cmpfloat (worst, <, 0.015 * most);
      assert_near ((double) sw_leg_mark_mean (leg, leg->along_cm, 0.0f), 0.0, 1e-9);
      assert_near ((double) sw_leg_mark_mean (leg, 0.0f, 2.0f * leg->across_cm), 0.0, 1e-9);
    }
}

/* Common practice, no source: a squirted speck often shows in a single stitch, some 4 mm of width. */
static void
test_single_stitch (void)
{
  SwSpan spans[2];

  for (int dry = 0; dry < 2; dry++)
    {
      double half_width = 0.0, half_dye = 0.0;
      SwMark mark;

      speck_spans (dry, spans);
      sw_mark_for (0.05, spans, 2, 8, 4.0, 0.0, FALSE, &mark);
      while (sw_mark_density (&mark, half_width * half_width) > 0.5 * mark.density[0])
        half_width += 0.001;
      while (mark_within (&mark, half_dye) < 0.5 * mark.share)
        half_dye += 0.005;
      g_test_message ("%s, 1 mm: half as dense at %.2f mm, half the dye within %.2f mm",
                      dry ? "dry grain" : "droplet", 10.0 * half_width, 10.0 * half_dye);
      g_assert_cmpfloat (half_width, <, 0.2);
      g_assert_cmpfloat (half_dye, <, 0.4);
    }
}

/* Nothing strikes: an empty mark, not a division by nothing. */
static void
test_no_strike (void)
{
  const SwSpan span = { 0.0, 0.2, 0.15, 0.05 };
  SwMark mark;

  sw_mark_for (0.05, &span, 1, 8, 4.0, 0.0, TRUE, &mark);
  g_assert_cmpfloat (mark.share, ==, 0.0);
  g_assert_cmpfloat (sw_mark_density (&mark, 0.0), ==, 0.0);
  sw_mark_for (0.05, NULL, 0, 8, 4.0, 0.0, TRUE, &mark);
  g_assert_cmpfloat (mark.share, ==, 0.0);
}

/* From below: the same mark, its depth mirrored; and most of it stays at the face it fell on. */
static void
test_depth (void)
{
  SwSpan spans[2];
  SwMark above, below;

  speck_spans (FALSE, spans);
  sw_mark_for (0.1, spans, 2, 8, 4.0, 0.0, FALSE, &above);
  sw_mark_for (0.1, spans, 2, 8, 4.0, 0.0, TRUE, &below);
  g_assert_cmpmem (above.density, sizeof above.density, below.density, sizeof below.density);
  for (int iz = 0; iz < 8; iz++)
    assert_near (above.depth[iz], below.depth[7 - iz], 1e-6);
  g_assert_cmpfloat (above.depth[0] + above.depth[1], >, 0.8);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bath/speck/scatter", test_scatter);
  g_test_add_func ("/bath/speck/address", test_address);
  g_test_add_func ("/bath/speck/even", test_even);
  g_test_add_func ("/bath/speck/mark-integral", test_mark_integral);
  g_test_add_func ("/bath/speck/mark-is-k0", test_mark_is_k0);
  g_test_add_func ("/bath/speck/mark-is-gaussian", test_mark_is_gaussian);
  g_test_add_func ("/bath/speck/mark-centre", test_mark_centre);
  g_test_add_func ("/bath/speck/mark-extent", test_mark_extent);
  g_test_add_func ("/bath/speck/leg-mark", test_leg_mark);
  g_test_add_func ("/bath/speck/single-stitch", test_single_stitch);
  g_test_add_func ("/bath/speck/no-strike", test_no_strike);
  g_test_add_func ("/bath/speck/depth", test_depth);
  return g_test_run ();
}
