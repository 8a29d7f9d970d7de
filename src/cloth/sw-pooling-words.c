/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-pooling.h"

#include <glib/gi18n-lib.h>

/* From this stack on the pattern is plain to see; under it it only shows in places. */
#define CLEAR 0.6

const char *
sw_verdict_name (SwVerdict verdict)
{
  static const char *const names[] = {
    [SW_VERDICT_SCATTERS] = "scatters",
    [SW_VERDICT_COLUMNS] = "columns",
    [SW_VERDICT_DRIFTS] = "drifts",
    [SW_VERDICT_STRIPES] = "stripes",
    [SW_VERDICT_EVEN] = "even",
  };

  g_return_val_if_fail ((gsize) verdict < G_N_ELEMENTS (names), NULL);

  return names[verdict];
}

/* Verdicts that need no more than the width, by how the cloth is worked. */
static const char *const plain_sentences[][2] = {
  [SW_VERDICT_SCATTERS] = {
      /* Translators: %1$u is the width of the knitting in stitches, always more than one, here and in all sentences below. */
      [SW_WORKED_FLAT] = N_ ("Worked flat over %1$u stitches nothing lines up: the colours scatter, mottled all over."),
      [SW_WORKED_ROUND] = N_ ("At %1$u stitches in the round nothing lines up: the colours scatter, mottled all over."),
  },
  [SW_VERDICT_STRIPES] = {
      [SW_WORKED_FLAT] = N_ ("Worked flat over %1$u stitches one colour lasts for a row or more: it stripes."),
      [SW_WORKED_ROUND] = N_ ("At %1$u stitches in the round one colour lasts for a row or more: it stripes."),
  },
  [SW_VERDICT_EVEN] = {
      [SW_WORKED_FLAT] = N_ ("Worked flat over %1$u stitches it looks plain: the colours are too close to make a pattern."),
      [SW_WORKED_ROUND] = N_ ("At %1$u stitches in the round it looks plain: the colours are too close to make a pattern."),
  },
};

/* Columns, by how the cloth is worked and whether they are clear. */
static const char *const columns_every_row[2][2] = {
  [SW_WORKED_FLAT] = {
      N_ ("Worked flat over %1$u stitches the colours partly stand above each other: some flashing."),
      N_ ("Worked flat over %1$u stitches each colour stands above itself row after row: pooling in columns."),
  },
  [SW_WORKED_ROUND] = {
      N_ ("At %1$u stitches in the round the colours partly stand above each other: some flashing."),
      N_ ("At %1$u stitches in the round each colour stands above itself row after row: pooling in columns."),
  },
};

static const char *const columns_every_few_rows[2][2] = {
  [SW_WORKED_FLAT] = {
      /* Translators: %2$u is a number of rows, 2 to 8. */
      N_ ("Worked flat over %1$u stitches the colours tend to come back every %2$u rows: some flashing."),
      N_ ("Worked flat over %1$u stitches each colour comes back above itself every %2$u rows: pooling in columns."),
  },
  [SW_WORKED_ROUND] = {
      /* Translators: %2$u is a number of rows, 2 to 8. */
      N_ ("At %1$u stitches in the round the colours tend to come back every %2$u rows: some flashing."),
      N_ ("At %1$u stitches in the round each colour comes back above itself every %2$u rows: pooling in columns."),
  },
};

/* Drifts wider than is looked at: in every row, in a few rows. */
static const char *const wide_drifts[2][2] = {
  [SW_WORKED_FLAT] = {
      N_ ("Worked flat over %1$u stitches the colours move over more than six stitches a row: flat slanting pools."),
      N_ ("Worked flat over %1$u stitches the colours move over more than six stitches in %2$u rows, to and fro: flat zigzags."),
  },
  [SW_WORKED_ROUND] = {
      N_ ("At %1$u stitches in the round this drifts more than six stitches a row: flat spirals."),
      N_ ("At %1$u stitches in the round this drifts more than six stitches in %2$u rows: flat spirals."),
  },
};

static char *
drift_every_row (SwWorked worked, guint width, guint stitches, gboolean clear)
{
  if (worked == SW_WORKED_FLAT)
    return g_strdup_printf (clear
                                /* Translators: %2$u is by how many stitches the colours are moved over from one row to the next, 1 to 6. */
                                ? ngettext ("Worked flat over %1$u stitches the colours move over %2$u stitch a row: clear slanting pools.",
                                            "Worked flat over %1$u stitches the colours move over %2$u stitches a row: clear slanting pools.", stitches)
                                : ngettext ("Worked flat over %1$u stitches the colours move over %2$u stitch a row: slanting flashes.",
                                            "Worked flat over %1$u stitches the colours move over %2$u stitches a row: slanting flashes.", stitches),
                            width, stitches);

  return g_strdup_printf (clear
                              ? ngettext ("At %1$u stitches in the round this drifts %2$u stitch a row: clear spirals.",
                                          "At %1$u stitches in the round this drifts %2$u stitches a row: clear spirals.", stitches)
                              : ngettext ("At %1$u stitches in the round this drifts %2$u stitch a row: soft spirals.",
                                          "At %1$u stitches in the round this drifts %2$u stitches a row: soft spirals.", stitches),
                          width, stitches);
}

static char *
drift_every_few_rows (SwWorked worked, guint width, guint stitches, guint rows, gboolean clear)
{
  if (worked == SW_WORKED_FLAT)
    return g_strdup_printf (clear
                                /* Translators: %3$u is a number of rows, 2 to 8; the plural form is that of the stitches, %2$u. */
                                ? ngettext ("Worked flat over %1$u stitches the colours move over %2$u stitch in %3$u rows, to and fro: clear zigzags.",
                                            "Worked flat over %1$u stitches the colours move over %2$u stitches in %3$u rows, to and fro: clear zigzags.", stitches)
                                : ngettext ("Worked flat over %1$u stitches the colours move over %2$u stitch in %3$u rows, to and fro: soft zigzags.",
                                            "Worked flat over %1$u stitches the colours move over %2$u stitches in %3$u rows, to and fro: soft zigzags.", stitches),
                            width, stitches, rows);

  return g_strdup_printf (clear
                              ? ngettext ("At %1$u stitches in the round this drifts %2$u stitch in %3$u rows: clear spirals.",
                                          "At %1$u stitches in the round this drifts %2$u stitches in %3$u rows: clear spirals.", stitches)
                              : ngettext ("At %1$u stitches in the round this drifts %2$u stitch in %3$u rows: soft spirals.",
                                          "At %1$u stitches in the round this drifts %2$u stitches in %3$u rows: soft spirals.", stitches),
                          width, stitches, rows);
}

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral" /* formats from the tables above, all for two guints */

char *
sw_pooling_sentence (const SwPooling *pooling)
{
  guint width = (guint) pooling->width;
  guint rows = (guint) pooling->row_step;
  guint stitches = (guint) ABS (pooling->stitch_step);
  gboolean clear = pooling->stack >= CLEAR;
  const char *sentence;

  switch (pooling->verdict)
    {
    case SW_VERDICT_COLUMNS:
      sentence = (rows == 1 ? columns_every_row : columns_every_few_rows)[pooling->worked][clear];
      break;

    case SW_VERDICT_DRIFTS:
      if (pooling->beyond)
        sentence = wide_drifts[pooling->worked][rows > 1];
      else if (rows == 1)
        return drift_every_row (pooling->worked, width, stitches, clear);
      else
        return drift_every_few_rows (pooling->worked, width, stitches, rows, clear);
      break;

    case SW_VERDICT_SCATTERS:
    case SW_VERDICT_STRIPES:
    case SW_VERDICT_EVEN:
    default:
      sentence = plain_sentences[pooling->verdict][pooling->worked];
      break;
    }

  return g_strdup_printf (_ (sentence), width, rows);
}

#pragma GCC diagnostic pop
