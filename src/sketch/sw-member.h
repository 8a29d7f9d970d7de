/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/*
 * What every member of the document may hold, once, as tables. The reader and
 * writer of the file, the limits, the edits and the properties pane all walk
 * them, so that a member added here is known everywhere.
 */

#define SW_SKETCH_ERROR (sw_sketch_error_quark ())
GQuark sw_sketch_error_quark (void);

typedef enum
{
  SW_SKETCH_ERROR_RANGE,     /* a value outside the member's limits, or not finite */
  SW_SKETCH_ERROR_KIND,      /* a value of the wrong kind */
  SW_SKETCH_ERROR_REFERENCE, /* a dye that is not there, an id used twice */
  SW_SKETCH_ERROR_TARGET,    /* an edit to a thing that is not there */
} SwSketchError;

typedef enum
{
  SW_RECORD_SKETCH,
  SW_RECORD_YARN,
  SW_RECORD_REEL,
  SW_RECORD_LAY,
  SW_RECORD_BATH,
  SW_RECORD_DYE,
  SW_RECORD_STEP,
  SW_RECORD_CLOTH,
  SW_RECORD_SHEET,
  SW_RECORD_LISTING,
  SW_RECORD_BATCH,
  SW_N_RECORDS,
} SwRecord;

/* Which step kinds use a member: bits (1 << SwStepKind). */
#define SW_STEP_BIT(kind) (1u << (kind))
#define SW_STEP_POURS (SW_STEP_BIT (SW_STEP_BAND) | SW_STEP_BIT (SW_STEP_SPLOTCH) | SW_STEP_BIT (SW_STEP_SPECKLE))

typedef struct
{
  const char *name;  /* in files and edits: "mass_g" */
  const char *label; /* for people, marked with N_(); no unit */
  const char *unit;  /* core unit as shown, "" if none */
  SwKind kind;
  gsize offset;                     /* in the record's struct */
  double min, max, fallback;        /* numbers, whole numbers; for text `max` bytes; for a choice the fallback's index */
  const char *const *choices;       /* file words, NULL-ended; SW_KIND_CHOICE only */
  const char *const *choice_labels; /* for people, marked with N_(), same order */
  guint step_kinds;                 /* SW_RECORD_STEP: bits of the kinds that use it; else 0 */
  double above_zero;                /* 0 is allowed and stands for "work it out"; the next allowed number is this. 0: no such gap */
  gboolean doubling;                /* whole numbers: 1, 2, 4 ... only */
  const SwSample *colour_fallback;  /* SW_KIND_COLOUR only */
} SwMember;

/**
 * sw_record_members:
 * @n: (out): how many
 *
 * Returns: (array length=n): the record's members in the order of the file.
 *   Ids, lists and nested records are not members.
 */
const SwMember *sw_record_members (SwRecord record, gsize *n);

/**
 * sw_record_name: the record's member name in the file ("yarn"); for dyes, steps and batches that of the list ("dyes");
 *   "" for the sketch itself
 */
const char *sw_record_name (SwRecord record);

const SwMember *sw_record_find_member (SwRecord record, const char *name);

/**
 * sw_sketch_record:
 * @id: the dye's, step's or batch's id; not looked at for the records of which there is one
 *
 * Returns: (nullable) (transfer none): the struct that the record's members are offsets into
 */
gconstpointer sw_sketch_record (const SwSketch *sketch, SwRecord record, guint id);

/**
 * sw_member_applies: whether a step of @kind uses @member (TRUE for members of other records)
 */
gboolean sw_member_applies (const SwMember *member, SwStepKind kind);

/**
 * sw_member_fallback:
 * @kind: of the step, since some kinds have their own default; any for other records
 * @value: (out caller-allocates): the default, to be cleared
 *
 * A pour's dye has no default: 0, which sw_member_check() refuses.
 */
void sw_member_fallback (const SwMember *member, SwStepKind kind, SwValue *value);

/**
 * sw_member_get:
 * @data: the record's struct
 * @value: (out caller-allocates): a copy, to be cleared
 */
void sw_member_get (const SwMember *member, gconstpointer data, SwValue *value);

/**
 * sw_member_set:
 * Sets after sw_member_check(). References are not looked up here.
 */
gboolean sw_member_set (const SwMember *member, gpointer data, const SwValue *value, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_member_check:
 * @error: SW_SKETCH_ERROR with a sentence that names the member and its limits
 */
gboolean sw_member_check (const SwMember *member, const SwValue *value, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* File words of step kinds: "band", "rest" ...; -1 for a word that is none. */
const char *sw_step_kind_name (SwStepKind kind);
int sw_step_kind_from_name (const char *name);

/* For people, translated: "Band", "Rest" ... */
const char *sw_step_kind_label (SwStepKind kind);

G_END_DECLS
