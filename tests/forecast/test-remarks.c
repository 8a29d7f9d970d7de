/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What is allowed and yet worth a second look is told, each by its place; a plain sketch gets none. */

#include "config.h"

#include "forecast/sw-remarks.h"
#include "sw-test-sketch.h"

static void
misspell (SwSketch *sketch)
{
  SwStep *step = sketch->steps->pdata[0];

  sw_extras_add (&step->extras, "widht_cm", "18");
}

static void
add_note (SwSketch *sketch)
{
  sw_extras_add (&sketch->yarn.extras, "shop_shelf", "\"B4\"");
}

static void
pour_beside (SwSketch *sketch)
{
  ((SwStep *) sketch->steps->pdata[1])->x_cm = 380.0;
}

static void
pour_too_much (SwSketch *sketch)
{
  ((SwStep *) sketch->steps->pdata[0])->amount_ml = 3000.0;
}

static void
take_small_pan (SwSketch *sketch)
{
  sketch->lay.pan_length_cm = 53.0;
}

static void
pour_floods (SwSketch *sketch)
{
  sketch->bath.water_ml = 40000.0;
}

static void
misspell_sheet (SwSketch *sketch)
{
  sw_extras_add (&sketch->sheet.extras, "skiens", "4");
}

static void
leave_alone (SwSketch *sketch)
{
}

static const struct
{
  const char *name;
  void (*edit) (SwSketch *sketch);
  guint n;
  const char *pattern; /* what the only remark looks like */
} rows[] = {
  { "nothing", leave_alone, 0, NULL },
  { "misspelt", misspell, 1, "steps?0?.widht_cm*width_cm*" },
  { "a-note", add_note, 1, "yarn.shop_shelf is kept, but Strandwise does not use it." },
  { "beside-the-skein", pour_beside, 1, "steps?1?*beside the skein*0 to 60 cm*8 cm*" },
  { "too-much-dye", pour_too_much, 1, "steps: 30.4 g of dye on 100 g*30.4 %*" },
  { "misspelt-sheet", misspell_sheet, 1, "sheet.skiens*skeins*" },
  { "too-much-water", pour_floods, 1, "bath: All the liquor is 40.13 L*" },
  { "small-pan", take_small_pan, 1, "lay: The skein lies 60 cm by 8 cm, and the pan is 53 cm by *" },
};

static void
test_row (gconstpointer data)
{
  gsize row = GPOINTER_TO_SIZE (data);
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (GPtrArray) remarks = NULL;

  rows[row].edit (sketch);
  remarks = sw_sketch_remarks (sketch);
  for (guint i = 0; i < remarks->len; i++)
    g_test_message ("%s", (const char *) remarks->pdata[i]);
  g_assert_cmpuint (remarks->len, ==, rows[row].n);
  if (rows[row].n == 1)
    g_assert_true (g_pattern_match_simple (rows[row].pattern, remarks->pdata[0]));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize row = 0; row < G_N_ELEMENTS (rows); row++)
    {
      g_autofree char *path = g_strconcat ("/remarks/", rows[row].name, NULL);

      g_test_add_data_func (path, GSIZE_TO_POINTER (row), test_row);
    }
  return g_test_run ();
}
