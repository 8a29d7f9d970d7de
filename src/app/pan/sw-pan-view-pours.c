/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-pan-view-private.h"

#include "draw/sw-pour-new.h"

#include <glib/gi18n-lib.h>

/* What is done to pours at once, without a drag: poured, copied, taken out, nudged, lined up. */

gboolean
sw_pan_view_has_dye (SwPanView *self)
{
  if (sw_selection_get_dye (self->selection) != 0)
    return TRUE;
  sw_pan_view_say (self, _ ("There is nothing to pour from yet. Add a dye pot first."));
  return FALSE;
}

guint
sw_pan_view_pour (SwPanView *self, const SwPourPlace *place)
{
  const SwSketch *sketch = sw_pan_view_sketch (self);
  const SwDye *dye = sw_sketch_find_dye (sketch, sw_selection_get_dye (self->selection));
  const SwPourSlot slot = sw_pour_slot (sketch, sw_selection_get_second_face (self->selection));
  g_autoptr (SwStep) step = NULL;
  SwEdit *edits[2];
  gsize n = 0;
  guint id;

  if (!sw_pan_view_has_dye (self))
    return 0;
  step = sw_pour_new (sketch, dye, place);
  id = step->id = sw_sketch_fresh_id (sketch);
  edits[n++] = sw_edit_insert_step (slot.index, step);
  if (slot.flip)
    {
      g_autoptr (SwStep) flip = sw_step_new (0, SW_STEP_FLIP);

      edits[n++] = sw_edit_insert_step (slot.index, flip);
    }
  if (!sw_pan_view_edit (self, sw_edit_group (edits, n), sw_deed_name (SW_DEED_POUR, place->kind, 1)))
    return 0;
  sw_selection_set_step (self->selection, id);
  return id;
}

guint
sw_pan_view_pour_at (SwPanView *self, SwStepKind kind, double x, double y)
{
  SwPourPlace place;
  double x_cm, y_cm;

  sw_pan_to_cm (&self->geometry, x, y, &x_cm, &y_cm);
  place = sw_pan_click (sw_pan_view_sketch (self), kind, x_cm, y_cm);
  return sw_pan_view_pour (self, &place);
}

static gboolean
is_in (const guint *ids, gsize n, guint id)
{
  for (gsize i = 0; i < n; i++)
    if (ids[i] == id)
      return TRUE;
  return FALSE;
}

static guint
next_free_id (const SwSketch *sketch, guint id)
{
  while (sw_sketch_find_step (sketch, id) != NULL || sw_sketch_find_dye (sketch, id) != NULL)
    id++;
  return id;
}

gboolean
sw_pan_view_duplicate (SwPanView *self, const guint *steps, gsize n, double dx, double dy)
{
  const SwSketch *sketch = sw_pan_view_sketch (self);
  g_autofree SwEdit **edits = g_new (SwEdit *, n + 1);
  g_autofree guint *copies = g_new (guint, n + 1);
  guint id = sw_sketch_fresh_id (sketch);
  SwStepKind kind = SW_STEP_BAND;
  gsize made = 0;

  for (guint i = 0; i < sketch->steps->len && made < n; i++)
    {
      g_autoptr (SwStep) copy = NULL;
      SwPourPlace place;

      if (!is_in (steps, n, ((const SwStep *) sketch->steps->pdata[i])->id))
        continue;
      copy = sw_step_copy (sketch->steps->pdata[i]);
      kind = copy->kind;
      place = sw_pour_place (copy);
      sw_pour_place_move (&place, dx, dy);
      if (sw_step_is_pour (copy))
        {
          sw_pour_place_tidy (&place);
          sw_pour_place_put (&place, copy);
        }
      copy->id = copies[made] = id = next_free_id (sketch, id);
      id++;
      edits[made] = sw_edit_insert_step ((int) i + 1 + (int) made, copy);
      made++;
    }
  if (made == 0 || !sw_pan_view_edit (self, sw_edit_group (edits, made), sw_deed_name (SW_DEED_DUPLICATE, kind, made)))
    return FALSE;
  sw_selection_set_steps (self->selection, copies, made);
  return TRUE;
}

void
sw_pan_view_delete (SwPanView *self)
{
  const SwSketch *sketch = sw_pan_view_sketch (self);
  g_autofree SwEdit **edits = NULL;
  const guint *steps;
  SwStepKind kind;
  gsize n;

  steps = sw_selection_get_steps (self->selection, &n);
  if (n == 0)
    return;
  kind = sw_sketch_find_step (sketch, steps[0])->kind;
  edits = g_new (SwEdit *, n);
  for (gsize i = 0; i < n; i++)
    edits[i] = sw_edit_remove (SW_RECORD_STEP, steps[i]);
  sw_pan_view_edit (self, sw_edit_group (edits, n), sw_deed_name (SW_DEED_DELETE, kind, n));
}

/* Puts each of these pours at its place. */
static SwEdit *
edit_places (const SwSketch *sketch, const GArray *pours, const SwPourPlace *places)
{
  g_autofree SwEdit **edits = g_new (SwEdit *, pours->len + 1);
  gsize n = 0;

  for (guint i = 0; i < pours->len; i++)
    {
      SwEdit *edit = sw_pour_place_edit (sw_sketch_find_step (sketch, g_array_index (pours, guint, i)), &places[i]);

      if (edit != NULL)
        edits[n++] = edit;
    }
  return n > 0 ? sw_edit_group (edits, n) : NULL;
}

static SwPourPlace *
places_of (const SwSketch *sketch, const GArray *pours)
{
  SwPourPlace *places = g_new (SwPourPlace, pours->len + 1);

  for (guint i = 0; i < pours->len; i++)
    places[i] = sw_pour_place (sw_sketch_find_step (sketch, g_array_index (pours, guint, i)));
  return places;
}

void
sw_pan_view_nudge (SwPanView *self, double dx, double dy)
{
  const SwSketch *sketch = sw_pan_view_sketch (self);
  g_autoptr (GArray) pours = sw_pan_view_selected_pours (self);
  g_autofree SwPourPlace *places = places_of (sketch, pours);
  g_autoptr (GError) error = NULL;
  SwEdit *edit;

  for (guint i = 0; i < pours->len; i++)
    {
      sw_pour_place_move (&places[i], dx, dy);
      sw_pour_place_tidy (&places[i]);
    }
  edit = edit_places (sketch, pours, places);
  if (edit != NULL && !sw_document_edit_series (sw_pan_view_document (self), edit, sw_deed_name (SW_DEED_MOVE, places[0].kind, pours->len), "nudge", &error))
    sw_pan_view_say (self, error->message);
}

void
sw_pan_view_align (SwPanView *self, SwAlign align)
{
  const SwSketch *sketch = sw_pan_view_sketch (self);
  g_autoptr (GArray) pours = sw_pan_view_selected_pours (self);
  g_autofree SwPourPlace *places = places_of (sketch, pours);

  if (pours->len < sw_align_least (align))
    return;
  sw_pan_align (sketch, align, places, pours->len);
  sw_pan_view_edit (self, edit_places (sketch, pours, places), sw_align_label (align));
}
