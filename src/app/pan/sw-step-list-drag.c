/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-step-list-private.h"

#include "app/desk/sw-step-edits.h"
#include "app/parts/sw-toast.h"

#include <glib/gi18n-lib.h>

/* Steps dragged by their handles to another place in the list; a line shows where they would go. */

static void
set_mark (SwStepList *self, SwStepRow *row, SwDrop drop)
{
  if (self->drop_row != NULL && self->drop_row != row)
    sw_step_row_set_drop (self->drop_row, SW_DROP_NONE);
  g_set_weak_pointer (&self->drop_row, row);
  self->drop = drop;
  if (row != NULL)
    sw_step_row_set_drop (row, drop);
}

/* The last row, for what is held below it. */
static SwStepRow *
last_row (SwStepList *self)
{
  graphene_rect_t bounds;
  GtkWidget *last = NULL;
  double bottom = -1;

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->list)); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_get_mapped (child) && gtk_widget_compute_bounds (child, GTK_WIDGET (self->list), &bounds) && (double) bounds.origin.y > bottom)
      {
        bottom = (double) bounds.origin.y;
        last = child;
      }
  return last != NULL ? sw_step_list_row_at (self, 0, bottom + 1) : NULL;
}

static void
mark_at (SwStepList *self, double x, double y)
{
  SwStepRow *row = sw_step_list_row_at (self, x, y);
  graphene_rect_t bounds;

  if (row == NULL)
    set_mark (self, last_row (self), SW_DROP_BELOW);
  else if (gtk_widget_compute_bounds (GTK_WIDGET (row), GTK_WIDGET (self->list), &bounds))
    set_mark (self, row, y < (double) (bounds.origin.y + bounds.size.height / 2) ? SW_DROP_ABOVE : SW_DROP_BELOW);
}

static GdkDragAction
motion_cb (GtkDropTarget *target, double x, double y, SwStepList *self)
{
  mark_at (self, x, y);
  return GDK_ACTION_MOVE;
}

static void
leave_cb (GtkDropTarget *target, SwStepList *self)
{
  set_mark (self, NULL, SW_DROP_NONE);
}

/* What is dragged by one of the selected is all of them. */
static SwEdit *
edit_for (SwStepList *self, SwEntry *dragged, guint before)
{
  const SwSketch *sketch = sw_document_get_sketch (sw_step_list_document (self));
  guint id = sw_entry_get_id (dragged);
  const guint *ids;
  gsize n;

  if (!sw_selection_contains (self->selection, id))
    {
      sw_selection_set_step (self->selection, id);
      return sw_step_edits_move (sketch, &id, 1, before);
    }
  ids = sw_selection_get_steps (self->selection, &n);
  return sw_step_edits_move (sketch, ids, n, before);
}

static gboolean
drop_cb (GtkDropTarget *target, const GValue *value, double x, double y, SwStepList *self)
{
  SwEntry *dragged = g_value_get_object (value), *at;
  g_autoptr (GError) error = NULL;
  SwEdit *edit;
  guint before;

  mark_at (self, x, y);
  at = self->drop_row != NULL ? sw_step_row_get_entry (self->drop_row) : NULL;
  if (at == NULL || sw_entry_get_document (dragged) != sw_step_list_document (self) || sw_entry_get_step (dragged) == NULL)
    return FALSE;
  before = sw_entry_get_position (at) + (self->drop == SW_DROP_BELOW ? 1 : 0);
  set_mark (self, NULL, SW_DROP_NONE);

  edit = edit_for (self, dragged, before);
  if (edit == NULL)
    return TRUE; /* that is where it was */
  if (!sw_document_edit (sw_step_list_document (self), edit, _ ("Change Order"), &error))
    sw_toast (GTK_WIDGET (self), error->message);
  sw_step_list_focus (self, sw_entry_get_id (dragged));
  return TRUE;
}

void
sw_step_list_accept_drops (SwStepList *self)
{
  GtkDropTarget *target = gtk_drop_target_new (SW_TYPE_ENTRY, GDK_ACTION_MOVE);

  g_signal_connect (target, "enter", G_CALLBACK (motion_cb), self);
  g_signal_connect (target, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect (target, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->list), GTK_EVENT_CONTROLLER (target));
}
