/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <math.h>

G_BEGIN_DECLS

/* Makes the three numbers of @v a unit vector; nothing stays nothing. */
static inline void
sw_unit (float *v)
{
  const float length = sqrtf (v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);

  for (int i = 0; i < 3; i++)
    v[i] /= MAX (length, 1e-9f);
}

G_END_DECLS
