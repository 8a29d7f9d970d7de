/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-colourway.h"

#include "files/sw-mark-path.h"
#include "files/sw-safe-write-private.h"

#include <string.h>

#define CHUNK (64 * 1024)

/* One byte more than may be, at most: a stream need not know how long it is. */
static GByteArray *
read_bytes (GInputStream *stream, GCancellable *cancellable, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  gsize got;

  do
    {
      guint before = bytes->len;
      gsize room = MIN (CHUNK, SW_COLOURWAY_MAX_BYTES + 1 - (gsize) before);

      g_byte_array_set_size (bytes, before + (guint) room);
      if (!g_input_stream_read_all (stream, bytes->data + before, room, &got, cancellable, error))
        return NULL;
      g_byte_array_set_size (bytes, before + (guint) got);
      if (got < room)
        break;
    }
  while (bytes->len <= SW_COLOURWAY_MAX_BYTES);
  return g_steal_pointer (&bytes);
}

SwSketch *
sw_colourway_load (GFile *file, char **etag, GCancellable *cancellable, GError **error)
{
  g_autoptr (GFileInputStream) stream = NULL;
  g_autoptr (GFileInfo) info = NULL;
  g_autoptr (GByteArray) bytes = NULL;
  SwSketch *sketch;

  g_return_val_if_fail (G_IS_FILE (file), NULL);

  stream = g_file_read (file, cancellable, error);
  if (stream == NULL)
    return NULL;
  /* The tag before the text: if the file changes in between, saving notices. */
  info = g_file_input_stream_query_info (stream, G_FILE_ATTRIBUTE_ETAG_VALUE, cancellable, NULL);
  bytes = read_bytes (G_INPUT_STREAM (stream), cancellable, error);
  if (bytes == NULL)
    return NULL;
  sketch = sw_colourway_parse ((const char *) bytes->data, bytes->len, error);
  if (sketch != NULL)
    sw_mark_path_find (sketch, file);
  if (etag != NULL)
    *etag = sketch != NULL && info != NULL ? g_strdup (g_file_info_get_etag (info)) : NULL;
  return sketch;
}

gboolean
sw_colourway_save (const SwSketch *sketch, GFile *file, char **etag, GCancellable *cancellable, GError **error)
{
  g_autoptr (SwSketch) kept = NULL;
  g_autofree char *text = NULL;
  g_autofree char *new_etag = NULL;

  g_return_val_if_fail (sketch != NULL, FALSE);
  g_return_val_if_fail (G_IS_FILE (file), FALSE);

  kept = sw_sketch_copy (sketch);
  sw_mark_path_keep (kept, file);
  text = sw_colourway_print (kept);
  if (!sw_safe_write (file, text, strlen (text), etag != NULL ? *etag : NULL, &new_etag, cancellable, error))
    return FALSE;
  if (etag != NULL)
    {
      g_free (*etag);
      *etag = g_steal_pointer (&new_etag);
    }
  return TRUE;
}
