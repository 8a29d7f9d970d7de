/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-edit.h"

G_BEGIN_DECLS

typedef enum
{
  SW_ACT_SET,
  SW_ACT_INSERT,
  SW_ACT_REMOVE,
  SW_ACT_MOVE,
  SW_ACT_GROUP,
} SwAct;

struct _SwEdit
{
  SwAct act;
  SwRecord record;
  guint id;
  int index;      /* insert, move; -1: last */
  char *member;   /* set */
  SwValue value;  /* set */
  gpointer item;  /* insert: SwDye, SwStep or SwBatch */
  SwEdit **edits; /* group */
  gsize n;
};

SwEdit *sw_edit_new (SwAct act, SwRecord record, guint id) G_GNUC_WARN_UNUSED_RESULT;

/* @item: (transfer full): a SwDye, SwStep or SwBatch */
SwEdit *sw_edit_insert (SwRecord record, int index, gpointer item) G_GNUC_WARN_UNUSED_RESULT;

/* Dyes, steps and batches alike begin with their id. */
static inline guint *
sw_item_id (gpointer item)
{
  return item;
}

gpointer sw_item_copy (SwRecord record, gconstpointer item) G_GNUC_WARN_UNUSED_RESULT;

static inline gboolean
sw_record_is_list (SwRecord record)
{
  return record == SW_RECORD_DYE || record == SW_RECORD_STEP || record == SW_RECORD_BATCH;
}

G_END_DECLS
