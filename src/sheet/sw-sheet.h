/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bath/sw-schedule.h"
#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/*
 * The dye sheet as data: what to weigh, measure, pour and wait for, for a
 * batch of skeins over some pans. Whoever shows it (window, page, text, JSON)
 * adds words and units and computes nothing.
 *
 * All pans are poured alike, and the sketch draws one of them, filled with
 * lay.skeins. The skeins of the batch are spread over the pans as evenly as
 * they go: some pans hold `fullest`, the others one skein less. A pan that
 * holds m skeins gets m / lay.skeins of everything, dye, water and acid, so
 * that depth, pH and liquor ratio are those of the drawing in every pan.
 *
 * Every pour is rounded by itself, in each kind of pan; totals are the sums
 * of the rounded pours over the real pans, so that they always close.
 */

/* What became of the dye, from the forecast of one pan. Both lists may be NULL: then nothing is said of it. */
typedef struct
{
  const SwBathState *states; /* n_steps + 1 */
  const double *left_g;      /* n_steps x n_dyes, row-major: in the liquor after each step */
} SwSheetBath;

/**
 * SwAmount: what is wanted, and what the dyer's scale or measure can show.
 * @exact: from the drawing
 * @rounded: the nearest step of the scale or measure; as @exact if it is not rounded
 */
typedef struct
{
  double exact, rounded;
} SwAmount;

/* One pour, per pan that holds the most skeins. */
typedef struct
{
  guint step;               /* id */
  guint dye;                /* index in the sketch's list */
  guint number;             /* of the pour, from 1, in the order of pouring */
  gboolean dry;             /* grains: no stock */
  gboolean by_depth;        /* the dyer set a depth, and the volume follows */
  SwAmount stock_ml;        /* 0 for dry grains */
  SwAmount dye_g;           /* rounded: what the rounded volume brings, at the strength of the stock as weighed */
  SwAmount lesser_stock_ml; /* the same in a pan that holds one skein less; 0 without such pans */
  SwAmount lesser_dye_g;
  double depth_percent; /* owf of the pan's fibre */
} SwSheetPour;

/* One dye, for the batch. */
typedef struct
{
  guint dye;               /* index */
  SwAmount poured_ml;      /* sum over pours and pans; rounded: the sum of the rounded pours */
  SwAmount poured_g;       /* with dry grains */
  SwAmount stock_ml;       /* to make up, with the margin; rounded: never less than is poured, and more where that keeps the strength */
  SwAmount weigh_g;        /* of powder for that stock */
  double strength_percent; /* g in 100 mL of the stock so made up: as set, but for what rounding leaves */
  double water_ml;         /* to make it up to stock_ml.rounded; powder counted as no volume */
  SwAmount dry_g;          /* grains scattered dry, weighed apart */
  double depth_percent;    /* owf of all the fibre */
  double left_percent;     /* of what was poured, in the liquor at the end; -1 not known */
  double strength_share;   /* share of the colour strength: depth x luminance-weighted K/S per 1 %, of all dyes' sum; -1 not known */
  double mass_share;
} SwSheetDye;

/**
 * SwSheetLiquor: water and acid at the start, per pan.
 * @water_ml, @acid_ml: as set. Crystals are dissolved in acid_ml of water, and so bring the same liquor
 * @cover_ml: liquor that just covers the laid skeins, with what they hold, in a pan of that floor
 * @lay_cover_ml: the same in a pan no larger than the lay, which is what the forecast calls covered
 * @target_acid_ml: in the water as set. 0 if no pH was asked for, -1 if acid of that strength cannot reach it
 */
typedef struct
{
  double fibre_g;
  SwAmount water_ml;
  double cover_ml;
  double lay_cover_ml;
  double ratio;          /* mL of liquor, acid and all, to 1 g of fibre, as set */
  double ratio_water_ml; /* water for the wanted ratio, with the acid as set; 0 if none was asked for */
  double pan_ml;         /* that the pan holds up to 1 cm above the lay */
  SwAmount acid_ml;
  SwAmount crystals_g; /* anhydrous citric acid; 0 unless so measured */
  double start_ph;
  double target_acid_ml;
  double target_crystals_g; /* 0 unless so measured and reached */
} SwSheetLiquor;

/* Crystals of the monohydrate weigh that much more: 210.14 / 192.12 by molar mass. */
#define SW_MONOHYDRATE (210.14 / 192.12)

/* One step, and the bath after it. */
typedef struct
{
  guint step;                                  /* id */
  SwAmount added_ml;                           /* acid or water added in this step to a pan with the most skeins; 0 in other steps */
  SwAmount crystals_g;                         /* of an acid step, if acid is weighed dry: to be dissolved in added_ml of water */
  SwAmount lesser_added_ml, lesser_crystals_g; /* in a pan that holds one skein less */
  double ph;
  double temperature_c;
  double left_percent; /* of all the dye poured so far; -1 not known */
} SwSheetStep;

typedef struct
{
  const SwSketch *sketch; /* not owned */
  gsize skeins, pans;
  gsize fullest;     /* skeins in the fullest pan: for which the amounts per pan are given */
  gsize fuller_pans; /* that hold so many */
  gsize lesser;      /* skeins in each of the other pans; 0 if all are alike */
  double fibre_g;    /* of the batch, dry */
  gsize n_pours;
  SwSheetPour *pours;
  gsize n_dyes; /* those that are poured, in the sketch's order */
  SwSheetDye *dyes;
  SwSheetLiquor liquor;
  SwSheetLiquor lesser_liquor; /* of a pan that holds one skein less; all 0 without such pans */
  SwAmount water_ml;           /* of the batch: at the start and in later steps */
  SwAmount acid_ml;            /* of the batch, counted at the strength of bath.acid_percent */
  SwAmount crystals_g;         /* of the batch; 0 unless acid is weighed dry */
  gsize n_steps;
  SwSheetStep *steps;
  double clear_percent; /* of the dye, on the fibre at the end; -1 not known */
} SwSheet;

/**
 * sw_sheet_new:
 * @sketch: validated; must outlive the sheet
 * @bath: (nullable)
 */
SwSheet *sw_sheet_new (const SwSketch *sketch, const SwSheetBath *bath) G_GNUC_WARN_UNUSED_RESULT;
void sw_sheet_free (SwSheet *sheet);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwSheet, sw_sheet_free)

G_END_DECLS
