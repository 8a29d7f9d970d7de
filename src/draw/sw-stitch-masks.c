/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-stitch-masks.h"

#include <string.h>

/* An item has three or four kinds of stitches; a window shows one or two sizes of cloth. */
#define KEPT 6

static GMutex lock;
static SwStitchMask *kept[KEPT]; /* the last used first */

static gboolean
same_style (const SwStitchStyle *a, const SwStitchStyle *b)
{
  return a->stitch == b->stitch && a->row == b->row && a->length == b->length && a->diameter == b->diameter && a->fabric == b->fabric &&
         a->purl_side == b->purl_side && a->fibre == b->fibre && a->plies == b->plies && a->quarters == b->quarters;
}

SwStitchMask *
sw_stitch_masks_take (const SwStitchStyle *style)
{
  SwStitchMask *mask = NULL;

  g_mutex_lock (&lock);
  for (int i = 0; i < KEPT && kept[i] != NULL; i++)
    if (same_style (sw_stitch_mask_get_style (kept[i]), style))
      {
        mask = kept[i];
        memmove (&kept[i], &kept[i + 1], sizeof kept[0] * (gsize) (KEPT - 1 - i));
        kept[KEPT - 1] = NULL;
        break;
      }
  g_mutex_unlock (&lock);
  return mask != NULL ? mask : sw_stitch_mask_new (style);
}

void
sw_stitch_masks_give_back (SwStitchMask *mask)
{
  SwStitchMask *last;

  g_mutex_lock (&lock);
  last = kept[KEPT - 1];
  memmove (&kept[1], &kept[0], sizeof kept[0] * (KEPT - 1));
  kept[0] = mask;
  g_mutex_unlock (&lock);
  if (last != NULL)
    sw_stitch_mask_free (last);
}
