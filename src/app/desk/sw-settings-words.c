/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-settings-words.h"

#include "draw/sw-pan-geometry.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const char *
choice_label (SwRecord record, const char *member, int choice)
{
  return _ (sw_record_find_member (record, member)->choice_labels[choice]);
}

char *
sw_yarn_summary (const SwSketch *sketch, SwSystem system)
{
  g_autofree char *mass = sw_units_format (SW_QUANTITY_MASS, sketch->yarn.mass_g, system);
  g_autofree char *put_up = sw_units_format (SW_QUANTITY_LENGTH, sketch->yarn.metres_per_100_g * 100, system);

  /* Translators: fibre, mass of a skein, length of yarn: "Superwash wool, 100 g, 400 m per 100 g" */
  return g_strdup_printf (_ ("%1$s, %2$s, %3$s per 100\u00a0g"), choice_label (SW_RECORD_YARN, "fibre", (int) sketch->yarn.fibre), mass, put_up);
}

char *
sw_reel_summary (const SwSketch *sketch, SwSystem system)
{
  g_autofree char *round = sw_units_format (SW_QUANTITY_LENGTH, sketch->reel.circumference_cm, system);

  if (sketch->reel.winding == SW_WINDING_BY_HAND)
    /* Translators: of the reel; %s is its circumference */
    return g_strdup_printf (_ ("%s round, wound by hand"), round);
  /* Translators: of the reel; %s is its circumference. The guide sweeps to and fro */
  return g_strdup_printf (_ ("%s round, wound with a guide"), round);
}

char *
sw_lay_summary (const SwSketch *sketch, SwSystem system)
{
  g_autofree char *length = sw_units_format (SW_QUANTITY_LENGTH, sw_sketch_lay_length (sketch), system);
  g_autofree char *width = sw_units_format (SW_QUANTITY_LENGTH, sw_sketch_lay_width (sketch), system);
  gulong skeins = (gulong) sketch->lay.skeins;
  int runs = (int) sketch->lay.runs;

  if (runs == 1)
    /* Translators: how the skeins lie in the pan: "1 skein, not folded, 150 cm by 8 cm" */
    return g_strdup_printf (ngettext ("%1$d skein, not folded, %2$s by %3$s", "%1$d skeins, not folded, %2$s by %3$s", skeins), (int) skeins, length, width);
  /* Translators: how the skeins lie in the pan; a run is one of the lengths that a skein is folded into: "1 skein in 2 runs, 75 cm by 8 cm" */
  return g_strdup_printf (ngettext ("%1$d skein in %2$d runs, %3$s by %4$s", "%1$d skeins in %2$d runs, %3$s by %4$s", skeins), (int) skeins, runs, length, width);
}

char *
sw_bath_summary (const SwSketch *sketch, const SwForecast *forecast, SwSystem system)
{
  g_autofree char *water = sw_units_format (SW_QUANTITY_VOLUME, sketch->bath.water_ml, system);
  g_autofree char *temperature = sw_units_format (SW_QUANTITY_TEMPERATURE, sketch->bath.temperature_c, system);
  g_autofree char *ph = NULL;

  if (forecast == NULL)
    /* Translators: of the bath: water and temperature: "1.4 L, 90 °C" */
    return g_strdup_printf (_ ("%1$s, %2$s"), water, temperature);
  ph = sw_units_format (SW_QUANTITY_NONE, round (forecast->states[0].ph * 10) / 10, system);
  /* Translators: of the bath: water, pH and temperature: "1.4 L, pH 3.6, 90 °C" */
  return g_strdup_printf (_ ("%1$s, pH\u00a0%2$s, %3$s"), water, ph, temperature);
}

/* The furthest that a band reaches from its middle along x, over the skein's width. */
static double
band_reach (const SwSketch *sketch, const SwStep *step)
{
  double across = sw_sketch_lay_width (sketch);
  double near = fabs (sw_pan_band_shift (step, 0)), far = fabs (sw_pan_band_shift (step, across));

  return step->width_cm / 2 + MAX (near, far);
}

/* Half of what a pour covers along x and along y. */
static void
half_extent (const SwSketch *sketch, const SwStep *step, double *x, double *y)
{
  double a = step->width_cm / 2, b = step->length_cm / 2;
  double c = fabs (cos (step->angle_deg * G_PI / 180)), s = fabs (sin (step->angle_deg * G_PI / 180));

  switch (step->kind)
    {
    case SW_STEP_BAND:
      *x = band_reach (sketch, step);
      *y = step->length_cm > 0 ? b : G_MAXDOUBLE; /* right across, wherever its middle is */
      break;
    case SW_STEP_SPLOTCH:
      *x = hypot (a * c, b * s);
      *y = hypot (a * s, b * c);
      break;
    default:
      *x = a * c + b * s;
      *y = a * s + b * c;
    }
}

static gboolean
is_outside (const SwSketch *sketch, const SwStep *step)
{
  double x, y;

  half_extent (sketch, step, &x, &y);
  return step->x_cm + x <= 0 || step->x_cm - x >= sw_sketch_lay_length (sketch) ||
         step->y_cm + y <= 0 || step->y_cm - y >= sw_sketch_lay_width (sketch);
}

GArray *
sw_pours_outside (const SwSketch *sketch)
{
  GArray *pours = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (sw_step_is_pour (step) && is_outside (sketch, step))
        g_array_append_val (pours, step->id);
    }
  return pours;
}

char *
sw_pours_outside_sentence (const SwSketch *sketch)
{
  g_autoptr (GArray) pours = sw_pours_outside (sketch);

  if (pours->len == 0)
    return NULL;
  /* Translators: %u pours of dye were drawn where no yarn lies any more */
  return g_strdup_printf (ngettext ("%u pour lies beside the skein: its dye goes into the whole bath.", "%u pours lie beside the skein: their dye goes into the whole bath.", pours->len), pours->len);
}
