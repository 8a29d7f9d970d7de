/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-member.h"

G_BEGIN_DECLS

/*
 * One record's table, and what can be done to a whole record by walking it.
 * Making, copying, comparing and freeing the document use these alone, so
 * that no member can be forgotten by one of them.
 */
typedef struct
{
  const char *name; /* in the file */
  gsize place;      /* of the record in SwSketch; of the list for dyes, steps and batches */
  gsize extras;     /* of its unknown members, in the record */
  const SwMember *members;
  gsize n;
} SwMemberTable;

extern const SwMemberTable sw_sketch_table;
extern const SwMemberTable sw_yarn_table;
extern const SwMemberTable sw_reel_table;
extern const SwMemberTable sw_lay_table;
extern const SwMemberTable sw_bath_table;
extern const SwMemberTable sw_dye_table;
extern const SwMemberTable sw_step_table;
extern const SwMemberTable sw_cloth_table;
extern const SwMemberTable sw_sheet_table;
extern const SwMemberTable sw_listing_table;
extern const SwMemberTable sw_batch_table;

const SwMemberTable *sw_record_table (SwRecord record);

/* A step kind's own default, where it has one. */
gboolean sw_step_own_fallback (SwStepKind kind, const char *member, double *fallback);

/* Writes a value of the member's kind without asking whether it may be. */
void sw_member_put (const SwMember *member, gpointer data, const SwValue *value);

/**
 * sw_record_init:
 * @data: the record, zeroed
 * @kind: of the step; any for other records
 */
void sw_record_init (SwRecord record, gpointer data, SwStepKind kind);

/* @copy: overwritten, nothing in it is freed. Ids, kinds and lists are the caller's. */
void sw_record_copy (SwRecord record, gconstpointer data, gpointer copy);

void sw_record_clear (SwRecord record, gpointer data);
gboolean sw_record_equal (SwRecord record, gconstpointer a, gconstpointer b);

G_END_DECLS
