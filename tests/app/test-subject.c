/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-subject.h"

#include "bath/sw-strike.h"
#include "tests/app/sw-app-test.h"

/* What fields are about: one record or several at once. */

typedef struct
{
  SwDocument *document;
  SwSubject *subject;
  guint ids[5]; /* two dyes, band, rest, splotch */
  guint changes;
} Fixture;

static void
count_cb (Fixture *fixture)
{
  fixture->changes++;
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->document = sw_test_document (fixture->ids);
  fixture->subject = sw_subject_new (fixture->document, SW_RECORD_STEP);
  g_signal_connect_swapped (fixture->subject, "changed", G_CALLBACK (count_cb), fixture);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_assert_finalize_object (fixture->subject);
  g_assert_finalize_object (fixture->document);
}

static const SwStep *
step (Fixture *fixture, guint id)
{
  return sw_sketch_find_step (sw_document_get_sketch (fixture->document), id);
}

static const SwMember *
member (const char *name)
{
  return sw_record_find_member (SW_RECORD_STEP, name);
}

static void
choose (Fixture *fixture, guint a, guint b)
{
  const guint ids[] = { a, b };

  sw_subject_set_ids (fixture->subject, ids, b != 0 ? 2 : 1);
}

static void
test_nothing (Fixture *fixture, gconstpointer data)
{
  SwValue value;

  g_assert_cmpuint (sw_subject_count (fixture->subject), ==, 0);
  g_assert_cmpuint (sw_subject_first (fixture->subject), ==, 0);
  g_assert_false (sw_subject_applies (fixture->subject, member ("name")));
  g_assert_false (sw_subject_get (fixture->subject, member ("name"), &value, NULL));
}

static void
test_applies (Fixture *fixture, gconstpointer data)
{
  choose (fixture, fixture->ids[2], 0);
  g_assert_true (sw_subject_applies (fixture->subject, member ("width_cm")));
  g_assert_false (sw_subject_applies (fixture->subject, member ("minutes")));
  choose (fixture, fixture->ids[2], fixture->ids[4]);
  g_assert_true (sw_subject_applies (fixture->subject, member ("width_cm")));
  choose (fixture, fixture->ids[2], fixture->ids[3]);
  g_assert_false (sw_subject_applies (fixture->subject, member ("width_cm")));
  g_assert_false (sw_subject_applies (fixture->subject, member ("minutes")));
  g_assert_true (sw_subject_applies (fixture->subject, member ("name")));
}

/* Several get one value in one step to undo, and then are no longer several. */
static void
test_set_several (Fixture *fixture, gconstpointer data)
{
  SwValue wide = sw_value_number (9), value;
  gboolean several;

  sw_test_edit (fixture->document, sw_test_set_number (SW_RECORD_STEP, fixture->ids[2], "width_cm", 3), "Test");
  choose (fixture, fixture->ids[2], fixture->ids[4]);
  g_assert_true (sw_subject_get (fixture->subject, member ("width_cm"), &value, &several));
  g_assert_cmpfloat (value.as.number, ==, 3);
  g_assert_true (several);

  fixture->changes = 0;
  g_assert_true (sw_subject_set (fixture->subject, member ("width_cm"), &wide, FALSE, NULL));
  g_assert_cmpuint (fixture->changes, ==, 1);
  g_assert_true (sw_subject_get (fixture->subject, member ("width_cm"), &value, &several));
  g_assert_cmpfloat (value.as.number, ==, 9);
  g_assert_false (several);
  g_assert_cmpstr (sw_document_get_undo_name (fixture->document), ==, "Change “Width”");

  g_assert_true (sw_document_undo (fixture->document, NULL));
  g_assert_cmpfloat (step (fixture, fixture->ids[2])->width_cm, ==, 3);
  g_assert_cmpfloat (step (fixture, fixture->ids[4])->width_cm, ==, 6);
}

/* The value it has already is no edit. */
static void
test_set_same (Fixture *fixture, gconstpointer data)
{
  SwValue same = sw_value_number (6);

  choose (fixture, fixture->ids[2], fixture->ids[4]);
  g_assert_true (sw_subject_set (fixture->subject, member ("width_cm"), &same, FALSE, NULL));
  g_assert_null (sw_document_get_undo_name (fixture->document));
}

/* Refused for one is done for none. */
static void
test_refused (Fixture *fixture, gconstpointer data)
{
  SwValue zero = sw_value_number (0); /* a band may, a splotch may not */
  g_autoptr (GError) error = NULL;

  sw_test_edit (fixture->document, sw_test_set_number (SW_RECORD_STEP, fixture->ids[2], "length_cm", 5), "Test");
  choose (fixture, fixture->ids[2], fixture->ids[4]);
  g_assert_false (sw_subject_set (fixture->subject, member ("length_cm"), &zero, FALSE, &error));
  g_assert_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE);
  g_assert_cmpfloat (step (fixture, fixture->ids[2])->length_cm, ==, 5);
}

/* Each goes on from where it is; a held key is one step to undo. */
static void
test_nudge (Fixture *fixture, gconstpointer data)
{
  sw_test_edit (fixture->document, sw_test_set_number (SW_RECORD_STEP, fixture->ids[2], "x_cm", 3), "Test");
  choose (fixture, fixture->ids[2], fixture->ids[4]);
  for (int i = 0; i < 4; i++)
    g_assert_true (sw_subject_nudge (fixture->subject, member ("x_cm"), 1, NULL));
  g_assert_cmpfloat (step (fixture, fixture->ids[2])->x_cm, ==, 5);
  g_assert_cmpfloat (step (fixture, fixture->ids[4])->x_cm, ==, 12);
  g_assert_true (sw_document_undo (fixture->document, NULL));
  g_assert_cmpfloat (step (fixture, fixture->ids[2])->x_cm, ==, 3);
  g_assert_cmpfloat (step (fixture, fixture->ids[4])->x_cm, ==, 10);
}

/* A step that is gone is passed over; with the last one, the fields are about nothing. */
static void
test_gone (Fixture *fixture, gconstpointer data)
{
  choose (fixture, fixture->ids[2], fixture->ids[4]);
  sw_test_edit (fixture->document, sw_edit_remove (SW_RECORD_STEP, fixture->ids[2]), "Test");
  g_assert_cmpuint (sw_subject_count (fixture->subject), ==, 1);
  g_assert_cmpuint (sw_subject_first (fixture->subject), ==, fixture->ids[4]);
  sw_test_edit (fixture->document, sw_edit_remove (SW_RECORD_STEP, fixture->ids[4]), "Test");
  g_assert_cmpuint (sw_subject_count (fixture->subject), ==, 0);
  g_assert_false (sw_subject_applies (fixture->subject, member ("name")));
}

static void
test_tells_once (Fixture *fixture, gconstpointer data)
{
  choose (fixture, fixture->ids[2], 0);
  g_assert_cmpuint (fixture->changes, ==, 1);
  choose (fixture, fixture->ids[2], 0);
  g_assert_cmpuint (fixture->changes, ==, 1);
  g_object_set (fixture->subject, "inches", TRUE, NULL);
  g_object_set (fixture->subject, "inches", TRUE, NULL);
  g_assert_cmpuint (fixture->changes, ==, 2);
  g_assert_cmpint (sw_subject_get_system (fixture->subject), ==, SW_SYSTEM_US);
}

/* A speckle zone of dry grains is weighed, one of drops is measured. */
static void
test_dry (Fixture *fixture, gconstpointer data)
{
  g_autoptr (SwStep) specks = sw_step_new (0, SW_STEP_SPECKLE);
  SwValue dry = sw_value_flag (TRUE);

  specks->id = 77;
  specks->dye = fixture->ids[0];
  sw_test_edit (fixture->document, sw_edit_insert_step (-1, specks), "Test");
  choose (fixture, 77, 0);
  g_assert_true (sw_subject_applies (fixture->subject, member ("amount_ml")));
  g_assert_true (sw_subject_applies (fixture->subject, member ("depth_percent")));
  g_assert_false (sw_subject_applies (fixture->subject, member ("grams")));
  g_assert_true (sw_subject_set (fixture->subject, member ("dry"), &dry, FALSE, NULL));
  g_assert_false (sw_subject_applies (fixture->subject, member ("amount_ml")));
  g_assert_false (sw_subject_applies (fixture->subject, member ("depth_percent")));
  g_assert_true (sw_subject_applies (fixture->subject, member ("grams")));
}

static double
number_of (Fixture *fixture, const char *name)
{
  SwValue value;

  g_assert_true (sw_subject_get (fixture->subject, member (name), &value, NULL));
  return value.as.number;
}

/* A pour by depth shows what it takes of its stock; a volume set by hand ends the depth, and both come back as one. */
static void
test_depth (Fixture *fixture, gconstpointer data)
{
  SwValue as_shown, by_hand = sw_value_number (30);
  double before;

  choose (fixture, fixture->ids[2], 0);
  before = step (fixture, fixture->ids[2])->amount_ml;
  sw_test_edit (fixture->document, sw_test_set_number (SW_RECORD_YARN, 0, "mass_g", 100), "Test");
  sw_test_edit (fixture->document, sw_test_set_number (SW_RECORD_STEP, fixture->ids[2], "depth_percent", 0.45), "Test");
  g_assert_cmpfloat_with_epsilon (number_of (fixture, "amount_ml"), 45, 1e-9);

  fixture->changes = 0;
  sw_test_edit (fixture->document, sw_test_set_number (SW_RECORD_YARN, 0, "mass_g", 200), "Test");
  g_assert_cmpuint (fixture->changes, ==, 1);
  g_assert_cmpfloat_with_epsilon (number_of (fixture, "amount_ml"), 90, 1e-9);

  as_shown = sw_value_number (number_of (fixture, "amount_ml"));
  g_assert_true (sw_subject_set (fixture->subject, member ("amount_ml"), &as_shown, FALSE, NULL));
  g_assert_cmpfloat (step (fixture, fixture->ids[2])->depth_percent, ==, 0.45);

  g_assert_true (sw_subject_set (fixture->subject, member ("amount_ml"), &by_hand, FALSE, NULL));
  g_assert_cmpfloat (step (fixture, fixture->ids[2])->amount_ml, ==, 30);
  g_assert_cmpfloat (step (fixture, fixture->ids[2])->depth_percent, ==, 0);
  g_assert_cmpfloat (number_of (fixture, "amount_ml"), ==, 30);

  g_assert_true (sw_document_undo (fixture->document, NULL));
  g_assert_cmpfloat (step (fixture, fixture->ids[2])->depth_percent, ==, 0.45);
  g_assert_cmpfloat (step (fixture, fixture->ids[2])->amount_ml, ==, before);
}

/* Nudged, it goes on from what is shown, and several keys are one step to undo. */
static void
test_depth_nudged (Fixture *fixture, gconstpointer data)
{
  choose (fixture, fixture->ids[2], 0);
  sw_test_edit (fixture->document, sw_test_set_number (SW_RECORD_YARN, 0, "mass_g", 100), "Test");
  sw_test_edit (fixture->document, sw_test_set_number (SW_RECORD_STEP, fixture->ids[2], "depth_percent", 0.45), "Test");
  for (int i = 0; i < 3; i++)
    g_assert_true (sw_subject_nudge (fixture->subject, member ("amount_ml"), 1, NULL));
  g_assert_cmpfloat (step (fixture, fixture->ids[2])->amount_ml, >, 45);
  g_assert_cmpfloat (step (fixture, fixture->ids[2])->depth_percent, ==, 0);
  g_assert_true (sw_document_undo (fixture->document, NULL));
  g_assert_cmpfloat (step (fixture, fixture->ids[2])->depth_percent, ==, 0.45);
}

/* The class of a dye brings its usual half-time, and goes with it when undone. */
static void
test_dye_class (Fixture *fixture, gconstpointer data)
{
  g_autoptr (SwSubject) subject = sw_subject_new (fixture->document, SW_RECORD_DYE);
  const SwMember *dye_class = sw_record_find_member (SW_RECORD_DYE, "dye_class");
  SwValue levelling = sw_value_choice (SW_DYE_CLASS_LEVELLING);
  const SwDye *dye = sw_sketch_find_dye (sw_document_get_sketch (fixture->document), fixture->ids[1]);

  sw_subject_set_ids (subject, &fixture->ids[1], 1);
  g_assert_cmpfloat (dye->half_time_min, ==, 3);
  g_assert_true (sw_subject_set (subject, dye_class, &levelling, FALSE, NULL));
  g_assert_cmpfloat (dye->half_time_min, ==, sw_dye_class_facts (SW_DYE_CLASS_LEVELLING)->half_time_min);
  g_assert_cmpfloat (dye->half_time_min, !=, 3);
  g_assert_true (sw_document_undo (fixture->document, NULL));
  g_assert_cmpfloat (dye->half_time_min, ==, 3);
  g_assert_cmpint (dye->dye_class, ==, SW_DYE_CLASS_UNKNOWN);
}

/* Whoever has half-typed text hears of it before the fields are about something else. */
static void
note_first_cb (SwSubject *subject, guint *first)
{
  *first = sw_subject_first (subject);
}

static void
test_leaving (Fixture *fixture, gconstpointer data)
{
  guint first = 0;

  choose (fixture, fixture->ids[2], 0);
  g_signal_connect (fixture->subject, "leaving", G_CALLBACK (note_first_cb), &first);
  choose (fixture, fixture->ids[4], 0);
  g_assert_cmpuint (first, ==, fixture->ids[2]);
}

#define ADD(name, function) g_test_add ("/app/subject/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("nothing", test_nothing);
  ADD ("applies", test_applies);
  ADD ("set-several", test_set_several);
  ADD ("set-same", test_set_same);
  ADD ("refused", test_refused);
  ADD ("nudge", test_nudge);
  ADD ("gone", test_gone);
  ADD ("tells-once", test_tells_once);
  ADD ("dry", test_dry);
  ADD ("depth", test_depth);
  ADD ("depth-nudged", test_depth_nudged);
  ADD ("dye-class", test_dye_class);
  ADD ("leaving", test_leaving);
  return g_test_run ();
}
