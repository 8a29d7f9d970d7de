/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-dye-page.h"

#include "app/desk/sw-dye-edits.h"
#include "app/parts/sw-expander-name.h"
#include "app/parts/sw-field-row.h"
#include "app/parts/sw-focus.h"
#include "app/parts/sw-seen.h"

#include <glib/gi18n-lib.h>

struct _SwDyePage
{
  AdwBin parent_instance;

  SwLive *live;
  SwSubject *subject;
  GtkLabel *window;  /* the pH that suits the class */
  GtkLabel *warning; /* that the bath does not */
  GtkWidget *window_row;
  GtkWidget *name_row;

  AdwPreferencesGroup *fields;
  AdwPreferencesGroup *strike;
};

G_DEFINE_FINAL_TYPE (SwDyePage, sw_dye_page, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_DYE,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];
static guint done_signal;

/* Where a member stands; those that no row names come under "More". */
static const char *const first[] = { "name", "sample", "sample_depth_percent", "stock_percent" };
static const char *const second[] = { "dye_class", "half_time_min", "spread" };

static void
show_window (gpointer page)
{
  SwDyePage *self = page;
  guint id = sw_subject_first (self->subject);
  const SwDye *dye = id != 0 ? sw_sketch_find_dye (sw_document_get_sketch (sw_subject_get_document (self->subject)), id) : NULL;
  g_autofree char *window = dye != NULL ? sw_dye_window_words (dye->dye_class) : NULL;
  g_autofree char *warning = dye != NULL ? sw_dye_window_warning (sw_live_get_forecast (self->live), id) : NULL;

  gtk_label_set_text (self->window, window != NULL ? window : "");
  gtk_label_set_text (self->warning, warning != NULL ? warning : "");
  gtk_widget_set_visible (GTK_WIDGET (self->warning), warning != NULL);
  gtk_widget_set_visible (self->window_row, window != NULL);
}

static gboolean
is_among (const char *name, const char *const *names, gsize n)
{
  for (gsize i = 0; i < n; i++)
    if (g_str_equal (names[i], name))
      return TRUE;
  return FALSE;
}

static GtkLabel *
note_label (GtkBox *box, const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "caption");
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (box, label);
  return GTK_LABEL (label);
}

static void
add_window_row (SwDyePage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->window_row = g_object_new (ADW_TYPE_PREFERENCES_ROW, "activatable", FALSE, "child", box, "title", _ ("pH"), NULL);
  gtk_widget_add_css_class (self->window_row, "field-row");
  self->window = note_label (GTK_BOX (box), "dim-label");
  self->warning = note_label (GTK_BOX (box), "warning");
  adw_preferences_group_add (self->strike, self->window_row);
}

static void
add_fields (SwDyePage *self)
{
  GtkWidget *more = g_object_new (ADW_TYPE_EXPANDER_ROW, "title", _ ("More"), NULL);
  const SwMember *members;
  gsize n;

  for (gsize i = 0; i < G_N_ELEMENTS (first); i++)
    {
      GtkWidget *row = sw_field_row_new (self->subject, sw_record_find_member (SW_RECORD_DYE, first[i]));

      adw_preferences_group_add (self->fields, row);
      if (i == 0)
        self->name_row = row;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (second); i++)
    {
      adw_preferences_group_add (self->strike, sw_field_row_new (self->subject, sw_record_find_member (SW_RECORD_DYE, second[i])));
      if (i == 0)
        add_window_row (self);
    }
  members = sw_record_members (SW_RECORD_DYE, &n);
  for (gsize i = 0; i < n; i++)
    if (!is_among (members[i].name, first, G_N_ELEMENTS (first)) && !is_among (members[i].name, second, G_N_ELEMENTS (second)))
      adw_expander_row_add_row (ADW_EXPANDER_ROW (more), sw_field_row_new (self->subject, &members[i]));
  sw_expander_tell_name (ADW_EXPANDER_ROW (more));
  adw_preferences_group_add (self->strike, more);
}

static void
done_cb (SwDyePage *self)
{
  g_signal_emit (self, done_signal, 0);
}

static gboolean
escape_cb (GtkWidget *widget, GVariant *arguments, gpointer user_data)
{
  done_cb (SW_DYE_PAGE (widget));
  return GDK_EVENT_STOP;
}

static gboolean
sw_dye_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_child_focus (SW_DYE_PAGE (widget)->name_row, GTK_DIR_TAB_FORWARD);
}

static void
set_live (SwDyePage *self, SwLive *live)
{
  if (self->live == live)
    return;
  if (self->live != NULL)
    sw_seen_disconnect (GTK_WIDGET (self), self->live);
  g_set_object (&self->live, live);
  sw_subject_set_document (self->subject, live != NULL ? sw_live_get_document (live) : NULL);
  if (live != NULL)
    sw_seen_connect (GTK_WIDGET (self), live, "told", show_window);
}

static void
sw_dye_page_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwDyePage *self = SW_DYE_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, self->live);
      break;
    case PROP_DYE:
      g_value_set_uint (value, sw_subject_first (self->subject));
      break;
    case PROP_INCHES:
      g_object_get_property (G_OBJECT (self->subject), "inches", value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_dye_page_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwDyePage *self = SW_DYE_PAGE (object);
  guint id;

  switch (prop_id)
    {
    case PROP_LIVE:
      set_live (self, g_value_get_object (value));
      break;
    case PROP_DYE:
      id = g_value_get_uint (value);
      sw_subject_set_ids (self->subject, &id, id != 0 ? 1 : 0);
      break;
    case PROP_INCHES:
      g_object_set_property (G_OBJECT (self->subject), "inches", value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_dye_page_dispose (GObject *object)
{
  SwDyePage *self = SW_DYE_PAGE (object);

  if (self->subject != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->subject, self);
      set_live (self, NULL);
    }
  g_clear_object (&self->subject);

  G_OBJECT_CLASS (sw_dye_page_parent_class)->dispose (object);
}

static void
sw_dye_page_class_init (SwDyePageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_dye_page_get_property;
  object_class->set_property = sw_dye_page_set_property;
  object_class->dispose = sw_dye_page_dispose;
  widget_class->focus = sw_focus_bin_in_order;
  widget_class->grab_focus = sw_dye_page_grab_focus;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_DYE] = g_param_spec_uint ("dye", NULL, NULL, 0, G_MAXUINT, 0, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  done_signal = g_signal_new ("done", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, escape_cb, NULL);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-dye-page.ui");
  gtk_widget_class_bind_template_child (widget_class, SwDyePage, fields);
  gtk_widget_class_bind_template_child (widget_class, SwDyePage, strike);
  gtk_widget_class_bind_template_callback (widget_class, done_cb);
}

static void
sw_dye_page_init (SwDyePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->subject = sw_subject_new (NULL, SW_RECORD_DYE);
  add_fields (self);
  g_signal_connect_swapped (self->subject, "changed", G_CALLBACK (show_window), self);
}
