/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-pour-place.h"

G_BEGIN_DECLS

/*
 * Lines in the pan that a dragged edge catches on: the skein's edges, middle
 * and the gaps between its runs and lanes, the other pours of the face, and
 * whole centimetres (or half inches).
 */
typedef enum
{
  SW_SNAP_NONE,
  SW_SNAP_EDGE,   /* of the skein */
  SW_SNAP_MIDDLE, /* of the skein */
  SW_SNAP_GAP,    /* between two runs or two skeins */
  SW_SNAP_POUR,   /* edge of another pour */
  SW_SNAP_CENTRE, /* of another pour */
  SW_SNAP_RULER,  /* a whole mark of the ruler */
} SwSnapKind;

typedef enum
{
  SW_AXIS_ALONG,
  SW_AXIS_ACROSS,
} SwAxis;

typedef struct _SwSnap SwSnap;

/**
 * sw_snap_new:
 * @second_face: pours of this face count
 * @skip: (array length=n_skip): ids of the steps that are dragged
 * @ruler_cm: from one mark of the ruler to the next
 */
SwSnap *sw_snap_new (const SwSketch *sketch, gboolean second_face, const guint *skip, gsize n_skip, double ruler_cm) G_GNUC_WARN_UNUSED_RESULT;
void sw_snap_free (SwSnap *snap);

/**
 * SwSnapHit:
 * @by: cm to move so that it lies on the line
 * @at: the line, cm
 */
typedef struct
{
  SwSnapKind kind;
  double by, at;
} SwSnapHit;

/**
 * sw_snap_find:
 * @points: (array length=n): what may catch, cm: centre or edges; only the
 *   first one catches on the ruler, since two would fight
 * @reach: cm, the farthest that anything is moved
 * Returns: the nearest line; a mark of the ruler only if there is no other. Kind SW_SNAP_NONE and @by 0 if nothing is near
 */
SwSnapHit sw_snap_find (const SwSnap *snap, SwAxis axis, const double *points, gsize n, double reach);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwSnap, sw_snap_free)

G_END_DECLS
