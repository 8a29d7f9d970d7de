/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-deposit.h"
#include "bath/sw-leg-mark.h"
#include "bath/sw-speck.h"
#include "bath/sw-transfer.h"
#include "sw-bench.h"

#include <string.h>

/* A skein 60 cm by 9.6 cm in cells of 2 mm, in eight layers. */
static const SwGrid grid = { 300, 48, 8, 60.0, 9.6, 4.0 };
static const SwSpan span = { 10.0, 0.25, 0.15, 0.05 };

typedef struct
{
  SwBasis *basis;
  double *plane, *plane_modes, *transfer, *struck, *cells;
  float *single;
  double depth[8];
  SwMark mark;
  SwLegMark leg;
} Bench;

static void
run_plane (gpointer data)
{
  Bench *bench = data;

  const SwOutline outline = { FALSE, 30.0, 4.8, 6.0, 0.0, 20.0 };

  sw_deposit_plane (&grid, &outline, 1.0, bench->plane);
}

static void
run_forward_plane (gpointer data)
{
  Bench *bench = data;

  sw_basis_forward_plane (bench->basis, bench->plane, bench->plane_modes);
}

static void
run_blur (gpointer data)
{
  Bench *bench = data;

  sw_deposit_blur (&grid, 0.2, bench->plane_modes);
}

static void
run_prepend (gpointer data)
{
  Bench *bench = data;

  sw_transfer_prepend (&grid, &span, bench->transfer);
}

static void
run_add_pour (gpointer data)
{
  Bench *bench = data;

  sw_transfer_add_pour (&grid, bench->transfer, bench->plane_modes, bench->depth, bench->struck);
}

static void
run_inverse (gpointer data)
{
  Bench *bench = data;

  sw_basis_inverse (bench->basis, bench->struck, bench->cells);
}

static void
run_inverse_single (gpointer data)
{
  Bench *bench = data;

  sw_basis_inverse_single (bench->basis, bench->struck, bench->single);
}

static void
run_mark (gpointer data)
{
  Bench *bench = data;

  sw_mark_for (0.05, &span, 1, grid.nz, grid.lz, 0.0, FALSE, &bench->mark);
}

static void
run_leg_mark (gpointer data)
{
  Bench *bench = data;

  sw_leg_mark_for (&bench->mark, 0.2, &bench->leg);
}

static void
run_basis (gpointer data)
{

  SwGrid other = grid;
  other.lx += 1.0;
  sw_basis_unref (sw_basis_new (&other));
}

int
main (void)
{
  static const struct
  {
    const char *name;
    void (*run) (gpointer bench);
  } runs[] = {
    { "outline to plane", run_plane },
    { "forward plane", run_forward_plane },
    { "blur", run_blur },
    { "prepend", run_prepend },
    { "add a pour", run_add_pour },
    { "inverse", run_inverse },
    { "inverse, single", run_inverse_single },
    { "mark of a speck", run_mark },
    { "mark over a leg", run_leg_mark },
    { "new basis", run_basis },
  };
  gsize n = sw_grid_cells (&grid), n_plane = n / (gsize) grid.nz;
  Bench bench = {
    sw_basis_new (&grid),
    sw_field_new (n_plane),
    sw_field_new (n_plane),
    sw_field_new (n),
    sw_field_new (n),
    sw_field_new (n),
    sw_field_new_single (n),
  };

  memset (bench.transfer, 0, n * sizeof (double));
  memset (bench.struck, 0, n * sizeof (double));
  sw_deposit_depth_modes (grid.nz, 0.3, FALSE, bench.depth);
  for (gsize i = 0; i < G_N_ELEMENTS (runs); i++)
    sw_bench_run (runs[i].name, runs[i].run, &bench);

  sw_field_free (bench.plane);
  sw_field_free (bench.plane_modes);
  sw_field_free (bench.transfer);
  sw_field_free (bench.struck);
  sw_field_free (bench.cells);
  sw_field_free (bench.single);
  sw_basis_unref (bench.basis);
  return 0;
}
