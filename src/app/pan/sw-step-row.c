/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-step-row.h"

#include "app/parts/sw-balance-bar.h"
#include "app/desk/sw-dyeing-words.h"
#include "app/parts/sw-member-entry.h"
#include "app/parts/sw-seen.h"
#include "app/desk/sw-step-words.h"
#include "app/parts/sw-swatch.h"
#include "draw/sw-pan-geometry.h"

#include <glib/gi18n-lib.h>

struct _SwStepRow
{
  GtkWidget parent_instance;

  SwEntry *entry;
  gulong revision_id;
  SwLive *live;
  SwSubject *subject;
  gboolean inches;

  GtkImage *handle;
  GtkImage *icon;
  GtkLabel *title;
  GtkLabel *detail;
  GtkLabel *refusal;
  SwBalanceBar *bar;
  SwMemberEntry *first;
  SwMemberEntry *second;
  SwSwatch *swatch;
};

G_DEFINE_FINAL_TYPE (SwStepRow, sw_step_row, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_ENTRY,
  PROP_LIVE,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];
static guint touched_signal;

/* What a step is measured by, in its row. */
static const char *const amounts[SW_N_STEP_KINDS][2] = {
  [SW_STEP_BAND] = { "amount_ml" },
  [SW_STEP_SPLOTCH] = { "amount_ml" },
  [SW_STEP_SPECKLE] = { "amount_ml" },
  [SW_STEP_REST] = { "minutes", "temperature_c" },
  [SW_STEP_ACID] = { "volume_ml", "acid_percent" },
  [SW_STEP_WATER] = { "volume_ml" },
  [SW_STEP_SET] = { "minutes", "temperature_c" },
};

static SwSystem
system_of (SwStepRow *self)
{
  return self->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC;
}

static const SwStep *
step_of (SwStepRow *self)
{
  return self->entry != NULL ? sw_entry_get_step (self->entry) : NULL;
}

static SwForecast *
forecast_of (SwStepRow *self)
{
  return self->live != NULL ? sw_live_get_forecast (self->live) : NULL;
}

/* Showing */

/* A list's own row is what the keyboard and a screen reader come to. */
static void
tell_accessible (SwStepRow *self, const char *sentence, const char *running)
{
  GtkWidget *row = gtk_widget_get_parent (GTK_WIDGET (self));

  if (row == NULL)
    return;
  gtk_accessible_update_property (GTK_ACCESSIBLE (row),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, sentence,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, running,
                                  -1);
}

static char *
detail_text (SwStepRow *self, const SwSketch *sketch, const SwStep *step, const char *remark)
{
  if (remark != NULL)
    return g_strdup (remark);
  if (sw_step_is_pour (step))
    return sw_step_place (sketch, step, system_of (self));
  return sw_dyeing_short (forecast_of (self), step->id);
}

static void
show_as_remark (GtkLabel *label, gboolean remark)
{
  gtk_widget_remove_css_class (GTK_WIDGET (label), remark ? "dim-label" : "warning");
  gtk_widget_add_css_class (GTK_WIDGET (label), remark ? "warning" : "dim-label");
}

static void
show_words (gpointer row)
{
  SwStepRow *self = row;
  const SwStep *step = step_of (self);
  const SwSketch *sketch;
  g_autofree char *title = NULL;
  g_autofree char *detail = NULL;
  g_autofree char *sentence = NULL;
  g_autofree char *remark = NULL;
  g_autofree char *running = NULL;

  if (step == NULL)
    return;
  sketch = sw_document_get_sketch (sw_entry_get_document (self->entry));
  title = sw_step_title (sketch, step);
  remark = sw_step_remark (sketch, step);
  detail = detail_text (self, sketch, step, remark);
  sentence = sw_step_reading (sketch, step, system_of (self));
  running = remark != NULL ? g_strdup (remark) : sw_dyeing_sentence (forecast_of (self), step->id, system_of (self));
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->detail, detail);
  show_as_remark (self->detail, remark != NULL);
  tell_accessible (self, sentence, running);
  sw_balance_bar_set_step (self->bar, forecast_of (self), step->id, 0);
}

/* Tooltips are written when they are wanted: set anew with each forecast, each would ask the display where the pointer is.
 * There is none on the amounts: it would hide what is being typed into. */
static gboolean
query_sentence_cb (SwStepRow *self, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  const SwStep *step = step_of (self);
  g_autofree char *sentence = NULL;

  if (step == NULL)
    return FALSE;
  sentence = sw_step_reading (sw_document_get_sketch (sw_entry_get_document (self->entry)), step, system_of (self));
  gtk_tooltip_set_text (tooltip, sentence);
  return TRUE;
}

static gboolean
query_running_cb (SwStepRow *self, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  const SwStep *step = step_of (self);
  g_autofree char *running = step != NULL ? sw_dyeing_sentence (forecast_of (self), step->id, system_of (self)) : NULL;

  if (running == NULL || *running == '\0')
    return FALSE;
  gtk_tooltip_set_text (tooltip, running);
  return TRUE;
}

/* A pour bears the number that the picture shows on it, on its dye's colour. */
static void
show_pour (SwStepRow *self, const SwSketch *sketch, const SwStep *step)
{
  gboolean pour = sw_step_is_pour (step);
  const SwDye *dye = pour ? sw_sketch_find_dye (sketch, step->dye) : NULL;
  g_autofree char *number = pour ? g_strdup_printf ("%u", sw_pan_pour_number (sketch, step->id)) : NULL;

  /* An empty place keeps the amounts of all rows in one column. */
  gtk_widget_set_opacity (GTK_WIDGET (self->swatch), pour ? 1 : 0);
  sw_swatch_set_sample (self->swatch, dye != NULL ? &dye->sample : NULL);
  sw_swatch_set_text (self->swatch, number);
}

static void
show_amount (SwStepRow *self, SwMemberEntry *entry, const SwStep *step, int which)
{
  const char *name = amounts[step->kind][which];
  const SwMember *member;

  if (which == 0 && step->kind == SW_STEP_SPECKLE && step->dry)
    name = "grams";
  member = name != NULL ? sw_record_find_member (SW_RECORD_STEP, name) : NULL;
  gtk_widget_set_visible (GTK_WIDGET (entry), member != NULL);
  if (member == NULL || member == sw_member_control_get_member (SW_MEMBER_CONTROL (entry)))
    return;
  sw_member_control_bind (SW_MEMBER_CONTROL (entry), self->subject, member);
  sw_member_control_set_label (SW_MEMBER_CONTROL (entry), _ (member->label));
}

static void
show (SwStepRow *self)
{
  const SwStep *step = step_of (self);
  const SwSketch *sketch;
  g_autofree char *icon = NULL;

  if (step == NULL)
    return;
  sketch = sw_document_get_sketch (sw_entry_get_document (self->entry));
  icon = g_strdup_printf ("strandwise-%s-symbolic", sw_step_kind_name (step->kind));
  gtk_image_set_from_icon_name (self->icon, icon);
  show_pour (self, sketch, step);
  show_amount (self, self->first, step, 0);
  show_amount (self, self->second, step, 1);
  show_words (self);
}

static void
show_refusal (SwStepRow *self)
{
  const char *first = sw_member_control_get_refusal (SW_MEMBER_CONTROL (self->first));
  const char *second = sw_member_control_get_refusal (SW_MEMBER_CONTROL (self->second));
  const char *sentence = first != NULL ? first : second;

  gtk_label_set_text (self->refusal, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->refusal), sentence != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->detail), sentence == NULL);
}

/* Following */

static void
set_entry (SwStepRow *self, SwEntry *entry)
{
  guint id = entry != NULL ? sw_entry_get_id (entry) : 0;

  if (self->entry == entry)
    return;
  if (self->entry != NULL)
    g_clear_signal_handler (&self->revision_id, self->entry);
  sw_subject_set_ids (self->subject, &id, 0);
  g_set_object (&self->entry, entry);
  if (entry == NULL)
    return;
  self->revision_id = g_signal_connect_swapped (entry, "notify::revision", G_CALLBACK (show), self);
  sw_subject_set_document (self->subject, sw_entry_get_document (entry));
  sw_subject_set_ids (self->subject, &id, 1);
  show (self);
}

static void
set_live (SwStepRow *self, SwLive *live)
{
  if (self->live == live)
    return;
  if (self->live != NULL)
    sw_seen_disconnect (GTK_WIDGET (self), self->live);
  g_set_object (&self->live, live);
  if (live != NULL)
    sw_seen_connect (GTK_WIDGET (self), live, "told", show_words);
  show_words (self);
}

/* As much room as the longest amount of the system needs: the name gets the rest. */
static void
fit_amounts (SwStepRow *self)
{
  sw_member_entry_set_inline (self->first, self->inches ? 8 : 7);
  sw_member_entry_set_inline (self->second, 5);
}

static void
set_inches (SwStepRow *self, gboolean inches)
{
  self->inches = inches;
  fit_amounts (self);
  g_object_set (self->subject, "inches", inches, NULL);
  show_words (self);
}

static void
focus_entered_cb (SwStepRow *self)
{
  g_signal_emit (self, touched_signal, 0);
}

/* The row that a dragged step hangs on to is the whole of it, as wide as the list. */
void
sw_step_row_set_drop (SwStepRow *self, SwDrop drop)
{
  GtkWidget *row;

  g_return_if_fail (SW_IS_STEP_ROW (self));

  row = gtk_widget_get_parent (GTK_WIDGET (self));
  if (row == NULL)
    return;
  gtk_widget_remove_css_class (row, "drop-above");
  gtk_widget_remove_css_class (row, "drop-below");
  if (drop != SW_DROP_NONE)
    gtk_widget_add_css_class (row, drop == SW_DROP_ABOVE ? "drop-above" : "drop-below");
}

SwEntry *
sw_step_row_get_entry (SwStepRow *self)
{
  g_return_val_if_fail (SW_IS_STEP_ROW (self), NULL);
  return self->entry;
}

/* Dragging */

static GdkContentProvider *
drag_prepare_cb (GtkDragSource *source, double x, double y, SwStepRow *self)
{
  return self->entry != NULL ? gdk_content_provider_new_typed (SW_TYPE_ENTRY, self->entry) : NULL;
}

static void
drag_begin_cb (GtkDragSource *source, GdkDrag *drag, SwStepRow *self)
{
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (GTK_WIDGET (self));
  g_autoptr (GdkPaintable) still = gdk_paintable_get_current_image (paintable);
  GtkWidget *picture = gtk_picture_new_for_paintable (still);

  gtk_widget_add_css_class (picture, "dragged-row");
  gtk_drag_icon_set_child (GTK_DRAG_ICON (gtk_drag_icon_get_for_drag (drag)), picture);
  gdk_drag_set_hotspot (drag, 12, gtk_widget_get_height (GTK_WIDGET (self)) / 2);
}

static void
make_draggable (SwStepRow *self)
{
  GtkDragSource *source = gtk_drag_source_new ();

  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect (source, "prepare", G_CALLBACK (drag_prepare_cb), self);
  g_signal_connect (source, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->handle), GTK_EVENT_CONTROLLER (source));
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self->handle), "grab");
}

/* Lifecycle */

static void
sw_step_row_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwStepRow *self = SW_STEP_ROW (object);

  switch (prop_id)
    {
    case PROP_ENTRY:
      g_value_set_object (value, self->entry);
      break;
    case PROP_LIVE:
      g_value_set_object (value, self->live);
      break;
    case PROP_INCHES:
      g_value_set_boolean (value, self->inches);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_step_row_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwStepRow *self = SW_STEP_ROW (object);

  switch (prop_id)
    {
    case PROP_ENTRY:
      set_entry (self, g_value_get_object (value));
      break;
    case PROP_LIVE:
      set_live (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      set_inches (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_step_row_dispose (GObject *object)
{
  SwStepRow *self = SW_STEP_ROW (object);
  GtkWidget *child;

  if (self->entry != NULL)
    g_clear_signal_handler (&self->revision_id, self->entry);
  if (self->live != NULL)
    sw_seen_disconnect (GTK_WIDGET (self), self->live);
  g_clear_object (&self->entry);
  g_clear_object (&self->live);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->subject);

  G_OBJECT_CLASS (sw_step_row_parent_class)->dispose (object);
}

static void
sw_step_row_class_init (SwStepRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_step_row_get_property;
  object_class->set_property = sw_step_row_set_property;
  object_class->dispose = sw_step_row_dispose;

  props[PROP_ENTRY] = g_param_spec_object ("entry", NULL, NULL, SW_TYPE_ENTRY, flags);
  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  touched_signal = g_signal_new ("touched", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);

  g_type_ensure (SW_TYPE_BALANCE_BAR);
  g_type_ensure (SW_TYPE_MEMBER_ENTRY);
  g_type_ensure (SW_TYPE_SWATCH);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-step-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, handle);
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, icon);
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, title);
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, detail);
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, refusal);
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, bar);
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, first);
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, second);
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, swatch);
  gtk_widget_class_bind_template_callback (widget_class, query_sentence_cb);
  gtk_widget_class_bind_template_callback (widget_class, query_running_cb);
}

static void
sw_step_row_init (SwStepRow *self)
{
  SwMemberEntry *entries[2];

  self->subject = sw_subject_new (NULL, SW_RECORD_STEP);
  gtk_widget_init_template (GTK_WIDGET (self));
  make_draggable (self);

  fit_amounts (self);
  entries[0] = self->first;
  entries[1] = self->second;
  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      GtkEventController *focus = gtk_event_controller_focus_new ();

      g_signal_connect_swapped (entries[i], "notify::refusal", G_CALLBACK (show_refusal), self);
      g_signal_connect_swapped (focus, "enter", G_CALLBACK (focus_entered_cb), self);
      gtk_widget_add_controller (GTK_WIDGET (entries[i]), focus);
    }
}
