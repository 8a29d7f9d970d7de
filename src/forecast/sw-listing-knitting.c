/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-listing-knitting.h"

#include "cloth/sw-usual-widths.h"
#include "forecast/sw-listing-cloth.h"
#include "forecast/sw-main-colours.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* From this stack on the pattern is plain to see, as in sw_pooling_sentence(). */
#define CLEAR 0.6

/* Rows from which a stripe is a band. */
#define BAND_ROWS 6

/* The share of a speckled yarn's ground. */
#define MOSTLY 0.6

/* What a buyer can picture; everything that looks much the same has one phrase. */
typedef enum
{
  SCATTERED,
  SPECKLED,
  EVEN,
  BANDS,
  STRIPES,
  COLUMNS,
  FLASHES,
  SPIRALS_FLAT,
  SPIRALS_SOFT,
  SPIRALS_CLEAR,
  SLANTS_FLAT,
  SLANTS_SOFT,
  SLANTS_CLEAR,
  ZIGZAGS_FLAT,
  ZIGZAGS_SOFT,
  ZIGZAGS_CLEAR,
  N_MANNERS
} Manner;

static const char *const phrases[N_MANNERS] = {
  /* Translators: how colours lie in knitted cloth, on a shop’s page after a colon: “Hat (104): soft spirals.” */
  [SCATTERED] = N_ ("the colours scatter, mottled all over"),
  [SPECKLED] = N_ ("specks of colour scattered all over"),
  [EVEN] = N_ ("a quiet, even cloth without a pattern"),
  [BANDS] = N_ ("broad bands of colour, many rows of each"),
  [STRIPES] = N_ ("stripes, each colour for a row or more"),
  [COLUMNS] = N_ ("each colour stands above itself and pools in columns"),
  [FLASHES] = N_ ("flashes of colour here and there"),
  [SPIRALS_FLAT] = N_ ("low spirals that travel round quickly"),
  [SPIRALS_SOFT] = N_ ("soft spirals"),
  [SPIRALS_CLEAR] = N_ ("clear spirals"),
  [SLANTS_FLAT] = N_ ("low, slanting pools"),
  [SLANTS_SOFT] = N_ ("soft, slanting flashes"),
  [SLANTS_CLEAR] = N_ ("clear, slanting pools"),
  [ZIGZAGS_FLAT] = N_ ("wide, low zigzags"),
  [ZIGZAGS_SOFT] = N_ ("soft zigzags"),
  [ZIGZAGS_CLEAR] = N_ ("clear zigzags"),
};

/* Mostly of one colour, with specks of others. */
static gboolean
is_speckled (const SwForecast *forecast)
{
  SwMainColour colours[SW_MOST_COLOURS];

  return forecast->n_specks > 0 && sw_main_colours (forecast, colours) > 1 && colours[0].share > MOSTLY;
}

static Manner
manner_of (const SwForecast *forecast, const SwPooling *pooling)
{
  const int degree = pooling->beyond ? 0 : pooling->stack < CLEAR ? 1
                                                                  : 2;

  switch (pooling->verdict)
    {
    case SW_VERDICT_COLUMNS:
      return pooling->stack >= CLEAR ? COLUMNS : FLASHES;
    case SW_VERDICT_DRIFTS:
      return (Manner) ((pooling->worked == SW_WORKED_ROUND ? SPIRALS_FLAT : pooling->row_step == 1 ? SLANTS_FLAT
                                                                                                    : ZIGZAGS_FLAT) +
                       degree);
    case SW_VERDICT_STRIPES:
      return forecast->pooling_input.stripe_stitches >= BAND_ROWS * (double) pooling->width ? BANDS : STRIPES;
    case SW_VERDICT_EVEN:
      return EVEN;
    case SW_VERDICT_SCATTERS:
    default:
      return is_speckled (forecast) ? SPECKLED : SCATTERED;
    }
}

/* In the order of the usual widths: metres in 100 g between which a yarn is used for a piece (common practice, no source), and its name for all and for the United States. */
static const struct
{
  double from, to;
  const char *names[2];
} pieces[SW_N_USUAL] = {
  /* Translators: what is knitted, in a list on a shop’s page; “sweater” is what knitters of the United States call a jumper */
  { 330, 520, { N_ ("socks"), N_ ("socks") } },
  { 0, 480, { N_ ("hat"), N_ ("hat") } },
  { 0, 1000, { N_ ("cowl"), N_ ("cowl") } },
  { 0, 520, { N_ ("jumper"), N_ ("sweater") } },
  { 0, 2000, { N_ ("scarf"), N_ ("scarf") } },
  { 180, 5000, { N_ ("wrap"), N_ ("wrap") } },
  { 0, 280, { N_ ("blanket"), N_ ("blanket") } },
};

typedef struct
{
  const char *label;
  gsize width;
  Manner manner;
} Shown;

/* The pieces that suit the yarn, each at the middle one of its usual widths, but for the colourway's own. Returns: how many */
static int
look_at_pieces (const SwForecast *forecast, gboolean us, Shown *shown)
{
  const double metres = forecast->sketch->yarn.metres_per_100_g;
  SwUsualWidths usual[SW_N_USUAL];
  int n = 0;

  sw_usual_widths (forecast->sketch->cloth.stitches_per_10cm, usual);
  for (int i = 0; i < SW_N_USUAL; i++)
    {
      const gsize width = usual[i].widths[usual[i].n / 2];
      SwPooling pooling;

      if (metres < pieces[i].from || metres > pieces[i].to || width > SW_SCAN_WIDEST || (width == forecast->layout.width && usual[i].worked == forecast->layout.worked))
        continue;
      sw_forecast_scan (forecast, usual[i].worked, width, width, &pooling);
      shown[n++] = (Shown){ _ (pieces[i].names[us ? 1 : 0]), width, manner_of (forecast, &pooling) };
    }
  return n;
}

/* Begins a line. Returns: (transfer full) */
static char *
capitalised (const char *words)
{
  const gunichar first = g_unichar_toupper (g_utf8_get_char_validated (words, -1));
  char start[7] = { 0 };

  g_unichar_to_utf8 (first, start);
  return g_strconcat (start, g_utf8_next_char (words), NULL);
}

/* Those of one manner in a line: “hat (104), cowl (144): soft spirals.” */
static void
add_alike (GString *out, const Shown *shown, int n, Manner manner)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;
  g_autofree char *line = NULL;

  for (int i = 0; i < n; i++)
    if (shown[i].manner == manner)
      /* Translators: 1 what is knitted: “hat”, 2 its number of stitches */
      g_ptr_array_add (names, g_strdup_printf (_ ("%1$s (%2$u)"), shown[i].label, (guint) shown[i].width));
  g_ptr_array_add (names, NULL);
  list = g_strjoinv (_ (", "), (char **) names->pdata);
  line = capitalised (list);
  /* Translators: a line of a list; 1 “Hat (104), cowl (144)”, 2 “soft spirals” */
  g_string_append_printf (out, _ ("– %1$s: %2$s."), line, _ (phrases[manner]));
  g_string_append_c (out, '\n');
}

/* The narrowest and the widest stand for all. */
static void
add_all (GString *out, const Shown *shown, int n, Manner own)
{
  const Shown *least = shown, *most = shown;

  for (int i = 1; i < n; i++)
    {
      least = shown[i].width < least->width ? &shown[i] : least;
      most = shown[i].width > most->width ? &shown[i] : most;
    }
  if (shown->manner == own)
    /* Translators: a line below another that tells how a piece of cloth looks; 1 and 3 what is knitted, 2 and 4 numbers of stitches */
    g_string_append_printf (out, _ ("– The same whatever you make, from %1$s (%2$u) to %3$s (%4$u)."), least->label, (guint) least->width, most->label, (guint) most->width);
  else
    /* Translators: 1 and 3 what is knitted, 2 and 4 numbers of stitches, 5 “soft spirals” */
    g_string_append_printf (out, _ ("– Whatever you make, from %1$s (%2$u) to %3$s (%4$u): %5$s."), least->label, (guint) least->width, most->label, (guint) most->width, _ (phrases[shown->manner]));
  g_string_append_c (out, '\n');
}

static void
add_pieces (GString *out, const Shown *shown, int n, Manner own)
{
  gboolean alike = n > 2;

  for (int i = 1; i < n; i++)
    alike = alike && shown[i].manner == shown[0].manner;
  if (alike)
    add_all (out, shown, n, own);
  for (int i = 0; i < n && !alike; i++)
    {
      gboolean first = TRUE;

      for (int j = 0; j < i; j++)
        first = first && shown[j].manner != shown[i].manner;
      if (first)
        add_alike (out, shown, n, shown[i].manner);
    }
}

static gboolean
shows_cloth (const SwListingSettings *listing)
{
  return listing->arrangement != SW_ARRANGEMENT_HANK && listing->arrangement != SW_ARRANGEMENT_HANKS;
}

/* Own width: whether it is the cloth of the picture, and how it is worked. */
static const char *const own_lines[2][2] = {
  {
      /* Translators: 1 a number of stitches, 2 “soft zigzags” */
      [SW_WORKED_FLAT] = N_ ("– Over %1$u stitches, flat: %2$s."),
      [SW_WORKED_ROUND] = N_ ("– Over %1$u stitches in the round: %2$s."),
  },
  {
      [SW_WORKED_FLAT] = N_ ("– The cloth in the picture, %1$u stitches wide: %2$s."),
      [SW_WORKED_ROUND] = N_ ("– The cloth in the picture, %1$u stitches in the round: %2$s."),
  },
};

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral" /* of the tables, all for the same arguments */

static void
add_own (GString *out, const SwForecast *forecast)
{
  const Manner manner = manner_of (forecast, &forecast->pooling);
  const gboolean cloth = shows_cloth (&forecast->sketch->listing), wide = cloth && sw_listing_cloth_is_wide (forecast);

  if (wide)
    {
      g_string_append (out, _ ("– The cloth in the picture is knitted wide enough to show the whole skein, from its first colour to its last."));
      g_string_append_c (out, '\n');
    }
  g_string_append_printf (out, _ (own_lines[cloth && !wide][forecast->layout.worked]), (guint) forecast->layout.width, _ (phrases[manner]));
  g_string_append_c (out, '\n');
}

/* Fabrics, for all and for the United States. */
static const char *const fabrics[][2] = {
  /* Translators: four fabrics, after “How it is likely to knit up in”; two of them once more as knitters of the United States call them */
  [SW_FABRIC_STOCKINETTE] = { N_ ("stocking stitch"), N_ ("stockinette stitch") },
  [SW_FABRIC_GARTER] = { N_ ("garter stitch"), N_ ("garter stitch") },
  [SW_FABRIC_SEED] = { N_ ("moss stitch"), N_ ("seed stitch") },
  [SW_FABRIC_RIB] = { N_ ("one-by-one rib"), N_ ("one-by-one rib") },
};

void
sw_listing_add_knitting (GString *out, const SwForecast *forecast, gboolean us)
{
  const double gauge = forecast->sketch->cloth.stitches_per_10cm;
  const char *fabric = _ (fabrics[forecast->sketch->cloth.fabric][us ? 1 : 0]);
  Shown shown[SW_N_USUAL];
  const int n = look_at_pieces (forecast, us, shown);

  if (us)
    /* Translators: 1 a fabric, 2 a number of stitches */
    g_string_append_printf (out, _ ("How it is likely to knit up in %1$s, %2$.0f stitches to 4 in (number of stitches in brackets):"), fabric, floor (gauge * 1.016));
  else
    g_string_append_printf (out, _ ("How it is likely to knit up in %1$s, %2$.3g stitches to 10 cm (number of stitches in brackets):"), fabric, gauge);
  g_string_append_c (out, '\n');
  add_own (out, forecast);
  add_pieces (out, shown, n, manner_of (forecast, &forecast->pooling));
}

#pragma GCC diagnostic pop
