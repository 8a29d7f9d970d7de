/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Cosine modes of a box with closed walls. Fields are cell amounts (grams in
 * a cell), z slowest, then y, x fastest: index (iz * ny + iy) * nx + ix; modes
 * are laid out the same way by wave number. Cell centres: REDFT10 forward,
 * REDFT01 back, scaled so that mode 0 is the sum of all cells.
 */

typedef struct
{
  int nx, ny, nz;
  double lx, ly, lz; /* cm */
} SwGrid;

/**
 * sw_grid_for:
 * @cell_cm: wanted cell size across x and y; the counts are rounded up to products of 2, 3 and 5
 */
SwGrid sw_grid_for (double lx, double ly, double lz, double cell_cm, int nz);
gsize sw_grid_cells (const SwGrid *grid);
gboolean sw_grid_equal (const SwGrid *a, const SwGrid *b);

/* FFTW plans for one grid size; immutable, shared, usable by any thread at once. */
typedef struct _SwBasis SwBasis;

SwBasis *sw_basis_new (const SwGrid *grid) G_GNUC_WARN_UNUSED_RESULT;
SwBasis *sw_basis_ref (SwBasis *basis);
void sw_basis_unref (SwBasis *basis);
const SwGrid *sw_basis_get_grid (const SwBasis *basis);

/* Arrays handed to the transforms must come from here (alignment); free with sw_field_free. */
double *sw_field_new (gsize n) G_GNUC_WARN_UNUSED_RESULT;
float *sw_field_new_single (gsize n) G_GNUC_WARN_UNUSED_RESULT;
void sw_field_free (gpointer field);

/* One plane, nx x ny. @plane and @modes may not overlap; @plane is kept. */
void sw_basis_forward_plane (const SwBasis *basis, const double *plane, double *modes);

/* The whole box. Modes are kept. */
void sw_basis_forward (const SwBasis *basis, const double *cells, double *modes);
void sw_basis_inverse (const SwBasis *basis, const double *modes, double *cells);

/*
 * For pictures: rounds @modes to single precision, then transforms. Undyed
 * cells come out at zero to some 1e-6 of the peak, on either side of it.
 */
void sw_basis_inverse_single (const SwBasis *basis, const double *modes, float *cells);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwBasis, sw_basis_unref)

G_END_DECLS
