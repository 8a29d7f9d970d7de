/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * sw_expander_tell_name:
 * Has a screen reader say the row's title for the row and for the lists inside
 * it, which the toolkit leaves without a name.
 */
void sw_expander_tell_name (AdwExpanderRow *row);

G_END_DECLS
