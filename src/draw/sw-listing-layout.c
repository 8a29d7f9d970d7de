/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-listing-layout.h"

#include "sketch/sw-chance.h"

#include <math.h>
#include <string.h>

/* Shares of the picture's shorter side. */
#define SAFE 0.055
#define CHIP 0.045
#define NAMES 0.050 /* from the top of the chips to that of the names */
#define NAME_LETTERS 0.026
#define NAME_LINE 0.030
#define CAPTION 0.042 /* a line of it */
#define CAPTION_LETTERS 0.034
#define SMALL 0.022
#define MARK 0.085
#define GAP 0.026
#define LINE_GAP 0.006
#define WORDS_GAP 0.022 /* from the words to the palette */

#define CHIP_GAP 0.016 /* share of the palette's width */
#define WIDEST_CHIP 0.24

#define DEGREES (G_PI / 180)

/* Shapes of the stage. */
typedef enum
{
  TALL,
  EVEN,
  WIDE,
  N_STAGES,
} StageShape;

/* Shares of the picture for x and of the stage for y; a box without a width is not there. */
typedef struct
{
  SwBox cloth, skein, hank;
  double angle; /* degrees; the fold's end leads */
  double tilt;  /* of the cloth, degrees */
} Arrangement;

static const Arrangement arrangements[][N_STAGES] = {
  [SW_ARRANGEMENT_HANK] = {
      [TALL] = { .hank = { 0, 0, 1, 1 }, .angle = -62 },
      [EVEN] = { .hank = { 0, 0, 1, 1 }, .angle = -40 },
      [WIDE] = { .hank = { 0, 0, 1, 1 }, .angle = -14 },
  },
  [SW_ARRANGEMENT_HANK_CLOTH] = {
      [TALL] = { .cloth = { 0.30, 0, 0.70, 0.66 }, .hank = { 0, 0.06, 0.96, 0.94 }, .angle = -60, .tilt = -5 },
      [EVEN] = { .cloth = { 0.30, 0, 0.70, 0.74 }, .hank = { 0, 0.03, 0.96, 0.97 }, .angle = -46, .tilt = -6 },
      [WIDE] = { .cloth = { 0.40, 0, 0.60, 0.84 }, .hank = { 0, 0.06, 0.86, 0.94 }, .angle = -26, .tilt = -6 },
  },
  [SW_ARRANGEMENT_SKEIN_CLOTH] = {
      [TALL] = { .cloth = { 0.10, 0, 0.80, 0.76 }, .skein = { 0, 0.66, 1, 0.30 }, .tilt = 3 },
      [EVEN] = { .cloth = { 0.16, 0, 0.68, 0.76 }, .skein = { 0, 0.62, 1, 0.36 }, .tilt = 3 },
      [WIDE] = { .cloth = { 0.22, 0, 0.56, 0.76 }, .skein = { 0, 0.58, 1, 0.40 }, .tilt = 3 },
  },
  [SW_ARRANGEMENT_WHOLE] = {
      [TALL] = { .cloth = { 0.38, 0, 0.62, 0.60 }, .skein = { 0, 0.80, 1, 0.20 }, .hank = { 0, 0.02, 0.84, 0.77 }, .angle = -66, .tilt = -5 },
      [EVEN] = { .cloth = { 0.38, 0, 0.62, 0.64 }, .skein = { 0, 0.78, 1, 0.22 }, .hank = { 0, 0.02, 0.86, 0.75 }, .angle = -48, .tilt = -6 },
      [WIDE] = { .cloth = { 0.46, 0, 0.54, 0.66 }, .skein = { 0, 0.74, 1, 0.26 }, .hank = { 0, 0.03, 0.78, 0.70 }, .angle = -20, .tilt = -6 },
  },
};

static SwBox
share_of (const SwBox *all, const SwBox *share)
{
  return (SwBox){ all->x + share->x * all->width, all->y + share->y * all->height, share->width * all->width, share->height * all->height };
}

static StageShape
shape_of (const SwBox *stage)
{
  const double aspect = stage->width / MAX (stage->height, 1);

  return aspect < 0.88 ? TALL : aspect < 1.35 ? EVEN
                                              : WIDE;
}

gboolean
sw_listing_on_label (const SwListingSettings *listing)
{
  const gboolean hanks = listing->arrangement == SW_ARRANGEMENT_HANKS || arrangements[listing->arrangement][EVEN].hank.width > 0;

  return hanks && listing->label != SW_LABEL_NONE && listing->label_words;
}

static SwBox
safe_box (double width, double height)
{
  const double margin = SAFE * MIN (width, height);

  return (SwBox){ margin, margin, width - 2 * margin, height - 2 * margin };
}

static double
mark_height (const SwBox *safe, double mark_aspect, double shorter)
{
  return MIN (MARK * shorter, 0.4 * safe->width / mark_aspect);
}

void
sw_listing_caption_room (const SwListingSettings *listing, double mark_aspect, double width, double height, double *letters, double *room)
{
  const double shorter = MIN (width, height);
  const SwBox safe = safe_box (width, height);

  *letters = CAPTION_LETTERS * shorter;
  *room = safe.width;
  if (mark_aspect > 0 && !sw_listing_on_label (listing))
    *room -= mark_height (&safe, mark_aspect, shorter) * mark_aspect + GAP * shorter;
}

void
sw_listing_palette_room (int n, double width, double height, double *letters, double *room)
{
  const SwBox safe = safe_box (width, height);

  *letters = NAME_LETTERS * MIN (width, height);
  *room = MIN ((safe.width - CHIP_GAP * safe.width * (n - 1)) / MAX (n, 1), WIDEST_CHIP * safe.width);
}

/* Beneath the stage, from the bottom up: small line, caption, and beside them the mark; palette. */
static void
place_foot (const SwListingSettings *listing, const SwListingFoot *foot, double shorter, double caption_width, SwListingLayout *layout)
{
  const SwBox *safe = &layout->safe;
  const gboolean on_label = sw_listing_on_label (listing);
  const double end = safe->y + safe->height;
  double bottom = end;

  if (foot->small)
    {
      layout->small = (SwBox){ safe->x, end - SMALL * shorter, caption_width, SMALL * shorter };
      bottom = layout->small.y - LINE_GAP * shorter;
    }
  if (foot->caption_lines > 0 && !on_label)
    {
      const double high = CAPTION * foot->caption_lines * shorter;

      layout->caption = (SwBox){ safe->x, bottom - high, caption_width, high };
      bottom = layout->caption.y;
    }
  if (foot->mark_aspect > 0 && !on_label)
    {
      const double high = mark_height (safe, foot->mark_aspect, shorter), wide = high * foot->mark_aspect;

      layout->mark = (SwBox){ safe->x + safe->width - wide, end - high, wide, high };
      bottom = MIN (bottom, layout->mark.y);
    }
  if (bottom < end)
    bottom -= WORDS_GAP * shorter;
  if (listing->palette)
    {
      const double high = (NAMES + NAME_LINE * foot->name_lines) * shorter;

      layout->palette = (SwBox){ safe->x, bottom - high, safe->width, high };
      layout->chip = CHIP * shorter;
      layout->names = NAMES * shorter;
      bottom = layout->palette.y - GAP * shorter;
    }
  layout->stage = (SwBox){ safe->x, safe->y, safe->width, MAX (bottom - safe->y, 1) };
}

/* From one hank to the next, at least, in widths. */
#define CLOSE 1.15

/* How long @n hanks are that lie along @along, side by side across @across. */
static double
longest (double along, double across, double slim, int n)
{
  return MIN (along, across / (CLOSE * slim * n));
}

/* Side by side, as one lays out a batch: not quite in line. */
static void
place_row (SwListingLayout *layout, double slim, int n)
{
  const SwBox *stage = &layout->stage;
  const gboolean lying = longest (stage->width, stage->height, slim, n) > longest (stage->height, stage->width, slim, n);
  const double step_x = lying ? 0 : stage->width / n, step_y = lying ? stage->height / n : 0;

  layout->n_hanks = n;
  layout->lying = lying;
  for (int i = 0; i < n; i++)
    {
      const double off = sw_chance_even (sw_chance_mix (0x726f77, (guint64) i)) - 0.5;
      SwBox *room = &layout->hank_room[i];

      *room = (SwBox){ stage->x + i * step_x, stage->y + i * step_y, lying ? stage->width : step_x, lying ? step_y : stage->height };
      layout->hanks[i] = (SwHankPlace){ room->x + room->width / 2, room->y + room->height / 2, ((lying ? 0 : -90) + 3.5 * off) * DEGREES };
    }
}

void
sw_listing_layout (const SwListingSettings *listing, const SwListingFoot *foot, double slim, double width, double height, SwListingLayout *layout)
{
  double letters, caption_width;
  const Arrangement *arrangement;
  SwBox across;

  memset (layout, 0, sizeof *layout);
  layout->safe = safe_box (width, height);
  sw_listing_caption_room (listing, foot->mark_aspect, width, height, &letters, &caption_width);
  place_foot (listing, foot, MIN (width, height), caption_width, layout);
  if (listing->arrangement == SW_ARRANGEMENT_HANKS)
    {
      place_row (layout, slim, (int) CLAMP (listing->hanks, 2, SW_MOST_HANKS));
      return;
    }
  arrangement = &arrangements[listing->arrangement][shape_of (&layout->stage)];
  across = (SwBox){ 0, 0, width, layout->stage.y + layout->stage.height };
  if (arrangement->cloth.width > 0)
    {
      layout->cloth = share_of (&across, &arrangement->cloth);
      layout->cloth_tilt = arrangement->tilt * DEGREES;
    }
  if (arrangement->skein.width > 0)
    layout->skein = share_of (&layout->stage, &arrangement->skein);
  if (arrangement->hank.width > 0)
    {
      layout->n_hanks = 1;
      layout->hank_room[0] = share_of (&layout->stage, &arrangement->hank);
      layout->hanks[0] = (SwHankPlace){ layout->hank_room[0].x + layout->hank_room[0].width / 2, layout->hank_room[0].y + layout->hank_room[0].height / 2, arrangement->angle * DEGREES };
    }
}
