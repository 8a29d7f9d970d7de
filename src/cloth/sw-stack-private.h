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
