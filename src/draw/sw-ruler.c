/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-ruler.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LEAST_LABEL_PX 34.0
#define LEAST_TICK_PX 4.0
#define LONG_TICK_PX 7.0
#define SHORT_TICK_PX 4.0

typedef struct
{
  double step;
  int divisions[3]; /* finest first */
} Choice;

static const Choice centimetres[] = {
  { 1, { 10, 2, 1 } },
  { 2, { 4, 2, 1 } },
  { 5, { 10, 5, 1 } },
  { 10, { 10, 2, 1 } },
  { 20, { 4, 2, 1 } },
  { 50, { 5, 5, 1 } },
  { 100, { 10, 2, 1 } },
};

static const Choice in_inches[] = {
  { 1, { 8, 4, 2 } },
  { 2, { 8, 4, 2 } },
  { 3, { 6, 3, 1 } },
  { 6, { 6, 3, 1 } },
  { 12, { 12, 4, 1 } },
  { 24, { 4, 2, 1 } },
  { 48, { 4, 2, 1 } },
};

G_STATIC_ASSERT (G_N_ELEMENTS (centimetres) == G_N_ELEMENTS (in_inches));

SwRulerSteps
sw_ruler_steps (double px_per_unit, gboolean inches)
{
  const Choice *choice = inches ? in_inches : centimetres, *last = choice + G_N_ELEMENTS (centimetres) - 1;
  int fineness = 0;

  while (choice < last && choice->step * px_per_unit < LEAST_LABEL_PX)
    choice++;
  while (fineness < 2 && choice->step * px_per_unit / choice->divisions[fineness] < LEAST_TICK_PX)
    fineness++;
  return (SwRulerSteps){ choice->step, choice->divisions[fineness] };
}

static void
draw_tick (const SwCanvas *canvas, SwRulerSide side, const SwBox *box, double at, double length)
{
  if (side == SW_RULER_BELOW)
    sw_canvas_line (canvas, box->x + at, box->y, box->x + at, box->y + length);
  else
    sw_canvas_line (canvas, box->x + box->width - length, box->y + box->height - at, box->x + box->width, box->y + box->height - at);
}

static void
draw_label (const SwCanvas *canvas, SwRulerSide side, const SwBox *box, double at, const char *text)
{
  double width, height;

  sw_canvas_set_ink (canvas, SW_INK_TEXT);
  sw_canvas_text_size (canvas, text, SW_TEXT_PX, &width, &height);
  if (side == SW_RULER_BELOW) /* under its tick, or as near as the picture's edges let it */
    sw_canvas_text (canvas, text, CLAMP (box->x + at - width / 2, 2, MAX (canvas->width - width - 2, 2)), box->y + LONG_TICK_PX, 0, 0, SW_TEXT_PX, NULL);
  else
    sw_canvas_text (canvas, text, box->x + box->width - LONG_TICK_PX - 3, box->y + box->height - at, 1, 0.5, SW_TEXT_PX, NULL);
}

void
sw_ruler_draw (const SwCanvas *canvas, SwRulerSide side, const SwBox *box, double px_per_cm)
{
  const gboolean inches = canvas->look->inches;
  const double px_per_unit = px_per_cm * (inches ? SW_CM_PER_INCH : 1);
  const SwRulerSteps steps = sw_ruler_steps (px_per_unit, inches);
  const double length = side == SW_RULER_BELOW ? box->width : box->height;
  const double tick = steps.step / steps.divisions * px_per_unit;
  /* Only what is in the picture: of a ruler that reaches beyond it the rest would pile up at its edge. */
  const double from = side == SW_RULER_BELOW ? -box->x : box->y + box->height - canvas->height;
  const double to = side == SW_RULER_BELOW ? canvas->width - box->x : box->y + box->height;
  const int first = (int) ceil (MAX (from, 0) / tick - 1e-6), last = (int) floor (MIN (to, length) / tick + 1e-6);

  if (length <= 0)
    return;
  for (int i = first; i <= last; i++)
    {
      const gboolean labelled = i % steps.divisions == 0;

      sw_canvas_set_ink (canvas, labelled ? SW_INK_LINE : SW_INK_FAINT);
      draw_tick (canvas, side, box, i * tick, labelled ? LONG_TICK_PX : SHORT_TICK_PX);
      if (labelled)
        {
          const int value = (int) lround (i / steps.divisions * steps.step);
          g_autofree char *text = NULL;

          if (i > 0)
            text = g_strdup_printf ("%d", value);
          else if (side == SW_RULER_LEFT)
            continue; /* the other ruler's first label, with the unit, is close by */
          else
            /* Translators: the unit at a ruler's start. */
            text = g_strdup (inches ? C_ ("ruler", "0 in") : C_ ("ruler", "0 cm"));
          draw_label (canvas, side, box, i * tick, text);
        }
    }
}

void
sw_ruler_draw_unit (const SwCanvas *canvas, const SwBox *box)
{
  sw_canvas_set_ink (canvas, SW_INK_TEXT);
  /* Translators: the unit, where two rulers meet. */
  sw_canvas_text (canvas, canvas->look->inches ? C_ ("ruler", "in") : C_ ("ruler", "cm"), box->x + box->width / 2, box->y + box->height / 2, 0.5, 0.5, SW_TEXT_PX, NULL);
}

char *
sw_ruler_length (double cm, gboolean inches)
{
  if (inches)
    /* Translators: a length in inches. */
    return g_strdup_printf (_ ("%.1f in"), cm / SW_CM_PER_INCH);
  /* Translators: a length in centimetres. */
  return g_strdup_printf (cm < 9.95 ? _ ("%.1f cm") : _ ("%.0f cm"), cm);
}
