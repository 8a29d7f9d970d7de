/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-selection.h"

#include <string.h>

struct _SwSelection
{
  GObject parent_instance;

  SwDocument *document;
  GArray *steps; /* of guint, in the order in which they were selected */
  guint lead;    /* as last notified */
  guint dye;
  SwTool tool;
  gboolean second_face;
  gboolean snap;
};

G_DEFINE_FINAL_TYPE (SwSelection, sw_selection, G_TYPE_OBJECT)

G_DEFINE_ENUM_TYPE (SwTool, sw_tool, G_DEFINE_ENUM_VALUE (SW_TOOL_SELECT, "select"), G_DEFINE_ENUM_VALUE (SW_TOOL_BAND, "band"), G_DEFINE_ENUM_VALUE (SW_TOOL_SPLOTCH, "splotch"), G_DEFINE_ENUM_VALUE (SW_TOOL_SPECKLE, "speckle"))

enum
{
  PROP_0,
  PROP_TOOL,
  PROP_DYE,
  PROP_SECOND_FACE,
  PROP_SNAP,
  PROP_LEAD,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

enum
{
  SIGNAL_CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

SwStepKind
sw_tool_kind (SwTool tool)
{
  static const SwStepKind kinds[] = {
    [SW_TOOL_BAND] = SW_STEP_BAND,
    [SW_TOOL_SPLOTCH] = SW_STEP_SPLOTCH,
    [SW_TOOL_SPECKLE] = SW_STEP_SPECKLE,
  };

  g_return_val_if_fail (tool > SW_TOOL_SELECT && tool <= SW_TOOL_SPECKLE, SW_STEP_BAND);
  return kinds[tool];
}

/* Takes over @steps; tells only if it is another choice. */
static void
take_steps (SwSelection *self, GArray *steps)
{
  /* Empty arrays have no data to compare. */
  const gboolean same = steps->len == self->steps->len && (steps->len == 0 || memcmp (steps->data, self->steps->data, steps->len * sizeof (guint)) == 0);
  guint lead;

  g_array_unref (self->steps);
  self->steps = steps;
  if (same)
    return;

  lead = sw_selection_get_lead (self);
  if (self->lead != lead)
    {
      self->lead = lead;
      g_object_notify_by_pspec (G_OBJECT (self), props[PROP_LEAD]);
    }
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static guint
pot_or_first (SwSelection *self, guint dye)
{
  const SwSketch *sketch = sw_document_get_sketch (self->document);

  if (sw_sketch_find_dye (sketch, dye) != NULL)
    return dye;
  return sketch->dyes->len > 0 ? ((const SwDye *) sketch->dyes->pdata[0])->id : 0;
}

/* What is gone is let go of. */
static void
document_changed_cb (SwSelection *self, guint what)
{
  if (what & SW_CHANGED (SW_RECORD_STEP))
    sw_selection_set_steps (self, (const guint *) (gpointer) self->steps->data, self->steps->len);
  if (what & SW_CHANGED (SW_RECORD_DYE))
    sw_selection_set_dye (self, self->dye);
}

static void
document_replaced_cb (SwSelection *self)
{
  sw_selection_set_steps (self, NULL, 0);
  sw_selection_set_second_face (self, FALSE);
  sw_selection_set_tool (self, SW_TOOL_SELECT);
}

static void
sw_selection_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwSelection *self = SW_SELECTION (object);

  switch (prop_id)
    {
    case PROP_TOOL:
      g_value_set_enum (value, self->tool);
      break;
    case PROP_DYE:
      g_value_set_uint (value, self->dye);
      break;
    case PROP_SECOND_FACE:
      g_value_set_boolean (value, self->second_face);
      break;
    case PROP_SNAP:
      g_value_set_boolean (value, self->snap);
      break;
    case PROP_LEAD:
      g_value_set_uint (value, self->lead);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_selection_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwSelection *self = SW_SELECTION (object);

  switch (prop_id)
    {
    case PROP_TOOL:
      sw_selection_set_tool (self, g_value_get_enum (value));
      break;
    case PROP_DYE:
      sw_selection_set_dye (self, g_value_get_uint (value));
      break;
    case PROP_SECOND_FACE:
      sw_selection_set_second_face (self, g_value_get_boolean (value));
      break;
    case PROP_SNAP:
      sw_selection_set_snap (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_selection_finalize (GObject *object)
{
  SwSelection *self = SW_SELECTION (object);

  g_array_unref (self->steps);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_selection_parent_class)->finalize (object);
}

static void
sw_selection_class_init (SwSelectionClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->finalize = sw_selection_finalize;
  object_class->get_property = sw_selection_get_property;
  object_class->set_property = sw_selection_set_property;

  props[PROP_TOOL] = g_param_spec_enum ("tool", NULL, NULL, SW_TYPE_TOOL, SW_TOOL_SELECT, flags);
  props[PROP_DYE] = g_param_spec_uint ("dye", NULL, NULL, 0, G_MAXUINT, 0, flags);
  props[PROP_SECOND_FACE] = g_param_spec_boolean ("second-face", NULL, NULL, FALSE, flags);
  props[PROP_SNAP] = g_param_spec_boolean ("snap", NULL, NULL, TRUE, flags);
  props[PROP_LEAD] = g_param_spec_uint ("lead", NULL, NULL, 0, G_MAXUINT, 0, G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[SIGNAL_CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
}

static void
sw_selection_init (SwSelection *self)
{
  self->steps = g_array_new (FALSE, FALSE, sizeof (guint));
  self->snap = TRUE;
}

SwSelection *
sw_selection_new (SwDocument *document)
{
  SwSelection *self;

  g_return_val_if_fail (SW_IS_DOCUMENT (document), NULL);

  self = g_object_new (SW_TYPE_SELECTION, NULL);
  self->document = g_object_ref (document);
  self->dye = pot_or_first (self, 0);
  g_signal_connect_object (document, "changed", G_CALLBACK (document_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "replaced", G_CALLBACK (document_replaced_cb), self, G_CONNECT_SWAPPED);
  return self;
}

SwDocument *
sw_selection_get_document (SwSelection *self)
{
  g_return_val_if_fail (SW_IS_SELECTION (self), NULL);
  return self->document;
}

const guint *
sw_selection_get_steps (SwSelection *self, gsize *n)
{
  g_return_val_if_fail (SW_IS_SELECTION (self), NULL);

  *n = self->steps->len;
  return (const guint *) (gpointer) self->steps->data;
}

static gboolean
holds (const GArray *steps, guint step)
{
  for (guint i = 0; i < steps->len; i++)
    if (g_array_index (steps, guint, i) == step)
      return TRUE;
  return FALSE;
}

gboolean
sw_selection_contains (SwSelection *self, guint step)
{
  g_return_val_if_fail (SW_IS_SELECTION (self), FALSE);
  return holds (self->steps, step);
}

guint
sw_selection_get_lead (SwSelection *self)
{
  g_return_val_if_fail (SW_IS_SELECTION (self), 0);
  return self->steps->len > 0 ? g_array_index (self->steps, guint, self->steps->len - 1) : 0;
}

void
sw_selection_set_steps (SwSelection *self, const guint *steps, gsize n)
{
  const SwSketch *sketch;
  GArray *kept;

  g_return_if_fail (SW_IS_SELECTION (self));

  sketch = sw_document_get_sketch (self->document);
  kept = g_array_new (FALSE, FALSE, sizeof (guint));
  for (gsize i = 0; i < n; i++)
    if (sw_sketch_find_step (sketch, steps[i]) != NULL && !holds (kept, steps[i]))
      g_array_append_val (kept, steps[i]);
  take_steps (self, kept);
}

void
sw_selection_set_step (SwSelection *self, guint step)
{
  sw_selection_set_steps (self, &step, 1);
}

void
sw_selection_toggle (SwSelection *self, guint step)
{
  GArray *kept;
  gboolean was_in = FALSE;

  g_return_if_fail (SW_IS_SELECTION (self));

  kept = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < self->steps->len; i++)
    if (g_array_index (self->steps, guint, i) != step)
      g_array_append_val (kept, g_array_index (self->steps, guint, i));
    else
      was_in = TRUE;
  if (!was_in && sw_sketch_find_step (sw_document_get_sketch (self->document), step) != NULL)
    g_array_append_val (kept, step);
  take_steps (self, kept);
}

SwTool
sw_selection_get_tool (SwSelection *self)
{
  g_return_val_if_fail (SW_IS_SELECTION (self), SW_TOOL_SELECT);
  return self->tool;
}

void
sw_selection_set_tool (SwSelection *self, SwTool tool)
{
  g_return_if_fail (SW_IS_SELECTION (self));

  if (self->tool == tool)
    return;
  self->tool = tool;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_TOOL]);
}

guint
sw_selection_get_dye (SwSelection *self)
{
  g_return_val_if_fail (SW_IS_SELECTION (self), 0);
  return self->dye;
}

void
sw_selection_set_dye (SwSelection *self, guint dye)
{
  g_return_if_fail (SW_IS_SELECTION (self));

  dye = pot_or_first (self, dye);
  if (self->dye == dye)
    return;
  self->dye = dye;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_DYE]);
}

gboolean
sw_selection_get_second_face (SwSelection *self)
{
  g_return_val_if_fail (SW_IS_SELECTION (self), FALSE);
  return self->second_face;
}

void
sw_selection_set_second_face (SwSelection *self, gboolean second_face)
{
  g_return_if_fail (SW_IS_SELECTION (self));

  second_face = !!second_face;
  if (self->second_face == second_face)
    return;
  self->second_face = second_face;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SECOND_FACE]);
}

gboolean
sw_selection_get_snap (SwSelection *self)
{
  g_return_val_if_fail (SW_IS_SELECTION (self), FALSE);
  return self->snap;
}

void
sw_selection_set_snap (SwSelection *self, gboolean snap)
{
  g_return_if_fail (SW_IS_SELECTION (self));

  snap = !!snap;
  if (self->snap == snap)
    return;
  self->snap = snap;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SNAP]);
}
