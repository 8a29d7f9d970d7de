/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-step-title.h"

#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>

const char *
sw_dye_title (const SwDye *dye)
{
  /* Translators: stands for a dye that the dyer has not named */
  return dye == NULL || dye->name == NULL || *dye->name == '\0' ? _ ("a dye without a name") : dye->name;
}

char *
sw_step_title (const SwSketch *sketch, const SwStep *step)
{
  const char *dye;

  g_return_val_if_fail (sketch != NULL && step != NULL, NULL);

  if (step->name != NULL && *step->name != '\0')
    return g_strdup (step->name);
  if (!sw_step_is_pour (step))
    return g_strdup (sw_step_kind_label (step->kind));

  dye = sw_dye_title (sw_sketch_find_dye (sketch, step->dye));
  switch (step->kind)
    {
    case SW_STEP_SPLOTCH:
      /* Translators: %s is a dye's name */
      return g_strdup_printf (_ ("Splotch of %s"), dye);
    case SW_STEP_SPECKLE:
      /* Translators: %s is a dye's name */
      return g_strdup_printf (_ ("Speckles of %s"), dye);
    default:
      /* Translators: a band of colour across the skein; %s is a dye's name */
      return g_strdup_printf (_ ("Band of %s"), dye);
    }
}
