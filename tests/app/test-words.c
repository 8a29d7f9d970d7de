/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-file-words.h"
#include "app/desk/sw-place-words.h"
#include "app/desk/sw-step-words.h"
#include "app/desk/sw-templates.h"
#include "draw/sw-pour-new.h"
#include "sketch/sw-member.h"

#include "app/desk/sw-document.h"

#define NBSP "\u00a0"

static SwSketch *
sketch_with_step (SwStepKind kind, SwStep **step)
{
  SwSketch *sketch = sw_sketch_new ();
  SwDye *dye = sw_dye_new (sketch->next_id++);

  g_free (dye->name);
  dye->name = g_strdup ("Teal");
  g_ptr_array_add (sketch->dyes, dye);
  *step = sw_step_new (sketch->next_id++, kind);
  (*step)->dye = sw_step_is_pour (*step) ? dye->id : 0;
  g_ptr_array_add (sketch->steps, *step);
  return sketch;
}

static void
test_sentences (void)
{
  static const struct
  {
    SwStepKind kind;
    const char *title, *sentence;
  } rows[] = {
    { SW_STEP_BAND, "Band of Teal", "Band of Teal: 30" NBSP "mL at 42" NBSP "cm, 12" NBSP "cm wide; from edge to edge, slanted 10°, worked in 40" NBSP "%." },
    { SW_STEP_SPLOTCH, "Splotch of Teal", "Splotch of Teal: 30" NBSP "mL at 42" NBSP "cm, 12" NBSP "cm wide; 6" NBSP "cm across at 3" NBSP "cm, turned 10°, worked in 40" NBSP "%." },
    { SW_STEP_SPECKLE, "Speckles of Teal", "Speckles of Teal: 30" NBSP "mL at 42" NBSP "cm, 12" NBSP "cm wide; 8" NBSP "cm across at 3" NBSP "cm, turned 10°, worked in 40" NBSP "%." },
    { SW_STEP_REST, "Rest", "Rest: 10" NBSP "min at 85" NBSP "°C." },
    { SW_STEP_FLIP, "Flip", "Flip." },
    { SW_STEP_ACID, "Acid", "Acid: 30" NBSP "mL of 5" NBSP "%." },
    { SW_STEP_WATER, "Water", "Water: 500" NBSP "mL." },
    { SW_STEP_SET, "Set", "Set: 30" NBSP "min at 95" NBSP "°C." },
  };

  G_STATIC_ASSERT (G_N_ELEMENTS (rows) == SW_N_STEP_KINDS);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      SwStep *step;
      g_autoptr (SwSketch) sketch = sketch_with_step (rows[i].kind, &step);
      g_autofree char *title = NULL;
      g_autofree char *sentence = NULL;

      if (sw_step_is_pour (step))
        {
          step->amount_ml = 30;
          step->x_cm = 42;
          step->y_cm = 3;
          step->width_cm = 12;
          step->angle_deg = 10;
          step->worked_in = 0.4;
        }
      title = sw_step_title (sketch, step);
      sentence = sw_step_sentence (sketch, step, SW_SYSTEM_METRIC);
      g_assert_cmpstr (title, ==, rows[i].title);
      g_assert_cmpstr (sentence, ==, rows[i].sentence);
    }
}

/* The list says all that the picture shows: number, kind, dye, place, size, face and amount. */
static void
test_reading (void)
{
  SwStep *step;
  g_autoptr (SwSketch) sketch = sketch_with_step (SW_STEP_BAND, &step);
  g_autofree char *nameless = sw_step_reading (sketch, step, SW_SYSTEM_METRIC);
  g_autofree char *place = sw_step_place (sketch, step, SW_SYSTEM_METRIC);
  g_autofree char *named = NULL;
  g_autofree char *below = NULL;
  g_autofree char *rest = NULL;
  SwStep *second;

  g_assert_cmpstr (nameless, ==, "1. Band of Teal: 20" NBSP "mL at 10" NBSP "cm, 6" NBSP "cm wide; from edge to edge, worked in 30" NBSP "%. On the first face.");
  g_assert_cmpstr (place, ==, "at 10" NBSP "cm, 6" NBSP "cm wide");

  step->name = (g_free (step->name), g_strdup ("Canal"));
  named = sw_step_reading (sketch, step, SW_SYSTEM_METRIC);
  g_assert_true (g_str_has_prefix (named, "1, Canal. Band of Teal: 20"));

  g_ptr_array_add (sketch->steps, sw_step_new (sketch->next_id++, SW_STEP_FLIP));
  second = sw_step_new (sketch->next_id++, SW_STEP_SPLOTCH);
  second->dye = step->dye;
  g_ptr_array_add (sketch->steps, second);
  below = sw_step_reading (sketch, second, SW_SYSTEM_METRIC);
  g_assert_true (g_str_has_prefix (below, "2. Splotch of Teal: "));
  g_assert_true (g_str_has_suffix (below, " On the second face."));

  second = sw_step_new (sketch->next_id++, SW_STEP_REST);
  second->name = (g_free (second->name), g_strdup ("Tea break"));
  g_ptr_array_add (sketch->steps, second);
  rest = sw_step_reading (sketch, second, SW_SYSTEM_METRIC);
  g_assert_cmpstr (rest, ==, "Tea break. Rest: 10" NBSP "min at 85" NBSP "°C.");
}

/* The dyer's own name goes before ours. */
static void
test_own_name (void)
{
  SwStep *step;
  g_autoptr (SwSketch) sketch = sketch_with_step (SW_STEP_BAND, &step);
  g_autofree char *title = NULL;

  g_free (step->name);
  step->name = g_strdup ("Canal");
  title = sw_step_title (sketch, step);
  g_assert_cmpstr (title, ==, "Canal");
}

/* Every template is a valid drawing without another's title; the demo has one. */
static void
test_templates (void)
{
  GError *error = NULL;
  g_autoptr (SwSketch) demo = sw_template_demo (&error);

  g_assert_no_error (error);
  g_assert_cmpstr (demo->title, !=, "");
  g_assert_cmpuint (sw_n_templates, >=, 6);
  for (gsize i = 0; i < sw_n_templates; i++)
    {
      g_autoptr (SwSketch) sketch = sw_template_new_sketch (&sw_templates[i], &error);

      g_assert_no_error (error);
      g_assert_true (sw_sketch_validate (sketch, &error));
      g_assert_no_error (error);
      g_assert_cmpstr (sketch->title, ==, "");
      g_assert_cmpstr (sketch->notes, ==, "");
      g_assert_true (sw_template_find (sw_templates[i].id) == &sw_templates[i]);
    }
  g_assert_null (sw_template_find ("nothing"));
}

/* What is poured into an empty pan has time and heat to strike, on either face, and the set stays last. */
static void
test_empty_pan_sets_pours (void)
{
  static const SwStepKind wanted[] = { SW_STEP_BAND, SW_STEP_REST, SW_STEP_FLIP, SW_STEP_BAND, SW_STEP_SET };
  g_autoptr (SwSketch) sketch = sw_template_new_sketch (sw_template_find ("empty"), NULL);

  for (int second = 0; second <= 1; second++)
    {
      const SwPourSlot slot = sw_pour_slot (sketch, second == 1);

      if (slot.flip)
        g_ptr_array_insert (sketch->steps, slot.index, sw_step_new (sw_sketch_fresh_id (sketch), SW_STEP_FLIP));
      g_ptr_array_insert (sketch->steps, slot.index + slot.flip, sw_step_new (sw_sketch_fresh_id (sketch), SW_STEP_BAND));
    }
  g_assert_cmpuint (sketch->steps->len, ==, G_N_ELEMENTS (wanted));
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      g_assert_cmpint (step->kind, ==, wanted[i]);
      g_assert_null (sw_step_remark (sketch, step));
    }
}

/* The last of the pours that nothing strikes says so; a rest that lasts no time is none, and what is no pour needs no heat. */
static void
test_step_remark (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  const SwStepKind kinds[] = { SW_STEP_BAND, SW_STEP_SET, SW_STEP_SPLOTCH, SW_STEP_SPECKLE, SW_STEP_FLIP, SW_STEP_REST };
  const gboolean cold[] = { FALSE, FALSE, FALSE, TRUE, FALSE, FALSE };

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    g_ptr_array_add (sketch->steps, sw_step_new (i + 1, kinds[i]));
  g_assert_null (sw_step_remark (sketch, sketch->steps->pdata[3]));
  ((SwStep *) sketch->steps->pdata[5])->minutes = 0;
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autofree char *remark = sw_step_remark (sketch, sketch->steps->pdata[i]);

      g_assert_cmpint (remark != NULL, ==, cold[i]);
    }
}

/* Whatever the system says, the sentence names the file; a cancelled deed is no error to speak of. */
static void
test_file_words (void)
{
  g_autoptr (GFile) file = g_file_new_for_path ("/somewhere/tide 100% pool.colourway");

  for (SwFileDeed deed = SW_FILE_DEED_READ; deed <= SW_FILE_DEED_WRITE; deed++)
    for (int code = G_IO_ERROR_FAILED; code <= G_IO_ERROR_NO_SUCH_DEVICE; code++)
      {
        GError *error = g_error_new_literal (G_IO_ERROR, code, "system talk");

        sw_file_error_in_words (&error, deed, file);
        if (code == G_IO_ERROR_CANCELLED)
          g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
        else
          {
            g_assert_true (error->domain == SW_DOCUMENT_ERROR);
            g_assert_nonnull (strstr (error->message, "“tide 100% pool.colourway”"));
          }
        g_error_free (error);
      }
}

/* A place in the file's words becomes the thing's name; a sentence's own colon is left alone. */
static void
test_places (void)
{
  static const struct
  {
    const char *message, *words;
  } rows[] = {
    { "dyes[0].sample: Too vivid.", "“Teal”: Too vivid." },
    { "dyes[7].sample: Too vivid.", "Too vivid." },
    { "steps[0].width_cm: Too wide.", "Step 1 (pour 1, “Band of Teal”): Too wide." },
    { "yarn.mass_g: Too heavy.", "Too heavy." },
    { "Line 3: nothing there.", "Line 3: nothing there." },
    { "No place at all.", "No place at all." },
    { "", "" },
  };
  SwStep *step;
  g_autoptr (SwSketch) sketch = sketch_with_step (SW_STEP_BAND, &step);

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *words = sw_place_in_words (sketch, rows[i].message);

      g_assert_cmpstr (words, ==, rows[i].words);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/app/words/sentences", test_sentences);
  g_test_add_func ("/app/words/own-name", test_own_name);
  g_test_add_func ("/app/words/reading", test_reading);
  g_test_add_func ("/app/words/templates", test_templates);
  g_test_add_func ("/templates/empty-pan-sets-pours", test_empty_pan_sets_pours);
  g_test_add_func ("/steps/remark", test_step_remark);
  g_test_add_func ("/app/words/places", test_places);
  g_test_add_func ("/app/words/files", test_file_words);
  return g_test_run ();
}
