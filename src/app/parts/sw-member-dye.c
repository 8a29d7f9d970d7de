/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-member-dye.h"

#include "app/parts/sw-swatch.h"

#include <glib/gi18n-lib.h>

struct _SwMemberDye
{
  SwMemberControl parent_instance;

  GtkDropDown *drop_down;
  SwEntryList *dyes;      /* of the document shown, or NULL */
  GListStore *lists;      /* the dyes, then "several" while it is so */
  GtkStringList *several; /* empty, or one word */
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (SwMemberDye, sw_member_dye, SW_TYPE_MEMBER_CONTROL)

/* Rows: a swatch and a name, that follow the dye. */

static void
show_item (GtkListItem *item)
{
  GtkWidget *box = gtk_list_item_get_child (item);
  GtkWidget *swatch = gtk_widget_get_first_child (box);
  GtkLabel *name = GTK_LABEL (gtk_widget_get_last_child (box));
  gpointer object = gtk_list_item_get_item (item);
  const SwDye *dye = SW_IS_ENTRY (object) ? sw_entry_get_dye (object) : NULL;

  gtk_widget_set_visible (swatch, dye != NULL);
  sw_swatch_set_sample (SW_SWATCH (swatch), dye != NULL ? &dye->sample : NULL);
  if (dye != NULL)
    /* Translators: stands for a dye that the dyer has not named */
    gtk_label_set_text (name, *dye->name != '\0' ? dye->name : _ ("Dye without a name"));
  else if (GTK_IS_STRING_OBJECT (object))
    gtk_label_set_text (name, gtk_string_object_get_string (object));
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *name = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (name), 16);
  gtk_box_append (GTK_BOX (box), g_object_new (SW_TYPE_SWATCH, NULL));
  gtk_box_append (GTK_BOX (box), name);
  gtk_list_item_set_child (item, box);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  gpointer object = gtk_list_item_get_item (item);

  show_item (item);
  if (SW_IS_ENTRY (object))
    g_signal_connect_object (object, "notify::revision", G_CALLBACK (show_item), item, G_CONNECT_SWAPPED);
}

static void
unbind_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  gpointer object = gtk_list_item_get_item (item);

  if (object != NULL)
    g_signal_handlers_disconnect_by_func (object, show_item, item);
}

/* The control */

static void
follow_document (SwMemberDye *self)
{
  SwSubject *subject = sw_member_control_get_subject (SW_MEMBER_CONTROL (self));
  SwDocument *document = subject != NULL ? sw_subject_get_document (subject) : NULL;
  SwEntryList *dyes = document != NULL ? sw_document_get_dyes (document) : NULL;

  if (self->dyes == dyes)
    return;
  self->dyes = dyes;
  g_list_store_remove_all (self->lists);
  if (dyes != NULL)
    g_list_store_append (self->lists, dyes);
  g_list_store_append (self->lists, self->several);
}

static void
offer_several (SwMemberDye *self, gboolean several)
{
  guint offered = g_list_model_get_n_items (G_LIST_MODEL (self->several));

  if (several && offered == 0)
    gtk_string_list_append (self->several, _ ("several"));
  if (!several && offered > 0)
    gtk_string_list_remove (self->several, 0);
}

static void
sw_member_dye_show (SwMemberControl *control, const SwValue *value, gboolean several)
{
  SwMemberDye *self = SW_MEMBER_DYE (control);
  guint position = GTK_INVALID_LIST_POSITION;

  self->showing = TRUE;
  follow_document (self);
  offer_several (self, several);
  if (several)
    position = g_list_model_get_n_items (G_LIST_MODEL (self->dyes));
  else if (value != NULL && self->dyes != NULL)
    sw_entry_list_find (self->dyes, (guint) value->as.whole, &position);
  gtk_drop_down_set_selected (self->drop_down, position);
  self->showing = FALSE;
}

static void
selected_cb (SwMemberDye *self)
{
  gpointer item = gtk_drop_down_get_selected_item (self->drop_down);
  SwValue value;

  if (self->showing || !SW_IS_ENTRY (item))
    return;
  value = sw_value_dye (sw_entry_get_id (item));
  if (!sw_member_control_put (SW_MEMBER_CONTROL (self), &value, FALSE))
    sw_member_control_show (SW_MEMBER_CONTROL (self));
}

static void
sw_member_dye_finalize (GObject *object)
{
  SwMemberDye *self = SW_MEMBER_DYE (object);

  g_object_unref (self->lists);
  g_object_unref (self->several);

  G_OBJECT_CLASS (sw_member_dye_parent_class)->finalize (object);
}

static void
sw_member_dye_class_init (SwMemberDyeClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_member_dye_finalize;
  SW_MEMBER_CONTROL_CLASS (klass)->show = sw_member_dye_show;
}

static void
sw_member_dye_init (SwMemberDye *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkFlattenListModel *model;

  self->lists = g_list_store_new (G_TYPE_LIST_MODEL);
  self->several = gtk_string_list_new (NULL);
  model = gtk_flatten_list_model_new (g_object_ref (G_LIST_MODEL (self->lists)));
  self->drop_down = GTK_DROP_DOWN (gtk_drop_down_new (G_LIST_MODEL (model), NULL));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), NULL);
  gtk_drop_down_set_factory (self->drop_down, factory);
  g_object_unref (factory);
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->drop_down));
  g_signal_connect_swapped (self->drop_down, "notify::selected", G_CALLBACK (selected_cb), self);
}
