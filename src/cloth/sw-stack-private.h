/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cloth/sw-pooling.h"

/* Neighbours in one row: dj = -SW_POOLING_STITCHES .. SW_POOLING_STITCHES. */
#define SW_STACK_ROW (2 * SW_POOLING_STITCHES + 1)

/**
 * sw_stack_row:
 * @stacks: (out caller-allocates): SW_STACK_ROW stacks of the neighbours @dr rows up;
 *   minus infinity where @width has no such neighbour
 */
void sw_stack_row (const SwPoolingInput *input, const double *sums, SwWorked worked, gsize width, int dr, double *stacks);
