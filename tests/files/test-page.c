/* SPDX-License-Identifier: GPL-3.0-or-later */
/* docs/file-format.md leaves no member out, and its example is a colourway. */
#include "config.h"

#include "files/sw-colourway.h"
#include "sketch/sw-member.h"

#include <string.h>

static char *
read_page (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "docs", "file-format.md", NULL);
  g_autoptr (GError) error = NULL;
  char *page = NULL;

  g_file_get_contents (path, &page, NULL, &error);
  g_assert_no_error (error);
  return page;
}

static void
assert_told (const char *page, const char *word)
{
  g_autofree char *quoted = g_strdup_printf ("`%s`", word);

  if (strstr (page, quoted) == NULL)
    {
      g_test_message ("docs/file-format.md does not tell of %s", quoted);
      g_test_fail ();
    }
}

static void
test_members (void)
{
  g_autofree char *page = read_page ();

  g_test_summary ("Every member, every word of a choice and every kind of step has its line");

  for (int record = 0; record < SW_N_RECORDS; record++)
    {
      gsize n;
      const SwMember *members = sw_record_members ((SwRecord) record, &n);

      if (record != SW_RECORD_SKETCH)
        assert_told (page, sw_record_name ((SwRecord) record));
      for (gsize i = 0; i < n; i++)
        {
          assert_told (page, members[i].name);
          for (gsize k = 0; members[i].choices != NULL && members[i].choices[k] != NULL; k++)
            assert_told (page, members[i].choices[k]);
        }
    }
  for (int kind = 0; kind < SW_N_STEP_KINDS; kind++)
    assert_told (page, sw_step_kind_name ((SwStepKind) kind));
}

static void
test_example (void)
{
  g_autofree char *page = read_page ();
  char *start = strstr (page, "## An example");
  char *end;
  g_autoptr (SwSketch) sketch = NULL;
  g_autoptr (GError) error = NULL;

  g_test_summary ("The example reads");

  g_assert_nonnull (start);
  start = strchr (start, '{');
  end = strstr (start, "\n    }\n");
  g_assert_nonnull (end);
  sketch = sw_colourway_parse (start, (gsize) (end - start) + strlen ("\n    }\n"), &error);
  g_assert_no_error (error);
  g_assert_cmpuint (sketch->steps->len, ==, 3);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/files/page/members", test_members);
  g_test_add_func ("/files/page/example", test_example);
  return g_test_run ();
}
