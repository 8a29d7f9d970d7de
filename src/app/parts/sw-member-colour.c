/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-member-colour.h"

#include "app/desk/sw-spectrum-file.h"
#include "app/parts/sw-swatch.h"
#include "app/desk/sw-units.h"
#include "colour/sw-colour-name.h"
#include "colour/sw-recover.h"

#include <glib/gi18n-lib.h>
#include <math.h>

struct _SwMemberColour
{
  SwMemberControl parent_instance;

  GtkColorButton *button;
  GtkEntry *code;
  GtkEntry *l, *a, *b;
  GtkLabel *origin;
  GtkWidget *open;

  GCancellable *loading;
  gboolean showing;
  GtkEntry *typed; /* holds text that was not taken over yet, or NULL */
};

G_DEFINE_FINAL_TYPE (SwMemberColour, sw_member_colour, SW_TYPE_MEMBER_CONTROL)

/* Showing */

static void
set_number (GtkEntry *entry, double number)
{
  g_autofree char *text = sw_units_format (SW_QUANTITY_NONE, round (number * 10) / 10, SW_SYSTEM_METRIC);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static void
show_sample (SwMemberColour *self, const SwSample *sample)
{
  GdkRGBA rgba = sw_sample_to_rgba (sample);
  SwLab lab = sw_sample_lab (sample);
  g_autofree char *code = sw_sample_code (sample);
  g_autofree char *name = sw_colour_name (lab);
  /* Translators: where a colour comes from, and its name: "From a measured spectrum: deep blue" */
  g_autofree char *origin = g_strdup_printf (_ ("%1$s: %2$s"), sw_sample_origin (sample), name);

  gtk_color_chooser_set_rgba (GTK_COLOR_CHOOSER (self->button), &rgba);
  gtk_editable_set_text (GTK_EDITABLE (self->code), code);
  set_number (self->l, lab.l);
  set_number (self->a, lab.a);
  set_number (self->b, lab.b);
  gtk_label_set_text (self->origin, origin);
}

static void
sw_member_colour_show (SwMemberControl *control, const SwValue *value, gboolean several)
{
  SwMemberColour *self = SW_MEMBER_COLOUR (control);

  if (value == NULL || self->typed != NULL)
    return;
  self->showing = TRUE;
  show_sample (self, &value->as.colour);
  self->showing = FALSE;
}

/* Only what was typed is marked; the rest of the colour is well. */
static void
sw_member_colour_mark (SwMemberControl *control, gboolean refused)
{
  SwMemberColour *self = SW_MEMBER_COLOUR (control);
  GtkEntry *entries[] = { self->code, self->l, self->a, self->b };

  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      gboolean typed = self->typed != NULL && (entries[i] == self->code) == (self->typed == self->code);

      sw_member_control_mark_widget (GTK_WIDGET (entries[i]), refused && typed);
    }
}

/* Taking over */

static gboolean
put_sample (SwMemberColour *self, const SwSample *sample)
{
  SwValue value = sw_value_colour (sample);
  double reflectance[SW_BANDS];
  g_autoptr (GError) error = NULL;

  /* What no yarn can have would be refused by the forecast; better here, beside the field. */
  if (!sw_sample_reflectance (sample, reflectance, &error))
    {
      sw_member_control_refuse (SW_MEMBER_CONTROL (self), error->message);
      return FALSE;
    }
  return sw_member_control_put (SW_MEMBER_CONTROL (self), &value, FALSE);
}

static gboolean
read_number (GtkEntry *entry, double *number, GError **error)
{
  return sw_units_parse (SW_QUANTITY_NONE, gtk_editable_get_text (GTK_EDITABLE (entry)), SW_SYSTEM_METRIC, 0, number, error);
}

static gboolean
read_typed (SwMemberColour *self, SwSample *sample, GError **error)
{
  SwLab lab;

  if (self->typed == self->code)
    return sw_sample_from_code (gtk_editable_get_text (GTK_EDITABLE (self->code)), sample, error);
  return read_number (self->l, &lab.l, error) && read_number (self->a, &lab.a, error) && read_number (self->b, &lab.b, error) &&
         sw_sample_from_lab (lab, sample, error);
}

static gboolean
take_typed (SwMemberColour *self)
{
  g_autoptr (GError) error = NULL;
  SwSample sample;

  if (self->typed == NULL)
    return TRUE;
  if (!read_typed (self, &sample, &error))
    {
      sw_member_control_refuse (SW_MEMBER_CONTROL (self), error->message);
      return FALSE;
    }
  if (!put_sample (self, &sample))
    return FALSE;
  self->typed = NULL;
  sw_member_control_show (SW_MEMBER_CONTROL (self));
  return TRUE;
}

static void
sw_member_colour_leave (SwMemberControl *control)
{
  SwMemberColour *self = SW_MEMBER_COLOUR (control);

  if (take_typed (self))
    return;
  self->typed = NULL;
  sw_member_control_show (control);
}

static void
changed_cb (SwMemberColour *self, GtkEntry *entry)
{
  if (self->showing)
    return;
  self->typed = entry;
  sw_member_control_refuse (SW_MEMBER_CONTROL (self), NULL);
}

static void
colour_set_cb (SwMemberColour *self)
{
  GdkRGBA rgba;
  SwSample sample;

  gtk_color_chooser_get_rgba (GTK_COLOR_CHOOSER (self->button), &rgba);
  sample = sw_sample_from_srgb ((SwSrgb){ rgba.red, rgba.green, rgba.blue });
  self->typed = NULL;
  put_sample (self, &sample);
}

static gboolean
key_cb (GtkEventControllerKey *controller, guint key, guint code, GdkModifierType modifiers, SwMemberColour *self)
{
  GtkEntry *entry = GTK_ENTRY (gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller)));
  int step = key == GDK_KEY_Up ? 1 : key == GDK_KEY_Down ? -1
                                                         : 0;
  double number;

  if (key == GDK_KEY_Escape && self->typed != NULL)
    {
      self->typed = NULL;
      sw_member_control_refuse (SW_MEMBER_CONTROL (self), NULL);
      sw_member_control_show (SW_MEMBER_CONTROL (self));
      return GDK_EVENT_STOP;
    }
  if (step == 0 || entry == self->code || !read_number (entry, &number, NULL))
    return GDK_EVENT_PROPAGATE;
  self->showing = TRUE;
  set_number (entry, number + step);
  self->showing = FALSE;
  self->typed = entry;
  take_typed (self);
  return GDK_EVENT_STOP;
}

/* Spectra */

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SwMemberColour) self = user_data;
  g_autoptr (GError) error = NULL;
  SwSample sample;

  if (sw_spectrum_file_load_finish (result, &sample, &error))
    {
      self->typed = NULL;
      put_sample (self, &sample);
    }
  else if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    sw_member_control_refuse (SW_MEMBER_CONTROL (self), error->message);
}

static void
load (SwMemberColour *self, GFile *file)
{
  g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
  self->loading = g_cancellable_new ();
  sw_spectrum_file_load_async (file, self->loading, loaded_cb, g_object_ref (self));
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, SwMemberColour *self)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  if (file != NULL)
    load (self, file);
  g_object_unref (dialog);
}

static void
open_cb (SwMemberColour *self)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (_ ("Read a Spectrum"), window, GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Read"), NULL);
  g_autoptr (GtkFileFilter) spectra = gtk_file_filter_new ();
  g_autoptr (GtkFileFilter) all = gtk_file_filter_new ();

  gtk_file_filter_set_name (spectra, _ ("Lists of wavelength and reflectance"));
  gtk_file_filter_add_suffix (spectra, "csv");
  gtk_file_filter_add_suffix (spectra, "tsv");
  gtk_file_filter_add_suffix (spectra, "txt");
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), spectra);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), all);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect_object (dialog, "response", G_CALLBACK (chosen_cb), self, G_CONNECT_DEFAULT);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static gboolean
drop_cb (GtkDropTarget *target, const GValue *value, double x, double y, SwMemberColour *self)
{
  load (self, g_value_get_object (value));
  return TRUE;
}

static void
sw_member_colour_dispose (GObject *object)
{
  SwMemberColour *self = SW_MEMBER_COLOUR (object);

  g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);

  G_OBJECT_CLASS (sw_member_colour_parent_class)->dispose (object);
}

static void
sw_member_colour_class_init (SwMemberColourClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_member_colour_dispose;
  SW_MEMBER_CONTROL_CLASS (klass)->show = sw_member_colour_show;
  SW_MEMBER_CONTROL_CLASS (klass)->mark = sw_member_colour_mark;
  SW_MEMBER_CONTROL_CLASS (klass)->leave = sw_member_colour_leave;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-member-colour.ui");
  gtk_widget_class_bind_template_child (widget_class, SwMemberColour, button);
  gtk_widget_class_bind_template_child (widget_class, SwMemberColour, code);
  gtk_widget_class_bind_template_child (widget_class, SwMemberColour, l);
  gtk_widget_class_bind_template_child (widget_class, SwMemberColour, a);
  gtk_widget_class_bind_template_child (widget_class, SwMemberColour, b);
  gtk_widget_class_bind_template_child (widget_class, SwMemberColour, origin);
  gtk_widget_class_bind_template_child (widget_class, SwMemberColour, open);
  gtk_widget_class_bind_template_callback (widget_class, colour_set_cb);
  gtk_widget_class_bind_template_callback (widget_class, open_cb);
}

static void
follow_entry (SwMemberColour *self, GtkEntry *entry)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect_swapped (entry, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (take_typed), self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (entry), keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (sw_member_colour_leave), self);
  gtk_widget_add_controller (GTK_WIDGET (entry), focus);
}

static void
sw_member_colour_init (SwMemberColour *self)
{
  GtkDropTarget *drop = gtk_drop_target_new (G_TYPE_FILE, GDK_ACTION_COPY);

  gtk_widget_init_template (GTK_WIDGET (self));
  follow_entry (self, self->code);
  follow_entry (self, self->l);
  follow_entry (self, self->a);
  follow_entry (self, self->b);
  g_signal_connect (drop, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drop));
}
