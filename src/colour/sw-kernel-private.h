/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <string.h>

/*
 * What the three kernels over many places share. They work on blocks of SW_BLOCK places: plain loops
 * of known length that a compiler turns into one AVX-512 register, two of AVX2, four of SSE or NEON.
 * Compiled once per kind of processor where the compiler and the C library can choose at start-up.
 */
#define SW_BLOCK 16

#ifdef SW_HAVE_TARGET_CLONES
#define SW_CLONES __attribute__ ((target_clones ("arch=x86-64-v4", "arch=x86-64-v3", "default")))
#else
#define SW_CLONES
#endif

#define SW_INLINE static inline __attribute__ ((always_inline))

SW_INLINE float
sw_halley_step (float root, float value)
{
  float cube = root * root * root;

  return root * (cube + 2 * value) / (2 * cube + value);
}

/*
 * Cube root of a value of at least 1e-6: a third of the exponent by integer arithmetic on the float's bits
 * (within 4 %), then Halley's step twice, which cubes the error each time.
 */
SW_INLINE float
sw_cube_root (float value)
{
  guint32 bits;
  float root;

  memcpy (&bits, &value, sizeof bits);
  bits = bits / 3 + 0x2a514067u;
  memcpy (&root, &bits, sizeof root);
  return sw_halley_step (sw_halley_step (root, value), value);
}

/*
 * CIE 15, as in sw_lab_from_xyz(), for a value over its white. The straight line touches the root at the threshold and lies above it
 * beyond; held there, the root lies above the line before. So the smaller is always the right one, and no branch keeps a compiler from registers.
 */
SW_INLINE float
sw_lab_f (float ratio)
{
  float root = sw_cube_root (MAX (ratio, 216.0f / 24389.0f));
  float line = ratio * (841.0f / 108.0f) + 4.0f / 29.0f;

  return MIN (root, line);
}
