/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-laid-hairs.h"

#include "draw/sw-linear.h"

#include <math.h>

#define FIBRE_CM 0.0036f /* with the blur of a lens; a fibre is a third of it */
#define MOST 90000
#define OVER 0.08f     /* of the hairs over the skein, so many are drawn */
#define FAINTEST 0.30f /* and how opaque these are */
#define STEP 0.5f      /* px */

typedef struct
{
  float x, y; /* px in the picture */
  float dx, dy, bend;
  float length, alpha;
  guint32 colour;
} Hair;

/* Over what is there, a share of the four pixels about a place each. */
static void
splat (const SwLaidHairs *hairs, float x, float y, guint32 colour, float alpha)
{
  const int i = (int) floorf (x - 0.5f), j = (int) floorf (y - 0.5f);
  const float a = x - 0.5f - (float) i, b = y - 0.5f - (float) j;

  for (int k = 0; k < 4; k++)
    {
      const int column = i + (k & 1), row = j + (k >> 1);
      guint32 *pixel = hairs->pixels + (gssize) row * hairs->stride + column;

      if (column >= 0 && row >= 0 && column < hairs->width && row < hairs->height)
        *pixel = sw_linear_over (sw_linear_premultiply (colour, alpha * (k & 1 ? a : 1 - a) * (k >> 1 ? b : 1 - b)), *pixel);
    }
}

static void
draw_hair (const SwLaidHairs *hairs, Hair *hair)
{
  const int n = (int) (hair->length / STEP);
  const float bend = hair->bend / (float) MAX (n, 1);

  for (int k = 0; k < n; k++)
    {
      const float dx = hair->dx, thin = 1 - (float) k / (float) n;

      splat (hairs, hair->x, hair->y, hair->colour, hair->alpha * STEP * MIN (1, 2 * thin));
      hair->x += STEP * hair->dx;
      hair->y += STEP * hair->dy;
      hair->dx -= bend * hair->dy;
      hair->dy += bend * dx;
    }
}

static float
chance (guint64 address, guint64 part)
{
  return (float) sw_chance_even (sw_chance_mix (address, part));
}

/* One by lot. Returns: FALSE if it would not be seen */
static gboolean
hair_at (const SwLaidHairs *hairs, guint64 address, Hair *hair)
{
  const SwWrapPoint *p = &g_array_index (hairs->wraps->points, SwWrapPoint, (guint) (chance (address, 0) * (float) (hairs->points - 1))), *q = p + 1;
  const float t = chance (address, 1), x = p->x + t * (q->x - p->x), y = p->y + t * (q->y - p->y), length = hypotf (q->x - p->x, q->y - p->y);
  const float lift = 0.1f + 0.55f * chance (address, 2), way = chance (address, 3) < 0.5f ? -1 : 1, far = chance (address, 6);
  float normal[3], height, side, beside, norm;

  if (p->wrap != q->wrap || length < 1e-4f)
    return FALSE;
  sw_relief_normal (hairs->relief, x, y, normal, &height);
  beside = 1 - normal[2];
  if (beside < 0.35f && chance (address, 4) > OVER)
    return FALSE;
  if (p->z < height - 2.5f * hairs->relief->step && beside < 0.6f)
    return FALSE;
  /* Beside the skein they stand outwards. */
  side = beside > 0.2f ? copysignf (lift, normal[1] * (q->x - p->x) - normal[0] * (q->y - p->y)) : lift * (chance (address, 5) < 0.5f ? -1 : 1);
  *hair = (Hair){ .x = x * hairs->per_cm - hairs->left, .y = y * hairs->per_cm - hairs->top, .bend = 3.0f * (chance (address, 7) - 0.5f), .length = hairs->length * hairs->per_cm * (0.2f + 0.8f * far * far) };
  hair->dx = (way * (q->x - p->x) - side * (q->y - p->y)) / length;
  hair->dy = (way * (q->y - p->y) + side * (q->x - p->x)) / length;
  norm = hypotf (hair->dx, hair->dy);
  hair->dx /= norm;
  hair->dy /= norm;
  if (hair->x < -hair->length || hair->y < -hair->length || hair->x > (float) hairs->width + hair->length || hair->y > (float) hairs->height + hair->length)
    return FALSE;
  hair->alpha = MIN (FIBRE_CM * hairs->per_cm, 1) * (beside > 0.3f ? 1 : FAINTEST) * (0.4f + 0.6f * chance (address, 8));
  hair->colour = hairs->colour (hairs->data, x, y);
  return TRUE;
}

void
sw_laid_hairs_draw (const SwLaidHairs *hairs)
{
  const int n = (int) MIN (hairs->fuzz * 0.8f * (float) hairs->points, MOST);

  for (int i = 0; i < n; i++)
    {
      Hair hair;

      if (hair_at (hairs, sw_chance_mix (sw_chance_mix (hairs->seed, 0x68616972), (guint64) i), &hair))
        draw_hair (hairs, &hair);
    }
}
