/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-sheet-lay.h"

#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static gsize
in_drawing (const SwSheet *sheet)
{
  return (gsize) sheet->sketch->lay.skeins;
}

gsize
sw_sheet_laid_skeins (const SwSheet *sheet, gsize skeins)
{
  const gsize most = (gsize) sw_record_find_member (SW_RECORD_LAY, "skeins")->max;

  return skeins <= most ? skeins : in_drawing (sheet);
}

gsize
sw_sheet_copies (const SwSheet *sheet, gsize laid)
{
  return (laid + in_drawing (sheet) - 1) / in_drawing (sheet);
}

/* Such a pour is the same on each skein, so that any number of them gets its share. */
static gboolean
goes_right_across (const SwSketch *sketch, const SwStep *step)
{
  const double across = sw_sketch_lay_width (sketch), half = step->length_cm / 2;

  if (step->kind == SW_STEP_BAND && step->length_cm > 0 && (step->y_cm - half > 0 || step->y_cm + half < across))
    return FALSE;
  if (step->kind == SW_STEP_SPLOTCH)
    return FALSE;
  if (step->kind == SW_STEP_SPECKLE && (step->y_cm - half > 0 || step->y_cm + half < across))
    return FALSE;
  return fabs (remainder (step->angle_deg, 180)) < 1e-9;
}

static gboolean
all_go_right_across (const SwSketch *sketch)
{
  for (guint i = 0; i < sketch->steps->len; i++)
    if (sw_step_is_pour (sketch->steps->pdata[i]) && !goes_right_across (sketch, sketch->steps->pdata[i]))
      return FALSE;
  return TRUE;
}

/* Takes over @sentence. */
static void
add (GString *text, char *sentence)
{
  if (text->len > 0)
    g_string_append_c (text, ' ');
  g_string_append (text, sentence);
  g_free (sentence);
}

char *
sw_sheet_lay_text (const SwSheet *sheet)
{
  const gsize drawn = in_drawing (sheet), lesser_pans = sheet->pans - sheet->fuller_pans;
  GString *text = g_string_new (NULL);

  if (sheet->fullest > drawn)
    /* Translators: how many skeins are drawn, how many lie in a real pan, which is the drawing again and again */
    add (text, g_strdup_printf (_ ("Skeins drawn: %1$d; in a full pan: %2$d. The drawing is repeated across, and each amount is for the whole pan."), (int) drawn, (int) sheet->fullest));
  else if (sheet->fullest < drawn)
    /* Translators: how many skeins are drawn, how many lie in a real pan, which is a part of the drawing */
    add (text, g_strdup_printf (_ ("Skeins drawn: %1$d; in a full pan: %2$d. The far ones are left out, and each amount is for the whole pan."), (int) drawn, (int) sheet->fullest));
  if (sheet->lesser > 0)
    add (text, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d pan lies the same without the farthest skein.", "%d pans lie the same without the farthest skein.", (gulong) lesser_pans), (int) lesser_pans));
  if ((sheet->fullest % drawn != 0 || sheet->lesser % drawn != 0) && !all_go_right_across (sheet->sketch))
    /* Translators: how many skeins are drawn */
    add (text, g_strdup_printf (_ ("Pours that do not go right across come out otherwise there: best give each pan %d skeins or a multiple of that."), (int) drawn));
  if (text->len > 0)
    return g_string_free (text, FALSE);
  g_string_free (text, TRUE);
  return NULL;
}
