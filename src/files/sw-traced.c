/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-svg-private.h"
#include "files/sw-svg.h"

#include "draw/sw-pour-new.h"

#include <math.h>

/* What a traced layout does to the sketch. */

/* What rounding moves: an editor's, and ours of sizes and angles. */
#define SAME_CM 0.006
#define SAME_DEG 0.06

guint
sw_traced_changes (const SwStep *before, const SwStep *after)
{
  guint changes = 0;

  if (fabs (before->x_cm - after->x_cm) > SAME_CM || fabs (before->y_cm - after->y_cm) > SAME_CM)
    changes |= SW_TRACED_MOVED;
  if (fabs (before->width_cm - after->width_cm) > SAME_CM || fabs (before->length_cm - after->length_cm) > SAME_CM)
    changes |= SW_TRACED_RESIZED;
  if (fabs (remainder (before->angle_deg - after->angle_deg, 360)) > SAME_DEG)
    changes |= SW_TRACED_TURNED;
  if (before->dye != after->dye)
    changes |= SW_TRACED_REDYED;
  return changes;
}

guint
sw_traced_n_new (const SwTraced *traced)
{
  guint n = 0;

  for (guint i = 0; i < traced->pours->len; i++)
    n += g_array_index (traced->pours, SwTracedPour, i).pour->id == 0 ? 1 : 0;
  return n;
}

guint
sw_traced_n_moved (const SwTraced *traced, const SwSketch *sketch)
{
  guint n = 0;

  for (guint i = 0; i < traced->pours->len; i++)
    {
      const SwStep *after = g_array_index (traced->pours, SwTracedPour, i).pour, *before = sw_sketch_find_step (sketch, after->id);

      n += before != NULL && sw_traced_changes (before, after) != 0 ? 1 : 0;
    }
  return n;
}

static void
edit_known (GPtrArray *edits, const SwStep *before, const SwStep *after)
{
  const SwPourPlace place = sw_pour_place (after);
  const SwValue dye = sw_value_dye (after->dye);

  if ((sw_traced_changes (before, after) & ~(guint) SW_TRACED_REDYED) != 0)
    {
      SwEdit *edit = sw_pour_place_edit (before, &place);

      if (edit != NULL)
        g_ptr_array_add (edits, edit);
    }
  if (before->dye != after->dye)
    g_ptr_array_add (edits, sw_edit_set (SW_RECORD_STEP, before->id, "dye", &dye));
}

/* Those of one face go in together, so that later places are known; the second face first leaves the first one's as they are. */
static void
insert_new (GPtrArray *edits, const SwTraced *traced, const SwSketch *sketch, gboolean second)
{
  const SwPourSlot slot = sw_pour_slot (sketch, second);
  int index = slot.index;
  gboolean flipped = FALSE;

  for (guint i = 0; i < traced->pours->len; i++)
    {
      const SwTracedPour *one = &g_array_index (traced->pours, SwTracedPour, i);

      if (one->pour->id != 0 || one->second_face != second)
        continue;
      if (slot.flip && !flipped)
        {
          g_autoptr (SwStep) flip = sw_step_new (0, SW_STEP_FLIP);

          g_ptr_array_add (edits, sw_edit_insert_step (index++, flip));
          flipped = TRUE;
        }
      g_ptr_array_add (edits, sw_edit_insert_step (index++, one->pour));
    }
}

SwEdit *
sw_traced_edit (const SwTraced *traced, const SwSketch *sketch)
{
  g_autoptr (GPtrArray) edits = g_ptr_array_new ();

  for (guint i = 0; i < traced->dyes->len; i++)
    g_ptr_array_add (edits, sw_edit_insert_dye (-1, g_ptr_array_index (traced->dyes, i)));
  for (guint i = 0; i < traced->pours->len; i++)
    {
      const SwStep *after = g_array_index (traced->pours, SwTracedPour, i).pour, *before = sw_sketch_find_step (sketch, after->id);

      if (before != NULL)
        edit_known (edits, before, after);
    }
  insert_new (edits, traced, sketch, TRUE);
  insert_new (edits, traced, sketch, FALSE);
  return edits->len > 0 ? sw_edit_group ((SwEdit **) edits->pdata, edits->len) : NULL;
}

GBytes *
sw_svg_load (GFile *file, GCancellable *cancellable, GError **error)
{
  g_autoptr (GFileInputStream) stream = g_file_read (file, cancellable, error);
  g_autofree char *buffer = NULL;
  gsize n = 0;

  if (stream == NULL)
    return NULL;
  buffer = g_malloc (SW_SVG_MAX_BYTES + 1);
  if (!g_input_stream_read_all (G_INPUT_STREAM (stream), buffer, SW_SVG_MAX_BYTES + 1, &n, cancellable, error))
    return NULL;
  return g_bytes_new (buffer, n);
}
