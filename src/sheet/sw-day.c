/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-day.h"

#include "sheet/sw-sheet.h"

#include <glib/gi18n-lib.h>

static const struct
{
  const char *label;
  gboolean waits;
} deeds[SW_N_DEEDS] = {
  [SW_DEED_PRESOAK] = { N_ ("Soak the skeins"), TRUE },
  /* Translators: weigh the dye powders and dissolve them */
  [SW_DEED_STOCK] = { N_ ("Make up the stocks"), FALSE },
  [SW_DEED_FILL] = { N_ ("Water, acid and skeins into the pan"), FALSE },
  [SW_DEED_HEAT] = { N_ ("Heat the bath"), TRUE },
  [SW_DEED_POUR] = { N_ ("Pour"), FALSE },
  [SW_DEED_REST] = { N_ ("Rest"), TRUE },
  [SW_DEED_FLIP] = { N_ ("Turn the skeins over"), FALSE },
  [SW_DEED_ACID] = { N_ ("Add acid"), FALSE },
  [SW_DEED_WATER] = { N_ ("Add water"), FALSE },
  /* Translators: heat the bath until the dye is fixed */
  [SW_DEED_SET] = { N_ ("Heat to set"), TRUE },
  [SW_DEED_COOL] = { N_ ("Let cool"), TRUE },
  [SW_DEED_WASH] = { N_ ("Wash"), TRUE },
  [SW_DEED_RINSE] = { N_ ("Rinse"), TRUE },
  /* Translators: in a spin dryer */
  [SW_DEED_SPIN] = { N_ ("Spin"), TRUE },
  [SW_DEED_DRY] = { N_ ("Hang up to dry"), TRUE },
};

static const SwDeedKind deed_of_step[SW_N_STEP_KINDS] = {
  [SW_STEP_BAND] = SW_DEED_POUR,
  [SW_STEP_SPLOTCH] = SW_DEED_POUR,
  [SW_STEP_SPECKLE] = SW_DEED_POUR,
  [SW_STEP_REST] = SW_DEED_REST,
  [SW_STEP_FLIP] = SW_DEED_FLIP,
  [SW_STEP_ACID] = SW_DEED_ACID,
  [SW_STEP_WATER] = SW_DEED_WATER,
  [SW_STEP_SET] = SW_DEED_SET,
};

/* The day as it fills. */
typedef struct
{
  GArray *deeds; /* of SwDeed */
  double now_min;
} Day;

static void
add_deed (Day *day, SwDeed deed)
{
  deed.start_min = day->now_min;
  deed.waits = deeds[deed.kind].waits;
  day->now_min += deed.minutes;
  g_array_append_val (day->deeds, deed);
}

/* A deed whose minutes are a member of the sheet's settings; left out if it takes none. */
static void
add_setting (Day *day, SwDeedKind kind, double minutes, double temperature_c, const char *member)
{
  if (minutes > 0.0)
    add_deed (day, (SwDeed){ .kind = kind, .minutes = minutes, .times = 1, .temperature_c = temperature_c, .record = SW_RECORD_SHEET, .member = member });
}

static void
add_before (Day *day, const SwSketch *sketch)
{
  const SwSheetSettings *settings = &sketch->sheet;
  gboolean pours = FALSE;

  for (guint i = 0; i < sketch->steps->len; i++)
    pours |= sw_step_is_pour (sketch->steps->pdata[i]);

  add_setting (day, SW_DEED_PRESOAK, settings->presoak_min, settings->presoak_c, "presoak_min");
  if (pours) /* while the skeins soak */
    {
      const SwDeed stock = { .kind = SW_DEED_STOCK };

      g_array_append_val (day->deeds, stock);
    }
  add_deed (day, (SwDeed){ .kind = SW_DEED_FILL });
  add_setting (day, SW_DEED_HEAT, settings->heat_min, sketch->bath.temperature_c, "heat_min");
}

static void
add_steps (Day *day, const SwSketch *sketch, guint pans)
{
  guint pours = 0;

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];
      SwDeed deed = { .kind = deed_of_step[step->kind], .step = step->id };

      if (deed.kind == SW_DEED_POUR)
        {
          deed.pour = ++pours;
          deed.times = pans;
          deed.minutes = sketch->sheet.pour_min * pans;
          deed.record = SW_RECORD_SHEET;
          deed.member = "pour_min";
        }
      if (deeds[deed.kind].waits)
        {
          deed.times = 1;
          deed.minutes = step->minutes;
          deed.temperature_c = step->temperature_c;
          deed.record = SW_RECORD_STEP;
          deed.member = "minutes";
        }
      add_deed (day, deed);
    }
}

static void
add_after (Day *day, const SwSketch *sketch)
{
  const SwSheetSettings *settings = &sketch->sheet;

  add_setting (day, SW_DEED_COOL, settings->cool_min, 0.0, "cool_min");
  add_setting (day, SW_DEED_WASH, settings->wash_min, settings->wash_c, "wash_min");
  for (gint64 i = 0; i < settings->rinses; i++)
    add_setting (day, SW_DEED_RINSE, settings->rinse_min, settings->wash_c, "rinse_min");
  add_setting (day, SW_DEED_SPIN, settings->spin_min, 0.0, "spin_min");
  add_setting (day, SW_DEED_DRY, settings->dry_min, 0.0, "dry_min");
}

SwDeed *
sw_day_new (const SwSketch *sketch, gsize *n)
{
  g_autoptr (SwSheet) sheet = sw_sheet_new (sketch, NULL);
  Day day = { .deeds = g_array_new (FALSE, FALSE, sizeof (SwDeed)) };

  add_before (&day, sketch);
  add_steps (&day, sketch, (guint) sheet->pans);
  add_after (&day, sketch);
  return (SwDeed *) (gpointer) g_array_steal (day.deeds, n);
}

gboolean
sw_deed_is_in_pan (SwDeedKind kind)
{
  return kind >= SW_DEED_FILL && kind <= SW_DEED_COOL;
}

const char *
sw_deed_label (SwDeedKind kind)
{
  g_return_val_if_fail ((guint) kind < SW_N_DEEDS, NULL);

  return _ (deeds[kind].label);
}
