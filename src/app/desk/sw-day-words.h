/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-units.h"
#include "sheet/sw-day-clock.h"
#include "sheet/sw-sheet.h"

G_BEGIN_DECLS

/**
 * SwDayWords: what is to be done now, to be read across a kitchen.
 * @title: "Canal", "Heat the bath"
 * @amount: the one figure that matters: "16 mL", "88 °C"; may be empty
 * @beside: the same otherwise, and what goes with it: "1 tbsp + ¼ tsp · 0.16 g of dye"; may be empty
 * @detail: where and how; may be several lines; may be empty
 * @caution: (nullable): titles of the cautions of that deed
 * @caution_text: (nullable): their sentences
 */
typedef struct
{
  char *title;
  char *amount;
  char *beside;
  char *detail;
  char *caution;
  char *caution_text;
} SwDayWords;

/**
 * sw_day_words:
 * @sheet: of the drawing, for the amounts
 * @words: (out caller-allocates): to be cleared
 */
void sw_day_words (const SwSheet *sheet, const SwDayDeed *deed, SwSystem system, SwDayWords *words);
void sw_day_words_clear (SwDayWords *words);

/* Returns: (transfer full): the deed on one line, for what comes next: "Canal, 16 mL"; "Rest, 10 min" */
char *sw_day_next_words (const SwSheet *sheet, const SwDayDeed *deed, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_day_digits:
 * @left_us: below 0 once the time is up
 * Returns: (transfer full): "24:31", "1:02:33", "+0:42" when it is over; to the second that is still running
 */
char *sw_day_digits (gint64 left_us) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): "Rest", or "Rest, pan 2" */
char *sw_day_timer_title (const SwDayTimer *timer) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): "until 11:13", "paused", "time is up since 11:13" */
char *sw_day_timer_detail (const SwDayTimer *timer) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SwDayWords, sw_day_words_clear)

/* What the large button does now: "Done", "Start the Timer" ... Returns: (transfer full) */
char *sw_day_done_words (const SwDayClock *clock) G_GNUC_WARN_UNUSED_RESULT;

/* Of a pan that is done by itself the drawing with that pan alone, so that all amounts are its own; else the drawing. Returns: (transfer full) */
SwSketch *sw_day_sketch_in_hand (const SwSketch *drawing, const SwDayClock *clock) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
