/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-member.h"

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* A record of which there is one, and where it is. */
typedef struct
{
  SwRecord record;
  gsize place;  /* in SwSketch */
  gsize extras; /* in SwSketch: of its unknown members */
} SwColourwayPart;

#define SW_COLOURWAY_PARTS 7

/* In the order of the file; the lists of dyes and steps stand before the cloth, the batches at the end. */
extern const SwColourwayPart sw_colourway_parts[SW_COLOURWAY_PARTS];

/**
 * sw_colourway_value_read:
 * @value: (out caller-allocates): set if TRUE is returned
 * @why: (out) (transfer full): if FALSE, a sentence that says what the member
 *   must be and what to do; the place is to be put before it
 */
gboolean sw_colourway_value_read (const SwMember *member, JsonNode *node, SwValue *value, char **why) G_GNUC_WARN_UNUSED_RESULT;

JsonNode *sw_colourway_value_write (const SwMember *member, const SwValue *value) G_GNUC_WARN_UNUSED_RESULT;

/* A whole number, also one written as 3.0. */
gboolean sw_colourway_whole_read (JsonNode *node, gint64 *whole) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
