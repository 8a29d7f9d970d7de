/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/*
 * strandwise-cli: a table of commands, each with its own options. A command
 * writes its result to standard output or a file; what goes wrong is one
 * sentence on standard error and an exit status.
 */

/* Exit statuses, as the manual promises them. Of several files the highest counts. */
typedef enum
{
  SW_EXIT_FINE = 0,
  SW_EXIT_FAULT = 1, /* the file or a number is at fault */
  SW_EXIT_USAGE = 2, /* the command line could not be understood */
  SW_EXIT_IO = 3,    /* something could not be read or written */
} SwExit;

#define SW_CLI_ERROR (sw_cli_error_quark ())
GQuark sw_cli_error_quark (void);
typedef enum
{
  SW_CLI_ERROR_NUMBER, /* not a number, or outside its limits */
  SW_CLI_ERROR_USAGE,
  SW_CLI_ERROR_IO,
} SwCliError;

typedef struct _SwCommand SwCommand;

/* One run of a command. */
typedef struct
{
  const SwCommand *command;
  int argc;
  char **argv;      /* from the command's own name on, NULL-ended */
  SwExit exit_code; /* raised by a command that goes on after a fault */
} SwCall;

/**
 * SwCommand:
 * @name: as typed
 * @arguments: what follows the options in the usage line; "" if nothing
 * @summary: for people, marked with N_()
 * @run: FALSE with @error for what ended it
 * @commands: instead of @run: a table of commands of its own, ended by one without a name
 */
struct _SwCommand
{
  const char *name;
  const char *arguments;
  const char *summary;
  gboolean (*run) (SwCall *call, GError **error);
  const SwCommand *commands;
};

/* One for each command of the top level, in a file of its own. */
gboolean sw_cli_check (SwCall *call, GError **error);
gboolean sw_cli_forecast (SwCall *call, GError **error);
gboolean sw_cli_scan (SwCall *call, GError **error);
gboolean sw_cli_sheet (SwCall *call, GError **error);
gboolean sw_cli_draw (SwCall *call, GError **error);
gboolean sw_cli_words (SwCall *call, GError **error);
gboolean sw_cli_template (SwCall *call, GError **error);
gboolean sw_cli_trace (SwCall *call, GError **error);
extern const SwCommand sw_cli_calc_commands[];

/* A dyer's single sums. */
gboolean sw_cli_calc_stitch_length (SwCall *call, GError **error);
gboolean sw_cli_calc_ph (SwCall *call, GError **error);
gboolean sw_cli_calc_strike (SwCall *call, GError **error);
gboolean sw_cli_calc_difference (SwCall *call, GError **error);
gboolean sw_cli_calc_colour (SwCall *call, GError **error);
gboolean sw_cli_calc_spectrum (SwCall *call, GError **error);
gboolean sw_cli_calc_mix (SwCall *call, GError **error);

/**
 * sw_cli_parse:
 * @entries: (nullable): the command's options, ended by an empty one; --help is added
 * @least, @most: how many arguments may follow the options; @most of 0 allows none
 * @arguments: (out) (transfer full): those arguments, as file names, NULL-ended
 *
 * Answers --help by itself and leaves the program.
 */
gboolean sw_cli_parse (SwCall *call, const GOptionEntry *entries, guint least, guint most, char ***arguments, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The option that every command has whose result is for people or for programs. Include gi18n-lib.h. */
#define SW_CLI_JSON_ENTRY(json)                                                                         \
  {                                                                                                     \
    "json", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, json, N_ ("Print JSON instead of words"), NULL \
  }

/* The status that goes with an error of any domain. */
SwExit sw_cli_exit_code (const GError *error);

/* Says the error on standard error, after the program's name. Returns: its status */
SwExit sw_cli_say (const GError *error);

G_END_DECLS
