/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-sketch-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Each record's members, then what the members of one step, then of the whole sketch must satisfy together. */

static gboolean
check_members (SwRecord record, gconstpointer data, SwStepKind kind, const char **bad, GError **error)
{
  gsize n;
  const SwMember *members = sw_record_members (record, &n);

  for (gsize i = 0; i < n; i++)
    {
      SwValue value;
      gboolean good;

      if (!sw_member_applies (&members[i], kind))
        continue;

      sw_member_get (&members[i], data, &value);
      good = sw_member_check (&members[i], &value, error);
      sw_value_clear (&value);
      if (!good)
        {
          *bad = members[i].name;
          return FALSE;
        }
    }
  return TRUE;
}

gboolean
sw_step_check_members (const SwStep *step, const char **member, GError **error)
{
  return check_members (SW_RECORD_STEP, step, step->kind, member, error);
}

gboolean
sw_dye_check_members (const SwDye *dye, const char **member, GError **error)
{
  return check_members (SW_RECORD_DYE, dye, SW_STEP_BAND, member, error);
}

gboolean
sw_batch_check_members (const SwBatch *batch, const char **member, GError **error)
{
  return check_members (SW_RECORD_BATCH, batch, SW_STEP_BAND, member, error);
}

gboolean
sw_step_check_sense (const SwSketch *sketch, const SwStep *step, const char **member, GError **error)
{
  if (!sw_step_is_pour (step))
    return TRUE;

  if (sw_sketch_find_dye (sketch, step->dye) == NULL)
    {
      *member = "dye";
      g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_REFERENCE, _ ("No dye of this sketch has the id %u. Choose one that is there, or add it."), step->dye);
      return FALSE;
    }
  if (step->kind != SW_STEP_BAND && step->length_cm <= 0)
    {
      *member = "length_cm";
      g_set_error_literal (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("Only a band may have a length of 0, which means right across. Give a splotch or a speckle zone a length."));
      return FALSE;
    }
  if (step->kind == SW_STEP_BAND && fabs (step->angle_deg) > SW_MAX_SLANT_DEG)
    {
      *member = "angle_deg";
      /* Translators: 1 the most degrees, 2 what was given */
      g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("A band may slant by %1$.10g degrees at most, but slants by %2$.10g. Use a splotch for a mark along the skein."), SW_MAX_SLANT_DEG, step->angle_deg);
      return FALSE;
    }
  return TRUE;
}

static gboolean
check_batch_count (const SwSketch *sketch, GError **error)
{
  if (sketch->batches->len <= SW_MAX_BATCHES)
    return TRUE;

  /* Translators: 1 how many there are, 2 the most there may be */
  g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("The sketch would keep %1$u batches; the most is %2$d. Remove the oldest."), sketch->batches->len, SW_MAX_BATCHES);
  return FALSE;
}

static double
strand_cm (const SwSketch *sketch)
{
  return sketch->yarn.mass_g * sketch->yarn.metres_per_100_g; /* g x m / 100 g x 100 cm / m */
}

static gboolean
check_dye_count (const SwSketch *sketch, GError **error)
{
  if (sketch->dyes->len <= SW_MAX_DYES)
    return TRUE;

  /* Translators: 1 how many there are, 2 the most there may be */
  g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("The sketch would have %1$u dyes; the most is %2$d. Remove some that no pour uses."), sketch->dyes->len, SW_MAX_DYES);
  return FALSE;
}

static gboolean
check_step_count (const SwSketch *sketch, GError **error)
{
  if (sketch->steps->len <= SW_MAX_STEPS)
    return TRUE;

  /* Translators: 1 how many there are, 2 the most there may be */
  g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("The dyeing would have %1$u steps; the most is %2$d."), sketch->steps->len, SW_MAX_STEPS);
  return FALSE;
}

static gboolean
check_strand (const SwSketch *sketch, GError **error)
{
  if (strand_cm (sketch) <= SW_MAX_STRAND_CM)
    return TRUE;

  /* Translators: 1 and 2 are kilometres */
  g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("One skein would hold %1$.6g km of yarn; the most is %2$.6g km. Lessen its mass or its put-up."), strand_cm (sketch) / 1e5, SW_MAX_STRAND_CM / 1e5);
  return FALSE;
}

static gboolean
check_lay_length (const SwSketch *sketch, GError **error)
{
  if (sw_sketch_lay_length (sketch) <= SW_MAX_LAY_CM)
    return TRUE;

  /* Translators: 1 and 2 are centimetres */
  g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("The skein would lie %1$.6g cm long in the pan; the most is %2$.6g cm. Fold it into more runs, or take a smaller reel."), sw_sketch_lay_length (sketch), SW_MAX_LAY_CM);
  return FALSE;
}

static gboolean
check_lay_width (const SwSketch *sketch, GError **error)
{
  if (sw_sketch_lay_width (sketch) <= SW_MAX_LAY_CM)
    return TRUE;

  /* Translators: 1 and 2 are centimetres */
  g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("The skeins would lie %1$.6g cm wide in the pan; the most is %2$.6g cm. Lay fewer, or lay them narrower."), sw_sketch_lay_width (sketch), SW_MAX_LAY_CM);
  return FALSE;
}

static gboolean
check_knitted_skein (const SwSketch *sketch, GError **error)
{
  if (sketch->cloth.skein <= sketch->lay.skeins)
    return TRUE;

  /* Translators: 1 the number of the skein, 2 how many there are */
  g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_REFERENCE, _ ("The cloth would be knitted from skein %1$d, but the pan holds %2$d. Choose a skein that is there."), (int) sketch->cloth.skein, (int) sketch->lay.skeins);
  return FALSE;
}

static gboolean
check_start (const SwSketch *sketch, GError **error)
{
  if (sketch->cloth.start_cm < strand_cm (sketch))
    return TRUE;

  /* Translators: 1 and 2 are metres */
  g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("The cloth would start %1$.6g m into a skein of %2$.6g m, so nothing is left to knit. Start earlier."), sketch->cloth.start_cm / 100, strand_cm (sketch) / 100);
  return FALSE;
}

static gboolean
check_alternate_start (const SwSketch *sketch, GError **error)
{
  const double last = sketch->cloth.start_cm + (double) (sketch->cloth.alternate_skeins - 1) * sketch->cloth.alternate_shift_cm;

  if (sketch->cloth.alternate_skeins <= 1 || last < strand_cm (sketch))
    return TRUE;

  /* Translators: of skeins knitted in turn, each of which starts further in; 1 and 2 are metres */
  g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("The last of the skeins knitted in turn would start %1$.6g m into a skein of %2$.6g m. Lessen the later start."), last / 100, strand_cm (sketch) / 100);
  return FALSE;
}

/* By path: the member a person would change. */
static const struct
{
  const char *path;
  gboolean (*check) (const SwSketch *sketch, GError **error);
} bounds[] = {
  { "dyes", check_dye_count },
  { "steps", check_step_count },
  { "batches", check_batch_count },
  { "yarn.metres_per_100_g", check_strand },
  { "reel.circumference_cm", check_lay_length },
  { "lay.width_cm", check_lay_width },
  { "cloth.skein", check_knitted_skein },
  { "cloth.start_cm", check_start },
  { "cloth.alternate_shift_cm", check_alternate_start },
};

/* The step whose specks are too many on top of those before it; -1 if none. */
static int
find_too_many_specks (const SwSketch *sketch)
{
  double specks = 0;

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (step->kind == SW_STEP_SPECKLE)
        specks += step->specks_per_100_cm2 * step->width_cm * step->length_cm / 100;
      if (specks > SW_MAX_SPECKS)
        return (int) i;
    }
  return -1;
}

gboolean
sw_sketch_check_bounds (const SwSketch *sketch, char **path, GError **error)
{
  int step;

  for (gsize i = 0; i < G_N_ELEMENTS (bounds); i++)
    if (!bounds[i].check (sketch, error))
      {
        *path = g_strdup (bounds[i].path);
        return FALSE;
      }

  step = find_too_many_specks (sketch);
  if (step < 0)
    return TRUE;

  *path = g_strdup_printf ("steps[%d].specks_per_100_cm2", step);
  g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("The speckle zones would hold more than %d specks together. Ask for fewer, or make the zones smaller."), SW_MAX_SPECKS);
  return FALSE;
}

static gboolean
validate_single (const SwSketch *sketch, SwRecord record, GError **error)
{
  const char *bad;
  const char *name = sw_record_name (record);

  if (check_members (record, sw_sketch_record (sketch, record, 0), SW_STEP_BAND, &bad, error))
    return TRUE;

  g_prefix_error (error, "%s%s%s: ", name, name[0] != '\0' ? "." : "", bad);
  return FALSE;
}

/* Marks an id as seen; FALSE if it is no id or was seen before. */
static gboolean
claim_id (GHashTable *seen, guint id, GError **error)
{
  if (id < 1 || id > SW_ID_MAX)
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("An id must be between 1 and %1$d, but is %2$u."), SW_ID_MAX, id);
  else if (!g_hash_table_add (seen, GUINT_TO_POINTER (id)))
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_REFERENCE, _ ("The id %u is used twice. Give each dye and step its own."), id);
  else
    return TRUE;
  return FALSE;
}

static gboolean
validate_dye (const SwDye *dye, GHashTable *seen, const char **bad, GError **error)
{
  *bad = "id";
  return claim_id (seen, dye->id, error) && sw_dye_check_members (dye, bad, error);
}

static gboolean
validate_step (const SwSketch *sketch, const SwStep *step, GHashTable *seen, const char **bad, GError **error)
{
  *bad = "id";
  if (!claim_id (seen, step->id, error))
    return FALSE;

  if ((guint) step->kind >= SW_N_STEP_KINDS)
    {
      *bad = "kind";
      g_set_error_literal (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_KIND, _ ("A step must be a band, splotch, speckle, rest, flip, acid, water or set."));
      return FALSE;
    }
  return sw_step_check_members (step, bad, error) && sw_step_check_sense (sketch, step, bad, error);
}

static gboolean
validate_batch (const SwBatch *batch, GHashTable *seen, const char **bad, GError **error)
{
  *bad = "id";
  return claim_id (seen, batch->id, error) && sw_batch_check_members (batch, bad, error);
}

static gboolean
validate_batches (const SwSketch *sketch, GHashTable *seen, GError **error)
{
  const char *bad;

  for (guint i = 0; i < sketch->batches->len; i++)
    if (!validate_batch (sketch->batches->pdata[i], seen, &bad, error))
      {
        g_prefix_error (error, "%s[%u].%s: ", sw_batch_table.name, i, bad);
        return FALSE;
      }
  return TRUE;
}

/* @seen: gets the ids of dyes and steps, which batches may not have */
static gboolean
validate_lists (const SwSketch *sketch, GHashTable *seen, GError **error)
{
  const char *bad;

  for (guint i = 0; i < sketch->dyes->len; i++)
    if (!validate_dye (sketch->dyes->pdata[i], seen, &bad, error))
      {
        g_prefix_error (error, "%s[%u].%s: ", sw_dye_table.name, i, bad);
        return FALSE;
      }
  for (guint i = 0; i < sketch->steps->len; i++)
    if (!validate_step (sketch, sketch->steps->pdata[i], seen, &bad, error))
      {
        g_prefix_error (error, "%s[%u].%s: ", sw_step_table.name, i, bad);
        return FALSE;
      }
  return TRUE;
}

gboolean
sw_sketch_validate (const SwSketch *sketch, GError **error)
{
  static const SwRecord before[] = { SW_RECORD_SKETCH, SW_RECORD_YARN, SW_RECORD_REEL, SW_RECORD_LAY, SW_RECORD_BATH };
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  g_autofree char *path = NULL;

  g_return_val_if_fail (sketch != NULL, FALSE);

  for (gsize i = 0; i < G_N_ELEMENTS (before); i++)
    if (!validate_single (sketch, before[i], error))
      return FALSE;
  if (!validate_lists (sketch, seen, error) || !validate_single (sketch, SW_RECORD_CLOTH, error) ||
      !validate_single (sketch, SW_RECORD_SHEET, error) || !validate_single (sketch, SW_RECORD_LISTING, error) || !validate_batches (sketch, seen, error))
    return FALSE;
  if (sw_sketch_check_bounds (sketch, &path, error))
    return TRUE;

  g_prefix_error (error, "%s: ", path);
  return FALSE;
}
