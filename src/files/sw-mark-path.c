/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-mark-path.h"

#define MOST_UP 2 /* folders */

static char *
folder_of (GFile *file)
{
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autofree char *path = folder != NULL ? g_file_get_path (folder) : NULL;
  g_autofree char *whole = path != NULL ? g_canonicalize_filename (path, NULL) : NULL;

  return whole != NULL ? g_filename_to_utf8 (whole, -1, NULL, NULL, NULL) : NULL;
}

static gboolean
is_there (const char *path)
{
  g_autofree char *name = g_filename_from_utf8 (path, -1, NULL, NULL, NULL);

  return name != NULL && g_file_test (name, G_FILE_TEST_IS_REGULAR);
}

void
sw_mark_path_find (SwSketch *sketch, GFile *file)
{
  char **mark = &sketch->listing.mark;
  g_autofree char *folder = (*mark)[0] != '\0' ? folder_of (file) : NULL;
  g_autofree char *whole = NULL;
  g_autofree char *leaf = NULL;
  g_autofree char *beside = NULL;

  if (folder == NULL)
    return;
  whole = g_path_is_absolute (*mark) ? g_strdup (*mark) : g_canonicalize_filename (*mark, folder);
  leaf = g_path_get_basename (*mark);
  beside = g_build_filename (folder, leaf, NULL);
  g_free (*mark);
  *mark = g_strdup (!is_there (whole) && is_there (beside) ? beside : whole);
}

/* From one folder to a file by the folders that both are in; NULL if too many must be left. */
static char *
way_from (const char *folder, const char *path)
{
  g_auto (GStrv) from = g_strsplit (folder, G_DIR_SEPARATOR_S, -1);
  g_auto (GStrv) to = g_strsplit (path, G_DIR_SEPARATOR_S, -1);
  GString *way = g_string_new (NULL);
  guint same = 0, up = 0;

  while (from[same] != NULL && to[same] != NULL && to[same + 1] != NULL && g_str_equal (from[same], to[same]))
    same++;
  for (guint i = same; from[i] != NULL && from[i][0] != '\0'; i++, up++)
    g_string_append (way, ".." G_DIR_SEPARATOR_S);
  for (guint i = same; to[i] != NULL; i++)
    g_string_append_printf (way, "%s%s", to[i], to[i + 1] != NULL ? G_DIR_SEPARATOR_S : "");
  return g_string_free (way, up > MOST_UP || same < 2);
}

void
sw_mark_path_keep (SwSketch *sketch, GFile *file)
{
  char **mark = &sketch->listing.mark;
  g_autofree char *folder = g_path_is_absolute (*mark) ? folder_of (file) : NULL;
  g_autofree char *whole = folder != NULL ? g_canonicalize_filename (*mark, NULL) : NULL;
  g_autofree char *way = whole != NULL ? way_from (folder, whole) : NULL;

  if (way == NULL)
    return;
  g_free (*mark);
  *mark = g_steal_pointer (&way);
}
