/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-step-title.h"

#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>

const char *
sw_dye_name_title (const char *name)
{
  /* Translators: stands for a dye that the dyer has not named */
  return name == NULL || *name == '\0' ? _ ("a dye without a name") : name;
}

const char *
sw_dye_title (const SwDye *dye)
{
  return sw_dye_name_title (dye != NULL ? dye->name : NULL);
}

char *
sw_step_title_of (int kind, const char *name, const char *dye_name)
{
  const char *dye = sw_dye_name_title (dye_name);

  if (name != NULL && *name != '\0')
    return g_strdup (name);
  switch (kind)
    {
    case SW_STEP_BAND:
      /* Translators: a band of colour across the skein; %s is a dye's name */
      return g_strdup_printf (_ ("Band of %s"), dye);
    case SW_STEP_SPLOTCH:
      /* Translators: %s is a dye's name */
      return g_strdup_printf (_ ("Splotch of %s"), dye);
    case SW_STEP_SPECKLE:
      /* Translators: %s is a dye's name */
      return g_strdup_printf (_ ("Speckles of %s"), dye);
    default:
      return g_strdup (kind >= 0 && kind < SW_N_STEP_KINDS ? sw_step_kind_label ((SwStepKind) kind) : "");
    }
}

char *
sw_step_title (const SwSketch *sketch, const SwStep *step)
{
  const SwDye *dye;

  g_return_val_if_fail (sketch != NULL && step != NULL, NULL);

  dye = sw_sketch_find_dye (sketch, step->dye);
  return sw_step_title_of ((int) step->kind, step->name, dye != NULL ? dye->name : NULL);
}
