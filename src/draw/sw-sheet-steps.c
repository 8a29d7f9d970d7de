/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-sheet-layout.h"

#include "sheet/sw-day.h"
#include "sheet/sw-sheet-remarks.h"
#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* The day in order, a box to tick before each line. */

#define TICK 11.0
#define TICK_STEP 15.0
#define MOST_TICKS 6 /* in a line; for more pans one has to do */
#define CLOCK 45.0   /* right of the last box */
#define BADGE 16.0
#define AMOUNT 88.0
#define MEASURE 104.0
#define NARROWER 18.0 /* of both columns on the closest page */

/* A box for each pan. */
static int
ticks_of (const SwSheetLayout *self)
{
  return self->sheet->pans <= MOST_TICKS ? (int) self->sheet->pans : 1;
}

static double
badge_at (const SwSheetLayout *self)
{
  return ticks_of (self) * TICK_STEP + CLOCK + 8;
}

static double
words_at (const SwSheetLayout *self)
{
  return badge_at (self) + BADGE + 6;
}

/* One line of the day, in words. */
typedef struct
{
  char *title, *amount, *measure, *aside;
} Line;

static void
line_clear (Line *line)
{
  g_free (line->title);
  g_free (line->amount);
  g_free (line->measure);
  g_free (line->aside);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Line, line_clear)

static const SwSheetPour *
find_pour (const SwSheet *sheet, guint step)
{
  for (gsize i = 0; i < sheet->n_pours; i++)
    if (sheet->pours[i].step == step)
      return &sheet->pours[i];
  return NULL;
}

static const SwSheetStep *
find_step (const SwSheet *sheet, guint step)
{
  for (gsize i = 0; i < sheet->n_steps; i++)
    if (sheet->steps[i].step == step)
      return &sheet->steps[i];
  return NULL;
}

/* How far it is worked in, as a dyer says it. */
static const char *
working_words (double worked_in)
{
  static const struct
  {
    double below;
    const char *words;
  } words[] = {
    /* Translators: how a pour is worked into the yarn */
    { 0.1, N_ ("leave it on top") },
    { 0.45, N_ ("press in lightly") },
    { 0.8, N_ ("press in well") },
    { 2, N_ ("work right through") },
  };
  gsize i = 0;

  while (i + 1 < G_N_ELEMENTS (words) && worked_in >= words[i].below)
    i++;
  return _ (words[i].words);
}

/* What a pan with a skein less gets. */
static char *
lesser_text (const SwSheetLayout *self, const char *amount)
{
  /* Translators: an amount, for pans that hold fewer skeins than the others */
  return g_strdup_printf (ngettext ("%2$s in a pan with %1$d skein", "%2$s in a pan with %1$d skeins", (gulong) self->sheet->lesser), (int) self->sheet->lesser, amount);
}

/* Where each pour has a line of its own for it; else behind its name, since without it no one can pour. */
static void
tell_working (const SwSheetLayout *self, const SwStep *step, Line *line)
{
  const char *working = working_words (step->worked_in);
  g_autofree char *before = NULL;

  if (line->aside != NULL)
    {
      before = line->aside;
      /* Translators: two short remarks on one line */
      line->aside = g_strdup_printf (_ ("%1$s · %2$s"), working, before);
    }
  else if (self->closeness == 0)
    line->aside = g_strdup (working);
  else
    {
      before = line->title;
      line->title = g_strdup_printf (_ ("%1$s, %2$s"), before, working);
    }
}

static void
tell_pour (const SwSheetLayout *self, const SwStep *step, const SwSheetPour *pour, Line *line)
{
  const SwSketch *sketch = self->forecast->sketch;
  const char *dye = sw_dye_title (sw_sketch_find_dye (sketch, step->dye));

  g_free (line->title);
  if (step->name[0] != '\0')
    /* Translators: a pour: its name, its dye */
    line->title = g_strdup_printf (_ ("%s: %s"), step->name, dye);
  else
    line->title = sw_step_title (sketch, step);
  line->amount = pour->dry ? sw_dye_text (pour->dye_g.rounded) : sw_volume_text (pour->stock_ml.rounded, self->system);
  line->measure = pour->dry ? g_strdup (_ ("dry grains")) : sw_spoons_text (pour->stock_ml.rounded, self->system);
  if (self->sheet->lesser > 0)
    {
      g_autofree char *lesser = pour->dry ? sw_dye_text (pour->lesser_dye_g.rounded) : sw_volume_text (pour->lesser_stock_ml.rounded, self->system);

      line->aside = lesser_text (self, lesser);
    }
  if (!pour->dry)
    tell_working (self, step, line);
}

static void
tell_added (const SwSheetLayout *self, const SwSheetStep *after, Line *line)
{
  const gboolean crystals = after->crystals_g.exact > 0;

  line->amount = crystals ? sw_mass_text (after->crystals_g.rounded, SW_MEASURE_METRIC) : sw_volume_text (after->added_ml.rounded, self->system);
  line->measure = crystals ? sw_volume_text (after->added_ml.rounded, self->system) : sw_spoons_text (after->added_ml.rounded, self->system);
  /* Translators: the bath after acid or water was added */
  line->aside = g_strdup_printf (_ ("pH %.1f after it"), after->ph);
}

static void
tell_deed (const SwSheetLayout *self, const SwDeed *deed, Line *line)
{
  const SwStep *step = sw_sketch_find_step (self->forecast->sketch, deed->step);
  const SwSheetPour *pour = find_pour (self->sheet, deed->step);
  const SwSheetStep *after = find_step (self->sheet, deed->step);

  if (step != NULL && step->name[0] != '\0')
    /* Translators: what is done, and what the dyer calls it: "Rest: until the bath clears" */
    line->title = g_strdup_printf (_ ("%s: %s"), sw_deed_label (deed->kind), step->name);
  else
    line->title = g_strdup (sw_deed_label (deed->kind));
  if (pour != NULL)
    tell_pour (self, step, pour, line);
  else if (after != NULL && (deed->kind == SW_DEED_ACID || deed->kind == SW_DEED_WATER))
    tell_added (self, after, line);
  else
    {
      line->amount = deed->minutes > 0 ? sw_minutes_text (deed->minutes) : NULL;
      line->measure = deed->temperature_c > 0 ? sw_temperature_text (deed->temperature_c, self->system) : NULL;
    }
}

/* Cautions that have not been told at an earlier line; dust is told at every dry pour. */
static char *
new_cautions (const SwSketch *sketch, const SwDeed *deed, guint *told)
{
  const guint dust = deed->kind == SW_DEED_POUR ? 1u << SW_CAUTION_DUST : 0;
  const guint bits = sw_cautions_for_deed (sketch, (int) deed->kind, deed->step) & (~*told | dust);
  g_autoptr (GPtrArray) titles = g_ptr_array_new ();
  g_autofree char *list = NULL;

  *told |= bits;
  for (int caution = 0; caution < SW_N_CAUTIONS; caution++)
    if ((bits >> caution & 1) != 0)
      g_ptr_array_add (titles, (gpointer) sw_caution_title ((SwCaution) caution));
  if (titles->len == 0)
    return NULL;
  g_ptr_array_add (titles, NULL);
  list = g_strjoinv (", ", (char **) titles->pdata);
  /* Translators: the cautions that apply to a step, a few words each */
  return g_strdup_printf (_ ("Mind: %s"), list);
}

static double
row_height (const SwSheetLayout *self)
{
  double height = 0;

  for (guint i = self->row; i < self->items->len; i++)
    {
      const SwSheetItem *item = &g_array_index (self->items, SwSheetItem, i);

      height = MAX (height, item->box.y + item->box.height);
    }
  return height;
}

static void
add_aside (SwSheetLayout *self, const char *text, double width)
{
  if (text != NULL)
    sw_sheet_add_text (self, text, SW_STYLE_ASIDE, words_at (self), row_height (self), width, 0);
}

/* It leads the eye from the words to the amount. */
static void
add_hairline (SwSheetLayout *self)
{
  SwSheetItem *item = sw_sheet_add (self, SW_SHEET_LINE, 0, row_height (self) + 1, self->content.width, 0.5);

  item->grey = 0.8;
}

/* Hours and minutes from the beginning of the day. */
static char *
clock_text (double minutes)
{
  const int whole = (int) lround (minutes);

  return g_strdup_printf ("+%d:%02d", whole / 60, whole % 60);
}

static void
add_ticks (SwSheetLayout *self, SwDeedKind kind)
{
  const int n = sw_deed_is_in_pan (kind) ? ticks_of (self) : 1;

  for (int i = 0; i < n; i++)
    sw_sheet_add (self, SW_SHEET_TICK, i * TICK_STEP, 0, TICK, TICK)->on_line = TRUE;
}

/* The pans' numbers over their boxes. */
static void
lay_pan_numbers (SwSheetLayout *self)
{
  const int n = ticks_of (self);

  if (n == 1)
    return;
  sw_sheet_begin_row (self);
  for (int i = 0; i < n; i++)
    {
      char number[16];
      double width;

      g_snprintf (number, sizeof number, "%d", i + 1);
      width = sw_sheet_text_width (self, number, SW_STYLE_ASIDE);
      sw_sheet_add_text (self, number, SW_STYLE_ASIDE, i * TICK_STEP + (TICK - width) / 2, 0, width, 0);
    }
  /* Translators: at the head of columns numbered 1, 2 ... of boxes to tick: a box for each pan */
  sw_sheet_add_text (self, _ ("a box for each pan"), SW_STYLE_ASIDE, n * TICK_STEP + 8, 0, self->content.width - n * TICK_STEP - 8, 0);
  sw_sheet_end_row (self, 1, 20);
}

static void
lay_line (SwSheetLayout *self, const SwDeed *deed, const Line *line, const char *cautions)
{
  const gboolean alone = line->amount == NULL && line->measure == NULL;
  const double narrower = self->closeness < SW_SHEET_CLOSEST ? 0 : NARROWER; /* words that wrap cost a line */
  const double amount = AMOUNT - narrower, measure = MEASURE - narrower;
  const double words = self->content.width - words_at (self) - (alone ? 0 : amount + measure + 12);
  const double amount_at = self->content.width - amount - measure - 8;
  g_autofree char *clock = clock_text (deed->start_min);
  SwSheetItem *item;

  sw_sheet_begin_row (self);
  add_ticks (self, deed->kind);
  sw_sheet_add_cell (self, clock, SW_STYLE_BODY, ticks_of (self) * TICK_STEP, CLOCK, 1);
  if (deed->pour > 0)
    {
      item = sw_sheet_add (self, SW_SHEET_BADGE, badge_at (self), 0, BADGE, BADGE);
      item->number = deed->pour;
      item->on_line = TRUE;
    }
  sw_sheet_add_cell (self, line->title, deed->pour > 0 ? SW_STYLE_STRONG : SW_STYLE_BODY, words_at (self), words, 0);
  if (line->amount != NULL)
    sw_sheet_add_cell (self, line->amount, SW_STYLE_AMOUNT, amount_at, amount, 1);
  if (line->measure != NULL)
    sw_sheet_add_cell (self, line->measure, SW_STYLE_BODY, amount_at + amount + 8, measure, 0);
  add_aside (self, line->aside, self->content.width - words_at (self));
  add_aside (self, cautions, self->content.width - words_at (self));
  add_hairline (self);
  sw_sheet_end_row (self, sw_sheet_gap (self), 0);
}

/* Rinses that follow one another. */
static gsize
count_alike (const SwDeed *deeds, gsize n)
{
  gsize alike = 1;

  while (alike < n && deeds[0].kind == SW_DEED_RINSE && deeds[alike].kind == SW_DEED_RINSE)
    alike++;
  return alike;
}

static void
tell_times (gsize times, Line *line)
{
  g_autofree char *once = line->amount;

  /* Translators: how often, how long each time: "2 × 3 min" */
  line->amount = g_strdup_printf (_ ("%d × %s"), (int) times, once);
}

void
sw_sheet_lay_steps (SwSheetLayout *self)
{
  const SwSketch *sketch = self->forecast->sketch;
  gsize n;
  g_autofree SwDeed *deeds = sw_day_new (sketch, &n);
  guint told = self->closeness < SW_SHEET_CLOSEST ? 0 : ~0u; /* the closest page tells of the others at its foot alone */

  /* Translators: heading of the list of what is done, with the times from its beginning */
  sw_sheet_add_heading (self, self->sheet->pans > 1 ? _ ("The day, amounts for each pan") : _ ("The day"), 30);
  lay_pan_numbers (self);
  for (gsize i = 0, alike; i < n; i += alike)
    {
      g_auto (Line) line = { NULL };
      g_autofree char *cautions = new_cautions (sketch, &deeds[i], &told);

      alike = self->closeness == SW_SHEET_CLOSEST ? count_alike (&deeds[i], n - i) : 1;
      tell_deed (self, &deeds[i], &line);
      if (alike > 1)
        tell_times (alike, &line);
      lay_line (self, &deeds[i], &line, cautions);
    }
}
