/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sw-member-choice.h"

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

/* In the button a long word gives way, in the list it is whole. */
static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), gtk_string_object_get_string (gtk_list_item_get_item (item)));
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
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  self->words = gtk_string_list_new (NULL);
  self->drop_down = GTK_DROP_DOWN (gtk_drop_down_new (g_object_ref (G_LIST_MODEL (self->words)), NULL));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  gtk_drop_down_set_factory (self->drop_down, factory);
  g_object_unref (factory);
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->drop_down));
  g_signal_connect_swapped (self->drop_down, "notify::selected", G_CALLBACK (selected_cb), self);
}
