/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cloth/sw-pooling.h"

/*
 * Neighbours in one row: one more to either side than the verdict looks at,
 * which tells whether the stack goes on rising there. The one straight up is
 * in the middle.
 */
#define SW_STACK_MIDDLE (SW_POOLING_STITCHES + 1)
#define SW_STACK_ROW (2 * SW_STACK_MIDDLE + 1)

/**
 * sw_stack_row:
 * @stacks: (out caller-allocates): SW_STACK_ROW stacks of the neighbours @dr rows up;
 *   minus infinity where @width has no such neighbour
 */
void sw_stack_row (const SwPoolingInput *input, const double *sums, SwWorked worked, gsize width, int dr, double *stacks);

/* gamma at a lag of either sign, or gamma_inf where the strand is not known. */
double sw_stack_gamma (const SwPoolingInput *input, gint64 lag);

/* Mean of gamma over @count lags of either sign from @first by two. */
double sw_stack_mean_gamma (const SwPoolingInput *input, const double *sums, gint64 first, gsize count);

/**
 * sw_stack_alternate_row:
 * @gammas: (out): mean gamma of the SW_STACK_ROW neighbours as far as @reach to both sides
 * As the rows of sw_stack_row() when skeins alternate: the mean over all
 * places that a row can have among those of its own and the other skeins.
 */
void sw_stack_alternate_row (const SwPoolingInput *input, const double *sums, SwWorked worked, gsize width, int dr, gsize reach, double *gammas);
