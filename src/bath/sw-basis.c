/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-basis.h"

#include "bath/sw-picture-basis-private.h"
#include "bath/sw-planner.h"

#include <fftw3.h>
#include <math.h>

struct _SwBasis
{
  SwGrid grid;
  guint refs; /* under the planner's lock */
  fftw_plan forward_plane;
  fftw_plan forward;
  fftw_plan inverse;
  SwPictureBasis *picture;
};

/* All living bases, so that two forecasts of one pan share plans. Under the planner's lock. */
static GSList *living = NULL;

static int
next_smooth (int n)
{
  for (;; n++)
    {
      int rest = n;

      for (int factor = 2; factor <= 5; factor++)
        while (rest % factor == 0)
          rest /= factor;
      if (rest == 1)
        return n;
    }
}

static int
cells_along (double length, double cell_cm)
{
  return next_smooth ((int) CLAMP (ceil (length / cell_cm - 1e-9), 1.0, 4096.0));
}

SwGrid
sw_grid_for (double lx, double ly, double lz, double cell_cm, int nz)
{
  return (SwGrid){ cells_along (lx, cell_cm), cells_along (ly, cell_cm), nz, lx, ly, lz };
}

gsize
sw_grid_cells (const SwGrid *grid)
{
  return (gsize) grid->nx * (gsize) grid->ny * (gsize) grid->nz;
}

gboolean
sw_grid_equal (const SwGrid *a, const SwGrid *b)
{
  return a->nx == b->nx && a->ny == b->ny && a->nz == b->nz && a->lx == b->lx && a->ly == b->ly && a->lz == b->lz;
}

double *
sw_field_new (gsize n)
{
  double *field = fftw_malloc (n * sizeof (double));

  if (field == NULL)
    g_error ("No memory for a field of %" G_GSIZE_FORMAT " cells", n);
  return field;
}

float *
sw_field_new_single (gsize n)
{
  float *field = fftw_malloc (n * sizeof (float));

  if (field == NULL)
    g_error ("No memory for a field of %" G_GSIZE_FORMAT " cells", n);
  return field;
}

void
sw_field_free (gpointer field)
{
  fftw_free (field);
}

/*
 * The estimating planner: it never measures, so that the same grid gets the
 * same plan, and the same last bits, each time. It also leaves the arrays
 * alone; they only tell it the alignment.
 */
static void
make_plans (SwBasis *basis)
{
  const SwGrid *grid = &basis->grid;
  int n[3] = { grid->nz, grid->ny, grid->nx };
  fftw_r2r_kind forward[3] = { FFTW_REDFT10, FFTW_REDFT10, FFTW_REDFT10 };
  fftw_r2r_kind inverse[3] = { FFTW_REDFT01, FFTW_REDFT01, FFTW_REDFT01 };
  unsigned flags = FFTW_ESTIMATE | FFTW_PRESERVE_INPUT;
  double *a = sw_field_new (sw_grid_cells (grid));
  double *b = sw_field_new (sw_grid_cells (grid));

  basis->forward_plane = fftw_plan_r2r (2, n + 1, a, b, forward, flags);
  basis->forward = fftw_plan_r2r (3, n, a, b, forward, flags);
  basis->inverse = fftw_plan_r2r (3, n, a, b, inverse, flags);
  basis->picture = sw_picture_basis_new (grid);

  sw_field_free (a);
  sw_field_free (b);
}

SwBasis *
sw_basis_new (const SwGrid *grid)
{
  SwBasis *basis = NULL;

  g_return_val_if_fail (grid->nx > 0 && grid->ny > 0 && grid->nz > 0, NULL);

  sw_planner_lock ();
  for (GSList *l = living; l != NULL && basis == NULL; l = l->next)
    if (sw_grid_equal (&((SwBasis *) l->data)->grid, grid))
      basis = l->data;

  if (basis == NULL)
    {
      basis = g_new0 (SwBasis, 1);
      basis->grid = *grid;
      make_plans (basis);
      living = g_slist_prepend (living, basis);
    }
  basis->refs++;
  sw_planner_unlock ();

  return basis;
}

SwBasis *
sw_basis_ref (SwBasis *basis)
{
  sw_planner_lock ();
  basis->refs++;
  sw_planner_unlock ();

  return basis;
}

void
sw_basis_unref (SwBasis *basis)
{
  sw_planner_lock ();
  if (--basis->refs == 0)
    {
      living = g_slist_remove (living, basis);
      fftw_destroy_plan (basis->forward_plane);
      fftw_destroy_plan (basis->forward);
      fftw_destroy_plan (basis->inverse);
      sw_picture_basis_free (basis->picture);
      g_free (basis);
    }
  sw_planner_unlock ();
}

const SwGrid *
sw_basis_get_grid (const SwBasis *basis)
{
  return &basis->grid;
}

static void
scale_field (double *field, gsize n, double factor)
{
  for (gsize i = 0; i < n; i++)
    field[i] *= factor;
}

/* REDFT10 doubles along each axis: mode 0 comes out as 2^axes times the sum. */
void
sw_basis_forward_plane (const SwBasis *basis, const double *plane, double *modes)
{
  fftw_execute_r2r (basis->forward_plane, (double *) plane, modes);
  scale_field (modes, (gsize) basis->grid.nx * (gsize) basis->grid.ny, 1.0 / 4.0);
}

void
sw_basis_forward (const SwBasis *basis, const double *cells, double *modes)
{
  fftw_execute_r2r (basis->forward, (double *) cells, modes);
  scale_field (modes, sw_grid_cells (&basis->grid), 1.0 / 8.0);
}

/* REDFT01 of REDFT10 is 2n along each axis; the 8 is already taken out. */
void
sw_basis_inverse (const SwBasis *basis, const double *modes, double *cells)
{
  gsize n = sw_grid_cells (&basis->grid);

  fftw_execute_r2r (basis->inverse, (double *) modes, cells);
  scale_field (cells, n, 1.0 / (double) n);
}

void
sw_basis_inverse_single (const SwBasis *basis, const double *modes, float *cells)
{
  sw_picture_basis_inverse (basis->picture, modes, cells);
}
