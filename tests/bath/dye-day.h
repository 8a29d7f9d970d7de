/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bath/sw-deposit.h"
#include "bath/sw-schedule.h"

#include "tests/bath/bath-checks.h"

/*
 * The kernels together: a sketch's day in the pan played from end to end, and
 * what dyers know of it. Cells of 2.5 mm on the usual skein, 75 by 8 by 2.5 cm.
 */
static const SwGrid pan = { 300, 32, 8, 75.0, 8.0, 2.5 };

#define N_PLANE (300 * 32)
#define N_CELLS (300 * 32 * 8)
#define MOST_STEPS 16

typedef struct
{
  SwSketch *sketch;
  SwDye *dye;
} Day;

static inline Day
day_new (void)
{
  Day day = { sw_sketch_new (), sw_dye_new (1) };

  day.sketch->next_id = 2;
  g_ptr_array_add (day.sketch->dyes, day.dye);
  return day;
}

static inline void
day_clear (Day *day)
{
  g_clear_pointer (&day->sketch, sw_sketch_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Day, day_clear)

static inline SwStep *
day_step (Day *day, SwStepKind kind)
{
  SwStep *step = sw_step_new (day->sketch->next_id++, kind);

  g_ptr_array_add (day->sketch->steps, step);
  return step;
}

static inline SwStep *
day_band (Day *day, double x, double width, double angle)
{
  SwStep *step = day_step (day, SW_STEP_BAND);

  step->dye = 1;
  step->x_cm = x;
  step->y_cm = 4.0;
  step->width_cm = width;
  step->angle_deg = angle;
  step->worked_in = 0.0;
  return step;
}

static inline void
day_wait (Day *day, SwStepKind kind, double minutes, double temperature_c)
{
  SwStep *step = day_step (day, kind);

  step->minutes = minutes;
  step->temperature_c = temperature_c;
}

/* Plane and depth modes of a pour. */
static inline void
pour_modes (const Day *day, SwBasis *basis, const SwStep *step, gboolean from_below, double *plane, double *depth)
{
  const SwOutline outline = { step->kind == SW_STEP_SPLOTCH, step->x_cm, step->y_cm, step->width_cm, step->length_cm, step->angle_deg };
  double *cells = sw_field_new (N_PLANE);

  sw_deposit_plane (&pan, &outline, sw_schedule_pour_grams (day->sketch, step), cells);
  sw_basis_forward_plane (basis, cells, plane);
  sw_deposit_blur (&pan, sw_deposit_blur_for (step->worked_in), plane);
  sw_deposit_depth_modes (pan.nz, step->worked_in, from_below, depth);
  sw_field_free (cells);
}

static inline double *
zeroes (gsize n)
{
  double *field = sw_field_new (n);

  memset (field, 0, n * sizeof (double));
  return field;
}

/* Struck dye at the end, cell by cell, by the backward transfer: both shares of the dye. */
static inline double *
play (const Day *day)
{
  g_autoptr (SwBasis) basis = sw_basis_new (&pan);
  SwBathState states[MOST_STEPS + 1];
  SwSpan spans[MOST_STEPS];
  double *transfer = sw_field_new (N_CELLS), *struck = zeroes (N_CELLS), *plane = sw_field_new (N_PLANE), depth[8];
  const double parts[] = { 1.0 - day->dye->quick_share, day->dye->quick_share };

  g_assert_true (sw_sketch_validate (day->sketch, NULL));
  sw_schedule_run (day->sketch, states);
  for (int share = 0; share < 2; share++)
    {
      sw_schedule_spans (day->sketch, states, day->dye, share, spans);
      memset (transfer, 0, N_CELLS * sizeof (double));
      for (guint i = day->sketch->steps->len; i > 0; i--)
        {
          const SwStep *step = g_ptr_array_index (day->sketch->steps, i - 1);

          sw_transfer_prepend (&pan, &spans[i - 1], transfer);
          if (!sw_step_is_pour (step))
            continue;
          pour_modes (day, basis, step, states[i].second_face, plane, depth);
          for (gsize j = 0; j < N_PLANE; j++)
            plane[j] *= parts[share];
          sw_transfer_add_pour (&pan, transfer, plane, depth, struck);
        }
    }
  sw_basis_inverse (basis, struck, transfer);

  sw_field_free (struck);
  sw_field_free (plane);
  return transfer;
}

static inline double
total (const double *cells)
{
  double sum = 0.0;

  for (gsize i = 0; i < N_CELLS; i++)
    sum += cells[i];
  return sum;
}

static inline double
peak (const double *cells)
{
  double most = 0.0;

  for (gsize i = 0; i < N_CELLS; i++)
    most = MAX (most, cells[i]);
  return most;
}
