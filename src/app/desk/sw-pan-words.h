/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-pan-handles.h"
#include "app/desk/sw-units.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/*
 * What the canvas says: names of edits, what a handle does, the measure at
 * the hand, and the whole pan as a text for those who do not see it.
 */

typedef enum
{
  SW_DEED_POUR,
  SW_DEED_MOVE,
  SW_DEED_STRETCH,
  SW_DEED_TURN,
  SW_DEED_DUPLICATE,
  SW_DEED_DELETE,
  SW_N_DEEDS,
} SwDeed;

/**
 * sw_deed_name:
 * @kind: of the step, if it is one
 * @n: how many steps
 * Returns: the name of the edit, translated: "Move Band"
 */
const char *sw_deed_name (SwDeed deed, SwStepKind kind, gsize n);

/* What dragging it does, and what the keys held meanwhile do; translated. */
const char *sw_handle_tip (SwHandle handle, const SwPourPlace *place);

/**
 * sw_pan_measure:
 * @held: what is in hand; SW_HANDLE_NONE for a pour that is being drawn
 * Returns: (transfer full): what changes, short: "12.5 cm wide"
 */
char *sw_pan_measure (SwHandle held, const SwPourPlace *place, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_pan_pour_tip:
 * Returns: (transfer full): which pour it is and what can be done with it
 */
char *sw_pan_pour_tip (const SwSketch *sketch, const SwStep *step, gboolean second_face, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_pan_description:
 * @selected: (array length=n): ids
 * Returns: (transfer full): how many pours there are, which face is up, and what is selected
 */
char *sw_pan_description (const SwSketch *sketch, gboolean second_face, const guint *selected, gsize n, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_pan_hint:
 * @drawing: a tool that pours is in hand
 * Returns: (nullable): what to do first in an empty pan, translated; NULL if there is something in it
 */
const char *sw_pan_hint (const SwSketch *sketch, gboolean drawing);

/* Appends the ways in which pours line up, as actions of the group "pan". */
void sw_pan_fill_align_menu (GMenu *menu);

G_END_DECLS
