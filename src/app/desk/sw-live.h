/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"
#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

#define SW_TYPE_FORECAST (sw_forecast_get_type ())
GType sw_forecast_get_type (void);

/**
 * SwLive: the forecast of a document, following its edits off the main thread.
 * Answers come in order; a question that is being worked on is finished even
 * if the hand has moved on, so that the picture keeps up with a long drag
 * instead of waiting for its end.
 *
 * Properties, read-only: "forecast" (SwForecast, NULL before the first),
 * "busy", "problem" (a sentence: why the newest drawing has no forecast; the
 * last good one stays).
 *
 * Signals: "updated": a newer forecast is there, for pictures. "told": the
 * same for words: ten times a second at most, and always after the last.
 */
#define SW_TYPE_LIVE (sw_live_get_type ())
G_DECLARE_FINAL_TYPE (SwLive, sw_live, SW, LIVE, GObject)

SwLive *sw_live_new (SwDocument *document) G_GNUC_WARN_UNUSED_RESULT;

SwDocument *sw_live_get_document (SwLive *self);

/* (transfer none) (nullable) */
SwForecast *sw_live_get_forecast (SwLive *self);
gboolean sw_live_get_busy (SwLive *self);
const char *sw_live_get_problem (SwLive *self);

/* g_get_monotonic_time() of the newest edit that the forecast knows of. */
gint64 sw_live_get_edit_time (SwLive *self);

/**
 * sw_live_catch_up:
 * @until_us: g_get_monotonic_time() at which to give up
 * Waits for the forecast under way, for a frame that wants to show it.
 * Returns: whether the forecast is of the document as it is
 */
gboolean sw_live_catch_up (SwLive *self, gint64 until_us);

G_END_DECLS
