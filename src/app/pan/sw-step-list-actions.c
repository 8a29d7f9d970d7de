/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-step-list-private.h"

#include "app/desk/sw-step-edits.h"
#include "app/parts/sw-toast.h"

#include <glib/gi18n-lib.h>

/* @edit: (nullable) (transfer full): NULL does nothing. Returns whether it was done; else a toast says why not. */
static gboolean
apply (SwStepList *self, SwEdit *edit, const char *name)
{
  g_autoptr (GError) error = NULL;

  if (edit == NULL)
    return FALSE;
  if (sw_document_edit (sw_step_list_document (self), edit, name, &error))
    return TRUE;
  sw_toast (GTK_WIDGET (self), error->message);
  return FALSE;
}

/* Whole sentences, one a kind, so that they can be translated. */
static const char *
add_name (SwStepKind kind)
{
  static const char *const names[SW_N_STEP_KINDS] = {
    [SW_STEP_BAND] = N_ ("Add Band"),
    [SW_STEP_SPLOTCH] = N_ ("Add Splotch"),
    [SW_STEP_SPECKLE] = N_ ("Add Speckles"),
    [SW_STEP_REST] = N_ ("Add Rest"),
    [SW_STEP_FLIP] = N_ ("Add Flip"),
    [SW_STEP_ACID] = N_ ("Add Acid"),
    [SW_STEP_WATER] = N_ ("Add Water"),
    /* Translators: the final heating that fixes the dye */
    [SW_STEP_SET] = N_ ("Add Set"),
  };

  return _ (names[kind]);
}

static void
add_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SwStepList *self = SW_STEP_LIST (widget);
  SwDocument *document = sw_step_list_document (self);
  int kind = sw_step_kind_from_name (g_variant_get_string (parameter, NULL));
  guint dye = document != NULL ? sw_selection_get_dye (self->selection) : 0;
  guint id;

  if (document == NULL || kind < 0)
    return;
  if ((SW_STEP_BIT (kind) & SW_STEP_POURS) && dye == 0)
    {
      sw_toast (widget, _ ("There is no dye to pour yet. Add a dye pot first."));
      return;
    }
  if (!apply (self, sw_step_edits_new (sw_document_get_sketch (document), kind, dye, sw_selection_get_lead (self->selection), &id), add_name (kind)))
    return;
  sw_selection_set_step (self->selection, id);
  sw_step_list_focus (self, id);
}

static void
duplicate_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SwStepList *self = SW_STEP_LIST (widget);
  g_autofree guint *copies = NULL;
  const guint *ids;
  gsize n;

  ids = sw_selection_get_steps (self->selection, &n);
  copies = g_new (guint, n + 1);
  if (!apply (self, sw_step_edits_duplicate (sw_document_get_sketch (sw_step_list_document (self)), ids, n, copies),
              ngettext ("Duplicate Step", "Duplicate Steps", n)))
    return;
  sw_selection_set_steps (self->selection, copies, n);
  sw_step_list_focus (self, copies[n - 1]);
}

/* The step that takes the place of what was deleted, so that the keyboard stays where it was. */
static guint
next_after_deleting (SwStepList *self)
{
  const GPtrArray *steps = sw_document_get_sketch (sw_step_list_document (self))->steps;
  guint kept = 0;

  for (guint i = 0; i < steps->len; i++)
    {
      guint id = ((const SwStep *) steps->pdata[i])->id;

      if (sw_selection_contains (self->selection, id))
        continue;
      if (i > 0 && sw_selection_contains (self->selection, ((const SwStep *) steps->pdata[i - 1])->id))
        return id;
      kept = id;
    }
  return kept;
}

static void
delete_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SwStepList *self = SW_STEP_LIST (widget);
  guint next = next_after_deleting (self);
  const guint *ids;
  gsize n;

  ids = sw_selection_get_steps (self->selection, &n);
  if (apply (self, sw_step_edits_delete (sw_document_get_sketch (sw_step_list_document (self)), ids, n),
             ngettext ("Delete Step", "Delete Steps", n)) &&
      next != 0)
    sw_step_list_focus (self, next);
}

static void
move (SwStepList *self, gboolean up)
{
  const guint *ids;
  gsize n;

  ids = sw_selection_get_steps (self->selection, &n);
  if (apply (self, sw_step_edits_shift (sw_document_get_sketch (sw_step_list_document (self)), ids, n, up), _ ("Change Order")))
    sw_step_list_focus (self, sw_selection_get_lead (self->selection));
}

static void
move_up_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  move (SW_STEP_LIST (widget), TRUE);
}

static void
move_down_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  move (SW_STEP_LIST (widget), FALSE);
}

static const struct
{
  const char *name;
  GtkWidgetActionActivateFunc activate;
  struct
  {
    guint key;
    GdkModifierType modifiers;
  } keys[2]; /* menus show the last */
} actions[] = {
  { "steps.duplicate", duplicate_cb, { { GDK_KEY_d, GDK_CONTROL_MASK } } },
  { "steps.delete", delete_cb, { { GDK_KEY_KP_Delete, 0 }, { GDK_KEY_Delete, 0 } } },
  { "steps.move-up", move_up_cb, { { GDK_KEY_KP_Up, GDK_ALT_MASK }, { GDK_KEY_Up, GDK_ALT_MASK } } },
  { "steps.move-down", move_down_cb, { { GDK_KEY_KP_Down, GDK_ALT_MASK }, { GDK_KEY_Down, GDK_ALT_MASK } } },
};

void
sw_step_list_install_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "steps.add", "s", add_cb);
  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    {
      gtk_widget_class_install_action (widget_class, actions[i].name, NULL, actions[i].activate);
      for (gsize j = 0; j < G_N_ELEMENTS (actions[i].keys); j++)
        if (actions[i].keys[j].key != 0)
          gtk_widget_class_add_binding_action (widget_class, actions[i].keys[j].key, actions[i].keys[j].modifiers, actions[i].name, NULL);
    }
}

void
sw_step_list_update_actions (SwStepList *self)
{
  gsize n = 0;

  if (self->selection != NULL)
    sw_selection_get_steps (self->selection, &n);
  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), actions[i].name, n > 0);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "menu.popup", n > 0);
}
