/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-live.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwListingPage: picture and words for a shop's page: the picture with what
 * is in it, the twist of the hank, care, and the words, which may be edited.
 * Properties "live" (SwLive) and "inches".
 */
#define SW_TYPE_LISTING_PAGE (sw_listing_page_get_type ())
G_DECLARE_FINAL_TYPE (SwListingPage, sw_listing_page, SW, LISTING_PAGE, AdwBin)

/* Returns: (transfer full) (nullable): the words as they stand; NULL before the first forecast */
char *sw_listing_page_get_words (SwListingPage *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
