/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch-values.h"

#include <math.h>
#include <string.h>

/*
 * Walks every member of every record: one that is added to a table is tested
 * the day it is born.
 */

typedef void (*MemberFunc) (SwRecord record, const SwMember *member);

static void
for_each_member (MemberFunc func)
{
  for (int record = 0; record < SW_N_RECORDS; record++)
    {
      gsize n;
      const SwMember *members = sw_record_members (record, &n);

      g_assert_cmpuint (n, >, 0);
      for (gsize i = 0; i < n; i++)
        func (record, &members[i]);
    }
}

static SwStepKind
a_kind_that_uses (const SwMember *member)
{
  for (int kind = 0; kind < SW_N_STEP_KINDS; kind++)
    if (sw_member_applies (member, kind))
      return kind;
  g_error ("no step kind uses %s", member->name);
}

/* A record's struct, with room for any. */
typedef union
{
  SwSketch sketch;
  SwYarn yarn;
  SwReelSettings reel;
  SwLaySettings lay;
  SwBathSettings bath;
  SwDye dye;
  SwStep step;
  SwClothSettings cloth;
  SwSheetSettings sheet;
  SwListingSettings listing;
  SwBatch batch;
} AnyRecord;

static const gsize record_sizes[SW_N_RECORDS] = {
  sizeof (SwSketch), sizeof (SwYarn), sizeof (SwReelSettings), sizeof (SwLaySettings),
  sizeof (SwBathSettings), sizeof (SwDye), sizeof (SwStep), sizeof (SwClothSettings),
  sizeof (SwSheetSettings), sizeof (SwListingSettings), sizeof (SwBatch)
};

static void
clear_texts (SwRecord record, AnyRecord *data)
{
  gsize n;
  const SwMember *members = sw_record_members (record, &n);

  for (gsize i = 0; i < n; i++)
    if (members[i].kind == SW_KIND_TEXT)
      g_free (*(char **) ((guint8 *) data + members[i].offset));
}

static void
check_shape (SwRecord record, const SwMember *member)
{
  g_assert_nonnull (member->name);
  g_assert_cmpuint (strlen (member->label), >, 0);
  g_assert_nonnull (member->unit);
  g_assert_true (sw_record_find_member (record, member->name) == member); /* the name is its own */
  g_assert_cmpuint (member->offset, <, record_sizes[record]);
  g_assert_cmpint (record == SW_RECORD_STEP, ==, member->step_kinds != 0);

  for (const char *p = member->name; *p != '\0'; p++)
    g_assert_true (g_ascii_islower (*p) || g_ascii_isdigit (*p) || *p == '_');

  if (member->kind == SW_KIND_CHOICE)
    g_assert_cmpuint (g_strv_length ((char **) member->choices), ==, g_strv_length ((char **) member->choice_labels));
  if (member->kind == SW_KIND_COLOUR)
    g_assert_nonnull (member->colour_fallback);
}

static void
test_shape (void)
{
  g_test_summary ("Names, labels, choices and offsets of every member make sense and names are unique");
  for_each_member (check_shape);
}

static void
check_fallback (SwRecord record, const SwMember *member)
{
  for (int kind = 0; kind < SW_N_STEP_KINDS; kind++)
    {
      g_autoptr (GError) error = NULL;
      SwValue value;
      gboolean good;

      sw_member_fallback (member, kind, &value);
      g_assert_cmpint (value.kind, ==, member->kind);
      good = sw_member_check (member, &value, &error);
      g_assert_cmpint (good, ==, error == NULL);
      if (member->kind == SW_KIND_DYE)
        g_assert_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_REFERENCE); /* a dye must be chosen */
      else
        g_assert_no_error (error);
      sw_value_clear (&value);
    }
}

static void
test_fallback (void)
{
  g_test_summary ("Every default lies within its own limits, for every step kind");
  for_each_member (check_fallback);
}

static void
assert_refused (const SwMember *member, const SwValue *value, int code)
{
  g_autoptr (GError) error = NULL;
  AnyRecord data, before;

  memset (&data, 0, sizeof data);
  memcpy (&before, &data, sizeof data);
  g_assert_false (sw_member_set (member, &data, value, &error));
  g_assert_error (error, SW_SKETCH_ERROR, code);
  g_assert_cmpmem (&data, sizeof data, &before, sizeof data);
  if (member->kind != SW_KIND_DYE) /* whose sentence is about the pour */
    g_assert_nonnull (strstr (error->message, member->label));
}

static void
check_number_limits (SwRecord record, const SwMember *member)
{
  const double bad[] = {
    nextafter (member->min, -HUGE_VAL), nextafter (member->max, HUGE_VAL),
    member->min - 1e9, member->max + 1e9, (double) NAN, (double) INFINITY, (double) -INFINITY
  };
  const double good[] = { member->min, member->max, 0.5 * (member->min + member->max) };

  if (member->kind != SW_KIND_NUMBER)
    return;

  g_assert_cmpfloat (member->min, <, member->max);
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      SwValue value = sw_value_number (bad[i]);

      assert_refused (member, &value, SW_SKETCH_ERROR_RANGE);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (good); i++)
    {
      SwValue value = sw_value_number (good[i]);

      g_assert_true (sw_member_check (member, &value, NULL));
    }
  if (member->above_zero > 0)
    {
      SwValue in_gap = sw_value_number (member->above_zero / 2);
      SwValue at_edge = sw_value_number (member->above_zero);

      g_assert_cmpfloat (member->min, ==, 0);
      assert_refused (member, &in_gap, SW_SKETCH_ERROR_RANGE);
      g_assert_true (sw_member_check (member, &at_edge, NULL));
    }
}

static void
check_whole_limits (SwRecord record, const SwMember *member)
{
  const gint64 bad[] = { (gint64) member->min - 1, (gint64) member->max + 1, G_MININT64, G_MAXINT64 };

  if (member->kind != SW_KIND_WHOLE && member->kind != SW_KIND_DYE)
    return;

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      SwValue value = { .kind = member->kind, .as.whole = bad[i] };

      assert_refused (member, &value, member->kind == SW_KIND_DYE ? SW_SKETCH_ERROR_REFERENCE : SW_SKETCH_ERROR_RANGE);
    }
}

static void
check_text_limits (SwRecord record, const SwMember *member)
{
  g_autofree char *longest = NULL;
  const char *bad[] = { NULL, "\xff", "bell\a", "delete\x7f" };
  SwValue value = { .kind = SW_KIND_TEXT };

  if (member->kind != SW_KIND_TEXT)
    return;

  longest = g_strnfill ((gsize) member->max + 1, 'x');
  value.as.text = longest;
  assert_refused (member, &value, SW_SKETCH_ERROR_RANGE);
  longest[(gsize) member->max] = '\0';
  g_assert_true (sw_member_check (member, &value, NULL));

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;

      value.as.text = (char *) bad[i];
      g_assert_false (sw_member_check (member, &value, &error));
      g_assert_nonnull (strstr (error->message, member->label));
    }
}

static void
check_choice_limits (SwRecord record, const SwMember *member)
{
  SwValue below = sw_value_choice (-1);
  SwValue above;

  if (member->kind != SW_KIND_CHOICE)
    return;

  above = sw_value_choice ((int) g_strv_length ((char **) member->choices));
  assert_refused (member, &below, SW_SKETCH_ERROR_RANGE);
  assert_refused (member, &above, SW_SKETCH_ERROR_RANGE);
}

static void
check_colour_limits (SwRecord record, const SwMember *member)
{
  static const struct
  {
    SwSampleKind kind;
    gsize at;
    double bad;
  } rows[] = {
    { SW_SAMPLE_SRGB, 0, -1 },
    { SW_SAMPLE_SRGB, 2, 255.5 },
    { SW_SAMPLE_SRGB, 1, (double) NAN },
    { SW_SAMPLE_LAB, 0, 101 },
    { SW_SAMPLE_LAB, 0, -1 },
    { SW_SAMPLE_LAB, 2, 151 },
    { SW_SAMPLE_LAB, 1, -151 },
    { SW_SAMPLE_REFLECTANCE, 35, 1.01 },
    { SW_SAMPLE_REFLECTANCE, 0, -0.01 },
    { SW_SAMPLE_REFLECTANCE, 17, (double) INFINITY },
  };

  if (member->kind != SW_KIND_COLOUR)
    return;

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      SwSample sample = { rows[i].kind, { 0 } };
      SwValue value = sw_value_colour (&sample);

      g_assert_true (sw_member_check (member, &value, NULL));
      value.as.colour.numbers[rows[i].at] = rows[i].bad;
      assert_refused (member, &value, SW_SKETCH_ERROR_RANGE);
    }
}

static void
check_wrong_kind (SwRecord record, const SwMember *member)
{
  SwValue value = member->kind == SW_KIND_NUMBER ? sw_value_whole (1) : sw_value_number (1);

  assert_refused (member, &value, SW_SKETCH_ERROR_KIND);
}

static void
test_limits (void)
{
  g_test_summary ("What is outside a member's limits is refused with a sentence that names it, and nothing is changed");
  for_each_member (check_number_limits);
  for_each_member (check_whole_limits);
  for_each_member (check_text_limits);
  for_each_member (check_choice_limits);
  for_each_member (check_colour_limits);
  for_each_member (check_wrong_kind);
}

/* Writes one member; every other one must read as before. */
static void
check_round_trip (SwRecord record, const SwMember *member)
{
  AnyRecord data;
  SwValue value = sketch_value_other (member);
  gsize n;
  const SwMember *members = sw_record_members (record, &n);

  memset (&data, 0, sizeof data);
  g_assert_true (sw_member_set (member, &data, &value, NULL));
  for (gsize i = 0; i < n; i++)
    {
      AnyRecord blank;
      SwValue got, expected;

      memset (&blank, 0, sizeof blank);
      sw_member_get (&members[i], &data, &got);
      if (&members[i] == member)
        sw_value_copy (&value, &expected);
      else
        sw_member_get (&members[i], &blank, &expected);
      g_assert_true (sw_value_equal (&got, &expected));
      sw_value_clear (&got);
      sw_value_clear (&expected);
    }
  clear_texts (record, &data);
  sw_value_clear (&value);
}

static void
test_round_trip (void)
{
  g_test_summary ("What is set is what is got, and no member writes over another");
  for_each_member (check_round_trip);
}

static void
check_new_step (SwRecord record, const SwMember *member)
{
  SwStepKind kind;
  g_autoptr (SwStep) step = NULL;
  SwValue got, expected;

  if (record != SW_RECORD_STEP)
    return;

  kind = a_kind_that_uses (member);
  step = sw_step_new (1, kind);
  sw_member_get (member, step, &got);
  sw_member_fallback (member, kind, &expected);
  g_assert_true (sw_value_equal (&got, &expected));
  sw_value_clear (&got);
  sw_value_clear (&expected);
}

static void
test_runs (void)
{
  const SwMember *runs = sw_record_find_member (SW_RECORD_LAY, "runs");

  g_test_summary ("A loop is folded by doubling: 1, 2, 4, 8 or 16 runs and no other number");
  for (gint64 n = -1; n <= 20; n++)
    {
      SwValue value = sw_value_whole (n);
      gboolean good = n == 1 || n == 2 || n == 4 || n == 8 || n == 16;

      g_assert_cmpint (sw_member_check (runs, &value, NULL), ==, good);
    }
}

static void
test_step_kinds (void)
{
  g_test_summary ("Step kinds have a name each, and a new step has the defaults of its kind");
  for (int kind = 0; kind < SW_N_STEP_KINDS; kind++)
    g_assert_cmpint (sw_step_kind_from_name (sw_step_kind_name (kind)), ==, kind);
  g_assert_cmpint (sw_step_kind_from_name ("stir"), ==, -1);
  g_assert_cmpint (sw_step_kind_from_name (NULL), ==, -1);
  for_each_member (check_new_step);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sketch/member/shape", test_shape);
  g_test_add_func ("/sketch/member/fallback", test_fallback);
  g_test_add_func ("/sketch/member/limits", test_limits);
  g_test_add_func ("/sketch/member/round-trip", test_round_trip);
  g_test_add_func ("/sketch/member/runs", test_runs);
  g_test_add_func ("/sketch/member/step-kinds", test_step_kinds);
  return g_test_run ();
}
