/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-member-control.h"

#include "app/parts/sw-member-choice.h"
#include "app/parts/sw-member-colour.h"
#include "app/parts/sw-member-dye.h"
#include "app/parts/sw-member-entry.h"
#include "app/parts/sw-member-flag.h"
#include "app/parts/sw-member-notes.h"
#include "app/parts/sw-member-text.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  SwSubject *subject;
  const SwMember *member;
  gulong changed_id, leaving_id;
  char *refusal;
} SwMemberControlPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (SwMemberControl, sw_member_control, ADW_TYPE_BIN)

#define PRIVATE(self) ((SwMemberControlPrivate *) sw_member_control_get_instance_private (self))

enum
{
  PROP_0,
  PROP_REFUSAL,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

void
sw_member_control_show (SwMemberControl *self)
{
  SwMemberControlPrivate *priv = PRIVATE (self);
  gboolean several = FALSE;
  SwValue value;

  if (priv->member == NULL)
    return;
  if (priv->subject != NULL && sw_subject_get (priv->subject, priv->member, &value, &several))
    {
      SW_MEMBER_CONTROL_GET_CLASS (self)->show (self, &value, several);
      sw_value_clear (&value);
    }
  else
    SW_MEMBER_CONTROL_GET_CLASS (self)->show (self, NULL, FALSE);
}

static void
subject_leaving_cb (SwMemberControl *self)
{
  if (SW_MEMBER_CONTROL_GET_CLASS (self)->leave != NULL)
    SW_MEMBER_CONTROL_GET_CLASS (self)->leave (self);
  sw_member_control_refuse (self, NULL);
}

static void
unbind (SwMemberControl *self)
{
  SwMemberControlPrivate *priv = PRIVATE (self);

  if (priv->subject != NULL)
    {
      g_clear_signal_handler (&priv->changed_id, priv->subject);
      g_clear_signal_handler (&priv->leaving_id, priv->subject);
    }
  g_clear_object (&priv->subject);
}

static void
sw_member_control_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_REFUSAL:
      g_value_set_string (value, PRIVATE (SW_MEMBER_CONTROL (object))->refusal);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_member_control_dispose (GObject *object)
{
  unbind (SW_MEMBER_CONTROL (object));

  G_OBJECT_CLASS (sw_member_control_parent_class)->dispose (object);
}

static void
sw_member_control_finalize (GObject *object)
{
  g_free (PRIVATE (SW_MEMBER_CONTROL (object))->refusal);

  G_OBJECT_CLASS (sw_member_control_parent_class)->finalize (object);
}

void
sw_member_control_mark_widget (GtkWidget *widget, gboolean refused)
{
  if (refused)
    gtk_widget_add_css_class (widget, "error");
  else
    gtk_widget_remove_css_class (widget, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_STATE_INVALID, refused ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

static void
sw_member_control_mark (SwMemberControl *self, gboolean refused)
{
  sw_member_control_mark_widget (adw_bin_get_child (ADW_BIN (self)), refused);
}

static void
sw_member_control_class_init (SwMemberControlClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sw_member_control_get_property;
  object_class->dispose = sw_member_control_dispose;
  object_class->finalize = sw_member_control_finalize;
  klass->mark = sw_member_control_mark;

  props[PROP_REFUSAL] = g_param_spec_string ("refusal", NULL, NULL, NULL, G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
sw_member_control_init (SwMemberControl *self)
{
}

GtkWidget *
sw_member_control_new (SwSubject *subject, const SwMember *member)
{
  GType types[] = {
    [SW_KIND_NUMBER] = SW_TYPE_MEMBER_ENTRY,
    [SW_KIND_WHOLE] = SW_TYPE_MEMBER_ENTRY,
    [SW_KIND_TEXT] = SW_TYPE_MEMBER_TEXT,
    [SW_KIND_CHOICE] = SW_TYPE_MEMBER_CHOICE,
    [SW_KIND_FLAG] = SW_TYPE_MEMBER_FLAG,
    [SW_KIND_COLOUR] = SW_TYPE_MEMBER_COLOUR,
    [SW_KIND_DYE] = SW_TYPE_MEMBER_DYE,
  };
  SwMemberControl *self;

  g_return_val_if_fail (member != NULL && (gsize) member->kind < G_N_ELEMENTS (types), NULL);

  self = g_object_new (sw_member_is_notes (member) ? SW_TYPE_MEMBER_NOTES : types[member->kind], NULL);
  sw_member_control_bind (self, subject, member);
  sw_member_control_set_label (self, _ (member->label));
  return GTK_WIDGET (self);
}

void
sw_member_control_bind (SwMemberControl *self, SwSubject *subject, const SwMember *member)
{
  SwMemberControlPrivate *priv = PRIVATE (self);

  g_return_if_fail (SW_IS_MEMBER_CONTROL (self));

  if (priv->subject != NULL)
    subject_leaving_cb (self);
  unbind (self);
  priv->member = member;
  if (subject == NULL)
    return;
  priv->subject = g_object_ref (subject);
  priv->changed_id = g_signal_connect_swapped (subject, "changed", G_CALLBACK (sw_member_control_show), self);
  priv->leaving_id = g_signal_connect_swapped (subject, "leaving", G_CALLBACK (subject_leaving_cb), self);
  sw_member_control_show (self);
}

SwSubject *
sw_member_control_get_subject (SwMemberControl *self)
{
  g_return_val_if_fail (SW_IS_MEMBER_CONTROL (self), NULL);
  return PRIVATE (self)->subject;
}

const SwMember *
sw_member_control_get_member (SwMemberControl *self)
{
  g_return_val_if_fail (SW_IS_MEMBER_CONTROL (self), NULL);
  return PRIVATE (self)->member;
}

const char *
sw_member_control_get_refusal (SwMemberControl *self)
{
  g_return_val_if_fail (SW_IS_MEMBER_CONTROL (self), NULL);
  return PRIVATE (self)->refusal;
}

void
sw_member_control_set_label (SwMemberControl *self, const char *label)
{
  g_return_if_fail (SW_IS_MEMBER_CONTROL (self));

  gtk_accessible_update_property (GTK_ACCESSIBLE (adw_bin_get_child (ADW_BIN (self))), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

gboolean
sw_member_control_put (SwMemberControl *self, const SwValue *value, gboolean series)
{
  SwMemberControlPrivate *priv = PRIVATE (self);
  g_autoptr (GError) error = NULL;

  g_return_val_if_fail (SW_IS_MEMBER_CONTROL (self), FALSE);

  if (priv->subject == NULL)
    return FALSE;
  if (sw_subject_set (priv->subject, priv->member, value, series, &error))
    {
      sw_member_control_refuse (self, NULL);
      return TRUE;
    }
  sw_member_control_refuse (self, error->message);
  return FALSE;
}

void
sw_member_control_refuse (SwMemberControl *self, const char *sentence)
{
  SwMemberControlPrivate *priv = PRIVATE (self);
  GtkWidget *child = adw_bin_get_child (ADW_BIN (self));

  if (g_strcmp0 (priv->refusal, sentence) == 0)
    return;
  g_free (priv->refusal);
  priv->refusal = g_strdup (sentence);
  SW_MEMBER_CONTROL_GET_CLASS (self)->mark (self, sentence != NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, sentence != NULL ? sentence : "", -1);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_REFUSAL]);
}
