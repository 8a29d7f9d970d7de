/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-guess.h"
#include "cli/sw-cli-stream.h"
#include "cli/sw-cli.h"
#include "forecast/sw-memory.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <signal.h>

static const SwCommand commands[] = {
  { "check", "FILE…", N_ ("Say whether colourways can be read and forecast"), sw_cli_check, NULL },
  { "forecast", "FILE", N_ ("Print everything that is forecast for a colourway"), sw_cli_forecast, NULL },
  { "scan", "FILE", N_ ("Print how the colours pool at every width"), sw_cli_scan, NULL },
  { "sheet", "FILE", N_ ("Print the dye sheet: what to weigh, pour and wait for"), sw_cli_sheet, NULL },
  { "draw", "pan|strip|cloth|item|scan|skein|hank|listing FILE…", N_ ("Draw a picture of a colourway"), sw_cli_draw, NULL },
  { "words", "FILE", N_ ("Print the words for a shop's page"), sw_cli_words, NULL },
  { "template", "FILE", N_ ("Draw the pan full size, to print or to trace on"), sw_cli_template, NULL },
  { "trace", "DRAWING", N_ ("Bring a traced layout into a colourway as pours"), sw_cli_trace, NULL },
  { "calc", "", N_ ("Work out a dyer's single sums"), NULL, sw_cli_calc_commands },
  { NULL },
};

static const SwCommand top = { "strandwise-cli", "", N_ ("Forecast hand-dyed yarn: from the pan to the cloth"), NULL, commands };

/* What is listed for a command: its name and what follows it. */
static char *
synopsis (const SwCommand *command)
{
  if (command->commands != NULL)
    return g_strdup_printf ("%s COMMAND …", command->name);
  if (command->arguments[0] == '\0')
    return g_strdup (command->name);
  return g_strdup_printf ("%s %s", command->name, command->arguments);
}

static char *
list_of_commands (const SwCommand *group)
{
  GString *text = g_string_new (NULL);

  /* Translators: %s is the program's name, with a command's where it has commands of its own */
  g_string_append_printf (text, _ ("Usage:\n  %s COMMAND [OPTION…] …\n\n"), g_get_prgname ());
  g_string_append_printf (text, "%s\n\n", _ (group->summary));
  g_string_append_printf (text, "%s\n", _ ("Commands:"));
  for (const SwCommand *command = group->commands; command->name != NULL; command++)
    {
      g_autofree char *left = synopsis (command);

      g_string_append_printf (text, "  %-*s  %s\n", 30 + (int) (strlen (left) - (gsize) g_utf8_strlen (left, -1)), left, _ (command->summary));
    }
  /* Translators: “--help” is typed as it is */
  g_string_append_printf (text, _ ("\n“%s COMMAND --help” lists a command's options.\n"), g_get_prgname ());
  if (group == &top)
    g_string_append_printf (text, "%s\n", _ ("“strandwise-cli --version” prints the version."));
  return g_string_free (text, FALSE);
}

static const SwCommand *
find_command (const SwCommand *group, const char *name)
{
  for (const SwCommand *command = group->commands; command->name != NULL; command++)
    if (g_str_equal (command->name, name))
      return command;
  return NULL;
}

/* Returns: FALSE */
static gboolean
refuse_word (const SwCommand *group, const char *word, GError **error)
{
  const char *words[16] = { NULL };
  const char *guess;
  gsize n = 0;

  for (const SwCommand *command = group->commands; command->name != NULL && n + 1 < G_N_ELEMENTS (words); command++)
    words[n++] = command->name;
  guess = sw_cli_guess (word, words);
  if (word[0] == '-')
    g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE, _ ("Unknown option %s (see %s --help)."), word, g_get_prgname ());
  else if (guess != NULL)
    g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE, _ ("There is no command “%s”. Did you mean “%s”? (See %s --help.)"), word, guess, g_get_prgname ());
  else
    g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE, _ ("There is no command “%s” (see %s --help)."), word, g_get_prgname ());
  return FALSE;
}

static gboolean
run_group (SwCall *call, GError **error);

static gboolean
run_command (SwCall *call, GError **error)
{
  return call->command->run != NULL ? call->command->run (call, error) : run_group (call, error);
}

/* The word after a group's name is a command of the group, or asks for help. */
static gboolean
run_group (SwCall *call, GError **error)
{
  const SwCommand *group = call->command;
  const char *word = call->argc > 1 ? call->argv[1] : NULL;
  g_autofree char *program = NULL;

  if (word == NULL)
    {
      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE, _ ("A command is missing (see %s --help)."), g_get_prgname ());
      return FALSE;
    }
  if (g_str_equal (word, "--help") || g_str_equal (word, "-h"))
    {
      g_autofree char *help = list_of_commands (group);

      return sw_cli_print_words (help, error);
    }
  if (group == &top && g_str_equal (word, "--version"))
    return sw_cli_print_words ("strandwise-cli " SW_VERSION "\n", error);

  call->command = find_command (group, word);
  if (call->command == NULL)
    return refuse_word (group, word, error);
  program = g_strdup_printf ("%s %s", g_get_prgname (), word);
  g_set_prgname (program);
  call->argc--;
  call->argv++;
  return run_command (call, error);
}

int
main (int argc, char **argv)
{
  SwCall call = { &top, argc, argv, SW_EXIT_FINE };
  g_autoptr (GError) error = NULL;

  sw_memory_keep ();
  setlocale (LC_ALL, "");
  /* Figures are read and printed with a point everywhere, so that a script works on any machine. */
  setlocale (LC_NUMERIC, "C");
  bindtextdomain (GETTEXT_PACKAGE, SW_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  /* The plural forms are looked up in the domain of the program. */
  textdomain (GETTEXT_PACKAGE);
  /* A reader that goes away and a file that may not grow are errors of writing like any other. */
  signal (SIGPIPE, SIG_IGN);
  signal (SIGXFSZ, SIG_IGN);
  g_set_prgname (top.name);

  if (argc < 1)
    return SW_EXIT_USAGE;
  if (!run_command (&call, &error))
    return (int) sw_cli_say (error);
  return (int) call.exit_code;
}
