/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-pan-words.h"

#include "app/desk/sw-pan-align.h"
#include "app/desk/sw-step-words.h"
#include "draw/sw-pan-geometry.h"

#include <glib/gi18n-lib.h>

typedef enum
{
  OF_BAND,
  OF_SPLOTCH,
  OF_SPECKLE,
  OF_STEP,
  OF_SEVERAL,
  N_OBJECTS,
} Object;

/* Translators: names of edits, shown beside Undo. Splotches and speckles are pours of dye, as bands are */
static const char *const deeds[SW_N_DEEDS][N_OBJECTS] = {
  [SW_DEED_POUR] = { N_ ("Pour Band"), N_ ("Pour Splotch"), N_ ("Scatter Speckles"), N_ ("Add Step"), N_ ("Pour") },
  [SW_DEED_MOVE] = { N_ ("Move Band"), N_ ("Move Splotch"), N_ ("Move Speckles"), N_ ("Move Step"), N_ ("Move Pours") },
  [SW_DEED_STRETCH] = { N_ ("Stretch Band"), N_ ("Stretch Splotch"), N_ ("Stretch Speckle Zone"), N_ ("Change Step"), N_ ("Stretch Pours") },
  [SW_DEED_TURN] = { N_ ("Slant Band"), N_ ("Turn Splotch"), N_ ("Turn Speckle Zone"), N_ ("Change Step"), N_ ("Turn Pours") },
  [SW_DEED_DUPLICATE] = { N_ ("Duplicate Band"), N_ ("Duplicate Splotch"), N_ ("Duplicate Speckles"), N_ ("Duplicate Step"), N_ ("Duplicate Steps") },
  [SW_DEED_DELETE] = { N_ ("Delete Band"), N_ ("Delete Splotch"), N_ ("Delete Speckles"), N_ ("Delete Step"), N_ ("Delete Steps") },
};

const char *
sw_deed_name (SwDeed deed, SwStepKind kind, gsize n)
{
  static const Object objects[SW_N_STEP_KINDS] = {
    [SW_STEP_BAND] = OF_BAND,
    [SW_STEP_SPLOTCH] = OF_SPLOTCH,
    [SW_STEP_SPECKLE] = OF_SPECKLE,
    [SW_STEP_REST] = OF_STEP,
    [SW_STEP_FLIP] = OF_STEP,
    [SW_STEP_ACID] = OF_STEP,
    [SW_STEP_WATER] = OF_STEP,
    [SW_STEP_SET] = OF_STEP,
  };

  g_return_val_if_fail (deed < SW_N_DEEDS && kind < SW_N_STEP_KINDS, NULL);
  return _ (deeds[deed][n == 1 ? objects[kind] : OF_SEVERAL]);
}

const char *
sw_handle_tip (SwHandle handle, const SwPourPlace *place)
{
  const gboolean band = place->kind == SW_STEP_BAND;

  if (handle == SW_HANDLE_TURN && band)
    return _ ("Drag to slant the band; hold Shift for steps of 15°");
  if (handle == SW_HANDLE_TURN)
    return _ ("Drag to turn it; hold Shift for steps of 15°");
  if (sw_handle_along (handle) != 0 && sw_handle_across (handle) != 0)
    return _ ("Drag to change the size; hold Shift to keep its proportions, Ctrl to keep its centre");
  if (sw_handle_along (handle) != 0)
    return _ ("Drag to change the width; hold Shift to move both sides");
  if (sw_handle_across (handle) != 0 && band && place->length <= 0)
    return _ ("Drag inwards to end the band before the skein’s edge");
  if (sw_handle_across (handle) != 0)
    return _ ("Drag to change the length across; hold Shift to move both sides");
  return _ ("Drag to move; hold Shift to keep to one direction, Ctrl to leave a copy");
}

char *
sw_pan_measure (SwHandle held, const SwPourPlace *place, SwSystem system)
{
  g_autofree char *along = NULL;
  g_autofree char *across = NULL;
  const gboolean right_across = place->kind == SW_STEP_BAND && place->length <= 0;
  const gboolean body = held == SW_HANDLE_BODY;

  if (held == SW_HANDLE_TURN || (held == SW_HANDLE_NONE && (place->angle < 0 || place->angle > 0)))
    return sw_units_format (SW_QUANTITY_ANGLE, place->angle, system);

  along = sw_units_format (SW_QUANTITY_LENGTH, body ? place->x : place->width, system);
  across = sw_units_format (SW_QUANTITY_LENGTH, body ? place->y : place->length, system);
  if (body && right_across)
    /* Translators: where a band's middle is along the skein: "at 42 cm" */
    return g_strdup_printf (_ ("at %s"), along);
  if (body)
    /* Translators: a pour's place along and across the skein: "at 42 cm, 5 cm across" */
    return g_strdup_printf (_ ("at %s, %s across"), along, across);
  if (right_across && sw_handle_across (held) != 0)
    return g_strdup (_ ("right across"));
  if (right_across || (sw_handle_across (held) == 0 && held != SW_HANDLE_NONE))
    /* Translators: a pour's extent along the skein */
    return g_strdup_printf (_ ("%s wide"), along);
  if (sw_handle_along (held) == 0 && held != SW_HANDLE_NONE)
    /* Translators: a pour's extent across the skein */
    return g_strdup_printf (_ ("%s across"), across);
  /* Translators: a pour's extent along and across the skein: 12 cm × 6 cm */
  return g_strdup_printf (_ ("%s × %s"), along, across);
}

char *
sw_pan_pour_tip (const SwSketch *sketch, const SwStep *step, gboolean second_face, SwSystem system)
{
  const SwPourPlace place = sw_pour_place (step);
  g_autofree char *title = sw_step_title (sketch, step);
  g_autofree char *detail = sw_step_detail (sketch, step, system);
  const guint number = sw_pan_pour_number (sketch, step->id);

  if (sw_pan_pour_on_second (sketch, step->id) != !!second_face)
    /* Translators: number, title and amounts of a pour */
    return g_strdup_printf (_ ("%u. %s\n%s\nOn the other face. Click to turn the skein over."), number, title, detail);
  /* Translators: number, title and amounts of a pour; then what can be done with it */
  return g_strdup_printf (_ ("%u. %s\n%s\n%s"), number, title, detail, sw_handle_tip (SW_HANDLE_BODY, &place));
}

#define MOST_NAMED 3

/* Each selected step as a sentence, the first few of them. */
static char *
describe_selected (const SwSketch *sketch, const guint *selected, gsize n, SwSystem system)
{
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < MIN (n, MOST_NAMED); i++)
    {
      const SwStep *step = sw_sketch_find_step (sketch, selected[i]);
      g_autofree char *sentence = step != NULL ? sw_step_sentence (sketch, step, system) : NULL;

      if (sentence != NULL)
        g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", sentence);
    }
  return g_string_free (text, FALSE);
}

char *
sw_pan_description (const SwSketch *sketch, gboolean second_face, const guint *selected, gsize n, SwSystem system)
{
  g_autofree char *pours_words = NULL;
  g_autofree char *names = describe_selected (sketch, selected, n, system);
  g_autofree char *selection = NULL;
  const char *face = second_face ? _ ("The second face is up.") : _ ("The first face is up.");
  guint pours = 0;

  for (guint i = 0; i < sketch->steps->len; i++)
    pours += sw_step_is_pour (sketch->steps->pdata[i]) ? 1 : 0;
  /* Translators: for screen readers; the list of steps tells each pour */
  pours_words = g_strdup_printf (ngettext ("The skein with %u pour.", "The skein with %u pours.", pours), pours);
  if (n == 0)
    selection = g_strdup (_ ("Nothing is selected."));
  else
    /* Translators: how many steps are selected, then the first of them as sentences */
    selection = g_strdup_printf (ngettext ("%u selected: %s", "%u selected: %s", (guint) n), (guint) n, names);
  /* Translators: three sentences: how many pours, which face is up, what is selected */
  return g_strdup_printf (_ ("%s %s %s"), pours_words, face, selection);
}

const char *
sw_pan_hint (const SwSketch *sketch, gboolean drawing)
{
  for (guint i = 0; i < sketch->steps->len; i++)
    if (sw_step_is_pour (sketch->steps->pdata[i]))
      return NULL;
  if (sketch->dyes->len == 0)
    return _ ("Add a dye pot to begin");
  return drawing ? _ ("Drag over the skein to pour") : _ ("Pick Band, Splotch or Speckles, then drag over the skein");
}

void
sw_pan_fill_align_menu (GMenu *menu)
{
  GMenu *section = NULL;

  for (SwAlign align = 0; align < SW_N_ALIGNS; align++)
    {
      g_autoptr (GMenuItem) item = g_menu_item_new (sw_align_label (align), NULL);

      if (align == SW_ALIGN_LEFT || align == SW_ALIGN_TOP || align == SW_ALIGN_SPREAD_ALONG)
        {
          section = g_menu_new ();
          g_menu_append_section (menu, NULL, G_MENU_MODEL (section));
          g_object_unref (section); /* the menu's now */
        }
      g_menu_item_set_action_and_target (item, sw_align_least (align) > 1 ? "pan.spread" : "pan.align", "s", sw_align_name (align));
      g_menu_append_item (section, item);
    }
}
