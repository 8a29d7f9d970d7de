/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Bands of every spectrum in the program: 380 to 730 nm by 10. */
#define SW_BANDS 36

/**
 * SwKind: what a member of a record holds.
 * @SW_KIND_NUMBER: a finite double within the member's limits
 * @SW_KIND_WHOLE: a whole number, kept as gint64
 * @SW_KIND_TEXT: UTF-8, at most the member's `max` bytes
 * @SW_KIND_CHOICE: an index into the member's `choices`
 * @SW_KIND_FLAG: yes or no
 * @SW_KIND_COLOUR: a #SwSample: how a person gave a colour
 * @SW_KIND_DYE: the id of a dye of the same sketch
 */
typedef enum
{
  SW_KIND_NUMBER,
  SW_KIND_WHOLE,
  SW_KIND_TEXT,
  SW_KIND_CHOICE,
  SW_KIND_FLAG,
  SW_KIND_COLOUR,
  SW_KIND_DYE,
} SwKind;

typedef enum
{
  SW_SAMPLE_SRGB,        /* numbers[0..2]: codes 0..255 */
  SW_SAMPLE_LAB,         /* numbers[0..2]: CIELAB, D65, 2 degree */
  SW_SAMPLE_REFLECTANCE, /* numbers[0..35]: 0..1 at 380..730 nm by 10 */
} SwSampleKind;

/**
 * SwSample: a colour as the dyer knows it. It keeps the form it was given in,
 * so that saving does not turn a measured spectrum into three numbers.
 */
typedef struct
{
  SwSampleKind kind;
  double numbers[SW_BANDS];
} SwSample;

/**
 * SwValue: one member's value, owned (text is copied).
 */
typedef struct
{
  SwKind kind;
  union
  {
    double number;
    gint64 whole; /* also the id of SW_KIND_DYE */
    int choice;
    gboolean flag;
    char *text;
    SwSample colour;
  } as;
} SwValue;

void sw_value_copy (const SwValue *value, SwValue *copy);
void sw_value_clear (SwValue *value);
gboolean sw_value_equal (const SwValue *a, const SwValue *b);
SwValue sw_value_number (double number);
SwValue sw_value_whole (gint64 whole);
SwValue sw_value_text (const char *text);
SwValue sw_value_choice (int choice);
SwValue sw_value_flag (gboolean flag);
SwValue sw_value_colour (const SwSample *sample);
SwValue sw_value_dye (guint id);

/**
 * sw_sample_numbers:
 * Returns: how many of a sample's numbers its kind uses: 3 or SW_BANDS
 */
gsize sw_sample_numbers (SwSampleKind kind);
gboolean sw_sample_equal (const SwSample *a, const SwSample *b);

G_END_DECLS
