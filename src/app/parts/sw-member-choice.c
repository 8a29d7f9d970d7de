/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-member-choice.h"

#include <glib/gi18n-lib.h>

struct _SwMemberChoice
{
  SwMemberControl parent_instance;

  GtkDropDown *drop_down;
  GtkStringList *words;
  guint n_choices; /* words before "several", 0 until they are known */
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (SwMemberChoice, sw_member_choice, SW_TYPE_MEMBER_CONTROL)

/* In the button a long word gives way; in the list it is whole, and the one that holds is ticked. */

static void
setup_button_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_list_item_set_child (item, label);
}

static void
setup_list_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = gtk_label_new (NULL);
  GtkWidget *tick = gtk_image_new_from_icon_name ("object-select-symbolic");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), tick);
  g_object_bind_property (item, "selected", tick, "visible", G_BINDING_SYNC_CREATE);
  gtk_list_item_set_child (item, box);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *child = gtk_list_item_get_child (item);
  GtkWidget *label = GTK_IS_LABEL (child) ? child : gtk_widget_get_first_child (child);

  gtk_label_set_text (GTK_LABEL (label), gtk_string_object_get_string (gtk_list_item_get_item (item)));
}

static GtkListItemFactory *
new_factory (GCallback setup)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", setup, NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  return factory;
}

static void
fill (SwMemberChoice *self, const SwMember *member)
{
  if (self->n_choices > 0)
    return;
  for (; member->choice_labels[self->n_choices] != NULL; self->n_choices++)
    gtk_string_list_append (self->words, _ (member->choice_labels[self->n_choices]));
}

/* "several" is among the words only while it is so. */
static void
offer_several (SwMemberChoice *self, gboolean several)
{
  gboolean offered = g_list_model_get_n_items (G_LIST_MODEL (self->words)) > self->n_choices;

  if (several && !offered)
    gtk_string_list_append (self->words, _ ("several"));
  if (!several && offered)
    gtk_string_list_remove (self->words, self->n_choices);
}

static void
sw_member_choice_show (SwMemberControl *control, const SwValue *value, gboolean several)
{
  SwMemberChoice *self = SW_MEMBER_CHOICE (control);

  self->showing = TRUE;
  fill (self, sw_member_control_get_member (control));
  offer_several (self, several);
  if (value != NULL)
    gtk_drop_down_set_selected (self->drop_down, several ? self->n_choices : (guint) value->as.choice);
  self->showing = FALSE;
}

static void
selected_cb (SwMemberChoice *self)
{
  guint selected = gtk_drop_down_get_selected (self->drop_down);
  SwValue value = sw_value_choice ((int) selected);

  if (self->showing || selected >= self->n_choices)
    return;
  if (!sw_member_control_put (SW_MEMBER_CONTROL (self), &value, FALSE))
    sw_member_control_show (SW_MEMBER_CONTROL (self));
}

static void
sw_member_choice_finalize (GObject *object)
{
  g_object_unref (SW_MEMBER_CHOICE (object)->words);

  G_OBJECT_CLASS (sw_member_choice_parent_class)->finalize (object);
}

static void
sw_member_choice_class_init (SwMemberChoiceClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_member_choice_finalize;
  SW_MEMBER_CONTROL_CLASS (klass)->show = sw_member_choice_show;
}

static void
sw_member_choice_init (SwMemberChoice *self)
{
  g_autoptr (GtkListItemFactory) in_button = new_factory (G_CALLBACK (setup_button_cb));
  g_autoptr (GtkListItemFactory) in_list = new_factory (G_CALLBACK (setup_list_cb));

  self->words = gtk_string_list_new (NULL);
  self->drop_down = GTK_DROP_DOWN (gtk_drop_down_new (g_object_ref (G_LIST_MODEL (self->words)), NULL));
  gtk_drop_down_set_factory (self->drop_down, in_button);
  gtk_drop_down_set_list_factory (self->drop_down, in_list);
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->drop_down));
  g_signal_connect_swapped (self->drop_down, "notify::selected", G_CALLBACK (selected_cb), self);
}
