/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * sw_variogram:
 * @l, @a, @b: (array length=n): CIELAB along the strand
 * @n: >= 1
 * @n_lags: lags wanted; lags >= @n give gamma_inf
 * @gamma: (out caller-allocates): gamma[h] = mean |Lab(i) - Lab(i+h)|^2 over the n - h pairs, h = 0 .. n_lags - 1
 *
 * All lags at once by the FFT of the zero-padded, mean-free series; equal to
 * the direct sum to 1e-9 of gamma_inf.
 *
 * Returns: gamma_inf = 2 var (Lab), population variance summed over L, a, b
 */
double sw_variogram (const float *l, const float *a, const float *b, gsize n, gsize n_lags, double *gamma);

G_END_DECLS
