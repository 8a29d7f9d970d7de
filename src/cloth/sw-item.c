/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-item.h"

#include <math.h>
#include <string.h>

/* Work in progress: rows are added to the last piece until the yarn is used up. */
typedef struct
{
  const SwItemYarn *yarn;
  SwItemKnit *knit;
  GArray *rows;                  /* of the piece under way */
  gsize row;                     /* of the whole item, the next one */
  gsize used[SW_MOST_ALTERNATE]; /* stitches of each strand */
  gboolean out;
} Work;

/* How much a cuff of rib is narrower than what follows, at its edge and where it goes over. */
#define RIB_DRAWS_IN 0.15
#define RIB_ENDS_IN 0.10

gsize
sw_item_width (double cm, double stitch_cm, gsize multiple)
{
  return (gsize) MAX (lround (cm / stitch_cm / (double) multiple), 1) * multiple;
}

gsize
sw_item_stitch (const SwItemRow *row, gssize column)
{
  const gssize n = (gssize) row->stitches;
  const gsize at = (gsize) ((((gssize) row->first + column) % n + n) % n);

  return row->start + (row->rightward ? at : row->stitches - 1 - at);
}

static SwItemPiece *
piece_of (const Work *work)
{
  return &work->knit->pieces[work->knit->n_pieces - 1];
}

static void
finish_piece (Work *work)
{
  SwItemPiece *piece;

  if (work->rows == NULL)
    return;
  piece = piece_of (work);
  piece->n_rows = work->rows->len;
  piece->rows = (SwItemRow *) g_array_free (g_steal_pointer (&work->rows), FALSE);
}

static void
begin_piece (Work *work, SwFabric fabric, int quarters, double x_cm, double y_cm)
{
  finish_piece (work);
  g_assert (work->knit->n_pieces < SW_ITEM_MOST_PIECES);
  work->knit->n_pieces++;
  *piece_of (work) = (SwItemPiece){
    .fabric = fabric,
    .quarters = quarters,
    .x_cm = x_cm,
    .y_cm = y_cm,
    .stitch_cm = work->yarn->stitch_cm,
    .row_cm = fabric == SW_FABRIC_RIB ? work->yarn->rib_cm : work->yarn->row_cm,
  };
  work->rows = g_array_new (FALSE, FALSE, sizeof (SwItemRow));
}

/* The piece under way is a cuff, and what follows widens from it. */
static void
begin_after_cuff (Work *work, int quarters, double x_cm, double y_cm)
{
  const gboolean draws_in = work->yarn->fabric != SW_FABRIC_RIB;

  if (draws_in)
    {
      piece_of (work)->drawn_in[0] = RIB_DRAWS_IN;
      piece_of (work)->drawn_in[1] = RIB_ENDS_IN;
    }
  begin_piece (work, work->yarn->fabric, quarters, x_cm, y_cm);
  if (draws_in)
    piece_of (work)->drawn_in[0] = RIB_ENDS_IN;
}

static void
cast_on (Work *work, gsize stitches)
{
  piece_of (work)->begins = TRUE;
  piece_of (work)->cast_on = MIN (work->used[0], work->yarn->n_stitches[0] - 1);
  work->used[0] += (gsize) lround (work->yarn->cast_on * (double) stitches * work->yarn->stitch_cm / work->yarn->stitch_length_cm);
}

/* One row of @stitches, of which @seen from @first on are seen; the left edge of the first of all is at @left. */
static void
add_row_from (Work *work, gsize stitches, gsize first, gsize seen, double left, gboolean rightward)
{
  const gsize skein = sw_alternation_skein (&work->yarn->alternation, work->row);
  const SwItemRow row = { .skein = skein, .start = work->used[skein], .stitches = stitches, .first = first, .seen = MIN (seen, stitches - first), .left = left + (double) first, .column = first + (gsize) MAX (lround (left + 1000), 0), .rightward = rightward };

  if (work->out || work->used[skein] + stitches > work->yarn->n_stitches[skein])
    {
      work->out = TRUE;
      return;
    }
  work->used[skein] += stitches;
  work->row++;
  g_array_append_val (work->rows, row);
}

static void
add_row (Work *work, gsize stitches, gsize seen, double left, gboolean rightward)
{
  add_row_from (work, stitches, 0, seen, left, rightward);
}

/* Rounds of which one half is seen. */
static void
add_rounds (Work *work, gsize stitches, gsize rounds)
{
  for (gsize r = 0; r < rounds; r++)
    add_row (work, stitches, stitches / 2, -(double) stitches / 4, FALSE);
}

static gsize
rows_in (double cm, double row_cm)
{
  return (gsize) MAX (lround (cm / row_cm), 1);
}

/* Rounds of @by fewer, at first every second time and then each, down to @to: the end is round. */
static void
narrow (Work *work, gsize stitches, gsize by, gsize to)
{
  const gsize all = stitches;

  while (stitches >= to + by && !work->out)
    {
      stitches -= by;
      add_rounds (work, stitches, 2 * stitches > all ? 2 : 1);
    }
}

/* How far the rows under way reach from where the piece began, cm. */
static double
grown_cm (const Work *work)
{
  return (double) work->rows->len * piece_of (work)->row_cm;
}

/*
 * Leg and foot lie at a right angle, and the rows that are seen end at the
 * slanting line between them. Behind the ankle it is the heel's short rows
 * that end there, over half the stitches; in front of it the rounds go on
 * into a fold. The heel is round: its outermost stitches turn away.
 */
#define HEEL_RADIUS 0.42 /* of the foot's height */

static void
add_to_corner (Work *work, gsize stitches, gboolean back_again)
{
  const gsize half = stitches / 2, quarter = stitches / 4;
  const double stitch = work->yarn->stitch_cm, row = piece_of (work)->row_cm;
  const double radius = HEEL_RADIUS * (double) half * stitch;
  const gsize n = (gsize) MAX (lround ((double) half * stitch / row), 2);

  for (gsize i = 0; i < n; i++)
    {
      const gsize at = back_again ? n - 1 - i : i;
      const gsize cut = (gsize) lround ((double) (at + 1) * (double) half / (double) (n + 1));
      const gsize seen = MAX (half - MIN (cut, half - 1), 1);
      const double from_end = ((double) (n - at) - 0.5) * row, in = MAX (radius - from_end, 0);
      const gsize turned = MIN ((gsize) ((radius - sqrt (radius * radius - in * in)) / stitch), seen);

      if (seen > quarter)
        add_row_from (work, stitches, turned, seen - turned, -(double) half / 2, FALSE);
      else
        add_row_from (work, 2 * seen, turned, seen - turned, -(double) half / 2, i % 2 == 1);
    }
}

/* @inside_cm: of the bend, from where the piece begins */
static void
bend (Work *work, int which, double inside_cm, double width_cm)
{
  SwItemPiece *piece = piece_of (work);

  piece->bend = which;
  piece->bend_cm = inside_cm;
  piece->bend_radius_cm = HEEL_RADIUS * width_cm;
}

static void
knit_sock (Work *work)
{
  const gsize stitches = sw_item_width (20, work->yarn->stitch_cm, 4);
  const double width = (double) (stitches / 2) * work->yarn->stitch_cm;
  double y = 0, heel_y;

  begin_piece (work, SW_FABRIC_RIB, 2, 0, 0);
  cast_on (work, stitches);
  add_rounds (work, stitches, rows_in (3, work->yarn->rib_cm));
  y += grown_cm (work);
  begin_after_cuff (work, 2, 0, y);
  add_rounds (work, stitches, rows_in (14, work->yarn->row_cm));
  heel_y = y + grown_cm (work) + width / 2;
  bend (work, 1, grown_cm (work), width);
  add_to_corner (work, stitches, FALSE);
  if (work->out)
    return;
  begin_piece (work, work->yarn->fabric, 3, width / 2, heel_y);
  bend (work, -1, width, width);
  add_to_corner (work, stitches, TRUE);
  add_rounds (work, stitches, rows_in (13, work->yarn->row_cm));
  narrow (work, stitches, 4, stitches / 3);
  piece_of (work)->closed = TRUE;
}

static void
knit_hat (Work *work)
{
  const gsize stitches = sw_item_width (48, work->yarn->stitch_cm, 8);
  double y = 0;

  begin_piece (work, SW_FABRIC_RIB, 0, 0, 0);
  cast_on (work, stitches);
  add_rounds (work, stitches, rows_in (4, work->yarn->rib_cm));
  y -= grown_cm (work);
  begin_after_cuff (work, 0, 0, y);
  add_rounds (work, stitches, rows_in (13, work->yarn->row_cm));
  narrow (work, stitches, 8, 8);
  piece_of (work)->closed = TRUE;
}

/* Rounds of the hand with the thumb's gusset on the right: @wider stitches more. */
static void
add_gusset (Work *work, gsize stitches, gsize wider)
{
  add_row (work, stitches + wider, stitches / 2 + wider / 2, -(double) stitches / 4, FALSE);
}

static void
knit_mitten (Work *work)
{
  const gsize stitches = sw_item_width (19, work->yarn->stitch_cm, 4), thumb = sw_item_width (6.5, work->yarn->stitch_cm, 2);
  const double row = work->yarn->row_cm, stitch = work->yarn->stitch_cm;
  double y = 0, thumb_y;

  begin_piece (work, SW_FABRIC_RIB, 0, 0, 0);
  cast_on (work, stitches);
  add_rounds (work, stitches, rows_in (6, work->yarn->rib_cm));
  y -= grown_cm (work);
  begin_after_cuff (work, 0, 0, y);
  add_rounds (work, stitches, rows_in (1, row));
  for (gsize wider = 2; wider <= thumb; wider += 2)
    for (int i = 0; i < 3; i++)
      add_gusset (work, stitches, wider);
  thumb_y = y - grown_cm (work);
  add_rounds (work, stitches, rows_in (8, row));
  narrow (work, stitches, 4, 8);
  piece_of (work)->closed = TRUE;
  if (work->out)
    return;
  begin_piece (work, work->yarn->fabric, 0, ((double) stitches / 4 + (double) thumb / 4) * stitch, thumb_y);
  add_rounds (work, thumb, rows_in (5, row));
  narrow (work, thumb, 4, 4);
  piece_of (work)->closed = TRUE;
}

static void
knit_scarf (Work *work)
{
  const gsize stitches = sw_item_width (20, work->yarn->stitch_cm, 2), rows = rows_in (150, work->yarn->row_cm);

  begin_piece (work, work->yarn->fabric, 0, 0, 0);
  cast_on (work, stitches);
  for (gsize r = 0; r < rows; r++)
    add_row (work, stitches, stitches, -(double) stitches / 2, r % 2 == 1);
  piece_of (work)->ends = TRUE;
}

/* One stitch more at either end of every second row. */
static void
knit_shawl (Work *work)
{
  const gsize widest = sw_item_width (140, work->yarn->stitch_cm, 2);

  begin_piece (work, work->yarn->fabric, 0, 0, 0);
  cast_on (work, 3);
  for (gsize r = 0, stitches = 3; stitches < widest && !work->out; r++)
    {
      add_row (work, stitches, stitches, -(double) stitches / 2, r % 2 == 1);
      stitches += r % 2 == 1 ? 2 : 0;
    }
  piece_of (work)->ends = TRUE;
}

static const struct
{
  const char *name;
  void (*knit) (Work *work);
} items[SW_N_ITEMS] = {
  [SW_ITEM_SOCK] = { "sock", knit_sock },
  [SW_ITEM_HAT] = { "hat", knit_hat },
  [SW_ITEM_MITTEN] = { "mitten", knit_mitten },
  [SW_ITEM_SCARF] = { "scarf", knit_scarf },
  [SW_ITEM_SHAWL] = { "shawl", knit_shawl },
};

const char *
sw_item_name (SwItem item)
{
  g_return_val_if_fail (item < SW_N_ITEMS, NULL);
  return items[item].name;
}

int
sw_item_from_name (const char *name)
{
  for (int i = 0; i < SW_N_ITEMS; i++)
    if (strcmp (items[i].name, name) == 0)
      return i;
  return -1;
}

/* A piece's place to the right of its middle line and along its growth, cm, as a place in the picture. */
static void
turn (const SwItemPiece *piece, double across, double up, double *x, double *y)
{
  static const int right[4][2] = { { 1, 0 }, { 0, 1 }, { -1, 0 }, { 0, -1 } };
  const int *r = right[piece->quarters & 3];

  *x = piece->x_cm + across * r[0] + up * r[1];
  *y = piece->y_cm + across * r[1] - up * r[0];
}

static void
measure (SwItemKnit *knit)
{
  knit->left_cm = knit->top_cm = HUGE_VAL;
  knit->right_cm = knit->bottom_cm = -HUGE_VAL;
  for (gsize p = 0; p < knit->n_pieces; p++)
    for (gsize i = 0; i < 4 * knit->pieces[p].n_rows; i++)
      {
        const SwItemPiece *piece = &knit->pieces[p];
        const SwItemRow *row = &piece->rows[i / 4];
        const gsize right = i % 2, up = i / 2 % 2; /* of its corners */
        double x, y;

        if (row->seen == 0)
          continue;
        turn (piece, (row->left + (double) (right * row->seen)) * piece->stitch_cm, (double) (i / 4 + up) * piece->row_cm, &x, &y);
        knit->left_cm = MIN (knit->left_cm, x);
        knit->right_cm = MAX (knit->right_cm, x);
        knit->top_cm = MIN (knit->top_cm, y);
        knit->bottom_cm = MAX (knit->bottom_cm, y);
      }
}

void
sw_item_knit (SwItem item, const SwItemYarn *yarn, SwItemKnit *knit)
{
  Work work = { .yarn = yarn, .knit = knit };

  g_return_if_fail (item < SW_N_ITEMS && yarn->n_stitches[0] > 0);
  *knit = (SwItemKnit){ 0 };
  items[item].knit (&work);
  finish_piece (&work);
  for (gsize skein = 0; skein < G_N_ELEMENTS (work.used); skein++)
    knit->stitches += MIN (work.used[skein], yarn->n_stitches[skein]);
  knit->whole = !work.out;
  measure (knit);
}

void
sw_item_knit_clear (SwItemKnit *knit)
{
  for (gsize p = 0; p < knit->n_pieces; p++)
    g_free (knit->pieces[p].rows);
}
