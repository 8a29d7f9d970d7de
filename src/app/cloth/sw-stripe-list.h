/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-units.h"
#include "forecast/sw-forecast.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* SwStripeList: the yarn's colours, each with its share and how long it lasts: in length, stitches and rows. */
#define SW_TYPE_STRIPE_LIST (sw_stripe_list_get_type ())
G_DECLARE_FINAL_TYPE (SwStripeList, sw_stripe_list, SW, STRIPE_LIST, AdwBin)

void sw_stripe_list_show (SwStripeList *self, const SwForecast *forecast, SwSystem system);

G_END_DECLS
