/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-colourway.h"

#include "files/sw-colourway-private.h"
#include "files/sw-json-print.h"

/* Members of @data that a step of @kind uses, in the order of the table. */
static void
write_members (JsonObject *object, SwRecord record, SwStepKind kind, gconstpointer data)
{
  gsize n;
  const SwMember *members = sw_record_members (record, &n);

  for (gsize i = 0; i < n; i++)
    {
      SwValue value = { 0 };

      if (!sw_member_applies (&members[i], kind))
        continue;
      sw_member_get (&members[i], data, &value);
      json_object_set_member (object, members[i].name, sw_colourway_value_write (&members[i], &value));
      sw_value_clear (&value);
    }
}

static void
write_extras (JsonObject *object, const GPtrArray *extras)
{
  for (guint i = 0; extras != NULL && i < extras->len; i++)
    {
      const SwExtra *extra = g_ptr_array_index (extras, i);
      JsonNode *node = json_from_string (extra->json, NULL);

      if (node != NULL)
        json_object_set_member (object, extra->name, node);
    }
}

static JsonObject *
write_part (const SwColourwayPart *part, const SwSketch *sketch)
{
  JsonObject *object = json_object_new ();

  write_members (object, part->record, 0, G_STRUCT_MEMBER_P (sketch, part->place));
  write_extras (object, G_STRUCT_MEMBER (GPtrArray *, sketch, part->extras));
  return object;
}

static JsonObject *
write_dye (gconstpointer item)
{
  const SwDye *dye = item;
  JsonObject *object = json_object_new ();

  json_object_set_int_member (object, "id", dye->id);
  write_members (object, SW_RECORD_DYE, 0, dye);
  write_extras (object, dye->extras);
  return object;
}

static JsonObject *
write_step (gconstpointer item)
{
  const SwStep *step = item;
  JsonObject *object = json_object_new ();

  json_object_set_int_member (object, "id", step->id);
  json_object_set_string_member (object, "kind", sw_step_kind_name (step->kind));
  write_members (object, SW_RECORD_STEP, step->kind, step);
  write_extras (object, step->extras);
  return object;
}

static JsonObject *
write_batch (gconstpointer item)
{
  const SwBatch *batch = item;
  JsonObject *object = json_object_new ();

  json_object_set_int_member (object, "id", batch->id);
  write_members (object, SW_RECORD_BATCH, 0, batch);
  write_extras (object, batch->extras);
  return object;
}

static JsonArray *
write_list (const GPtrArray *items, JsonObject *(*write_item) (gconstpointer item))
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < items->len; i++)
    json_array_add_object_element (array, write_item (g_ptr_array_index (items, i)));
  return array;
}

char *
sw_colourway_print (const SwSketch *sketch)
{
  g_autoptr (JsonObject) root = json_object_new ();
  g_autoptr (JsonNode) node = json_node_alloc ();

  g_return_val_if_fail (sketch != NULL, NULL);

  json_object_set_int_member (root, "colourway", SW_COLOURWAY_VERSION);
  write_members (root, SW_RECORD_SKETCH, 0, sketch);
  for (gsize i = 0; i < SW_COLOURWAY_PARTS; i++)
    {
      const SwColourwayPart *part = &sw_colourway_parts[i];

      if (part->record == SW_RECORD_CLOTH)
        {
          json_object_set_array_member (root, sw_record_name (SW_RECORD_DYE), write_list (sketch->dyes, write_dye));
          json_object_set_array_member (root, sw_record_name (SW_RECORD_STEP), write_list (sketch->steps, write_step));
        }
      json_object_set_object_member (root, sw_record_name (part->record), write_part (part, sketch));
    }
  json_object_set_array_member (root, sw_record_name (SW_RECORD_BATCH), write_list (sketch->batches, write_batch));
  write_extras (root, sketch->extras);
  json_node_init_object (node, root);
  return sw_json_print (node);
}
