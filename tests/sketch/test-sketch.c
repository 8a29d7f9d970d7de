/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-member-private.h"

#include "sketch-values.h"

#include <math.h>

static SwSketch *
furnished_sketch (void)
{
  SwSketch *sketch = sw_sketch_new ();

  g_ptr_array_add (sketch->dyes, sw_dye_new (1));
  for (int kind = 0; kind < SW_N_STEP_KINDS; kind++)
    g_ptr_array_add (sketch->steps, sw_step_new ((guint) kind + 2, kind));
  g_ptr_array_add (sketch->batches, sw_batch_new (10));
  sketch->next_id = 11;
  return sketch;
}

static void
test_empty (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  g_autoptr (GError) error = NULL;
  gboolean valid = sw_sketch_validate (sketch, &error);

  g_test_summary ("A new sketch has no dyes and steps and can be forecast");
  g_assert_no_error (error);
  g_assert_true (valid);
  g_assert_cmpuint (sketch->dyes->len, ==, 0);
  g_assert_cmpuint (sketch->steps->len, ==, 0);
  g_assert_cmpstr (sketch->title, ==, "");
}

/*
 * pH of acetic acid by its charge balance, in the simplest way there is.
 * pKa 4.756 at 25 C and 60.05 g/mol: CRC Handbook of Chemistry and Physics.
 */
static double
acetic_ph (double molar, double alkalinity)
{
  double low = 0, high = 14;

  for (int i = 0; i < 60; i++)
    {
      double ph = 0.5 * (low + high);
      double h = pow (10, -ph);
      double charge = h + alkalinity - molar / (1 + h / pow (10, -4.756)) - 1e-14 / h;

      if (charge > 0)
        low = ph;
      else
        high = ph;
    }
  return low;
}

static void
test_common_practice (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  const SwBathSettings *bath = &sketch->bath;
  double litres = bath->water_ml / 1000;
  double molar = bath->acid_ml * bath->acid_percent / 100 / 60.05 / litres;
  double strand_m = sketch->yarn.mass_g * sketch->yarn.metres_per_100_g / 100;
  double ph = acetic_ph (molar, bath->alkalinity_meq_per_l / 1000);
  g_autoptr (SwStep) rest = sw_step_new (1, SW_STEP_REST);
  g_autoptr (SwStep) set = sw_step_new (1, SW_STEP_SET);
  g_autoptr (SwStep) band = sw_step_new (1, SW_STEP_BAND);

  g_test_summary ("The defaults are common practice (no source): a doubled sock skein that fits its pan, in a bath sour enough to strike");
  g_assert_cmpfloat (strand_m, ==, 400);
  g_assert_cmpfloat (sw_sketch_lay_length (sketch), <=, sketch->lay.pan_length_cm);
  g_assert_cmpfloat (sw_sketch_lay_width (sketch), <=, sketch->lay.pan_width_cm);
  g_test_message ("pH at the start %.2f", ph);
  g_assert_cmpfloat (ph, >, 3.45);
  g_assert_cmpfloat (ph, <, 4.2);
  g_assert_cmpfloat (rest->minutes, ==, 10);
  g_assert_cmpfloat (rest->temperature_c, ==, 85);
  g_assert_cmpfloat (set->minutes, ==, 30);
  g_assert_cmpfloat (set->temperature_c, ==, 95);
  g_assert_cmpfloat (band->length_cm, ==, 0); /* right across */
  g_assert_true (band->x_cm > 0 && band->x_cm < sw_sketch_lay_length (sketch));
}

static void
test_lay (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();

  g_test_summary ("The lay is the loop's length over the runs, and a lane for each skein");
  sketch->reel.circumference_cm = 180;
  sketch->lay.runs = 4;
  sketch->lay.skeins = 3;
  sketch->lay.width_cm = 7;
  g_assert_cmpfloat (sw_sketch_lay_length (sketch), ==, 45);
  g_assert_cmpfloat (sw_sketch_lay_width (sketch), ==, 21);
}

static void
test_look_up (void)
{
  g_autoptr (SwSketch) sketch = furnished_sketch ();

  g_test_summary ("Dyes and steps are found by their id, and each only among its own");
  g_assert_true (sw_sketch_find_dye (sketch, 1) == sketch->dyes->pdata[0]);
  g_assert_null (sw_sketch_find_dye (sketch, 2));
  g_assert_true (sw_sketch_find_step (sketch, 4) == sketch->steps->pdata[2]);
  g_assert_null (sw_sketch_find_step (sketch, 1));
  g_assert_null (sw_sketch_find_step (sketch, 0));
  g_assert_true (sw_sketch_find_batch (sketch, 10) == sketch->batches->pdata[0]);
  g_assert_null (sw_sketch_find_batch (sketch, 2));
  g_assert_true (sw_sketch_record (sketch, SW_RECORD_STEP, 4) == sketch->steps->pdata[2]);
  g_assert_true (sw_sketch_record (sketch, SW_RECORD_CLOTH, 0) == (gconstpointer) &sketch->cloth);
  g_assert_true (sw_sketch_record (sketch, SW_RECORD_SKETCH, 0) == (gconstpointer) sketch);
}

static void
test_fresh_id (void)
{
  g_autoptr (SwSketch) sketch = furnished_sketch ();

  g_test_summary ("A fresh id is nobody's, whatever next_id says");
  g_assert_cmpuint (sw_sketch_fresh_id (sketch), ==, 11);
  sketch->next_id = 0;
  g_assert_cmpuint (sw_sketch_fresh_id (sketch), ==, 11);
  sketch->next_id = 3;
  g_assert_cmpuint (sw_sketch_fresh_id (sketch), ==, 11);
  sketch->next_id = SW_ID_MAX + 1u;
  g_assert_cmpuint (sw_sketch_fresh_id (sketch), ==, 11);
  sketch->next_id = 100;
  g_assert_cmpuint (sw_sketch_fresh_id (sketch), ==, 100);
}

static void
test_pours (void)
{
  g_test_summary ("Bands, splotches and speckles are pours, nothing else is");
  for (int kind = 0; kind < SW_N_STEP_KINDS; kind++)
    {
      g_autoptr (SwStep) step = sw_step_new (1, kind);
      gboolean pours = kind == SW_STEP_BAND || kind == SW_STEP_SPLOTCH || kind == SW_STEP_SPECKLE;

      g_assert_cmpint (sw_step_is_pour (step), ==, pours);
    }
}

/* Of a dye, a band, a batch. */
static guint
an_id (SwRecord record)
{
  if (record == SW_RECORD_BATCH)
    return 10;
  return record == SW_RECORD_DYE ? 1 : 2;
}

/* Changes one member of a copy. */
static void
check_member_counts (SwRecord record, const SwMember *member)
{
  g_autoptr (SwSketch) sketch = furnished_sketch ();
  g_autoptr (SwSketch) copy = sw_sketch_copy (sketch);
  g_autoptr (SwSketch) second_copy = NULL;
  guint id = an_id (record);
  SwValue value = sketch_value_other (member);

  g_assert_true (sw_sketch_equal (sketch, copy));
  sw_member_put (member, (gpointer) sw_sketch_record (copy, record, id), &value);
  g_assert_false (sw_sketch_equal (sketch, copy));
  second_copy = sw_sketch_copy (copy);
  g_assert_true (sw_sketch_equal (second_copy, copy));
  sw_value_clear (&value);
}

static void
test_copy_and_equal (void)
{
  g_test_summary ("A copy is equal until any one member of any record differs, and shares nothing");
  for (int record = 0; record < SW_N_RECORDS; record++)
    {
      gsize n;
      const SwMember *members = sw_record_members (record, &n);

      for (gsize i = 0; i < n; i++)
        check_member_counts (record, &members[i]);
    }
}

static void
test_equal_beyond_members (void)
{
  g_autoptr (SwSketch) sketch = furnished_sketch ();
  g_autoptr (SwSketch) other = sw_sketch_copy (sketch);
  SwStep *step = other->steps->pdata[3];

  g_test_summary ("Ids, kinds, order and length of the lists count; the next free id does not");
  other->next_id = 999;
  g_assert_true (sw_sketch_equal (sketch, other));
  step->id = 40;
  g_assert_false (sw_sketch_equal (sketch, other));
  step->id = 5;
  g_assert_true (sw_sketch_equal (sketch, other));
  step->kind = SW_STEP_SET;
  g_assert_false (sw_sketch_equal (sketch, other));
  step->kind = SW_STEP_REST;
  ((SwBatch *) other->batches->pdata[0])->id = 11;
  g_assert_false (sw_sketch_equal (sketch, other));
  ((SwBatch *) other->batches->pdata[0])->id = 10;
  g_ptr_array_remove_index (other->steps, 7);
  g_assert_false (sw_sketch_equal (sketch, other));
}

static void
check_extras_count (SwRecord record)
{
  g_autoptr (SwSketch) sketch = furnished_sketch ();
  g_autoptr (SwSketch) copy = NULL;
  guint8 *data = (gpointer) sw_sketch_record (sketch, record, an_id (record));
  GPtrArray **extras = (gpointer) (data + sw_record_table (record)->extras);

  copy = sw_sketch_copy (sketch);
  sw_extras_add (extras, "moon", "{\"phase\":0.5}");
  g_assert_false (sw_sketch_equal (sketch, copy));

  g_clear_pointer (&copy, sw_sketch_free);
  copy = sw_sketch_copy (sketch);
  g_assert_true (sw_sketch_equal (sketch, copy));

  sw_extras_add (extras, "sun", "1");
  g_assert_false (sw_sketch_equal (sketch, copy));
}

static void
test_extras (void)
{
  g_autoptr (GPtrArray) empty = g_ptr_array_new ();
  GPtrArray *one_way = NULL, *other_way = NULL;

  g_test_summary ("Unknown members of every record are copied and compared, in their order; no list is an empty list");
  for (int record = 0; record < SW_N_RECORDS; record++)
    check_extras_count (record);

  sw_extras_add (&one_way, "a", "1");
  sw_extras_add (&one_way, "b", "2");
  sw_extras_add (&other_way, "b", "2");
  sw_extras_add (&other_way, "a", "1");
  g_assert_false (sw_extras_equal (one_way, other_way));
  g_clear_pointer (&other_way, sw_extras_free);
  sw_extras_add (&other_way, "a", "1");
  sw_extras_add (&other_way, "b", "3");
  g_assert_false (sw_extras_equal (one_way, other_way));
  g_assert_true (sw_extras_equal (NULL, empty));
  g_assert_null (sw_extras_copy (NULL));
  sw_extras_free (one_way);
  sw_extras_free (other_way);
  sw_extras_free (NULL);
}

static void
test_values (void)
{
  SwSample lab = { SW_SAMPLE_LAB, { 50, 10, -10, 0.5 } };
  SwSample same = { SW_SAMPLE_LAB, { 50, 10, -10, 0.7 } };
  SwSample code = { SW_SAMPLE_SRGB, { 50, 10, -10 } };
  SwValue text = sw_value_text ("Weld");
  SwValue copy;

  g_test_summary ("Values are owned and compared by kind and content");
  sw_value_copy (&text, &copy);
  g_assert_true (copy.as.text != text.as.text);
  g_assert_true (sw_value_equal (&text, &copy));
  copy.as.text[0] = 'F';
  g_assert_false (sw_value_equal (&text, &copy));
  sw_value_clear (&text);
  sw_value_clear (&copy);
  sw_value_clear (&copy); /* twice does no harm */

  g_assert_false (sw_value_equal (&(SwValue){ SW_KIND_WHOLE, { .whole = 1 } }, &(SwValue){ SW_KIND_DYE, { .whole = 1 } }));
  g_assert_true (sw_sample_equal (&lab, &same)); /* numbers beyond the third do not count */
  g_assert_false (sw_sample_equal (&lab, &code));
  g_assert_cmpuint (sw_sample_numbers (SW_SAMPLE_REFLECTANCE), ==, 36);
  g_assert_cmpuint (sw_sample_numbers (SW_SAMPLE_SRGB), ==, 3);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sketch/sketch/empty", test_empty);
  g_test_add_func ("/sketch/sketch/common-practice", test_common_practice);
  g_test_add_func ("/sketch/sketch/lay", test_lay);
  g_test_add_func ("/sketch/sketch/look-up", test_look_up);
  g_test_add_func ("/sketch/sketch/fresh-id", test_fresh_id);
  g_test_add_func ("/sketch/sketch/pours", test_pours);
  g_test_add_func ("/sketch/sketch/copy-and-equal", test_copy_and_equal);
  g_test_add_func ("/sketch/sketch/equal-beyond-members", test_equal_beyond_members);
  g_test_add_func ("/sketch/sketch/extras", test_extras);
  g_test_add_func ("/sketch/sketch/values", test_values);
  return g_test_run ();
}
