/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cloth/sw-pooling.h"

#include <string.h>

/* Whatever the sentence, it is whole, and speaks of its own width and way. */
static void
check_sentence (const SwPooling *pooling, GHashTable *sentences)
{
  g_autofree char *sentence = sw_pooling_sentence (pooling);

  g_assert_true (g_str_has_suffix (sentence, "."));
  g_assert_nonnull (strstr (sentence, " 78 stitches"));
  g_assert_null (strchr (sentence, '%'));
  g_assert_cmpint (strstr (sentence, "in the round") != NULL, ==, pooling->worked == SW_WORKED_ROUND);

  if (pooling->verdict == SW_VERDICT_DRIFTS && !pooling->beyond)
    {
      int stitches = ABS (pooling->stitch_step);
      g_autofree char *over = g_strdup_printf (" %d %s ", stitches, stitches == 1 ? "stitch" : "stitches");

      g_assert_nonnull (strstr (sentence, over));
      g_assert_cmpint (strstr (sentence, " 3 rows") != NULL, ==, pooling->row_step == 3);
    }

  g_hash_table_add (sentences, g_steal_pointer (&sentence));
}

/* Every verdict, both ways, near and far, clear and soft, has a sentence of its own with its numbers in it and no others. */
static void
test_sentences (void)
{
  g_autoptr (GHashTable) sentences = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (int kind = SW_VERDICT_SCATTERS; kind <= SW_VERDICT_EVEN; kind++)
    for (int worked = SW_WORKED_FLAT; worked <= SW_WORKED_ROUND; worked++)
      for (int row_step = 1; row_step <= 3; row_step += 2)
        for (int stitch_step = -6; stitch_step <= 7; stitch_step++)
          for (double stack = 0.3; stack < 1; stack += 0.4)
            if ((kind == SW_VERDICT_DRIFTS) == (stitch_step != 0))
              check_sentence (&(SwPooling){ .width = 78,
                                            .worked = (SwWorked) worked,
                                            .stack = stack,
                                            .row_step = row_step,
                                            .stitch_step = MIN (stitch_step, 6),
                                            .beyond = stitch_step > 6,
                                            .verdict = (SwVerdict) kind },
                              sentences);

  /* 3 verdicts of the width alone, 4 kinds of columns, 2 drifts beyond and 6 drifts of 4 kinds; both ways */
  g_assert_cmpuint (g_hash_table_size (sentences), ==, 2 * (3 + 4 + 2 + 6 * 4));
}

static void
test_example_sentence (void)
{
  SwPooling pooling = { .width = 64, .worked = SW_WORKED_ROUND, .stack = 0.4, .row_step = 1, .stitch_step = 3, .verdict = SW_VERDICT_DRIFTS };
  g_autofree char *sentence = sw_pooling_sentence (&pooling);

  g_assert_cmpstr (sentence, ==, "At 64 stitches in the round this drifts 3 stitches a row: soft spirals.");
}

static void
test_names (void)
{
  g_autoptr (GHashTable) names = g_hash_table_new (g_str_hash, g_str_equal);

  for (int kind = SW_VERDICT_SCATTERS; kind <= SW_VERDICT_EVEN; kind++)
    g_assert_true (g_hash_table_add (names, (gpointer) sw_verdict_name ((SwVerdict) kind)));
  g_assert_cmpstr (sw_verdict_name (SW_VERDICT_COLUMNS), ==, "columns");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cloth/pooling-words/sentences", test_sentences);
  g_test_add_func ("/cloth/pooling-words/example-sentence", test_example_sentence);
  g_test_add_func ("/cloth/pooling-words/names", test_names);
  return g_test_run ();
}
