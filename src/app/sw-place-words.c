/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sw-place-words.h"

#include "app/sw-step-words.h"

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

static char *
name_of (const SwSketch *sketch, const char *place)
{
  guint index;

  if (sscanf (place, "dyes[%u]", &index) == 1 && index < sketch->dyes->len)
    {
      const SwDye *dye = sketch->dyes->pdata[index];

      if (dye->name != NULL && *dye->name != '\0')
        return g_strdup (dye->name);
      /* Translators: %u is the dye's place in the list, from 1 */
      return g_strdup_printf (_ ("Dye %u"), index + 1);
    }
  if (sscanf (place, "steps[%u]", &index) == 1 && index < sketch->steps->len)
    return sw_step_title (sketch, sketch->steps->pdata[index]);
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
  return g_strdup_printf (_ ("“%s”: %s"), name, sentence);
}
