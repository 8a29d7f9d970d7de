/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-stream.h"

#include "files/sw-json-print.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static const SwCliReason write_reasons[] = {
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
                 sw_cli_reason (write_reasons, G_N_ELEMENTS (write_reasons), failure, g_strerror (failure)));
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
