/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cloth/sw-variogram.h"

#include "tests/colour/published-table.h"

#include <math.h>
#include <string.h>

/* The definition, pair by pair. */
static double
direct (const float *l, const float *a, const float *b, gsize n, gsize lag)
{
  double sum = 0;

  for (gsize i = 0; i + lag < n; i++)
    sum += pow ((double) l[i] - (double) l[i + lag], 2) + pow ((double) a[i] - (double) a[i + lag], 2) + pow ((double) b[i] - (double) b[i + lag], 2);

  return sum / (double) (n - lag);
}

static double
variance (const float *x, gsize n)
{
  double mean = 0, sum = 0;

  for (gsize i = 0; i < n; i++)
    mean += (double) x[i] / (double) n;
  for (gsize i = 0; i < n; i++)
    sum += pow ((double) x[i] - mean, 2);

  return sum / (double) n;
}

static float
uneven (double low, double high)
{
  return (float) g_test_rand_double_range (low, high);
}

/* All lags against the direct sum, for lengths that are and are not easy for a transform, on random walks far from zero. */
static void
test_direct_sum (void)
{
  static const struct
  {
    gsize n, n_lags;
  } rows[] = { { 1, 1 }, { 1, 5 }, { 2, 3 }, { 3, 2 }, { 97, 97 }, { 128, 500 }, { 1000, 10 }, { 1009, 700 }, { 4096, 600 }, { 5003, 0 } };
  double worst = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      gsize n = rows[i].n, n_lags = rows[i].n_lags;
      g_autofree float *lab = g_new (float, 3 * n);
      g_autofree double *gamma = g_new (double, n_lags + 1);
      float *l = lab, *a = lab + n, *b = lab + 2 * n;
      double gamma_inf;

      for (gsize k = 0; k < 3 * n; k++)
        lab[k] = k % n == 0 ? uneven (50, 90) : lab[k - 1] + uneven (-5, 5);
      gamma[n_lags] = -1; /* stays */
      gamma_inf = sw_variogram (l, a, b, n, n_lags, gamma);

      g_assert_cmpfloat_with_epsilon (gamma_inf, 2 * (variance (l, n) + variance (a, n) + variance (b, n)), 1e-9 * (1 + gamma_inf));
      for (gsize lag = 0; lag < n_lags; lag++)
        {
          double expected = lag < n ? direct (l, a, b, n, lag) : gamma_inf;
          double error = fabs (gamma[lag] - expected);

          if (!(error <= 1e-9 * gamma_inf))
            g_error ("n %zu, lag %zu: %.15g, pair by pair %.15g", n, lag, gamma[lag], expected);
          worst = MAX (worst, gamma_inf > 0 ? error / gamma_inf : 0);
        }
      g_assert_cmpfloat (gamma[n_lags], ==, -1);
    }

  g_test_message ("largest error %.2g of gamma_inf", worst);
}

/* A change of all colours by the same amount is no change; twice the contrast is four times gamma; back to front is the same. */
static void
test_symmetries (void)
{
  enum
  {
    N = 700,
    LAGS = 300
  };
  float l[N], a[N], b[N], moved[N], doubled[N], mirrored[3][N];
  double gamma[LAGS], other[LAGS];

  for (int i = 0; i < N; i++)
    {
      l[i] = (float) g_test_rand_int_range (0, 100);
      a[i] = (float) g_test_rand_int_range (-60, 60);
      b[i] = 0;
      moved[i] = l[i] + 64;
      doubled[i] = 2 * l[i];
    }
  for (int i = 0; i < N; i++)
    {
      mirrored[0][i] = l[N - 1 - i];
      mirrored[1][i] = a[N - 1 - i];
      mirrored[2][i] = b[N - 1 - i];
    }

  sw_variogram (l, a, b, N, LAGS, gamma);
  sw_variogram (moved, a, b, N, LAGS, other);
  for (int h = 0; h < LAGS; h++)
    g_assert_cmpfloat_with_epsilon (other[h], gamma[h], 1e-8);
  sw_variogram (mirrored[0], mirrored[1], mirrored[2], N, LAGS, other);
  for (int h = 0; h < LAGS; h++)
    g_assert_cmpfloat_with_epsilon (other[h], gamma[h], 1e-8);

  sw_variogram (l, b, b, N, LAGS, gamma);
  sw_variogram (doubled, b, b, N, LAGS, other);
  for (int h = 0; h < LAGS; h++)
    g_assert_cmpfloat_with_epsilon (other[h], 4 * gamma[h], 1e-8);
}

static void
test_plain_strand (void)
{
  enum
  {
    N = 50
  };
  float l[N], none[N] = { 0 };
  double gamma[N];

  for (int i = 0; i < N; i++)
    l[i] = 33.3f;
  g_assert_cmpfloat_with_epsilon (sw_variogram (l, none, none, N, N, gamma), 0, 1e-12);
  for (int h = 0; h < N; h++)
    g_assert_cmpfloat_with_epsilon (gamma[h], 0, 1e-12);
}

/*
 * I. Clark's iron ore grid: the published semivariances (half the mean square)
 * along its rows. The grid has holes, which a strand has not, so three things
 * are compared: a loop over all pairs of the grid with the published figures;
 * that loop with sw_variogram() in the two rows without a hole; and the
 * published figure at lag one with sw_variogram() over the stretches between
 * the holes, which hold every pair at that lag.
 */
enum
{
  CLARK_ROWS = 6,
  CLARK_COLUMNS = 9,
  CLARK_LAGS = 4,
};

static gboolean
read_clark (float grid[CLARK_ROWS][CLARK_COLUMNS], gsize row)
{
  g_auto (PublishedTable) table = published_table_open ("clark_iron_grid.csv");
  gboolean whole = TRUE;

  for (gsize c = 0; c < CLARK_COLUMNS; c++)
    {
      g_autofree char *column = g_strdup_printf ("col%zu", c + 1);
      gboolean hole = *published_table_text (&table, (guint) row, column) == '\0';

      grid[row][c] = hole ? NAN : (float) published_table_number (&table, (guint) row, column);
      whole = whole && !hole;
    }

  return whole;
}

static void
test_clark (void)
{
  g_auto (PublishedTable) published = published_table_open ("clark_semivariogram.csv");
  float grid[CLARK_ROWS][CLARK_COLUMNS], none[CLARK_COLUMNS] = { 0 };
  double sums[CLARK_LAGS + 1] = { 0 }, stretches = 0;
  int pairs[CLARK_LAGS + 1] = { 0 }, whole_rows = 0;

  for (gsize r = 0; r < CLARK_ROWS; r++)
    {
      gboolean whole = read_clark (grid, r);
      double gamma[CLARK_LAGS + 1];
      gsize from = 0;

      for (gsize lag = 1; lag <= CLARK_LAGS; lag++)
        for (gsize c = 0; c + lag < CLARK_COLUMNS; c++)
          if (!isnan (grid[r][c]) && !isnan (grid[r][c + lag]))
            {
              sums[lag] += pow ((double) (grid[r][c] - grid[r][c + lag]), 2);
              pairs[lag]++;
            }

      if (whole)
        {
          sw_variogram (grid[r], none, none, CLARK_COLUMNS, CLARK_LAGS + 1, gamma);
          for (gsize lag = 1; lag <= CLARK_LAGS; lag++)
            g_assert_cmpfloat_with_epsilon (gamma[lag], direct (grid[r], none, none, CLARK_COLUMNS, lag), 1e-9);
          whole_rows++;
        }

      for (gsize c = 0; c <= CLARK_COLUMNS; c++)
        if (c == CLARK_COLUMNS || isnan (grid[r][c]))
          {
            if (c > from + 1)
              {
                sw_variogram (grid[r] + from, none, none, c - from, 2, gamma);
                stretches += gamma[1] * (double) (c - from - 1);
              }
            from = c + 1;
          }
    }

  g_assert_cmpint (whole_rows, ==, 2);
  g_assert_cmpuint (published_table_n_rows (&published), ==, CLARK_LAGS);
  for (guint i = 0; i < CLARK_LAGS; i++)
    {
      g_assert_cmpint (pairs[i + 1], ==, (int) published_table_number (&published, i, "pairs"));
      g_assert_cmpfloat_with_epsilon (sums[i + 1] / (2 * pairs[i + 1]), published_table_number (&published, i, "published"), 0.006);
    }
  g_assert_cmpfloat_with_epsilon (stretches / (2 * pairs[1]), published_table_number (&published, 0, "published"), 0.006);
}

/* Geary's C by its definition, binary weights: the pairs (i, j) that are linked, each once. */
typedef gboolean (*Linked) (gsize i, gsize j, gconstpointer data);

static double
geary (const float *x, gsize n, Linked linked, gconstpointer data)
{
  double links = 0, sum = 0;

  for (gsize i = 0; i < n; i++)
    for (gsize j = 0; j < n; j++)
      if (linked (i, j, data))
        {
          links++;
          sum += pow ((double) x[i] - (double) x[j], 2);
        }

  return (double) (n - 1) / (2 * links) * sum / ((double) n * variance (x, n));
}

static gboolean
are_neighbours (gsize i, gsize j, gconstpointer data)
{
  g_auto (GStrv) ids = g_strsplit (published_table_text (data, (guint) i, "neighbours"), ";", -1);
  g_autofree char *id = g_strdup_printf ("%zu", j + 1);

  return g_strv_contains ((const char *const *) ids, id);
}

static gboolean
are_apart (gsize i, gsize j, gconstpointer lag)
{
  return (i > j ? i - j : j - i) == GPOINTER_TO_SIZE (lag);
}

/* The number after "binary": { ... "geary_C": in the published results. */
static double
published_geary (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "reference", "spatial_statistics.json", NULL);
  g_autofree char *text = NULL;
  const char *at;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  at = strstr (text, "\"binary\"");
  g_assert_nonnull (at);
  at = strstr (at, "\"geary_C\":");
  g_assert_nonnull (at);
  return g_ascii_strtod (at + strlen ("\"geary_C\":"), NULL);
}

/*
 * The variogram is Geary's C at one lag: C = (n - 1) / n x gamma / gamma_inf.
 * The C of this test is first held against the published one of 49 districts
 * (R package spdep), then the variogram against that C, with the same figures
 * taken as a strand.
 */
static void
test_geary (void)
{
  g_auto (PublishedTable) districts = published_table_open ("columbus_crime.csv");
  gsize n = published_table_n_rows (&districts);
  g_autofree float *crime = g_new (float, n);
  g_autofree float *none = g_new0 (float, n);
  g_autofree double *gamma = g_new (double, n);
  double gamma_inf;

  for (gsize i = 0; i < n; i++)
    crime[i] = (float) published_table_number (&districts, (guint) i, "crime");

  g_assert_cmpfloat_with_epsilon (geary (crime, n, are_neighbours, &districts), published_geary (), 1e-6);

  gamma_inf = sw_variogram (crime, none, none, n, n, gamma);
  for (gsize lag = 1; lag < n; lag++)
    g_assert_cmpfloat_with_epsilon ((double) (n - 1) / (double) n * gamma[lag] / gamma_inf,
                                    geary (crime, n, are_apart, GSIZE_TO_POINTER (lag)), 1e-9);
}

static gpointer
variogram_worker (gpointer data)
{
  gsize n = 300 + GPOINTER_TO_SIZE (data);
  float l[400], none[400] = { 0 };
  double gamma[100];

  for (gsize i = 0; i < n; i++)
    l[i] = (float) ((i * i) % 17);
  for (int again = 0; again < 100; again++)
    {
      gsize length = n - (gsize) again % 40;

      sw_variogram (l, none, none, length, 100, gamma);
      for (gsize lag = 0; lag < 100; lag += 33)
        g_assert_cmpfloat_with_epsilon (gamma[lag], direct (l, none, none, length, lag), 1e-7);
    }

  return NULL;
}

/* Several at once, of more sizes than are kept. */
static void
test_threads (void)
{
  GThread *threads[6];

  for (gsize i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("variogram", variogram_worker, GSIZE_TO_POINTER (10 * i));
  for (gsize i = 0; i < G_N_ELEMENTS (threads); i++)
    g_thread_join (threads[i]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cloth/variogram/direct-sum", test_direct_sum);
  g_test_add_func ("/cloth/variogram/symmetries", test_symmetries);
  g_test_add_func ("/cloth/variogram/plain-strand", test_plain_strand);
  g_test_add_func ("/cloth/variogram/clark", test_clark);
  g_test_add_func ("/cloth/variogram/geary", test_geary);
  g_test_add_func ("/cloth/variogram/threads", test_threads);
  return g_test_run ();
}
