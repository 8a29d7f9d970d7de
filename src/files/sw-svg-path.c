/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-svg-private.h"

#include <math.h>
#include <string.h>

/* Path data of SVG 1.1 (W3C Recommendation 2011), chapter 8.3, as rings of points. */

#define MOST_LINES 400 /* that one curve becomes */

typedef struct
{
  const char *at;
  const cairo_matrix_t *matrix;
  double step;
  gsize *room;
  SwOutline *outline;
  SwPoint start, here; /* of the ring, in the path's own units */
  SwPoint handle;      /* of the last curve */
  char last;           /* command, as a capital */
  gboolean open;       /* a ring has been begun */
} Reader;

void
sw_outline_init (SwOutline *outline)
{
  outline->points = g_array_new (FALSE, FALSE, sizeof (SwPoint));
  outline->ends = g_array_new (FALSE, FALSE, sizeof (guint));
  outline->closed = g_array_new (FALSE, FALSE, sizeof (gboolean));
}

void
sw_outline_clear (SwOutline *outline)
{
  g_array_unref (outline->points);
  g_array_unref (outline->ends);
  g_array_unref (outline->closed);
}

void
sw_outline_end_ring (SwOutline *outline, gboolean closed)
{
  const guint from = outline->ends->len > 0 ? g_array_index (outline->ends, guint, outline->ends->len - 1) : 0;

  if (outline->points->len == from)
    return;
  g_array_append_val (outline->ends, outline->points->len);
  g_array_append_val (outline->closed, closed);
}

static gboolean
add_point (Reader *r, SwPoint point)
{
  if (*r->room == 0)
    return FALSE;
  --*r->room;
  cairo_matrix_transform_point (r->matrix, &point.x, &point.y);
  if (!isfinite (point.x) || !isfinite (point.y))
    return FALSE;
  g_array_append_val (r->outline->points, point);
  return TRUE;
}

/* A ring that is drawn on after it was closed begins where it began. */
static gboolean
begin_if_needed (Reader *r)
{
  if (r->open)
    return TRUE;
  r->open = TRUE;
  r->start = r->here;
  return add_point (r, r->here);
}

static gboolean
line_to (Reader *r, SwPoint to)
{
  if (!begin_if_needed (r) || !add_point (r, to))
    return FALSE;
  r->here = to;
  return TRUE;
}

static double
mapped_length (const Reader *r, SwPoint a, SwPoint b)
{
  double dx = b.x - a.x, dy = b.y - a.y;

  cairo_matrix_transform_distance (r->matrix, &dx, &dy);
  return hypot (dx, dy);
}

static SwPoint
between (SwPoint a, SwPoint b, double t)
{
  return (SwPoint){ a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t };
}

static gboolean
curve_to (Reader *r, SwPoint a, SwPoint b, SwPoint to)
{
  const SwPoint from = r->here;
  const double length = mapped_length (r, from, a) + mapped_length (r, a, b) + mapped_length (r, b, to);
  const int n = (int) CLAMP (ceil (length / r->step), 4, MOST_LINES);

  for (int i = 1; i < n; i++)
    {
      const double t = (double) i / n;
      const SwPoint ab = between (a, b, t);
      const SwPoint left = between (between (from, a, t), ab, t), right = between (ab, between (b, to, t), t);

      if (!line_to (r, between (left, right, t)))
        return FALSE;
    }
  r->handle = b;
  return line_to (r, to);
}

static double
angle_between (double ux, double uy, double vx, double vy)
{
  return atan2 (ux * vy - uy * vx, ux * vx + uy * vy);
}

/* From end points to the centre: appendix F.6.5 of the specification, radii made large enough by F.6.6. */
static gboolean
arc_to (Reader *r, double rx, double ry, double turn, gboolean large, gboolean sweep, SwPoint to)
{
  const SwPoint from = r->here;
  const double c = cos (turn), s = sin (turn);
  const double x = c * (from.x - to.x) / 2 + s * (from.y - to.y) / 2, y = -s * (from.x - to.x) / 2 + c * (from.y - to.y) / 2;
  double grow, root, cx, cy, start, span;
  int n;

  rx = fabs (rx);
  ry = fabs (ry);
  if (!(rx > 1e-9 && ry > 1e-9) || (fabs (x) + fabs (y)) < 1e-12)
    return line_to (r, to);
  grow = sqrt (MAX (x * x / (rx * rx) + y * y / (ry * ry), 1));
  rx *= grow;
  ry *= grow;
  root = sqrt (MAX (rx * rx * ry * ry - rx * rx * y * y - ry * ry * x * x, 0) / (rx * rx * y * y + ry * ry * x * x));
  root = large == sweep ? -root : root;
  cx = root * rx * y / ry;
  cy = -root * ry * x / rx;
  start = angle_between (1, 0, (x - cx) / rx, (y - cy) / ry);
  span = angle_between ((x - cx) / rx, (y - cy) / ry, (-x - cx) / rx, (-y - cy) / ry);
  if (!sweep && span > 0)
    span -= 2 * G_PI;
  else if (sweep && span < 0)
    span += 2 * G_PI;
  if (!isfinite (start) || !isfinite (span))
    return FALSE;
  n = (int) CLAMP (ceil (fabs (span) * mapped_length (r, (SwPoint){ 0, 0 }, (SwPoint){ MAX (rx, ry), 0 }) / r->step), 8, MOST_LINES);
  for (int i = 1; i < n; i++)
    {
      const double at = start + span * i / n, u = cx + rx * cos (at), v = cy + ry * sin (at);

      if (!line_to (r, (SwPoint){ c * u - s * v + (from.x + to.x) / 2, s * u + c * v + (from.y + to.y) / 2 }))
        return FALSE;
    }
  return line_to (r, to);
}

/* Commands */

static const struct
{
  char command;
  int numbers;
} commands[] = {
  { 'M', 2 },
  { 'L', 2 },
  { 'H', 1 },
  { 'V', 1 },
  { 'C', 6 },
  { 'S', 4 },
  { 'Q', 4 },
  { 'T', 2 },
  { 'A', 7 },
};

static int
numbers_of (char command)
{
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    if (commands[i].command == command)
      return commands[i].numbers;
  return -1;
}

/* An arc's flags may stand without a blank: "a1 1 0 00.5.5". */
static gboolean
read_flag (Reader *r, double *number)
{
  r->at += strspn (r->at, " \t\r\n,");
  if (*r->at != '0' && *r->at != '1')
    return FALSE;
  *number = *r->at++ - '0';
  r->at += strspn (r->at, " \t\r\n,");
  return TRUE;
}

static gboolean
read_numbers (Reader *r, char command, int n, double *a)
{
  for (int i = 0; i < n; i++)
    if (!(command == 'A' && (i == 3 || i == 4) ? read_flag (r, &a[i]) : sw_svg_number (&r->at, &a[i])))
      return FALSE;
  return TRUE;
}

/* The handle mirrored, if the last command had one. */
static SwPoint
mirrored (const Reader *r, const char *after)
{
  if (r->last == '\0' || strchr (after, r->last) == NULL)
    return r->here;
  return (SwPoint){ 2 * r->here.x - r->handle.x, 2 * r->here.y - r->handle.y };
}

static gboolean
quadratic_to (Reader *r, SwPoint handle, SwPoint to)
{
  const gboolean done = curve_to (r, between (r->here, handle, 2 / 3.0), between (to, handle, 2 / 3.0), to);

  r->handle = handle;
  return done;
}

static gboolean
move_to (Reader *r, SwPoint to)
{
  sw_outline_end_ring (r->outline, FALSE);
  r->open = FALSE;
  r->here = to;
  return begin_if_needed (r);
}

/* One command with its numbers, made absolute. */
static gboolean
draw (Reader *r, char command, const double *a, SwPoint from)
{
#define AT(i) ((SwPoint){ from.x + a[i], from.y + a[(i) + 1] })
  switch (command)
    {
    case 'M':
      return move_to (r, AT (0));
    case 'L':
      return line_to (r, AT (0));
    case 'H':
      return line_to (r, (SwPoint){ from.x + a[0], r->here.y });
    case 'V':
      return line_to (r, (SwPoint){ r->here.x, from.y + a[0] });
    case 'C':
      return curve_to (r, AT (0), AT (2), AT (4));
    case 'S':
      return curve_to (r, mirrored (r, "CS"), AT (0), AT (2));
    case 'Q':
      return quadratic_to (r, AT (0), AT (2));
    case 'T':
      return quadratic_to (r, mirrored (r, "QT"), AT (0));
    case 'A':
      return arc_to (r, a[0], a[1], a[2] * G_PI / 180, a[3] > 0, a[4] > 0, AT (5));
    default:
      return FALSE;
    }
#undef AT
}

/* A command with as many sets of numbers as follow it; moves on are lines. */
static gboolean
read_command (Reader *r, char letter)
{
  const gboolean relative = g_ascii_islower (letter);
  char command = g_ascii_toupper (letter);
  double a[7];

  if (command == 'Z')
    {
      sw_outline_end_ring (r->outline, TRUE);
      r->open = FALSE;
      r->here = r->start;
      r->last = 'Z';
      return TRUE;
    }
  if (numbers_of (command) < 0)
    return FALSE;
  do
    {
      const SwPoint from = relative ? r->here : (SwPoint){ 0, 0 };

      if (!read_numbers (r, command, numbers_of (command), a) || !draw (r, command, a, from))
        return FALSE;
      r->last = command;
      command = command == 'M' ? 'L' : command;
    }
  while (*r->at != '\0' && strchr ("+-.0123456789", *r->at) != NULL);
  return TRUE;
}

gboolean
sw_svg_path (const char *d, const cairo_matrix_t *matrix, double step, gsize *room, SwOutline *outline)
{
  Reader r = { .at = d, .matrix = matrix, .step = step, .room = room, .outline = outline };

  r.at += strspn (r.at, " \t\r\n,");
  if (*r.at != '\0' && *r.at != 'M' && *r.at != 'm')
    return FALSE;
  while (*r.at != '\0')
    {
      const char letter = *r.at++;

      r.at += strspn (r.at, " \t\r\n,");
      if (!read_command (&r, letter))
        return FALSE;
      r.at += strspn (r.at, " \t\r\n,");
    }
  sw_outline_end_ring (outline, FALSE);
  return TRUE;
}
