/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-stream.h"

#include "colour/sw-spectrum.h"
#include "files/sw-colourway.h"
#include "files/sw-json-print.h"

#include <errno.h>
#include <fcntl.h>
#include <gio/gunixinputstream.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <unistd.h>

#define CHUNK (64 * 1024)

/* A measured spectrum is a few kilobytes; ten thousand times that is some other file. */
#define MOST_SPECTRUM_BYTES (1024 * 1024)

char *
sw_cli_display_name (const char *name)
{
  return g_str_equal (name, "-") ? g_strdup (_ ("standard input")) : g_filename_display_name (name);
}

/* What keeps a file from being read or written, in a dyer's words: sentences without their full stop, as the system's are. */
typedef struct
{
  int code;
  const char *words;
} Reason;

static const Reason read_reasons[] = {
  { G_IO_ERROR_NOT_FOUND, N_ ("There is no file of that name") },
  { G_IO_ERROR_NOT_DIRECTORY, N_ ("There is no file of that name") },
  { G_IO_ERROR_PERMISSION_DENIED, N_ ("You are not allowed to read it") },
  { G_IO_ERROR_IS_DIRECTORY, N_ ("It is a folder, not a file") },
};

static const Reason write_reasons[] = {
  { ENOENT, N_ ("The folder it should go into is not there") },
  { ENOTDIR, N_ ("The folder it should go into is not there") },
  { EACCES, N_ ("You are not allowed to write there") },
  { EPERM, N_ ("You are not allowed to write there") },
  { EROFS, N_ ("That place can only be read") },
  { EISDIR, N_ ("It is a folder, not a file") },
  { ENOSPC, N_ ("There is no room left to write it") },
  { EDQUOT, N_ ("There is no room left to write it") },
  { EPIPE, N_ ("Whoever was reading it went away before the end") },
};

static const char *
find_reason (const Reason *reasons, gsize n, int code, const char *otherwise)
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
                 find_reason (read_reasons, G_N_ELEMENTS (read_reasons), found->code, found->message));
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
  return g_steal_pointer (&sketch);
}

static gboolean
parse_spectrum (GByteArray *bytes, double *reflectance, GError **error)
{
  if (bytes->len > MOST_SPECTRUM_BYTES || !g_utf8_validate_len ((const char *) bytes->data, bytes->len, NULL))
    {
      g_set_error_literal (error, SW_CLI_ERROR, SW_CLI_ERROR_NUMBER,
                           _ ("This is no table of wavelengths and reflectances."));
      return FALSE;
    }
  g_byte_array_append (bytes, (const guint8 *) "", 1);
  return sw_spectrum_from_text ((const char *) bytes->data, reflectance, error);
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

/* Returns: 0 or the errno of what failed */
static int
write_all (int fd, const char *data, gsize n)
{
  while (n > 0)
    {
      gssize written = write (fd, data, MIN (n, G_MAXINT32));

      if (written < 0 && errno != EINTR)
        return errno;
      if (written > 0)
        {
          data += written;
          n -= (gsize) written;
        }
    }
  return 0;
}

static int
write_device (const char *name, const char *data, gsize n)
{
  int fd = g_open (name, O_WRONLY | O_CLOEXEC, 0);
  int failure, closing;

  if (fd < 0)
    return errno;
  failure = write_all (fd, data, n);
  closing = close (fd) < 0 ? errno : 0;
  return failure != 0 ? failure : closing;
}

/* Beside the file and renamed into its place; through a link, so that the link stays one. */
static int
write_file (const char *name, const char *data, gsize n)
{
  char *real = realpath (name, NULL);
  const char *target = real != NULL ? real : name;
  g_autofree char *fresh = g_strconcat (target, ".XXXXXX", NULL);
  GStatBuf before;
  gboolean existed = g_stat (target, &before) == 0;
  int fd = g_mkstemp_full (fresh, O_WRONLY | O_CLOEXEC, 0666);
  int failure = fd < 0 ? errno : write_all (fd, data, n);

  if (fd >= 0)
    {
      if (failure == 0 && existed && fchmod (fd, before.st_mode & 0777) < 0)
        failure = errno;
      if (failure == 0 && fsync (fd) < 0)
        failure = errno;
      if (close (fd) < 0 && failure == 0)
        failure = errno;
      if (failure == 0 && g_rename (fresh, target) < 0)
        failure = errno;
      if (failure != 0)
        g_unlink (fresh);
    }
  free (real);
  return failure;
}

gboolean
sw_cli_write (const char *name, GBytes *bytes, GError **error)
{
  gsize n;
  const char *data = g_bytes_get_data (bytes, &n);
  gboolean standard = g_str_equal (name, "-");
  g_autofree char *shown = standard ? g_strdup (_ ("standard output")) : g_filename_display_name (name);
  GStatBuf info;
  int failure;

  if (standard)
    failure = write_all (STDOUT_FILENO, data, n);
  else if (g_stat (name, &info) == 0 && !S_ISREG (info.st_mode))
    failure = S_ISDIR (info.st_mode) ? EISDIR : write_device (name, data, n);
  else
    failure = write_file (name, data, n);

  if (failure != 0)
    g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_IO, "%s: %s.", shown,
                 find_reason (write_reasons, G_N_ELEMENTS (write_reasons), failure, g_strerror (failure)));
  return failure == 0;
}

gboolean
sw_cli_print_data (const char *text, GError **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (text, strlen (text));

  return sw_cli_write ("-", bytes, error);
}

gboolean
sw_cli_print_json (JsonBuilder *builder, GError **error)
{
  g_autoptr (JsonNode) root = json_builder_get_root (builder);
  g_autofree char *text = sw_json_print (root);

  return sw_cli_print_data (text, error);
}

/* To the terminal's encoding; what it does not have becomes a question mark. */
static char *
to_locale (const char *text)
{
  const char *charset;
  char *converted;

  if (g_get_charset (&charset))
    return g_strdup (text);
  converted = g_convert_with_fallback (text, -1, charset, "UTF-8", "?", NULL, NULL, NULL);
  return converted != NULL ? converted : g_strdup (text);
}

gboolean
sw_cli_print_words (const char *text, GError **error)
{
  g_autofree char *converted = to_locale (text);

  return sw_cli_print_data (converted, error);
}

void
sw_cli_say_words (const char *text)
{
  g_autofree char *converted = to_locale (text);

  sw_cli_progress (NULL);
  /* Nobody is left to tell if this fails too. */
  (void) write_all (STDERR_FILENO, converted, strlen (converted));
}

void
sw_cli_progress (const char *what)
{
  static const char clear[] = "\r\033[K"; /* back to the left, and rub the line out */
  g_autofree char *line = NULL;

  if (!isatty (STDERR_FILENO))
    return;
  if (what != NULL)
    {
      g_autofree char *converted = to_locale (what);

      line = g_strconcat (clear, converted, NULL);
    }
  else
    line = g_strdup (clear);
  (void) write_all (STDERR_FILENO, line, strlen (line));
}
