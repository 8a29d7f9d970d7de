/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-money.h"

#include <locale.h>

/* Money as the locale writes it; decimals of a currency by ISO 4217, list one. */

static const struct
{
  const char *locale, *currency, *text;
  double amount;
} rows[] = {
  { "C", NULL, "12.50", 12.5 },
  { "C", "EUR", "EUR\u00a012.50", 12.5 },
  { "C", "JPY", "JPY\u00a01250", 1250 },
  { "C", "KWD", "KWD\u00a01.250", 1.25 },
  { "en_US.UTF-8", NULL, "$12.50", 12.5 },
  { "en_US.UTF-8", "USD", "$12.50", 12.5 },
  { "en_US.UTF-8", "usd", "$1,234.50", 1234.5 },
  { "en_US.UTF-8", "SEK", "SEK\u00a01,234.50", 1234.5 },
  { "en_GB.UTF-8", "", "£12.50", 12.5 },
};

static void
test_row (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);
  g_autofree char *text = NULL;

  if (setlocale (LC_ALL, rows[i].locale) == NULL)
    {
      g_test_skip ("this locale is not installed");
      return;
    }
  text = sw_money_text (rows[i].amount, rows[i].currency);
  setlocale (LC_ALL, "C");
  g_assert_cmpstr (text, ==, rows[i].text);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/money/%s/%" G_GSIZE_FORMAT, rows[i].locale, i);

      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_row);
    }
  return g_test_run ();
}
