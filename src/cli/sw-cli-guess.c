/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-guess.h"

#include <string.h>

/* Longer words are no slips of a short name. */
#define LONGEST 40

/* One slip in a short word, two in a longer one. */
#define SHORT_WORD 4

static guint
distance (const char *a, const char *b)
{
  const gsize n = strlen (a), m = strlen (b);
  guint table[LONGEST + 1][LONGEST + 1];

  for (gsize i = 0; i <= n; i++)
    table[i][0] = (guint) i;
  for (gsize j = 0; j <= m; j++)
    table[0][j] = (guint) j;
  for (gsize i = 1; i <= n; i++)
    for (gsize j = 1; j <= m; j++)
      {
        guint least = table[i - 1][j - 1] + (a[i - 1] != b[j - 1]);

        least = MIN (least, MIN (table[i - 1][j], table[i][j - 1]) + 1);
        if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
          least = MIN (least, table[i - 2][j - 2] + 1);
        table[i][j] = least;
      }
  return table[n][m];
}

const char *
sw_cli_guess (const char *word, const char *const *words)
{
  const gsize length = strlen (word);
  guint least = length <= SHORT_WORD ? 2 : 3;
  const char *guess = NULL;

  if (length > LONGEST)
    return NULL;
  for (gsize i = 0; words[i] != NULL; i++)
    {
      const guint away = strlen (words[i]) <= LONGEST ? distance (word, words[i]) : G_MAXUINT;

      if (away < least)
        {
          least = away;
          guess = words[i];
        }
    }
  return guess;
}
