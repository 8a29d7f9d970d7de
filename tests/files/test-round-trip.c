/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is written reads back the same, whatever the sketch and whatever the file holds besides. */
#include "config.h"

#include "files/sw-colourway.h"
#include "sketch/sw-member.h"

#include <locale.h>
#include <string.h>

static SwSketch *
parse (const char *text)
{
  g_autoptr (GError) error = NULL;
  SwSketch *sketch = sw_colourway_parse (text, strlen (text), &error);

  g_assert_no_error (error);
  g_assert_nonnull (sketch);
  return sketch;
}

/* A value within the member's limits, so that none looks like a default. */
static SwValue
random_value (const SwMember *member)
{
  static const char *const texts[] = { "Quayside", "Zwölf Färbekessel – “kalt”", "tab\tand\nline", "back\\slash \"quotes\"", "𝄞 / \xc2\x85" };
  double least = MAX (member->min, member->above_zero);
  SwSample sample = { .kind = (SwSampleKind) g_test_rand_int_range (SW_SAMPLE_SRGB, SW_SAMPLE_REFLECTANCE + 1) };

  switch (member->kind)
    {
    case SW_KIND_NUMBER:
      return sw_value_number (g_test_rand_double_range (least, member->max));
    case SW_KIND_WHOLE:
      return sw_value_whole (member->doubling ? 1 << g_test_rand_int_range (0, 4) : (gint64) g_test_rand_double_range (member->min, member->max));
    case SW_KIND_TEXT:
      return sw_value_text (texts[g_test_rand_int_range (0, G_N_ELEMENTS (texts))]);
    case SW_KIND_CHOICE:
      return sw_value_choice (g_test_rand_int_range (0, (int) g_strv_length ((char **) member->choices)));
    case SW_KIND_FLAG:
      return sw_value_flag (g_test_rand_bit ());
    case SW_KIND_COLOUR:
      for (gsize i = 0; i < sw_sample_numbers (sample.kind); i++)
        sample.numbers[i] = g_test_rand_double ();
      return sw_value_colour (&sample);
    case SW_KIND_DYE:
    default:
      return sw_value_dye (1);
    }
}

static void
scramble (SwRecord record, SwStepKind kind, gpointer data)
{
  gsize n;
  const SwMember *members = sw_record_members (record, &n);

  for (gsize i = 0; i < n; i++)
    {
      SwValue value;
      g_autoptr (GError) error = NULL;

      if (!sw_member_applies (&members[i], kind))
        continue;
      value = random_value (&members[i]);
      g_assert_true (sw_member_set (&members[i], data, &value, &error));
      g_assert_no_error (error);
      sw_value_clear (&value);
    }
}

/* What the members must satisfy together, which chance seldom does. */
static void
make_sensible (SwSketch *sketch)
{
  sketch->yarn.mass_g = 93.7;
  sketch->reel.circumference_cm = 0.1 + 150.2;
  sketch->lay.width_cm = 7.3;
  sketch->lay.skeins = 3;
  sketch->cloth.skein = 2;
  sketch->cloth.start_cm = 1e2 / 3;
  sketch->cloth.alternate_shift_cm = 2e2 / 3;
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      SwStep *step = g_ptr_array_index (sketch->steps, i);

      step->angle_deg = CLAMP (step->angle_deg, -30, 30);
      step->specks_per_100_cm2 = MIN (step->specks_per_100_cm2, 100);
    }
}

static SwSketch *
random_sketch (void)
{
  SwSketch *sketch = sw_sketch_new ();

  scramble (SW_RECORD_SKETCH, SW_STEP_BAND, sketch);
  scramble (SW_RECORD_YARN, SW_STEP_BAND, &sketch->yarn);
  scramble (SW_RECORD_REEL, SW_STEP_BAND, &sketch->reel);
  scramble (SW_RECORD_LAY, SW_STEP_BAND, &sketch->lay);
  scramble (SW_RECORD_BATH, SW_STEP_BAND, &sketch->bath);
  scramble (SW_RECORD_CLOTH, SW_STEP_BAND, &sketch->cloth);
  scramble (SW_RECORD_SHEET, SW_STEP_BAND, &sketch->sheet);
  scramble (SW_RECORD_LISTING, SW_STEP_BAND, &sketch->listing);
  for (guint id = 201; id <= 203; id++)
    {
      SwBatch *batch = sw_batch_new (id);

      scramble (SW_RECORD_BATCH, SW_STEP_BAND, batch);
      g_ptr_array_add (sketch->batches, batch);
    }
  for (guint id = 1; id <= 3; id++)
    {
      SwDye *dye = sw_dye_new (id);

      scramble (SW_RECORD_DYE, SW_STEP_BAND, dye);
      g_ptr_array_add (sketch->dyes, dye);
    }
  for (int kind = 0; kind < SW_N_STEP_KINDS; kind++)
    {
      SwStep *step = sw_step_new (100 + (guint) kind, (SwStepKind) kind);

      scramble (SW_RECORD_STEP, (SwStepKind) kind, step);
      sw_extras_add (&step->extras, "note", "{\"by\":[\"x\",1,2.5,null,true,{}]}");
      g_ptr_array_add (sketch->steps, step);
    }
  sw_extras_add (&sketch->lay.extras, "tray", "[]");
  make_sensible (sketch);
  return sketch;
}

static void
test_random (void)
{
  g_test_summary ("A sketch with every member at a random value reads back equal and prints the same text");

  for (int i = 0; i < 50; i++)
    {
      g_autoptr (SwSketch) sketch = random_sketch ();
      g_autofree char *text = sw_colourway_print (sketch);
      g_autoptr (SwSketch) again = parse (text);
      g_autofree char *text_again = sw_colourway_print (again);

      g_assert_true (sw_sketch_equal (sketch, again));
      g_assert_cmpstr (text, ==, text_again);
    }
}

static void
test_empty (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  g_autoptr (SwSketch) minimal = parse ("{\"colourway\":1}");
  g_autofree char *text = sw_colourway_print (sketch);

  g_test_summary ("The smallest file there is means a sketch with every member at its default");

  g_assert_true (sw_sketch_equal (sketch, minimal));
  g_assert_true (g_str_has_prefix (text, "{\n  \"colourway\": 1,\n  \"title\": \"\",\n"));
  g_assert_true (g_str_has_suffix (text, "}\n"));
}

/* Numbers as written and as they come back in print. */
static const struct
{
  const char *given, *kept;
} numbers[] = {
  { "0.1", "0.1" },
  { "0.30000000000000004", "0.30000000000000004" },
  { "30e-1", "3" },
  { "5", "5" },
  { "5.0", "5" },
  { "0.1000000000000000055511151231257827", "0.1" },
  { "6.02214076e1", "60.2214076" },
};

static void
test_numbers (void)
{
  g_test_summary ("A number is printed with the fewest digits that read back as the same double");

  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      g_autofree char *text = g_strdup_printf ("{\"colourway\":1,\"dyes\":[{\"id\":7}],\"steps\":[{\"id\":8,\"kind\":\"band\",\"dye\":7,\"x_cm\":%s}]}", numbers[i].given);
      g_autofree char *wanted = g_strdup_printf ("\"x_cm\": %s,\n", numbers[i].kept);
      g_autoptr (SwSketch) sketch = parse (text);
      g_autofree char *printed = sw_colourway_print (sketch);

      g_assert_nonnull (strstr (printed, wanted));
    }
}

static void
test_minus_zero (void)
{
  g_autoptr (SwSketch) sketch = parse ("{\"colourway\":1,\"dyes\":[{\"id\":7}],\"steps\":[{\"id\":8,\"kind\":\"band\",\"dye\":7,\"x_cm\":-0.0}],\"extra\":-0.0}");
  g_autofree char *text = sw_colourway_print (sketch);

  g_test_summary ("Minus zero is zero, so that the text does not change from save to save");

  g_assert_null (strstr (text, "-0"));
}

static void
test_locale (void)
{
  const char *had = setlocale (LC_NUMERIC, NULL);
  g_autofree char *before = g_strdup (had);
  g_autoptr (SwSketch) sketch = random_sketch ();
  g_autofree char *text = sw_colourway_print (sketch);
  g_autofree char *text_there = NULL;
  g_autoptr (SwSketch) again = NULL;

  g_test_summary ("The file is the same where the decimal mark is a comma");

  if (setlocale (LC_NUMERIC, "de_DE.UTF-8") == NULL && setlocale (LC_NUMERIC, "fr_FR.UTF-8") == NULL)
    {
      g_test_skip ("no locale with a decimal comma is installed");
      return;
    }
  text_there = sw_colourway_print (sketch);
  again = parse (text);
  setlocale (LC_NUMERIC, before);
  g_assert_cmpstr (text, ==, text_there);
  g_assert_true (sw_sketch_equal (sketch, again));
}

/* Every level at which a member may stand that this version does not know. */
static void
test_unknown (void)
{
  static const char text[] =
      "{\"colourway\":1,\"later\":{\"a\":[1,2.5,\"x\"]},\"yarn\":{\"twist\":\"S\"},\"reel\":{\"r\":null},\"lay\":{\"l\":false},\"bath\":{\"b\":[]},"
      "\"dyes\":[{\"id\":1,\"lot\":\"77\"}],\"steps\":[{\"id\":2,\"kind\":\"rest\",\"width_cm\":\"not for a rest\",\"cover\":1e300}],\"cloth\":{\"needle\":{}},\"last\":9007199254740993}";
  static const char *const kept[] = {
    "\"later\": { \"a\": [1, 2.5, \"x\"] }", "\"twist\": \"S\"", "\"r\": null", "\"l\": false", "\"b\": []", "\"lot\": \"77\"",
    "\"width_cm\": \"not for a rest\"", "\"cover\": 1e+300", "\"needle\": {}", "\"last\": 9007199254740993"
  };
  g_autoptr (SwSketch) sketch = parse (text);
  g_autofree char *printed = sw_colourway_print (sketch);
  g_autoptr (SwSketch) again = parse (printed);
  g_autofree char *printed_again = sw_colourway_print (again);

  g_test_summary ("Members that this version does not know are kept at every level");

  for (gsize i = 0; i < G_N_ELEMENTS (kept); i++)
    if (strstr (printed, kept[i]) == NULL)
      g_error ("lost: %s in\n%s", kept[i], printed);
  g_assert_true (sw_sketch_equal (sketch, again));
  g_assert_cmpstr (printed, ==, printed_again);
}

static void
test_ids (void)
{
  g_autoptr (SwSketch) sketch = parse ("{\"colourway\":1,\"dyes\":[{\"id\":41}],\"steps\":[{\"id\":7,\"kind\":\"flip\"}]}");
  guint fresh = sw_sketch_fresh_id (sketch);

  g_test_summary ("Ids are kept, and a new one is none of them");

  g_assert_nonnull (sw_sketch_find_dye (sketch, 41));
  g_assert_nonnull (sw_sketch_find_step (sketch, 7));
  g_assert_cmpuint (fresh, !=, 41);
  g_assert_cmpuint (fresh, !=, 7);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/files/round-trip/random", test_random);
  g_test_add_func ("/files/round-trip/empty", test_empty);
  g_test_add_func ("/files/round-trip/numbers", test_numbers);
  g_test_add_func ("/files/round-trip/minus-zero", test_minus_zero);
  g_test_add_func ("/files/round-trip/locale", test_locale);
  g_test_add_func ("/files/round-trip/unknown", test_unknown);
  g_test_add_func ("/files/round-trip/ids", test_ids);
  return g_test_run ();
}
