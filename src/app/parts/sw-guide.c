/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-guide.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  GtkWidget *target; /* weak */
  const char *title, *text;
} Stop;

struct _SwGuide
{
  GtkPopover parent_instance;

  GPtrArray *stops; /* of Stop */
  guint at;
  gboolean running;
  GtkWidget *before; /* weak: what had the focus */

  GtkLabel *title;
  GtkLabel *text;
  GtkLabel *place;
  GtkButton *leave;
  GtkButton *next;
};

G_DEFINE_FINAL_TYPE (SwGuide, sw_guide, GTK_TYPE_POPOVER)

enum
{
  SIGNAL_FINISHED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
leave_cb (SwGuide *self)
{
  if (!self->running)
    return;
  self->running = FALSE;
  gtk_popover_popdown (GTK_POPOVER (self));
  if (self->before != NULL)
    gtk_widget_grab_focus (self->before);
  g_signal_emit (self, signals[SIGNAL_FINISHED], 0);
}

static gboolean
can_be_seen (const Stop *stop)
{
  return stop->target != NULL && gtk_widget_get_mapped (stop->target);
}

/* Beside a pane at the window's edge, in the middle of the large canvas, else above or below. */
static GtkPositionType
choose_side (const graphene_rect_t *bounds, GtkWidget *parent)
{
  float width = (float) gtk_widget_get_width (parent);
  float height = (float) gtk_widget_get_height (parent);

  if (bounds->origin.x + bounds->size.width < width / 2)
    return GTK_POS_RIGHT;
  if (bounds->origin.x > width / 2)
    return GTK_POS_LEFT;
  return bounds->origin.y > height / 2 ? GTK_POS_TOP : GTK_POS_BOTTOM;
}

static gboolean
point_at (SwGuide *self, GtkWidget *target)
{
  GtkWidget *parent = gtk_widget_get_parent (GTK_WIDGET (self));
  GtkPositionType side;
  graphene_rect_t bounds;

  if (!gtk_widget_compute_bounds (target, parent, &bounds))
    return FALSE;

  side = choose_side (&bounds, parent);
  if (side == GTK_POS_BOTTOM && bounds.size.height > (float) gtk_widget_get_height (parent) / 2)
    bounds.size.height /= 2;
  gtk_popover_set_position (GTK_POPOVER (self), side);
  gtk_popover_set_pointing_to (GTK_POPOVER (self), &(GdkRectangle){ (int) bounds.origin.x, (int) bounds.origin.y,
                                                                    (int) bounds.size.width, (int) bounds.size.height });
  return TRUE;
}

static void
show_stop (SwGuide *self)
{
  const Stop *stop = self->stops->pdata[self->at];
  gboolean last = self->at + 1 == self->stops->len;
  g_autofree char *place = NULL;

  /* Translators: how far the guide has come: 2 of 5 */
  place = g_strdup_printf (_ ("%u of %u"), self->at + 1, self->stops->len);
  gtk_label_set_text (self->title, stop->title);
  gtk_label_set_text (self->text, stop->text);
  gtk_label_set_text (self->place, place);
  gtk_button_set_label (self->next, last ? _ ("_Begin") : _ ("_Next"));
  gtk_widget_set_visible (GTK_WIDGET (self->leave), !last);
  gtk_popover_popup (GTK_POPOVER (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->next));
}

static void
go_on (SwGuide *self)
{
  for (; self->at < self->stops->len; self->at++)
    {
      const Stop *stop = self->stops->pdata[self->at];

      if (can_be_seen (stop) && point_at (self, stop->target))
        {
          show_stop (self);
          return;
        }
    }
  leave_cb (self);
}

static void
next_cb (SwGuide *self)
{
  self->at++;
  go_on (self);
}

static void
leave_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  leave_cb (SW_GUIDE (widget));
}

/* A popover keeps keys from the window's shortcuts; this one is no menu, so work goes on around it. */
static gboolean
key_pressed_cb (SwGuide *self, guint keyval, guint keycode, GdkModifierType state)
{
  GtkWidget *window = GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (self)));
  g_autofree char *accel = gtk_accelerator_name (keyval, state & gtk_accelerator_get_default_mod_mask ());
  g_auto (GStrv) actions = gtk_application_get_actions_for_accel (gtk_window_get_application (GTK_WINDOW (window)), accel);
  gboolean handled = FALSE;

  for (gsize i = 0; actions[i] != NULL && !handled; i++)
    {
      g_autoptr (GVariant) target = NULL;
      g_autofree char *name = NULL;

      if (g_action_parse_detailed_name (actions[i], &name, &target, NULL))
        handled = gtk_widget_activate_action_variant (window, name, target);
    }
  return handled;
}

static void
stop_free (gpointer data)
{
  Stop *stop = data;

  g_clear_weak_pointer (&stop->target);
  g_free (stop);
}

static void
sw_guide_finalize (GObject *object)
{
  SwGuide *self = SW_GUIDE (object);

  g_clear_weak_pointer (&self->before);
  g_ptr_array_unref (self->stops);

  G_OBJECT_CLASS (sw_guide_parent_class)->finalize (object);
}

static void
sw_guide_class_init (SwGuideClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = sw_guide_finalize;

  signals[SIGNAL_FINISHED] = g_signal_new ("finished", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                           G_TYPE_NONE, 0);

  gtk_widget_class_install_action (widget_class, "guide.leave", NULL, leave_action);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-guide.ui");
  gtk_widget_class_bind_template_child (widget_class, SwGuide, title);
  gtk_widget_class_bind_template_child (widget_class, SwGuide, text);
  gtk_widget_class_bind_template_child (widget_class, SwGuide, place);
  gtk_widget_class_bind_template_child (widget_class, SwGuide, leave);
  gtk_widget_class_bind_template_child (widget_class, SwGuide, next);
  gtk_widget_class_bind_template_callback (widget_class, key_pressed_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
  gtk_widget_class_bind_template_callback (widget_class, next_cb);
}

static void
sw_guide_init (SwGuide *self)
{
  self->stops = g_ptr_array_new_with_free_func (stop_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}

SwGuide *
sw_guide_new (GtkWidget *parent)
{
  SwGuide *self = g_object_new (SW_TYPE_GUIDE, NULL);

  gtk_widget_set_parent (GTK_WIDGET (self), parent);
  return self;
}

void
sw_guide_add (SwGuide *self, GtkWidget *target, const char *title, const char *text)
{
  Stop *stop;

  g_return_if_fail (SW_IS_GUIDE (self));
  g_return_if_fail (GTK_IS_WIDGET (target));

  stop = g_new0 (Stop, 1);
  g_ptr_array_add (self->stops, stop);
  g_set_weak_pointer (&stop->target, target);
  stop->title = title;
  stop->text = text;
}

void
sw_guide_start (SwGuide *self)
{
  g_return_if_fail (SW_IS_GUIDE (self));

  if (!self->running)
    g_set_weak_pointer (&self->before, gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (self))));
  self->running = TRUE;
  self->at = 0;
  go_on (self);
}
