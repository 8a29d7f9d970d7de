/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-pan-words.h"
#include "sw-app-test.h"

#include "app/desk/sw-pan-align.h"

/* What the canvas says, in its own language: words that name what is there. */

static const SwSketch *
sketch_of (SwDocument *document)
{
  return sw_document_get_sketch (document);
}

/* Every deed on every kind of step has a name, and several steps have another than one. */
static void
test_deeds (void)
{
  for (SwDeed deed = 0; deed < SW_N_DEEDS; deed++)
    for (SwStepKind kind = 0; kind < SW_N_STEP_KINDS; kind++)
      {
        const char *one = sw_deed_name (deed, kind, 1), *several = sw_deed_name (deed, kind, 3);

        g_assert_nonnull (one);
        g_assert_cmpstr (one, !=, "");
        g_assert_cmpstr (one, !=, several);
      }
  g_assert_cmpstr (sw_deed_name (SW_DEED_MOVE, SW_STEP_BAND, 1), ==, "Move Band");
  g_assert_cmpstr (sw_deed_name (SW_DEED_TURN, SW_STEP_BAND, 1), ==, "Slant Band");
  g_assert_cmpstr (sw_deed_name (SW_DEED_DELETE, SW_STEP_REST, 1), ==, "Delete Step");
}

/* Each handle that a pour has says something of its own; opposite ones say the same. */
static void
test_tips (void)
{
  static const SwPourPlace places[] = {
    { SW_STEP_BAND, 20, 4, 8, 0, 0 },
    { SW_STEP_BAND, 20, 4, 8, 3, 0 },
    { SW_STEP_SPLOTCH, 20, 4, 8, 3, 0 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    {
      g_autoptr (GHashTable) said = g_hash_table_new (g_str_hash, g_str_equal);
      const guint wanted = places[i].kind == SW_STEP_BAND ? 4 : 5;

      for (SwHandle handle = SW_HANDLE_BODY; handle < SW_N_HANDLES; handle++)
        if (handle == SW_HANDLE_BODY || sw_handle_applies (handle, places[i].kind))
          g_hash_table_add (said, (gpointer) sw_handle_tip (handle, &places[i]));
      g_assert_cmpuint (g_hash_table_size (said), ==, wanted);
    }
}

static void
test_measure (void)
{
  static const struct
  {
    SwHandle held;
    SwPourPlace place;
    SwSystem system;
    const char *words;
  } rows[] = {
    { SW_HANDLE_BODY, { SW_STEP_BAND, 42, 4, 8, 0, 0 }, SW_SYSTEM_METRIC, "at 42\u00a0cm" },
    { SW_HANDLE_BODY, { SW_STEP_SPLOTCH, 42, 4, 8, 3, 0 }, SW_SYSTEM_METRIC, "at 42\u00a0cm, 4\u00a0cm across" },
    { SW_HANDLE_START, { SW_STEP_SPLOTCH, 42, 4, 12.5, 3, 0 }, SW_SYSTEM_METRIC, "12.5\u00a0cm wide" },
    { SW_HANDLE_START, { SW_STEP_BAND, 42, 4, 25.4, 3, 0 }, SW_SYSTEM_US, "10\u00a0in wide" },
    { SW_HANDLE_FAR, { SW_STEP_BAND, 42, 4, 8, 3, 0 }, SW_SYSTEM_METRIC, "3\u00a0cm across" },
    { SW_HANDLE_FAR, { SW_STEP_BAND, 42, 4, 8, 0, 0 }, SW_SYSTEM_METRIC, "right across" },
    { SW_HANDLE_END_FAR, { SW_STEP_SPLOTCH, 42, 4, 8, 3, 20 }, SW_SYSTEM_METRIC, "8\u00a0cm × 3\u00a0cm" },
    { SW_HANDLE_TURN, { SW_STEP_SPLOTCH, 42, 4, 8, 3, 20 }, SW_SYSTEM_METRIC, "20°" },
    { SW_HANDLE_NONE, { SW_STEP_BAND, 42, 4, 8, 0, 0 }, SW_SYSTEM_METRIC, "8\u00a0cm wide" },
    { SW_HANDLE_NONE, { SW_STEP_BAND, 42, 4, 8, 0, -15 }, SW_SYSTEM_METRIC, "-15°" },
    { SW_HANDLE_NONE, { SW_STEP_SPECKLE, 42, 4, 8, 6, 0 }, SW_SYSTEM_METRIC, "8\u00a0cm × 6\u00a0cm" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *words = sw_pan_measure (rows[i].held, &rows[i].place, rows[i].system);

      g_assert_cmpstr (words, ==, rows[i].words);
    }
}

/* The text says what is there, which face is up and what is selected: it stands for the picture. */
static void
test_description (void)
{
  guint ids[5];
  SwDocument *document = sw_test_document (ids);
  g_autofree char *nothing = sw_pan_description (sketch_of (document), FALSE, NULL, 0, SW_SYSTEM_METRIC);
  g_autofree char *band = sw_pan_description (sketch_of (document), TRUE, &ids[2], 1, SW_SYSTEM_METRIC);

  g_assert_cmpstr (nothing, ==, "The skein with 2 pours. The first face is up. Nothing is selected.");
  g_assert_true (g_str_has_prefix (band, "The skein with 2 pours. The second face is up. 1 selected: "));
  g_assert_nonnull (strstr (band, "wide"));
  sw_test_finalize (document);
}

static void
test_pour_tip (void)
{
  guint ids[5];
  SwDocument *document = sw_test_document (ids);
  const SwStep *splotch = sw_sketch_find_step (sketch_of (document), ids[4]);
  g_autofree char *here = sw_pan_pour_tip (sketch_of (document), splotch, FALSE, SW_SYSTEM_METRIC);
  g_autofree char *there = sw_pan_pour_tip (sketch_of (document), splotch, TRUE, SW_SYSTEM_METRIC);

  g_assert_true (g_str_has_prefix (here, "2. "));
  g_assert_nonnull (strstr (here, "Drag to move"));
  g_assert_null (strstr (there, "Drag"));
  g_assert_nonnull (strstr (there, "other face"));
  sw_test_finalize (document);
}

/* An empty pan says what comes first; one with pours says nothing. */
static void
test_hint (void)
{
  guint ids[5];
  SwDocument *document = sw_test_document (ids);
  g_autoptr (SwSketch) empty = sw_sketch_new ();
  const char *first = sw_pan_hint (empty, FALSE), *second, *third;

  g_ptr_array_add (empty->dyes, sw_dye_new (1));
  second = sw_pan_hint (empty, FALSE);
  third = sw_pan_hint (empty, TRUE);
  g_assert_nonnull (strstr (first, "dye pot"));
  g_assert_cmpstr (second, !=, first);
  g_assert_cmpstr (third, !=, second);
  g_assert_null (sw_pan_hint (sketch_of (document), FALSE));
  sw_test_finalize (document);
}

/* All ways to line up are in the menu, each once. */
static void
test_align_menu (void)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  guint seen[SW_N_ALIGNS] = { 0 };

  sw_pan_fill_align_menu (menu);
  for (int i = 0; i < g_menu_model_get_n_items (G_MENU_MODEL (menu)); i++)
    {
      g_autoptr (GMenuModel) section = g_menu_model_get_item_link (G_MENU_MODEL (menu), i, G_MENU_LINK_SECTION);

      for (int k = 0; k < g_menu_model_get_n_items (section); k++)
        {
          g_autoptr (GVariant) target = g_menu_model_get_item_attribute_value (section, k, G_MENU_ATTRIBUTE_TARGET, G_VARIANT_TYPE_STRING);
          const SwAlign align = sw_align_from_name (g_variant_get_string (target, NULL));

          g_assert_cmpint (align, <, SW_N_ALIGNS);
          seen[align]++;
        }
    }
  for (SwAlign align = 0; align < SW_N_ALIGNS; align++)
    g_assert_cmpuint (seen[align], ==, 1);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pan-words/deeds", test_deeds);
  g_test_add_func ("/pan-words/tips", test_tips);
  g_test_add_func ("/pan-words/measure", test_measure);
  g_test_add_func ("/pan-words/description", test_description);
  g_test_add_func ("/pan-words/pour-tip", test_pour_tip);
  g_test_add_func ("/pan-words/hint", test_hint);
  g_test_add_func ("/pan-words/align-menu", test_align_menu);
  return g_test_run ();
}
