/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-remarks.h"

#include "bath/sw-deposit.h"
#include "sheet/sw-sheet-remarks.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* A name that far from a member's is taken for a slip of the pen. */
#define MOST_SLIPS 2

/* Cells across the pan for finding out whether a pour meets the skein, cm. */
#define CELL_CM 0.25

/* Letters to add, drop or change between two names. Wagner & Fischer 1974, J. ACM 21:168. */
static gsize
slips_between (const char *a, const char *b)
{
  gsize n = strlen (b);
  g_autofree gsize *row = g_new (gsize, n + 1);

  for (gsize j = 0; j <= n; j++)
    row[j] = j;
  for (gsize i = 1; a[i - 1] != '\0'; i++)
    {
      gsize diagonal = row[0];

      row[0] = i;
      for (gsize j = 1; j <= n; j++)
        {
          gsize changed = diagonal + (a[i - 1] != b[j - 1]);

          diagonal = row[j];
          row[j] = MIN (changed, MIN (row[j], row[j - 1]) + 1);
        }
    }
  return row[n];
}

static const char *
nearest_member (SwRecord record, const char *name)
{
  gsize n, least = MOST_SLIPS + 1;
  const SwMember *members = sw_record_members (record, &n);
  const char *nearest = NULL;

  for (gsize i = 0; i < n; i++)
    {
      gsize slips = slips_between (name, members[i].name);

      if (slips < least)
        {
          least = slips;
          nearest = members[i].name;
        }
    }
  return nearest;
}

static void
remark_strays (GPtrArray *remarks, SwRecord record, const char *place, const GPtrArray *extras)
{
  for (guint i = 0; extras != NULL && i < extras->len; i++)
    {
      const char *name = ((const SwExtra *) extras->pdata[i])->name;
      const char *nearest = nearest_member (record, name);

      if (nearest != NULL)
        /* Translators: place in the file, member's name, the name that was perhaps meant */
        g_ptr_array_add (remarks, g_strdup_printf (_ ("%s%s is kept, but Strandwise does not use it. Was “%s” meant?"), place, name, nearest));
      else
        /* Translators: place in the file, member's name */
        g_ptr_array_add (remarks, g_strdup_printf (_ ("%s%s is kept, but Strandwise does not use it."), place, name));
    }
}

static void
remark_all_strays (GPtrArray *remarks, const SwSketch *sketch)
{
  const struct
  {
    SwRecord record;
    const char *place;
    const GPtrArray *extras;
  } records[] = {
    { SW_RECORD_SKETCH, "", sketch->extras },
    { SW_RECORD_YARN, "yarn.", sketch->yarn.extras },
    { SW_RECORD_REEL, "reel.", sketch->reel.extras },
    { SW_RECORD_LAY, "lay.", sketch->lay.extras },
    { SW_RECORD_BATH, "bath.", sketch->bath.extras },
    { SW_RECORD_CLOTH, "cloth.", sketch->cloth.extras },
    { SW_RECORD_SHEET, "sheet.", sketch->sheet.extras },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (records); i++)
    remark_strays (remarks, records[i].record, records[i].place, records[i].extras);
  for (guint i = 0; i < sketch->dyes->len; i++)
    {
      g_autofree char *place = g_strdup_printf ("dyes[%u].", i);

      remark_strays (remarks, SW_RECORD_DYE, place, ((const SwDye *) sketch->dyes->pdata[i])->extras);
    }
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      g_autofree char *place = g_strdup_printf ("steps[%u].", i);

      remark_strays (remarks, SW_RECORD_STEP, place, ((const SwStep *) sketch->steps->pdata[i])->extras);
    }
  for (guint i = 0; i < sketch->batches->len; i++)
    {
      g_autofree char *place = g_strdup_printf ("batches[%u].", i);

      remark_strays (remarks, SW_RECORD_BATCH, place, ((const SwBatch *) sketch->batches->pdata[i])->extras);
    }
}

static void
remark_missed (GPtrArray *remarks, const SwSketch *sketch)
{
  SwGrid grid = sw_grid_for (sw_sketch_lay_length (sketch), sw_sketch_lay_width (sketch), 1.0, CELL_CM, 1);
  g_autofree double *plane = g_new (double, sw_grid_cells (&grid));

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];
      const SwOutline outline = {
        .ellipse = step->kind != SW_STEP_BAND,
        .x = step->x_cm,
        .y = step->y_cm,
        .width = step->width_cm,
        .length = step->length_cm,
        .angle_deg = step->angle_deg,
      };

      if (sw_step_is_pour (step) && !sw_deposit_plane (&grid, &outline, 1.0, plane))
        g_ptr_array_add (remarks,
                         /* Translators: place in the list of steps; extent of the laid skein along and across, cm */
                         g_strdup_printf (_ ("steps[%u] lies beside the skein, which reaches from 0 to %.4g cm along and to %.4g cm across: its dye goes into the liquor."),
                                          i, grid.lx, grid.ly));
    }
}

/* What the dye sheet warns of whatever the dyer meant, by the place in the file; the rest is a matter of taste. */
static void
remark_from_sheet (GPtrArray *remarks, const SwSketch *sketch)
{
  static const char *const places[SW_N_REMARKS] = {
    [SW_REMARK_DEPTH] = "steps",
    [SW_REMARK_PAN_SMALL] = "lay",
    [SW_REMARK_RUNS_OVER] = "bath",
  };
  g_autoptr (SwSheet) sheet = sw_sheet_new (sketch, NULL);
  g_autoptr (GArray) found = sw_sheet_remarks (sheet);

  for (guint i = 0; i < found->len; i++)
    {
      const SwRemark *remark = &g_array_index (found, SwRemark, i);
      g_autofree char *text = sw_sheet_remark_text (sheet, remark, SW_MEASURE_METRIC);

      if (places[remark->kind] != NULL)
        g_ptr_array_add (remarks, g_strdup_printf ("%s: %s", places[remark->kind], text));
    }
}

GPtrArray *
sw_sketch_remarks (const SwSketch *sketch)
{
  GPtrArray *remarks = g_ptr_array_new_with_free_func (g_free);

  remark_all_strays (remarks, sketch);
  remark_missed (remarks, sketch);
  remark_from_sheet (remarks, sketch);
  return remarks;
}
