/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-svg-private.h"
#include "files/sw-svg.h"

#include "draw/sw-pan-marks.h"
#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>

/* What a traced layout has done to the sketch, in words: a line for each kind of change, with the names of what it befell. */

typedef struct
{
  const SwTraced *traced;
  const SwSketch *before, *after;
} Story;

static gboolean
is_new (const Story *story, const SwStep *step)
{
  return sw_sketch_find_step (story->before, step->id) == NULL;
}

static guint
changes_of (const Story *story, const SwStep *step)
{
  const SwStep *before = sw_sketch_find_step (story->before, step->id);

  return before != NULL ? sw_traced_changes (before, step) : 0;
}

static gboolean
is_moved (const Story *story, const SwStep *step)
{
  return (changes_of (story, step) & SW_TRACED_MOVED) != 0;
}

static gboolean
is_resized (const Story *story, const SwStep *step)
{
  return (changes_of (story, step) & SW_TRACED_RESIZED) != 0;
}

static gboolean
is_turned (const Story *story, const SwStep *step)
{
  return (changes_of (story, step) & SW_TRACED_TURNED) != 0;
}

static gboolean
is_of_another_dye (const Story *story, const SwStep *step)
{
  return (changes_of (story, step) & SW_TRACED_REDYED) != 0;
}

static gboolean
is_not_drawn (const Story *story, const SwStep *step)
{
  for (guint i = 0; i < story->traced->pours->len; i++)
    if (g_array_index (story->traced->pours, SwTracedPour, i).pour->id == step->id)
      return FALSE;
  return !is_new (story, step);
}

static const struct
{
  gboolean (*befell) (const Story *story, const SwStep *step);
  const char *line;
} changes[] = {
  /* Translators: what came of a traced drawing; %s: numbers and names of pours: "9. Band of Teal, 10. Lamps" */
  { is_new, N_ ("New: %s") },
  /* Translators: %s: numbers and names of pours */
  { is_moved, N_ ("Moved: %s") },
  /* Translators: %s: numbers and names of pours */
  { is_resized, N_ ("Another size: %s") },
  /* Translators: of the angle; %s: numbers and names of pours */
  { is_turned, N_ ("Turned: %s") },
  /* Translators: %s: numbers and names of pours */
  { is_of_another_dye, N_ ("Of another dye: %s") },
  /* Translators: %s: numbers and names of pours that the colourway has and the drawing has not; they stay */
  { is_not_drawn, N_ ("Not in the drawing, kept as before: %s") },
};

/* The first @most names, and how many more there are. */
static char *
list_of (const GPtrArray *names, guint most)
{
  GString *list = g_string_new (NULL);
  const guint shown = MIN (names->len, most);

  for (guint i = 0; i < shown; i++)
    g_string_append_printf (list, "%s%s", i > 0 ? ", " : "", (const char *) names->pdata[i]);
  if (shown < names->len)
    {
      g_autofree char *first = g_string_free (list, FALSE);
      const guint rest = names->len - shown;

      /* Translators: the names of some things, and how many more of them there are */
      return g_strdup_printf (ngettext ("%s and %u more", "%s and %u more", rest), first, rest);
    }
  return g_string_free (list, FALSE);
}

static void
tell (GPtrArray *lines, const char *format, const GPtrArray *names, guint most)
{
  g_autofree char *list = NULL;
  GString *line;

  if (names->len == 0)
    return;
  list = list_of (names, most);
  line = g_string_new (_ (format));
  g_string_replace (line, "%s", list, 1);
  g_ptr_array_add (lines, g_string_free (line, FALSE));
}

static void
tell_pours (GPtrArray *lines, const Story *story, gsize change, guint most)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < story->after->steps->len; i++)
    {
      const SwStep *step = story->after->steps->pdata[i];
      g_autofree char *title = NULL;

      if (!sw_step_is_pour (step) || !changes[change].befell (story, step))
        continue;
      title = sw_step_title (story->after, step);
      /* Translators: number and name of a pour, as a shape's title: "2. Canal" */
      g_ptr_array_add (names, g_strdup_printf (_ ("%u. %s"), sw_pan_pour_number (story->after, step->id), title));
    }
  tell (lines, changes[change].line, names, most);
}

static void
tell_dyes (GPtrArray *lines, const SwTraced *traced, guint most)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  for (guint i = 0; i < traced->dyes->len; i++)
    g_ptr_array_add (names, (gpointer) sw_dye_title (traced->dyes->pdata[i]));
  /* Translators: what came of a traced drawing; %s: names of dyes */
  tell (lines, N_ ("New dyes: %s"), names, most);
}

GPtrArray *
sw_traced_words (const SwTraced *traced, const SwSketch *before, const SwSketch *after, guint most)
{
  const Story story = { traced, before, after };
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);

  for (gsize i = 0; i < G_N_ELEMENTS (changes); i++)
    tell_pours (lines, &story, i, most);
  tell_dyes (lines, traced, most);
  if (traced->n_left_out > 0)
    /* Translators: shapes of a drawing that are no pours */
    g_ptr_array_add (lines, g_strdup_printf (ngettext ("%u shape left out", "%u shapes left out", traced->n_left_out), traced->n_left_out));
  if (lines->len == 0)
    /* Translators: what came of a traced drawing: it is as the colourway was */
    g_ptr_array_add (lines, g_strdup (_ ("Nothing has changed")));
  return lines;
}
