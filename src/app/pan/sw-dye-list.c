/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-dye-list.h"

#include "app/desk/sw-dye-edits.h"
#include "app/pan/sw-dye-row.h"
#include "app/parts/sw-focus.h"
#include "app/parts/sw-toast.h"

#include <glib/gi18n-lib.h>

struct _SwDyeList
{
  AdwBin parent_instance;

  SwSelection *selection;
  GtkSingleSelection *model;
  gboolean following; /* the list follows the selection, not the hand */

  GtkListView *list;
  GtkWidget *scroller;
  GtkWidget *empty;
  GMenuModel *row_menu;
  GtkWidget *menu;
};

G_DEFINE_FINAL_TYPE (SwDyeList, sw_dye_list, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_SELECTION,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];
static guint edit_signal;

static SwDocument *
document_of (SwDyeList *self)
{
  return self->selection != NULL ? sw_selection_get_document (self->selection) : NULL;
}

/* @edit: (nullable) (transfer full) */
static gboolean
apply (SwDyeList *self, SwEdit *edit, const char *name)
{
  g_autoptr (GError) error = NULL;

  if (edit == NULL)
    return FALSE;
  if (sw_document_edit (document_of (self), edit, name, &error))
    return TRUE;
  sw_toast (GTK_WIDGET (self), error->message);
  return FALSE;
}

/* Actions */

static void
start_editing (SwDyeList *self, guint dye)
{
  if (dye == 0)
    dye = sw_selection_get_dye (self->selection);
  if (dye == 0)
    return;
  sw_selection_set_dye (self->selection, dye);
  g_signal_emit (self, edit_signal, 0, dye);
}

static void
add_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SwDyeList *self = SW_DYE_LIST (widget);
  guint id;

  if (apply (self, sw_dye_edits_new (sw_document_get_sketch (document_of (self)), &id), _ ("Add Dye Pot")))
    start_editing (self, id);
}

static void
edit_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  start_editing (SW_DYE_LIST (widget), g_variant_get_uint32 (parameter));
}

static void
duplicate_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SwDyeList *self = SW_DYE_LIST (widget);
  guint id;

  if (apply (self, sw_dye_edits_duplicate (sw_document_get_sketch (document_of (self)), sw_selection_get_dye (self->selection), &id), _ ("Duplicate Dye Pot")))
    start_editing (self, id);
}

static void
answered_cb (SwDyeList *self, const char *response, AdwMessageDialog *dialog)
{
  guint dye = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (dialog), "dye"));
  const SwSketch *sketch = document_of (self) != NULL ? sw_document_get_sketch (document_of (self)) : NULL;
  g_autoptr (GArray) pours = NULL;

  if (sketch == NULL || sw_sketch_find_dye (sketch, dye) == NULL)
    return;
  if (g_str_equal (response, "select"))
    {
      pours = sw_dye_pours (sketch, dye);
      sw_selection_set_steps (self->selection, (const guint *) (gpointer) pours->data, pours->len);
    }
  else if (g_str_equal (response, "delete"))
    apply (self, sw_dye_edits_delete (sketch, dye), _ ("Delete Dye Pot and Its Pours"));
}

/* A dye that is poured is not simply gone: three ways out. */
static void
ask (SwDyeList *self, const SwDye *dye, const char *sentence)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
  AdwMessageDialog *dialog;
  /* Translators: the question's heading; %s is a dye's name */
  g_autofree char *heading = g_strdup_printf (_ ("“%s” Is Still Poured"), *dye->name != '\0' ? dye->name : _ ("Dye without a name"));

  dialog = ADW_MESSAGE_DIALOG (adw_message_dialog_new (window, heading, NULL));
  /* Translators: %s is a sentence: "2 pours use it: 1 Canal, 4 Sky." */
  adw_message_dialog_format_body (dialog, _ ("%s Give them another dye first, or delete them with it."), sentence);
  adw_message_dialog_add_response (dialog, "cancel", _ ("_Cancel"));
  adw_message_dialog_add_response (dialog, "select", _ ("_Select the Pours"));
  adw_message_dialog_add_response (dialog, "delete", _ ("_Delete All"));
  adw_message_dialog_set_response_appearance (dialog, "delete", ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_default_response (dialog, "select");
  adw_message_dialog_set_close_response (dialog, "cancel");
  g_object_set_data (G_OBJECT (dialog), "dye", GUINT_TO_POINTER (dye->id));
  g_signal_connect_object (dialog, "response", G_CALLBACK (answered_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
delete_cb (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SwDyeList *self = SW_DYE_LIST (widget);
  const SwSketch *sketch = sw_document_get_sketch (document_of (self));
  const SwDye *dye = sw_sketch_find_dye (sketch, sw_selection_get_dye (self->selection));
  g_autofree char *sentence = NULL;

  if (dye == NULL)
    return;
  sentence = sw_dye_pours_sentence (sketch, dye->id);
  if (sentence != NULL)
    ask (self, dye, sentence);
  else
    apply (self, sw_dye_edits_delete (sketch, dye->id), _ ("Delete Dye Pot"));
}

/* Following */

static void
show (SwDyeList *self)
{
  guint dye = self->selection != NULL ? sw_selection_get_dye (self->selection) : 0;
  guint position = GTK_INVALID_LIST_POSITION;

  if (dye != 0 && !sw_entry_list_find (sw_document_get_dyes (document_of (self)), dye, &position))
    position = GTK_INVALID_LIST_POSITION;
  self->following = TRUE;
  gtk_single_selection_set_selected (self->model, position);
  self->following = FALSE;
  gtk_widget_set_visible (self->empty, dye == 0);
  gtk_widget_set_visible (self->scroller, dye != 0);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "dyes.duplicate", dye != 0);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "dyes.delete", dye != 0);
}

static void
selected_cb (SwDyeList *self)
{
  SwEntry *entry = gtk_single_selection_get_selected_item (self->model);

  if (!self->following && entry != NULL)
    sw_selection_set_dye (self->selection, sw_entry_get_id (entry));
}

static void
activated_cb (SwDyeList *self, guint position)
{
  g_autoptr (SwEntry) entry = g_list_model_get_item (G_LIST_MODEL (self->model), position);

  if (entry != NULL)
    start_editing (self, sw_entry_get_id (entry));
}

static void
set_selection (SwDyeList *self, SwSelection *selection)
{
  if (self->selection == selection)
    return;
  if (self->selection != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->selection, self);
      g_signal_handlers_disconnect_by_data (sw_selection_get_document (self->selection), self);
    }
  g_set_object (&self->selection, selection);
  self->following = TRUE;
  gtk_single_selection_set_model (self->model, selection != NULL ? G_LIST_MODEL (sw_document_get_dyes (document_of (self))) : NULL);
  self->following = FALSE;
  if (selection != NULL)
    {
      g_signal_connect_swapped (selection, "notify::dye", G_CALLBACK (show), self);
      g_signal_connect_swapped (document_of (self), "changed", G_CALLBACK (show), self);
    }
  show (self);
}

/* Rows and their menu */

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *row = g_object_new (SW_TYPE_DYE_ROW, NULL);

  gtk_list_item_set_child (item, row);
  g_object_bind_property (item, "item", row, "entry", G_BINDING_SYNC_CREATE);
  g_object_bind_property (item, "selected", row, "current", G_BINDING_SYNC_CREATE);
}

static SwDyeRow *
row_at (SwDyeList *self, double x, double y)
{
  GtkWidget *picked = gtk_widget_pick (GTK_WIDGET (self->list), x, y, GTK_PICK_DEFAULT);
  GtkWidget *row = picked != NULL ? gtk_widget_get_ancestor (picked, SW_TYPE_DYE_ROW) : NULL;

  if (row == NULL && picked != NULL)
    row = gtk_widget_get_first_child (picked);
  return SW_IS_DYE_ROW (row) ? SW_DYE_ROW (row) : NULL;
}

static void
popup_at (SwDyeList *self, double x, double y)
{
  graphene_point_t at;

  if (!gtk_widget_compute_point (GTK_WIDGET (self->list), GTK_WIDGET (self), &GRAPHENE_POINT_INIT ((float) x, (float) y), &at))
    return;
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), &(GdkRectangle){ (int) at.x, (int) at.y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

static void
pressed_cb (GtkGestureClick *gesture, int n_press, double x, double y, SwDyeList *self)
{
  SwDyeRow *row = row_at (self, x, y);

  if (row == NULL || sw_dye_row_get_entry (row) == NULL)
    return;
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  sw_selection_set_dye (self->selection, sw_entry_get_id (sw_dye_row_get_entry (row)));
  popup_at (self, x, y);
}

static void
popup_action_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SwDyeList *self = SW_DYE_LIST (widget);
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (widget));
  graphene_rect_t bounds;

  if (focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (self->list)) && gtk_widget_compute_bounds (focus, GTK_WIDGET (self->list), &bounds))
    popup_at (self, (double) bounds.origin.x + 24, (double) (bounds.origin.y + bounds.size.height));
}

/* The keyboard goes to the pot to pour from. */
static gboolean
sw_dye_list_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (SW_DYE_LIST (widget)->list));
}

/* Lifecycle */

static void
sw_dye_list_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_SELECTION:
      g_value_set_object (value, SW_DYE_LIST (object)->selection);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_dye_list_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_SELECTION:
      set_selection (SW_DYE_LIST (object), g_value_get_object (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_dye_list_dispose (GObject *object)
{
  SwDyeList *self = SW_DYE_LIST (object);

  if (self->menu != NULL)
    set_selection (self, NULL);
  g_clear_pointer (&self->menu, gtk_widget_unparent);
  g_clear_object (&self->model);

  G_OBJECT_CLASS (sw_dye_list_parent_class)->dispose (object);
}

static void
sw_dye_list_class_init (SwDyeListClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = sw_dye_list_get_property;
  object_class->set_property = sw_dye_list_set_property;
  object_class->dispose = sw_dye_list_dispose;
  widget_class->focus = sw_focus_bin_in_order;
  widget_class->grab_focus = sw_dye_list_grab_focus;

  props[PROP_SELECTION] = g_param_spec_object ("selection", NULL, NULL, SW_TYPE_SELECTION, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  edit_signal = g_signal_new ("edit", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);

  gtk_widget_class_install_action (widget_class, "dyes.add", NULL, add_cb);
  gtk_widget_class_install_action (widget_class, "dyes.edit", "u", edit_cb);
  gtk_widget_class_install_action (widget_class, "dyes.duplicate", NULL, duplicate_cb);
  gtk_widget_class_install_action (widget_class, "dyes.delete", NULL, delete_cb);
  gtk_widget_class_install_action (widget_class, "menu.popup", NULL, popup_action_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_d, GDK_CONTROL_MASK, "dyes.duplicate", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_KP_Delete, 0, "dyes.delete", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Delete, 0, "dyes.delete", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, "menu.popup", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Menu, 0, "menu.popup", NULL);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-dye-list.ui");
  gtk_widget_class_bind_template_child (widget_class, SwDyeList, list);
  gtk_widget_class_bind_template_child (widget_class, SwDyeList, scroller);
  gtk_widget_class_bind_template_child (widget_class, SwDyeList, empty);
  gtk_widget_class_bind_template_child (widget_class, SwDyeList, row_menu);
}

static void
sw_dye_list_init (SwDyeList *self)
{
  GtkListItemFactory *factory;
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_widget_init_template (GTK_WIDGET (self));

  self->model = gtk_single_selection_new (NULL);
  gtk_single_selection_set_autoselect (self->model, FALSE);
  gtk_single_selection_set_can_unselect (self->model, FALSE);
  g_signal_connect_swapped (self->model, "notify::selected", G_CALLBACK (selected_cb), self);
  gtk_list_view_set_model (self->list, GTK_SELECTION_MODEL (self->model));

  factory = gtk_signal_list_item_factory_new ();
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  gtk_list_view_set_factory (self->list, factory);
  g_object_unref (factory);
  g_signal_connect_swapped (self->list, "activate", G_CALLBACK (activated_cb), self);

  self->menu = gtk_popover_menu_new_from_model (self->row_menu);
  gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
  gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
  gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->list), GTK_EVENT_CONTROLLER (click));
  show (self);
}
