/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-relief.h"

#include <math.h>

#define DIRECTIONS 8
#define STEPS 10
#define BLOCK 16 /* places */
/* The lamp as seen: half its width and height, radians, and the parts it is looked at in. */
#define LAMP_WIDE 0.55f
#define LAMP_HIGH 0.42f
#define LAMP_PARTS 5

void
sw_relief_init (SwRelief *relief, double left, double top, double right, double bottom, double step, double ground)
{
  gsize n;

  step = MAX (step, MAX (right - left, bottom - top) / 4000);
  *relief = (SwRelief){
    .width = (int) ceil ((right - left) / step) + 1,
    .height = (int) ceil ((bottom - top) / step) + 1,
    .left = (float) left,
    .top = (float) top,
    .step = (float) step,
    .ground = (float) ground,
  };
  n = (gsize) relief->width * (gsize) relief->height;
  relief->heights = g_new (float, n);
  relief->sky = g_new (float, n);
  relief->lamp = g_new (float, n);
  for (gsize i = 0; i < n; i++)
    relief->heights[i] = relief->ground;
}

void
sw_relief_clear (SwRelief *relief)
{
  g_free (relief->heights);
  g_free (relief->sky);
  g_free (relief->lamp);
}

void
sw_relief_raise (SwRelief *relief, float x, float y, float z)
{
  const int i = (int) lrintf ((x - relief->left) / relief->step), j = (int) lrintf ((y - relief->top) / relief->step);
  float *height;

  if (i < 0 || j < 0 || i >= relief->width || j >= relief->height)
    return;
  height = &relief->heights[(gsize) j * (gsize) relief->width + (gsize) i];
  *height = MAX (*height, z);
}

/* Points of one patch of the skin, close enough to leave no gap. */
static void
add_patch (SwRelief *relief, const float *a, const float *b, const float *c, const float *d, float x, float y)
{
  const float wide = MAX (hypotf (b[0] - a[0], b[1] - a[1]), hypotf (d[0] - c[0], d[1] - c[1]));
  const float high = MAX (hypotf (c[0] - a[0], c[1] - a[1]), hypotf (d[0] - b[0], d[1] - b[1]));
  const int n = MIN ((int) (wide / relief->step * 1.5f) + 1, 64), m = MIN ((int) (high / relief->step * 1.5f) + 1, 64);

  for (int j = 0; j < m; j++)
    for (int i = 0; i < n; i++)
      {
        const float u = ((float) i + 0.5f) / (float) n, v = ((float) j + 0.5f) / (float) m;
        float p[3];

        for (int k = 0; k < 3; k++)
          p[k] = (a[k] + (b[k] - a[k]) * u) * (1 - v) + (c[k] + (d[k] - c[k]) * u) * v;
        sw_relief_raise (relief, p[0] + x, p[1] + y, p[2]);
      }
}

void
sw_relief_add (SwRelief *relief, const SwBundle *bundle, double x, double y)
{
  const gsize columns = (gsize) bundle->n_around + 1;

  for (gsize i = 0; i + 1 < (gsize) bundle->n_rings; i++)
    for (gsize j = 0; j + 1 < columns; j++)
      {
        const float *a = bundle->points + (i * columns + j) * 3;

        add_patch (relief, a, a + 3, a + columns * 3, a + columns * 3 + 3, (float) x, (float) y);
      }
}

typedef struct
{
  float x, y;
} Way;

/* Directions that are looked in: neighbouring places look in others, so that few do. */
typedef struct
{
  Way sky[2][DIRECTIONS], lamp[LAMP_PARTS];
  float height; /* of the lamp, radians */
} Ways;

static void
ways_init (Ways *ways)
{
  const float middle = atan2f (SW_LAMP_Y, SW_LAMP_X);

  for (int k = 0; k < 2 * DIRECTIONS; k++)
    {
      const float angle = (float) G_PI * (float) k / DIRECTIONS;

      ways->sky[k % 2][k / 2] = (Way){ cosf (angle), sinf (angle) };
    }
  for (int k = 0; k < LAMP_PARTS; k++)
    {
      const float angle = middle + LAMP_WIDE * (2 * ((float) k + 0.5f) / LAMP_PARTS - 1);

      ways->lamp[k] = (Way){ cosf (angle), sinf (angle) };
    }
  ways->height = atanf (SW_LAMP_Z / hypotf (SW_LAMP_X, SW_LAMP_Y));
}

static float
height_at (const SwRelief *relief, float i, float j)
{
  const int x = (int) (i + 0.5f), y = (int) (j + 0.5f);

  if (i < 0 || j < 0 || x >= relief->width || y >= relief->height)
    return relief->ground;
  return relief->heights[(gsize) y * (gsize) relief->width + (gsize) x];
}

/* The steepest rise, height over distance, that is met from a place in one direction. */
static float
steepest (const SwRelief *relief, int i, int j, float dx, float dy, float reach)
{
  const float here = relief->heights[(gsize) j * (gsize) relief->width + (gsize) i];
  float most = 0;

  for (int k = 1; k <= STEPS; k++)
    {
      const float t = (float) k / STEPS, far = 0.8f + reach * t * t; /* close together near by */
      const float rise = height_at (relief, (float) i + dx * far, (float) j + dy * far) - here;

      most = MAX (most, rise / (far * relief->step));
    }
  return most;
}

/* Share of an evenly bright sky, weighed by the cosine, above horizons of these rises: the mean of 1 - sin^2. */
static float
sky_at (const SwRelief *relief, const Ways *ways, int i, int j, float reach)
{
  float open = 0;

  for (int k = 0; k < DIRECTIONS; k++)
    {
      const Way *way = &ways->sky[(i + j) & 1][k];
      const float rise = steepest (relief, i, j, way->x, way->y, reach);

      open += 1 / (1 + rise * rise);
    }
  return open / DIRECTIONS;
}

/* The lamp is wide: seen from a place it reaches over several directions, and through several heights. */
static float
lamp_at (const SwRelief *relief, const Ways *ways, int i, int j, float reach)
{
  float seen = 0;

  for (int k = 0; k < LAMP_PARTS; k++)
    {
      const float rise = steepest (relief, i, j, ways->lamp[k].x, ways->lamp[k].y, reach);
      const float above = rise > 0 ? ways->height - atanf (rise) : ways->height;
      const float t = CLAMP (0.5f + 0.5f * above / LAMP_HIGH, 0, 1);

      seen += t * t * (3 - 2 * t);
    }
  return seen / LAMP_PARTS;
}

/* The directions differ from place to place like a draughtboard; neighbours are mixed to even that out. */
static void
blur (float *map, int width, int height)
{
  g_autofree float *from = g_memdup2 (map, (gsize) width * (gsize) height * sizeof (float));

  for (int j = 1; j + 1 < height; j++)
    for (int i = 1; i + 1 < width; i++)
      {
        const float *p = from + (gsize) j * (gsize) width + (gsize) i;

        map[(gsize) j * (gsize) width + (gsize) i] = (4 * p[0] + 2 * (p[-1] + p[1] + p[-width] + p[width]) + p[-width - 1] + p[-width + 1] + p[width - 1] + p[width + 1]) / 16;
      }
}

void
sw_relief_smooth (SwRelief *relief)
{
  blur (relief->heights, relief->width, relief->height);
}

typedef struct
{
  SwRelief *relief;
  Ways ways;
  float reach;  /* places */
  int next_row; /* atomic */
} Job;

/* Whether anything stands near a block of places; most of the table is open. */
static gboolean
is_open (const SwRelief *relief, int left, int top, int reach)
{
  const int right = MIN (left + BLOCK + reach, relief->width), bottom = MIN (top + BLOCK + reach, relief->height);

  for (int j = MAX (top - reach, 0); j < bottom; j += 2)
    for (int i = MAX (left - reach, 0); i < right; i += 2)
      if (relief->heights[(gsize) j * (gsize) relief->width + (gsize) i] > relief->ground)
        return FALSE;
  return TRUE;
}

static void
light_block (const Job *job, int left, int top)
{
  const SwRelief *relief = job->relief;
  const gboolean open = is_open (relief, left, top, (int) job->reach + 2);

  for (int j = top; j < MIN (top + BLOCK, relief->height); j++)
    for (int i = left; i < MIN (left + BLOCK, relief->width); i++)
      {
        const gsize at = (gsize) j * (gsize) relief->width + (gsize) i;

        relief->sky[at] = open ? 1 : sky_at (relief, &job->ways, i, j, job->reach);
        relief->lamp[at] = open ? 1 : lamp_at (relief, &job->ways, i, j, job->reach);
      }
}

static gpointer
light_worker (gpointer data)
{
  Job *job = data;
  const int n = (job->relief->height + BLOCK - 1) / BLOCK;

  for (int row = g_atomic_int_add (&job->next_row, 1); row < n; row = g_atomic_int_add (&job->next_row, 1))
    for (int left = 0; left < job->relief->width; left += BLOCK)
      light_block (job, left, row * BLOCK);
  return NULL;
}

void
sw_relief_light (SwRelief *relief, double reach)
{
  Job job = { .relief = relief, .reach = (float) reach / relief->step };
  GThread *other;

  ways_init (&job.ways);
  other = g_thread_new ("relief", light_worker, &job);
  light_worker (&job);
  g_thread_join (other);
  blur (relief->sky, relief->width, relief->height);
  blur (relief->lamp, relief->width, relief->height);
}

void
sw_relief_at (const SwRelief *relief, float x, float y, float *sky, float *lamp)
{
  const float u = CLAMP ((x - relief->left) / relief->step, 0, (float) relief->width - 1.001f);
  const float v = CLAMP ((y - relief->top) / relief->step, 0, (float) relief->height - 1.001f);
  const int i = (int) u, j = (int) v;
  const float a = u - (float) i, b = v - (float) j;
  const gsize at = (gsize) j * (gsize) relief->width + (gsize) i;
  const float *s = relief->sky + at, *l = relief->lamp + at;

  *sky = (s[0] * (1 - a) + s[1] * a) * (1 - b) + (s[relief->width] * (1 - a) + s[relief->width + 1] * a) * b;
  *lamp = (l[0] * (1 - a) + l[1] * a) * (1 - b) + (l[relief->width] * (1 - a) + l[relief->width + 1] * a) * b;
}

void
sw_relief_normal (const SwRelief *relief, float x, float y, float *normal, float *height)
{
  const float u = CLAMP ((x - relief->left) / relief->step, 1, (float) relief->width - 2.001f);
  const float v = CLAMP ((y - relief->top) / relief->step, 1, (float) relief->height - 2.001f);
  const int i = (int) u, j = (int) v, w = relief->width;
  const float a = u - (float) i, b = v - (float) j, *h = relief->heights + (gsize) j * (gsize) relief->width + (gsize) i;
  const float dx0 = (h[1] - h[-1]) * (1 - a) + (h[2] - h[0]) * a, dx1 = (h[w + 1] - h[w - 1]) * (1 - a) + (h[w + 2] - h[w]) * a;
  const float dy0 = (h[w] - h[-w]) * (1 - b) + (h[2 * w] - h[0]) * b, dy1 = (h[w + 1] - h[1 - w]) * (1 - b) + (h[2 * w + 1] - h[1]) * b;
  const float sx = (dx0 * (1 - b) + dx1 * b) / (2 * relief->step), sy = (dy0 * (1 - a) + dy1 * a) / (2 * relief->step);
  const float length = sqrtf (1 + sx * sx + sy * sy);

  normal[0] = -sx / length;
  normal[1] = -sy / length;
  normal[2] = 1 / length;
  *height = (h[0] * (1 - a) + h[1] * a) * (1 - b) + (h[w] * (1 - a) + h[w + 1] * a) * b;
}
