/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-edit.h"

#include "sketch-values.h"

#include <string.h>

/* A small sketch: two dyes, a named band, a nameless speckle zone, a rest. */
enum
{
  MADDER = 1,
  INDIGO,
  LEFT_EDGE,
  SPECKLES,
  REST,
  FIRST_FREE,
};

static SwSketch *
small_sketch (void)
{
  SwSketch *sketch = sw_sketch_new ();
  SwStep *band = sw_step_new (LEFT_EDGE, SW_STEP_BAND);
  SwStep *speckles = sw_step_new (SPECKLES, SW_STEP_SPECKLE);

  g_ptr_array_add (sketch->dyes, sw_dye_new (MADDER));
  g_ptr_array_add (sketch->dyes, sw_dye_new (INDIGO));
  g_free (band->name);
  band->name = g_strdup ("left edge");
  band->dye = MADDER;
  speckles->dye = MADDER;
  g_ptr_array_add (sketch->steps, band);
  g_ptr_array_add (sketch->steps, speckles);
  g_ptr_array_add (sketch->steps, sw_step_new (REST, SW_STEP_REST));
  sketch->next_id = FIRST_FREE;
  g_assert_true (sw_sketch_validate (sketch, NULL));
  return sketch;
}

/* Applies and hands back the inverse; fails the test if it is refused. */
static SwEdit *
must_apply (SwEdit *edit, SwSketch *sketch, guint *touched)
{
  g_autoptr (GError) error = NULL;
  SwEdit *inverse = sw_edit_apply (edit, sketch, touched, &error);

  g_assert_no_error (error);
  g_assert_nonnull (inverse);
  sw_edit_free (edit);
  return inverse;
}

static void
must_do (SwEdit *edit, SwSketch *sketch)
{
  sw_edit_free (must_apply (edit, sketch, NULL));
}

static void
assert_refused (SwEdit *edit, const SwSketch *sketch, int code, const char *words)
{
  g_autoptr (SwSketch) copy = sw_sketch_copy (sketch);
  g_autoptr (GError) error = NULL;
  guint touched = 99;

  g_assert_null (sw_edit_apply (edit, copy, &touched, &error));
  g_assert_error (error, SW_SKETCH_ERROR, code);
  if (strstr (error->message, words) == NULL)
    g_error ("“%s” does not say “%s”", error->message, words);
  g_assert_cmpuint (touched, ==, 99);
  g_assert_true (sw_sketch_equal (copy, sketch));
  sw_edit_free (edit);
}

static SwEdit *
set_number (SwRecord record, guint id, const char *member, double number)
{
  SwValue value = sw_value_number (number);

  return sw_edit_set (record, id, member, &value);
}

static SwEdit *
set_whole (SwRecord record, const char *member, gint64 whole)
{
  SwValue value = sw_value_whole (whole);

  return sw_edit_set (record, 0, member, &value);
}

static SwEdit *
set_dye (guint step, guint dye)
{
  SwValue value = sw_value_dye (dye);

  return sw_edit_set (SW_RECORD_STEP, step, "dye", &value);
}

static SwEdit *
insert_pour (int index, guint id, SwStepKind kind, guint dye)
{
  g_autoptr (SwStep) step = sw_step_new (id, kind);

  step->dye = dye;
  return sw_edit_insert_step (index, step);
}

static SwEdit *
insert_wide_speckles (void)
{
  g_autoptr (SwStep) step = sw_step_new (0, SW_STEP_SPECKLE);

  step->dye = MADDER;
  step->width_cm = step->length_cm = 400;
  step->specks_per_100_cm2 = 5000;
  return sw_edit_insert_step (-1, step);
}

static void
test_refused (void)
{
  g_autoptr (SwSketch) sketch = small_sketch ();
  const SwSketch *s = sketch;

  g_test_summary ("What cannot be is refused in words that name it, and changes nothing");

  assert_refused (set_number (SW_RECORD_YARN, 0, "mass_g", -1), s, SW_SKETCH_ERROR_RANGE, "Mass of a skein");
  assert_refused (set_whole (SW_RECORD_YARN, "mass_g", 100), s, SW_SKETCH_ERROR_KIND, "Mass of a skein");
  assert_refused (set_number (SW_RECORD_YARN, 0, "weight", 1), s, SW_SKETCH_ERROR_TARGET, "weight");
  assert_refused (set_whole (SW_RECORD_LAY, "runs", 3), s, SW_SKETCH_ERROR_RANGE, "1, 2, 4");

  assert_refused (set_number (SW_RECORD_STEP, 42, "x_cm", 1), s, SW_SKETCH_ERROR_TARGET, "42");
  assert_refused (set_number (SW_RECORD_DYE, LEFT_EDGE, "spread", 1), s, SW_SKETCH_ERROR_TARGET, "3");
  assert_refused (set_number (SW_RECORD_STEP, REST, "x_cm", 1), s, SW_SKETCH_ERROR_TARGET, "“Rest”");
  assert_refused (set_number (SW_RECORD_STEP, LEFT_EDGE, "minutes", 1), s, SW_SKETCH_ERROR_TARGET, "“Band”");
  assert_refused (set_number (SW_RECORD_STEP, LEFT_EDGE, "angle_deg", 85), s, SW_SKETCH_ERROR_RANGE, "80");
  assert_refused (set_number (SW_RECORD_STEP, SPECKLES, "length_cm", 0), s, SW_SKETCH_ERROR_RANGE, "band");

  assert_refused (set_dye (LEFT_EDGE, 0), s, SW_SKETCH_ERROR_REFERENCE, "needs a dye");
  assert_refused (set_dye (LEFT_EDGE, SPECKLES), s, SW_SKETCH_ERROR_REFERENCE, "id 4");
  assert_refused (insert_pour (-1, 0, SW_STEP_BAND, 0), s, SW_SKETCH_ERROR_REFERENCE, "needs a dye");
  assert_refused (insert_pour (-1, 0, SW_STEP_BAND, 77), s, SW_SKETCH_ERROR_REFERENCE, "77");
  assert_refused (insert_pour (-1, INDIGO, SW_STEP_BAND, INDIGO), s, SW_SKETCH_ERROR_REFERENCE, "id 2");
  assert_refused (insert_pour (-1, SW_ID_MAX + 1u, SW_STEP_BAND, INDIGO), s, SW_SKETCH_ERROR_RANGE, "1000000000");
  assert_refused (insert_pour (4, 0, SW_STEP_BAND, INDIGO), s, SW_SKETCH_ERROR_TARGET, "list of 3");
  assert_refused (insert_pour (-2, 0, SW_STEP_BAND, INDIGO), s, SW_SKETCH_ERROR_TARGET, "list of 3");

  assert_refused (sw_edit_remove (SW_RECORD_STEP, INDIGO), s, SW_SKETCH_ERROR_TARGET, "2");
  assert_refused (sw_edit_remove (SW_RECORD_DYE, MADDER), s, SW_SKETCH_ERROR_REFERENCE, "Step 1, “left edge”");
  assert_refused (sw_edit_move (SW_RECORD_DYE, INDIGO, 2), s, SW_SKETCH_ERROR_TARGET, "list of 2");
  assert_refused (sw_edit_move (SW_RECORD_DYE, REST, 0), s, SW_SKETCH_ERROR_TARGET, "5");

  assert_refused (insert_wide_speckles (), s, SW_SKETCH_ERROR_RANGE, "specks");
  assert_refused (set_number (SW_RECORD_REEL, 0, "circumference_cm", 900), s, SW_SKETCH_ERROR_RANGE, "450 cm");
  assert_refused (set_whole (SW_RECORD_CLOTH, "skein", 2), s, SW_SKETCH_ERROR_REFERENCE, "skein 2");
  assert_refused (set_number (SW_RECORD_CLOTH, 0, "start_cm", 40000), s, SW_SKETCH_ERROR_RANGE, "400 m");
}

static void
test_longest_strand (void)
{
  g_autoptr (SwSketch) sketch = small_sketch ();

  g_test_summary ("20 km of yarn are allowed (5000 g of 400 m in 100 g), a little more are not");
  must_do (set_number (SW_RECORD_YARN, 0, "mass_g", 5000), sketch);
  assert_refused (set_number (SW_RECORD_YARN, 0, "metres_per_100_g", 401), sketch, SW_SKETCH_ERROR_RANGE, "20.05 km");
}

static void
test_nameless_pour (void)
{
  g_autoptr (SwSketch) sketch = small_sketch ();

  g_test_summary ("A dye in use stays, and a pour without a name is told by its number and kind");
  must_do (sw_edit_remove (SW_RECORD_STEP, LEFT_EDGE), sketch);
  assert_refused (sw_edit_remove (SW_RECORD_DYE, MADDER), sketch, SW_SKETCH_ERROR_REFERENCE, "Step 1 (Speckles)");
}

static void
test_ids (void)
{
  g_autoptr (SwSketch) sketch = small_sketch ();
  SwEdit *edit;
  guint first, second, third;

  g_test_summary ("Undo and redo bring the same id back; a fresh id is never one that was given out");

  edit = must_apply (insert_pour (0, 0, SW_STEP_BAND, INDIGO), sketch, &first);
  g_assert_cmpuint (first, ==, FIRST_FREE);
  edit = must_apply (edit, sketch, &second);
  g_assert_cmpuint (second, ==, first);
  g_assert_null (sw_sketch_find_step (sketch, first));

  sw_edit_free (must_apply (insert_pour (-1, 0, SW_STEP_BAND, INDIGO), sketch, &third));
  g_assert_cmpuint (third, !=, first);

  sw_edit_free (must_apply (edit, sketch, &second));
  g_assert_cmpuint (second, ==, first);
  g_assert_nonnull (sw_sketch_find_step (sketch, first));
  g_assert_true (sw_sketch_validate (sketch, NULL));
}

static void
test_last_id (void)
{
  g_autoptr (SwSketch) sketch = small_sketch ();
  guint id;

  g_test_summary ("After the last possible id the free ones below it are used");
  must_do (insert_pour (-1, SW_ID_MAX, SW_STEP_BAND, INDIGO), sketch);
  sw_edit_free (must_apply (insert_pour (-1, 0, SW_STEP_BAND, INDIGO), sketch, &id));
  g_assert_cmpuint (id, ==, FIRST_FREE);
  g_assert_true (sw_sketch_validate (sketch, NULL));
}

static void
test_insert_places (void)
{
  g_autoptr (SwSketch) sketch = small_sketch ();
  static const guint expected[] = { LEFT_EDGE, SPECKLES, 50, REST, 51 };

  g_test_summary ("Insert and move mean the place in the finished list");
  must_do (insert_pour (0, 50, SW_STEP_BAND, INDIGO), sketch);
  must_do (insert_pour (-1, 51, SW_STEP_BAND, INDIGO), sketch);
  must_do (sw_edit_move (SW_RECORD_STEP, 50, 2), sketch);
  g_assert_cmpuint (sketch->steps->len, ==, G_N_ELEMENTS (expected));
  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    g_assert_cmpuint (((const SwStep *) sketch->steps->pdata[i])->id, ==, expected[i]);
}

static void
test_unused_members (void)
{
  g_autoptr (SwSketch) sketch = small_sketch ();
  g_autoptr (SwStep) rest = sw_step_new (60, SW_STEP_REST);
  g_autoptr (SwStep) plain = sw_step_new (60, SW_STEP_REST);
  const SwStep *inserted;

  g_test_summary ("Members that a step's kind does not use are left at their defaults, so that a saved sketch reads back the same");
  rest->x_cm = 12;
  rest->minutes = plain->minutes = 7;
  sw_extras_add (&rest->extras, "mood", "\"calm\"");
  must_do (sw_edit_insert_step (-1, rest), sketch);
  inserted = sw_sketch_find_step (sketch, 60);
  g_assert_cmpfloat (inserted->x_cm, ==, plain->x_cm);
  g_assert_cmpfloat (inserted->minutes, ==, 7);
  g_assert_true (sw_extras_equal (inserted->extras, rest->extras));
}

static void
test_group_all_or_none (void)
{
  g_autoptr (SwSketch) sketch = small_sketch ();
  SwEdit *edits[] = {
    insert_pour (1, 0, SW_STEP_SPLOTCH, INDIGO),
    sw_edit_move (SW_RECORD_STEP, REST, 0),
    set_number (SW_RECORD_YARN, 0, "mass_g", 50),
    sw_edit_remove (SW_RECORD_STEP, LEFT_EDGE),
    sw_edit_remove (SW_RECORD_DYE, MADDER), /* still used by the speckles */
  };

  g_test_summary ("A group whose last edit is refused takes back all the others");
  assert_refused (sw_edit_group (edits, G_N_ELEMENTS (edits)), sketch, SW_SKETCH_ERROR_REFERENCE, "Speckles");
}

static void
test_group_order (void)
{
  g_autoptr (SwSketch) sketch = small_sketch ();
  g_autoptr (SwSketch) before = sw_sketch_copy (sketch);
  SwEdit *edits[] = {
    sw_edit_remove (SW_RECORD_STEP, LEFT_EDGE),
    sw_edit_remove (SW_RECORD_STEP, SPECKLES),
    sw_edit_remove (SW_RECORD_DYE, MADDER),
  };
  g_autoptr (SwEdit) undo = must_apply (sw_edit_group (edits, G_N_ELEMENTS (edits)), sketch, NULL);

  g_test_summary ("A dye may go after its pours in one group, and undo brings the dye back first");
  g_assert_cmpuint (sketch->dyes->len, ==, 1);
  must_do (g_steal_pointer (&undo), sketch);
  g_assert_true (sw_sketch_equal (sketch, before));
}

/* Random edits of every sort, for the property below. */

static guint
random_id (const SwSketch *sketch, SwRecord record)
{
  const GPtrArray *list = record == SW_RECORD_DYE ? sketch->dyes : record == SW_RECORD_STEP ? sketch->steps : sketch->batches;

  if (list->len == 0 || g_test_rand_int_range (0, 20) == 0)
    return (guint) g_test_rand_int_range (1, 300); /* most often nobody's */
  return *(const guint *) list->pdata[g_test_rand_int_range (0, (gint32) list->len)];
}

static void
randomise (SwRecord record, gpointer data, const SwSketch *sketch)
{
  gsize n;
  const SwMember *members = sw_record_members (record, &n);

  for (gsize i = 0; i < n; i++)
    {
      SwValue value = sketch_value_random (&members[i], sketch);

      /* A refused value leaves the default, else hardly any insert would succeed. */
      if (sw_member_check (&members[i], &value, NULL))
        g_assert_true (sw_member_set (&members[i], data, &value, NULL));
      sw_value_clear (&value);
    }
}

static SwEdit *
random_set (const SwSketch *sketch)
{
  SwRecord record = (SwRecord) g_test_rand_int_range (0, SW_N_RECORDS);
  guint id = record == SW_RECORD_DYE || record == SW_RECORD_STEP || record == SW_RECORD_BATCH ? random_id (sketch, record) : 0;
  gsize n;
  const SwMember *members = sw_record_members (record, &n);
  const SwMember *member = &members[g_test_rand_int_range (0, (gint32) n)];
  SwValue value = sketch_value_random (member, sketch);
  SwEdit *edit = sw_edit_set (record, id, member->name, &value);

  sw_value_clear (&value);
  return edit;
}

static SwEdit *
random_insert (const SwSketch *sketch)
{
  guint id = g_test_rand_int_range (0, 5) == 0 ? (guint) g_test_rand_int_range (1, 300) : 0;

  if (g_test_rand_int_range (0, 8) == 0)
    {
      g_autoptr (SwBatch) batch = sw_batch_new (id);

      randomise (SW_RECORD_BATCH, batch, sketch);
      return sw_edit_insert_batch (g_test_rand_int_range (-1, (gint32) sketch->batches->len + 1), batch);
    }
  if (g_test_rand_int_range (0, 4) == 0)
    {
      g_autoptr (SwDye) dye = sw_dye_new (id);

      randomise (SW_RECORD_DYE, dye, sketch);
      if (g_test_rand_bit ())
        sw_extras_add (&dye->extras, "shelf", "[1,2]");
      return sw_edit_insert_dye (g_test_rand_int_range (-1, (gint32) sketch->dyes->len + 1), dye);
    }
  else
    {
      g_autoptr (SwStep) step = sw_step_new (id, (SwStepKind) g_test_rand_int_range (0, SW_N_STEP_KINDS));

      randomise (SW_RECORD_STEP, step, sketch);
      if (g_test_rand_bit ())
        sw_extras_add (&step->extras, "mood", "\"calm\"");
      return sw_edit_insert_step (g_test_rand_int_range (-1, (gint32) sketch->steps->len + 1), step);
    }
}

static SwEdit *
random_edit (const SwSketch *sketch, int depth)
{
  static const SwRecord lists[] = { SW_RECORD_DYE, SW_RECORD_STEP, SW_RECORD_STEP, SW_RECORD_BATCH };
  SwRecord record = lists[g_test_rand_int_range (0, G_N_ELEMENTS (lists))];
  SwEdit *edits[4];
  gsize n;

  switch (g_test_rand_int_range (0, depth > 0 ? 9 : 8))
    {
    case 0:
    case 1:
    case 2:
      return random_set (sketch);
    case 3:
    case 4:
    case 5:
      return random_insert (sketch);
    case 6:
      return sw_edit_remove (record, random_id (sketch, record));
    case 7:
      return sw_edit_move (record, random_id (sketch, record), g_test_rand_int_range (-1, 6));
    default:
      n = (gsize) g_test_rand_int_range (0, G_N_ELEMENTS (edits) + 1);
      for (gsize i = 0; i < n; i++)
        edits[i] = random_edit (sketch, depth - 1);
      return sw_edit_group (edits, n);
    }
}

/* One edit there, back and there again. Returns: (transfer full): its inverse, NULL if it was refused */
static SwEdit *
check_edit (const SwEdit *edit, SwSketch *sketch)
{
  g_autoptr (SwSketch) before = sw_sketch_copy (sketch);
  g_autoptr (SwSketch) after = NULL;
  g_autoptr (SwEdit) copy = sw_edit_copy (edit);
  g_autoptr (SwEdit) original = NULL;
  g_autoptr (GError) error = NULL;
  SwEdit *inverse = sw_edit_apply (copy, sketch, NULL, &error);
  gboolean valid;

  if (inverse == NULL)
    {
      g_assert_cmpint ((int) error->domain, ==, (int) SW_SKETCH_ERROR);
      g_assert_true (sw_sketch_equal (sketch, before));
      return NULL;
    }

  valid = sw_sketch_validate (sketch, &error);
  g_assert_no_error (error);
  g_assert_true (valid);

  after = sw_sketch_copy (before);
  original = sw_edit_apply (edit, after, NULL, NULL); /* does what its copy did */
  g_assert_nonnull (original);
  g_assert_true (sw_sketch_equal (sketch, after));

  inverse = must_apply (inverse, sketch, NULL);
  g_assert_true (sw_sketch_equal (sketch, before));
  inverse = must_apply (inverse, sketch, NULL);
  g_assert_true (sw_sketch_equal (sketch, after));
  return inverse;
}

static void
test_inverse (void)
{
  g_autoptr (SwSketch) sketch = small_sketch ();
  g_autoptr (SwSketch) start = sw_sketch_copy (sketch);
  g_autoptr (GPtrArray) inverses = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_edit_free);
  guint refused = 0;

  g_test_summary ("Random edits: each one and its inverse change nothing, a valid sketch stays valid, and all of them undo to the start");
  for (int i = 0; i < 800; i++)
    {
      g_autoptr (SwEdit) edit = random_edit (sketch, 2);
      SwEdit *inverse = check_edit (edit, sketch);

      if (inverse != NULL)
        g_ptr_array_add (inverses, inverse);
      else
        refused++;
    }

  /* Else this would prove little. */
  g_test_message ("%u edits done, %u refused, %u steps in the end", inverses->len, refused, sketch->steps->len);
  g_assert_cmpuint (inverses->len, >, 200);
  g_assert_cmpuint (refused, >, 50);
  g_assert_false (sw_sketch_equal (sketch, start));

  while (inverses->len > 0)
    must_do (g_ptr_array_steal_index (inverses, inverses->len - 1), sketch);
  g_assert_true (sw_sketch_equal (sketch, start));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sketch/edit/refused", test_refused);
  g_test_add_func ("/sketch/edit/longest-strand", test_longest_strand);
  g_test_add_func ("/sketch/edit/nameless-pour", test_nameless_pour);
  g_test_add_func ("/sketch/edit/ids", test_ids);
  g_test_add_func ("/sketch/edit/last-id", test_last_id);
  g_test_add_func ("/sketch/edit/insert-places", test_insert_places);
  g_test_add_func ("/sketch/edit/unused-members", test_unused_members);
  g_test_add_func ("/sketch/edit/group-all-or-none", test_group_all_or_none);
  g_test_add_func ("/sketch/edit/group-order", test_group_order);
  g_test_add_func ("/sketch/edit/inverse", test_inverse);
  return g_test_run ();
}
