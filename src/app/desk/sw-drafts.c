/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-drafts.h"

#include "app/desk/sw-document.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <sys/file.h>
#include <unistd.h>

#define LOCK_NAME "lock"
#define DRAFT_ENDING ".colourway"

/* Where drafts go that cannot be read: never thrown away, never offered again. */
#define ASIDE_NAME "unreadable"

struct _SwDrafts
{
  char *parent;
  char *folder;
  int lock;
};

/**
 * take_lock:
 * @wait: for the program that holds it
 * Returns: the descriptor that holds it; -1 with errno
 */
static int
take_lock (const char *folder, gboolean make, gboolean wait)
{
  g_autofree char *path = g_build_filename (folder, LOCK_NAME, NULL);
  int fd = open (path, O_RDWR | O_CLOEXEC | (make ? O_CREAT : 0), 0600);

  while (fd >= 0 && flock (fd, LOCK_EX | (wait ? 0 : LOCK_NB)) != 0)
    if (errno != EINTR)
      {
        int why = errno;

        close (fd);
        errno = why;
        return -1;
      }
  return fd;
}

static void
set_folder_error (GError **error, const char *folder)
{
  g_autofree char *name = g_filename_display_name (folder);

  g_set_error (error, SW_DOCUMENT_ERROR, SW_DOCUMENT_ERROR_DRAFT,
               /* Translators: the first %s is a folder, the second the system's reason */
               _ ("Unsaved drawings cannot be kept safe in “%s”: %s. Save often, and see that the folder can be written to."),
               name, g_strerror (errno));
}

SwDrafts *
sw_drafts_open (const char *parent, GError **error)
{
  g_autofree char *uuid = g_uuid_string_random ();
  g_autofree char *folder = g_build_filename (parent, uuid, NULL);
  SwDrafts *self;
  int gate, lock;

  /* Nobody may take over the folder between its making and its locking, hence the gate. */
  gate = g_mkdir_with_parents (parent, 0700) == 0 ? take_lock (parent, TRUE, TRUE) : -1;
  lock = gate >= 0 && g_mkdir (folder, 0700) == 0 ? take_lock (folder, TRUE, FALSE) : -1;
  if (lock < 0)
    set_folder_error (error, parent);
  if (gate >= 0)
    close (gate);
  if (lock < 0)
    return NULL;

  self = g_new0 (SwDrafts, 1);
  self->parent = g_strdup (parent);
  self->folder = g_steal_pointer (&folder);
  self->lock = lock;
  return self;
}

static void
remove_folder (const char *folder)
{
  g_autofree char *lock = g_build_filename (folder, LOCK_NAME, NULL);

  /* The lock goes last of the files: a folder with drafts keeps it. */
  g_unlink (lock);
  g_rmdir (folder);
}

static GPtrArray *
list_folder (const char *folder)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    g_ptr_array_add (names, g_strdup (name));
  g_clear_pointer (&dir, g_dir_close);
  return names;
}

void
sw_drafts_close (SwDrafts *self)
{
  g_autoptr (GPtrArray) names = list_folder (self->folder);

  if (names->len <= 1)
    remove_folder (self->folder);
  close (self->lock);
  g_free (self->parent);
  g_free (self->folder);
  g_free (self);
}

char *
sw_drafts_new_path (const SwDrafts *self)
{
  g_autofree char *uuid = g_uuid_string_random ();
  g_autofree char *name = g_strconcat (uuid, DRAFT_ENDING, NULL);

  return g_build_filename (self->folder, name, NULL);
}

static SwDraft *
read_or_put_aside (SwDrafts *self, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *aside = NULL;
  g_autofree char *base = NULL;
  SwDraft *draft = sw_draft_read (path, &error);

  if (draft != NULL)
    return draft;

  aside = g_build_filename (self->parent, ASIDE_NAME, NULL);
  g_mkdir_with_parents (aside, 0700);
  base = g_path_get_basename (path);
  draft = g_new0 (SwDraft, 1);
  draft->path = g_build_filename (aside, base, NULL);
  draft->problem = g_strdup (error->message);
  if (g_rename (path, draft->path) != 0)
    {
      g_free (draft->path);
      draft->path = g_strdup (path);
    }
  return draft;
}

static void
adopt_folder (SwDrafts *self, const char *folder, GPtrArray *drafts)
{
  g_autoptr (GPtrArray) names = list_folder (folder);

  for (guint i = 0; i < names->len; i++)
    {
      const char *name = names->pdata[i];
      g_autofree char *from = g_build_filename (folder, name, NULL);
      g_autofree char *to = g_build_filename (self->folder, name, NULL);

      if (g_str_equal (name, LOCK_NAME))
        continue;
      /* Anything else was still being written when its program ended: the draft before it is whole. */
      if (!g_str_has_suffix (name, DRAFT_ENDING))
        g_unlink (from);
      else if (g_rename (from, to) == 0)
        g_ptr_array_add (drafts, read_or_put_aside (self, to));
    }
  remove_folder (folder);
}

static int
newest_first (gconstpointer a, gconstpointer b)
{
  const SwDraft *draft_a = *(const SwDraft *const *) a;
  const SwDraft *draft_b = *(const SwDraft *const *) b;

  if (draft_a->written == NULL || draft_b->written == NULL)
    return (draft_b->written != NULL) - (draft_a->written != NULL);
  return g_date_time_compare (draft_b->written, draft_a->written);
}

GPtrArray *
sw_drafts_adopt (SwDrafts *self)
{
  g_autoptr (GPtrArray) names = NULL;
  GPtrArray *drafts;
  int gate;

  g_return_val_if_fail (self != NULL, NULL);

  drafts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_draft_free);
  gate = take_lock (self->parent, TRUE, TRUE);
  names = list_folder (self->parent);
  for (guint i = 0; i < names->len; i++)
    {
      g_autofree char *folder = g_build_filename (self->parent, names->pdata[i], NULL);
      int lock;

      if (g_str_equal (folder, self->folder))
        continue;
      /* No lock: no folder of ours. A lock that is held: its program lives. */
      lock = take_lock (folder, FALSE, FALSE);
      if (lock < 0)
        continue;
      adopt_folder (self, folder, drafts);
      close (lock);
    }
  if (gate >= 0)
    close (gate);

  g_ptr_array_sort (drafts, newest_first);
  return drafts;
}
