/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-units.h"
#include "sheet/sw-step-title.h"

G_BEGIN_DECLS

/*
 * A step told in words: what the picture shows is also said, so that the list
 * of steps reads as a recipe, by eye and by screen reader.
 */

/**
 * sw_step_detail:
 * Returns: (transfer full): the amounts on one short line: "30 mL at 42 cm, 12 cm wide"; may be empty
 */
char *sw_step_detail (const SwSketch *sketch, const SwStep *step, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_step_place:
 * @step: a pour
 * Returns: (transfer full): where it lies, without its amount: "at 42 cm, 12 cm wide"
 */
char *sw_step_place (const SwSketch *sketch, const SwStep *step, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_step_sentence:
 * Returns: (transfer full): everything about the step, as a text that stands for the picture
 */
char *sw_step_sentence (const SwSketch *sketch, const SwStep *step, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_step_reading:
 * Returns: (transfer full): the row of the list read out, so that the list says all that the picture shows: the
 *   pour's number, its own name, its kind and dye, place, size and amount, and the face that it falls on
 */
char *sw_step_reading (const SwSketch *sketch, const SwStep *step, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_step_remark:
 * Returns: (transfer full) (nullable): of the last pour, if neither a rest nor a set comes after it, that no dye
 *   can strike there; NULL if there is nothing to say
 */
char *sw_step_remark (const SwSketch *sketch, const SwStep *step) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
