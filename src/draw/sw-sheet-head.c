/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-sheet-layout.h"

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
  double parts; /* the drawing is 1 : parts */
} PanView;

/* The numbers on the skein's far edge need room too. */
static double
shown_height (const PanView *view, double parts)
{
  return MAX (view->pan_cm * POINTS_PER_CM / parts, view->across_cm * POINTS_PER_CM / parts + 2 * NUMBER);
}

static gboolean
fits (const SwSheetLayout *self, const PanView *view, double parts)
{
  static const double most_high[] = { 150, 130, 84 };
  static const double most_high_of_two[] = { 150, 140, 126 };

  return view->length_cm * POINTS_PER_CM / parts <= self->content.width && view->faces * shown_height (view, parts) <= (view->faces > 1 ? most_high_of_two : most_high)[self->closeness];
}

/* A scale that a person can reckon with. */
static double
find_scale (const SwSheetLayout *self, const PanView *view)
{
  static const double scales[] = { 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50 };
  gsize i = 0;

  while (i + 1 < G_N_ELEMENTS (scales) && !fits (self, view, scales[i]))
    i++;
  return scales[i];
}

/* All of the pan if that takes no smaller scale; else the skein with a little around it. */
static void
find_view (const SwSheetLayout *self, PanView *view)
{
  const SwSketch *sketch = self->forecast->sketch;
  const double length = sw_sketch_lay_length (sketch), across = sw_sketch_lay_width (sketch);
  PanView close = { length + 2 * BESIDE_CM, across, 0, has_second_face (sketch) ? 2 : 1, 1 };

  close.parts = find_scale (self, &close);
  *view = close;
  view->length_cm = MAX (close.length_cm, sketch->lay.pan_length_cm + 0.5);
  if (!fits (self, view, close.parts))
    view->length_cm = close.length_cm;
  view->pan_cm = sketch->lay.pan_width_cm + 0.5;
  if (view->faces > 1 || !fits (self, view, close.parts))
    view->pan_cm = 0;
}

static void
lay_face (SwSheetLayout *self, const PanView *view, gboolean second)
{
  const gboolean last = second || view->faces == 1;
  const double scale = POINTS_PER_CM / view->parts;
  const double width = view->length_cm * scale, height = shown_height (view, view->parts);
  g_autofree char *words = NULL;
  double caption;
  SwSheetItem *item;

  if (view->faces == 1)
    /* Translators: under the title of a drawing of the pan, its scale, as on a map */
    words = g_strdup_printf (_ ("The pan from above, 1 : %g"), view->parts);
  else if (second)
    words = g_strdup_printf (_ ("Second face, 1 : %g"), view->parts);
  else
    words = g_strdup_printf (_ ("First face, 1 : %g"), view->parts);
  sw_sheet_begin_row (self);
  caption = sw_sheet_add_text (self, words, SW_STYLE_ASIDE, 0, 0, self->content.width, 0);
  item = sw_sheet_add (self, SW_SHEET_PAN, (self->content.width - width) / 2, caption + 1, width, height + (last ? RULER : 0));
  item->second = second;
  item->scale = scale;
  item->ruled = last;
  sw_sheet_end_row (self, last ? 2 : 3, 0);
}

void
sw_sheet_lay_pan (SwSheetLayout *self)
{
  PanView view;

  find_view (self, &view);
  for (int face = 0; face < view.faces; face++)
    lay_face (self, &view, face == 1);
}
