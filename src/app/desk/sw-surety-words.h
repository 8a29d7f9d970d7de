/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-units.h"
#include "forecast/sw-repeat.h"

G_BEGIN_DECLS

/* How surely a colourway comes out the same again, in words. */

/* Returns: (transfer full): "32 to 35 %" */
char *sw_surety_share (const SwRange *range) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): "0.41 to 0.48" */
char *sw_surety_number (const SwRange *range, int decimals) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_surety_verdict:
 * @difference: CIEDE2000
 * Returns: whether it is seen, translated. Common practice, no one source: about 1 is just seen side by side
 */
const char *sw_surety_verdict (double difference);

/* Returns: (transfer full): where along the loop the twist should begin so that hanks match */
char *sw_surety_twist (const SwRepeat *repeat, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): "Teal weighed 5 % more", "Canal: 1 mL less poured" */
char *sw_surety_slip (const SwSketch *sketch, const SwSlipEffect *effect) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
