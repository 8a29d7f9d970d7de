/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Wraps that share out the cross-section among them. */
#define SW_SCATTER_BLOCK 16

/**
 * sw_scatter:
 * Place of the @n-th wrap, 0 .. 1. Each block of SW_SCATTER_BLOCK wraps fills
 * as many equal slots once, in an order of its own, each at a chance place
 * within its slot (stratified sampling: McKay, Beckman & Conover 1979,
 * Technometrics 21:239): as even as a low-discrepancy sequence.
 *
 * Multiples of an irrational step, the usual such sequence, were tried first:
 * every fourth (plastic number) or eighth (golden ratio) wrap then lies nearly
 * where it lay before, and the forecast saw pooling in that rhythm.
 */
double sw_scatter (guint64 seed, gsize n);
