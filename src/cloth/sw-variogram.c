/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-variogram.h"

#include "bath/sw-planner.h"

#include <fftw3.h>
#include <string.h>

/*
 * The sum over the pairs of a lag is
 *
 *     sum |x(i) - x(i+h)|^2 = head (n - h) + (total - head (h)) - 2 r(h)
 *
 * with head (m) = sum of |x|^2 over the first m and r the autocorrelation,
 * which the transform gives for every lag at once. The series is made
 * mean-free first, or the three terms would be large and their difference
 * small.
 */

#define CHANNELS 3

/* Desks kept for the next question of the same size; two series lengths at work at a time are usual. */
#define MAX_DESKS 4

/* Plans and arrays for one size: planned once, used by one thread at a time. */
typedef struct
{
  gsize size;
  gsize stride;   /* reals from one channel to the next */
  double *series; /* CHANNELS x stride, transformed in place */
  double *head;   /* size + 1 */
  fftw_plan forward, back;
} Desk;

static GMutex desk_lock;
static Desk *free_desks[MAX_DESKS]; /* latest used first, no gaps */

static gboolean
is_smooth (gsize size)
{
  static const gsize primes[] = { 2, 3, 5, 7 };

  for (gsize i = 0; i < G_N_ELEMENTS (primes); i++)
    while (size % primes[i] == 0)
      size /= primes[i];

  return size == 1;
}

/* The least even size that is a product of 2, 3, 5 and 7, for which FFTW has its quick codelets. */
static gsize
smooth_size (gsize least)
{
  gsize size = MAX (least + least % 2, 2);

  while (!is_smooth (size))
    size += 2;

  return size;
}

static void
desk_free (Desk *desk)
{
  sw_planner_lock ();
  fftw_destroy_plan (desk->forward);
  fftw_destroy_plan (desk->back);
  sw_planner_unlock ();
  fftw_free (desk->series);
  fftw_free (desk->head);
  g_free (desk);
}

/* Estimating, not measuring: a measured plan may differ from run to run, and its last bits with it. */
static Desk *
desk_new (gsize size)
{
  Desk *desk = g_new0 (Desk, 1);
  int n = (int) size;

  desk->size = size;
  desk->stride = 2 * (size / 2 + 1);
  desk->series = fftw_alloc_real (CHANNELS * desk->stride);
  desk->head = fftw_alloc_real (size + 1);
  sw_planner_lock ();
  desk->forward = fftw_plan_many_dft_r2c (1, &n, CHANNELS,
                                          desk->series, NULL, 1, (int) desk->stride,
                                          (fftw_complex *) desk->series, NULL, 1, (int) desk->stride / 2,
                                          FFTW_ESTIMATE);
  desk->back = fftw_plan_dft_c2r_1d (n, (fftw_complex *) desk->series, desk->series, FFTW_ESTIMATE);
  sw_planner_unlock ();

  return desk;
}

static Desk *
take_desk (gsize size)
{
  Desk *desk = NULL;

  g_mutex_lock (&desk_lock);
  for (gsize i = 0; i < MAX_DESKS; i++)
    if (desk == NULL && free_desks[i] != NULL && free_desks[i]->size == size)
      desk = g_steal_pointer (&free_desks[i]);
    else if (desk != NULL)
      free_desks[i - 1] = g_steal_pointer (&free_desks[i]);
  g_mutex_unlock (&desk_lock);

  return desk != NULL ? desk : desk_new (size);
}

static void
give_desk_back (Desk *desk)
{
  Desk *oldest;

  g_mutex_lock (&desk_lock);
  oldest = free_desks[MAX_DESKS - 1];
  memmove (free_desks + 1, free_desks, (MAX_DESKS - 1) * sizeof *free_desks);
  free_desks[0] = desk;
  g_mutex_unlock (&desk_lock);

  g_clear_pointer (&oldest, desk_free);
}

/* Mean-free, with zeros after it so that the circle does not bite its tail. */
static void
fill_channel (double *series, gsize size, const float *x, gsize n)
{
  double mean = 0.0;

  for (gsize i = 0; i < n; i++)
    mean += (double) x[i];
  mean /= (double) n;

  for (gsize i = 0; i < n; i++)
    series[i] = (double) x[i] - mean;
  memset (series + n, 0, (size - n) * sizeof *series);
}

static void
sum_squares (Desk *desk, gsize n)
{
  const double *l = desk->series, *a = l + desk->stride, *b = a + desk->stride;

  desk->head[0] = 0.0;
  for (gsize i = 0; i < n; i++)
    desk->head[i + 1] = desk->head[i] + l[i] * l[i] + a[i] * a[i] + b[i] * b[i];
}

/* Leaves size x the autocorrelation, the channels added, in the first channel. */
static void
autocorrelate (Desk *desk)
{
  double *spectrum = desk->series;
  gsize stride = desk->stride;

  fftw_execute (desk->forward);

  for (gsize i = 0; i < stride; i += 2)
    {
      double power = 0.0;

      for (gsize c = 0; c < CHANNELS; c++)
        {
          double re = spectrum[c * stride + i], im = spectrum[c * stride + i + 1];

          power += re * re + im * im;
        }
      spectrum[i] = power;
      spectrum[i + 1] = 0.0;
    }

  fftw_execute (desk->back);
}

double
sw_variogram (const float *l, const float *a, const float *b, gsize n, gsize n_lags, double *gamma)
{
  const float *channels[CHANNELS] = { l, a, b };
  gsize lags = MIN (n, n_lags);
  double gamma_inf, total, scale;
  Desk *desk;

  g_return_val_if_fail (n >= 1, 0.0);

  desk = take_desk (smooth_size (n + lags));
  for (gsize c = 0; c < CHANNELS; c++)
    fill_channel (desk->series + c * desk->stride, desk->size, channels[c], n);
  sum_squares (desk, n);
  autocorrelate (desk);

  total = desk->head[n];
  gamma_inf = 2.0 * total / (double) n;
  scale = 2.0 / (double) desk->size;

  for (gsize h = 0; h < lags; h++)
    {
      double sum = desk->head[n - h] + total - desk->head[h] - scale * desk->series[h];

      gamma[h] = MAX (sum, 0.0) / (double) (n - h);
    }
  for (gsize h = lags; h < n_lags; h++)
    gamma[h] = gamma_inf;
  if (n_lags > 0)
    gamma[0] = 0.0;

  give_desk_back (desk);
  return gamma_inf;
}
