/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-basis.h"

#include "tests/bath/bath-checks.h"

static const SwGrid box = { 12, 9, 5, 24.0, 9.0, 4.0 };

static double *
random_field (gsize n)
{
  double *field = sw_field_new (n);

  for (gsize i = 0; i < n; i++)
    field[i] = g_test_rand_double ();
  return field;
}

/* Mode (a, b, c) by its definition, cell by cell. */
static double
mode_by_sum (const SwGrid *g, const double *cells, int a, int b, int c)
{
  double sum = 0.0;

  for (int z = 0; z < g->nz; z++)
    for (int y = 0; y < g->ny; y++)
      for (int x = 0; x < g->nx; x++)
        sum += *cells++ * cos (G_PI * a * (x + 0.5) / g->nx) * cos (G_PI * b * (y + 0.5) / g->ny) * cos (G_PI * c * (z + 0.5) / g->nz);
  return sum;
}

static void
test_forward_by_definition (void)
{
  g_autoptr (SwBasis) basis = sw_basis_new (&box);
  gsize n = sw_grid_cells (&box);
  double *cells = random_field (n), *modes = sw_field_new (n), *next = modes;

  sw_basis_forward (basis, cells, modes);
  for (int c = 0; c < box.nz; c++)
    for (int b = 0; b < box.ny; b++)
      for (int a = 0; a < box.nx; a++)
        assert_near (*next++, mode_by_sum (&box, cells, a, b, c), 1e-11 * (double) n);

  sw_field_free (cells);
  sw_field_free (modes);
}

static void
test_plane_by_definition (void)
{
  g_autoptr (SwBasis) basis = sw_basis_new (&box);
  const SwGrid flat = { box.nx, box.ny, 1, box.lx, box.ly, box.lz };
  gsize n = sw_grid_cells (&flat);
  double *plane = random_field (n), *modes = sw_field_new (n), *next = modes;

  sw_basis_forward_plane (basis, plane, modes);
  for (int b = 0; b < box.ny; b++)
    for (int a = 0; a < box.nx; a++)
      assert_near (*next++, mode_by_sum (&flat, plane, a, b, 0), 1e-11 * (double) n);

  sw_field_free (plane);
  sw_field_free (modes);
}

static void
check_round_trip (const SwGrid *grid)
{
  g_autoptr (SwBasis) basis = sw_basis_new (grid);
  gsize n = sw_grid_cells (grid);
  double *cells = random_field (n), *modes = sw_field_new (n), *kept = sw_field_new (n), *back = sw_field_new (n);
  float *single = sw_field_new_single (n);

  sw_basis_forward (basis, cells, modes);
  memcpy (kept, modes, n * sizeof (double));
  sw_basis_inverse (basis, modes, back);
  sw_basis_inverse_single (basis, modes, single);

  g_assert_cmpmem (kept, n * sizeof (double), modes, n * sizeof (double));
  for (gsize i = 0; i < n; i++)
    {
      assert_near (back[i], cells[i], 1e-12);
      assert_near (single[i], cells[i], 1e-5);
    }

  sw_field_free (cells);
  sw_field_free (modes);
  sw_field_free (kept);
  sw_field_free (back);
  sw_field_free (single);
}

/* Odd and even sizes, single rows and layers: all the ways the passes can end. */
static void
test_round_trip (void)
{
  const SwGrid grids[] = {
    box,
    { 1, 1, 1, 1, 1, 1 },
    { 30, 1, 1, 3, 1, 1 },
    { 1, 8, 1, 1, 1, 1 },
    { 1, 1, 8, 1, 1, 1 },
    { 2, 3, 2, 1, 1, 1 },
    { 45, 25, 3, 1, 1, 1 },
    { 50, 20, 8, 1, 1, 1 },
    { 27, 16, 7, 1, 1, 1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (grids); i++)
    check_round_trip (&grids[i]);
}

/* Two forecasts of one pan share plans; the last one out frees them. */
static void
test_shared (void)
{
  SwGrid other = box;
  g_autoptr (SwBasis) a = sw_basis_new (&box);
  g_autoptr (SwBasis) b = sw_basis_new (&box);
  g_autoptr (SwBasis) c = NULL;
  g_autoptr (SwBasis) d = sw_basis_ref (a);

  other.lx += 1.0;
  c = sw_basis_new (&other);
  g_assert_true (a == b);
  g_assert_true (a == d);
  g_assert_true (a != c);
  g_assert_true (sw_grid_equal (sw_basis_get_grid (c), &other));
}

static gpointer
basis_worker (gpointer data)
{
  for (int i = 0; i < 50; i++)
    {
      const SwGrid grid = { 8 + i % 3, 6, 4, 1, 1, 1 };

      check_round_trip (&grid);
    }
  return NULL;
}

static void
test_threads (void)
{
  GThread *threads[4];

  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("basis", basis_worker, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_thread_join (threads[i]);
}

static void
test_grid_for (void)
{
  SwGrid grid = sw_grid_for (60.0, 9.5, 4.0, 0.2, 8);

  g_assert_cmpint (grid.nx, ==, 300);
  g_assert_cmpint (grid.ny, ==, 48); /* 47.5 up to 48 */
  g_assert_cmpint (grid.nz, ==, 8);
  g_assert_cmpint (sw_grid_for (14.0, 0.1, 1.0, 2.0, 1).nx, ==, 8); /* 7 is none of 2, 3 and 5 */
  g_assert_cmpint (sw_grid_for (14.0, 0.1, 1.0, 2.0, 1).ny, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bath/basis/forward-by-definition", test_forward_by_definition);
  g_test_add_func ("/bath/basis/plane-by-definition", test_plane_by_definition);
  g_test_add_func ("/bath/basis/round-trip", test_round_trip);
  g_test_add_func ("/bath/basis/shared", test_shared);
  g_test_add_func ("/bath/basis/threads", test_threads);
  g_test_add_func ("/bath/basis/grid-for", test_grid_for);
  return g_test_run ();
}
