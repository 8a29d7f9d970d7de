/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-step-edits.h"

#include "tests/sw-test-sketch.h"

/* Edits of the list of steps, against lists worked out by hand. */

/* Steps a .. h, in that order: a, b, c are bands, the rest are rests, h is the set. */
static SwSketch *
lettered (guint ids[8])
{
  SwSketch *sketch = test_bare_sketch (2);
  SwDye *dye = test_add_dye (sketch, "Ink", 30, 40, 90);

  for (guint i = 0; i < 8; i++)
    {
      SwStep *step = i < 3 ? test_add_band (sketch, dye, 10 + i, 4, 5, 0.5) : test_add_step (sketch, i < 7 ? SW_STEP_REST : SW_STEP_SET);

      step->name = (g_free (step->name), g_strdup_printf ("%c", 'a' + (char) i));
      ids[i] = step->id;
    }
  return sketch;
}

static char *
order (const SwSketch *sketch)
{
  GString *letters = g_string_new (NULL);

  for (guint i = 0; i < sketch->steps->len; i++)
    g_string_append (letters, ((const SwStep *) sketch->steps->pdata[i])->name);
  return g_string_free (letters, FALSE);
}

static void
apply (SwSketch *sketch, SwEdit *edit)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwEdit) inverse = NULL;

  g_assert_nonnull (edit);
  inverse = sw_edit_apply (edit, sketch, NULL, &error);
  g_assert_no_error (error);
  sw_edit_free (edit);
}

static gsize
pick (const char *letters, const guint ids[8], guint *picked)
{
  gsize n = 0;

  for (; *letters != '\0'; letters++)
    picked[n++] = ids[*letters - 'a'];
  return n;
}

static const struct
{
  const char *name;
  const char *steps; /* in the order in which they were selected */
  guint before;
  const char *after; /* NULL: nothing to do */
} moves[] = {
  { "one-down", "b", 5, "acdebfgh" },
  { "one-up", "f", 1, "afbcdegh" },
  { "to-the-end", "a", 8, "bcdefgha" },
  { "to-the-front", "h", 0, "habcdefg" },
  { "onto-itself", "c", 2, NULL },
  { "behind-itself", "c", 3, NULL },
  { "two-together", "bc", 6, "adefbcgh" },
  { "two-apart-down", "ad", 6, "bcefadgh" },
  { "two-apart-up", "dg", 1, "adgbcefh" },
  { "round-about", "ag", 4, "bcdagefh" },
  { "selected-backwards", "ga", 4, "bcdagefh" },
  { "into-the-middle-of-them", "bd", 2, "abdcefgh" },
  { "all", "abcdefgh", 3, NULL },
};

static void
test_move (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  guint ids[8], picked[8];
  g_autoptr (SwSketch) sketch = lettered (ids);
  gsize n = pick (moves[i].steps, ids, picked);
  SwEdit *edit = sw_step_edits_move (sketch, picked, n, moves[i].before);
  g_autofree char *after = NULL;

  if (moves[i].after == NULL)
    {
      g_assert_null (edit);
      return;
    }
  apply (sketch, edit);
  after = order (sketch);
  g_assert_cmpstr (after, ==, moves[i].after);
}

/* Any choice to any place: those moved stand together before what was there, and nobody changes order among their own. */
static void
test_move_any (void)
{
  for (guint mask = 0; mask < 256; mask++)
    for (guint before = 0; before <= 8; before++)
      {
        guint ids[8], picked[8];
        g_autoptr (SwSketch) sketch = lettered (ids);
        g_autoptr (GString) wanted = g_string_new (NULL);
        g_autofree char *got = NULL;
        gsize n = 0;
        SwEdit *edit;

        for (guint i = 0; i < 8; i++)
          if (mask & (1u << i))
            picked[n++] = ids[i];
        for (guint i = 0; i < before; i++)
          if (!(mask & (1u << i)))
            g_string_append_c (wanted, 'a' + (char) i);
        for (guint i = 0; i < 8; i++)
          if (mask & (1u << i))
            g_string_append_c (wanted, 'a' + (char) i);
        for (guint i = before; i < 8; i++)
          if (!(mask & (1u << i)))
            g_string_append_c (wanted, 'a' + (char) i);

        edit = sw_step_edits_move (sketch, picked, n, before);
        if (edit != NULL)
          apply (sketch, edit);
        got = order (sketch);
        g_assert_cmpstr (got, ==, wanted->str);
      }
}

static const struct
{
  const char *name;
  const char *steps;
  gboolean up;
  const char *after;
} shifts[] = {
  { "up", "c", TRUE, "acbdefgh" },
  { "down", "c", FALSE, "abdcefgh" },
  { "at-the-top", "a", TRUE, NULL },
  { "at-the-bottom", "h", FALSE, NULL },
  { "neighbours-up", "cd", TRUE, "acdbefgh" },
  { "neighbours-down", "cd", FALSE, "abecdfgh" },
  { "apart", "be", TRUE, "bacedfgh" },
  { "against-the-top", "abd", TRUE, "abdcefgh" },
  { "against-the-bottom", "egh", FALSE, "abcdfegh" },
};

static void
test_shift (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  guint ids[8], picked[8];
  g_autoptr (SwSketch) sketch = lettered (ids);
  gsize n = pick (shifts[i].steps, ids, picked);
  SwEdit *edit = sw_step_edits_shift (sketch, picked, n, shifts[i].up);
  g_autofree char *after = NULL;

  if (shifts[i].after == NULL)
    {
      g_assert_null (edit);
      return;
    }
  apply (sketch, edit);
  after = order (sketch);
  g_assert_cmpstr (after, ==, shifts[i].after);
}

static guint
index_of (const SwSketch *sketch, guint id)
{
  for (guint i = 0; i < sketch->steps->len; i++)
    if (((const SwStep *) sketch->steps->pdata[i])->id == id)
      return i;
  g_assert_not_reached ();
}

/* Every kind can be added by name alone, and is a valid step in a sensible place. */
static void
test_new (void)
{
  for (int kind = 0; kind < SW_N_STEP_KINDS; kind++)
    {
      guint ids[8], id, before_set, after_b;
      g_autoptr (SwSketch) sketch = lettered (ids);
      guint dye = ((const SwDye *) sketch->dyes->pdata[0])->id;
      g_autoptr (GError) error = NULL;
      const SwStep *step;

      apply (sketch, sw_step_edits_new (sketch, kind, dye, 0, &id));
      before_set = index_of (sketch, id);
      /* A pour follows the bands; all else comes last but for the set. */
      g_assert_cmpuint (before_set, ==, (SW_STEP_BIT (kind) & SW_STEP_POURS) ? 3 : 7);
      apply (sketch, sw_step_edits_new (sketch, kind, dye, ids[1], &id));
      after_b = index_of (sketch, id);
      g_assert_cmpuint (after_b, ==, 2);
      g_assert_true (sw_sketch_validate (sketch, &error));
      g_assert_no_error (error);

      step = sw_sketch_find_step (sketch, id);
      g_assert_cmpint (step->kind, ==, kind);
      if (sw_step_is_pour (step))
        {
          g_assert_cmpfloat (step->x_cm, ==, 30); /* a loop of 120 cm doubled, 8 cm wide */
          g_assert_cmpfloat (step->y_cm, ==, 4);
          g_assert_cmpfloat (step->amount_ml, >, 0);
        }
    }
}

static void
test_new_in_empty (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  guint id;

  apply (sketch, sw_step_edits_new (sketch, SW_STEP_SET, 0, 0, &id));
  g_assert_cmpuint (index_of (sketch, id), ==, 0);
}

static void
test_duplicate (void)
{
  guint ids[8], picked[3], copies[3];
  g_autoptr (SwSketch) sketch = lettered (ids);
  g_autofree char *after = NULL;
  gsize n = pick ("eba", ids, picked);

  apply (sketch, sw_step_edits_duplicate (sketch, picked, n, copies));
  after = order (sketch);
  g_assert_cmpstr (after, ==, "abcdeabefgh");
  for (guint i = 0; i < 3; i++)
    g_assert_cmpuint (index_of (sketch, copies[i]), ==, 5 + i);
  /* A copied pour is the same but for its place. */
  g_assert_cmpfloat (sw_sketch_find_step (sketch, copies[0])->x_cm, ==, 12);
  g_assert_cmpfloat (sw_sketch_find_step (sketch, copies[0])->amount_ml, ==, 5);
  g_assert_cmpuint (sw_sketch_find_step (sketch, copies[0])->dye, ==, sw_sketch_find_step (sketch, ids[0])->dye);
}

/* At the far end of the skein a copy goes the other way, so that it stays on the yarn. */
static void
test_duplicate_at_end (void)
{
  guint ids[8], copy;
  g_autoptr (SwSketch) sketch = lettered (ids);

  ((SwStep *) sketch->steps->pdata[0])->x_cm = 59.5;
  apply (sketch, sw_step_edits_duplicate (sketch, ids, 1, &copy));
  g_assert_cmpfloat (sw_sketch_find_step (sketch, copy)->x_cm, ==, 57.5);
}

static void
test_delete (void)
{
  guint ids[8], picked[8];
  g_autoptr (SwSketch) sketch = lettered (ids);
  g_autofree char *after = NULL;
  const guint none[] = { 4711 };

  apply (sketch, sw_step_edits_delete (sketch, picked, pick ("hbd", ids, picked)));
  after = order (sketch);
  g_assert_cmpstr (after, ==, "acefg");
  g_assert_null (sw_step_edits_delete (sketch, none, 1));
  g_assert_null (sw_step_edits_duplicate (sketch, none, 1, picked));
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
  ADD_ROWS ("/app/step-edits/move/", moves, test_move);
  ADD_ROWS ("/app/step-edits/shift/", shifts, test_shift);
  g_test_add_func ("/app/step-edits/move-any", test_move_any);
  g_test_add_func ("/app/step-edits/new", test_new);
  g_test_add_func ("/app/step-edits/new-in-empty", test_new_in_empty);
  g_test_add_func ("/app/step-edits/duplicate", test_duplicate);
  g_test_add_func ("/app/step-edits/duplicate-at-end", test_duplicate_at_end);
  g_test_add_func ("/app/step-edits/delete", test_delete);
  return g_test_run ();
}
