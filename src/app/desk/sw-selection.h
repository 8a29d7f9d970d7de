/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"

G_BEGIN_DECLS

/* What a press in the pan does: pick up what is there, or pour. */
typedef enum
{
  SW_TOOL_SELECT,
  SW_TOOL_BAND,
  SW_TOOL_SPLOTCH,
  SW_TOOL_SPECKLE,
} SwTool;

#define SW_TYPE_TOOL (sw_tool_get_type ())
GType sw_tool_get_type (void);

/* What the tool pours; never asked of SW_TOOL_SELECT. */
SwStepKind sw_tool_kind (SwTool tool);

/**
 * SwSelection: what the dyer has in hand: the steps that are selected, the
 * tool, the dye pot to pour from, the face that is up. The canvas, the list of
 * steps, the dye pots and the properties all share one. It is not part of the
 * document: undo leaves it alone, but what is gone is not selected any more,
 * and another drawing begins with nothing selected and its first face up.
 *
 * Properties: "tool" (SwTool); "dye" (id of the pot to pour from; 0 only when
 * there is none: a pot that is gone gives way to the first); "second-face";
 * "snap" (TRUE at first); "lead" (read-only: id of the step that was selected
 * last, which is the one shown where only one can be; 0 if none).
 *
 * Signal "changed": other steps are selected than before. "lead" has already
 * followed.
 */
#define SW_TYPE_SELECTION (sw_selection_get_type ())
G_DECLARE_FINAL_TYPE (SwSelection, sw_selection, SW, SELECTION, GObject)

SwSelection *sw_selection_new (SwDocument *document) G_GNUC_WARN_UNUSED_RESULT;

SwDocument *sw_selection_get_document (SwSelection *self);

/**
 * sw_selection_get_steps:
 * @n: (out): how many
 * Returns: (array length=n) (transfer none): ids in the order in which they were selected; good until the selection changes
 */
const guint *sw_selection_get_steps (SwSelection *self, gsize *n);
gboolean sw_selection_contains (SwSelection *self, guint step);
guint sw_selection_get_lead (SwSelection *self);

/* Ids of no step of the document are left out. The last one becomes the lead. */
void sw_selection_set_steps (SwSelection *self, const guint *steps, gsize n);

/* Only this one; 0 deselects all. */
void sw_selection_set_step (SwSelection *self, guint step);

/* Adds it, or takes it out if it was selected. */
void sw_selection_toggle (SwSelection *self, guint step);

SwTool sw_selection_get_tool (SwSelection *self);
void sw_selection_set_tool (SwSelection *self, SwTool tool);
guint sw_selection_get_dye (SwSelection *self);
void sw_selection_set_dye (SwSelection *self, guint dye);
gboolean sw_selection_get_second_face (SwSelection *self);
void sw_selection_set_second_face (SwSelection *self, gboolean second_face);
gboolean sw_selection_get_snap (SwSelection *self);
void sw_selection_set_snap (SwSelection *self, gboolean snap);

G_END_DECLS
