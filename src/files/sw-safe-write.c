/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-safe-write-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

/* The new file, until it takes the old one's place. */
typedef struct
{
  char *path;
  int fd;
} Draft;

static void
draft_drop (Draft *draft)
{
  if (draft->fd >= 0)
    close (draft->fd);
  if (draft->path != NULL)
    g_unlink (draft->path);
  g_free (draft->path);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Draft, draft_drop)

static gboolean
fail (GError **error, int saved_errno, const char *path)
{
  g_autofree char *name = g_filename_display_name (path);

  g_set_error (error, G_IO_ERROR, g_io_error_from_errno (saved_errno),
               /* Translators: 1 a file, 2 the system's reason */
               _ ("“%1$s” could not be saved: %2$s. The file on the disk is as it was: save under another name or in another folder."),
               name, g_strerror (saved_errno));
  return FALSE;
}

static void
fail_no_file (GError **error, const char *path)
{
  g_autofree char *name = g_filename_display_name (path);

  g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_REGULAR_FILE,
               _ ("“%s” is a folder or a device, so that no colourway can be saved there. Save under another name."), name);
}

/* Where @path leads in the end, and what is there; @old->st_mode is 0 if nothing is. */
static char *
find_target (const char *path, struct stat *old, GError **error)
{
  char *real = realpath (path, NULL);
  char *target = g_strdup (real != NULL ? real : path);
  struct stat link;

  free (real);
  *old = (struct stat){ 0 };
  if (stat (target, old) == 0)
    {
      if (!S_ISREG (old->st_mode))
        fail_no_file (error, path);
      else if (access (target, W_OK) != 0) /* a rename would not ask */
        fail (error, errno, path);
      else
        return target;
    }
  else if (errno != ENOENT || lstat (target, &link) == 0) /* the latter is a link to nowhere */
    fail (error, errno, path);
  else
    return target;
  g_free (target);
  return NULL;
}

static char *
query_etag (GFile *file, GCancellable *cancellable)
{
  g_autoptr (GFileInfo) info = g_file_query_info (file, G_FILE_ATTRIBUTE_ETAG_VALUE, G_FILE_QUERY_INFO_NONE, cancellable, NULL);

  return info != NULL ? g_strdup (g_file_info_get_etag (info)) : NULL;
}

static gboolean
check_etag (GFile *file, const char *etag, GCancellable *cancellable, GError **error)
{
  g_autofree char *now = etag != NULL ? query_etag (file, cancellable) : NULL;
  g_autofree char *name = NULL;

  /* A file that is gone cannot be overwritten by mistake. */
  if (now == NULL || g_str_equal (etag, now))
    return TRUE;
  name = g_file_get_parse_name (file);
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_WRONG_ETAG,
               _ ("“%s” was changed by something else since it was opened, and saving would lose that change. Save under another name, or open it again."), name);
  return FALSE;
}

static gboolean
write_all (int fd, const char *text, gsize n)
{
  while (n > 0)
    {
      gssize done = write (fd, text, n);

      if (done < 0 && errno != EINTR)
        return FALSE;
      if (done > 0)
        {
          text += done;
          n -= (gsize) done;
        }
    }
  return TRUE;
}

/* Owner and group where we may, then the mode, which changing the owner may have cut down. */
static gboolean
keep_permissions (int fd, const struct stat *old)
{
  if (old->st_mode == 0)
    return TRUE;
  if (fchown (fd, old->st_uid, old->st_gid) != 0 && fchown (fd, (uid_t) -1, old->st_gid) != 0)
    return fchmod (fd, old->st_mode & 0707) == 0; /* another group must not gain what the old one had */
  return fchmod (fd, old->st_mode & 07777) == 0;
}

/* So that the rename itself outlives a power cut. Not all file systems can, and the text is safe either way. */
static void
sync_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int fd = g_open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);

  if (fd < 0)
    return;
  fsync (fd);
  close (fd);
}

static gboolean
write_beside (const char *target, const struct stat *old, const char *text, gsize n, GError **error)
{
  g_auto (Draft) draft = { NULL, -1 };
  g_autofree char *folder = g_path_get_dirname (target);
  int fd;

  draft.path = g_build_filename (folder, ".colourway-XXXXXX", NULL);
  draft.fd = g_mkstemp_full (draft.path, O_RDWR | O_CLOEXEC, 0666);
  if (draft.fd < 0)
    {
      int saved_errno = errno;

      g_clear_pointer (&draft.path, g_free);
      return fail (error, saved_errno, target);
    }
  if (!keep_permissions (draft.fd, old) || !write_all (draft.fd, text, n) || fsync (draft.fd) != 0)
    return fail (error, errno, target);
  fd = draft.fd;
  draft.fd = -1;
  if (close (fd) != 0 || g_rename (draft.path, target) != 0)
    return fail (error, errno, target);
  g_clear_pointer (&draft.path, g_free);
  sync_folder (target);
  return TRUE;
}

gboolean
sw_safe_write (GFile *file, const char *text, gsize n, const char *etag, char **new_etag, GCancellable *cancellable, GError **error)
{
  const char *path = g_file_peek_path (file);
  g_autofree char *target = NULL;
  struct stat old;

  if (path == NULL)
    return g_file_replace_contents (file, text, n, etag, FALSE, G_FILE_CREATE_NONE, new_etag, cancellable, error);
  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return FALSE;
  target = find_target (path, &old, error);
  if (target == NULL ||
      !check_etag (file, etag, cancellable, error) ||
      !write_beside (target, &old, text, n, error))
    return FALSE;
  if (new_etag != NULL)
    *new_etag = query_etag (file, NULL);
  return TRUE;
}
