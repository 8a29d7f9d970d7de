/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sw-app-test.h"

#include <glib/gstdio.h>

static gboolean
nothing_cb (gpointer user_data)
{
  return G_SOURCE_REMOVE;
}

void
sw_test_turn (void)
{
  guint id = g_timeout_add (5, nothing_cb, NULL);
  GSource *source;

  g_main_context_iteration (NULL, TRUE);
  source = g_main_context_find_source_by_id (NULL, id);
  if (source != NULL)
    g_source_destroy (source);
}

void
sw_test_idle (guint ms)
{
  gint64 end = g_get_monotonic_time () + (gint64) ms * 1000;

  while (g_get_monotonic_time () < end)
    sw_test_turn ();
}

char *
sw_test_folder (void)
{
  GError *error = NULL;
  char *folder = g_dir_make_tmp ("strandwise-test-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

void
sw_test_remove (const char *folder)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (g_file_test (path, G_FILE_TEST_IS_DIR))
        sw_test_remove (path);
      else
        g_unlink (path);
    }
  g_clear_pointer (&dir, g_dir_close);
  g_rmdir (folder);
}

guint
sw_test_count_files (const char *folder, const char *ending)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n = 0;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    n += g_str_has_suffix (name, ending) ? 1 : 0;
  g_clear_pointer (&dir, g_dir_close);
  return n;
}

void
sw_test_finalize (gpointer object)
{
  gpointer alive = object;

  g_object_add_weak_pointer (object, &alive);
  g_object_unref (object);
  sw_test_wait (alive == NULL);
}

SwDocument *
sw_test_document (guint ids[5])
{
  SwDocument *document = sw_document_new ();
  SwSketch *sketch = sw_sketch_new ();
  const SwStepKind kinds[] = { SW_STEP_BAND, SW_STEP_REST, SW_STEP_SPLOTCH };

  for (guint i = 0; i < 2; i++)
    {
      ids[i] = sketch->next_id++;
      g_ptr_array_add (sketch->dyes, sw_dye_new (ids[i]));
    }
  for (guint i = 0; i < 3; i++)
    {
      SwStep *step;

      ids[2 + i] = sketch->next_id++;
      step = sw_step_new (ids[2 + i], kinds[i]);
      if (sw_step_is_pour (step))
        step->dye = ids[i == 0 ? 0 : 1];
      g_ptr_array_add (sketch->steps, step);
    }
  sw_document_set_template (document, sketch);
  return document;
}

SwEdit *
sw_test_set_number (SwRecord record, guint id, const char *member, double number)
{
  SwValue value = sw_value_number (number);

  return sw_edit_set (record, id, member, &value);
}

SwEdit *
sw_test_set_text (SwRecord record, guint id, const char *member, const char *text)
{
  SwValue value = sw_value_text (text);
  SwEdit *edit = sw_edit_set (record, id, member, &value);

  sw_value_clear (&value);
  return edit;
}

SwEdit *
sw_test_set_seed (gint64 seed)
{
  SwValue value = sw_value_whole (seed);

  return sw_edit_set (SW_RECORD_SKETCH, 0, "seed", &value);
}

void
sw_test_edit (SwDocument *document, SwEdit *edit, const char *name)
{
  GError *error = NULL;
  gboolean done = sw_document_edit (document, edit, name, &error);

  g_assert_no_error (error);
  g_assert_true (done);
}
