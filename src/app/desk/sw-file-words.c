/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-file-words.h"

#include "app/desk/sw-document.h"

#include <glib/gi18n-lib.h>

/* Every sentence has exactly one %s, the file's name. */
static const struct
{
  SwFileDeed deed;
  int code; /* of G_IO_ERROR */
  SwDocumentError ours;
  const char *sentence;
} sentences[] = {
  { SW_FILE_DEED_READ, G_IO_ERROR_NOT_FOUND, SW_DOCUMENT_ERROR_READ,
    N_ ("“%s” is not there any more. It may have been moved, renamed or deleted.") },
  { SW_FILE_DEED_READ, G_IO_ERROR_PERMISSION_DENIED, SW_DOCUMENT_ERROR_READ,
    N_ ("You are not allowed to read “%s”. Ask its owner, or copy it to a folder of your own.") },
  { SW_FILE_DEED_READ, G_IO_ERROR_IS_DIRECTORY, SW_DOCUMENT_ERROR_READ,
    N_ ("“%s” is a folder. Choose a .colourway file inside it.") },
  { SW_FILE_DEED_READ, G_IO_ERROR_NOT_MOUNTED, SW_DOCUMENT_ERROR_READ,
    N_ ("The place where “%s” lies is not connected. Connect it and try again.") },
  { SW_FILE_DEED_WRITE, G_IO_ERROR_WRONG_ETAG, SW_DOCUMENT_ERROR_CHANGED,
    N_ ("“%s” was changed by another program since you opened it. It has not been touched.") },
  { SW_FILE_DEED_WRITE, G_IO_ERROR_PERMISSION_DENIED, SW_DOCUMENT_ERROR_WRITE,
    N_ ("You are not allowed to write to “%s”. Save it under another name or in a folder of your own.") },
  { SW_FILE_DEED_WRITE, G_IO_ERROR_READ_ONLY, SW_DOCUMENT_ERROR_WRITE,
    N_ ("“%s” lies in a place that cannot be written to. Save it in another folder.") },
  { SW_FILE_DEED_WRITE, G_IO_ERROR_NO_SPACE, SW_DOCUMENT_ERROR_WRITE,
    N_ ("There is no room left on the disk for “%s”. Free some, or save it on another disk.") },
  { SW_FILE_DEED_WRITE, G_IO_ERROR_NOT_FOUND, SW_DOCUMENT_ERROR_WRITE,
    N_ ("The folder of “%s” is not there any more. Save it in another folder.") },
  { SW_FILE_DEED_WRITE, G_IO_ERROR_IS_DIRECTORY, SW_DOCUMENT_ERROR_WRITE,
    N_ ("There is a folder called “%s” already. Choose another name.") },
  { SW_FILE_DEED_WRITE, G_IO_ERROR_FILENAME_TOO_LONG, SW_DOCUMENT_ERROR_WRITE,
    N_ ("“%s” is too long a name for this disk. Choose a shorter one.") },
};

char *
sw_file_display_name (GFile *file)
{
  g_autofree char *base = g_file_get_basename (file);

  return g_filename_display_name (base);
}

/* The compiler cannot see that each sentence of the table takes just the name. */
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"

static GError *
in_words (const GError *error, SwFileDeed deed, const char *name)
{
  for (gsize i = 0; error->domain == G_IO_ERROR && i < G_N_ELEMENTS (sentences); i++)
    if (sentences[i].deed == deed && sentences[i].code == error->code)
      return g_error_new (SW_DOCUMENT_ERROR, (int) sentences[i].ours, _ (sentences[i].sentence), name);

  if (deed == SW_FILE_DEED_READ)
    /* Translators: the first %s is a file's name, the second a sentence that says why */
    return g_error_new (SW_DOCUMENT_ERROR, SW_DOCUMENT_ERROR_READ, _ ("“%s” could not be opened. %s"), name, error->message);
  /* Translators: the first %s is a file's name, the second a sentence that says why */
  return g_error_new (SW_DOCUMENT_ERROR, SW_DOCUMENT_ERROR_WRITE, _ ("“%s” could not be saved. %s"), name, error->message);
}

#pragma GCC diagnostic pop

void
sw_file_error_in_words (GError **error, SwFileDeed deed, GFile *file)
{
  g_autofree char *name = NULL;
  GError *words;

  g_return_if_fail (error != NULL && *error != NULL);

  if (g_error_matches (*error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;

  name = sw_file_display_name (file);
  words = in_words (*error, deed, name);
  g_error_free (*error);
  *error = words;
}
