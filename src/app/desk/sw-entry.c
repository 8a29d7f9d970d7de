/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-entry-private.h"

#include "app/desk/sw-document.h"

struct _SwEntry
{
  GObject parent_instance;

  SwDocument *document; /* weak */
  SwRecord record;
  guint id;
  guint position;
  guint revision;
};

G_DEFINE_FINAL_TYPE (SwEntry, sw_entry, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_ID,
  PROP_NAME,
  PROP_POSITION,
  PROP_REVISION,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static const char *
entry_name (SwEntry *self)
{
  const SwDye *dye = sw_entry_get_dye (self);
  const SwStep *step = sw_entry_get_step (self);

  return dye != NULL ? dye->name : step != NULL ? step->name
                                                : "";
}

static void
sw_entry_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwEntry *self = SW_ENTRY (object);

  switch (prop_id)
    {
    case PROP_ID:
      g_value_set_uint (value, self->id);
      break;
    case PROP_NAME:
      g_value_set_string (value, entry_name (self));
      break;
    case PROP_POSITION:
      g_value_set_uint (value, self->position);
      break;
    case PROP_REVISION:
      g_value_set_uint (value, self->revision);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_entry_dispose (GObject *object)
{
  SwEntry *self = SW_ENTRY (object);

  g_clear_weak_pointer (&self->document);

  G_OBJECT_CLASS (sw_entry_parent_class)->dispose (object);
}

static void
sw_entry_class_init (SwEntryClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->dispose = sw_entry_dispose;
  object_class->get_property = sw_entry_get_property;

  props[PROP_ID] = g_param_spec_uint ("id", NULL, NULL, 0, G_MAXUINT, 0, flags);
  props[PROP_NAME] = g_param_spec_string ("name", NULL, NULL, "", flags);
  props[PROP_POSITION] = g_param_spec_uint ("position", NULL, NULL, 0, G_MAXUINT, 0, flags);
  props[PROP_REVISION] = g_param_spec_uint ("revision", NULL, NULL, 0, G_MAXUINT, 0, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
sw_entry_init (SwEntry *self)
{
}

SwEntry *
sw_entry_new (SwDocument *document, SwRecord record, guint id)
{
  SwEntry *self = g_object_new (SW_TYPE_ENTRY, NULL);

  g_set_weak_pointer (&self->document, document);
  self->record = record;
  self->id = id;
  return self;
}

void
sw_entry_touch (SwEntry *self)
{
  self->revision++;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_REVISION]);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_NAME]);
}

guint
sw_entry_get_id (SwEntry *self)
{
  g_return_val_if_fail (SW_IS_ENTRY (self), 0);
  return self->id;
}

guint
sw_entry_get_position (SwEntry *self)
{
  g_return_val_if_fail (SW_IS_ENTRY (self), 0);
  return self->position;
}

const SwDye *
sw_entry_get_dye (SwEntry *self)
{
  g_return_val_if_fail (SW_IS_ENTRY (self), NULL);

  if (self->document == NULL || self->record != SW_RECORD_DYE)
    return NULL;
  return sw_sketch_find_dye (sw_document_get_sketch (self->document), self->id);
}

const SwStep *
sw_entry_get_step (SwEntry *self)
{
  g_return_val_if_fail (SW_IS_ENTRY (self), NULL);

  if (self->document == NULL || self->record != SW_RECORD_STEP)
    return NULL;
  return sw_sketch_find_step (sw_document_get_sketch (self->document), self->id);
}

SwDocument *
sw_entry_get_document (SwEntry *self)
{
  g_return_val_if_fail (SW_IS_ENTRY (self), NULL);
  return self->document;
}

void
sw_entry_set_position (SwEntry *self, guint position)
{
  if (self->position == position)
    return;
  self->position = position;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_POSITION]);
}
