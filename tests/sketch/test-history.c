/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-history.h"

#include <string.h>

/*
 * History knows no document, so here it serves a plain string. An edit takes
 * letters off the end and puts others on; "!" cannot be put on.
 */
typedef struct
{
  gsize cut;
  char *add;
} Splice;

static int splices_alive;

static Splice *
splice_new (gsize cut, const char *add)
{
  Splice *splice = g_new (Splice, 1);

  splice->cut = cut;
  splice->add = g_strdup (add);
  splices_alive++;
  return splice;
}

static void
splice_free (gpointer edit)
{
  Splice *splice = edit;

  splices_alive--;
  g_free (splice->add);
  g_free (splice);
}

static gpointer
splice_apply (gpointer edit, gpointer document, GError **error)
{
  const Splice *splice = edit;
  GString *text = document;
  Splice *inverse;

  if (strchr (splice->add, '!') != NULL || splice->cut > text->len)
    {
      g_set_error_literal (error, G_FILE_ERROR, G_FILE_ERROR_INVAL, "refused");
      return NULL;
    }

  inverse = splice_new (strlen (splice->add), text->str + text->len - splice->cut);
  g_string_truncate (text, text->len - splice->cut);
  g_string_append (text, splice->add);
  return inverse;
}

static const SwHistoryFuncs splice_funcs = { splice_apply, splice_free };

/* What to do, and what must then be. A letter or more: added at the end, under its own name. */
typedef struct
{
  const char *command;
  const char *text;
  const char *undo, *redo; /* names, NULL for none */
  gboolean modified;
} Row;

#define END                       \
  {                               \
    NULL, NULL, NULL, NULL, FALSE \
  }

static const Row straight[] = {
  { "start", "", NULL, NULL, FALSE },
  { "undo", "", NULL, NULL, FALSE },
  { "redo", "", NULL, NULL, FALSE },
  { "a", "a", "a", NULL, TRUE },
  { "bc", "abc", "bc", NULL, TRUE },
  { "undo", "a", "a", "bc", TRUE },
  { "undo", "", NULL, "a", FALSE },
  { "undo", "", NULL, "a", FALSE },
  { "redo", "a", "a", "bc", TRUE },
  { "redo", "abc", "bc", NULL, TRUE },
  { "redo", "abc", "bc", NULL, TRUE },
  { "undo", "a", "a", "bc", TRUE },
  { "d", "ad", "d", NULL, TRUE },
  { "redo", "ad", "d", NULL, TRUE },
  { "undo", "a", "a", "d", TRUE },
  END
};

static const Row refused[] = {
  { "!", "", NULL, NULL, FALSE },
  { "a", "a", "a", NULL, TRUE },
  { "b", "ab", "b", NULL, TRUE },
  { "undo", "a", "a", "b", TRUE },
  { "!", "a", "a", "b", TRUE }, /* nothing was done, so it can still be redone */
  { "redo", "ab", "b", NULL, TRUE },
  END
};

static const Row saved[] = {
  { "a", "a", "a", NULL, TRUE },
  { "save", "a", "a", NULL, FALSE },
  { "b", "ab", "b", NULL, TRUE },
  { "undo", "a", "a", "b", FALSE },
  { "undo", "", NULL, "a", TRUE },
  { "redo", "a", "a", "b", FALSE },
  { "redo", "ab", "b", NULL, TRUE },
  { "save", "ab", "b", NULL, FALSE },
  { "undo", "a", "a", "b", TRUE },
  { "c", "ac", "c", NULL, TRUE }, /* the saved step is gone */
  { "undo", "a", "a", "c", TRUE },
  { "undo", "", NULL, "a", TRUE },
  { "save", "", NULL, "a", FALSE },
  { "redo", "a", "a", "c", TRUE },
  END
};

/* The same letters twice are still another step. */
static const Row saved_overwritten[] = {
  { "a", "a", "a", NULL, TRUE },
  { "save", "a", "a", NULL, FALSE },
  { "undo", "", NULL, "a", TRUE },
  { "a", "a", "a", NULL, TRUE },
  { "undo", "", NULL, "a", TRUE },
  END
};

static const Row groups[] = {
  { "begin drag", "", NULL, NULL, FALSE },
  { "a", "a", NULL, NULL, TRUE },
  { "b", "ab", NULL, NULL, TRUE },
  { "undo", "ab", NULL, NULL, TRUE }, /* not while it is open */
  { "!", "ab", NULL, NULL, TRUE },    /* what was done stays */
  { "c", "abc", NULL, NULL, TRUE },
  { "end", "abc", "drag", NULL, TRUE },
  { "d", "abcd", "d", NULL, TRUE },
  { "undo", "abc", "drag", "d", TRUE },
  { "undo", "", NULL, "drag", FALSE },
  { "redo", "abc", "drag", "d", TRUE },
  { "redo", "abcd", "d", NULL, TRUE },
  END
};

static const Row empty_groups[] = {
  { "a", "a", "a", NULL, TRUE },
  { "save", "a", "a", NULL, FALSE },
  { "b", "ab", "b", NULL, TRUE },
  { "undo", "a", "a", "b", FALSE },
  { "begin click", "a", NULL, NULL, FALSE },
  { "begin click", "a", NULL, NULL, FALSE },
  { "end", "a", NULL, NULL, FALSE },
  { "end", "a", "a", "b", FALSE },
  { "redo", "ab", "b", NULL, TRUE },
  END
};

static const Row nested[] = {
  { "begin outer", "", NULL, NULL, FALSE },
  { "a", "a", NULL, NULL, TRUE },
  { "begin inner", "a", NULL, NULL, TRUE },
  { "b", "ab", NULL, NULL, TRUE },
  { "end", "ab", NULL, NULL, TRUE },
  { "begin inner", "ab", NULL, NULL, TRUE },
  { "c", "abc", NULL, NULL, TRUE },
  { "d", "abcd", NULL, NULL, TRUE },
  { "cancel", "ab", NULL, NULL, TRUE },
  { "e", "abe", NULL, NULL, TRUE },
  { "end", "abe", "outer", NULL, TRUE },
  { "undo", "", NULL, "outer", FALSE },
  { "redo", "abe", "outer", NULL, TRUE },
  END
};

static const Row cancelled[] = {
  { "a", "a", "a", NULL, TRUE },
  { "b", "ab", "b", NULL, TRUE },
  { "save", "ab", "b", NULL, FALSE },
  { "undo", "a", "a", "b", TRUE },
  { "begin drag", "a", NULL, NULL, TRUE },
  { "x", "ax", NULL, NULL, TRUE },
  { "y", "axy", NULL, NULL, TRUE },
  { "cancel", "a", "a", "b", TRUE }, /* as if it had not been: redo is still there */
  { "redo", "ab", "b", NULL, FALSE },
  END
};

static const Row saved_in_group[] = {
  { "begin drag", "", NULL, NULL, FALSE },
  { "save", "", NULL, NULL, FALSE },
  { "a", "a", NULL, NULL, TRUE },
  { "save", "a", NULL, NULL, TRUE }, /* between two steps: no undo comes back here */
  { "b", "ab", NULL, NULL, TRUE },
  { "end", "ab", "drag", NULL, TRUE },
  { "undo", "", NULL, "drag", TRUE },
  END
};

static const Row named_by_first[] = {
  { "begin", "", NULL, NULL, FALSE },
  { "a", "a", NULL, NULL, TRUE },
  { "b", "ab", NULL, NULL, TRUE },
  { "end", "ab", "a", NULL, TRUE },
  END
};

static const struct
{
  const char *path;
  const Row *rows;
} tables[] = {
  { "/sketch/history/straight", straight },
  { "/sketch/history/refused", refused },
  { "/sketch/history/saved", saved },
  { "/sketch/history/saved-overwritten", saved_overwritten },
  { "/sketch/history/groups", groups },
  { "/sketch/history/empty-groups", empty_groups },
  { "/sketch/history/nested", nested },
  { "/sketch/history/cancelled", cancelled },
  { "/sketch/history/saved-in-group", saved_in_group },
  { "/sketch/history/named-by-first", named_by_first },
};

static void
do_add (SwHistory *history, const char *letters)
{
  g_autoptr (GError) error = NULL;
  gboolean done = sw_history_do (history, splice_new (0, letters), letters, &error);

  g_assert_cmpint (done, ==, strchr (letters, '!') == NULL);
  g_assert_cmpint (done, ==, error == NULL);
}

static void
run_command (SwHistory *history, const char *command)
{
  g_autoptr (GError) error = NULL;
  gboolean done = TRUE;

  if (g_str_equal (command, "undo"))
    done = sw_history_undo (history, &error);
  else if (g_str_equal (command, "redo"))
    done = sw_history_redo (history, &error);
  else if (g_str_equal (command, "save"))
    sw_history_mark_saved (history);
  else if (g_str_equal (command, "begin"))
    sw_history_begin_group (history, NULL);
  else if (g_str_has_prefix (command, "begin "))
    sw_history_begin_group (history, command + strlen ("begin "));
  else if (g_str_equal (command, "end"))
    sw_history_end_group (history);
  else if (g_str_equal (command, "cancel"))
    done = sw_history_cancel_group (history, &error);
  else if (!g_str_equal (command, "start"))
    do_add (history, command);

  g_assert_no_error (error);
  g_assert_true (done);
}

static void
test_table (gconstpointer data)
{
  g_autoptr (GString) text = g_string_new (NULL);
  SwHistory *history = sw_history_new (&splice_funcs, text);

  g_test_summary ("Commands on a plain string: its text, what can be undone and redone, and whether it is modified");
  for (const Row *row = data; row->command != NULL; row++)
    {
      g_test_message ("%s", row->command);
      run_command (history, row->command);
      g_assert_cmpstr (text->str, ==, row->text);
      g_assert_cmpstr (sw_history_get_undo_name (history), ==, row->undo);
      g_assert_cmpstr (sw_history_get_redo_name (history), ==, row->redo);
      g_assert_cmpint (sw_history_get_modified (history), ==, row->modified);
    }
  sw_history_free (history);
  g_assert_cmpint (splices_alive, ==, 0);
}

static void
test_free_open_group (void)
{
  g_autoptr (GString) text = g_string_new (NULL);
  SwHistory *history = sw_history_new (&splice_funcs, text);

  g_test_summary ("A history that is freed in the middle of a drag frees every edit");
  sw_history_begin_group (history, "drag");
  do_add (history, "a");
  sw_history_free (history);
  g_assert_cmpint (splices_alive, ==, 0);
}

static void
test_failing_undo (void)
{
  g_autoptr (GString) text = g_string_new (NULL);
  SwHistory *history = sw_history_new (&splice_funcs, text);
  g_autoptr (GError) error = NULL;

  g_test_summary ("When the document was changed behind its back an undo fails whole: nothing is half taken back");
  sw_history_begin_group (history, "drag");
  do_add (history, "abc");
  do_add (history, "d");
  sw_history_end_group (history);
  g_string_assign (text, "xy"); /* "d" can come off, "abc" cannot */

  g_assert_false (sw_history_undo (history, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_INVAL);
  g_assert_cmpstr (text->str, ==, "xy");
  g_assert_cmpstr (sw_history_get_undo_name (history), ==, "drag");
  g_assert_null (sw_history_get_redo_name (history));
  sw_history_free (history);
  g_assert_cmpint (splices_alive, ==, 0);
}

/* A history as a list of texts, which is what it must look like from outside. */
static void
test_random_walk (void)
{
  g_autoptr (GString) text = g_string_new (NULL);
  SwHistory *history = sw_history_new (&splice_funcs, text);
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  guint at = 0;

  g_test_summary ("Thousands of random commands agree with a plain list of all texts, without limit");
  g_ptr_array_add (texts, g_strdup (""));
  for (int i = 0; i < 5000; i++)
    {
      int command = g_test_rand_int_range (0, 5);

      if (command == 0 && at > 0)
        at--;
      else if (command == 1 && at + 1 < texts->len)
        at++;
      else if (command >= 2)
        g_ptr_array_set_size (texts, (int) ++at);

      if (command == 0)
        run_command (history, "undo");
      else if (command == 1)
        run_command (history, "redo");
      else
        {
          char letter[] = { (char) g_test_rand_int_range ('a', 'z' + 1), '\0' };

          run_command (history, letter);
          g_ptr_array_add (texts, g_strdup (text->str));
        }
      g_assert_cmpstr (text->str, ==, texts->pdata[at]);
      g_assert_cmpint (sw_history_get_undo_name (history) != NULL, ==, at > 0);
      g_assert_cmpint (sw_history_get_redo_name (history) != NULL, ==, at + 1 < texts->len);
    }
  sw_history_free (history);
  g_assert_cmpint (splices_alive, ==, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (tables); i++)
    g_test_add_data_func (tables[i].path, tables[i].rows, test_table);
  g_test_add_func ("/sketch/history/free-open-group", test_free_open_group);
  g_test_add_func ("/sketch/history/failing-undo", test_failing_undo);
  g_test_add_func ("/sketch/history/random-walk", test_random_walk);
  return g_test_run ();
}
