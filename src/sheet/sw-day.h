/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet/sw-sheet.h"
#include "sketch/sw-member.h"

G_BEGIN_DECLS

/* The dye day in order: everything that is done or waited for, from the soak to the dry skein. */

typedef enum
{
  SW_DEED_PRESOAK,
  SW_DEED_STOCK, /* weigh the dyes and make up the stocks */
  SW_DEED_FILL,  /* water and acid into the pan */
  SW_DEED_HEAT,
  SW_DEED_POUR,
  SW_DEED_REST,
  SW_DEED_FLIP,
  SW_DEED_ACID,
  SW_DEED_WATER,
  SW_DEED_SET,
  SW_DEED_COOL,
  SW_DEED_WASH,
  SW_DEED_RINSE,
  SW_DEED_SPIN,
  SW_DEED_DRY,
  SW_N_DEEDS,
} SwDeedKind;

/**
 * SwDeed: one line of the day.
 * @step: id of the sketch's step; 0 for what is before and after
 * @member: name of the member that sets its minutes, to edit them in place; NULL if they are not set
 * @times: how often the member's minutes are taken in it: a pour is made in one pan after the other
 * @waits: whether it runs by itself and wants a timer, or is the dyer's own work
 */
typedef struct
{
  SwDeedKind kind;
  guint step;
  guint pour;       /* number of the pour, from 1; 0 */
  double start_min; /* from the beginning of the day, all pans done side by side */
  double minutes;   /* 0: takes no time that is reckoned with */
  guint times;
  double temperature_c; /* 0: of no account */
  SwRecord record;      /* of @member */
  const char *member;
  gboolean waits;
} SwDeed;

/**
 * sw_day_new:
 * @n: (out): how many
 * Returns: (transfer full) (array length=n): to be freed with g_free()
 */
SwDeed *sw_day_new (const SwSketch *sketch, gsize *n) G_GNUC_WARN_UNUSED_RESULT;

/* Whether it is done in each pan, from the filling to the cooling, and not with all skeins at once. */
gboolean sw_deed_is_in_pan (SwDeedKind kind);

/* For people, translated: "Soak the skeins", "Rest" ... */
const char *sw_deed_label (SwDeedKind kind);

G_END_DECLS
