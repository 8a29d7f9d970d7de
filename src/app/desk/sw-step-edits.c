/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-step-edits.h"

#include "draw/sw-pour-new.h"

/* How far a copied pour lies beside its original. */
#define ASIDE_CM 2.0

static const SwStep *
step_at (const SwSketch *sketch, guint i)
{
  return sketch->steps->pdata[i];
}

static gboolean
is_among (guint id, const guint *ids, gsize n)
{
  for (gsize i = 0; i < n; i++)
    if (ids[i] == id)
      return TRUE;
  return FALSE;
}

/* Group of at least one edit; the edits are taken over. */
static SwEdit *
group (GPtrArray *edits)
{
  return edits->len == 0 ? NULL : sw_edit_group ((SwEdit **) edits->pdata, edits->len);
}

static int
usual_place (const SwSketch *sketch, const SwStep *step, guint after)
{
  guint n = sketch->steps->len;

  for (guint i = 0; i < n; i++)
    if (step_at (sketch, i)->id == after)
      return (int) i + 1;
  if (sw_step_is_pour (step))
    return sw_pour_slot (sketch, FALSE).index;
  if (n > 0 && step_at (sketch, n - 1)->kind == SW_STEP_SET)
    return (int) n - 1;
  return (int) n;
}

static void
lay_in_the_middle (const SwSketch *sketch, guint dye, SwStep *step)
{
  const SwDye *record = sw_sketch_find_dye (sketch, dye);
  double length = sw_sketch_lay_length (sketch), width = sw_sketch_lay_width (sketch);
  SwPourPlace place;

  step->dye = dye;
  step->x_cm = length / 2;
  step->y_cm = width / 2;
  step->width_cm = MIN (step->width_cm, length);
  step->length_cm = MIN (step->length_cm, width);
  place = sw_pour_place (step);
  if (record != NULL)
    step->amount_ml = sw_pour_amount (sketch, record, &place);
}

SwEdit *
sw_step_edits_new (const SwSketch *sketch, SwStepKind kind, guint dye, guint after, guint *id)
{
  g_autoptr (SwStep) step = NULL;

  g_return_val_if_fail (sketch != NULL && id != NULL, NULL);

  *id = sw_sketch_fresh_id (sketch);
  step = sw_step_new (*id, kind);
  if (sw_step_is_pour (step))
    lay_in_the_middle (sketch, dye, step);
  return sw_edit_insert_step (usual_place (sketch, step, after), step);
}

SwEdit *
sw_step_edits_duplicate (const SwSketch *sketch, const guint *ids, gsize n, guint *new_ids)
{
  g_autoptr (GPtrArray) edits = g_ptr_array_new ();
  guint fresh, last = 0;
  gsize n_new = 0;

  g_return_val_if_fail (sketch != NULL, NULL);

  fresh = sw_sketch_fresh_id (sketch);
  for (guint i = 0; i < sketch->steps->len; i++)
    if (is_among (step_at (sketch, i)->id, ids, n))
      last = i + 1;
  for (guint i = 0; i < last; i++)
    {
      g_autoptr (SwStep) copy = NULL;

      if (!is_among (step_at (sketch, i)->id, ids, n))
        continue;
      copy = sw_step_copy (step_at (sketch, i));
      while (sw_sketch_find_step (sketch, fresh) != NULL || sw_sketch_find_dye (sketch, fresh) != NULL)
        fresh++;
      copy->id = fresh++;
      if (sw_step_is_pour (copy))
        copy->x_cm += copy->x_cm + ASIDE_CM > sw_sketch_lay_length (sketch) ? -ASIDE_CM : ASIDE_CM;
      new_ids[n_new] = copy->id;
      g_ptr_array_add (edits, sw_edit_insert_step ((int) (last + n_new), copy));
      n_new++;
    }
  for (gsize i = n_new; i < n; i++)
    new_ids[i] = 0;
  return group (edits);
}

SwEdit *
sw_step_edits_delete (const SwSketch *sketch, const guint *ids, gsize n)
{
  g_autoptr (GPtrArray) edits = g_ptr_array_new ();

  g_return_val_if_fail (sketch != NULL, NULL);

  for (guint i = 0; i < sketch->steps->len; i++)
    if (is_among (step_at (sketch, i)->id, ids, n))
      g_ptr_array_add (edits, sw_edit_remove (SW_RECORD_STEP, step_at (sketch, i)->id));
  return group (edits);
}

static guint
index_in (const GArray *order, guint id)
{
  guint i = 0;

  while (g_array_index (order, guint, i) != id)
    i++;
  return i;
}

static void
add_move (GPtrArray *edits, GArray *now, guint from, guint to)
{
  guint id = g_array_index (now, guint, from);

  g_array_remove_index (now, from);
  g_array_insert_val (now, to, id);
  g_ptr_array_add (edits, sw_edit_move (SW_RECORD_STEP, id, (int) to));
}

/*
 * Edits that put the steps into the order @wanted (ids), where those that are
 * not among @ids keep theirs. What goes down goes last first, what goes up
 * first first, so that none passes over a place where another already lies.
 */
static SwEdit *
reorder (const SwSketch *sketch, const GArray *wanted, const guint *ids, gsize n)
{
  g_autoptr (GPtrArray) edits = g_ptr_array_new ();
  g_autoptr (GArray) now = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < sketch->steps->len; i++)
    g_array_append_val (now, step_at (sketch, i)->id);
  for (guint to = wanted->len; to-- > 0;)
    {
      guint id = g_array_index (wanted, guint, to), from = index_in (now, id);

      if (from < to && is_among (id, ids, n))
        add_move (edits, now, from, to);
    }
  for (guint to = 0; to < wanted->len; to++)
    {
      guint id = g_array_index (wanted, guint, to), from = index_in (now, id);

      if (from > to && is_among (id, ids, n))
        add_move (edits, now, from, to);
    }
  return group (edits);
}

SwEdit *
sw_step_edits_move (const SwSketch *sketch, const guint *ids, gsize n, guint before)
{
  g_autoptr (GArray) wanted = g_array_new (FALSE, FALSE, sizeof (guint));
  guint place = 0;

  g_return_val_if_fail (sketch != NULL, NULL);

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      guint id = step_at (sketch, i)->id;

      if (i == before)
        place = wanted->len;
      if (!is_among (id, ids, n))
        g_array_append_val (wanted, id);
    }
  if (before >= sketch->steps->len)
    place = wanted->len;
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      guint id = step_at (sketch, i)->id;

      if (is_among (id, ids, n))
        g_array_insert_val (wanted, place++, id);
    }
  return reorder (sketch, wanted, ids, n);
}

SwEdit *
sw_step_edits_shift (const SwSketch *sketch, const guint *ids, gsize n, gboolean up)
{
  g_autoptr (GArray) wanted = g_array_new (FALSE, FALSE, sizeof (guint));
  guint len;

  g_return_val_if_fail (sketch != NULL, NULL);

  len = sketch->steps->len;
  for (guint i = 0; i < len; i++)
    g_array_append_val (wanted, step_at (sketch, i)->id);
  /* From the end that they move towards: each changes places with its neighbour unless that moves too. */
  for (guint i = 1; i < len; i++)
    {
      guint at = up ? i : len - 1 - i, next = up ? at - 1 : at + 1;
      guint *order = (guint *) (gpointer) wanted->data;

      if (is_among (order[at], ids, n) && !is_among (order[next], ids, n))
        {
          guint id = order[at];

          order[at] = order[next];
          order[next] = id;
        }
    }
  return reorder (sketch, wanted, ids, n);
}
