/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-place-words.h"

#include "app/desk/sw-step-words.h"
#include "draw/sw-pan-geometry.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

/* A place has neither blanks nor quotes; a sentence's own colon comes later. */
static const char *
after_place (const char *message)
{
  gsize length = strspn (message, "abcdefghijklmnopqrstuvwxyz0123456789_.[]");

  return length > 0 && g_str_has_prefix (message + length, ": ") ? message + length + 2 : message;
}

/* By its place in the list, and by the number that it bears in the picture. */
static char *
name_of_step (const SwSketch *sketch, guint index)
{
  const SwStep *step = sketch->steps->pdata[index];
  g_autofree char *title = sw_step_title (sketch, step);

  if (sw_step_is_pour (step))
    /* Translators: a step's place in the list, its number as a pour in the picture, its name: step 6 (pour 4, “Canal”) */
    return g_strdup_printf (_ ("Step %1$u (pour %2$u, “%3$s”)"), index + 1, sw_pan_pour_number (sketch, step->id), title);
  /* Translators: a step's place in the list, its name: step 7 (“Rest”) */
  return g_strdup_printf (_ ("Step %1$u (“%2$s”)"), index + 1, title);
}

static char *
name_of (const SwSketch *sketch, const char *place)
{
  guint index;

  if (sscanf (place, "dyes[%u]", &index) == 1 && index < sketch->dyes->len)
    {
      const SwDye *dye = sketch->dyes->pdata[index];

      if (dye->name != NULL && *dye->name != '\0')
        /* Translators: the name of a dye, at the beginning of a sentence */
        return g_strdup_printf (_ ("“%s”"), dye->name);
      /* Translators: %u is the dye's place in the list, from 1 */
      return g_strdup_printf (_ ("Dye %u"), index + 1);
    }
  if (sscanf (place, "steps[%u]", &index) == 1 && index < sketch->steps->len)
    return name_of_step (sketch, index);
  return NULL;
}

char *
sw_place_in_words (const SwSketch *sketch, const char *message)
{
  const char *sentence;
  g_autofree char *name = NULL;

  g_return_val_if_fail (sketch != NULL && message != NULL, NULL);

  sentence = after_place (message);
  if (sentence != message)
    name = name_of (sketch, message);
  if (name == NULL)
    return g_strdup (sentence);
  /* Translators: the first %s is a dye or a step, the second a sentence about it */
  return g_strdup_printf (_ ("%s: %s"), name, sentence);
}
