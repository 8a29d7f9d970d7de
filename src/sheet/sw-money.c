/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-money.h"

#include <locale.h>
#include <math.h>
#include <monetary.h>
#include <string.h>

/* Currencies whose smallest coin is not a hundredth, of those in use: ISO 4217, list one. */
static const struct
{
  const char *code;
  int decimals;
} others[] = {
  { "BHD", 3 },
  { "CLP", 0 },
  { "IQD", 3 },
  { "ISK", 0 },
  { "JOD", 3 },
  { "JPY", 0 },
  { "KRW", 0 },
  { "KWD", 3 },
  { "LYD", 3 },
  { "OMR", 3 },
  { "PYG", 0 },
  { "TND", 3 },
  { "UGX", 0 },
  { "VND", 0 },
  { "XAF", 0 },
  { "XOF", 0 },
  { "XPF", 0 },
};

static int
decimals_of (const char *currency)
{
  for (gsize i = 0; i < G_N_ELEMENTS (others); i++)
    if (g_ascii_strcasecmp (others[i].code, currency) == 0)
      return others[i].decimals;
  return 2;
}

const char *
sw_money_locale_currency (void)
{
  static char code[4];

  /* "EUR ": three letters and what stands between them and the amount */
  g_strlcpy (code, localeconv ()->int_curr_symbol, sizeof code);
  return code;
}

/* As the locale writes its own money. */
static char *
own_money (double amount)
{
  char text[128];

  return strfmon (text, sizeof text, "%n", amount) > 0 ? g_strdup (text) : g_strdup_printf ("%.2f", amount);
}

char *
sw_money_text (double amount, const char *currency)
{
  const char *own = sw_money_locale_currency ();
  const char *code = currency != NULL && *currency != '\0' ? currency : own;
  g_autofree char *number = NULL;

  if (*code == '\0')
    return g_strdup_printf ("%.2f", amount);
  if (g_ascii_strcasecmp (code, own) == 0)
    return own_money (amount);
  number = g_strdup_printf ("%'.*f", decimals_of (code), amount);
  if (localeconv ()->int_p_cs_precedes == 0)
    return g_strdup_printf ("%s\u00a0%s", number, code);
  return g_strdup_printf ("%s\u00a0%s", code, number);
}
