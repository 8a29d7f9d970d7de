/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"
#include "sheet/sw-sheet.h"

G_BEGIN_DECLS

/* How surely the colourway comes out the same again. Each of these runs the forecast several times: off the main thread. */

/**
 * sw_forecast_sheet:
 * Returns: (transfer full): the dye sheet of the forecast's sketch; the forecast must outlive it
 */
SwSheet *sw_forecast_sheet (const SwForecast *forecast) G_GNUC_WARN_UNUSED_RESULT;

/* A figure over several seeds. */
typedef struct
{
  double least, mean, most;
} SwRange;

/**
 * SwRepeat: how alike the skeins of one batch come out.
 * @shares: per colour of the first skein's stripe table, the share of the strand that is nearest to it, 0..1
 */
typedef struct
{
  gsize n_seeds;
  gsize n_colours;
  char **colours; /* names, as in the stripe table */
  SwRange *shares;
  SwRange stack;           /* the strongest likeness of neighbours, as in SwPooling */
  SwRange mean_difference; /* CIEDE2000 between the mean colours of any two skeins */
  double twist_start_cm;   /* where along the loop the twist should begin so that hanks match: the middle of the longest run of one colour */
} SwRepeat;

/**
 * sw_repeat_new:
 * @n_seeds: how many skeins: those of the drawing's pan, lane by lane, then those of pans poured by the same recipe
 */
SwRepeat *sw_repeat_new (const SwSketch *sketch, gsize n_seeds, GCancellable *cancellable, GError **error) G_GNUC_WARN_UNUSED_RESULT;
void sw_repeat_free (SwRepeat *repeat);

/* What a slip does to the colour, CIEDE2000 at the places it reaches. */
typedef enum
{
  SW_SLIP_WEIGHED_MORE, /* 5 % more dye weighed for the stock */
  SW_SLIP_WEIGHED_LESS,
  SW_SLIP_POURED_MORE, /* 1 mL more poured */
  SW_SLIP_POURED_LESS,
  SW_SLIP_ROUNDED, /* everything as the scale and the measure round it */
  SW_N_SLIPS,
} SwSlip;

const char *sw_slip_name (SwSlip slip); /* in files: "weighed-more" */

typedef struct
{
  SwSlip slip;
  guint step;        /* id of the pour; 0 */
  int dye;           /* index of the dye; -1 */
  double mean, most; /* CIEDE2000 over the strand's stitches; most: the mean of the worst hundredth of them */
} SwSlipEffect;

/**
 * sw_slips_new:
 * Returns: (transfer full): GArray of SwSlipEffect: each dye weighed 5 % more and less, each pour of stock
 *   1 mL more and less, and the rounding of all, in the kind of pan that it changes more
 */
GArray *sw_slips_new (const SwSketch *sketch, GCancellable *cancellable, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwRepeat, sw_repeat_free)

G_END_DECLS
