/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-svg-private.h"

#include <math.h>
#include <string.h>

/* Beyond this no drawing of a pan goes, in whatever unit; it keeps sums far from infinity. */
#define LARGEST 1e7

char *
sw_svg_data_name (const char *member)
{
  char *name = g_strconcat ("data-", member, NULL);

  return g_strdelimit (name, "_", '-');
}

const char *
sw_svg_attribute (xmlNode *node, const char *name)
{
  for (xmlAttr *attribute = node->properties; attribute != NULL; attribute = attribute->next)
    if (attribute->ns == NULL && g_str_equal ((const char *) attribute->name, name))
      return attribute->children != NULL ? (const char *) attribute->children->content : "";
  return NULL;
}

static const char *
past_blanks (const char *at)
{
  return at + strspn (at, " \t\r\n\f");
}

/* A number as CSS and path data write it: g_ascii_strtod() would also take "inf", "nan" and 0x1p3. */
static gsize
number_length (const char *at)
{
  const char *c = at;
  gsize digits, fraction = 0;

  c += *c == '+' || *c == '-' ? 1 : 0;
  digits = strspn (c, "0123456789");
  c += digits;
  if (*c == '.')
    {
      fraction = strspn (c + 1, "0123456789");
      c += 1 + fraction;
    }
  if (digits + fraction == 0)
    return 0;
  if (*c == 'e' || *c == 'E')
    {
      const char *power = c + 1 + (c[1] == '+' || c[1] == '-' ? 1 : 0);
      const gsize n = strspn (power, "0123456789");

      if (n > 0)
        c = power + n;
    }
  return (gsize) (c - at);
}

gboolean
sw_svg_number (const char **at, double *number)
{
  const char *start = past_blanks (*at);
  const gsize n = number_length (start);
  char text[64];

  if (n == 0 || n >= sizeof text)
    return FALSE;
  memcpy (text, start, n);
  text[n] = '\0';
  *number = g_ascii_strtod (text, NULL);
  if (!isfinite (*number) || fabs (*number) > LARGEST)
    return FALSE;
  start = past_blanks (start + n);
  *at = past_blanks (*start == ',' ? start + 1 : start);
  return TRUE;
}

static const struct
{
  const char *unit;
  double px;
} units[] = {
  { "", 1 },
  { "px", 1 },
  { "mm", SW_SVG_PX_PER_MM },
  { "cm", 10 * SW_SVG_PX_PER_MM },
  { "in", 96 },
  { "pt", 96 / 72.0 },
  { "pc", 16 },
  { "em", 16 }, /* of the usual letters */
  { "ex", 8 },
};

gboolean
sw_svg_length (const char *text, double whole, double *px)
{
  const char *at = text;
  g_autofree char *unit = NULL;
  double number;

  if (text == NULL || !sw_svg_number (&at, &number))
    return FALSE;
  unit = g_strchomp (g_strdup (at));
  if (g_str_equal (unit, "%"))
    {
      *px = number * whole / 100;
      return TRUE;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_ascii_strcasecmp (unit, units[i].unit) == 0)
      {
        *px = number * units[i].px;
        return TRUE;
      }
  return FALSE;
}

/* Transforms */

#define MOST_ARGUMENTS 6

static void
do_matrix (const double *a, int n, cairo_matrix_t *matrix)
{
  cairo_matrix_init (matrix, a[0], a[1], a[2], a[3], a[4], a[5]);
}

static void
do_translate (const double *a, int n, cairo_matrix_t *matrix)
{
  cairo_matrix_init_translate (matrix, a[0], n > 1 ? a[1] : 0);
}

static void
do_scale (const double *a, int n, cairo_matrix_t *matrix)
{
  cairo_matrix_init_scale (matrix, a[0], n > 1 ? a[1] : a[0]);
}

static void
do_rotate (const double *a, int n, cairo_matrix_t *matrix)
{
  const double x = n > 2 ? a[1] : 0, y = n > 2 ? a[2] : 0;

  cairo_matrix_init_translate (matrix, x, y);
  cairo_matrix_rotate (matrix, a[0] * G_PI / 180);
  cairo_matrix_translate (matrix, -x, -y);
}

static void
do_skew_x (const double *a, int n, cairo_matrix_t *matrix)
{
  cairo_matrix_init (matrix, 1, 0, tan (a[0] * G_PI / 180), 1, 0, 0);
}

static void
do_skew_y (const double *a, int n, cairo_matrix_t *matrix)
{
  cairo_matrix_init (matrix, 1, tan (a[0] * G_PI / 180), 0, 1, 0, 0);
}

static const struct
{
  const char *name;
  guint counts; /* bits: how many numbers it may have */
  void (*make) (const double *a, int n, cairo_matrix_t *matrix);
} transforms[] = {
  { "matrix", 1 << 6, do_matrix },
  { "translate", 1 << 1 | 1 << 2, do_translate },
  { "scale", 1 << 1 | 1 << 2, do_scale },
  { "rotate", 1 << 1 | 1 << 3, do_rotate },
  { "skewX", 1 << 1, do_skew_x },
  { "skewY", 1 << 1, do_skew_y },
};

/* One "name(numbers)"; moves on past it. */
static gboolean
read_transform (const char **at, cairo_matrix_t *matrix)
{
  const gsize length = strcspn (*at, " \t\r\n(");
  g_autofree char *name = g_strndup (*at, length);
  double numbers[MOST_ARGUMENTS];
  int n = 0;

  *at = past_blanks (*at + length);
  if (**at != '(')
    return FALSE;
  *at = past_blanks (*at + 1);
  while (n < MOST_ARGUMENTS && **at != ')' && sw_svg_number (at, &numbers[n]))
    n++;
  if (**at != ')')
    return FALSE;
  *at = past_blanks (*at + 1);
  *at = past_blanks (**at == ',' ? *at + 1 : *at);
  for (gsize i = 0; i < G_N_ELEMENTS (transforms); i++)
    if (g_str_equal (name, transforms[i].name) && (transforms[i].counts >> n & 1) != 0)
      {
        transforms[i].make (numbers, n, matrix);
        return TRUE;
      }
  return FALSE;
}

static gboolean
is_sane (const cairo_matrix_t *matrix)
{
  const double all[] = { matrix->xx, matrix->yx, matrix->xy, matrix->yy, matrix->x0, matrix->y0 };

  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    if (!isfinite (all[i]) || fabs (all[i]) > LARGEST)
      return FALSE;
  return TRUE;
}

gboolean
sw_svg_transform (const char *text, cairo_matrix_t *matrix)
{
  const char *at = past_blanks (text);

  if (g_str_equal (at, "none"))
    return TRUE;
  while (*at != '\0')
    {
      cairo_matrix_t one;

      if (!read_transform (&at, &one))
        return FALSE;
      cairo_matrix_multiply (matrix, &one, matrix);
      if (!is_sane (matrix))
        return FALSE;
    }
  return TRUE;
}

/* Where a smaller box lies in the larger along one direction: xMin 0, xMid 0.5, xMax 1. */
static double
aligned (const char *aspect, char direction)
{
  static const struct
  {
    const char *word;
    double share;
  } words[] = { { "Min", 0 }, { "Mid", 0.5 }, { "Max", 1 } };

  for (gsize i = 0; aspect != NULL && i < G_N_ELEMENTS (words); i++)
    {
      char wanted[] = { direction, words[i].word[0], words[i].word[1], words[i].word[2], '\0' };

      if (strstr (aspect, wanted) != NULL)
        return words[i].share;
    }
  return 0.5;
}

gboolean
sw_svg_viewport (xmlNode *node, double width, double height, cairo_matrix_t *matrix)
{
  const char *text = sw_svg_attribute (node, "viewBox");
  const char *aspect = sw_svg_attribute (node, "preserveAspectRatio");
  double box[4], scale_x, scale_y;

  if (text == NULL)
    return TRUE;
  for (int i = 0; i < 4; i++)
    if (!sw_svg_number (&text, &box[i]))
      return FALSE;
  if (!(box[2] > 0 && box[3] > 0 && width > 0 && height > 0))
    return FALSE;
  scale_x = width / box[2];
  scale_y = height / box[3];
  if (aspect == NULL || strstr (aspect, "none") == NULL)
    {
      const gboolean slice = aspect != NULL && strstr (aspect, "slice") != NULL;
      const double scale = slice ? MAX (scale_x, scale_y) : MIN (scale_x, scale_y);

      cairo_matrix_translate (matrix, (width - box[2] * scale) * aligned (aspect, 'x'), (height - box[3] * scale) * aligned (aspect, 'Y'));
      scale_x = scale_y = scale;
    }
  cairo_matrix_scale (matrix, scale_x, scale_y);
  cairo_matrix_translate (matrix, -box[0], -box[1]);
  return is_sane (matrix);
}
