/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bath/sw-basis.h"

G_BEGIN_DECLS

/*
 * dm/dt = Dxy (m_xx + m_yy) + Dz m_zz - k m,  db/dt = k m, mode by mode, for
 * spans of constant k and D:
 *
 *   m_q(t) = m_q(0) e^(-(k + D|q|^2) t)
 *   b_q(t) = b_q(0) + m_q(0) k / (k + D|q|^2) (1 - e^(-(k + D|q|^2) t))
 *
 * A transfer T_q is the struck dye at the end of the dyeing per unit of mobile
 * dye now. It is built from the end backwards, so one sweep serves the pours
 * of every moment: T <- strike of this span + what stays mobile x T.
 */

typedef struct
{
  double minutes;
  double rate;      /* k, per minute */
  double spread_xy; /* Dxy, cm2/min */
  double spread_z;
} SwSpan;

/**
 * sw_transfer_prepend:
 * @transfer: (inout): one value per mode; start from all 0
 */
void sw_transfer_prepend (const SwGrid *grid, const SwSpan *span, double *transfer);

/* The same for mode 0 alone: the share of the dye struck by the end of the spans. */
double sw_transfer_share (const SwSpan *spans, gsize n);

/**
 * sw_transfer_follow:
 * @spans: (array length=n)
 * @poured: (array length=n): dye that joins the bath as each span begins
 * @struck, @left: (out caller-allocates): n each: how much of all poured so far has struck, and is still in the liquor, at each span's end
 *
 * Mode 0 forwards, in whatever unit @poured is in.
 */
void sw_transfer_follow (const SwSpan *spans, const double *poured, gsize n, double *struck, double *left);

/**
 * sw_transfer_evolve:
 * The forward form, for the tests and for pictures of a moment: moves @mobile and @struck (modes) on by one span.
 */
void sw_transfer_evolve (const SwGrid *grid, const SwSpan *span, double *mobile, double *struck);

/**
 * sw_transfer_add_pour:
 * @plane: nx x ny modes of where the dye lies, mode 0 = its mass
 * @depth: nz modes of its depth profile, mode 0 = 1
 * @struck: (inout): modes; gets transfer x plane x depth added
 */
void sw_transfer_add_pour (const SwGrid *grid, const double *transfer, const double *plane, const double *depth, double *struck);

G_END_DECLS
