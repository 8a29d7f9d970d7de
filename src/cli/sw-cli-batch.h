/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/sw-cli.h"

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/* The --skeins and --pans options. 0: as the colourway says. */
typedef struct
{
  gint64 skeins, pans;
} SwCliBatch;

/* @skeins, @pans: (nullable): as typed */
gboolean sw_cli_batch (const char *skeins, const char *pans, SwCliBatch *batch, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The colourway named @name with that batch. */
SwSketch *sw_cli_read_batch (const char *name, const SwCliBatch *batch, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
