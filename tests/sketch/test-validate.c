/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-member-private.h"

#include "sketch-values.h"

#include <math.h>
#include <string.h>

/* Two dyes and one step of every kind: ids 1, 2; then 3 for a band and so on. */
static SwSketch *
full_sketch (void)
{
  SwSketch *sketch = sw_sketch_new ();
  g_autoptr (GError) error = NULL;
  gboolean valid;

  g_ptr_array_add (sketch->dyes, sw_dye_new (1));
  g_ptr_array_add (sketch->dyes, sw_dye_new (2));
  for (int kind = 0; kind < SW_N_STEP_KINDS; kind++)
    {
      SwStep *step = sw_step_new ((guint) kind + 3, kind);

      step->dye = 2;
      g_ptr_array_add (sketch->steps, step);
    }

  g_ptr_array_add (sketch->batches, sw_batch_new (30));
  g_ptr_array_add (sketch->batches, sw_batch_new (31));
  valid = sw_sketch_validate (sketch, &error);
  g_assert_no_error (error);
  g_assert_true (valid);
  return sketch;
}

static SwDye *
dye_at (const SwSketch *sketch, guint index)
{
  return sketch->dyes->pdata[index];
}

static SwStep *
step_at (const SwSketch *sketch, SwStepKind kind)
{
  return sketch->steps->pdata[kind];
}

static void
assert_bad_at (const SwSketch *sketch, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *prefix = g_strconcat (path, ": ", NULL);

  g_assert_false (sw_sketch_validate (sketch, &error));
  g_assert_cmpint ((int) error->domain, ==, (int) SW_SKETCH_ERROR);
  if (!g_str_has_prefix (error->message, prefix))
    g_error ("“%s” does not begin with “%s”", error->message, prefix);
  g_assert_cmpuint (strlen (error->message), >, strlen (prefix) + 10); /* a sentence follows */
}

/* The record's struct in the full sketch, and how the file calls a member of it. */
static gpointer
find_place (const SwSketch *sketch, SwRecord record, const SwMember *member, SwStepKind kind, char **path)
{
  const char *name = sw_record_name (record);
  guint id = 0;

  if (record == SW_RECORD_SKETCH)
    *path = g_strdup (member->name);
  else if (record == SW_RECORD_DYE || record == SW_RECORD_BATCH)
    *path = g_strdup_printf ("%s[1].%s", name, member->name);
  else if (record == SW_RECORD_STEP)
    *path = g_strdup_printf ("%s[%d].%s", name, (int) kind, member->name);
  else
    *path = g_strdup_printf ("%s.%s", name, member->name);

  if (record == SW_RECORD_DYE)
    id = 2;
  else if (record == SW_RECORD_BATCH)
    id = 31;
  else if (record == SW_RECORD_STEP)
    id = (guint) kind + 3;
  return (gpointer) sw_sketch_record (sketch, record, id);
}

static void
check_member (SwRecord record, const SwMember *member, SwStepKind kind)
{
  g_autoptr (SwSketch) sketch = full_sketch ();
  g_autofree char *path = NULL;
  gpointer data = find_place (sketch, record, member, kind, &path);
  SwValue bad = sketch_value_bad (member);

  if (bad.kind == member->kind)
    {
      sw_member_put (member, data, &bad);
      if (sw_member_applies (member, kind))
        assert_bad_at (sketch, path);
      else
        g_assert_true (sw_sketch_validate (sketch, NULL)); /* nobody looks at it */
    }
  sw_value_clear (&bad);
}

static void
test_every_member (void)
{
  g_test_summary ("Every member of every record, when out of its limits, is named with its path");
  for (int record = 0; record < SW_N_RECORDS; record++)
    {
      gsize n;
      const SwMember *members = sw_record_members (record, &n);
      int n_kinds = record == SW_RECORD_STEP ? SW_N_STEP_KINDS : 1;

      for (gsize i = 0; i < n; i++)
        for (int kind = 0; kind < n_kinds; kind++)
          check_member (record, &members[i], kind);
    }
}

/* What no member's own limits can tell. */

static void
lead_nowhere (SwSketch *sketch)
{
  step_at (sketch, SW_STEP_SPLOTCH)->dye = 77;
}

static void
take_step_for_dye (SwSketch *sketch)
{
  step_at (sketch, SW_STEP_BAND)->dye = 5;
}

static void
same_id_twice_in_dyes (SwSketch *sketch)
{
  dye_at (sketch, 1)->id = 1;
}

static void
same_id_in_dye_and_step (SwSketch *sketch)
{
  step_at (sketch, SW_STEP_REST)->id = 2;
}

static void
no_id (SwSketch *sketch)
{
  dye_at (sketch, 0)->id = 0;
}

static void
huge_id (SwSketch *sketch)
{
  step_at (sketch, SW_STEP_SET)->id = G_MAXUINT;
}

static void
unknown_kind (SwSketch *sketch)
{
  step_at (sketch, SW_STEP_FLIP)->kind = 99;
}

static void
flat_splotch (SwSketch *sketch)
{
  step_at (sketch, SW_STEP_SPLOTCH)->length_cm = 0;
}

static void
flat_speckles (SwSketch *sketch)
{
  step_at (sketch, SW_STEP_SPECKLE)->length_cm = 0;
}

static void
lying_band (SwSketch *sketch)
{
  step_at (sketch, SW_STEP_BAND)->angle_deg = -90;
}

static void
too_many_dyes (SwSketch *sketch)
{
  for (guint i = 0; i < 23; i++)
    g_ptr_array_add (sketch->dyes, sw_dye_new (100 + i));
}

static void
too_many_steps (SwSketch *sketch)
{
  for (guint i = 0; i < SW_MAX_STEPS; i++)
    g_ptr_array_add (sketch->steps, sw_step_new (100 + i, SW_STEP_FLIP));
}

static void
long_strand (SwSketch *sketch)
{
  sketch->yarn.mass_g = 3000;
  sketch->yarn.metres_per_100_g = 700;
}

static void
long_lay (SwSketch *sketch)
{
  sketch->reel.circumference_cm = 801;
}

static void
wide_lay (SwSketch *sketch)
{
  sketch->lay.skeins = 5;
  sketch->lay.width_cm = 81;
}

static void
three_runs (SwSketch *sketch)
{
  sketch->lay.runs = 3;
}

static void
no_runs (SwSketch *sketch)
{
  sketch->lay.runs = 0;
}

static void
second_of_one_skein (SwSketch *sketch)
{
  sketch->cloth.skein = 2;
}

static void
start_at_the_end (SwSketch *sketch)
{
  sketch->cloth.start_cm = 40000;
}

static void
last_in_turn_at_the_end (SwSketch *sketch)
{
  sketch->cloth.alternate_skeins = 4;
  sketch->cloth.alternate_shift_cm = 14000;
}

/* 400 x 400 cm of 500 on 100 cm2 are 800 000; twice that is too many. */
static void
many_specks (SwSketch *sketch)
{
  SwStep *again = sw_step_new (50, SW_STEP_SPECKLE);
  SwStep *step = step_at (sketch, SW_STEP_SPECKLE);

  again->dye = 1;
  again->width_cm = again->length_cm = step->width_cm = step->length_cm = 400;
  again->specks_per_100_cm2 = step->specks_per_100_cm2 = 500;
  g_ptr_array_add (sketch->steps, again);
}

static void
earlier_one_first (SwSketch *sketch)
{
  sketch->cloth.turn_cm = -1;
  step_at (sketch, SW_STEP_SET)->minutes = (double) NAN;
}

static const struct
{
  const char *name;
  void (*spoil) (SwSketch *sketch);
  const char *path;
} rows[] = {
  { "lead-nowhere", lead_nowhere, "steps[1].dye" },
  { "take-step-for-dye", take_step_for_dye, "steps[0].dye" },
  { "same-id-twice-in-dyes", same_id_twice_in_dyes, "dyes[1].id" },
  { "same-id-in-dye-and-step", same_id_in_dye_and_step, "steps[3].id" },
  { "no-id", no_id, "dyes[0].id" },
  { "huge-id", huge_id, "steps[7].id" },
  { "unknown-kind", unknown_kind, "steps[4].kind" },
  { "flat-splotch", flat_splotch, "steps[1].length_cm" },
  { "flat-speckles", flat_speckles, "steps[2].length_cm" },
  { "lying-band", lying_band, "steps[0].angle_deg" },
  { "too-many-dyes", too_many_dyes, "dyes" },
  { "too-many-steps", too_many_steps, "steps" },
  { "long-strand", long_strand, "yarn.metres_per_100_g" },
  { "long-lay", long_lay, "reel.circumference_cm" },
  { "wide-lay", wide_lay, "lay.width_cm" },
  { "three-runs", three_runs, "lay.runs" },
  { "no-runs", no_runs, "lay.runs" },
  { "second-of-one-skein", second_of_one_skein, "cloth.skein" },
  { "start-at-the-end", start_at_the_end, "cloth.start_cm" },
  { "last-in-turn-at-the-end", last_in_turn_at_the_end, "cloth.alternate_shift_cm" },
  { "many-specks", many_specks, "steps[8].specks_per_100_cm2" },
  { "earlier-one-first", earlier_one_first, "steps[7].minutes" },
};

static void
test_row (gconstpointer data)
{
  const typeof (rows[0]) *row = data;
  g_autoptr (SwSketch) sketch = full_sketch ();

  row->spoil (sketch);
  assert_bad_at (sketch, row->path);
}

/* Right at the bounds all is well. */
static void
test_bounds (void)
{
  g_autoptr (SwSketch) sketch = full_sketch ();
  g_autoptr (GError) error = NULL;
  gboolean valid;

  g_test_summary ("The largest sketch is allowed: 24 dyes, 2000 steps, 20 km of yarn, 400 by 400 cm, a band of 80 degrees");
  while (sketch->dyes->len < SW_MAX_DYES)
    g_ptr_array_add (sketch->dyes, sw_dye_new (100 + sketch->dyes->len));
  while (sketch->steps->len < SW_MAX_STEPS)
    g_ptr_array_add (sketch->steps, sw_step_new (200 + sketch->steps->len, SW_STEP_FLIP));
  step_at (sketch, SW_STEP_SET)->id = SW_ID_MAX;
  step_at (sketch, SW_STEP_BAND)->angle_deg = 80;
  sketch->yarn.mass_g = 5000;
  sketch->yarn.metres_per_100_g = 400;
  sketch->reel.circumference_cm = 6400;
  sketch->lay.runs = 16;
  sketch->lay.skeins = 20;
  sketch->lay.width_cm = 20;
  sketch->cloth.skein = 20;
  sketch->cloth.start_cm = 1999999;

  valid = sw_sketch_validate (sketch, &error);
  g_assert_no_error (error);
  g_assert_true (valid);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sketch/validate/every-member", test_every_member);
  g_test_add_func ("/sketch/validate/bounds", test_bounds);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/sketch/validate/", rows[i].name, NULL);

      g_test_add_data_func (path, &rows[i], test_row);
    }
  return g_test_run ();
}
