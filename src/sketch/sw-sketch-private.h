/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-member-private.h"

G_BEGIN_DECLS

/* What validation and edits both ask, beyond each member's own limits. Sentences carry no path. */

/**
 * sw_step_check_members: every member that the step's kind uses
 * @member: (out): name of the first bad one
 */
gboolean sw_step_check_members (const SwStep *step, const char **member, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean sw_dye_check_members (const SwDye *dye, const char **member, GError **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean sw_batch_check_members (const SwBatch *batch, const char **member, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_step_check_sense: what a step must satisfy as a whole: its dye is there, its outline encloses something
 * @member: (out): name of the one at fault
 */
gboolean sw_step_check_sense (const SwSketch *sketch, const SwStep *step, const char **member, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_sketch_check_bounds: what several members must satisfy together, so that the work is bounded
 * @path: (out) (transfer full): of the member to be named, when FALSE is returned
 */
gboolean sw_sketch_check_bounds (const SwSketch *sketch, char **path, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A copy in which the members that the step's kind does not use are at their defaults. */
SwStep *sw_step_copy_used (const SwStep *step) G_GNUC_WARN_UNUSED_RESULT;

gboolean sw_sketch_has_id (const SwSketch *sketch, guint id);

G_END_DECLS
