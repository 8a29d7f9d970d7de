/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "colour/sw-spectrum.h"

G_BEGIN_DECLS

/* A colour in the forms in which a dyer gives it: a code from the screen, Lab from an instrument, a spectrum in a file. */

SwXyz sw_sample_xyz (const SwSample *sample);
SwLab sw_sample_lab (const SwSample *sample);

/* The colour it has on the screen, gamut-mapped where it must be; each 0 .. 1. */
SwSrgb sw_sample_srgb (const SwSample *sample);

/* Returns: (transfer full): "#b2305c" */
char *sw_sample_code (const SwSample *sample) G_GNUC_WARN_UNUSED_RESULT;

SwSample sw_sample_from_srgb (SwSrgb srgb);

/**
 * sw_sample_from_code:
 * @text: three or six hexadecimal digits, with or without #
 * @error: SW_COLOUR_ERROR with a sentence
 */
gboolean sw_sample_from_code (const char *text, SwSample *sample, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_sample_from_lab:
 * @error: SW_COLOUR_ERROR: no dyed yarn can have that colour
 */
gboolean sw_sample_from_lab (SwLab lab, SwSample *sample, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_sample_from_spectrum:
 * @text: see sw_spectrum_from_text()
 * @error: SW_COLOUR_ERROR: names the line
 */
gboolean sw_sample_from_spectrum (const char *text, SwSample *sample, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: how the colour was given, for people: "From a measured spectrum" */
const char *sw_sample_origin (const SwSample *sample);

G_END_DECLS
