/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * Layouts as SVG: what is written comes back as it was, and what was traced
 * comes back as the pour that a person would say it is. The shapes' figures
 * are plain geometry, worked out beside each of them.
 */
#include "../sw-test-sketch.h"

#include "files/sw-colourway.h"
#include "files/sw-svg.h"
#include "sketch/sw-edit.h"

#include <math.h>
#include <string.h>

#define NEAR_CM 0.01 /* a tenth of a millimetre */
#define NEAR_DEG 0.1

/* The lay is 60 cm by 8 cm, and a drawing's frame has it at 20, 20 mm: so 0, 0 cm is at 20, 100 mm. */
#define HEAD "<svg xmlns='http://www.w3.org/2000/svg' width='640mm' height='120mm' viewBox='0 0 640 120'>" \
             "<rect id='lay' x='20' y='20' width='600' height='80'/>"

static SwTraced *
read_text (const char *text, const SwSketch *sketch)
{
  g_autoptr (GError) error = NULL;
  SwTraced *traced = sw_svg_read (text, strlen (text), sketch, &error);

  g_assert_no_error (error);
  return traced;
}

static const SwTracedPour *
traced_at (const SwTraced *traced, guint i)
{
  g_assert_cmpuint (i, <, traced->pours->len);
  return &g_array_index (traced->pours, SwTracedPour, i);
}

/* The same ellipse or box may be told with its sides changed about. */
static void
assert_same_place (const SwStep *a, const SwStep *b)
{
  const double turned = fabs (remainder (a->angle_deg - b->angle_deg, 180));
  const gboolean about = a->kind != SW_STEP_BAND && turned > 45;
  const gboolean round_one = a->kind != SW_STEP_BAND && fabs (a->width_cm - a->length_cm) < 0.02 * a->width_cm;

  g_assert_cmpint (a->kind, ==, b->kind);
  g_assert_cmpfloat_with_epsilon (a->x_cm, b->x_cm, NEAR_CM);
  g_assert_cmpfloat_with_epsilon (a->y_cm, b->y_cm, NEAR_CM);
  g_assert_cmpfloat_with_epsilon (a->width_cm, about ? b->length_cm : b->width_cm, NEAR_CM);
  g_assert_cmpfloat_with_epsilon (a->length_cm, about ? b->width_cm : b->length_cm, NEAR_CM);
  if (!round_one)
    g_assert_cmpfloat (about ? fabs (turned - 90) : turned, <, NEAR_DEG);
}

static void
assert_same_pour (const SwStep *a, const SwStep *b)
{
  assert_same_place (a, b);
  g_assert_cmpstr (a->name, ==, b->name);
  g_assert_cmpuint (a->dye, ==, b->dye);
  g_assert_cmpfloat (a->amount_ml, ==, b->amount_ml);
  g_assert_cmpfloat (a->depth_percent, ==, b->depth_percent);
  g_assert_cmpfloat (a->worked_in, ==, b->worked_in);
  g_assert_cmpfloat (a->grams, ==, b->grams);
  g_assert_cmpint (a->dry, ==, b->dry);
  g_assert_cmpfloat (a->speck_mm, ==, b->speck_mm);
}

static void
remove_pours (SwSketch *sketch)
{
  for (guint i = sketch->steps->len; i > 0; i--)
    if (sw_step_is_pour (sketch->steps->pdata[i - 1]))
      g_ptr_array_remove_index (sketch->steps, i - 1);
}

/* Onto the sketch itself nothing changes; onto one without pours all of them come. */
static void
check_round_trip (const SwSketch *sketch)
{
  g_autofree char *text = sw_svg_write (sketch, NULL, FALSE);
  g_autoptr (SwTraced) back = read_text (text, sketch);
  g_autoptr (SwSketch) bare = sw_sketch_copy (sketch);
  g_autoptr (SwTraced) fresh = NULL;
  guint n = 0;

  g_assert_cmpuint (sw_traced_n_new (back), ==, 0);
  g_assert_cmpuint (sw_traced_n_moved (back, sketch), ==, 0);
  g_assert_cmpuint (back->n_left_out, ==, 0);
  g_assert_null (sw_traced_edit (back, sketch));
  remove_pours (bare);
  fresh = read_text (text, bare);
  g_assert_cmpuint (fresh->dyes->len, ==, 0);
  for (guint i = 0; i < sketch->steps->len; i++)
    if (sw_step_is_pour (sketch->steps->pdata[i]))
      {
        g_assert_cmpuint (traced_at (fresh, n)->pour->id, ==, 0);
        assert_same_pour (sketch->steps->pdata[i], traced_at (fresh, n++)->pour);
      }
  g_assert_cmpuint (fresh->pours->len, ==, n);
}

static void
test_demos (void)
{
  g_autofree char *folder = g_test_build_filename (G_TEST_DIST, "..", "data", "demos", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  int n = 0;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_autoptr (GFile) file = g_file_new_for_path (path);
      g_autoptr (SwSketch) sketch = sw_colourway_load (file, NULL, NULL, NULL);

      g_assert_nonnull (sketch);
      check_round_trip (sketch);
      n++;
    }
  g_assert_cmpint (n, >=, 5);
}

static SwStep *
random_pour (SwSketch *sketch, const SwDye *dye)
{
  static const SwStepKind kinds[] = { SW_STEP_BAND, SW_STEP_SPLOTCH, SW_STEP_SPECKLE };
  SwStep *step = test_add_step (sketch, kinds[g_test_rand_int_range (0, 3)]);
  const gboolean whole = step->kind == SW_STEP_BAND && g_test_rand_bit ();
  const double angle = step->kind == SW_STEP_BAND ? 75 : 180;

  step->dye = dye->id;
  step->x_cm = g_test_rand_double_range (1, 59);
  step->y_cm = g_test_rand_double_range (0.5, 7.5);
  step->width_cm = g_test_rand_double_range (0.5, 30);
  step->length_cm = whole ? 0 : g_test_rand_double_range (0.5, 12);
  step->angle_deg = g_test_rand_double_range (-angle, angle);
  step->amount_ml = g_test_rand_double_range (0, 50);
  return step;
}

static void
test_random (void)
{
  for (int round = 0; round < 40; round++)
    {
      g_autoptr (SwSketch) sketch = test_sketch (2);
      const SwDye *dye = sketch->dyes->pdata[round % 2];

      for (int i = 0; i < 20; i++)
        random_pour (sketch, dye);
      check_round_trip (sketch);
    }
}

/* One shape each */

static const struct
{
  const char *what, *shape;
  SwStepKind kind;
  double x, y, width, length, angle;
} shapes[] = {
  /* 100..150 mm along, beyond the skein on both sides */
  { "rectangle across", "<rect x='100' y='10' width='50' height='100'/>", SW_STEP_BAND, 10.5, 4, 5, 0, 0 },
  /* 45 .. 85 mm down is 1.5 .. 5.5 cm up */
  { "rectangle not across", "<rect x='120' y='45' width='60' height='40'/>", SW_STEP_BAND, 13, 3.5, 6, 4, 0 },
  /* leans 40 mm over the 80 of the skein: 26.565 degrees, to the right on the far side */
  { "leaning", "<path d='M100 100 L140 100 L180 20 L140 20 Z'/>", SW_STEP_BAND, 12, 4, 4, 0, 26.565051 },
  { "polygon", "<polygon points='100,100 140,100 180,20 140,20'/>", SW_STEP_BAND, 12, 4, 4, 0, 26.565051 },
  /* a strip of 30 mm turned by 20 degrees about the skein's middle: 30 / cos 20 along */
  { "turned strip", "<rect x='305' y='-40' width='30' height='200' transform='rotate(20 320 60)'/>", SW_STEP_BAND, 30, 4, 3.1925332, 0, 20 },
  { "circle", "<circle cx='220' cy='60' r='20'/>", SW_STEP_SPLOTCH, 20, 4, 4, 4, 0 },
  { "ellipse", "<ellipse cx='220' cy='70' rx='30' ry='10'/>", SW_STEP_SPLOTCH, 20, 3, 6, 2, 0 },
  /* clockwise on the page is -30 degrees with y upward */
  { "turned ellipse", "<ellipse cx='220' cy='70' rx='30' ry='10' transform='rotate(30 220 70)'/>", SW_STEP_SPLOTCH, 20, 3, 6, 2, -30 },
  { "scaled circle", "<g transform='translate(220 70)'><circle r='10' transform='scale(3 1)'/></g>", SW_STEP_SPLOTCH, 20, 3, 6, 2, 0 },
  { "two arcs", "<path d='M190 70 a30 10 0 0 1 60 0 a30 10 0 0 1 -60 0 z'/>", SW_STEP_SPLOTCH, 20, 3, 6, 2, 0 },
  { "arcs' flags together", "<path d='M190 70a30 10 0 0160 0a30 10 0 01-60 0z'/>", SW_STEP_SPLOTCH, 20, 3, 6, 2, 0 },
  /* four Bezier quarters of a circle, 0.5523 of the radius: within 0.03 % of it */
  { "four curves", "<path d='M240 60 C240 71.046 231.046 80 220 80 S200 71.046 200 60 S208.954 40 220 40 S240 48.954 240 60'/>", SW_STEP_SPLOTCH, 20, 4, 4, 4, 0 },
  { "relative, without blanks", "<path d='m100 100h50v-80h-50z'/>", SW_STEP_BAND, 10.5, 4, 5, 0, 0 },
  { "a flat diamond", "<path d='M200 60 L220 50 L240 60 L220 70 Z'/>", SW_STEP_SPLOTCH, 20, 4, 3.1915, 1.5958, 0 },
  { "speckles by name", "<rect id='speckle-left' x='120' y='40' width='60' height='40'/>", SW_STEP_SPECKLE, 13, 4, 6, 4, 0 },
  { "clone", "<defs><rect id='r' width='50' height='100'/></defs><use href='#r' x='100' y='10'/>", SW_STEP_BAND, 10.5, 4, 5, 0, 0 },
  /* 50 mm, twice as wide, moved to 100 mm by the two clones and 30 by the inner one's place */
  { "clone of a clone", "<defs><rect id='r' width='25' height='100'/><use id='u' href='#r' x='15' y='10'/></defs><use href='#u' transform='translate(70 0) scale(2 1)'/>", SW_STEP_BAND, 10.5, 4, 5, 0, 0 },
  /* a symbol of 10 by 10 units shown 60 mm by 20 */
  { "symbol", "<symbol id='s' viewBox='0 0 10 10' preserveAspectRatio='none'><ellipse cx='5' cy='5' rx='5' ry='5'/></symbol><use href='#s' x='190' y='60' width='60' height='20'/>", SW_STEP_SPLOTCH, 20, 3, 6, 2, 0 },
  { "speckles by a clone's name", "<defs><rect id='speckle-left' width='60' height='40'/></defs><use href='#speckle-left' x='120' y='40'/>", SW_STEP_SPECKLE, 13, 4, 6, 4, 0 },
  { "speckles by data", "<ellipse data-kind='speckle' cx='150' cy='60' rx='30' ry='20'/>", SW_STEP_SPECKLE, 13, 4, 5.3174, 3.5449, 0 },
};

static void
test_shape (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autofree char *text = g_strconcat (HEAD, shapes[i].shape, "</svg>", NULL);
  g_autoptr (SwTraced) traced = read_text (text, sketch);
  SwStep wanted = { .kind = shapes[i].kind, .x_cm = shapes[i].x, .y_cm = shapes[i].y, .width_cm = shapes[i].width, .length_cm = shapes[i].length, .angle_deg = shapes[i].angle };

  g_assert_cmpuint (traced->pours->len, ==, 1);
  assert_same_place (&wanted, traced_at (traced, 0)->pour);
}

/* The band from 10 to 15 cm, in drawings of other sizes and units */

static const struct
{
  const char *what, *text;
} pages[] = {
  { "px of CSS", "<svg width='2267.7165' height='302.3622'><rect x='377.9528' y='0' width='188.9764' height='302.3622'/></svg>" },
  { "a page of the lay's size", "<svg width='600mm' height='80mm' viewBox='0 0 60 8'><rect x='10' y='-1' width='5' height='10'/></svg>" },
  { "a page around it", "<svg width='700mm' height='180mm' viewBox='0 0 700 180'><rect x='150' y='0' width='50' height='180'/></svg>" },
  { "inches", "<svg width='10in' height='10in' viewBox='0 0 10 10'><g transform='scale(0.393700787)'><rect x='-7.3' y='8' width='5' height='10'/></g></svg>" },
  { "points by mistake", "<svg width='480' height='90' viewBox='0 0 640 120'><rect id='lay' x='20' y='20' width='600' height='80'/><rect x='120' y='0' width='50' height='120'/></svg>" },
  { "a letter-box", "<svg width='600mm' height='600mm' viewBox='0 0 60 8'><rect id='lay' width='60' height='8'/><rect x='10' y='0' width='5' height='8'/></svg>" },
  { "svg within svg", "<svg width='600mm' height='80mm' viewBox='0 0 600 80'><svg x='100' width='50' height='80' viewBox='0 0 5 8'><rect width='5' height='8'/></svg></svg>" },
  { "prefixed", "<s:svg xmlns:s='http://www.w3.org/2000/svg' width='60cm' height='8cm' viewBox='0 0 60 8'><s:rect x='10' width='5' height='8'/></s:svg>" },
};

static void
test_page (gconstpointer data)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwTraced) traced = read_text (pages[GPOINTER_TO_SIZE (data)].text, sketch);
  const SwStep wanted = { .kind = SW_STEP_BAND, .x_cm = 12.5, .y_cm = 4, .width_cm = 5 };

  g_assert_cmpuint (traced->pours->len, ==, 1);
  assert_same_place (&wanted, traced_at (traced, 0)->pour);
}

/* What is no pour */

static void
test_left_out (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwTraced) traced = read_text (HEAD "<rect x='100' y='10' width='50' height='100'/>"
                                                "<path d='M100 50 L200 60' fill='none' stroke='red'/>"
                                                "<line x1='0' y1='0' x2='10' y2='10'/>"
                                                "<rect x='100' y='300' width='50' height='10'/>"
                                                "<circle cx='100' cy='60' r='0.5'/>"
                                                "<g display='none'><circle cx='100' cy='60' r='20'/></g>"
                                                "<circle cx='100' cy='60' r='20' style='display:none'/>"
                                                "<defs><circle cx='100' cy='60' r='20'/></defs>"
                                                "<g id='numbers'><circle cx='100' cy='60' r='20'/></g>"
                                                "<text x='100' y='60'>1</text></svg>",
                                           sketch);

  g_assert_cmpuint (traced->pours->len, ==, 1);
  g_assert_cmpuint (traced->n_left_out, ==, 4);
}

static void
test_hole (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwTraced) traced = read_text (HEAD "<path d='M100 30h60v60h-60z M120 50h20v20h-20z M300 30h60v60h-60z'/></svg>", sketch);

  g_assert_cmpuint (traced->pours->len, ==, 2);
  g_assert_cmpfloat_with_epsilon (traced_at (traced, 0)->pour->x_cm, 11, NEAR_CM);
  g_assert_cmpfloat_with_epsilon (traced_at (traced, 1)->pour->x_cm, 31, NEAR_CM);
}

/* Dyes */

static const struct
{
  const char *what, *shape;
  const char *dye;         /* its name */
  double red, green, blue; /* of a new one; -1 if it is known */
} dyes[] = {
  { "by the group's title", "<g><title> blue </title>%s</g>", "Blue", -1, 0, 0 },
  { "by the group's id", "<g id='Blue'>%s</g>", "Blue", -1, 0, 0 },
  { "by a layer's label", "<g xmlns:e='urn:editor' e:label='Blue'>%s</g>", "Blue", -1, 0, 0 },
  { "name before colour", "<g id='Blue' fill='rgb(178,60,52)'>%s</g>", "Blue", -1, 0, 0 },
  { "by colour", "<g fill='#1e508c'>%s</g>", "Blue", -1, 0, 0 },
  { "by nearly the colour", "<g style='stroke:red;fill:rgb(31, 79, 141)'>%s</g>", "Blue", -1, 0, 0 },
  { "by a class's colour", "<style>.a,.b{fill:#1e508c;} .c{fill:red}</style><g class='x b'>%s</g>", "Blue", -1, 0, 0 },
  { "without a colour the first", "%s", "Red", -1, 0, 0 },
  { "new, named by its group", "<g id='g7' fill='#00f080'><title>Fern</title>%s</g>", "Fern", 0, 240, 128 },
  { "new, named by its colour", "<g id='layer1' fill='rgb(0%%, 100%%, 0%%)'>%s</g>", "green", 0, 255, 0 },
  { "new, by its outline", "<g fill='none' stroke='#00f080'><title>Fern</title>%s</g>", "Fern", 0, 240, 128 },
};

static const SwDye *
find_traced_dye (const SwTraced *traced, const SwSketch *sketch, guint id)
{
  const SwDye *dye = sw_sketch_find_dye (sketch, id);

  for (guint i = 0; dye == NULL && i < traced->dyes->len; i++)
    if (((const SwDye *) traced->dyes->pdata[i])->id == id)
      dye = traced->dyes->pdata[i];
  return dye;
}

static void
test_dye (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (GString) text = g_string_new (HEAD);
  g_autoptr (SwTraced) traced = NULL;
  const SwDye *dye;

  g_string_append (text, dyes[i].shape);
  g_string_replace (text, "%s", shapes[0].shape, 0);
  g_string_replace (text, "%%", "%", 0);
  g_string_append (text, "</svg>");
  traced = read_text (text->str, sketch);
  g_assert_cmpuint (traced->pours->len, ==, 1);
  g_assert_cmpuint (traced->dyes->len, ==, dyes[i].red < 0 ? 0 : 1);
  dye = find_traced_dye (traced, sketch, traced_at (traced, 0)->pour->dye);
  g_assert_nonnull (dye);
  if (g_str_equal (dyes[i].dye, "green"))
    g_assert_nonnull (strstr (dye->name, "green"));
  else
    g_assert_cmpstr (dye->name, ==, dyes[i].dye);
  if (dyes[i].red >= 0)
    {
      g_assert_cmpfloat (dye->sample.numbers[0], ==, dyes[i].red);
      g_assert_cmpfloat (dye->sample.numbers[1], ==, dyes[i].green);
      g_assert_cmpfloat (dye->sample.numbers[2], ==, dyes[i].blue);
    }
}

/* What it does to the sketch */

static SwStepKind
kind_at (const SwSketch *sketch, guint i)
{
  return ((const SwStep *) sketch->steps->pdata[i])->kind;
}

/* New pours join their face, a flip comes if there was none; and one undo takes all of it back. */
static void
test_edit (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  g_autoptr (SwSketch) before = NULL;
  g_autoptr (SwTraced) traced = NULL;
  g_autoptr (SwEdit) edit = NULL;
  g_autoptr (SwEdit) inverse = NULL;
  g_autoptr (SwEdit) again = NULL;
  g_autoptr (GError) error = NULL;

  test_add_band (sketch, test_add_dye (sketch, "Red", 178, 60, 52), 5, 4, 10, 0.5);
  test_add_step (sketch, SW_STEP_REST);
  test_add_step (sketch, SW_STEP_SET);
  before = sw_sketch_copy (sketch);
  traced = read_text (HEAD "<g id='second-face'><g id='Red'><circle cx='220' cy='60' r='20'/></g></g>"
                           "<g fill='#00f080'><title>Fern</title><rect x='100' y='10' width='50' height='100'/><circle cx='420' cy='60' r='20'/></g></svg>",
                      sketch);
  edit = sw_traced_edit (traced, sketch);
  g_assert_nonnull (edit);
  g_assert_cmpuint (sw_traced_n_new (traced), ==, 3);
  inverse = sw_edit_apply (edit, sketch, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (sw_sketch_validate (sketch, &error));
  g_assert_cmpuint (sketch->dyes->len, ==, 2);
  g_assert_cmpuint (sketch->steps->len, ==, 7);
  g_assert_cmpint (kind_at (sketch, 0), ==, SW_STEP_BAND);
  g_assert_cmpint (kind_at (sketch, 1), ==, SW_STEP_BAND);
  g_assert_cmpint (kind_at (sketch, 2), ==, SW_STEP_SPLOTCH);
  g_assert_cmpint (kind_at (sketch, 3), ==, SW_STEP_REST);
  g_assert_cmpint (kind_at (sketch, 4), ==, SW_STEP_FLIP);
  g_assert_cmpint (kind_at (sketch, 5), ==, SW_STEP_SPLOTCH);
  g_assert_cmpint (kind_at (sketch, 6), ==, SW_STEP_SET);
  for (guint i = 1; i < 3; i++)
    g_assert_cmpfloat (((const SwStep *) sketch->steps->pdata[i])->amount_ml, >, 0);
  again = sw_edit_apply (inverse, sketch, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (sw_sketch_equal (sketch, before));
}

/* A pour that was moved in the editor is moved, and keeps what it was. */
static void
test_moved (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (GString) text = NULL;
  g_autofree char *written = sw_svg_write (sketch, NULL, FALSE);
  const SwStep *first = sketch->steps->pdata[0];
  g_autofree char *id = g_strdup_printf ("id=\"pour-%u\"", first->id);
  g_autofree char *shifted = g_strdup_printf ("transform=\"translate(25 3)\" %s", id);
  g_autoptr (SwTraced) traced = NULL;
  g_autoptr (SwEdit) edit = NULL;
  g_autoptr (SwEdit) inverse = NULL;
  g_autoptr (GError) error = NULL;
  const double x = first->x_cm, y = first->y_cm;
  const guint n = sketch->steps->len;

  text = g_string_new (written);
  g_assert_cmpuint (g_string_replace (text, id, shifted, 0), ==, 1);
  traced = read_text (text->str, sketch);
  g_assert_cmpuint (sw_traced_n_new (traced), ==, 0);
  g_assert_cmpuint (sw_traced_n_moved (traced, sketch), ==, 1);
  edit = sw_traced_edit (traced, sketch);
  inverse = sw_edit_apply (edit, sketch, NULL, &error);
  g_assert_no_error (error);
  first = sketch->steps->pdata[0];
  g_assert_cmpuint (sketch->steps->len, ==, n);
  g_assert_cmpfloat_with_epsilon (first->x_cm, x + 2.5, NEAR_CM);
  g_assert_cmpfloat_with_epsilon (first->y_cm, y, 1e-9); /* still right across */
  g_assert_cmpfloat (first->length_cm, ==, 0);
  g_assert_cmpfloat (first->amount_ml, ==, 30);
}

/* A clone of a pour is a new pour beside it, of the same dye and amount; the pour itself stays known, even after it. */
static void
test_cloned_pour (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autofree char *written = sw_svg_write (sketch, NULL, FALSE);
  const SwStep *first = sketch->steps->pdata[0];
  g_autofree char *clone = g_strdup_printf ("<use href=\"#pour-%u\" x=\"100\"/><g id=\"first-face\"", first->id);
  g_autoptr (GString) text = g_string_new (written);
  g_autoptr (SwTraced) traced = NULL;
  guint n_new = 0;

  g_assert_cmpuint (g_string_replace (text, "<g id=\"first-face\"", clone, 1), ==, 1);
  traced = read_text (text->str, sketch);
  g_assert_cmpuint (sw_traced_n_moved (traced, sketch), ==, 0);
  g_assert_cmpuint (traced->dyes->len, ==, 0);
  for (guint i = 0; i < traced->pours->len; i++)
    {
      const SwStep *pour = traced_at (traced, i)->pour;

      if (pour->id != 0)
        continue;
      n_new++;
      g_assert_cmpfloat_with_epsilon (pour->x_cm, first->x_cm + 10, NEAR_CM);
      g_assert_cmpfloat (pour->amount_ml, ==, first->amount_ml);
    }
  g_assert_cmpuint (n_new, ==, 1);
}

/* Nearly round, and a little longer across than along: its direction does not show, but its sides keep their places. */
static void
test_nearly_round (void)
{
  for (int kind = SW_STEP_SPLOTCH; kind <= SW_STEP_SPECKLE; kind++)
    {
      g_autoptr (SwSketch) sketch = test_sketch (2);
      SwStep *step = test_add_step (sketch, (SwStepKind) kind);

      step->dye = ((const SwDye *) sketch->dyes->pdata[0])->id;
      step->x_cm = 30;
      step->y_cm = 4;
      step->width_cm = 11.491;
      step->length_cm = 11.5;
      step->angle_deg = 33;
      check_round_trip (sketch);
    }
}

static const char *
only_line (const SwTraced *traced, const SwSketch *before, const SwSketch *after, guint most, GPtrArray **lines)
{
  *lines = sw_traced_words (traced, before, after, most);
  g_assert_cmpuint ((*lines)->len, ==, 1);
  return (*lines)->pdata[0];
}

/* Each kind of change has its line; of many names the first are told, and how many more there are. */
static void
test_told (void)
{
  static const struct
  {
    double x, width, angle;
    gboolean other_dye;
    const char *line;
  } rows[] = {
    { 0, 0, 0, FALSE, "Nothing has changed" },
    { 2, 0, 0, FALSE, "Moved: 1. *" },
    { 0, 1, 0, FALSE, "Another size: 1. *" },
    { 0, 0, 9, FALSE, "Turned: 1. *" },
    { 0, 0, 0, TRUE, "Of another dye: 1. *" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (SwSketch) before = test_sketch (2);
      g_autoptr (SwSketch) after = sw_sketch_copy (before);
      g_autofree char *text = sw_svg_write (before, NULL, FALSE);
      g_autoptr (SwTraced) traced = read_text (text, before);
      g_autoptr (GPtrArray) lines = NULL;
      SwStep *step = after->steps->pdata[0];

      step->x_cm += rows[i].x;
      step->width_cm += rows[i].width;
      step->angle_deg += rows[i].angle;
      step->dye = ((const SwDye *) after->dyes->pdata[rows[i].other_dye ? 1 : 0])->id;
      g_assert_true (g_pattern_match_simple (rows[i].line, only_line (traced, before, after, 9, &lines)));
    }
}

static void
test_told_in_short (void)
{
  g_autoptr (SwSketch) before = test_bare_sketch (2);
  g_autoptr (SwSketch) after = NULL;
  g_autoptr (SwTraced) traced = NULL;
  g_autoptr (SwEdit) edit = NULL;
  g_autoptr (SwEdit) inverse = NULL;
  g_autoptr (GPtrArray) lines = NULL;

  test_add_dye (before, "Red", 178, 60, 52);
  after = sw_sketch_copy (before);
  traced = read_text (HEAD "<g id='Red'><circle cx='120' cy='60' r='20'/><circle cx='220' cy='60' r='20'/><circle cx='320' cy='60' r='20'/></g></svg>", before);
  edit = sw_traced_edit (traced, before);
  inverse = sw_edit_apply (edit, after, NULL, NULL);
  g_assert_nonnull (inverse);
  g_assert_cmpstr (only_line (traced, before, after, 1, &lines), ==, "New: 1. Splotch of Red and 2 more");
}

/* Words of the sketch that XML has a use for, or none at all. */
static void
test_words (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  SwDye *dye = sketch->dyes->pdata[0];
  SwStep *step = sketch->steps->pdata[0];

  g_free (dye->name);
  dye->name = g_strdup ("<Red> & \"blue\" \xe2\x9c\xbf");
  g_free (((SwDye *) sketch->dyes->pdata[1])->name);
  ((SwDye *) sketch->dyes->pdata[1])->name = g_strdup ("");
  g_free (step->name);
  step->name = g_strdup ("a < b && c > 'd'");
  check_round_trip (sketch);
}

static const struct
{
  const char *path;
  GTestFunc test;
} plain[] = {
  { "/svg/round-trip/demos", test_demos },
  { "/svg/round-trip/random", test_random },
  { "/svg/round-trip/words", test_words },
  { "/svg/left-out", test_left_out },
  { "/svg/hole", test_hole },
  { "/svg/edit", test_edit },
  { "/svg/moved", test_moved },
  { "/svg/cloned-pour", test_cloned_pour },
  { "/svg/round-trip/nearly-round", test_nearly_round },
  { "/svg/told", test_told },
  { "/svg/told-in-short", test_told_in_short },
};

static void
add (const char *folder, const char *what, gsize i, GTestDataFunc test)
{
  g_autofree char *path = g_strdup_printf ("/svg/%s/%s", folder, what);

  g_test_add_data_func (path, GSIZE_TO_POINTER (i), test);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (plain); i++)
    g_test_add_func (plain[i].path, plain[i].test);
  for (gsize i = 0; i < G_N_ELEMENTS (shapes); i++)
    add ("shape", shapes[i].what, i, test_shape);
  for (gsize i = 0; i < G_N_ELEMENTS (pages); i++)
    add ("page", pages[i].what, i, test_page);
  for (gsize i = 0; i < G_N_ELEMENTS (dyes); i++)
    add ("dye", dyes[i].what, i, test_dye);
  return g_test_run ();
}
