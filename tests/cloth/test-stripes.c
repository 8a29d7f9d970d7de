/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cloth/sw-stripes.h"

#include <math.h>

typedef struct
{
  float lab[3];
} Shade;

static const Shade madder = { { 45, 55, 35 } };
static const Shade indigo = { { 30, 5, -35 } };
static const Shade weld = { { 82, -5, 70 } };
static const Shade undyed = { { 90, 0, 8 } };

#define MAX_STITCHES 40000

/* A strand that is laid colour by colour. */
typedef struct
{
  float l[MAX_STITCHES], a[MAX_STITCHES], b[MAX_STITCHES];
  gsize n;
  SwStripe stripes[SW_MAX_STRIPES];
  gsize n_stripes;
  double mean_run;
} Strand;

static void
lay_stitch (Strand *strand, Shade shade)
{
  g_assert_cmpuint (strand->n, <, MAX_STITCHES);
  strand->l[strand->n] = shade.lab[0];
  strand->a[strand->n] = shade.lab[1];
  strand->b[strand->n] = shade.lab[2];
  strand->n++;
}

static void
lay (Strand *strand, Shade shade, gsize stitches)
{
  for (gsize i = 0; i < stitches; i++)
    lay_stitch (strand, shade);
}

static Shade
between (Shade from, Shade to, double part)
{
  Shade shade;

  for (int i = 0; i < 3; i++)
    shade.lab[i] = from.lab[i] + (float) part * (to.lab[i] - from.lab[i]);

  return shade;
}

/* Segments, and checks what holds of any strand. */
static void
measure (Strand *strand)
{
  double shares = 0, stitches = 0;

  strand->n_stripes = sw_stripes (strand->l, strand->a, strand->b, strand->n, strand->stripes, &strand->mean_run);
  g_assert_cmpuint (strand->n_stripes, >=, 1);
  g_assert_cmpuint (strand->n_stripes, <=, SW_MAX_STRIPES);
  for (gsize i = 0; i < strand->n_stripes; i++)
    {
      const SwStripe *stripe = &strand->stripes[i];

      g_assert_cmpuint (stripe->runs, >=, 1);
      g_assert_cmpfloat_with_epsilon (stripe->mean_stitches * (double) stripe->runs, stripe->share * (double) strand->n, 1e-6 * (double) strand->n);
      if (i > 0)
        g_assert_cmpfloat (stripe->share, <=, strand->stripes[i - 1].share);
      shares += stripe->share;
      stitches += stripe->mean_stitches * (double) stripe->runs;
    }
  g_assert_cmpfloat_with_epsilon (shares, 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (stitches, (double) strand->n, 1e-6);
  g_assert_cmpfloat (strand->mean_run, >=, 1);
  g_assert_cmpfloat (strand->mean_run, <=, (double) strand->n + 1e-9);
}

static const SwStripe *
stripe_of (const Strand *strand, Shade shade, double within)
{
  for (gsize i = 0; i < strand->n_stripes; i++)
    {
      const SwStripe *stripe = &strand->stripes[i];
      double l = (double) (stripe->l - shade.lab[0]), a = (double) (stripe->a - shade.lab[1]), b = (double) (stripe->b - shade.lab[2]);

      if (sqrt (l * l + a * a + b * b) <= within)
        return stripe;
    }

  g_error ("no stripe with Lab %g, %g, %g", (double) shade.lab[0], (double) shade.lab[1], (double) shade.lab[2]);
}

/* Runs of known length are found to the stitch, with their colours. */
static void
test_known_runs (void)
{
  g_autofree Strand *strand = g_new0 (Strand, 1);

  for (int i = 0; i < 100; i++)
    {
      lay (strand, madder, 20);
      lay (strand, indigo, 35);
      lay (strand, madder, 10);
      lay (strand, weld, 5);
    }
  measure (strand);

  g_assert_cmpuint (strand->n_stripes, ==, 3);
  g_assert_cmpfloat_with_epsilon (stripe_of (strand, madder, 0.01)->mean_stitches, 15, 1e-9);
  g_assert_cmpuint (stripe_of (strand, madder, 0.01)->runs, ==, 200);
  g_assert_cmpfloat_with_epsilon (stripe_of (strand, indigo, 0.01)->mean_stitches, 35, 1e-9);
  g_assert_cmpfloat_with_epsilon (stripe_of (strand, weld, 0.01)->mean_stitches, 5, 1e-9);
  g_assert_cmpfloat_with_epsilon (stripe_of (strand, weld, 0.01)->share, 5 / 70.0, 1e-9);
  /* A stitch in a run of 35 counts 35: (20^2 + 35^2 + 10^2 + 5^2) / 70 */
  g_assert_cmpfloat_with_epsilon (strand->mean_run, 25, 1e-6);
}

/* Unevenness within a run, up to 3 units of sd in each of L, a and b, neither breaks it nor makes new colours. */
static void
test_noise (void)
{
  g_autofree Strand *strand = g_new0 (Strand, 1);

  for (int i = 0; i < 200; i++)
    {
      lay (strand, undyed, 40);
      lay (strand, madder, 60);
    }
  for (gsize i = 0; i < strand->n; i++)
    {
      float *lab[] = { strand->l, strand->a, strand->b };

      for (int c = 0; c < 3; c++)
        lab[c][i] += (float) (g_test_rand_double_range (-3, 3) + g_test_rand_double_range (-3, 3) + g_test_rand_double_range (-3, 3));
    }
  measure (strand);

  g_assert_cmpfloat_with_epsilon (stripe_of (strand, undyed, 2)->mean_stitches, 40, 2);
  g_assert_cmpfloat_with_epsilon (stripe_of (strand, madder, 2)->mean_stitches, 60, 2);
  g_assert_cmpfloat (stripe_of (strand, undyed, 2)->share + stripe_of (strand, madder, 2)->share, >, 0.98);
}

/* Specks of one stitch or two leave the run and its colour as they were. */
static void
test_specks (void)
{
  g_autofree Strand *strand = g_new0 (Strand, 1);

  for (int i = 0; i < 100; i++)
    {
      lay (strand, undyed, 50);
      lay (strand, weld, 30);
    }
  for (gsize i = 5; i + 1 < strand->n; i += 11)
    {
      for (gsize k = 0; k <= i % 2; k++)
        {
          gsize at = i + k;

          /* not at the edge of a run, where it would only move the edge */
          if (at % 80 > 3 && at % 80 != 49 && at % 80 != 50 && at % 80 < 76 && (at % 80 < 46 || at % 80 > 53))
            {
              strand->l[at] = indigo.lab[0];
              strand->a[at] = indigo.lab[1];
              strand->b[at] = indigo.lab[2];
            }
        }
    }
  measure (strand);

  g_assert_cmpuint (strand->n_stripes, ==, 2);
  g_assert_cmpfloat_with_epsilon (stripe_of (strand, undyed, 0.01)->mean_stitches, 50, 1e-9);
  g_assert_cmpfloat_with_epsilon (stripe_of (strand, weld, 0.01)->mean_stitches, 30, 1e-9);
}

/* A blurred edge belongs to the colours beside it. */
static void
test_blurred_edges (void)
{
  g_autofree Strand *strand = g_new0 (Strand, 1);

  for (int i = 0; i < 100; i++)
    {
      lay (strand, undyed, 30);
      for (int k = 1; k <= 4; k++)
        lay_stitch (strand, between (undyed, madder, k / 5.0));
      lay (strand, madder, 30);
      for (int k = 1; k <= 4; k++)
        lay_stitch (strand, between (madder, undyed, k / 5.0));
    }
  lay (strand, undyed, 32);
  measure (strand);

  g_assert_cmpfloat_with_epsilon (stripe_of (strand, undyed, 4)->mean_stitches, 34, 1.01);
  g_assert_cmpfloat_with_epsilon (stripe_of (strand, madder, 4)->mean_stitches, 34, 1.01);
  g_assert_cmpuint (strand->n_stripes, ==, 2);
}

/* One long gradient is a handful of long runs; a hundred units of distance cannot be less than four spans of twenty and some. */
static void
test_gradient (void)
{
  g_autofree Strand *strand = g_new0 (Strand, 1);
  enum
  {
    N = 36000
  };

  for (int i = 0; i < N; i++)
    lay_stitch (strand, between (undyed, indigo, i / (N - 1.0)));
  measure (strand);

  g_assert_cmpuint (strand->n_stripes, >=, 2);
  g_assert_cmpuint (strand->n_stripes, <=, 8);
  for (gsize i = 0; i < strand->n_stripes; i++)
    g_assert_cmpuint (strand->stripes[i].runs, ==, 1);
  g_assert_cmpfloat (strand->mean_run, >, N / 8.0);
}

/* Nothing but noise: no run to speak of, and never more stripes than there is room for. */
static void
test_mottled (void)
{
  g_autofree Strand *strand = g_new0 (Strand, 1);

  for (int i = 0; i < MAX_STITCHES; i++)
    lay_stitch (strand, (Shade){ { (float) g_test_rand_double_range (0, 100), (float) g_test_rand_double_range (-80, 80), (float) g_test_rand_double_range (-80, 80) } });
  measure (strand);

  g_assert_cmpfloat (strand->mean_run, <, 12);
}

static void
test_plain_and_short (void)
{
  g_autofree Strand *strand = g_new0 (Strand, 1);
  double mean_run = -1;

  g_assert_cmpuint (sw_stripes (NULL, NULL, NULL, 0, strand->stripes, &mean_run), ==, 0);
  g_assert_cmpfloat (mean_run, ==, 0);

  lay (strand, weld, 1);
  measure (strand);
  g_assert_cmpfloat (strand->mean_run, ==, 1);

  lay (strand, weld, 999);
  measure (strand);
  g_assert_cmpuint (strand->n_stripes, ==, 1);
  g_assert_cmpfloat (strand->mean_run, ==, 1000);
  g_assert_cmpfloat (strand->stripes[0].l, ==, weld.lab[0]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cloth/stripes/known-runs", test_known_runs);
  g_test_add_func ("/cloth/stripes/noise", test_noise);
  g_test_add_func ("/cloth/stripes/specks", test_specks);
  g_test_add_func ("/cloth/stripes/blurred-edges", test_blurred_edges);
  g_test_add_func ("/cloth/stripes/gradient", test_gradient);
  g_test_add_func ("/cloth/stripes/mottled", test_mottled);
  g_test_add_func ("/cloth/stripes/plain-and-short", test_plain_and_short);
  return g_test_run ();
}
