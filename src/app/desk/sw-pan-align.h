/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-pour-place.h"

G_BEGIN_DECLS

typedef enum
{
  SW_ALIGN_LEFT,
  SW_ALIGN_CENTRE,
  SW_ALIGN_RIGHT,
  SW_ALIGN_TOP, /* the far edge, which is up in the picture */
  SW_ALIGN_MIDDLE,
  SW_ALIGN_BOTTOM,
  SW_ALIGN_SPREAD_ALONG, /* the same gap from each to the next */
  SW_ALIGN_SPREAD_ACROSS,
  SW_N_ALIGNS,
} SwAlign;

/* The action's target: "left" ... */
const char *sw_align_name (SwAlign align);

/* Names an edit: "Align Left", translated. */
const char *sw_align_label (SwAlign align);

/**
 * sw_align_from_name:
 * Returns: SW_N_ALIGNS for a word that is none
 */
SwAlign sw_align_from_name (const char *name);

/* How many pours it takes: one is aligned with the skein, several with what they take up together. */
gsize sw_align_least (SwAlign align);

/**
 * sw_pan_align:
 * @places: (array length=n) (inout): moved, never stretched; tidied
 * @n: at least sw_align_least()
 */
void sw_pan_align (const SwSketch *sketch, SwAlign align, SwPourPlace *places, gsize n);

G_END_DECLS
