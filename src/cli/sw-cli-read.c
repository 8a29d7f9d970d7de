/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-stream.h"

#include "colour/sw-spectrum.h"
#include "files/sw-colourway.h"
#include "files/sw-cxf.h"
#include "files/sw-mark-path.h"
#include "files/sw-svg.h"

#include <gio/gunixinputstream.h>
#include <glib/gi18n-lib.h>
#include <unistd.h>

#define CHUNK (64 * 1024)

/* A measured spectrum is a few kilobytes; ten thousand times that is some other file. */
#define MOST_SPECTRUM_BYTES (1024 * 1024)

static const SwCliReason read_reasons[] = {
  { G_IO_ERROR_NOT_FOUND, N_ ("There is no file of that name") },
  { G_IO_ERROR_NOT_DIRECTORY, N_ ("There is no file of that name") },
  { G_IO_ERROR_PERMISSION_DENIED, N_ ("You are not allowed to read it") },
  { G_IO_ERROR_IS_DIRECTORY, N_ ("It is a folder, not a file") },
};

char *
sw_cli_display_name (const char *name)
{
  return g_str_equal (name, "-") ? g_strdup (_ ("standard input")) : g_filename_display_name (name);
}

const char *
sw_cli_reason (const SwCliReason *reasons, gsize n, int code, const char *otherwise)
{
  for (gsize i = 0; i < n; i++)
    if (reasons[i].code == code)
      return _ (reasons[i].words);
  return otherwise;
}

static GInputStream *
open_stream (const char *name, GError **error)
{
  g_autoptr (GFile) file = NULL;

  if (g_str_equal (name, "-"))
    return g_unix_input_stream_new (STDIN_FILENO, FALSE);
  file = g_file_new_for_commandline_arg (name);
  return G_INPUT_STREAM (g_file_read (file, NULL, error));
}

/* One byte more than @most, at most, so that the reader can tell what is too large. */
static GByteArray *
read_stream (GInputStream *stream, gsize most, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  gsize got, room;

  do
    {
      guint before = bytes->len;

      room = MIN (CHUNK, most + 1 - before);
      g_byte_array_set_size (bytes, before + (guint) room);
      if (!g_input_stream_read_all (stream, bytes->data + before, room, &got, NULL, error))
        return NULL;
      g_byte_array_set_size (bytes, before + (guint) got);
    }
  while (got == room && bytes->len <= most);
  return g_steal_pointer (&bytes);
}

static GByteArray *
read_bytes (const char *name, gsize most, GError **error)
{
  g_autoptr (GError) found = NULL;
  g_autoptr (GInputStream) stream = open_stream (name, &found);
  g_autoptr (GByteArray) bytes = stream != NULL ? read_stream (stream, most, &found) : NULL;

  if (bytes == NULL)
    g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_IO, "%s.",
                 sw_cli_reason (read_reasons, G_N_ELEMENTS (read_reasons), found->code, found->message));
  return g_steal_pointer (&bytes);
}

static void
prefix_name (const char *name, GError **error)
{
  g_autofree char *shown = sw_cli_display_name (name);

  g_prefix_error (error, "%s: ", shown);
}

SwSketch *
sw_cli_read_sketch (const char *name, GError **error)
{
  g_autoptr (GByteArray) bytes = read_bytes (name, SW_COLOURWAY_MAX_BYTES, error);
  g_autoptr (SwSketch) sketch = NULL;

  if (bytes != NULL)
    sketch = sw_colourway_parse ((const char *) bytes->data, bytes->len, error);
  if (sketch == NULL)
    prefix_name (name, error);
  else if (!g_str_equal (name, "-"))
    {
      g_autoptr (GFile) file = g_file_new_for_commandline_arg (name);

      sw_mark_path_find (sketch, file);
    }
  return g_steal_pointer (&sketch);
}

static gboolean
parse_spectrum (const GByteArray *bytes, double *reflectance, GError **error)
{
  g_autofree char *text = NULL;

  if (bytes->len > MOST_SPECTRUM_BYTES || !g_utf8_validate_len ((const char *) bytes->data, bytes->len, NULL))
    {
      g_set_error_literal (error, SW_CLI_ERROR, SW_CLI_ERROR_NUMBER,
                           _ ("This is no table of wavelengths and reflectances."));
      return FALSE;
    }
  if (sw_cxf_is_likely ((const char *) bytes->data, bytes->len))
    text = sw_cxf_spectrum ((const char *) bytes->data, bytes->len, error);
  else
    text = g_strndup ((const char *) bytes->data, bytes->len);
  return text != NULL && sw_spectrum_from_text (text, reflectance, error);
}

gboolean
sw_cli_read_spectrum (const char *name, double *reflectance, GError **error)
{
  g_autoptr (GByteArray) bytes = read_bytes (name, MOST_SPECTRUM_BYTES, error);

  if (bytes != NULL && parse_spectrum (bytes, reflectance, error))
    return TRUE;
  prefix_name (name, error);
  return FALSE;
}

SwTraced *
sw_cli_read_drawing (const char *name, const SwSketch *sketch, GError **error)
{
  g_autoptr (GByteArray) bytes = read_bytes (name, SW_SVG_MAX_BYTES, error);
  SwTraced *traced = bytes != NULL ? sw_svg_read ((const char *) bytes->data, bytes->len, sketch, error) : NULL;

  if (traced == NULL)
    prefix_name (name, error);
  return traced;
}
