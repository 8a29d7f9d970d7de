/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-selection.h"

/* What the dyer has in hand follows the document and tells once. */

typedef struct
{
  SwDocument *document;
  SwSelection *selection;
  guint pours[3];
  guint changes, notifies;
} Fixture;

static void
count_cb (guint *n)
{
  (*n)++;
}

static void
edit (SwDocument *document, SwEdit *change)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (sw_document_edit (document, change, "Test", &error));
  g_assert_no_error (error);
}

/* Two pots and three bands. */
static void
set_up (Fixture *fixture, gconstpointer data)
{
  SwDocument *document = sw_document_new ();

  for (guint i = 1; i <= 2; i++)
    {
      g_autoptr (SwDye) dye = sw_dye_new (i);

      edit (document, sw_edit_insert_dye (-1, dye));
    }
  for (guint i = 0; i < 3; i++)
    {
      g_autoptr (SwStep) step = sw_step_new (10 + i, SW_STEP_BAND);

      step->dye = 1;
      fixture->pours[i] = step->id;
      edit (document, sw_edit_insert_step (-1, step));
    }
  fixture->document = document;
  fixture->selection = sw_selection_new (document);
  g_signal_connect_swapped (fixture->selection, "changed", G_CALLBACK (count_cb), &fixture->changes);
  g_signal_connect_swapped (fixture->selection, "notify", G_CALLBACK (count_cb), &fixture->notifies);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_assert_finalize_object (fixture->selection);
  g_assert_finalize_object (fixture->document);
}

static void
test_set_and_toggle (Fixture *fixture, gconstpointer data)
{
  SwSelection *selection = fixture->selection;
  const guint wanted[] = { 11, 10, 11, 99 };
  const guint *steps;
  gsize n;

  sw_selection_set_steps (selection, wanted, G_N_ELEMENTS (wanted));
  steps = sw_selection_get_steps (selection, &n);
  g_assert_cmpuint (n, ==, 2);
  g_assert_cmpuint (steps[0], ==, 11);
  g_assert_cmpuint (steps[1], ==, 10);
  g_assert_cmpuint (sw_selection_get_lead (selection), ==, 10);
  g_assert_cmpuint (fixture->changes, ==, 1);
  g_assert_cmpuint (fixture->notifies, ==, 1);

  sw_selection_set_steps (selection, wanted, G_N_ELEMENTS (wanted));
  g_assert_cmpuint (fixture->changes, ==, 1);

  sw_selection_toggle (selection, 12);
  g_assert_true (sw_selection_contains (selection, 12));
  g_assert_cmpuint (sw_selection_get_lead (selection), ==, 12);
  sw_selection_toggle (selection, 12);
  g_assert_false (sw_selection_contains (selection, 12));
  g_assert_cmpuint (sw_selection_get_lead (selection), ==, 10);
  sw_selection_toggle (selection, 99);
  g_assert_cmpuint (fixture->changes, ==, 3);

  sw_selection_set_step (selection, 0);
  sw_selection_get_steps (selection, &n);
  g_assert_cmpuint (n, ==, 0);
  g_assert_cmpuint (sw_selection_get_lead (selection), ==, 0);
}

static void
test_gone_is_not_selected (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  sw_selection_set_steps (fixture->selection, fixture->pours, 3);
  edit (fixture->document, sw_edit_remove (SW_RECORD_STEP, 12));
  g_assert_cmpuint (sw_selection_get_lead (fixture->selection), ==, 11);
  g_assert_false (sw_selection_contains (fixture->selection, 12));

  /* Brought back, it is not selected by itself. */
  g_assert_true (sw_document_undo (fixture->document, &error));
  g_assert_no_error (error);
  g_assert_false (sw_selection_contains (fixture->selection, 12));
  g_assert_cmpuint (fixture->changes, ==, 2);
}

static void
test_pot_gives_way (Fixture *fixture, gconstpointer data)
{
  SwSelection *selection = fixture->selection;

  g_assert_cmpuint (sw_selection_get_dye (selection), ==, 1);
  sw_selection_set_dye (selection, 2);
  g_assert_cmpuint (fixture->notifies, ==, 1);
  edit (fixture->document, sw_edit_remove (SW_RECORD_DYE, 2));
  g_assert_cmpuint (sw_selection_get_dye (selection), ==, 1);
  g_assert_cmpuint (fixture->notifies, ==, 2);

  sw_document_set_template (fixture->document, sw_sketch_new ());
  g_assert_cmpuint (sw_selection_get_dye (selection), ==, 0);
}

/* Another drawing may have steps of the same ids: they are other steps. */
static void
test_another_drawing (Fixture *fixture, gconstpointer data)
{
  SwSketch *copy = sw_sketch_copy (sw_document_get_sketch (fixture->document));

  sw_selection_set_steps (fixture->selection, fixture->pours, 3);
  sw_selection_set_second_face (fixture->selection, TRUE);
  sw_document_set_template (fixture->document, copy);
  g_assert_cmpuint (sw_selection_get_lead (fixture->selection), ==, 0);
  g_assert_false (sw_selection_get_second_face (fixture->selection));
}

/* Every property that can be set notifies once for a new value and not for the same again. */
static void
test_properties (Fixture *fixture, gconstpointer data)
{
  GObject *object = G_OBJECT (fixture->selection);

  for (int repeat = 0; repeat < 2; repeat++)
    g_object_set (object, "tool", SW_TOOL_SPECKLE, "dye", 2, "second-face", TRUE, "snap", FALSE, NULL);
  g_assert_cmpuint (fixture->notifies, ==, 4);
  g_assert_cmpint (sw_selection_get_tool (fixture->selection), ==, SW_TOOL_SPECKLE);
  g_assert_cmpint (sw_tool_kind (sw_selection_get_tool (fixture->selection)), ==, SW_STEP_SPECKLE);
  g_assert_true (sw_selection_get_second_face (fixture->selection));
  g_assert_false (sw_selection_get_snap (fixture->selection));
}

#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/pan-selection/set-and-toggle", test_set_and_toggle);
  ADD ("/pan-selection/gone-is-not-selected", test_gone_is_not_selected);
  ADD ("/pan-selection/pot-gives-way", test_pot_gives_way);
  ADD ("/pan-selection/another-drawing", test_another_drawing);
  ADD ("/pan-selection/properties", test_properties);
  return g_test_run ();
}
