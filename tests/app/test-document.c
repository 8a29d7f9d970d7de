/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sw-app-test.h"

/* What listeners were told. */
typedef struct
{
  guint n_changed, what, id;
  guint n_notified; /* of the property asked for */
  guint n_items, position, removed, added;
} Heard;

static void
changed_cb (SwDocument *document, guint what, guint id, Heard *heard)
{
  heard->n_changed++;
  heard->what = what;
  heard->id = id;
}

static void
notified_cb (GObject *object, GParamSpec *pspec, Heard *heard)
{
  heard->n_notified++;
}

static void
items_cb (GListModel *model, guint position, guint removed, guint added, Heard *heard)
{
  heard->n_items++;
  heard->position = position;
  heard->removed = removed;
  heard->added = added;
}

typedef struct
{
  SwDocument *document;
  guint ids[5]; /* dye, dye, band, rest, splotch */
  Heard heard;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  f->document = sw_test_document (f->ids);
  f->heard = (Heard){ 0 };
  g_signal_connect (f->document, "changed", G_CALLBACK (changed_cb), &f->heard);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  SwEntryList *steps = g_object_ref (sw_document_get_steps (f->document));

  g_assert_finalize_object (f->document);
  g_assert_finalize_object (steps);
}

static SwEntry *
entry_at (SwEntryList *list, guint position)
{
  SwEntry *entry = g_list_model_get_item (G_LIST_MODEL (list), position);

  g_assert_nonnull (entry);
  g_object_unref (entry); /* the list keeps it */
  return entry;
}

/* Each record's edit is told with its own bit, once, and with the id if it has one. */
static void
test_changed (Fixture *f, gconstpointer data)
{
  const struct
  {
    SwRecord record;
    guint id;
    const char *member;
    double number;
  } rows[] = {
    { SW_RECORD_YARN, 0, "mass_g", 50 },
    { SW_RECORD_REEL, 0, "circumference_cm", 120 },
    { SW_RECORD_LAY, 0, "width_cm", 12 },
    { SW_RECORD_BATH, 0, "water_ml", 900 },
    { SW_RECORD_CLOTH, 0, "stitches_per_10cm", 22 },
    { SW_RECORD_DYE, f->ids[1], "half_time_min", 5 },
    { SW_RECORD_STEP, f->ids[2], "width_cm", 11 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      sw_test_edit (f->document, sw_test_set_number (rows[i].record, rows[i].id, rows[i].member, rows[i].number), "Edit");
      g_assert_cmpuint (f->heard.n_changed, ==, i + 1);
      g_assert_cmphex (f->heard.what, ==, SW_CHANGED (rows[i].record));
      g_assert_cmpuint (f->heard.id, ==, rows[i].id);
    }
  sw_test_edit (f->document, sw_test_set_seed (7), "Edit");
  g_assert_cmphex (f->heard.what, ==, SW_CHANGED (SW_RECORD_SKETCH));
}

/* An edit that sets what is there already is told to nobody. */
static void
test_unchanged (Fixture *f, gconstpointer data)
{
  double width = sw_sketch_find_step (sw_document_get_sketch (f->document), f->ids[2])->width_cm;

  sw_test_edit (f->document, sw_test_set_number (SW_RECORD_STEP, f->ids[2], "width_cm", width), "Edit");
  g_assert_cmpuint (f->heard.n_changed, ==, 0);
}

/* A refused edit leaves everything as it was, and says why. */
static void
test_refused (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (sw_document_edit (f->document, sw_test_set_number (SW_RECORD_STEP, f->ids[2], "width_cm", -3), "Edit", &error));
  g_assert_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE);
  g_assert_cmpuint (f->heard.n_changed, ==, 0);
  g_assert_false (sw_document_get_modified (f->document));
  g_assert_null (sw_document_get_undo_name (f->document));
}

static void
test_undo (Fixture *f, gconstpointer data)
{
  GError *error = NULL;
  Heard modified = { 0 };
  g_autoptr (SwSketch) before = sw_sketch_copy (sw_document_get_sketch (f->document));
  g_autoptr (SwSketch) after = NULL;

  g_signal_connect (f->document, "notify::modified", G_CALLBACK (notified_cb), &modified);
  sw_test_edit (f->document, sw_test_set_number (SW_RECORD_STEP, f->ids[2], "width_cm", 11), "Widen Band");
  sw_test_edit (f->document, sw_test_set_number (SW_RECORD_STEP, f->ids[4], "x_cm", 30), "Move Splotch");
  after = sw_sketch_copy (sw_document_get_sketch (f->document));
  g_assert_cmpstr (sw_document_get_undo_name (f->document), ==, "Move Splotch");
  g_assert_cmpuint (modified.n_notified, ==, 1);

  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_cmpuint (f->heard.id, ==, f->ids[4]);
  g_assert_cmpstr (sw_document_get_undo_name (f->document), ==, "Widen Band");
  g_assert_cmpstr (sw_document_get_redo_name (f->document), ==, "Move Splotch");
  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_no_error (error);
  g_assert_true (sw_sketch_equal (before, sw_document_get_sketch (f->document)));
  g_assert_false (sw_document_get_modified (f->document));
  g_assert_cmpuint (modified.n_notified, ==, 2);

  g_assert_true (sw_document_redo (f->document, &error));
  g_assert_true (sw_document_redo (f->document, &error));
  g_assert_no_error (error);
  g_assert_true (sw_sketch_equal (after, sw_document_get_sketch (f->document)));
}

/* A drag: live for listeners, one step for undo, nothing at all if cancelled. */
static void
test_group (Fixture *f, gconstpointer data)
{
  GError *error = NULL;
  g_autoptr (SwSketch) before = sw_sketch_copy (sw_document_get_sketch (f->document));

  sw_document_begin_group (f->document, "Move Band");
  for (int i = 1; i <= 5; i++)
    sw_test_edit (f->document, sw_test_set_number (SW_RECORD_STEP, f->ids[2], "x_cm", 10 + i), "Move Band");
  g_assert_cmpuint (f->heard.n_changed, ==, 5);
  g_assert_null (sw_document_get_undo_name (f->document));
  sw_document_end_group (f->document);
  g_assert_cmpstr (sw_document_get_undo_name (f->document), ==, "Move Band");

  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_cmpuint (f->heard.n_changed, ==, 6);
  g_assert_true (sw_sketch_equal (before, sw_document_get_sketch (f->document)));
  g_assert_null (sw_document_get_undo_name (f->document));

  sw_document_begin_group (f->document, "Move Band");
  sw_test_edit (f->document, sw_test_set_number (SW_RECORD_STEP, f->ids[2], "x_cm", 40), "Move Band");
  g_assert_true (sw_document_cancel_group (f->document, &error));
  g_assert_no_error (error);
  g_assert_true (sw_sketch_equal (before, sw_document_get_sketch (f->document)));
  g_assert_null (sw_document_get_undo_name (f->document));
}

static void
series (SwDocument *document, double mass)
{
  GError *error = NULL;

  g_assert_true (sw_document_edit_series (document, sw_test_set_number (SW_RECORD_YARN, 0, "mass_g", mass), "Change Mass", "mass_g", &error));
  g_assert_no_error (error);
}

/* A turned spin button is one step to undo, also while it is still being turned. */
static void
test_series (Fixture *f, gconstpointer data)
{
  GError *error = NULL;

  series (f->document, 60);
  series (f->document, 61);
  g_assert_cmpstr (sw_document_get_undo_name (f->document), ==, "Change Mass");
  series (f->document, 62);
  sw_test_edit (f->document, sw_test_set_number (SW_RECORD_YARN, 0, "metres_per_100_g", 300), "Change Put-Up");
  series (f->document, 70);
  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_cmpfloat (sw_document_get_sketch (f->document)->yarn.mass_g, ==, 62);
  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (sw_document_get_sketch (f->document)->yarn.mass_g, ==, 100);
  g_assert_null (sw_document_get_undo_name (f->document));
}

/* A pause ends a series. */
static void
test_series_pause (Fixture *f, gconstpointer data)
{
  GError *error = NULL;

  series (f->document, 60);
  sw_test_idle (1300);
  series (f->document, 61);
  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (sw_document_get_sketch (f->document)->yarn.mass_g, ==, 60);
}

/* The list follows with as little coming and going as it takes; an entry is the same object wherever it moves. */
static void
test_lists (Fixture *f, gconstpointer data)
{
  SwEntryList *steps = sw_document_get_steps (f->document);
  g_autoptr (SwEntry) splotch = g_object_ref (entry_at (steps, 2));
  g_autoptr (SwStep) flip = sw_step_new (0, SW_STEP_FLIP);
  GError *error = NULL;
  Heard items = { 0 };
  guint position;

  g_signal_connect (steps, "items-changed", G_CALLBACK (items_cb), &items);
  sw_test_edit (f->document, sw_edit_insert_step (1, flip), "Add Flip");
  g_assert_cmpuint (items.n_items, ==, 1);
  g_assert_cmpuint (items.position, ==, 1);
  g_assert_cmpuint (items.removed, ==, 0);
  g_assert_cmpuint (items.added, ==, 1);
  g_assert_cmphex (f->heard.what, ==, SW_CHANGED (SW_RECORD_STEP) | SW_CHANGED_ORDER);
  g_assert_cmpuint (sw_entry_get_position (splotch), ==, 3);

  sw_test_edit (f->document, sw_edit_move (SW_RECORD_STEP, f->ids[4], 0), "Move Step");
  g_assert_cmpuint (items.n_items, ==, 2);
  g_assert_true (entry_at (steps, 0) == splotch);
  g_assert_cmpuint (sw_entry_get_position (splotch), ==, 0);
  g_assert_true (sw_entry_list_find (steps, f->ids[2], &position));
  g_assert_cmpuint (position, ==, 1);

  sw_test_edit (f->document, sw_edit_remove (SW_RECORD_STEP, f->ids[4]), "Remove Step");
  g_assert_cmpuint (items.position, ==, 0);
  g_assert_cmpuint (items.removed, ==, 1);
  g_assert_cmpuint (items.added, ==, 0);
  g_assert_null (sw_entry_get_step (splotch));
  g_assert_false (sw_entry_list_find (steps, f->ids[4], NULL));

  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (steps)), ==, 4);
  g_assert_cmpuint (sw_entry_get_id (entry_at (steps, 0)), ==, f->ids[4]);

  /* No edit of a record makes the list flicker. */
  items.n_items = 0;
  sw_test_edit (f->document, sw_test_set_number (SW_RECORD_STEP, f->ids[2], "x_cm", 33), "Move Band");
  g_assert_cmpuint (items.n_items, ==, 0);
}

/* An entry notifies when its own record changes, a step also when its dye does, and nobody else. */
static void
test_entries (Fixture *f, gconstpointer data)
{
  SwEntryList *steps = sw_document_get_steps (f->document);
  SwEntryList *dyes = sw_document_get_dyes (f->document);
  SwEntry *entries[] = { entry_at (dyes, 0), entry_at (dyes, 1), entry_at (steps, 0), entry_at (steps, 1), entry_at (steps, 2) };
  Heard heard[G_N_ELEMENTS (entries)] = { 0 };
  const guint dye_edit[] = { 0, 1, 0, 0, 1 }; /* dye 1 is poured by the splotch */
  const guint step_edit[] = { 0, 0, 1, 0, 0 };

  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    g_signal_connect (entries[i], "notify::revision", G_CALLBACK (notified_cb), &heard[i]);

  sw_test_edit (f->document, sw_test_set_text (SW_RECORD_DYE, f->ids[1], "name", "Rust"), "Rename Dye");
  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    g_assert_cmpuint (heard[i].n_notified, ==, dye_edit[i]);
  g_assert_cmpstr (sw_entry_get_dye (entries[1])->name, ==, "Rust");
  g_assert_null (sw_entry_get_step (entries[1]));

  memset (heard, 0, sizeof heard);
  sw_test_edit (f->document, sw_test_set_number (SW_RECORD_STEP, f->ids[2], "x_cm", 33), "Move Band");
  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    g_assert_cmpuint (heard[i].n_notified, ==, step_edit[i]);
}

/* An entry may outlive its document; it then has nothing to say. */
static void
test_orphan (void)
{
  guint ids[5];
  SwDocument *document = sw_test_document (ids);
  g_autoptr (SwEntry) entry = g_object_ref (entry_at (sw_document_get_steps (document), 0));

  g_assert_nonnull (sw_entry_get_step (entry));
  g_assert_finalize_object (document);
  g_assert_null (sw_entry_get_step (entry));
  g_assert_null (sw_entry_get_document (entry));
}

static void
test_title (Fixture *f, gconstpointer data)
{
  Heard title = { 0 };

  g_signal_connect (f->document, "notify::title", G_CALLBACK (notified_cb), &title);
  g_assert_cmpstr (sw_document_get_title (f->document), ==, "Untitled colourway");
  sw_test_edit (f->document, sw_test_set_text (SW_RECORD_SKETCH, 0, "title", "Tide Line"), "Rename");
  g_assert_cmpstr (sw_document_get_title (f->document), ==, "Tide Line");
  g_assert_cmpuint (title.n_notified, ==, 1);
  sw_test_edit (f->document, sw_test_set_seed (3), "Edit");
  g_assert_cmpuint (title.n_notified, ==, 1);
}

/* Another drawing: one change, told in full, with a history of its own; the drag that was going on ends in nothing. */
static void
test_replace (Fixture *f, gconstpointer data)
{
  SwSketch *sketch = sw_sketch_new ();

  sketch->yarn.mass_g = 42;
  sw_document_begin_group (f->document, "Move Band");
  sw_test_edit (f->document, sw_test_set_number (SW_RECORD_STEP, f->ids[2], "x_cm", 40), "Move Band");
  sw_document_set_template (f->document, sketch);
  g_assert_cmphex (f->heard.what, ==, SW_CHANGED (SW_RECORD_YARN) | SW_CHANGED (SW_RECORD_DYE) | SW_CHANGED (SW_RECORD_STEP) | SW_CHANGED_ORDER);
  sw_document_end_group (f->document);
  g_assert_null (sw_document_get_undo_name (f->document));
  g_assert_false (sw_document_get_modified (f->document));
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (sw_document_get_steps (f->document))), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/app/document/changed", test_changed);
  ADD ("/app/document/unchanged", test_unchanged);
  ADD ("/app/document/refused", test_refused);
  ADD ("/app/document/undo", test_undo);
  ADD ("/app/document/group", test_group);
  ADD ("/app/document/series", test_series);
  ADD ("/app/document/series-pause", test_series_pause);
  ADD ("/app/document/lists", test_lists);
  ADD ("/app/document/entries", test_entries);
  g_test_add_func ("/app/document/orphan", test_orphan);
  ADD ("/app/document/title", test_title);
  ADD ("/app/document/replace", test_replace);
  return g_test_run ();
}
