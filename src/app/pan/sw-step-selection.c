/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-step-selection.h"

struct _SwStepSelection
{
  GObject parent_instance;

  SwSelection *selection;
  GListModel *steps; /* of SwEntry */
};

/* The list */

static GType
sw_step_selection_get_item_type (GListModel *model)
{
  return SW_TYPE_ENTRY;
}

static guint
sw_step_selection_get_n_items (GListModel *model)
{
  return g_list_model_get_n_items (SW_STEP_SELECTION (model)->steps);
}

static gpointer
sw_step_selection_get_item (GListModel *model, guint position)
{
  return g_list_model_get_item (SW_STEP_SELECTION (model)->steps, position);
}

static void
list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = sw_step_selection_get_item_type;
  iface->get_n_items = sw_step_selection_get_n_items;
  iface->get_item = sw_step_selection_get_item;
}

/* The selection */

static guint
id_at (SwStepSelection *self, guint position)
{
  g_autoptr (SwEntry) entry = g_list_model_get_item (self->steps, position);

  return entry != NULL ? sw_entry_get_id (entry) : 0;
}

static gboolean
sw_step_selection_is_selected (GtkSelectionModel *model, guint position)
{
  SwStepSelection *self = SW_STEP_SELECTION (model);

  return sw_selection_contains (self->selection, id_at (self, position));
}

static GtkBitset *
sw_step_selection_get_in_range (GtkSelectionModel *model, guint position, guint n_items)
{
  GtkBitset *selected = gtk_bitset_new_empty ();
  guint end = MIN (position + n_items, g_list_model_get_n_items (G_LIST_MODEL (model)));

  for (guint i = position; i < end; i++)
    if (gtk_selection_model_is_selected (model, i))
      gtk_bitset_add (selected, i);
  return selected;
}

/* Where @mask has a step, it is selected as @selected says; the others stay. New ones come last, so that one of them leads. */
static gboolean
sw_step_selection_set (GtkSelectionModel *model, GtkBitset *selected, GtkBitset *mask)
{
  SwStepSelection *self = SW_STEP_SELECTION (model);
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (guint));
  guint n_items = g_list_model_get_n_items (self->steps);
  gsize n;
  const guint *now = sw_selection_get_steps (self->selection, &n);

  for (gsize i = 0; i < n; i++)
    {
      guint position;

      if (sw_entry_list_find (SW_ENTRY_LIST (self->steps), now[i], &position) &&
          (!gtk_bitset_contains (mask, position) || gtk_bitset_contains (selected, position)))
        g_array_append_val (ids, now[i]);
    }
  for (guint i = 0; i < n_items; i++)
    if (gtk_bitset_contains (mask, i) && gtk_bitset_contains (selected, i) && !gtk_selection_model_is_selected (model, i))
      {
        guint id = id_at (self, i);

        g_array_append_val (ids, id);
      }
  sw_selection_set_steps (self->selection, (const guint *) (gpointer) ids->data, ids->len);
  return TRUE;
}

static void
selection_model_init (GtkSelectionModelInterface *iface)
{
  /* All else that a selection can be asked is made of these by the toolkit. */
  iface->is_selected = sw_step_selection_is_selected;
  iface->get_selection_in_range = sw_step_selection_get_in_range;
  iface->set_selection = sw_step_selection_set;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (SwStepSelection, sw_step_selection, G_TYPE_OBJECT, G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_init) G_IMPLEMENT_INTERFACE (GTK_TYPE_SELECTION_MODEL, selection_model_init))

static void
selection_changed_cb (SwStepSelection *self)
{
  guint n = g_list_model_get_n_items (self->steps);

  if (n > 0)
    gtk_selection_model_selection_changed (GTK_SELECTION_MODEL (self), 0, n);
}

static void
sw_step_selection_finalize (GObject *object)
{
  SwStepSelection *self = SW_STEP_SELECTION (object);

  g_clear_object (&self->steps);
  g_clear_object (&self->selection);

  G_OBJECT_CLASS (sw_step_selection_parent_class)->finalize (object);
}

static void
sw_step_selection_class_init (SwStepSelectionClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_step_selection_finalize;
}

static void
sw_step_selection_init (SwStepSelection *self)
{
}

SwStepSelection *
sw_step_selection_new (SwSelection *selection)
{
  SwStepSelection *self;

  g_return_val_if_fail (SW_IS_SELECTION (selection), NULL);

  self = g_object_new (SW_TYPE_STEP_SELECTION, NULL);
  self->selection = g_object_ref (selection);
  self->steps = g_object_ref (G_LIST_MODEL (sw_document_get_steps (sw_selection_get_document (selection))));
  g_signal_connect_object (self->steps, "items-changed", G_CALLBACK (g_list_model_items_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (selection, "changed", G_CALLBACK (selection_changed_cb), self, G_CONNECT_SWAPPED);
  return self;
}
