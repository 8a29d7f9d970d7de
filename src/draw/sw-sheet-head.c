/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-sheet-layout.h"

#include "sheet/sw-sheet-lay.h"

#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define POINTS_PER_CM (10 * SW_POINTS_PER_MM)
#define YARDS_PER_METRE (1 / 0.9144)

/* Fields to be filled in by hand, at the right of the title. */
#define FIELD 150.0

static void
add_field (SwSheetLayout *self, const char *label, double y)
{
  const double right = self->content.width, width = MIN (sw_sheet_text_width (self, label, SW_STYLE_BODY), FIELD - 60);

  sw_sheet_add_text (self, label, SW_STYLE_BODY, right - FIELD, y, width, 0);
  sw_sheet_add (self, SW_SHEET_LINE, right - FIELD + width + 5, y + 14, FIELD - width - 5, 0.7);
}

static char *
yarn_text (const SwSheetLayout *self)
{
  const SwYarn *yarn = &self->forecast->sketch->yarn;
  const char *fibre = _ (sw_record_find_member (SW_RECORD_YARN, "fibre")->choice_labels[yarn->fibre]);

  if (self->options.us)
    /* Translators: the yarn: its fibre, how many yards in 100 grams */
    return g_strdup_printf (_ ("%s, %.0f yd in 100 g"), fibre, yarn->metres_per_100_g * YARDS_PER_METRE);
  /* Translators: the yarn: its fibre, how many metres in 100 grams */
  return g_strdup_printf (_ ("%s, %.0f m in 100 g"), fibre, yarn->metres_per_100_g);
}

/* What the batch is, between dots. */
static char *
batch_text (const SwSheetLayout *self)
{
  const SwSheet *sheet = self->sheet;
  const char *name = self->forecast->sketch->yarn.name;
  g_autofree char *mass = sw_mass_text (sheet->fibre_g, self->system);
  g_autofree char *skeins = g_strdup_printf (ngettext ("%d skein", "%d skeins", (gulong) sheet->skeins), (int) sheet->skeins);
  g_autofree char *pans = g_strdup_printf (ngettext ("%d pan", "%d pans", (gulong) sheet->pans), (int) sheet->pans);
  g_autofree char *yarn = yarn_text (self);

  /* The yarn's own name may be long. */
  if (self->closeness == SW_SHEET_CLOSEST)
    name = "";
  return g_strjoin ("  ·  ", skeins, pans, mass, yarn, name[0] != '\0' ? name : NULL, NULL);
}

void
sw_sheet_lay_head (SwSheetLayout *self)
{
  const char *title = self->forecast->sketch->title;
  g_autofree char *batch = batch_text (self);

  sw_sheet_begin_row (self);
  sw_sheet_add_text (self, title[0] != '\0' ? title : _ ("Untitled colourway"), SW_STYLE_TITLE, 0, 0, self->content.width - FIELD - 12, 0);
  /* Translators: a field to fill in by hand */
  add_field (self, _ ("Date"), 0);
  /* Translators: a field to fill in by hand: at what o'clock the dye day begins */
  add_field (self, _ ("Begun at"), 19);
  sw_sheet_end_row (self, 2, 0);
  sw_sheet_begin_row (self);
  sw_sheet_add_text (self, batch, SW_STYLE_BODY, 0, 0, self->content.width, 0);
  sw_sheet_end_row (self, sw_sheet_gap (self), 0);
}

/* The pan */

#define RULER 24.0
#define BESIDE_CM 1.0 /* of the pan that is shown at the skein's ends, where not all of it is */
#define NUMBER 10.0   /* half a pour's number, that may stand on the skein's edge */

static gboolean
has_second_face (const SwSketch *sketch)
{
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = g_ptr_array_index (sketch->steps, i);

      if (sw_step_is_pour (step) && sw_pan_pour_on_second (sketch, step->id))
        return TRUE;
    }
  return FALSE;
}

typedef struct
{
  double length_cm; /* that is shown of the pan */
  double across_cm; /* of the skein */
  double pan_cm;    /* across the pan; 0 if its sides are not shown */
  int faces;
  gboolean beside; /* the faces stand side by side */
  double parts;    /* the drawing is 1 : parts */
} PanView;

#define BETWEEN 16.0

static double
shown_length (const PanView *view, double parts)
{
  return view->length_cm * POINTS_PER_CM / parts;
}

/* The numbers on the skein's far edge need room too. */
static double
shown_height (const PanView *view, double parts)
{
  return MAX (view->pan_cm * POINTS_PER_CM / parts, view->across_cm * POINTS_PER_CM / parts + 2 * NUMBER);
}

/* The width that is left to each drawing. */
static double
room (const SwSheetLayout *self, const PanView *view)
{
  return view->beside ? (self->content.width - BETWEEN) / 2 : self->content.width;
}

static gboolean
fits (const SwSheetLayout *self, const PanView *view, double parts)
{
  static const double most_high[] = { 150, 135, 80 };
  static const double most_high_of_two[] = { 150, 140, 96 };
  const double high = view->faces > 1 && !view->beside ? most_high_of_two[self->closeness] / 2 : most_high[self->closeness];

  return shown_length (view, parts) <= room (self, view) && shown_height (view, parts) <= high;
}

/* Scales that a person can reckon with. */
static const double scales[] = { 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50 };

#define LEAST_SKEIN 44.0 /* a smaller one has no room for numbers */

/* The largest that fits; but a skein that would be too small for its numbers takes more room than that. */
static double
find_scale (const SwSheetLayout *self, const PanView *view)
{
  gsize i = 0;

  while (i + 1 < G_N_ELEMENTS (scales) && !fits (self, view, scales[i]))
    i++;
  while (i > 0 && view->across_cm * POINTS_PER_CM / scales[i] < LEAST_SKEIN && shown_length (view, scales[i - 1]) <= room (self, view))
    i--;
  return scales[i];
}

/* All of the pan if that takes no smaller scale; else the skein with a little around it. Two faces stand side by side if they are no smaller for it. */
static void
find_view (const SwSheetLayout *self, PanView *view)
{
  const SwLaySettings *lay = &self->forecast->sketch->lay;
  const double length = sw_sketch_lay_length (self->forecast->sketch) + 2 * BESIDE_CM;
  PanView close = { length, sw_sketch_lay_width (self->forecast->sketch), 0, has_second_face (self->forecast->sketch) ? 2 : 1, FALSE, 1 };
  PanView beside = close;

  close.parts = find_scale (self, &close);
  beside.beside = TRUE;
  beside.parts = find_scale (self, &beside);
  if (close.faces > 1 && beside.parts <= close.parts)
    close = beside;
  *view = close;
  view->length_cm = MAX (length, lay->pan_length_cm + 0.5);
  if (!fits (self, view, close.parts))
    view->length_cm = length;
  view->pan_cm = MAX (close.across_cm, lay->pan_width_cm) + 0.5;
  if (!fits (self, view, close.parts))
    view->pan_cm = 0;
}

static char *
caption_text (const PanView *view, gboolean second)
{
  if (view->faces == 1)
    /* Translators: over a drawing of the pan, with its scale, as on a map */
    return g_strdup_printf (_ ("The pan from above, 1 : %g"), view->parts);
  return second ? g_strdup_printf (_ ("Second face, 1 : %g"), view->parts) : g_strdup_printf (_ ("First face, 1 : %g"), view->parts);
}

/* Within the row under way, in the middle of the room from @left. */
static void
add_face (SwSheetLayout *self, const PanView *view, gboolean second, double left)
{
  const double width = shown_length (view, view->parts), x = left + (room (self, view) - width) / 2;
  const gboolean ruled = second || view->faces == 1 || view->beside;
  g_autofree char *words = caption_text (view, second);
  const double caption = sw_sheet_add_text (self, words, SW_STYLE_ASIDE, view->beside ? x : left, 0, view->beside ? width : room (self, view), 0);
  SwSheetItem *item = sw_sheet_add (self, SW_SHEET_PAN, x, caption + 1, width, shown_height (view, view->parts) + (ruled ? RULER : 0));

  item->second = second;
  item->scale = POINTS_PER_CM / view->parts;
  item->ruled = ruled;
}

/* Where pans of the batch hold more or fewer skeins than are drawn: each kind small, without numbers, and what differs in words. */

static double
find_load_scale (const SwSheetLayout *self, gsize laid, double width)
{
  static const double most_high[] = { 76, 66, 50 };
  const SwLaySettings *lay = &self->forecast->sketch->lay;
  const double length = MAX (lay->pan_length_cm, sw_sketch_lay_length (self->forecast->sketch)) * POINTS_PER_CM;
  const double across = MAX (lay->pan_width_cm, lay->width_cm * (double) laid) * POINTS_PER_CM;
  gsize i = 0;

  while (i + 1 < G_N_ELEMENTS (scales) && (length / scales[i] > width - 4 || across / scales[i] > most_high[self->closeness]))
    i++;
  return scales[i];
}

/* Within the row under way. Returns: its width */
static double
add_load (SwSheetLayout *self, gsize skeins, double left, double room)
{
  const SwLaySettings *lay = &self->forecast->sketch->lay;
  const gsize laid = sw_sheet_laid_skeins (self->sheet, skeins);
  const double parts = find_load_scale (self, laid, room);
  const double width = MAX (lay->pan_length_cm, sw_sketch_lay_length (self->forecast->sketch)) * POINTS_PER_CM / parts + 4;
  const double height = MAX (lay->pan_width_cm, lay->width_cm * (double) laid) * POINTS_PER_CM / parts + 4;
  /* Translators: over a small drawing of a pan that holds so many skeins, with its scale, as on a map */
  g_autofree char *words = g_strdup_printf (ngettext ("A pan with %1$d skein, 1 : %2$g", "A pan with %1$d skeins, 1 : %2$g", (gulong) skeins), (int) skeins, parts);
  const double caption = sw_sheet_add_text (self, words, SW_STYLE_ASIDE, left, 0, room, 0);
  SwSheetItem *item = sw_sheet_add (self, SW_SHEET_PAN, left, caption + 1, width, height);

  item->scale = POINTS_PER_CM / parts;
  item->laid = laid;
  return MAX (width, sw_sheet_text_width (self, words, SW_STYLE_ASIDE));
}

static void
lay_loads (SwSheetLayout *self)
{
  const gsize drawn = (gsize) self->forecast->sketch->lay.skeins, kinds[] = { self->sheet->fullest, self->sheet->lesser };
  const double room = (self->content.width - 2 * BETWEEN) / 3;
  g_autofree char *text = sw_sheet_lay_text (self->sheet);
  double left = 0;

  if (text == NULL)
    return;
  sw_sheet_begin_row (self);
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (kinds[i] > 0 && kinds[i] != drawn && sw_sheet_laid_skeins (self->sheet, kinds[i]) == kinds[i])
      left += add_load (self, kinds[i], left, room) + BETWEEN;
  sw_sheet_add_text (self, text, SW_STYLE_ASIDE, left, 0, self->content.width - left, 0);
  sw_sheet_end_row (self, sw_sheet_gap (self), 0);
}

void
sw_sheet_lay_pan (SwSheetLayout *self)
{
  PanView view;

  find_view (self, &view);
  sw_sheet_begin_row (self);
  for (int face = 0; face < view.faces; face++)
    {
      add_face (self, &view, face == 1, view.beside && face == 1 ? room (self, &view) + BETWEEN : 0);
      if (view.beside && face == 0)
        continue;
      sw_sheet_end_row (self, 2, 0);
      sw_sheet_begin_row (self);
    }
  lay_loads (self);
}
