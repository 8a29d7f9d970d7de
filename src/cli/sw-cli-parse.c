/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-guess.h"
#include "cli/sw-cli-stream.h"
#include "cli/sw-cli.h"

#include "colour/sw-spectrum.h"
#include "files/sw-colourway.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>

G_DEFINE_QUARK (sw_cli_error, sw_cli_error)

/* Leaves the program, as a person who asks for help wants nothing else of it. */
static void
answer_help (GOptionContext *context)
{
  char *help = g_option_context_get_help (context, TRUE, NULL);
  GError *error = NULL;
  int status = sw_cli_print_words (help, &error) ? SW_EXIT_FINE : (int) sw_cli_say (error);

  g_clear_error (&error);
  g_free (help);
  g_option_context_free (context);
  exit (status);
}

static gboolean
check_arguments (const SwCommand *command, char **arguments, guint least, guint most, GError **error)
{
  guint n = g_strv_length (arguments);

  if (n < least)
    g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE,
                 /* Translators: the first two are a command and what is to follow it: “strandwise-cli forecast FILE” */
                 _ ("An argument is missing: %s %s (see %s --help)."), g_get_prgname (), command->arguments, g_get_prgname ());
  else if (n > most)
    {
      g_autofree char *extra = g_filename_display_name (arguments[most]);

      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE,
                   _ ("“%s” is an argument too many (see %s --help)."), extra, g_get_prgname ());
    }
  return n >= least && n <= most;
}

/* What an option that nobody knows may have been meant for. */
static const char *
guess_option (char **words, const GOptionEntry *entries)
{
  const char *names[32] = { "help" };
  gsize n = 1;

  for (const GOptionEntry *entry = entries; entry != NULL && entry->long_name != NULL && n + 1 < G_N_ELEMENTS (names); entry++)
    names[n++] = entry->long_name;
  for (char **word = words; *word != NULL && strcmp (*word, "--") != 0; word++)
    {
      g_autofree char *name = g_str_has_prefix (*word, "--") ? g_strndup (*word + 2, strcspn (*word + 2, "=")) : NULL;

      if (name != NULL && !g_strv_contains (names, name))
        return sw_cli_guess (name, names);
    }
  return NULL;
}

/* Returns: FALSE */
static gboolean
refuse_options (const GError *found, char **words, const GOptionEntry *entries, GError **error)
{
  const char *guess = g_error_matches (found, G_OPTION_ERROR, G_OPTION_ERROR_UNKNOWN_OPTION) ? guess_option (words, entries) : NULL;

  if (guess != NULL)
    g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE,
                 /* Translators: a sentence of the option parser, the name of an option, then the program's name */
                 _ ("%s. Did you mean --%s? (See %s --help.)"), found->message, guess, g_get_prgname ());
  else
    g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE,
                 /* Translators: a sentence of the option parser, then the program's name */
                 _ ("%s (see %s --help)."), found->message, g_get_prgname ());
  return FALSE;
}

gboolean
sw_cli_parse (SwCall *call, const GOptionEntry *entries, guint least, guint most, char ***arguments, GError **error)
{
  g_autoptr (GOptionContext) context = g_option_context_new (call->command->arguments);
  g_autoptr (GError) found = NULL;
  g_auto (GStrv) rest = NULL;
  gboolean help = FALSE;
  const GOptionEntry common[] = {
    { "help", 'h', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, &help, N_ ("Show this help"), NULL },
    { G_OPTION_REMAINING, '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_FILENAME_ARRAY, &rest, NULL, NULL },
    G_OPTION_ENTRY_NULL,
  };

  /* The toolkit's own --help leaves without noticing that its text could not be written. */
  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_set_summary (context, _ (call->command->summary));
  if (entries != NULL)
    g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, common, GETTEXT_PACKAGE);

  if (!g_option_context_parse (context, &call->argc, &call->argv, &found))
    return refuse_options (found, call->argv + 1, entries, error);
  if (help)
    answer_help (g_steal_pointer (&context));
  if (rest == NULL)
    rest = g_new0 (char *, 1);
  if (!check_arguments (call->command, rest, least, most, error))
    return FALSE;
  if (arguments != NULL)
    *arguments = g_steal_pointer (&rest);
  return TRUE;
}

SwExit
sw_cli_exit_code (const GError *error)
{
  const struct
  {
    GQuark domain;
    SwExit exit_code;
  } domains[] = {
    { SW_FILE_ERROR, SW_EXIT_FAULT },
    { SW_SKETCH_ERROR, SW_EXIT_FAULT },
    { SW_COLOUR_ERROR, SW_EXIT_FAULT },
    { G_OPTION_ERROR, SW_EXIT_USAGE },
    { G_IO_ERROR, SW_EXIT_IO },
    { G_FILE_ERROR, SW_EXIT_IO },
  };
  static const SwExit own[] = {
    [SW_CLI_ERROR_NUMBER] = SW_EXIT_FAULT,
    [SW_CLI_ERROR_USAGE] = SW_EXIT_USAGE,
    [SW_CLI_ERROR_IO] = SW_EXIT_IO,
  };

  if (error->domain == SW_CLI_ERROR)
    return own[error->code];
  for (gsize i = 0; i < G_N_ELEMENTS (domains); i++)
    if (domains[i].domain == error->domain)
      return domains[i].exit_code;
  return SW_EXIT_FAULT;
}

SwExit
sw_cli_say (const GError *error)
{
  g_autofree char *line = g_strdup_printf ("%s: %s\n", g_get_prgname (), error->message);

  sw_cli_say_words (line);
  return sw_cli_exit_code (error);
}
