/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-value.h"

G_BEGIN_DECLS

/*
 * The document: what the dyer drew. Plain records in the core's units
 * (cm, g, mL, min, deg C); what each member may hold is told by the tables
 * of sw-member.h, which the reader, the writer, the edits and the properties
 * pane all share.
 *
 * Places in the pan: x along the laid skein from its left end, 0 .. C / runs;
 * y across it from the near edge, 0 .. width x skeins. Both in cm. They are
 * the same on both faces: a flip turns the skein over, not the ruler.
 */

typedef enum
{
  SW_FIBRE_SUPERWASH_WOOL,
  SW_FIBRE_WOOL,
  SW_FIBRE_SUPERWASH_NYLON, /* the usual sock blend, shrink-resist wool with a quarter of nylon */
  SW_FIBRE_NYLON,
  SW_FIBRE_SILK,
} SwFibre;

typedef enum
{
  SW_WINDING_TRAVERSED, /* a guide sweeps to and fro */
  SW_WINDING_BY_HAND,   /* scattered */
} SwWinding;

typedef enum
{
  SW_FOLDING_STACKED,
  SW_FOLDING_SIDE_BY_SIDE,
} SwFolding;

typedef enum
{
  SW_ACID_ACETIC,
  SW_ACID_CITRIC,
} SwAcid;

/* How the acid is measured out. */
typedef enum
{
  SW_ACID_FORM_SOLUTION,
  SW_ACID_FORM_CRYSTALS, /* citric acid weighed dry, in the same amount as the solution would bring */
} SwAcidForm;

typedef enum
{
  SW_DYE_CLASS_UNKNOWN,
  SW_DYE_CLASS_LEVELLING,
  SW_DYE_CLASS_FAST_ACID,
  SW_DYE_CLASS_MILLING,
  SW_DYE_CLASS_SUPER_MILLING,
  SW_DYE_CLASS_METAL_COMPLEX_1_1,
  SW_DYE_CLASS_METAL_COMPLEX_2_1,
} SwDyeClass;

typedef enum
{
  SW_STEP_BAND,    /* pour: across the skein, may slant */
  SW_STEP_SPLOTCH, /* pour: an ellipse, may be turned */
  SW_STEP_SPECKLE, /* pour: droplets or dry grains scattered over a box */
  SW_STEP_REST,
  SW_STEP_FLIP,
  SW_STEP_ACID,
  SW_STEP_WATER,
  SW_STEP_SET,
} SwStepKind;

#define SW_N_STEP_KINDS (SW_STEP_SET + 1)

typedef enum
{
  SW_WORKED_FLAT,
  SW_WORKED_ROUND,
} SwWorked;

typedef enum
{
  SW_FABRIC_STOCKINETTE,
  SW_FABRIC_GARTER,
  SW_FABRIC_SEED, /* also called moss stitch */
  SW_FABRIC_RIB,  /* one knit, one purl */
} SwFabric;

#define SW_N_FABRICS (SW_FABRIC_RIB + 1)

typedef enum
{
  SW_STATE_DRY, /* dry relaxed */
  SW_STATE_WET, /* wet relaxed */
} SwFabricState;

/* A member this version does not know, kept as it was read. */
typedef struct
{
  char *name;
  char *json; /* compact JSON text of its value */
} SwExtra;

/* Adds one at the end; makes the list when @extras is NULL. Strings are copied. */
void sw_extras_add (GPtrArray **extras, const char *name, const char *json);

/* A NULL list and an empty one are the same. Order counts, since it is the file's. */
GPtrArray *sw_extras_copy (const GPtrArray *extras) G_GNUC_WARN_UNUSED_RESULT;
void sw_extras_free (GPtrArray *extras);
gboolean sw_extras_equal (const GPtrArray *a, const GPtrArray *b);

typedef struct
{
  char *name;
  SwFibre fibre;
  double mass_g; /* of one skein */
  double metres_per_100_g;
  gint64 plies;
  SwSample undyed;
  GPtrArray *extras; /* of SwExtra, or NULL */
} SwYarn;

typedef struct
{
  double circumference_cm;
  double growth; /* how much longer the last wrap is than the first, a fraction */
  SwWinding winding;
  double wraps_per_sweep;
  double wander; /* sd of the smooth wander, fraction of the bundle */
  GPtrArray *extras;
} SwReelSettings;

typedef struct
{
  gint64 skeins; /* lanes across the pan */
  gint64 runs;   /* 1, 2, 4 ... */
  SwFolding folding;
  double width_cm; /* of one skein as laid */
  double depth_cm;
  double pan_length_cm;
  double pan_width_cm;
  GPtrArray *extras;
} SwLaySettings;

typedef struct
{
  double water_ml; /* all the liquor at the start, with what the yarn holds */
  double alkalinity_meq_per_l;
  gboolean keep_carbonate; /* FALSE: open to the air, CO2 leaves */
  SwAcid acid;
  double acid_percent; /* strength, g in 100 mL */
  double acid_ml;      /* in the bath before the first step */
  double temperature_c;
  double spread_cm2_per_min; /* Dxy with the yarn just covered */
  GPtrArray *extras;
} SwBathSettings;

typedef struct
{
  guint id;
  char *name;
  SwDyeClass dye_class;
  double half_time_min; /* at pH 4, 90 C, shrink-resist wool */
  double quick_share;   /* 0..1 of the dye that strikes with the quick half-time */
  double quick_half_time_min;
  double activation_kj_per_mol;
  double spread;               /* factor on the bath's spread */
  double stock_percent;        /* g in 100 mL */
  double sample_depth_percent; /* owf of the sample */
  SwSample sample;
  double price_per_g; /* in the sheet's currency; 0: not known */
  GPtrArray *extras;
} SwDye;

/**
 * SwStep: one step of the dyeing. One flat record for all kinds; the table of
 * sw-member.h says which members a kind uses. The others keep their defaults.
 */
typedef struct
{
  guint id;
  SwStepKind kind;
  char *name;
  /* pours */
  guint dye;
  double amount_ml;  /* of the dye's stock; ask sw_schedule_pour_ml(), since a depth rules over it */
  double depth_percent; /* owf of all the fibre in the pan; 0: the amount counts */
  double worked_in;  /* 0 left alone .. 1 pushed through */
  double x_cm, y_cm; /* centre */
  double width_cm;   /* band: along x; splotch, speckle: the extent along x before turning */
  double length_cm;  /* across: along y; a band of 0 goes right across */
  double angle_deg;  /* band: slant from straight across; others: turned anticlockwise as drawn */
  double specks_per_100_cm2;
  double speck_mm;        /* median diameter */
  double speck_variation; /* sd of the natural logarithm of the diameter */
  gboolean dry;           /* speckle of dry grains: grams counts, not amount_ml */
  double grams;
  /* rest, set */
  double minutes;
  double temperature_c;
  /* acid, water */
  double volume_ml;
  double acid_percent;
  GPtrArray *extras;
} SwStep;

typedef struct
{
  double stitches_per_10cm;
  double rows_per_10cm;    /* 0: from the stitches, by Munden's ratio */
  double stitch_length_cm; /* yarn in one stitch; 0: by Munden */
  SwFabricState state;
  SwFabric fabric;
  SwWorked worked;
  gint64 width_stitches;
  gint64 skein;    /* which of the skeins in the pan is knitted, from 1 */
  double start_cm; /* strand cut off before the cast-on */
  double cast_on;  /* yarn in the cast-on over the width of the cloth */
  double turn_cm;  /* extra yarn at each turn of flat work */
  gint64 alternate_skeins;   /* knitted in turn, 1: one only */
  gint64 alternate_rows;     /* rows before the next one takes over */
  double alternate_shift_cm; /* how much further in each next one starts */
  GPtrArray *extras;
} SwClothSettings;

/**
 * SwSheetSettings: how the dye day is done, and what it costs. Prices are in
 * one currency, and 0 where the dyer has not said.
 */
typedef struct
{
  gint64 skeins; /* of the batch; 0: as many as lie in the pan */
  gint64 pans;   /* 0: as many as these need, lay.skeins in each */
  double stock_margin_percent; /* stock made up beyond what is poured */
  double weigh_step_g;         /* what the dyer's scale shows; 0: not rounded */
  double measure_step_ml;      /* what the dyer's measure shows; 0: not rounded */
  double target_ph;            /* 0: none, the acid is as set */
  double liquor_ratio;         /* mL of liquor to 1 g of fibre; 0: none, the water is as set */
  SwAcidForm acid_form;
  /* times and temperatures of what the steps do not tell */
  double presoak_min, presoak_c;
  double heat_min;
  double pour_min; /* of each pour */
  double cool_min;
  double wash_min, wash_c;
  gint64 rinses;
  double rinse_min; /* of each */
  double spin_min;
  double dry_min;
  /* cost */
  char *currency; /* ISO 4217, three letters; empty: the locale's */
  double yarn_price;       /* of one skein */
  double acid_price_per_l; /* of the solution as used */
  double label_price;      /* label, bag, tie: of one skein */
  double batch_price;      /* heat, water: of the batch */
  double hands_on_min;     /* the dyer's own minutes, of the batch */
  double rate_per_hour;
  double margin_percent; /* of the price, above the cost */
  GPtrArray *extras;
} SwSheetSettings;

typedef enum
{
  SW_ARRANGEMENT_HANK,
  SW_ARRANGEMENT_HANKS,
  SW_ARRANGEMENT_HANK_CLOTH,
  SW_ARRANGEMENT_SKEIN_CLOTH,
  SW_ARRANGEMENT_WHOLE,
} SwArrangement;

typedef enum
{
  SW_SHAPE_SQUARE,
  SW_SHAPE_UPRIGHT, /* 4:5 */
  SW_SHAPE_WIDE,    /* 3:2 */
} SwShape;

/* What lies beneath the yarn in a picture: greys without a hue. */
typedef enum
{
  SW_GROUND_WHITE,
  SW_GROUND_PALE,
  SW_GROUND_GREY,
  SW_GROUND_CHARCOAL,
} SwGround;

/* The paper round a hank's middle. */
typedef enum
{
  SW_LABEL_NONE,
  SW_LABEL_WHITE,
  SW_LABEL_GREY,
} SwLabel;

typedef enum
{
  SW_CARE_UNSAID,
  SW_CARE_HAND_WASH,
  SW_CARE_HAND_WASH_COOL,
  SW_CARE_MACHINE_WOOL,
} SwCare;

/**
 * SwListingSettings: how the yarn is shown and told of on a shop's page.
 */
typedef struct
{
  double twist_start_cm; /* along the loop, from where it begins: the place that becomes the hank's end; beyond one loop it goes round again */
  double twist_turns;    /* put into the loop before it is folded */
  SwArrangement arrangement;
  gint64 hanks; /* side by side */
  SwLabel label;
  gboolean label_words; /* caption, maker's name and mark are printed on the label, if one is seen, instead of beneath the picture */
  gboolean wet; /* the laid skein */
  gboolean palette;
  gboolean drawn_line; /* a small line in the picture says that it is no photograph */
  SwShape shape;
  gint64 longest_px;
  SwGround ground;
  char *caption;    /* empty: none */
  char *maker;      /* name; empty: none */
  char *mark;       /* path of the maker's own picture; empty: none */
  SwCare care;
  char *care_words; /* rule over care; empty: none */
  char *words;      /* in place of those written from the forecast; empty: none */
  GPtrArray *extras;
} SwListingSettings;

/**
 * SwBatch: one dyeing that was done, as the dyer keeps it.
 */
typedef struct
{
  guint id;
  char *date; /* ISO 8601, the day */
  gint64 skeins;
  double cost;   /* of the batch; 0: not reckoned */
  char *changes; /* against the batch before */
  char *recipe;  /* the amounts in words, a line each: see sw_recipe_words() */
  char *amounts; /* the same as data: see sw_recipe_data(); empty in files of earlier versions */
  char *log;     /* what was really done, a line each, beginning with its time */
  char *notes;
  char *photos; /* addresses or paths, a line each */
  GPtrArray *extras;
} SwBatch;

typedef struct
{
  char *title;
  char *notes;
  gint64 seed;
  SwYarn yarn;
  SwReelSettings reel;
  SwLaySettings lay;
  SwBathSettings bath;
  GPtrArray *dyes;  /* of SwDye, owned */
  GPtrArray *steps; /* of SwStep, owned, in the order of the dyeing */
  SwClothSettings cloth;
  SwSheetSettings sheet;
  SwListingSettings listing;
  GPtrArray *batches; /* of SwBatch, owned, the oldest first */
  guint next_id;      /* not yet used by any dye, step or batch */
  GPtrArray *extras;
} SwSketch;

/* Skeins knitted in turn in one cloth. */
#define SW_MOST_ALTERNATE 4

/* Most that a sketch may hold, so that the work it asks for is bounded. */
#define SW_MAX_DYES 24
#define SW_MAX_STEPS 2000
#define SW_MAX_BATCHES 1000
#define SW_MAX_STRAND_CM 2.0e6
#define SW_MAX_LAY_CM 400.0
#define SW_MAX_SPECKS 1000000 /* asked for by all speckle zones together */
#define SW_MAX_SLANT_DEG 80.0 /* of a band from straight across */
#define SW_ID_MAX 1000000000  /* ids are 1 .. this */

/**
 * sw_sketch_new:
 * Returns: (transfer full): an empty sketch: every member at its default, no dyes, no steps
 */
SwSketch *sw_sketch_new (void) G_GNUC_WARN_UNUSED_RESULT;
SwSketch *sw_sketch_copy (const SwSketch *sketch) G_GNUC_WARN_UNUSED_RESULT;
void sw_sketch_free (SwSketch *sketch);

/**
 * sw_sketch_equal:
 * Returns: whether all members are the same, ids and unknown members too.
 *   `next_id` is book-keeping and not compared
 */
gboolean sw_sketch_equal (const SwSketch *a, const SwSketch *b);

SwDye *sw_dye_new (guint id) G_GNUC_WARN_UNUSED_RESULT;
SwDye *sw_dye_copy (const SwDye *dye) G_GNUC_WARN_UNUSED_RESULT;
void sw_dye_free (SwDye *dye);

/* Every member at the default of its kind; a pour's dye is 0 until it is given one. */
SwStep *sw_step_new (guint id, SwStepKind kind) G_GNUC_WARN_UNUSED_RESULT;
SwStep *sw_step_copy (const SwStep *step) G_GNUC_WARN_UNUSED_RESULT;
void sw_step_free (SwStep *step);
gboolean sw_step_is_pour (const SwStep *step);

SwBatch *sw_batch_new (guint id) G_GNUC_WARN_UNUSED_RESULT;
SwBatch *sw_batch_copy (const SwBatch *batch) G_GNUC_WARN_UNUSED_RESULT;
void sw_batch_free (SwBatch *batch);

/**
 * sw_sketch_find_dye:
 * Returns: (nullable) (transfer none): the dye with that id
 */
const SwDye *sw_sketch_find_dye (const SwSketch *sketch, guint id);
const SwStep *sw_sketch_find_step (const SwSketch *sketch, guint id);
const SwBatch *sw_sketch_find_batch (const SwSketch *sketch, guint id);

/**
 * sw_sketch_fresh_id:
 * Returns: an id that no dye, step or batch has: `next_id`, or the next after it that is free
 */
guint sw_sketch_fresh_id (const SwSketch *sketch);

/* Extent of the laid skeins, cm: see the note on places above. */
double sw_sketch_lay_length (const SwSketch *sketch);
double sw_sketch_lay_width (const SwSketch *sketch);

/**
 * sw_sketch_validate:
 * @error: names the first member that is out of its limits, a reference
 *   that leads nowhere or a number that is not one, with its place in the
 *   file's own words ("steps[3].width_cm")
 *
 * Returns: whether the forecast may be asked for this sketch
 */
gboolean sw_sketch_validate (const SwSketch *sketch, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwSketch, sw_sketch_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwDye, sw_dye_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwStep, sw_step_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwBatch, sw_batch_free)

G_END_DECLS
