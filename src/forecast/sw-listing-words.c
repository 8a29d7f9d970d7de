/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-listing-words.h"

#include "forecast/sw-colour-words.h"
#include "forecast/sw-listing-knitting.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define G_PER_OZ 28.349523125
#define M_PER_YARD 0.9144

static const char *
title_of (const SwForecast *forecast)
{
  const char *title = forecast->sketch->title;

  return title[0] != '\0' ? title : _ ("Untitled");
}

static void
add_line (GString *out, const char *line)
{
  g_string_append (out, line);
  g_string_append_c (out, '\n');
}

static void
add_maker (GString *out, const SwListingSettings *listing)
{
  if (listing->maker[0] == '\0')
    {
      add_line (out, _ ("Hand-dyed yarn"));
      return;
    }
  /* Translators: %s is the name of a dyer or of a workshop */
  g_string_append_printf (out, _ ("Hand-dyed yarn by %s"), listing->maker);
  g_string_append_c (out, '\n');
}

/* Fibre, weight and length: what a buyer looks for first. */
static void
add_put_up (GString *out, const SwForecast *forecast, gboolean inches)
{
  const SwYarn *yarn = &forecast->sketch->yarn;
  const char *fibre = _ (sw_record_find_member (SW_RECORD_YARN, "fibre")->choice_labels[yarn->fibre]);
  const double metres = yarn->mass_g * yarn->metres_per_100_g / 100;
  g_autofree char *plies = NULL;

  if (yarn->name[0] != '\0')
    /* Translators: %1$s is the name of a yarn, %2$s its fibre */
    g_string_append_printf (out, _ ("%1$s: %2$s"), yarn->name, fibre);
  else
    g_string_append (out, fibre);
  g_string_append (out, "\n");
  plies = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d ply", "%d plies", (gulong) yarn->plies), (int) yarn->plies);
  if (inches)
    /* Translators: 1 ounces and 2 yards of one skein, 3 “4 plies” */
    g_string_append_printf (out, _ ("%1$.2f oz (%2$.0f yd), %3$s"), yarn->mass_g / G_PER_OZ, metres / M_PER_YARD, plies);
  else
    /* Translators: 1 grams and 2 metres of one skein, 3 “4 plies” */
    g_string_append_printf (out, _ ("%1$.4g g (%2$.0f m), %3$s"), yarn->mass_g, metres, plies);
  g_string_append (out, "\n");
}

char *
sw_listing_colours (const SwForecast *forecast)
{
  SwMainColour colours[SW_MOST_COLOURS];
  const int n = sw_main_colours (forecast, colours);
  g_auto (GStrv) names = sw_main_colour_names (forecast, colours, n);
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  int percents[SW_MOST_COLOURS];

  sw_main_colour_percents (colours, n, percents);
  for (int i = 0; i < n; i++)
    /* Translators: 1 a colour's name, 2 its share of the yarn */
    g_ptr_array_add (parts, g_strdup_printf (_ ("%1$s %2$d %%"), names[i], percents[i]));
  g_ptr_array_add (parts, NULL);
  /* Translators: between the items of a list */
  return g_strjoinv (_ (", "), (char **) parts->pdata);
}

static void
add_care (GString *out, const SwListingSettings *listing)
{
  const char *words = listing->care_words;

  if (words[0] == '\0' && listing->care == SW_CARE_UNSAID)
    return;
  if (words[0] == '\0')
    words = _ (sw_record_find_member (SW_RECORD_LISTING, "care")->choice_labels[listing->care]);
  g_string_append_c (out, '\n');
  /* Translators: how the knitted thing is to be washed */
  g_string_append_printf (out, _ ("Care: %s"), words);
  g_string_append_c (out, '\n');
}

char *
sw_listing_written (const SwForecast *forecast, gboolean inches)
{
  GString *out = g_string_new (NULL);
  g_autofree char *colours = sw_listing_colours (forecast);

  add_line (out, title_of (forecast));
  add_maker (out, &forecast->sketch->listing);
  add_put_up (out, forecast, inches);
  g_string_append_c (out, '\n');
  if (colours[0] != '\0')
    {
      /* Translators: %s is a list: “deep teal 42 %, plum 30 %” */
      g_string_append_printf (out, _ ("Colours: %s"), colours);
      g_string_append (out, "\n\n");
    }
  if (forecast->n_stitches > 0)
    sw_listing_add_knitting (out, forecast, inches);
  add_care (out, &forecast->sketch->listing);
  g_string_append_c (out, '\n');
  add_line (out, _ ("Dyed by hand: no two skeins are quite alike. For a larger piece, knit from two skeins in turn."));
  add_line (out, _ ("The picture is a drawn forecast, not a photograph."));
  return g_string_free (out, FALSE);
}

char *
sw_listing_words (const SwForecast *forecast, gboolean inches)
{
  if (forecast->sketch->listing.words[0] != '\0')
    return g_strdup (forecast->sketch->listing.words);
  return sw_listing_written (forecast, inches);
}

/* What is in the picture; %s is the yarn's name. */
static const char *const shown[] = {
  [SW_ARRANGEMENT_HANK] = N_ ("Drawing of a twisted hank of the hand-dyed yarn “%s”."),
  [SW_ARRANGEMENT_HANKS] = N_ ("Drawing of several twisted hanks of the hand-dyed yarn “%s”, side by side."),
  [SW_ARRANGEMENT_HANK_CLOTH] = N_ ("Drawing of a twisted hank of the hand-dyed yarn “%s” on the cloth knitted from it."),
  [SW_ARRANGEMENT_SKEIN_CLOTH] = N_ ("Drawing of a laid skein of the hand-dyed yarn “%s” below the cloth knitted from it."),
  [SW_ARRANGEMENT_WHOLE] = N_ ("Drawing of the hand-dyed yarn “%s”: a twisted hank, the laid skein and the cloth knitted from it."),
};

/* The same of a pan with more than one skein. */
static const char *
shown_of (const SwSketch *sketch)
{
  const SwArrangement arrangement = sketch->listing.arrangement;

  if (sketch->lay.skeins > 1 && arrangement == SW_ARRANGEMENT_SKEIN_CLOTH)
    return _ ("Drawing of the laid skeins of the hand-dyed yarn “%s” below the cloth knitted from them.");
  if (sketch->lay.skeins > 1 && arrangement == SW_ARRANGEMENT_WHOLE)
    return _ ("Drawing of the hand-dyed yarn “%s”: a twisted hank, the laid skeins and the cloth knitted from them.");
  return _ (shown[arrangement]);
}

char *
sw_listing_alt (const SwForecast *forecast)
{
  g_autofree char *colours = sw_listing_colours (forecast);
  g_autofree char *what = NULL;

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  what = g_strdup_printf (shown_of (forecast->sketch), title_of (forecast));
#pragma GCC diagnostic pop
  if (colours[0] == '\0')
    return g_steal_pointer (&what);
  /* Translators: 1 a sentence, 2 a list: “deep teal 42 %, plum 30 %” */
  return g_strdup_printf (_ ("%1$s Its colours: %2$s."), what, colours);
}
