/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-colourway.h"

#include "files/sw-colourway-private.h"
#include "files/sw-json-guard-private.h"
#include "files/sw-json-print.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define BOM "\xef\xbb\xbf"

G_DEFINE_QUARK (sw_file_error, sw_file_error)

const SwColourwayPart sw_colourway_parts[SW_COLOURWAY_PARTS] = {
  { SW_RECORD_YARN, G_STRUCT_OFFSET (SwSketch, yarn), G_STRUCT_OFFSET (SwSketch, yarn.extras) },
  { SW_RECORD_REEL, G_STRUCT_OFFSET (SwSketch, reel), G_STRUCT_OFFSET (SwSketch, reel.extras) },
  { SW_RECORD_LAY, G_STRUCT_OFFSET (SwSketch, lay), G_STRUCT_OFFSET (SwSketch, lay.extras) },
  { SW_RECORD_BATH, G_STRUCT_OFFSET (SwSketch, bath), G_STRUCT_OFFSET (SwSketch, bath.extras) },
  { SW_RECORD_CLOTH, G_STRUCT_OFFSET (SwSketch, cloth), G_STRUCT_OFFSET (SwSketch, cloth.extras) },
  { SW_RECORD_SHEET, G_STRUCT_OFFSET (SwSketch, sheet), G_STRUCT_OFFSET (SwSketch, sheet.extras) },
  { SW_RECORD_LISTING, G_STRUCT_OFFSET (SwSketch, listing), G_STRUCT_OFFSET (SwSketch, listing.extras) },
};

typedef struct
{
  const char *text;
  GString *path; /* of what is being read */
  guint max_id;
  SwSketch *sketch;
} Reader;

static gboolean
fail (Reader *reader, const char *why, GError **error)
{
  guint line = sw_json_guard_line (reader->text, reader->path->str);

  if (reader->path->len == 0)
    /* Translators: the line in the file, then a sentence that says what is wrong there and what to do */
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_MEMBER, _ ("Line %u: %s"), line, why);
  else
    /* Translators: the place in the file, like steps[3].width_cm, its line, then a sentence that says what is wrong there and what to do */
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_MEMBER, _ ("%s (line %u): %s"), reader->path->str, line, why);
  return FALSE;
}

static void
keep_extra (GPtrArray **extras, const char *name, JsonNode *node)
{
  g_autofree char *json = sw_json_print_compact (node);

  sw_extras_add (extras, name, json);
}

static gboolean
read_member (Reader *reader, const SwMember *member, JsonNode *node, gpointer data, GError **error)
{
  SwValue value = { 0 };
  g_autofree char *why = NULL;
  gboolean done;

  if (!sw_colourway_value_read (member, node, &value, &why))
    return fail (reader, why, error);
  done = sw_member_set (member, data, &value, error);
  sw_value_clear (&value);
  return done;
}

/**
 * read_members:
 * @kind: of a step
 * @others: names read elsewhere, NULL-ended
 * What is not in the record's table, or not used by this kind of step, is kept in @extras.
 */
static gboolean
read_members (Reader *reader, SwRecord record, SwStepKind kind, JsonObject *object, const char *const *others, gpointer data, GPtrArray **extras, GError **error)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;
  gsize path_length = reader->path->len;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &node))
    {
      const SwMember *member = sw_record_find_member (record, name);

      if (g_strv_contains (others, name))
        continue;
      if (member == NULL || !sw_member_applies (member, kind))
        {
          keep_extra (extras, name, node);
          continue;
        }
      sw_json_path_append_name (reader->path, name);
      if (!read_member (reader, member, node, data, error))
        return FALSE;
      g_string_truncate (reader->path, path_length);
    }
  return TRUE;
}

static gboolean
read_id (Reader *reader, JsonObject *object, guint *id, GError **error)
{
  JsonNode *node = json_object_get_member (object, "id");
  gsize path_length = reader->path->len;
  gint64 number;

  if (node == NULL)
    return fail (reader, _ ("Its “id” is missing, by which it is known. Add one: a whole number that no dye and no other step has."), error);
  sw_json_path_append_name (reader->path, "id");
  if (!sw_colourway_whole_read (node, &number) || number < 1 || number > SW_ID_MAX)
    {
      g_autofree char *why = g_strdup_printf (_ ("An id must be a whole number from 1 to %d. Write one that no other dye or step has."), SW_ID_MAX);

      return fail (reader, why, error);
    }
  *id = (guint) number;
  reader->max_id = MAX (reader->max_id, *id);
  g_string_truncate (reader->path, path_length);
  return TRUE;
}

static gboolean
read_dye (Reader *reader, JsonObject *object, GError **error)
{
  static const char *const others[] = { "id", NULL };
  g_autoptr (SwDye) dye = NULL;
  guint id;

  if (!read_id (reader, object, &id, error))
    return FALSE;
  dye = sw_dye_new (id);
  if (!read_members (reader, SW_RECORD_DYE, 0, object, others, dye, &dye->extras, error))
    return FALSE;
  g_ptr_array_add (reader->sketch->dyes, g_steal_pointer (&dye));
  return TRUE;
}

static gboolean
read_batch (Reader *reader, JsonObject *object, GError **error)
{
  static const char *const others[] = { "id", NULL };
  g_autoptr (SwBatch) batch = NULL;
  guint id;

  if (!read_id (reader, object, &id, error))
    return FALSE;
  batch = sw_batch_new (id);
  if (!read_members (reader, SW_RECORD_BATCH, 0, object, others, batch, &batch->extras, error))
    return FALSE;
  g_ptr_array_add (reader->sketch->batches, g_steal_pointer (&batch));
  return TRUE;
}

static char *
all_step_kinds (void)
{
  const char *names[SW_N_STEP_KINDS + 1] = { NULL };

  for (int kind = 0; kind < SW_N_STEP_KINDS; kind++)
    names[kind] = sw_step_kind_name ((SwStepKind) kind);
  return g_strjoinv (", ", (char **) names);
}

static gboolean
read_step_kind (Reader *reader, JsonObject *object, SwStepKind *kind, GError **error)
{
  JsonNode *node = json_object_get_member (object, "kind");
  g_autofree char *kinds = all_step_kinds ();
  g_autofree char *why = NULL;
  int found = -1;

  if (node != NULL && JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING)
    found = sw_step_kind_from_name (json_node_get_string (node));
  if (found >= 0)
    {
      *kind = (SwStepKind) found;
      return TRUE;
    }
  if (node != NULL)
    sw_json_path_append_name (reader->path, "kind");
  /* Translators: a list of words, as they stand in the file */
  why = g_strdup_printf (_ ("A step needs a “kind” that Strandwise knows. Write one of %s in double quotes."), kinds);
  return fail (reader, why, error);
}

static gboolean
read_step (Reader *reader, JsonObject *object, GError **error)
{
  static const char *const others[] = { "id", "kind", NULL };
  g_autoptr (SwStep) step = NULL;
  SwStepKind kind = SW_STEP_BAND;
  guint id;

  if (!read_id (reader, object, &id, error) || !read_step_kind (reader, object, &kind, error))
    return FALSE;
  step = sw_step_new (id, kind);
  if (!read_members (reader, SW_RECORD_STEP, kind, object, others, step, &step->extras, error))
    return FALSE;
  g_ptr_array_add (reader->sketch->steps, g_steal_pointer (&step));
  return TRUE;
}

/* A list of objects; a missing one is empty. */
static gboolean
read_list (Reader *reader, SwRecord record, JsonObject *root, gboolean (*read_item) (Reader *, JsonObject *, GError **), GError **error)
{
  JsonNode *node = json_object_get_member (root, sw_record_name (record));
  JsonArray *array;

  if (node == NULL)
    return TRUE;
  g_string_assign (reader->path, sw_record_name (record));
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return fail (reader, _ ("This must be a list. Put its parts between “[” and “]”."), error);
  array = json_node_get_array (node);
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      JsonNode *item = json_array_get_element (array, i);

      g_string_assign (reader->path, sw_record_name (record));
      sw_json_path_append_index (reader->path, i);
      if (!JSON_NODE_HOLDS_OBJECT (item))
        return fail (reader, _ ("This must be a group of members. Put them between “{” and “}”."), error);
      if (!read_item (reader, json_node_get_object (item), error))
        return FALSE;
    }
  g_string_truncate (reader->path, 0);
  return TRUE;
}

static gboolean
read_part (Reader *reader, const SwColourwayPart *part, JsonObject *root, GError **error)
{
  static const char *const others[] = { NULL };
  const char *name = sw_record_name (part->record);
  JsonNode *node = json_object_get_member (root, name);

  if (node == NULL)
    return TRUE;
  g_string_assign (reader->path, name);
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return fail (reader, _ ("This must be a group of members. Put them between “{” and “}”."), error);
  if (!read_members (reader, part->record, 0, json_node_get_object (node), others,
                     G_STRUCT_MEMBER_P (reader->sketch, part->place),
                     G_STRUCT_MEMBER_P (reader->sketch, part->extras), error))
    return FALSE;
  g_string_truncate (reader->path, 0);
  return TRUE;
}

static gboolean
read_version (Reader *reader, JsonObject *root, GError **error)
{
  JsonNode *node = json_object_get_member (root, "colourway");
  gint64 version;

  if (node == NULL)
    return fail (reader, _ ("This is not a colourway, since it has no member “colourway” with the version of the format. Open another file, or add \"colourway\": 1."), error);
  g_string_assign (reader->path, "colourway");
  if (!sw_colourway_whole_read (node, &version) || version < 1)
    return fail (reader, _ ("This must be the version of the format, a whole number from 1. Write 1."), error);
  if (version > SW_COLOURWAY_VERSION)
    {
      g_autofree char *newer = g_strdup_printf ("%" G_GINT64_FORMAT, version);

      g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_VERSION,
                   /* Translators: 1 the file's version of the format, 2 the highest that is known */
                   _ ("This colourway is in version %1$s of the format, made by a newer Strandwise, and this one knows versions up to %2$d. Nothing was changed: open it with a newer Strandwise."),
                   newer, SW_COLOURWAY_VERSION);
      return FALSE;
    }
  g_string_truncate (reader->path, 0);
  return TRUE;
}

static gboolean
read_root (Reader *reader, JsonNode *node, GError **error)
{
  static const char *const others[] = { "colourway", "yarn", "reel", "lay", "bath", "dyes", "steps", "cloth", "sheet", "listing", "batches", NULL };
  JsonObject *root;

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return fail (reader, _ ("This is not a colourway, which is a group of members between “{” and “}”. Open another file."), error);
  root = json_node_get_object (node);
  if (!read_version (reader, root, error) ||
      !read_members (reader, SW_RECORD_SKETCH, 0, root, others, reader->sketch, &reader->sketch->extras, error))
    return FALSE;
  for (gsize i = 0; i < SW_COLOURWAY_PARTS; i++)
    if (!read_part (reader, &sw_colourway_parts[i], root, error))
      return FALSE;
  return read_list (reader, SW_RECORD_DYE, root, read_dye, error) &&
         read_list (reader, SW_RECORD_STEP, root, read_step, error) &&
         read_list (reader, SW_RECORD_BATCH, root, read_batch, error);
}

/* Of a member, or, if it is not in the file, of what it should be in; 0 if neither is. */
static guint
find_line (const char *text, const char *path)
{
  guint line = sw_json_guard_line (text, path);
  const char *point = strrchr (path, '.');
  g_autofree char *around = NULL;

  if (line > 0 || point == NULL)
    return line;
  around = g_strndup (path, (gsize) (point - path));
  return sw_json_guard_line (text, around);
}

/* The validator's sentence begins with the path of the member at fault: puts its line behind that. */
static void
add_line (const char *text, GError *error)
{
  const char *colon = strstr (error->message, ": ");
  g_autofree char *path = NULL;
  char *message;
  guint line;

  if (colon == NULL)
    return;
  path = g_strndup (error->message, (gsize) (colon - error->message));
  line = find_line (text, path);
  if (line == 0)
    return;
  message = g_strdup_printf (_ ("%s (line %u): %s"), path, line, colon + 2);
  g_free (error->message);
  error->message = message;
}

static gboolean
validate (Reader *reader, GError **error)
{
  g_autoptr (GError) found = NULL;

  if (sw_sketch_validate (reader->sketch, &found))
    return TRUE;
  add_line (reader->text, found);
  g_set_error_literal (error, SW_FILE_ERROR, SW_FILE_ERROR_MEMBER, found->message);
  return FALSE;
}

/* Of a text that passed the guard. json-glib should find no fault with it. */
static JsonNode *
read_json (const char *text, GError **error)
{
  g_autoptr (GError) found = NULL;
  JsonNode *node = json_from_string (text, &found);

  if (node == NULL)
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_SYNTAX,
                 /* Translators: %s is a parser's own complaint, in English */
                 _ ("The file is not JSON (%s). Go back to an earlier copy of it."), found != NULL ? found->message : "null");
  return node;
}

static SwSketch *
read_text (const char *text, gsize n, GError **error)
{
  g_autoptr (GString) path = g_string_new (NULL);
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  g_autoptr (JsonNode) node = NULL;
  Reader reader = { .text = text, .path = path, .sketch = sketch };

  if (!sw_json_guard (text, n, error))
    return NULL;
  node = read_json (text, error);
  if (node == NULL || !read_root (&reader, node, error) || !validate (&reader, error))
    return NULL;
  sketch->next_id = reader.max_id + 1;
  return g_steal_pointer (&sketch);
}

SwSketch *
sw_colourway_parse (const char *bytes, gsize n, GError **error)
{
  g_autofree char *text = NULL;

  g_return_val_if_fail (bytes != NULL || n == 0, NULL);

  if (n > SW_COLOURWAY_MAX_BYTES)
    {
      g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_SIZE,
                   _ ("The file is larger than %d bytes, and no colourway is. Open another file."), SW_COLOURWAY_MAX_BYTES);
      return NULL;
    }
  if (n >= strlen (BOM) && memcmp (bytes, BOM, strlen (BOM)) == 0)
    {
      bytes += strlen (BOM);
      n -= strlen (BOM);
    }
  text = g_malloc (n + 1); /* not g_strndup(), which stops at a zero byte */
  if (n > 0)
    memcpy (text, bytes, n);
  text[n] = '\0';
  return read_text (text, n, error);
}
