/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sw-app-test.h"

#include "app/desk/sw-day-words.h"
#include "app/desk/sw-templates.h"

#include <string.h>

/* What is read across the kitchen. */

static const struct
{
  double seconds;
  const char *digits;
} rows[] = {
  { 600, "10:00" },
  { 599.99, "10:00" }, /* the second that is running is shown */
  { 599, "9:59" },
  { 0.01, "0:01" },
  { 0, "0:00" },
  { -0.5, "+0:00" },
  { -42, "+0:42" },
  { 3600, "1:00:00" },
  { 3599, "59:59" },
  { 86400, "24:00:00" },
  { -3661, "+1:01:01" },
};

static void
test_digits (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *digits = sw_day_digits ((gint64) (rows[i].seconds * G_USEC_PER_SEC));

      g_assert_cmpstr (digits, ==, rows[i].digits);
    }
}

/* Every deed of the demo's day has a title, a pour its amount as the sheet has it, hot deeds their cautions. */
static void
test_deeds (void)
{
  GError *error = NULL;
  g_autoptr (SwSketch) sketch = sw_template_demo (&error);
  g_autoptr (SwSheet) sheet = NULL;
  g_autoptr (SwDayClock) clock = NULL;
  guint pours = 0;

  g_assert_no_error (error);
  sheet = sw_sheet_new (sketch, NULL);
  clock = sw_day_clock_new (sketch, (SwMoment){ 0, 0 });
  for (guint i = 0; i < clock->deeds->len; i++)
    {
      const SwDayDeed *deed = clock->deeds->pdata[i];

      for (int system = SW_SYSTEM_METRIC; system <= SW_SYSTEM_US; system++)
        {
          g_auto (SwDayWords) words = { NULL };
          g_autofree char *next = sw_day_next_words (sheet, deed, (SwSystem) system);

          sw_day_words (sheet, deed, (SwSystem) system, &words);
          g_assert_cmpstr (words.title, ==, deed->title);
          g_assert_true (g_str_has_prefix (next, deed->title));
          g_assert_nonnull (words.detail);
          if (deed->pour > 0)
            g_assert_cmpuint (strlen (words.amount), >, 0);
          if (deed->kind == SW_DEED_STOCK || deed->kind == SW_DEED_SET)
            g_assert_nonnull (words.caution);
        }
      pours += deed->pour > 0;
    }
  g_assert_cmpuint (pours, ==, sheet->n_pours);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/day-words/digits", test_digits);
  g_test_add_func ("/day-words/deeds", test_deeds);
  return g_test_run ();
}
