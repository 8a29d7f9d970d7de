/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/sw-cli.h"

G_BEGIN_DECLS

/* What a person typed after an option, read the same way in every locale. */

/**
 * SwCliNumber:
 * @option: "--molar"
 * @text: (nullable): as typed; NULL if the option was not given
 * @least, @most: limits, both allowed
 * @number: (inout): where it goes; left as it was if the option was not given
 * @optional: else an option that was not given is an error of usage
 */
typedef struct
{
  const char *option;
  const char *text;
  double least, most;
  double *number;
  gboolean optional;
} SwCliNumber;

gboolean sw_cli_numbers (const SwCliNumber *rows, gsize n, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_cli_whole: the same for one whole number
 */
gboolean sw_cli_whole (const char *option, const char *text, gint64 least, gint64 most, gint64 *whole, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_cli_widths: --from and --to, widths of a scan in stitches
 * @from, @to: (inout): left as they were if the option was not given
 */
gboolean sw_cli_widths (const char *from_text, const char *to_text, gsize *from, gsize *to, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_cli_list:
 * @text: numbers with commas between them
 * @least, @most, @numbers: (array length=n)
 */
gboolean sw_cli_list (const char *option, const char *text, gsize n, const double *least, const double *most, double *numbers, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_cli_choice:
 * @choices: (array zero-terminated=1): the words allowed
 * @choice: (inout): index of @text; left as it was if @text is NULL
 */
gboolean sw_cli_choice (const char *option, const char *text, const char *const *choices, int *choice, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_cli_size:
 * @text: (nullable): "800x600"; NULL leaves @width and @height as they were
 */
gboolean sw_cli_size (const char *text, int *width, int *height, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* An option that must be there is not. Returns: FALSE */
gboolean sw_cli_missing (const char *option, GError **error);

G_END_DECLS
