/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * sw_money_text:
 * @currency: (nullable): ISO 4217; NULL or empty for the locale's own
 * Returns: (transfer full): "12.50 €", "$12.50", "SEK 12.50", "JPY 1250": placed and grouped as the locale does.
 *   A currency that is not the locale's stands as its code; without any the bare number
 */
char *sw_money_text (double amount, const char *currency) G_GNUC_WARN_UNUSED_RESULT;

/* The locale's own, ISO 4217; "" if it has none. */
const char *sw_money_locale_currency (void);

G_END_DECLS
