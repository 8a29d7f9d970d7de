/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/sw-cli-batch.h"

#include "cli/sw-cli-run.h"
#include "cli/sw-cli-stream.h"
#include "cli/sw-cli-value.h"

#include "sketch/sw-member.h"

/* A count as for the member of that name, but not 0. */
static gboolean
read_count (const char *option, const char *text, const char *member, gint64 *count, GError **error)
{
  return text == NULL || sw_cli_whole (option, text, 1, (gint64) sw_record_find_member (SW_RECORD_SHEET, member)->max, count, error);
}

gboolean
sw_cli_batch (const char *skeins, const char *pans, SwCliBatch *batch, GError **error)
{
  *batch = (SwCliBatch){ 0 };
  return read_count ("--skeins", skeins, "skeins", &batch->skeins, error) && read_count ("--pans", pans, "pans", &batch->pans, error);
}

SwSketch *
sw_cli_read_batch (const char *name, const SwCliBatch *batch, GError **error)
{
  SwSketch *sketch = sw_cli_read_sketch (name, error);

  if (sketch != NULL && batch->skeins > 0)
    sketch->sheet.skeins = batch->skeins;
  if (sketch != NULL && batch->pans > 0)
    sketch->sheet.pans = batch->pans;
  return sketch;
}
