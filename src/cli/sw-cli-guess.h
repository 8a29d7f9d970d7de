/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * sw_cli_guess:
 * @word: as typed
 * @words: (array zero-terminated=1): what it might have been meant for
 *
 * By the fewest letters left out, put in, exchanged or swapped with the next:
 * F. J. Damerau, Communications of the ACM 7 (1964), p. 171.
 *
 * Returns: (nullable): the likeliest of @words, if it is near enough to ask about
 */
const char *sw_cli_guess (const char *word, const char *const *words);

G_END_DECLS
