/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/sw-cli.h"

#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/**
 * sw_cli_run:
 * @name: a colourway, as for sw_cli_read_sketch()
 * @error: its sentence begins with @name
 *
 * Returns: (transfer full): its forecast
 */
SwForecast *sw_cli_run (const char *name, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* For the commands that forecast one width: a trial width as typed, NULL for the colourway's own; and its option. Include gi18n-lib.h. */
gboolean sw_cli_set_width (SwSketch *sketch, const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;

#define SW_CLI_WIDTH_ENTRY(width)                                                                                          \
  {                                                                                                                        \
    "width", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, width, N_ ("Try another width of the cloth, in stitches"), "N" \
  }

/* The same for a sketch that was read from @name. */
SwForecast *sw_cli_run_sketch (const char *name, const SwSketch *sketch, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_cli_report:
 * Returns: (transfer full): the forecast in words and tables, translated
 */
char *sw_cli_report (const SwForecast *forecast) G_GNUC_WARN_UNUSED_RESULT;

/* The word for flat work or in the round as in files and tables: "flat", "round". */
const char *sw_cli_worked_name (SwWorked worked);

G_END_DECLS
