/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-transfer.h"

#include "tests/colour/published-table.h"
#include "tests/bath/bath-checks.h"

static double
wave (const SwGrid *grid, gsize mode)
{
  double qx = G_PI * (double) (mode % (gsize) grid->nx) / grid->lx;
  double qy = G_PI * (double) (mode / (gsize) grid->nx % (gsize) grid->ny) / grid->ly;

  return qx * qx + qy * qy;
}

/*
 * Dye of a unit source in the middle cell of @grid, at the end of @span, per
 * cm (or cm2, if @grid is more than one row), at @x beside it. The source is
 * a Gaussian of that @sd; 0 is one cell's worth of every wave the grid has.
 */
static double
beside_source (const SwGrid *grid, const SwSpan *span, double sd, double x, gboolean mobile)
{
  g_autoptr (SwBasis) basis = sw_basis_new (grid);
  gsize n = sw_grid_cells (grid), middle = ((gsize) (grid->ny / 2)) * (gsize) grid->nx + (gsize) (grid->nx / 2);
  double h = grid->lx / grid->nx, value;
  double *cells = sw_field_new (n), *modes = sw_field_new (n), *struck = sw_field_new (n);
  gsize steps = (gsize) lround (x / h);

  assert_near ((double) steps * h, x, 1e-9);
  memset (cells, 0, n * sizeof (double));
  memset (struck, 0, n * sizeof (double));
  cells[middle] = 1.0;
  sw_basis_forward (basis, cells, modes);
  for (gsize i = 0; i < n; i++)
    modes[i] *= exp (-0.5 * sd * sd * wave (grid, i));
  sw_transfer_evolve (grid, span, modes, struck);
  sw_basis_inverse (basis, mobile ? modes : struck, cells);
  value = cells[middle + steps] / (grid->ny == 1 ? h : h * h);

  sw_field_free (cells);
  sw_field_free (modes);
  sw_field_free (struck);
  return value;
}

/*
 * Beyond its own extent a round source spreads as a point would, only stronger
 * by its integral with cosh (x / lambda), or with I0 in two dimensions: for a
 * Gaussian e^(sd^2 / (2 lambda^2)) in both. So a source that the grid can
 * carry to 1e-8 tests the point's own law as closely.
 */
static double
strength (double sd, double lambda)
{
  return exp (0.5 * sd * sd / (lambda * lambda));
}

#define CELLS_TO_PLACE 12 /* from the source to the place asked for */
#define SD_OF_PLACE (1.0 / 6.0)

static void
check_steady_line (const char *inputs, double wanted)
{
  double k = input_of (inputs, "k"), d = input_of (inputs, "D"), x = input_of (inputs, "x");
  double lambda = sqrt (d / k), h = x > 0.0 ? x / CELLS_TO_PLACE : lambda / 400.0;
  const SwGrid grid = { 12001, 1, 1, 12001 * h, 1.0, 1.0 };
  const SwSpan span = { 100.0 / k, k, d, d };
  /* At the source itself, one cell's worth: the waves beyond the grid's would add the rest of the integral of 1 / (pi (1 + lambda^2 q^2)). */
  double beyond = x > 0.0 ? 0.0 : (G_PI_2 - atan (G_PI * lambda / h)) / (G_PI * lambda);
  double struck = beside_source (&grid, &span, x * SD_OF_PLACE, x, FALSE) / strength (x * SD_OF_PLACE, lambda);

  assert_near ((struck + beyond) / wanted, 1.0, 1e-6);
}

static void
check_steady_point (const char *inputs, double wanted)
{
  double k = input_of (inputs, "k"), d = input_of (inputs, "D"), r = input_of (inputs, "r");
  double lambda = sqrt (d / k), h = r / CELLS_TO_PLACE;
  int n = 2 * (int) ceil (10.0 * lambda / h) + 1;
  const SwGrid grid = { n, n, 1, n * h, n * h, 1.0 };
  const SwSpan span = { 100.0 / k, k, d, d };
  double struck = beside_source (&grid, &span, r * SD_OF_PLACE, r, FALSE) / strength (r * SD_OF_PLACE, lambda);

  g_test_message ("%d x %d cells: off by %.2g of it", n, n, struck / wanted - 1.0);
  assert_near (struck / wanted, 1.0, 1e-6);
}

static void
check_heat (const char *inputs, double wanted)
{
  double d = input_of (inputs, "D"), t = input_of (inputs, "t"), x = input_of (inputs, "x");
  double sd = sqrt (2.0 * d * t), h = x > 0.0 ? x / ceil (x / sd * 4.0) : sd / 4.0;
  const SwGrid grid = { 201, 1, 1, 201 * h, 1.0, 1.0 };
  const SwSpan span = { t, 0.0, d, d };

  assert_near (beside_source (&grid, &span, 0.0, x, TRUE) / wanted, 1.0, 1e-10);
}

static void
check_mode (const char *inputs, double wanted, gboolean ask_mobile)
{
  double length = input_of (inputs, "L"), x = input_of (inputs, "x");
  int n = (int) input_of (inputs, "n");
  const SwGrid grid = { 8, 1, 1, length, 1.0, 1.0 };
  const SwSpan span = { input_of (inputs, "t"), input_of (inputs, "k"), input_of (inputs, "D"), 0.0 };
  double mobile[8] = { 0.0 }, struck[8] = { 0.0 };

  mobile[n] = 1.0;
  sw_transfer_evolve (&grid, &span, mobile, struck);
  assert_near ((ask_mobile ? mobile : struck)[n] * cos (n * G_PI * x / length), wanted, 1e-11);
}

static void
check_mode_mobile (const char *inputs, double wanted)
{
  check_mode (inputs, wanted, TRUE);
}

static void
check_mode_struck (const char *inputs, double wanted)
{
  check_mode (inputs, wanted, FALSE);
}

static void
test_oracles (gconstpointer data)
{
  static const struct
  {
    const char *name;
    void (*check) (const char *inputs, double wanted);
    guint rows;
  } cases[] = {
    { "steady_line_source_1d", check_steady_line, 6 },
    { "steady_point_source_2d", check_steady_point, 4 },
    { "heat_kernel_1d", check_heat, 4 },
    { "neumann_mode_mobile", check_mode_mobile, 4 },
    { "neumann_mode_struck", check_mode_struck, 4 },
  };
  guint which = GPOINTER_TO_UINT (data), seen = 0;
  g_auto (PublishedTable) table = published_table_open ("reaction_diffusion_oracles.csv");

  for (guint i = 0; i < published_table_n_rows (&table); i++)
    if (g_str_equal (published_table_text (&table, i, "case"), cases[which].name))
      {
        cases[which].check (published_table_text (&table, i, "inputs"), published_table_number (&table, i, "value"));
        seen++;
      }

  g_assert_cmpuint (seen, ==, cases[which].rows);
}

#define N_SPANS 4

static const SwGrid pan = { 30, 12, 8, 60.0, 9.0, 4.0 };

static const SwSpan day[N_SPANS] = {
  { 4.0, 0.02, 0.15, 0.05 },
  { 0.0, 0.3, 0.2, 0.06 },
  { 10.0, 0.2, 0.03, 0.01 },
  { 30.0, 0.5, 0.3, 0.1 },
};

static double *
zeroes (gsize n)
{
  double *field = sw_field_new (n);

  memset (field, 0, n * sizeof (double));
  return field;
}

static double *
random_field (gsize n)
{
  double *field = sw_field_new (n);

  for (gsize i = 0; i < n; i++)
    field[i] = g_test_rand_double_range (-1.0, 1.0);
  return field;
}

static void
assert_fields_near (const double *a, const double *b, gsize n, double tolerance)
{
  for (gsize i = 0; i < n; i++)
    assert_near (a[i], b[i], tolerance);
}

/* Backwards and forwards are one calculation: T times the start is what strikes. */
static void
test_prepend_is_evolve (void)
{
  gsize n = sw_grid_cells (&pan);
  double *transfer = zeroes (n), *start = random_field (n), *mobile = sw_field_new (n), *struck = zeroes (n);

  memcpy (mobile, start, n * sizeof (double));
  for (int i = N_SPANS; i > 0; i--)
    sw_transfer_prepend (&pan, &day[i - 1], transfer);
  for (int i = 0; i < N_SPANS; i++)
    sw_transfer_evolve (&pan, &day[i], mobile, struck);

  for (gsize i = 0; i < n; i++)
    assert_near (transfer[i] * start[i], struck[i], 1e-12);
  assert_near (transfer[0], sw_transfer_share (day, N_SPANS), 1e-13);

  sw_field_free (transfer);
  sw_field_free (start);
  sw_field_free (mobile);
  sw_field_free (struck);
}

/* Long after, each mode has struck 1 / (1 + lambda^2 q^2) of itself. */
static void
test_steady_modes (void)
{
  const SwGrid plane = { 200, 30, 1, 60.0, 9.0, 4.0 };
  const SwSpan span = { 1e3, 0.2, 0.15, 0.05 };
  gsize n = sw_grid_cells (&plane);
  double *transfer = zeroes (n);

  sw_transfer_prepend (&plane, &span, transfer);
  for (gsize i = 0; i < n; i++)
    assert_near (transfer[i], 1.0 / (1.0 + 0.75 * wave (&plane, i)), 1e-14);

  sw_field_free (transfer);
}

static void
test_two_halves (void)
{
  gsize n = sw_grid_cells (&pan);
  SwSpan half = day[2];
  double *mobile = random_field (n), *struck = random_field (n), *mobile2 = sw_field_new (n), *struck2 = sw_field_new (n);

  memcpy (mobile2, mobile, n * sizeof (double));
  memcpy (struck2, struck, n * sizeof (double));
  half.minutes *= 0.5;
  sw_transfer_evolve (&pan, &day[2], mobile, struck);
  sw_transfer_evolve (&pan, &half, mobile2, struck2);
  sw_transfer_evolve (&pan, &half, mobile2, struck2);
  assert_fields_near (mobile, mobile2, n, 1e-13);
  assert_fields_near (struck, struck2, n, 1e-13);

  sw_field_free (mobile);
  sw_field_free (struck);
  sw_field_free (mobile2);
  sw_field_free (struck2);
}

/* Dye poured = dye struck + dye left, cell by cell summed. */
static void
test_mass (void)
{
  g_autoptr (SwBasis) basis = sw_basis_new (&pan);
  gsize n = sw_grid_cells (&pan);
  double *cells = sw_field_new (n), *mobile = sw_field_new (n), *struck = zeroes (n), poured = 0.0, found = 0.0;

  for (gsize i = 0; i < n; i++)
    poured += cells[i] = g_test_rand_double ();
  sw_basis_forward (basis, cells, mobile);
  for (int i = 0; i < N_SPANS - 1; i++)
    sw_transfer_evolve (&pan, &day[i], mobile, struck);
  for (gsize i = 0; i < n; i++)
    mobile[i] += struck[i];
  sw_basis_inverse (basis, mobile, cells);
  for (gsize i = 0; i < n; i++)
    found += cells[i];

  assert_near (found / poured, 1.0, 1e-12);

  sw_field_free (cells);
  sw_field_free (mobile);
  sw_field_free (struck);
}

/* Neither strike nor time: nothing happens, and no 0 / 0. */
static void
test_nothing (void)
{
  const SwSpan still = { 10.0, 0.0, 0.0, 0.0 }, instant = { 0.0, 0.5, 0.15, 0.05 };
  gsize n = sw_grid_cells (&pan);
  double *transfer = random_field (n), *before = sw_field_new (n);

  memcpy (before, transfer, n * sizeof (double));
  sw_transfer_prepend (&pan, &still, transfer);
  sw_transfer_prepend (&pan, &instant, transfer);
  assert_fields_near (transfer, before, n, 0.0);

  sw_field_free (transfer);
  sw_field_free (before);
}

/* A pour is linear in its dye, and the order of two at one moment is free. */
static void
test_pours_add (void)
{
  gsize n = sw_grid_cells (&pan), n_plane = (gsize) pan.nx * (gsize) pan.ny;
  double *transfer = random_field (n), *a = random_field (n_plane), *b = random_field (n_plane), *both = sw_field_new (n_plane);
  double *one = zeroes (n), *other = zeroes (n), *sum = zeroes (n), depth[8];

  for (int i = 0; i < pan.nz; i++)
    depth[i] = g_test_rand_double ();
  for (gsize i = 0; i < n_plane; i++)
    both[i] = a[i] + 2.0 * b[i];

  sw_transfer_add_pour (&pan, transfer, a, depth, one);
  sw_transfer_add_pour (&pan, transfer, b, depth, one);
  sw_transfer_add_pour (&pan, transfer, b, depth, one);
  sw_transfer_add_pour (&pan, transfer, b, depth, other);
  sw_transfer_add_pour (&pan, transfer, a, depth, other);
  sw_transfer_add_pour (&pan, transfer, b, depth, other);
  sw_transfer_add_pour (&pan, transfer, both, depth, sum);
  assert_fields_near (one, other, n, 1e-14);
  assert_fields_near (one, sum, n, 1e-14);

  sw_field_free (transfer);
  sw_field_free (a);
  sw_field_free (b);
  sw_field_free (both);
  sw_field_free (one);
  sw_field_free (other);
  sw_field_free (sum);
}

/* Followed forwards, each pour strikes what the backward share says of it, to the end of any span. */
static void
test_follow (void)
{
  enum
  {
    N = 9
  };
  SwSpan spans[N];
  double poured[N], struck[N], left[N];

  for (int i = 0; i < N; i++)
    {
      gboolean waits = i % 3 == 2;

      spans[i] = (SwSpan){ waits ? g_test_rand_double_range (1.0, 20.0) : 0.0, g_test_rand_double_range (0.0, 0.5), 0.1, 0.03 };
      poured[i] = waits ? 0.0 : g_test_rand_double_range (0.0, 2.0);
    }
  sw_transfer_follow (spans, poured, N, struck, left);

  for (int end = 0; end < N; end++)
    {
      double wanted = 0.0, so_far = 0.0;

      for (int i = 0; i <= end; i++)
        {
          wanted += poured[i] * sw_transfer_share (spans + i, (gsize) (end + 1 - i));
          so_far += poured[i];
        }
      assert_near (struck[end], wanted, 1e-13);
      assert_near (left[end], so_far - wanted, 1e-13);
    }
}

/* Half strikes in the half-time, three quarters in twice that: what the word means. */
static void
test_follow_half_time (void)
{
  const SwSpan span = { 3.0, G_LN2 / 3.0, 0.0, 0.0 };
  const SwSpan spans[] = { span, span };
  const double poured[] = { 8.0, 0.0 };
  double struck[2], left[2];

  sw_transfer_follow (spans, poured, 2, struck, left);
  assert_near (struck[0], 4.0, 1e-14);
  assert_near (struck[1], 6.0, 1e-14);
  assert_near (left[1], 2.0, 1e-14);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/bath/transfer/steady-line", GUINT_TO_POINTER (0), test_oracles);
  g_test_add_data_func ("/bath/transfer/steady-point", GUINT_TO_POINTER (1), test_oracles);
  g_test_add_data_func ("/bath/transfer/heat-kernel", GUINT_TO_POINTER (2), test_oracles);
  g_test_add_data_func ("/bath/transfer/mode-mobile", GUINT_TO_POINTER (3), test_oracles);
  g_test_add_data_func ("/bath/transfer/mode-struck", GUINT_TO_POINTER (4), test_oracles);
  g_test_add_func ("/bath/transfer/prepend-is-evolve", test_prepend_is_evolve);
  g_test_add_func ("/bath/transfer/steady-modes", test_steady_modes);
  g_test_add_func ("/bath/transfer/two-halves", test_two_halves);
  g_test_add_func ("/bath/transfer/mass", test_mass);
  g_test_add_func ("/bath/transfer/nothing", test_nothing);
  g_test_add_func ("/bath/transfer/pours-add", test_pours_add);
  g_test_add_func ("/bath/transfer/follow", test_follow);
  g_test_add_func ("/bath/transfer/follow-half-time", test_follow_half_time);
  return g_test_run ();
}
