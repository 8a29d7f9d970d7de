/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-pan-view-private.h"

#include "app/parts/sw-frame-times.h"
#include "app/parts/sw-toast.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

G_DEFINE_FINAL_TYPE (SwPanView, sw_pan_view, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_SELECTION,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

/* What the parts share */

SwDocument *
sw_pan_view_document (SwPanView *self)
{
  return self->live != NULL ? sw_live_get_document (self->live) : NULL;
}

const SwSketch *
sw_pan_view_sketch (SwPanView *self)
{
  return self->live != NULL ? sw_document_get_sketch (sw_live_get_document (self->live)) : NULL;
}

SwSystem
sw_pan_view_system (SwPanView *self)
{
  return self->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC;
}

GArray *
sw_pan_view_selected_pours (SwPanView *self)
{
  GArray *pours = g_array_new (FALSE, FALSE, sizeof (guint));
  const SwSketch *sketch = sw_pan_view_sketch (self);

  for (guint i = 0; self->selection != NULL && sketch != NULL && i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (sw_step_is_pour (step) && sw_selection_contains (self->selection, step->id))
        g_array_append_val (pours, step->id);
    }
  return pours;
}

gboolean
sw_pan_view_is_up (SwPanView *self, guint step)
{
  return sw_pan_pour_on_second (sw_pan_view_sketch (self), step) == sw_selection_get_second_face (self->selection);
}

guint
sw_pan_view_lone_pour (SwPanView *self)
{
  g_autoptr (GArray) pours = sw_pan_view_selected_pours (self);
  guint only;

  if (pours->len != 1)
    return 0;
  only = g_array_index (pours, guint, 0);
  return sw_pan_view_is_up (self, only) ? only : 0;
}

void
sw_pan_view_go_to (SwPanView *self, guint step)
{
  sw_selection_set_step (self->selection, step);
  if (step != 0)
    sw_selection_set_second_face (self->selection, sw_pan_pour_on_second (sw_pan_view_sketch (self), step));
}

void
sw_pan_view_say (SwPanView *self, const char *sentence)
{
  sw_toast (GTK_WIDGET (self), sentence);
}

gboolean
sw_pan_view_edit (SwPanView *self, SwEdit *edit, const char *name)
{
  g_autoptr (GError) error = NULL;

  if (edit == NULL || sw_document_edit (sw_pan_view_document (self), edit, name, &error))
    return TRUE;
  sw_pan_view_say (self, error->message);
  return FALSE;
}

void
sw_pan_view_describe (SwPanView *self)
{
  const SwSketch *sketch = sw_pan_view_sketch (self);
  g_autofree char *words = NULL;
  const guint *selected;
  gsize n;

  if (sketch == NULL || self->selection == NULL)
    return;
  selected = sw_selection_get_steps (self->selection, &n);
  words = sw_pan_description (sketch, sw_selection_get_second_face (self->selection), selected, n, sw_pan_view_system (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

void
sw_pan_view_relayout (SwPanView *self)
{
  const SwSketch *sketch = sw_pan_view_sketch (self);
  const int width = gtk_widget_get_width (GTK_WIDGET (self)), height = gtk_widget_get_height (GTK_WIDGET (self));

  if (sketch == NULL || width <= 0 || height <= 0)
    return;
  sw_pan_geometry_zoomed (sketch, width, height, &self->zoom, &self->geometry);
  sw_pan_picture_set_geometry (self->picture, &self->geometry);
  sw_pan_view_update_hover (self);
  sw_pan_view_update_actions (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* Following the document and the selection */

static void
document_changed_cb (SwPanView *self, guint what)
{
  if (what & (SW_CHANGED (SW_RECORD_LAY) | SW_CHANGED (SW_RECORD_REEL)))
    sw_pan_view_relayout (self);
  if (what & (SW_CHANGED (SW_RECORD_STEP) | SW_CHANGED (SW_RECORD_DYE)))
    {
      /* While something is in hand, the text would chatter. */
      if (self->hand.state == SW_HAND_FREE)
        {
          sw_pan_view_describe (self);
          sw_pan_view_update_hover (self);
        }
      sw_pan_view_update_actions (self);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* What was in hand belongs to a drawing that is gone. */
static void
document_replaced_cb (SwPanView *self)
{
  self->hand.in_group = FALSE;
  sw_pan_view_drop_hand (self);
  sw_pan_view_zoom_fit (self);
}

static void
selection_changed_cb (SwPanView *self)
{
  sw_pan_view_describe (self);
  sw_pan_view_update_hover (self);
  sw_pan_view_update_actions (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
face_changed_cb (SwPanView *self)
{
  sw_pan_picture_show_face (self->picture, sw_selection_get_second_face (self->selection));
  selection_changed_cb (self);
}

static void
tool_changed_cb (SwPanView *self)
{
  sw_pan_view_update_hover (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
set_live (SwPanView *self, SwLive *live)
{
  if (self->live == live)
    return;
  sw_pan_view_drop_hand (self);
  if (self->live != NULL)
    {
      g_clear_signal_handler (&self->changed_id, sw_live_get_document (self->live));
      g_clear_signal_handler (&self->replaced_id, sw_live_get_document (self->live));
    }
  g_set_object (&self->live, live);
  sw_pan_picture_set_live (self->picture, live);
  if (live == NULL)
    return;
  self->changed_id = g_signal_connect_swapped (sw_live_get_document (live), "changed", G_CALLBACK (document_changed_cb), self);
  self->replaced_id = g_signal_connect_swapped (sw_live_get_document (live), "replaced", G_CALLBACK (document_replaced_cb), self);
  sw_pan_view_relayout (self);
}

static void
set_selection (SwPanView *self, SwSelection *selection)
{
  if (self->selection == selection)
    return;
  sw_pan_view_drop_hand (self);
  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_data (self->selection, self);
  g_set_object (&self->selection, selection);
  if (selection == NULL)
    return;
  g_signal_connect_swapped (selection, "changed", G_CALLBACK (selection_changed_cb), self);
  g_signal_connect_swapped (selection, "notify::second-face", G_CALLBACK (face_changed_cb), self);
  g_signal_connect_swapped (selection, "notify::tool", G_CALLBACK (tool_changed_cb), self);
  sw_pan_view_connect_actions (self);
  face_changed_cb (self);
}

/* Painting */

static void
accent_of (GtkWidget *widget, double accent[3])
{
  GdkRGBA rgba = { 0.2f, 0.45f, 0.85f, 1 };

  gtk_style_context_lookup_color (gtk_widget_get_style_context (widget), "accent_bg_color", &rgba);
  accent[0] = (double) rgba.red;
  accent[1] = (double) rgba.green;
  accent[2] = (double) rgba.blue;
}

static SwBox
marquee_box (const SwHand *hand)
{
  return (SwBox){ hand->press_x + MIN (hand->by_x, 0), hand->press_y + MIN (hand->by_y, 0), ABS (hand->by_x), ABS (hand->by_y) };
}

/* What is in hand or, if nothing is, one whose handle is under the pointer. */
static char *
measure_of (SwPanView *self)
{
  const SwHand *hand = &self->hand;
  const SwStep *step = sw_sketch_find_step (sw_pan_view_sketch (self), hand->pour);
  SwPourPlace place;

  if (step == NULL || hand->state < SW_HAND_MOVES || hand->state > SW_HAND_DRAWS)
    return NULL;
  place = sw_pour_place (step);
  return sw_pan_measure (hand->state == SW_HAND_DRAWS ? SW_HANDLE_NONE : hand->handle, &place, sw_pan_view_system (self));
}

static void
snapshot_overlay (SwPanView *self, GtkSnapshot *snapshot, int width, int height)
{
  const SwHand *hand = &self->hand;
  const SwBox marquee = marquee_box (hand);
  const gboolean held = hand->state >= SW_HAND_MOVES && hand->state <= SW_HAND_DRAWS;
  g_autofree char *measure = measure_of (self);
  SwPanOverlay overlay = {
    .sketch = sw_pan_view_sketch (self),
    .geometry = &self->geometry,
    .dark = adw_style_manager_get_dark (adw_style_manager_get_default ()),
    .second_face = sw_selection_get_second_face (self->selection),
    .inches = self->inches,
    .hovered = hand->state == SW_HAND_FREE ? self->hovered : 0,
    .grips = sw_pan_view_lone_pour (self),
    .held = held ? hand->handle : self->hovered_handle,
    .marquee = hand->state == SW_HAND_MARKS ? &marquee : NULL,
    .guides = { hand->hits[SW_AXIS_ALONG], hand->hits[SW_AXIS_ACROSS] },
    .measure = measure,
    .hand_x = self->hover_x,
    .hand_y = self->hover_y,
    .hand_in = self->hover_in,
    .hint = sw_pan_hint (sw_pan_view_sketch (self), sw_selection_get_tool (self->selection) != SW_TOOL_SELECT),
  };
  SwBox band;
  cairo_t *cr;

  overlay.selected = sw_selection_get_steps (self->selection, &overlay.n_selected);
  accent_of (GTK_WIDGET (self), overlay.accent);
  band = sw_pan_overlay_band (&overlay, width, height);
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT ((float) band.x, (float) band.y, (float) band.width, (float) band.height));
  sw_pan_overlay_draw (cr, &overlay, width, height);
  cairo_destroy (cr);
}

static void
sw_pan_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SwPanView *self = SW_PAN_VIEW (widget);

  gtk_widget_snapshot_child (widget, GTK_WIDGET (self->picture), snapshot);
  if (self->live != NULL && self->selection != NULL && self->geometry.scale > 0 && !sw_pan_picture_is_turning (self->picture))
    {
      snapshot_overlay (self, snapshot, gtk_widget_get_width (widget), gtk_widget_get_height (widget));
      sw_frame_times_expect (widget, sw_document_get_changed_at (sw_pan_view_document (self)));
    }
  sw_frame_times_snapshot (widget, snapshot);
}

static void
sw_pan_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SwPanView *self = SW_PAN_VIEW (widget);

  gtk_widget_allocate (GTK_WIDGET (self->picture), width, height, baseline, NULL);
  sw_pan_view_relayout (self);
  if (self->menu != NULL)
    gtk_popover_present (GTK_POPOVER (self->menu));
  if (self->offer != NULL)
    gtk_popover_present (GTK_POPOVER (self->offer));
}

static void
sw_pan_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = 160;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 640 : 320;
}

/* The window's "pan" group is there while the pan is to be seen: its keys must not work on a pan behind another place. */
static void
sw_pan_view_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sw_pan_view_parent_class)->map (widget);
  gtk_widget_insert_action_group (GTK_WIDGET (gtk_widget_get_root (widget)), "pan", G_ACTION_GROUP (SW_PAN_VIEW (widget)->actions));
}

static void
sw_pan_view_unmap (GtkWidget *widget)
{
  sw_pan_view_cancel_hand (SW_PAN_VIEW (widget));
  gtk_widget_insert_action_group (GTK_WIDGET (gtk_widget_get_root (widget)), "pan", NULL);
  GTK_WIDGET_CLASS (sw_pan_view_parent_class)->unmap (widget);
}

/* Lifecycle */

static void
sw_pan_view_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwPanView *self = SW_PAN_VIEW (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, self->live);
      break;
    case PROP_SELECTION:
      g_value_set_object (value, self->selection);
      break;
    case PROP_INCHES:
      g_value_set_boolean (value, self->inches);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_pan_view_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwPanView *self = SW_PAN_VIEW (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      set_live (self, g_value_get_object (value));
      break;
    case PROP_SELECTION:
      set_selection (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      self->inches = g_value_get_boolean (value);
      sw_pan_picture_set_inches (self->picture, self->inches);
      sw_pan_view_describe (self);
      gtk_widget_queue_draw (GTK_WIDGET (self));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_pan_view_dispose (GObject *object)
{
  SwPanView *self = SW_PAN_VIEW (object);

  set_selection (self, NULL);
  set_live (self, NULL);
  sw_pan_view_drop_popovers (self);
  if (self->picture != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->picture));
  self->picture = NULL;
  g_clear_object (&self->actions);
  g_clear_pointer (&self->hand.held, g_array_unref);
  g_clear_pointer (&self->hand.before, g_array_unref);

  G_OBJECT_CLASS (sw_pan_view_parent_class)->dispose (object);
}

static void
sw_pan_view_class_init (SwPanViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_pan_view_get_property;
  object_class->set_property = sw_pan_view_set_property;
  object_class->dispose = sw_pan_view_dispose;
  widget_class->snapshot = sw_pan_view_snapshot;
  widget_class->size_allocate = sw_pan_view_size_allocate;
  widget_class->measure = sw_pan_view_measure;
  widget_class->map = sw_pan_view_map;
  widget_class->unmap = sw_pan_view_unmap;
  widget_class->focus = sw_pan_view_focus;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_SELECTION] = g_param_spec_object ("selection", NULL, NULL, SW_TYPE_SELECTION, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_signal_new ("edit-properties", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);

  sw_pan_view_class_add_keys (widget_class);
  gtk_widget_class_set_css_name (widget_class, "pan");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sw_pan_view_init (SwPanView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  self->zoom.zoom = 1;
  self->hand.held = g_array_new (FALSE, FALSE, sizeof (SwHeldPour));
  self->hand.before = g_array_new (FALSE, FALSE, sizeof (guint));
  self->picture = SW_PAN_PICTURE (sw_pan_picture_new ());
  gtk_widget_set_parent (GTK_WIDGET (self->picture), widget);
  g_signal_connect_object (self->picture, "notify::turning", G_CALLBACK (gtk_widget_queue_draw), self, G_CONNECT_SWAPPED);
  gtk_widget_set_focusable (widget, TRUE);
  gtk_widget_set_overflow (widget, GTK_OVERFLOW_HIDDEN);
  sw_pan_view_add_actions (self);
  sw_pan_view_add_zoom (self);
  sw_pan_view_add_hand (self);
  sw_pan_view_add_keys (self);
}
