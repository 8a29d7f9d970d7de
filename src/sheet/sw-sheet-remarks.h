/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet/sw-measure.h"
#include "sheet/sw-sheet.h"

G_BEGIN_DECLS

/* What the dyer should think of before beginning. Numbers only; sw_sheet_remark_text() has the words. */

typedef enum
{
  SW_REMARK_DEPTH,        /* more dye than the fibre takes */
  SW_REMARK_SHORT_REST,   /* a slow dye and hardly any time before the next pour or flip */
  SW_REMARK_SWAMPED,      /* a dark dye that swamps a pale one: its share of the strength far above that of the mass */
  SW_REMARK_PAN_SMALL,    /* the lay does not fit */
  SW_REMARK_RUNS_OVER,    /* more liquor than the pan holds */
  SW_REMARK_NOT_COVERED,  /* skeins stand out of the liquor: usual in a steamed pan, and to be known */
  SW_REMARK_LEFT,         /* dye left in the bath after the set */
  SW_REMARK_PH_WINDOW,    /* a dye outside its class's usual pH */
  SW_REMARK_NO_SET,       /* nothing sets the dye at the end */
  SW_REMARK_ROUNDED_AWAY, /* an amount too small for the scale or measure */
  SW_REMARK_WHITE_EDGES,  /* covered edges stay white: nothing was worked in and no second face poured */
  SW_N_REMARKS,
} SwRemarkKind;

typedef struct
{
  SwRemarkKind kind;
  guint step; /* id, 0 if it is of none */
  int dye;    /* index, -1 */
  int other_dye;
  double is, limit; /* in the unit that the words name; share of the strength and of the mass, %, for a dye that swamps */
} SwRemark;

/* Returns: (transfer full): a GArray of SwRemark, the gravest first */
GArray *sw_sheet_remarks (const SwSheet *sheet) G_GNUC_WARN_UNUSED_RESULT;

/* In files: "depth", "short-rest" ... */
const char *sw_sheet_remark_name (SwRemarkKind kind);

/* Returns: (transfer full): a sentence, translated; lengths and the bath in those measures */
char *sw_sheet_remark_text (const SwSheet *sheet, const SwRemark *remark, SwMeasureSystem system) G_GNUC_WARN_UNUSED_RESULT;

/* The usual cautions. */
typedef enum
{
  SW_CAUTION_DUST,
  SW_CAUTION_SKIN,
  SW_CAUTION_HOT_ACID,
  SW_CAUTION_AIR,
  SW_CAUTION_FOOD,
  SW_CAUTION_CHILDREN,
  SW_CAUTION_WASTE,
  SW_CAUTION_METAL,     /* metal-complex dyes only */
  SW_CAUTION_LAST_WORD, /* data sheet and local code */
  SW_N_CAUTIONS,
} SwCaution;

/**
 * sw_cautions_for_deed:
 * @step: id of the deed's step; 0 for any of that kind
 * Returns: which of them belong to the deed, bits 1 << SwCaution. Dust at those pours alone that are dry
 */
guint sw_cautions_for_deed (const SwSketch *sketch, int deed_kind, guint step);

/* The same for the whole sheet. */
guint sw_cautions_for_sketch (const SwSketch *sketch);
const char *sw_caution_text (SwCaution caution);  /* translated, one or two sentences */
const char *sw_caution_title (SwCaution caution); /* translated, a few words */

G_END_DECLS
