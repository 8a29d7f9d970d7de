/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/sw-pour-new.h"

#include <math.h>

/* Where a new pour goes among the steps, and how much is poured. */

/* One letter a step: b s d pours (band, splotch, drops), r rest, f flip, a acid, w water, h heat. */
static SwSketch *
sketch_of (const char *letters)
{
  static const char order[] = "bsdrfawh";
  SwSketch *sketch = sw_sketch_new ();

  for (guint i = 0; letters[i] != '\0'; i++)
    g_ptr_array_add (sketch->steps, sw_step_new (i + 1, (SwStepKind) (strchr (order, letters[i]) - order)));
  return sketch;
}

/* What the steps read like with the pour (+) put in, and its flip (F). */
static char *
with_pour (const char *letters, gboolean second_face)
{
  g_autoptr (SwSketch) sketch = sketch_of (letters);
  const SwPourSlot slot = sw_pour_slot (sketch, second_face);
  GString *text = g_string_new (letters);

  g_string_insert (text, slot.index, slot.flip ? "F+" : "+");
  return g_string_free (text, FALSE);
}

static void
test_slots (void)
{
  static const struct
  {
    const char *steps, *first, *second;
  } rows[] = {
    { "", "+", "F+" },
    { "h", "+h", "F+h" },
    { "rh", "+rh", "rF+h" },
    { "bbrh", "bb+rh", "bbrF+h" },
    { "bbr", "bb+r", "bbrF+" },
    { "arh", "a+rh", "arF+h" },
    { "barh", "b+arh", "barF+h" },
    { "bfsrh", "b+fsrh", "bfs+rh" },
    { "bfrh", "b+frh", "bf+rh" },
    { "frh", "+frh", "f+rh" },
    { "bhsrh", "bhs+rh", "bhsrF+h" },
    { "bfsfdrh", "b+fsfdrh", "bfs+fdrh" },
    { "brfwsrh", "b+rfwsrh", "brfws+rh" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *first = with_pour (rows[i].steps, FALSE);
      g_autofree char *second = with_pour (rows[i].steps, TRUE);

      g_assert_cmpstr (first, ==, rows[i].first);
      g_assert_cmpstr (second, ==, rows[i].second);
    }
}

/* Whatever the steps, the pour is on the face that was asked for, and no other pour changes its face. */
static void
test_slot_keeps_faces (void)
{
  for (int trial = 0; trial < 2000; trial++)
    {
      static const char order[] = "bsdrfawh";
      const gboolean wanted = trial % 2;
      char letters[12] = "";
      g_autofree char *with = NULL;
      gboolean face = FALSE;
      guint seen = 0;

      for (int i = g_test_rand_int_range (0, 11); i > 0; i--)
        letters[i - 1] = order[g_test_rand_int_range (0, 8)];
      with = with_pour (letters, wanted);
      for (const char *c = with; *c != '\0'; c++)
        {
          gboolean before = FALSE;

          if (*c == 'f' || *c == 'F')
            face = !face;
          if (*c == '+')
            g_assert_cmpint (face, ==, wanted);
          if (strchr ("bsd", *c) != NULL)
            {
              /* The same pour in the steps as they were. */
              for (guint k = 0, pours = 0; letters[k] != '\0' && pours <= seen; k++)
                {
                  if (letters[k] == 'f')
                    before = !before;
                  if (strchr ("bsd", letters[k]) != NULL)
                    pours++;
                }
              g_assert_cmpint (face, ==, before);
              seen++;
            }
        }
    }
}

/*
 * The share of the dye in the outer quarter of the depth, times four: of a
 * profile e^(-z/L), L = 0.12 / (1 - 0.5), cut off at 1, integrated by hand.
 */
#define SEEN (4 * (1 - exp (-0.25 / 0.24)) / (1 - exp (-1 / 0.24)))

/* 100 g on 75 x 10 cm; a stock of 1 % and a sample at 1 %: as many mL as grams of fibre, but for what is seen. */
static void
test_amounts (void)
{
  static const struct
  {
    SwPourPlace place;
    double grams_share; /* of the fibre under it, by hand */
  } rows[] = {
    { { SW_STEP_BAND, 37.5, 5, 7.5, 0, 0 }, 0.1 },
    { { SW_STEP_BAND, 37.5, 5, 7.5, 0, 45 }, 0.1 },
    { { SW_STEP_BAND, 37.5, 5, 7.5, 5, 0 }, 0.05 },
    { { SW_STEP_BAND, 0, 5, 15, 0, 0 }, 0.1 },
    { { SW_STEP_BAND, 37.5, 5, 400, 0, 0 }, 1 },
    { { SW_STEP_SPLOTCH, 37.5, 5, 20, 8, 0 }, G_PI * 10 * 4 / 750 },
    { { SW_STEP_SPLOTCH, 37.5, 5, 9, 9, 30 }, G_PI * 4.5 * 4.5 / 750 },
    { { SW_STEP_SPLOTCH, 0, 5, 20, 8, 0 }, G_PI * 10 * 4 / 750 / 2 },
  };
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  g_autoptr (SwDye) dye = sw_dye_new (1);

  sketch->reel.circumference_cm = 150;
  sketch->lay.runs = 2;
  sketch->lay.width_cm = 10;
  sketch->yarn.mass_g = 100;
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const double ml = sw_pour_amount (sketch, dye, &rows[i].place), grams = 100 * rows[i].grams_share / SEEN;

      /* Within the rounding to kitchen measures, which is 5 % there, and the grid's 3 %. */
      g_assert_cmpfloat (fabs (ml - grams), <=, 0.03 * grams + 0.5);
    }
}

/* Twice the skeins or the depth is twice the dye; twice the stock's strength half the volume. */
static void
test_amount_scales (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  g_autoptr (SwDye) dye = sw_dye_new (1);
  const SwPourPlace place = { SW_STEP_BAND, 20, sw_sketch_lay_width (sketch) / 2, 16, 0, 0 };
  const double once = sw_pour_amount (sketch, dye, &place);

  sketch->yarn.mass_g *= 2;
  g_assert_cmpfloat_with_epsilon (sw_pour_amount (sketch, dye, &place), 2 * once, 1.6);
  sketch->yarn.mass_g /= 2;
  dye->sample_depth_percent *= 2;
  g_assert_cmpfloat_with_epsilon (sw_pour_amount (sketch, dye, &place), 2 * once, 1.6);
  dye->stock_percent *= 4;
  g_assert_cmpfloat_with_epsilon (sw_pour_amount (sketch, dye, &place), once / 2, 1.1);
}

static void
test_measurable (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  g_autoptr (SwDye) dye = sw_dye_new (7);

  for (int trial = 0; trial < 200; trial++)
    {
      const SwPourPlace place = { SW_STEP_SPECKLE, 20, 4, g_test_rand_double_range (0.1, 400), g_test_rand_double_range (0.1, 400), g_test_rand_double_range (-90, 90) };
      g_autoptr (SwStep) step = NULL;
      double tenths;

      dye->stock_percent = g_test_rand_double_range (0.01, 20);
      step = sw_pour_new (sketch, dye, &place);
      g_assert_cmpuint (step->dye, ==, 7);
      g_assert_cmpfloat (step->amount_ml, >=, 0.1);
      tenths = step->amount_ml * 10;
      g_assert_cmpfloat_with_epsilon (tenths, round (tenths), 1e-6);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pan-pour/slots", test_slots);
  g_test_add_func ("/pan-pour/slot-keeps-faces", test_slot_keeps_faces);
  g_test_add_func ("/pan-pour/amounts", test_amounts);
  g_test_add_func ("/pan-pour/amount-scales", test_amount_scales);
  g_test_add_func ("/pan-pour/measurable", test_measurable);
  return g_test_run ();
}
