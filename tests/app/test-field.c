/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-field.h"

#include <math.h>

#define NBSP "\u00a0"

/* What fields show and understand, in both systems. Inch, yard and teaspoon: NIST Handbook 44, appendix C. */
static const struct
{
  const char *name;
  SwRecord record;
  const char *member;
  double value;
  SwSystem system;
  const char *shown;
} shows[] = {
  { "cm", SW_RECORD_STEP, "width_cm", 12.5, SW_SYSTEM_METRIC, "12.5" NBSP "cm" },
  { "in", SW_RECORD_STEP, "width_cm", 25.4, SW_SYSTEM_US, "10" NBSP "in" },
  { "ml", SW_RECORD_STEP, "amount_ml", 20, SW_SYSTEM_METRIC, "20" NBSP "mL" },
  { "tsp", SW_RECORD_STEP, "amount_ml", 2.464460796875, SW_SYSTEM_US, "½" NBSP "tsp" },
  { "fahrenheit", SW_RECORD_STEP, "temperature_c", 100, SW_SYSTEM_US, "212" NBSP "°F" },
  { "share-as-per-cent", SW_RECORD_STEP, "worked_in", 0.3, SW_SYSTEM_METRIC, "30" NBSP "%" },
  { "quick-share", SW_RECORD_DYE, "quick_share", 0.125, SW_SYSTEM_METRIC, "12.5" NBSP "%" },
  { "angle", SW_RECORD_STEP, "angle_deg", -12, SW_SYSTEM_METRIC, "-12°" },
  { "right-across", SW_RECORD_STEP, "length_cm", 0, SW_SYSTEM_METRIC, "" },
  { "specks-mm", SW_RECORD_STEP, "speck_mm", 2.5, SW_SYSTEM_METRIC, "2.5" NBSP "mm" },
  { "specks-mm-us", SW_RECORD_STEP, "speck_mm", 2.5, SW_SYSTEM_US, "2.5" NBSP "mm" },
  { "specks", SW_RECORD_STEP, "specks_per_100_cm2", 40, SW_SYSTEM_METRIC, "40" },
  { "specks-us", SW_RECORD_STEP, "specks_per_100_cm2", 100, SW_SYSTEM_US, "64.5" }, /* 10 in2 are 64.516 cm2 */
  { "put-up", SW_RECORD_YARN, "metres_per_100_g", 400, SW_SYSTEM_METRIC, "400" NBSP "m" },
  { "put-up-us", SW_RECORD_YARN, "metres_per_100_g", 91.44, SW_SYSTEM_US, "100" NBSP "yd" },
  { "gauge", SW_RECORD_CLOTH, "stitches_per_10cm", 30, SW_SYSTEM_METRIC, "30" },
  { "gauge-us", SW_RECORD_CLOTH, "stitches_per_10cm", 25, SW_SYSTEM_US, "25.4" }, /* 4 in are 10.16 cm */
  { "rows-worked-out", SW_RECORD_CLOTH, "rows_per_10cm", 0, SW_SYSTEM_METRIC, "" },
  { "per-cent-strength", SW_RECORD_BATH, "acid_percent", 5, SW_SYSTEM_METRIC, "5" NBSP "%" },
  { "litres", SW_RECORD_BATH, "water_ml", 1400, SW_SYSTEM_METRIC, "1.4" NBSP "L" },
  { "alkalinity", SW_RECORD_BATH, "alkalinity_meq_per_l", 1.5, SW_SYSTEM_METRIC, "1.5" },
};

static void
test_shows (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  const SwMember *member = sw_record_find_member (shows[i].record, shows[i].member);
  SwValue value = sw_value_number (shows[i].value);
  g_autofree char *text = sw_field_text (member, &value, shows[i].system);
  g_autoptr (GError) error = NULL;
  SwValue back;

  g_assert_cmpstr (text, ==, shows[i].shown);
  /* What is shown is understood: to the figures that are shown. */
  g_assert_true (sw_field_parse (member, text, &value, shows[i].system, &back, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (back.as.number, shows[i].value, 1e-12 + 0.006 * fabs (shows[i].value));
}

static const struct
{
  const char *name;
  SwRecord record;
  const char *member;
  double before;
  SwSystem system;
  const char *typed;
  double value;
} types[] = {
  { "inches-into-cm", SW_RECORD_STEP, "width_cm", 5, SW_SYSTEM_METRIC, "3 in", 7.62 },
  { "spoons-into-ml", SW_RECORD_STEP, "amount_ml", 5, SW_SYSTEM_METRIC, "2 tsp", 9.8578431875 },
  { "half-spoon", SW_RECORD_STEP, "amount_ml", 5, SW_SYSTEM_METRIC, "1/2 tsp", 2.464460796875 },
  { "fluid-ounces", SW_RECORD_STEP, "amount_ml", 5, SW_SYSTEM_US, "1 fl oz", 29.5735295625 },
  { "bare-in-shown-unit", SW_RECORD_BATH, "water_ml", 1400, SW_SYSTEM_METRIC, "1.6", 1600 },
  { "bare-per-cent", SW_RECORD_STEP, "worked_in", 0.3, SW_SYSTEM_METRIC, "45", 0.45 },
  { "bare-mm", SW_RECORD_STEP, "speck_mm", 2, SW_SYSTEM_US, "3", 3 },
  { "inch-of-specks", SW_RECORD_STEP, "speck_mm", 2, SW_SYSTEM_METRIC, "1/8 in", 3.175 },
  { "yards-into-metres", SW_RECORD_YARN, "metres_per_100_g", 400, SW_SYSTEM_METRIC, "437 yd", 399.5928 },
  { "metres-into-yards", SW_RECORD_YARN, "metres_per_100_g", 400, SW_SYSTEM_US, "400 m", 400 },
  { "bare-yards", SW_RECORD_YARN, "metres_per_100_g", 400, SW_SYSTEM_US, "100", 91.44 },
  { "gauge-on-4-in", SW_RECORD_CLOTH, "stitches_per_10cm", 30, SW_SYSTEM_US, "25.4", 25 },
  { "gauge-with-its-note", SW_RECORD_CLOTH, "stitches_per_10cm", 30, SW_SYSTEM_METRIC, "28 to 10 cm", 28 },
  { "emptied-is-right-across", SW_RECORD_STEP, "length_cm", 6, SW_SYSTEM_METRIC, " ", 0 },
  { "zero-is-right-across", SW_RECORD_STEP, "length_cm", 6, SW_SYSTEM_METRIC, "0", 0 },
  { "fahrenheit", SW_RECORD_STEP, "temperature_c", 85, SW_SYSTEM_METRIC, "194 F", 90 },
};

static void
test_types (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  const SwMember *member = sw_record_find_member (types[i].record, types[i].member);
  SwValue before = sw_value_number (types[i].before);
  g_autoptr (GError) error = NULL;
  SwValue value;

  g_assert_true (sw_field_parse (member, types[i].typed, &before, types[i].system, &value, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (value.as.number, types[i].value, 1e-9 * fmax (1, types[i].value));
}

/* A refusal says what would do, in the units of the person. */
static const struct
{
  const char *name;
  SwRecord record;
  const char *member;
  SwSystem system;
  const char *typed, *sentence;
} refusals[] = {
  { "too-wide", SW_RECORD_STEP, "width_cm", SW_SYSTEM_METRIC, "401", "This goes from 0.1" NBSP "cm to 400" NBSP "cm." },
  { "too-wide-us", SW_RECORD_STEP, "width_cm", SW_SYSTEM_US, "500 in", "This goes from 0.039" NBSP "in to 157" NBSP "in." },
  { "share", SW_RECORD_STEP, "worked_in", SW_SYSTEM_METRIC, "120", "This goes from 0" NBSP "% to 100" NBSP "%." },
  { "in-the-gap", SW_RECORD_STEP, "length_cm", SW_SYSTEM_METRIC, "0.05", "This goes from 0.1" NBSP "cm to 400" NBSP "cm." },
  { "words", SW_RECORD_STEP, "width_cm", SW_SYSTEM_METRIC, "wide", "“wide” is not a number. Write one like 2.5 or 1/4." },
  { "bare-words", SW_RECORD_CLOTH, "stitches_per_10cm", SW_SYSTEM_METRIC, "many", "“many” is not a number. Write one like 2.5 or 1/4." },
  { "empty", SW_RECORD_STEP, "width_cm", SW_SYSTEM_METRIC, "", "“” is not a number. Write one like 2.5 or 1/4." },
  { "wrong-unit", SW_RECORD_STEP, "width_cm", SW_SYSTEM_METRIC, "3 mL", "“mL” is not a unit that fits here. Use cm, or leave it out." },
  { "part-of-a-ply", SW_RECORD_YARN, "plies", SW_SYSTEM_METRIC, "2.5", "This must be a whole number." },
  { "runs-double", SW_RECORD_LAY, "runs", SW_SYSTEM_METRIC, "3", "“Runs of the folded skein” is doubled at each fold: 1, 2, 4 and so on up to 16. It cannot be 3." },
};

static void
test_refusals (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  const SwMember *member = sw_record_find_member (refusals[i].record, refusals[i].member);
  SwValue before = member->kind == SW_KIND_WHOLE ? sw_value_whole (2) : sw_value_number (5);
  g_autoptr (GError) error = NULL;
  SwValue value;

  g_assert_false (sw_field_parse (member, refusals[i].typed, &before, refusals[i].system, &value, &error));
  g_assert_nonnull (error);
  g_assert_cmpstr (error->message, ==, refusals[i].sentence);
}

/* Every number of every record: what its limits are shown as is understood, and the arrow keys never leave them. */
static void
test_every_member (void)
{
  for (int record = 0; record < SW_N_RECORDS; record++)
    {
      gsize n;
      const SwMember *members = sw_record_members (record, &n);

      for (gsize i = 0; i < n; i++)
        for (int system = SW_SYSTEM_METRIC; system <= SW_SYSTEM_US; system++)
          {
            const SwMember *member = &members[i];
            SwValue value, up, down;

            if (member->kind != SW_KIND_NUMBER && member->kind != SW_KIND_WHOLE)
              continue;
            sw_member_fallback (member, SW_STEP_BAND, &value);
            for (int j = 0; j < 30; j++)
              {
                g_autoptr (GError) error = NULL;
                double before = member->kind == SW_KIND_WHOLE ? (double) value.as.whole : value.as.number;
                double above, below;

                sw_field_nudge (member, &value, system, 1, &up);
                sw_field_nudge (member, &value, system, -1, &down);
                g_assert_true (sw_member_check (member, &up, &error));
                g_assert_no_error (error);
                g_assert_true (sw_member_check (member, &down, &error));
                g_assert_no_error (error);
                above = member->kind == SW_KIND_WHOLE ? (double) up.as.whole : up.as.number;
                below = member->kind == SW_KIND_WHOLE ? (double) down.as.whole : down.as.number;
                g_assert_true (above > before || before >= member->max * (1 - 1e-9));
                g_assert_true (below < before || before <= member->min + 1e-9);
                value = g_test_rand_bit () ? up : down;
              }
          }
    }
}

/* A limit may be typed as it is shown. */
static void
test_limit_as_shown (void)
{
  const SwMember *width = sw_record_find_member (SW_RECORD_STEP, "width_cm");
  SwValue before = sw_value_number (5), value;

  g_assert_true (sw_field_parse (width, "0.039 in", &before, SW_SYSTEM_US, &value, NULL));
  g_assert_cmpfloat (value.as.number, ==, 0.1);
  g_assert_true (sw_field_parse (width, "157 in", &before, SW_SYSTEM_US, &value, NULL));
  g_assert_cmpfloat_with_epsilon (value.as.number, 398.78, 1e-9);
  g_assert_true (sw_field_parse (width, "157.48 in", &before, SW_SYSTEM_US, &value, NULL));
  g_assert_cmpfloat (value.as.number, <=, 400);
}

/* The arrow keys go from round figure to round figure of the unit shown. */
static const struct
{
  const char *name;
  const char *member;
  double value;
  SwSystem system;
  int steps;
  double nudged;
} nudges[] = {
  { "half-cm", "width_cm", 6, SW_SYSTEM_METRIC, 1, 6.5 },
  { "onto-the-round", "width_cm", 6.2, SW_SYSTEM_METRIC, 1, 6.5 },
  { "down-onto-the-round", "width_cm", 6.2, SW_SYSTEM_METRIC, -1, 6 },
  { "quarter-inch", "width_cm", 2.54, SW_SYSTEM_US, 1, 3.175 },
  { "ml", "amount_ml", 16, SW_SYSTEM_METRIC, 1, 17 },
  { "ten-ml", "amount_ml", 160, SW_SYSTEM_METRIC, -1, 150 },
  { "quarter-spoon", "amount_ml", 4.92892159375, SW_SYSTEM_US, 1, 6.1611519921875 },
  { "degree", "temperature_c", 85, SW_SYSTEM_METRIC, 1, 86 },
  { "fahrenheit", "temperature_c", 90, SW_SYSTEM_US, 2, 91.1111111111 }, /* 194 to 196 F */
  { "per-cent", "worked_in", 0.3, SW_SYSTEM_METRIC, 1, 0.35 },
  { "held", "worked_in", 0.98, SW_SYSTEM_METRIC, 3, 1 },
  { "over-the-gap", "length_cm", 0, SW_SYSTEM_METRIC, 1, 0.5 },
  { "into-right-across", "length_cm", 0.5, SW_SYSTEM_METRIC, -1, 0 },
};

static void
test_nudges (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  const SwMember *member = sw_record_find_member (SW_RECORD_STEP, nudges[i].member);
  SwValue value = sw_value_number (nudges[i].value), nudged;

  sw_field_nudge (member, &value, nudges[i].system, nudges[i].steps, &nudged);
  g_assert_cmpfloat_with_epsilon (nudged.as.number, nudges[i].nudged, 1e-9 * fmax (1, fabs (nudges[i].nudged)));
}

static void
test_words (void)
{
  const SwMember *length = sw_record_find_member (SW_RECORD_STEP, "length_cm");
  const SwMember *put_up = sw_record_find_member (SW_RECORD_YARN, "metres_per_100_g");
  const SwMember *gauge = sw_record_find_member (SW_RECORD_CLOTH, "stitches_per_10cm");
  const SwMember *water = sw_record_find_member (SW_RECORD_BATH, "water_ml");
  const SwMember *alkalinity = sw_record_find_member (SW_RECORD_BATH, "alkalinity_meq_per_l");

  g_assert_cmpstr (sw_field_zero (length), ==, "right across");
  g_assert_null (sw_field_zero (water));
  g_assert_cmpstr (sw_field_note (put_up, SW_SYSTEM_US), ==, "per 100 g");
  g_assert_cmpstr (sw_field_note (gauge, SW_SYSTEM_METRIC), ==, "to 10 cm");
  g_assert_cmpstr (sw_field_note (gauge, SW_SYSTEM_US), ==, "to 4 in");
  g_assert_cmpstr (sw_field_note (alkalinity, SW_SYSTEM_METRIC), ==, "meq/L");
  g_assert_null (sw_field_note (water, SW_SYSTEM_METRIC));
}

#define ADD_ROWS(path, rows, checker)                                     \
  for (gsize row_ = 0; row_ < G_N_ELEMENTS (rows); row_++)                \
    {                                                                     \
      g_autofree char *name_ = g_strconcat (path, rows[row_].name, NULL); \
                                                                          \
      g_test_add_data_func (name_, GSIZE_TO_POINTER (row_), checker);     \
    }

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD_ROWS ("/app/field/shows/", shows, test_shows);
  ADD_ROWS ("/app/field/types/", types, test_types);
  ADD_ROWS ("/app/field/refuses/", refusals, test_refusals);
  ADD_ROWS ("/app/field/nudges/", nudges, test_nudges);
  g_test_add_func ("/app/field/every-member", test_every_member);
  g_test_add_func ("/app/field/limit-as-shown", test_limit_as_shown);
  g_test_add_func ("/app/field/words", test_words);
  return g_test_run ();
}
