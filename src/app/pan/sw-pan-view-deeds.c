/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-pan-view-private.h"

#include "draw/sw-pour-new.h"

#include <math.h>

/* What a press does once it moves: pours are moved, stretched, turned, drawn; a marquee; the view. A drag is one step to undo. */

#define SNAP_REACH_PX 7.0
#define LARGEST_STEP_PX 4.0

static double
ruler_mark_cm (SwPanView *self)
{
  return self->inches ? 2.54 / 2 : 1;
}

/* Ctrl at the press makes it another deed (a copy, about the centre); later it lets go of what would catch, as Alt does. */
static gboolean
catches (SwPanView *self)
{
  const SwHand *hand = &self->hand;
  const gboolean let_go = (hand->now & GDK_ALT_MASK) || ((hand->now & GDK_CONTROL_MASK) && !(hand->at_press & GDK_CONTROL_MASK));

  return sw_selection_get_snap (self->selection) && !let_go;
}

static SwDragFlags
drag_flags (SwPanView *self)
{
  const SwHand *hand = &self->hand;
  SwDragFlags flags = 0;

  if (hand->now & GDK_SHIFT_MASK)
    flags |= SW_DRAG_STEADY;
  if (hand->at_press & GDK_CONTROL_MASK)
    flags |= SW_DRAG_CENTRED;
  if (catches (self))
    flags |= SW_DRAG_DETENT;
  return flags;
}

/* Moves @by so that one of the points, once moved, lies on a line; remembers the line for the guide. */
static void catch (SwPanView *self, SwAxis axis, const double *points, gsize n, double *by)
{
  SwHand *hand = &self->hand;
  double moved[3];

  g_assert (n <= G_N_ELEMENTS (moved));

  hand->hits[axis] = (SwSnapHit){ SW_SNAP_NONE, 0, 0 };
  if (!catches (self) || hand->snap == NULL)
    return;
  for (gsize i = 0; i < n; i++)
    moved[i] = points[i] + *by;
  hand->hits[axis] = sw_snap_find (hand->snap, axis, moved, n, SNAP_REACH_PX / self->geometry.scale);
  *by += hand->hits[axis].by;
}

/* The finest step that the hand can make out on the screen, from a millimetre or a sixteenth of an inch down. */
static double
measurable (SwPanView *self, double cm)
{
  double step = self->inches ? 2.54 / 16 : 0.1;

  while (step * self->geometry.scale > LARGEST_STEP_PX && step > 0.02)
    step /= 2;
  return step * round (cm / step);
}

static void
let_go_of (SwPanView *self, SwAxis axis)
{
  self->hand.hits[axis] = (SwSnapHit){ SW_SNAP_NONE, 0, 0 };
}

/* Beginning */

static void
hold (SwPanView *self, guint pour)
{
  const SwStep *step = sw_sketch_find_step (sw_pan_view_sketch (self), pour);
  SwHeldPour held;

  if (step == NULL)
    return;
  held = (SwHeldPour){ pour, sw_pour_place (step) };
  g_array_append_val (self->hand.held, held);
}

static void
find_lines (SwPanView *self)
{
  SwHand *hand = &self->hand;
  g_autofree guint *ids = g_new (guint, hand->held->len + 1);

  for (guint i = 0; i < hand->held->len; i++)
    ids[i] = g_array_index (hand->held, SwHeldPour, i).step;
  g_clear_pointer (&hand->snap, sw_snap_free);
  hand->snap = sw_snap_new (sw_pan_view_sketch (self), sw_selection_get_second_face (self->selection), ids, hand->held->len, ruler_mark_cm (self));
}

static SwStepKind
kind_of (SwPanView *self, guint pour)
{
  return sw_sketch_find_step (sw_pan_view_sketch (self), pour)->kind;
}

static void
begin_group (SwPanView *self, SwDeed deed, SwStepKind kind, gsize n)
{
  self->hand.deed = deed;
  self->hand.in_group = TRUE;
  sw_document_begin_group (sw_pan_view_document (self), sw_deed_name (deed, kind, n));
}

/* A pour that was not selected is so now; with Ctrl what moves is a copy. */
static void
begin_moving (SwPanView *self)
{
  SwHand *hand = &self->hand;
  const gboolean copies = hand->at_press & GDK_CONTROL_MASK;
  g_autoptr (GArray) pours = NULL;
  gsize place = 0;

  if (!sw_selection_contains (self->selection, hand->pour))
    {
      if (hand->at_press & GDK_SHIFT_MASK)
        sw_selection_toggle (self->selection, hand->pour);
      else
        sw_selection_set_step (self->selection, hand->pour);
    }
  pours = sw_pan_view_selected_pours (self);
  for (guint i = pours->len; i > 0; i--)
    if (!sw_pan_view_is_up (self, g_array_index (pours, guint, i - 1)))
      g_array_remove_index (pours, i - 1);
  for (guint i = 0; i < pours->len; i++)
    if (g_array_index (pours, guint, i) == hand->pour)
      place = i;

  begin_group (self, copies ? SW_DEED_DUPLICATE : SW_DEED_MOVE, kind_of (self, hand->pour), pours->len);
  if (copies && sw_pan_view_duplicate (self, (const guint *) (gpointer) pours->data, pours->len, 0, 0))
    {
      g_array_unref (pours);
      pours = sw_pan_view_selected_pours (self);
      hand->pour = g_array_index (pours, guint, place);
    }
  for (guint i = 0; i < pours->len; i++)
    hold (self, g_array_index (pours, guint, i));
  hand->handle = SW_HANDLE_BODY;
  hand->state = SW_HAND_MOVES;
}

static void
begin_stretching (SwPanView *self)
{
  SwHand *hand = &self->hand;

  begin_group (self, hand->handle == SW_HANDLE_TURN ? SW_DEED_TURN : SW_DEED_STRETCH, kind_of (self, hand->pour), 1);
  hold (self, hand->pour);
  hand->state = SW_HAND_STRETCHES;
}

static void
begin_drawing (SwPanView *self)
{
  SwHand *hand = &self->hand;
  const SwStepKind kind = sw_tool_kind (sw_selection_get_tool (self->selection));

  hand->state = SW_HAND_FREE;
  if (!sw_pan_view_has_dye (self))
    return;
  begin_group (self, SW_DEED_POUR, kind, 1);
  hand->pour = 0;
  hand->state = SW_HAND_DRAWS;
}

static void
begin_marking (SwPanView *self)
{
  SwHand *hand = &self->hand;
  const guint *before;
  gsize n;

  before = sw_selection_get_steps (self->selection, &n);
  g_array_set_size (hand->before, 0);
  if (hand->at_press & (GDK_SHIFT_MASK | GDK_CONTROL_MASK))
    g_array_append_vals (hand->before, before, (guint) n);
  hand->state = SW_HAND_MARKS;
}

void
sw_pan_view_begin_deed (SwPanView *self)
{
  SwHand *hand = &self->hand;

  hand->zoom = self->zoom;
  g_array_set_size (hand->held, 0);
  if (self->space_held)
    hand->state = SW_HAND_SCROLLS;
  else if (hand->handle != SW_HANDLE_NONE)
    begin_stretching (self);
  else if (sw_selection_get_tool (self->selection) != SW_TOOL_SELECT)
    begin_drawing (self);
  else if (hand->pour != 0)
    begin_moving (self);
  else
    begin_marking (self);
  if (hand->in_group)
    find_lines (self);
  if (hand->state == SW_HAND_DRAWS)
    {
      double by_x = 0, by_y = 0;

      hand->press_x_cm = measurable (self, hand->press_x_cm);
      hand->press_y_cm = measurable (self, hand->press_y_cm);
      catch (self, SW_AXIS_ALONG, &hand->press_x_cm, 1, &by_x);
      catch (self, SW_AXIS_ACROSS, &hand->press_y_cm, 1, &by_y);
      hand->press_x_cm += by_x;
      hand->press_y_cm += by_y;
    }
}

/* Going on */

static void
put_held (SwPanView *self, SwHandle handle, double dx, double dy)
{
  SwHand *hand = &self->hand;
  const SwGrips grips = sw_pan_overlay_grips (&self->geometry);
  const SwSketch *sketch = sw_pan_view_sketch (self);
  g_autofree SwEdit **edits = g_new (SwEdit *, hand->held->len + 1);
  gsize n = 0;

  for (guint i = 0; i < hand->held->len; i++)
    {
      const SwHeldPour *held = &g_array_index (hand->held, SwHeldPour, i);
      const SwPourPlace place = sw_pan_drag (sketch, &held->from, handle, &grips, dx, dy, drag_flags (self));
      SwEdit *edit = sw_pour_place_edit (sw_sketch_find_step (sketch, held->step), &place);

      if (edit != NULL)
        edits[n++] = edit;
    }
  if (n > 0)
    sw_pan_view_edit (self, sw_edit_group (edits, n), sw_deed_name (hand->deed, kind_of (self, hand->pour), hand->held->len));
}

/* What all that is held takes up. */
static SwExtent
held_extent (SwPanView *self)
{
  const GArray *held = self->hand.held;
  SwExtent all = { G_MAXDOUBLE, -G_MAXDOUBLE, G_MAXDOUBLE, -G_MAXDOUBLE };

  for (guint i = 0; i < held->len; i++)
    {
      const SwExtent extent = sw_pour_extent (sw_pan_view_sketch (self), &g_array_index (held, SwHeldPour, i).from);

      all = (SwExtent){ MIN (all.x0, extent.x0), MAX (all.x1, extent.x1), MIN (all.y0, extent.y0), MAX (all.y1, extent.y1) };
    }
  return all;
}

/* Of the pour at the hand, which is held. */
static SwPourPlace
place_at_hand (SwPanView *self)
{
  const GArray *held = self->hand.held;
  guint i = 0;

  while (i + 1 < held->len && g_array_index (held, SwHeldPour, i).step != self->hand.pour)
    i++;
  return g_array_index (held, SwHeldPour, i).from;
}

/* Bands that go right across move along only. */
static gboolean
moves_across (SwPanView *self)
{
  const GArray *held = self->hand.held;

  for (guint i = 0; i < held->len; i++)
    {
      const SwPourPlace *from = &g_array_index (held, SwHeldPour, i).from;

      if (from->kind != SW_STEP_BAND || from->length > 0)
        return TRUE;
    }
  return FALSE;
}

/* The centre of the pour at the hand, and the edges of all that is held. */
static void
go_on_moving (SwPanView *self, double dx, double dy)
{
  const SwPourPlace at_hand = place_at_hand (self);
  const SwExtent extent = held_extent (self);
  const double along[] = { at_hand.x, extent.x0, extent.x1 }, across[] = { at_hand.y, extent.y0, extent.y1 };
  const gboolean steady = self->hand.now & GDK_SHIFT_MASK;
  const gboolean goes_along = !steady || fabs (dx) >= fabs (dy) || !moves_across (self);
  const gboolean goes_across = moves_across (self) && (!steady || !goes_along);

  dx = goes_along ? dx : 0;
  dy = goes_across ? dy : 0;
  let_go_of (self, SW_AXIS_ALONG);
  let_go_of (self, SW_AXIS_ACROSS);
  if (goes_along)
    catch (self, SW_AXIS_ALONG, along, G_N_ELEMENTS (along), &dx);
  if (goes_across)
    catch (self, SW_AXIS_ACROSS, across, G_N_ELEMENTS (across), &dy);
  put_held (self, SW_HANDLE_BODY, dx, dy);
}

/* An edge catches on lines that it is parallel to: those of a turned pour do not. */
static void
go_on_stretching (SwPanView *self, double dx, double dy)
{
  const SwHand *hand = &self->hand;
  const SwPourPlace *from = &g_array_index (hand->held, SwHeldPour, 0).from;
  const double direction = sw_handle_direction (from, hand->handle);
  const gboolean upright = from->kind == SW_STEP_BAND || fabs (fmod (from->angle, 90)) < 1e-6;
  const gboolean corner = sw_handle_along (hand->handle) != 0 && sw_handle_across (hand->handle) != 0;
  double x, y;

  let_go_of (self, SW_AXIS_ALONG);
  let_go_of (self, SW_AXIS_ACROSS);
  if (upright && hand->handle != SW_HANDLE_TURN)
    {
      sw_handle_edge (sw_pan_view_sketch (self), from, hand->handle, &x, &y);
      if (corner || fabs (direction - 90) > 45)
        catch (self, SW_AXIS_ALONG, &x, 1, &dx);
      if (corner || fabs (direction - 90) < 45)
        catch (self, SW_AXIS_ACROSS, &y, 1, &dy);
    }
  put_held (self, hand->handle, dx, dy);
}

/* The amount grows with what is being poured over. */
static void
pour_on (SwPanView *self, const SwPourPlace *place)
{
  const SwSketch *sketch = sw_pan_view_sketch (self);
  const SwStep *step = sw_sketch_find_step (sketch, self->hand.pour);
  const SwDye *dye = sw_sketch_find_dye (sketch, step->dye);
  const SwValue amount = sw_value_number (sw_pour_amount (sketch, dye, place));
  SwEdit *edits[2];
  gsize n = 0;

  edits[n] = sw_pour_place_edit (step, place);
  if (edits[n] != NULL)
    n++;
  edits[n++] = sw_edit_set (SW_RECORD_STEP, step->id, "amount_ml", &amount);
  sw_pan_view_edit (self, sw_edit_group (edits, n), sw_deed_name (SW_DEED_POUR, step->kind, 1));
}

static void
go_on_drawing (SwPanView *self, double dx, double dy)
{
  SwHand *hand = &self->hand;
  const SwStepKind kind = sw_tool_kind (sw_selection_get_tool (self->selection));
  SwPourPlace place;

  let_go_of (self, SW_AXIS_ACROSS);
  catch (self, SW_AXIS_ALONG, &hand->press_x_cm, 1, &dx);
  if (kind != SW_STEP_BAND)
    catch (self, SW_AXIS_ACROSS, &hand->press_y_cm, 1, &dy);
  place = sw_pan_draw (sw_pan_view_sketch (self), kind, hand->press_x_cm, hand->press_y_cm, hand->press_x_cm + dx, hand->press_y_cm + dy, drag_flags (self));
  if (hand->pour != 0)
    pour_on (self, &place);
  else
    hand->pour = sw_pan_view_pour (self, &place);
}

static gboolean
is_marked (SwPanView *self, const SwStep *step, double x0, double y0, double x1, double y1)
{
  const SwPourPlace place = sw_pour_place (step);
  const SwExtent extent = sw_pour_extent (sw_pan_view_sketch (self), &place);

  return extent.x0 <= x1 && extent.x1 >= x0 && extent.y0 <= y1 && extent.y1 >= y0;
}

static void
go_on_marking (SwPanView *self)
{
  const SwHand *hand = &self->hand;
  const SwSketch *sketch = sw_pan_view_sketch (self);
  g_autoptr (GArray) marked = g_array_new (FALSE, FALSE, sizeof (guint));
  double x, y;

  sw_pan_to_cm (&self->geometry, hand->press_x + hand->by_x, hand->press_y + hand->by_y, &x, &y);
  g_array_append_vals (marked, hand->before->data, hand->before->len);
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (sw_step_is_pour (step) && sw_pan_view_is_up (self, step->id) &&
          is_marked (self, step, MIN (x, hand->press_x_cm), MIN (y, hand->press_y_cm), MAX (x, hand->press_x_cm), MAX (y, hand->press_y_cm)))
        g_array_append_val (marked, step->id);
    }
  sw_selection_set_steps (self->selection, (const guint *) (gpointer) marked->data, marked->len);
}

static void
go_on_scrolling (SwPanView *self)
{
  const SwHand *hand = &self->hand;

  self->zoom.x_cm = hand->zoom.x_cm - hand->by_x / self->geometry.scale;
  self->zoom.y_cm = hand->zoom.y_cm + hand->by_y / self->geometry.scale;
  sw_pan_view_relayout (self);
}

void
sw_pan_view_continue_deed (SwPanView *self)
{
  const SwHand *hand = &self->hand;
  const double dx = measurable (self, hand->by_x / self->geometry.scale), dy = measurable (self, -hand->by_y / self->geometry.scale);

  switch (hand->state)
    {
    case SW_HAND_MOVES:
      go_on_moving (self, dx, dy);
      break;
    case SW_HAND_STRETCHES:
      go_on_stretching (self, dx, dy);
      break;
    case SW_HAND_DRAWS:
      go_on_drawing (self, dx, dy);
      break;
    case SW_HAND_MARKS:
      go_on_marking (self);
      break;
    case SW_HAND_SCROLLS:
      go_on_scrolling (self);
      break;
    case SW_HAND_FREE:
    case SW_HAND_PRESSED:
    default:
      break;
    }
}

/* Ending */

void
sw_pan_view_end_deed (SwPanView *self)
{
  if (self->hand.in_group)
    sw_document_end_group (sw_pan_view_document (self));
  self->hand.in_group = FALSE;
}

void
sw_pan_view_drop_hand (SwPanView *self)
{
  SwHand *hand = &self->hand;

  if (hand->in_group)
    sw_pan_view_end_deed (self);
  g_clear_pointer (&hand->snap, sw_snap_free);
  g_array_set_size (hand->held, 0);
  g_array_set_size (hand->before, 0);
  *hand = (SwHand){ .held = hand->held, .before = hand->before };
  sw_pan_view_describe (self);
}

gboolean
sw_pan_view_cancel_hand (SwPanView *self)
{
  SwHand *hand = &self->hand;
  const gboolean busy = hand->state != SW_HAND_FREE;
  g_autoptr (GError) error = NULL;

  if (hand->in_group && !sw_document_cancel_group (sw_pan_view_document (self), &error))
    sw_pan_view_say (self, error->message);
  hand->in_group = FALSE;
  if (hand->state == SW_HAND_MARKS)
    sw_selection_set_steps (self->selection, (const guint *) (gpointer) hand->before->data, hand->before->len);
  if (hand->state == SW_HAND_SCROLLS)
    {
      self->zoom = hand->zoom;
      sw_pan_view_relayout (self);
    }
  sw_pan_view_drop_hand (self);
  sw_pan_view_update_hover (self);
  return busy;
}
