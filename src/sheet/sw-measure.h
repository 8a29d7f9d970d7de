/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Kitchen and household measures, and rounding to what a scale or a measure
 * shows. US measures by NIST Handbook 44, appendix C; metric spoons of 15 and
 * 5 mL by convention.
 */

#define SW_ML_US_CUP 236.5882365
#define SW_ML_US_TABLESPOON 14.78676478125
#define SW_ML_US_TEASPOON 4.92892159375
#define SW_ML_US_FLUID_OUNCE 29.5735295625
#define SW_ML_US_QUART 946.352946
#define SW_ML_METRIC_CUP 250.0
#define SW_ML_METRIC_TABLESPOON 15.0
#define SW_ML_METRIC_TEASPOON 5.0
#define SW_G_OUNCE 28.349523125

typedef enum
{
  SW_MEASURE_METRIC,
  SW_MEASURE_US,
} SwMeasureSystem;

/* To the nearest multiple of @step, half up; 0 keeps @value. */
double sw_round_to (double value, double step);

/* To the next multiple of @step that is not below @value, but for rounding dust; 0 keeps @value. */
double sw_round_up_to (double value, double step);

/**
 * sw_spoons_text:
 * Returns: (transfer full): the nearest kitchen measure, translated: "2 tbsp + 1 ½ tsp", "1 cup + 3 tbsp", "¼ tsp", "a few drops"
 */
char *sw_spoons_text (double ml, SwMeasureSystem system) G_GNUC_WARN_UNUSED_RESULT;

/* What the measure of sw_spoons_text() really holds, mL, so that its error can be told. */
double sw_spoons_ml (double ml, SwMeasureSystem system);

char *sw_volume_text (double ml, SwMeasureSystem system) G_GNUC_WARN_UNUSED_RESULT; /* "35 mL", "1.2 L"; US: "37.2 fl oz" from a quart up, the bath; less stays in mL, as syringes and jugs have it, so that no column mixes the two */
char *sw_mass_text (double g, SwMeasureSystem system) G_GNUC_WARN_UNUSED_RESULT;    /* fibre and acid: "115 g"; US: ounces from 10 g up */
char *sw_dye_text (double g) G_GNUC_WARN_UNUSED_RESULT;                             /* dye stays in grams in both systems: "0.35 g" */
char *sw_length_text (double cm, SwMeasureSystem system) G_GNUC_WARN_UNUSED_RESULT;
char *sw_temperature_text (double c, SwMeasureSystem system) G_GNUC_WARN_UNUSED_RESULT;
char *sw_minutes_text (double minutes) G_GNUC_WARN_UNUSED_RESULT; /* "10 min", "1 h 30 min", "24 h" */

G_END_DECLS
