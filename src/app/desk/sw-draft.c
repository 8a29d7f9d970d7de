/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-drafts.h"

#include "files/sw-colourway.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <json-glib/json-glib.h>

/* The member that a draft has and a saved file has not. */
#define DRAFT_MEMBER "strandwise_draft"

static char *
print_origin (GFile *file, const char *etag)
{
  g_autoptr (JsonObject) origin = json_object_new ();
  g_autoptr (JsonNode) node = json_node_new (JSON_NODE_OBJECT);
  g_autofree char *uri = file != NULL ? g_file_get_uri (file) : NULL;

  if (uri != NULL)
    json_object_set_string_member (origin, "file", uri);
  if (etag != NULL)
    json_object_set_string_member (origin, "etag", etag);
  json_node_set_object (node, origin);
  return json_to_string (node, FALSE);
}

gboolean
sw_draft_write (const char *path, const SwSketch *sketch, GFile *file, const char *etag, GError **error)
{
  g_autoptr (SwSketch) marked = NULL;
  g_autoptr (GFile) draft = NULL;
  g_autofree char *origin = NULL;

  g_return_val_if_fail (path != NULL && sketch != NULL, FALSE);

  marked = sw_sketch_copy (sketch);
  origin = print_origin (file, etag);
  sw_extras_add (&marked->extras, DRAFT_MEMBER, origin);

  draft = g_file_new_for_path (path);
  return sw_colourway_save (marked, draft, NULL, NULL, error);
}

static void
read_origin (SwDraft *draft, const char *json)
{
  g_autoptr (JsonNode) node = json_from_string (json, NULL);
  JsonObject *origin = node != NULL && JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node) : NULL;
  const char *uri;

  if (origin == NULL)
    return;
  uri = json_object_get_string_member_with_default (origin, "file", NULL);
  draft->file = uri != NULL ? g_file_new_for_uri (uri) : NULL;
  draft->etag = g_strdup (json_object_get_string_member_with_default (origin, "etag", NULL));
}

/* The sketch must be as it was drawn, or it could never again equal the file. */
static void
take_origin (SwDraft *draft)
{
  GPtrArray *extras = draft->sketch->extras;

  for (guint i = 0; extras != NULL && i < extras->len; i++)
    {
      const SwExtra *extra = extras->pdata[i];

      if (!g_str_equal (extra->name, DRAFT_MEMBER))
        continue;
      read_origin (draft, extra->json);
      g_ptr_array_remove_index (extras, i);
      break;
    }
  if (extras != NULL && extras->len == 0)
    g_clear_pointer (&draft->sketch->extras, sw_extras_free);
}

SwDraft *
sw_draft_read (const char *path, GError **error)
{
  g_autoptr (SwDraft) draft = g_new0 (SwDraft, 1);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  GStatBuf info;

  draft->path = g_strdup (path);
  draft->sketch = sw_colourway_load (file, NULL, NULL, error);
  if (draft->sketch == NULL)
    return NULL;

  take_origin (draft);
  if (g_stat (path, &info) == 0)
    draft->written = g_date_time_new_from_unix_local (info.st_mtime);
  return g_steal_pointer (&draft);
}

void
sw_draft_free (SwDraft *draft)
{
  g_free (draft->path);
  g_clear_pointer (&draft->sketch, sw_sketch_free);
  g_clear_object (&draft->file);
  g_free (draft->etag);
  g_clear_pointer (&draft->written, g_date_time_unref);
  g_free (draft->problem);
  g_free (draft);
}
