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
 * lay.skeins. Pans that hold more or fewer get everything that goes by fibre
 * in proportion.
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

/* One pour, per pan. */
typedef struct
{
  guint step;           /* id */
  guint dye;            /* index in the sketch's list */
  guint number;         /* of the pour, from 1, in the order of pouring */
  gboolean dry;         /* grains: no stock */
  gboolean by_depth;    /* the dyer set a depth, and the volume follows */
  SwAmount stock_ml;    /* 0 for dry grains */
  SwAmount dye_g;       /* rounded: what the rounded volume brings */
  double depth_percent; /* owf of the pan's fibre */
} SwSheetPour;

/* One dye, for the batch. */
typedef struct
{
  guint dye;             /* index */
  SwAmount poured_ml;    /* sum over pours and pans; rounded: the sum of the rounded pours */
  SwAmount poured_g;     /* with dry grains */
  SwAmount stock_ml;     /* to make up, with the margin */
  SwAmount weigh_g;      /* of powder for that stock */
  double water_ml;       /* to make it up to stock_ml.rounded; powder counted as no volume */
  SwAmount dry_g;        /* grains scattered dry, weighed apart */
  double depth_percent;  /* owf of all the fibre */
  double left_percent;   /* of what was poured, in the liquor at the end; -1 not known */
  double strength_share; /* share of the colour strength: depth x luminance-weighted K/S per 1 %, of all dyes' sum */
  double mass_share;
} SwSheetDye;

/* Water and acid, per pan. */
typedef struct
{
  double fibre_g;
  SwAmount water_ml;     /* as set */
  double cover_ml;       /* liquor that just covers the laid skeins, with what they hold */
  double ratio;          /* mL of liquor to 1 g of fibre, as set */
  double ratio_water_ml; /* water for the wanted ratio; 0 if none was asked for */
  double pan_ml;         /* that the pan holds up to 1 cm above the lay */
  SwAmount acid_ml;      /* at the start, as set */
  SwAmount crystals_g;   /* the same acid weighed dry; 0 unless so measured */
  double start_ph;
  double target_acid_ml; /* for the wanted pH; 0 if none was asked for */
  double target_crystals_g;
} SwSheetLiquor;

/* The bath after one step. */
typedef struct
{
  guint step; /* id */
  double ph;
  double temperature_c;
  double left_percent; /* of all the dye poured so far; -1 not known */
} SwSheetStep;

typedef struct
{
  const SwSketch *sketch; /* not owned */
  gsize skeins, pans;
  gsize fullest;  /* skeins in the fullest pan: for which the amounts per pan are given */
  double fibre_g; /* of the batch, dry */
  gsize n_pours;
  SwSheetPour *pours;
  gsize n_dyes; /* those that are poured, in the sketch's order */
  SwSheetDye *dyes;
  SwSheetLiquor liquor;
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
