/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-stream.h"
#include "cli/sw-cli-value.h"

#include "files/sw-colourway.h"
#include "files/sw-mark-path.h"
#include "files/sw-svg.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* What was typed. */
typedef struct
{
  char *output, *into;
} Typed;

static void
typed_clear (Typed *typed)
{
  g_free (typed->output);
  g_free (typed->into);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Typed, typed_clear)

/* For people, unless the colourway itself goes to standard output. */
static gboolean
say_what_came (const SwTraced *traced, const SwSketch *before, const SwSketch *after, GError **error)
{
  g_autoptr (GPtrArray) words = sw_traced_words (traced, before, after, G_MAXUINT);
  g_autofree char *lines = NULL;

  g_ptr_array_add (words, g_strdup ("")); /* an end to the last line */
  g_ptr_array_add (words, NULL);
  lines = g_strjoinv ("\n", (char **) words->pdata);
  return sw_cli_print_words (lines, error);
}

static gboolean
bring_in (const char *drawing, SwSketch *sketch, gboolean quiet, GError **error)
{
  g_autoptr (SwTraced) traced = sw_cli_read_drawing (drawing, sketch, error);
  g_autoptr (SwEdit) edit = traced != NULL ? sw_traced_edit (traced, sketch) : NULL;
  g_autoptr (SwEdit) inverse = NULL;
  g_autoptr (SwSketch) before = NULL;

  if (traced == NULL)
    return FALSE;
  before = sw_sketch_copy (sketch);
  if (edit != NULL)
    inverse = sw_edit_apply (edit, sketch, NULL, error);
  if (edit != NULL && inverse == NULL)
    {
      g_autofree char *shown = sw_cli_display_name (drawing);

      g_prefix_error (error, "%s: ", shown);
      return FALSE;
    }
  return quiet || say_what_came (traced, before, sketch, error);
}

gboolean
sw_cli_trace (SwCall *call, GError **error)
{
  g_auto (Typed) typed = { NULL };
  g_auto (GStrv) files = NULL;
  g_autoptr (SwSketch) sketch = NULL;
  g_autoptr (GBytes) bytes = NULL;
  char *text;
  const GOptionEntry entries[] = {
    { "into", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_FILENAME, &typed.into, N_ ("The colourway whose pan was drawn on"), "FILE" },
    { "output", 'o', G_OPTION_FLAG_NONE, G_OPTION_ARG_FILENAME, &typed.output, N_ ("Where the colourway with the pours goes; - is standard output"), "OUT" },
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 1, 1, &files, error))
    return FALSE;
  if (typed.into == NULL)
    return sw_cli_missing ("--into", error);
  if (typed.output == NULL)
    return sw_cli_missing ("-o", error);
  sketch = sw_cli_read_sketch (typed.into, error);
  if (sketch == NULL || !bring_in (files[0], sketch, g_str_equal (typed.output, "-"), error))
    return FALSE;
  if (!g_str_equal (typed.output, "-"))
    {
      g_autoptr (GFile) place = g_file_new_for_commandline_arg (typed.output);

      sw_mark_path_keep (sketch, place);
    }
  text = sw_colourway_print (sketch);
  bytes = g_bytes_new_take (text, strlen (text));
  return sw_cli_write (typed.output, bytes, error);
}
