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
