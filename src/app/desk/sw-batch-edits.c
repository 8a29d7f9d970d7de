/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-batch-edits.h"

#include "sheet/sw-cost.h"
#include "sheet/sw-recipe-data.h"
#include "sheet/sw-recipe.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* What is longer than the member may be loses its end, whole characters of it. */
static void
put_text (SwBatch *batch, const char *member_name, const char *text)
{
  const SwMember *member = sw_record_find_member (SW_RECORD_BATCH, member_name);
  char **place = G_STRUCT_MEMBER_P (batch, member->offset);
  gsize length = strlen (text);

  if ((double) length > member->max)
    {
      length = (gsize) member->max;
      while (length > 0 && ((guchar) text[length] & 0xc0) == 0x80)
        length--;
    }
  g_free (*place);
  *place = g_strndup (text, length);
}

static const SwBatch *
last_batch (const SwSketch *sketch)
{
  return sketch->batches->len > 0 ? sketch->batches->pdata[sketch->batches->len - 1] : NULL;
}

/* By the data, or by the words of a batch that was noted before there were data. */
static char *
changes_since (const SwBatch *before, const char *amounts, const char *recipe)
{
  if (before == NULL)
    return g_strdup ("");
  if (*before->amounts != '\0')
    return sw_recipe_changes (before->amounts, amounts);
  return *before->recipe != '\0' ? sw_recipe_changes_of_words (before->recipe, recipe) : g_strdup ("");
}

gboolean
sw_batch_note (SwDocument *document, const SwSheet *sheet, const char *log, const char *date, guint *id, GError **error)
{
  const SwBatch *before = last_batch (sw_document_get_sketch (document));
  g_autoptr (SwBatch) batch = sw_batch_new (0);
  g_autofree char *amounts = sw_recipe_data (sheet);
  g_autofree char *recipe = sw_recipe_words (amounts);
  g_autofree char *changes = changes_since (before, amounts, recipe);
  SwCost cost;

  sw_cost_of (sheet, &cost);
  batch->skeins = (gint64) sheet->skeins;
  batch->cost = cost.total;
  put_text (batch, "date", date);
  put_text (batch, "recipe", recipe);
  put_text (batch, "amounts", amounts);
  put_text (batch, "changes", changes);
  put_text (batch, "log", log != NULL ? log : "");
  /* Translators: an edit, shown beside Undo: a dyeing is kept in the file */
  if (!sw_document_edit (document, sw_edit_insert_batch (-1, batch), _ ("Note a Batch"), error))
    return FALSE;
  before = last_batch (sw_document_get_sketch (document));
  if (id != NULL && before != NULL)
    *id = before->id;
  return TRUE;
}

gboolean
sw_batch_delete (SwDocument *document, guint id, GError **error)
{
  /* Translators: an edit, shown beside Undo */
  return sw_document_edit (document, sw_edit_remove (SW_RECORD_BATCH, id), _ ("Delete a Batch"), error);
}

gboolean
sw_batch_start_from (SwDocument *document, guint id, GError **error)
{
  const SwBatch *batch = sw_sketch_find_batch (sw_document_get_sketch (document), id);
  SwValue skeins = sw_value_whole (batch != NULL ? batch->skeins : 0);

  /* Translators: an edit, shown beside Undo: the next batch is as large as one that was dyed */
  return sw_document_edit (document, sw_edit_set (SW_RECORD_SHEET, 0, "skeins", &skeins), _ ("Start From a Batch"), error);
}

/* Photographs: a line each */

char **
sw_batch_photos (const SwBatch *batch)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) lines = g_strsplit (batch->photos, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    if (*g_strstrip (lines[i]) != '\0')
      g_strv_builder_add (builder, lines[i]);
  return g_strv_builder_end (builder);
}

static gboolean
set_photos (SwDocument *document, guint id, GStrvBuilder *photos, const char *name, GError **error)
{
  g_auto (GStrv) list = g_strv_builder_end (photos);
  g_autofree char *text = g_strjoinv ("\n", list);
  SwValue value = sw_value_text (text);
  gboolean done = sw_document_edit (document, sw_edit_set (SW_RECORD_BATCH, id, "photos", &value), name, error);

  sw_value_clear (&value);
  return done;
}

gboolean
sw_batch_add_photos (SwDocument *document, guint id, const char *const *uris, GError **error)
{
  const SwBatch *batch = sw_sketch_find_batch (sw_document_get_sketch (document), id);
  g_auto (GStrv) there = batch != NULL ? sw_batch_photos (batch) : NULL;
  g_autoptr (GStrvBuilder) photos = g_strv_builder_new ();

  if (there != NULL)
    g_strv_builder_addv (photos, (const char **) there);
  for (guint i = 0; uris[i] != NULL; i++)
    if (there == NULL || !g_strv_contains ((const char *const *) there, uris[i]))
      g_strv_builder_add (photos, uris[i]);
  /* Translators: an edit, shown beside Undo: links to photographs of a batch */
  return set_photos (document, id, photos, _ ("Add Photographs"), error);
}

gboolean
sw_batch_remove_photo (SwDocument *document, guint id, const char *uri, GError **error)
{
  const SwBatch *batch = sw_sketch_find_batch (sw_document_get_sketch (document), id);
  g_auto (GStrv) there = batch != NULL ? sw_batch_photos (batch) : NULL;
  g_autoptr (GStrvBuilder) photos = g_strv_builder_new ();

  for (guint i = 0; there != NULL && there[i] != NULL; i++)
    if (!g_str_equal (there[i], uri))
      g_strv_builder_add (photos, there[i]);
  /* Translators: an edit, shown beside Undo */
  return set_photos (document, id, photos, _ ("Remove a Photograph"), error);
}
