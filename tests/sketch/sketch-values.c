/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch-values.h"

#include <math.h>

static int
n_choices (const SwMember *member)
{
  return (int) g_strv_length ((char **) member->choices);
}

SwValue
sketch_value_other (const SwMember *member)
{
  const SwSample measured = { SW_SAMPLE_REFLECTANCE, { [0] = 0.25, [35] = 0.75 } };

  switch (member->kind)
    {
    case SW_KIND_NUMBER:
      return sw_value_number (member->min + (member->max - member->min) * 0.625);
    case SW_KIND_WHOLE:
      return sw_value_whole ((gint64) member->max);
    case SW_KIND_TEXT:
      return sw_value_text ("Grüße aus dem Färbetopf");
    case SW_KIND_CHOICE:
      return sw_value_choice (member->fallback > 0 ? 0 : 1);
    case SW_KIND_FLAG:
      return sw_value_flag (member->fallback == 0);
    case SW_KIND_COLOUR:
      return sw_value_colour (&measured);
    case SW_KIND_DYE:
      return sw_value_dye (7);
    default:
      g_assert_not_reached ();
    }
}

SwValue
sketch_value_bad (const SwMember *member)
{
  const SwSample beyond = { SW_SAMPLE_SRGB, { 0, 256, 0 } };

  switch (member->kind)
    {
    case SW_KIND_NUMBER:
      return sw_value_number (g_test_rand_bit () ? member->max * 2 + 1 : (double) NAN);
    case SW_KIND_WHOLE:
      return sw_value_whole ((gint64) member->max + 1);
    case SW_KIND_TEXT:
      return sw_value_text ("a bell \a");
    case SW_KIND_CHOICE:
      return sw_value_choice (n_choices (member));
    case SW_KIND_FLAG:
      return sw_value_number (1);
    case SW_KIND_COLOUR:
      return sw_value_colour (&beyond);
    case SW_KIND_DYE:
      return sw_value_dye (0);
    default:
      g_assert_not_reached ();
    }
}

/* Skewed to the low end, where real sketches are, and where the bounds on the whole sketch are kept. */
static double
random_number (const SwMember *member)
{
  double u = g_test_rand_double ();

  if (g_test_rand_int_range (0, 8) == 0)
    return g_test_rand_bit () ? member->min : member->max;
  return member->min + (member->max - member->min) * u * u * u;
}

static SwValue
random_colour (void)
{
  SwSample sample = { (SwSampleKind) g_test_rand_int_range (0, 3), { 0 } };
  double top = sample.kind == SW_SAMPLE_SRGB ? 255 : (sample.kind == SW_SAMPLE_LAB ? 100 : 1);

  for (gsize i = 0; i < sw_sample_numbers (sample.kind); i++)
    sample.numbers[i] = g_test_rand_double_range (0, top);
  return sw_value_colour (&sample);
}

SwValue
sketch_value_random (const SwMember *member, const SwSketch *sketch)
{
  static const char *const texts[] = { "", "Madder", "left edge", "Färöer", "two\nlines" };
  const GPtrArray *dyes = sketch->dyes;

  if (g_test_rand_int_range (0, 12) == 0)
    return sketch_value_bad (member);

  switch (member->kind)
    {
    case SW_KIND_NUMBER:
      return sw_value_number (random_number (member));
    case SW_KIND_WHOLE:
      return sw_value_whole (member->doubling ? (gint64) 1 << g_test_rand_int_range (0, 5) : (gint64) random_number (member));
    case SW_KIND_TEXT:
      return sw_value_text (texts[g_test_rand_int_range (0, G_N_ELEMENTS (texts))]);
    case SW_KIND_CHOICE:
      return sw_value_choice (g_test_rand_int_range (0, n_choices (member)));
    case SW_KIND_FLAG:
      return sw_value_flag (g_test_rand_bit ());
    case SW_KIND_COLOUR:
      return random_colour ();
    case SW_KIND_DYE:
      if (dyes->len == 0)
        return sw_value_dye (1);
      return sw_value_dye (((const SwDye *) dyes->pdata[g_test_rand_int_range (0, (gint32) dyes->len)])->id);
    default:
      g_assert_not_reached ();
    }
}
