/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-notice.h"

#include <glib/gi18n-lib.h>

struct _SwNotice
{
  GtkWidget parent_instance;

  char *sentences[SW_N_NOTICES];

  GtkRevealer *revealer;
  GtkImage *icon;
  GtkLabel *sentence;
  GtkButton *first;
  GtkButton *second;
  GtkButton *close;
};

G_DEFINE_FINAL_TYPE (SwNotice, sw_notice, GTK_TYPE_WIDGET)

static const struct
{
  const char *icon;
  gboolean may_hide; /* else it stays until it is settled */
  struct
  {
    const char *label, *action;
  } ways_out[2];
} kinds[SW_N_NOTICES] = {
  [SW_NOTICE_SAVE_FAILED] = { "dialog-error-symbolic", TRUE, { { N_ ("Save _As…"), "win.save-as" } } },
  [SW_NOTICE_OPEN_FAILED] = { "dialog-error-symbolic", TRUE, { { N_ ("_Open Another…"), "win.open" } } },
  [SW_NOTICE_DISK_CHANGED] = { "dialog-warning-symbolic", FALSE, { { N_ ("_Load Again"), "win.reload" }, { N_ ("_Keep Mine"), "win.keep-mine" } } },
  [SW_NOTICE_DISK_GONE] = { "dialog-warning-symbolic", FALSE, { { N_ ("_Save Again"), "win.save-anew" }, { N_ ("Save _As…"), "win.save-as" } } },
  [SW_NOTICE_FORECAST] = { "dialog-warning-symbolic", FALSE, { { NULL } } },
  [SW_NOTICE_DRAFTS] = { "dialog-warning-symbolic", TRUE, { { N_ ("Save _As…"), "win.save-as" } } },
  [SW_NOTICE_READ_ONLY] = { "changes-prevent-symbolic", TRUE, { { N_ ("Save _As…"), "win.save-as" } } },
  [SW_NOTICE_BROUGHT_IN] = { "dialog-information-symbolic", TRUE, { { N_ ("_Undo"), "win.undo" } } },
  [SW_NOTICE_RECOVERED] = { "document-open-recent-symbolic", TRUE, { { N_ ("_Save"), "win.save" } } },
};

static void
show_way_out (GtkButton *button, const char *label, const char *action)
{
  gtk_widget_set_visible (GTK_WIDGET (button), label != NULL);
  if (label == NULL)
    return;
  gtk_button_set_label (button, _ (label));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
}

static SwNoticeKind
weightiest (SwNotice *self)
{
  SwNoticeKind kind = 0;

  while (kind < SW_N_NOTICES && self->sentences[kind] == NULL)
    kind++;
  return kind;
}

static void
show (SwNotice *self)
{
  SwNoticeKind kind = weightiest (self);

  gtk_revealer_set_reveal_child (self->revealer, kind < SW_N_NOTICES);
  if (kind == SW_N_NOTICES)
    return;

  gtk_image_set_from_icon_name (self->icon, kinds[kind].icon);
  gtk_label_set_text (self->sentence, self->sentences[kind]);
  show_way_out (self->first, kinds[kind].ways_out[0].label, kinds[kind].ways_out[0].action);
  show_way_out (self->second, kinds[kind].ways_out[1].label, kinds[kind].ways_out[1].action);
  gtk_widget_set_visible (GTK_WIDGET (self->close), kinds[kind].may_hide);
}

static void
close_cb (SwNotice *self)
{
  SwNoticeKind kind = weightiest (self);

  if (kind < SW_N_NOTICES)
    sw_notice_set (self, kind, NULL);
}

static void
sw_notice_dispose (GObject *object)
{
  SwNotice *self = SW_NOTICE (object);

  if (self->revealer != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->revealer));
  self->revealer = NULL;

  G_OBJECT_CLASS (sw_notice_parent_class)->dispose (object);
}

static void
sw_notice_finalize (GObject *object)
{
  SwNotice *self = SW_NOTICE (object);

  for (gsize i = 0; i < SW_N_NOTICES; i++)
    g_free (self->sentences[i]);

  G_OBJECT_CLASS (sw_notice_parent_class)->finalize (object);
}

static void
sw_notice_class_init (SwNoticeClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = sw_notice_dispose;
  object_class->finalize = sw_notice_finalize;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-notice.ui");
  gtk_widget_class_bind_template_child (widget_class, SwNotice, revealer);
  gtk_widget_class_bind_template_child (widget_class, SwNotice, icon);
  gtk_widget_class_bind_template_child (widget_class, SwNotice, sentence);
  gtk_widget_class_bind_template_child (widget_class, SwNotice, first);
  gtk_widget_class_bind_template_child (widget_class, SwNotice, second);
  gtk_widget_class_bind_template_child (widget_class, SwNotice, close);
  gtk_widget_class_bind_template_callback (widget_class, close_cb);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_ALERT);
}

static void
sw_notice_init (SwNotice *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
sw_notice_set (SwNotice *self, SwNoticeKind kind, const char *sentence)
{
  g_return_if_fail (SW_IS_NOTICE (self));
  g_return_if_fail (kind < SW_N_NOTICES);

  if (g_strcmp0 (self->sentences[kind], sentence) == 0)
    return;
  g_free (self->sentences[kind]);
  self->sentences[kind] = g_strdup (sentence);
  show (self);
}
