/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-sheet-remarks.h"

#include "sheet/sw-day.h"

#include <glib/gi18n-lib.h>

/* The usual cautions, brief. docs/safety.md names their sources; data sheets and local rules have the last word. */

#define BIT(caution) (1u << (caution))

static const struct
{
  const char *title;
  const char *text;
} cautions[SW_N_CAUTIONS] = {
  [SW_CAUTION_DUST] = {
      /* Translators: dry dye powder in the air */
      N_ ("Dust"),
      N_ ("Weigh dry dye in still air with a respirator rated for dust, wet it before moving it, close the jar, wipe up wet."),
  },
  [SW_CAUTION_SKIN] = {
      /* Translators: protective gloves, goggles */
      N_ ("Gloves and eyes"),
      N_ ("Wear waterproof gloves, an apron and eye protection with dye and acid."),
  },
  [SW_CAUTION_HOT_ACID] = {
      N_ ("Hot acid liquor and steam"),
      N_ ("The bath scalds in seconds. Add acid to water, never water to strong acid; lift lids away from you. Never bring bleach near acid: it gives off chlorine."),
  },
  [SW_CAUTION_AIR] = {
      /* Translators: ventilation */
      N_ ("Fresh air"),
      N_ ("Hot vinegar and steam need a hood or an open window; a lid helps."),
  },
  [SW_CAUTION_FOOD] = {
      N_ ("Nothing back to the kitchen"),
      N_ ("Pots, spoons and measures used for dye never go back to food. Do not eat, drink or smoke where you dye."),
  },
  [SW_CAUTION_CHILDREN] = {
      N_ ("Children and animals"),
      N_ ("Keep children and animals out of the room, and dyes and acids out of their reach."),
  },
  [SW_CAUTION_WASTE] = {
      N_ ("Spent bath and waste"),
      N_ ("Let the bath cool; get rid of it, of rinse water and of old dye by the rules of your sewer or septic tank."),
  },
  [SW_CAUTION_METAL] = {
      N_ ("Metal-complex dye"),
      N_ ("It holds chromium or cobalt: ask your waste authority before any of it goes down a drain."),
  },
  [SW_CAUTION_LAST_WORD] = {
      N_ ("The last word"),
      N_ ("The safety data sheets of your dyes and acids, local rules and a doctor's or an expert's advice go before this sheet. Ask a doctor first if you are pregnant, nursing or asthmatic."),
  },
};

static const guint by_deed[SW_N_DEEDS] = {
  [SW_DEED_STOCK] = BIT (SW_CAUTION_DUST) | BIT (SW_CAUTION_SKIN) | BIT (SW_CAUTION_CHILDREN) | BIT (SW_CAUTION_FOOD),
  [SW_DEED_FILL] = BIT (SW_CAUTION_SKIN) | BIT (SW_CAUTION_HOT_ACID),
  [SW_DEED_HEAT] = BIT (SW_CAUTION_HOT_ACID) | BIT (SW_CAUTION_AIR) | BIT (SW_CAUTION_CHILDREN),
  [SW_DEED_POUR] = BIT (SW_CAUTION_SKIN) | BIT (SW_CAUTION_HOT_ACID),
  [SW_DEED_REST] = BIT (SW_CAUTION_AIR),
  [SW_DEED_FLIP] = BIT (SW_CAUTION_SKIN) | BIT (SW_CAUTION_HOT_ACID),
  [SW_DEED_ACID] = BIT (SW_CAUTION_SKIN) | BIT (SW_CAUTION_HOT_ACID) | BIT (SW_CAUTION_AIR),
  [SW_DEED_WATER] = BIT (SW_CAUTION_HOT_ACID),
  [SW_DEED_SET] = BIT (SW_CAUTION_HOT_ACID) | BIT (SW_CAUTION_AIR) | BIT (SW_CAUTION_CHILDREN),
  [SW_DEED_COOL] = BIT (SW_CAUTION_HOT_ACID) | BIT (SW_CAUTION_CHILDREN),
  [SW_DEED_WASH] = BIT (SW_CAUTION_SKIN) | BIT (SW_CAUTION_WASTE),
  [SW_DEED_RINSE] = BIT (SW_CAUTION_SKIN) | BIT (SW_CAUTION_WASTE),
};

static gboolean
is_metal_complex (SwDyeClass dye_class)
{
  return dye_class == SW_DYE_CLASS_METAL_COMPLEX_1_1 || dye_class == SW_DYE_CLASS_METAL_COMPLEX_2_1;
}

/* Only dyes that are poured count. */
static gboolean
uses_metal_complex (const SwSketch *sketch)
{
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];
      const SwDye *dye = sw_step_is_pour (step) ? sw_sketch_find_dye (sketch, step->dye) : NULL;

      if (dye != NULL && is_metal_complex (dye->dye_class))
        return TRUE;
    }
  return FALSE;
}

/* Whether the pour with that id is of dry grains; of 0: whether any is. */
static gboolean
has_dry_grains (const SwSketch *sketch, guint id)
{
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (step->kind == SW_STEP_SPECKLE && step->dry && (id == 0 || step->id == id))
        return TRUE;
    }
  return FALSE;
}

guint
sw_cautions_for_deed (const SwSketch *sketch, int deed_kind, guint step)
{
  guint bits;

  g_return_val_if_fail (sketch != NULL && deed_kind >= 0 && deed_kind < SW_N_DEEDS, 0);

  bits = by_deed[deed_kind];
  if (deed_kind == SW_DEED_POUR && has_dry_grains (sketch, step))
    bits |= BIT (SW_CAUTION_DUST);
  if ((bits & BIT (SW_CAUTION_WASTE)) != 0 && uses_metal_complex (sketch))
    bits |= BIT (SW_CAUTION_METAL);
  return bits;
}

guint
sw_cautions_for_sketch (const SwSketch *sketch)
{
  guint bits = BIT (SW_CAUTION_LAST_WORD);

  for (int kind = 0; kind < SW_N_DEEDS; kind++)
    bits |= sw_cautions_for_deed (sketch, kind, 0);
  return bits;
}

const char *
sw_caution_text (SwCaution caution)
{
  g_return_val_if_fail ((guint) caution < SW_N_CAUTIONS, NULL);

  return _ (cautions[caution].text);
}

const char *
sw_caution_title (SwCaution caution)
{
  g_return_val_if_fail ((guint) caution < SW_N_CAUTIONS, NULL);

  return _ (cautions[caution].title);
}
