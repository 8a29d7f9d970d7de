/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-colour-name.h"

#include <math.h>
#include <string.h>

/* Named colours of CSS Color Module Level 4, and a word that a plain name of theirs should hold. The words are our reading of the names. */
static const struct
{
  const char *css;
  guint32 code;
  const char *word;
} named[] = {
  { "black", 0x000000, "black" },
  { "dimgrey", 0x696969, "mid grey" },
  { "lightgrey", 0xd3d3d3, "light grey" },
  { "white", 0xffffff, "white" },
  { "snow", 0xfffafa, "white" },
  { "linen", 0xfaf0e6, "ivory" },
  { "maroon", 0x800000, "deep red" },
  { "red", 0xff0000, "red" },
  { "crimson", 0xdc143c, "red" },
  { "salmon", 0xfa8072, "salmon" },
  { "pink", 0xffc0cb, "pink" },
  { "hotpink", 0xff69b4, "pink" },
  { "orange", 0xffa500, "orange" },
  { "darkorange", 0xff8c00, "orange" },
  { "saddlebrown", 0x8b4513, "brown" },
  { "sienna", 0xa0522d, "brown" },
  { "tan", 0xd2b48c, "sand" },
  { "gold", 0xffd700, "gold" },
  { "yellow", 0xffff00, "yellow" },
  { "lightyellow", 0xffffe0, "pale yellow" },
  { "olive", 0x808000, "olive" },
  { "olivedrab", 0x6b8e23, "moss green" },
  { "yellowgreen", 0x9acd32, "yellow-green" },
  { "lime", 0x00ff00, "green" },
  { "darkgreen", 0x006400, "deep green" },
  { "palegreen", 0x98fb98, "pale green" },
  { "seagreen", 0x2e8b57, "green" },
  { "darkslategrey", 0x2f4f4f, "dark teal" },
  { "teal", 0x008080, "teal" },
  { "turquoise", 0x40e0d0, "turquoise" },
  { "paleturquoise", 0xafeeee, "pale turquoise" },
  { "skyblue", 0x87ceeb, "sky blue" },
  { "lightskyblue", 0x87cefa, "light sky blue" },
  { "steelblue", 0x4682b4, "blue" },
  { "royalblue", 0x4169e1, "royal blue" },
  { "blue", 0x0000ff, "blue" },
  { "navy", 0x000080, "midnight blue" },
  { "lavender", 0xe6e6fa, "lavender" },
  { "indigo", 0x4b0082, "purple" },
  { "blueviolet", 0x8a2be2, "purple" },
  { "magenta", 0xff00ff, "magenta" },
  { "plum", 0xdda0dd, "orchid" },
};

/* Yarns that dyers have other words for than a wheel of hues has; the words are common practice, no source. */
static const struct
{
  guint32 code;
  const char *name;
} yarns[] = {
  { 0xae4624, "rust" }, { 0xe7dcca, "cream" }, { 0xf4ba99, "apricot" }, { 0xd9d6c7, "cream" }, { 0x27295a, "midnight blue" }, { 0xa54b7b, "raspberry" },
};

static SwLab
lab_of_code (guint32 code)
{
  return sw_lab_from_xyz (sw_xyz_from_srgb ((SwSrgb){ (code >> 16) / 255.0, (code >> 8 & 0xff) / 255.0, (code & 0xff) / 255.0 }));
}

static void
test_named (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (named); i++)
    {
      g_autofree char *name = sw_colour_name (lab_of_code (named[i].code));

      if (strstr (name, named[i].word) == NULL)
        g_test_fail_printf ("%s is called '%s', without '%s'", named[i].css, name, named[i].word);
    }
}

static void
test_yarns (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (yarns); i++)
    {
      g_autofree char *name = sw_colour_name (lab_of_code (yarns[i].code));

      g_assert_cmpstr (name, ==, yarns[i].name);
    }
}

/* Over all of sRGB names are many, and none is all over the place: a name's colours are alike. */
static void
test_spread (void)
{
  g_autoptr (GHashTable) first_of_name = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  double widest = 0;

  for (guint32 r = 0; r <= 255; r += 5)
    for (guint32 g = 0; g <= 255; g += 5)
      for (guint32 b = 0; b <= 255; b += 5)
        {
          SwLab lab = lab_of_code (r << 16 | g << 8 | b);
          char *name = sw_colour_name (lab);
          SwLab *first = g_hash_table_lookup (first_of_name, name);

          g_assert_cmpstr (name, !=, "");
          if (first == NULL)
            g_hash_table_insert (first_of_name, name, g_memdup2 (&lab, sizeof lab));
          else
            {
              widest = MAX (widest, sw_ciede2000 (*first, lab));
              g_free (name);
            }
        }
  g_test_message ("%u names, the widest has colours %.1f CIEDE2000 apart", g_hash_table_size (first_of_name), widest);
  g_assert_cmpuint (g_hash_table_size (first_of_name), >, 100);
  g_assert_cmpfloat (widest, <, 40);
}

static void
test_nonsense (void)
{
  static const SwLab nonsense[] = { { NAN, 0, 0 }, { 50, NAN, 0 }, { 50, 0, NAN }, { INFINITY, -INFINITY, INFINITY }, { -5, 0, 0 }, { 500, 300, 300 } };

  for (guint i = 0; i < G_N_ELEMENTS (nonsense); i++)
    {
      g_autofree char *name = sw_colour_name (nonsense[i]);

      g_assert_cmpuint (strlen (name), >, 2);
    }
}

/* Two dusty violet-blues: the paler is called something paler, and the first keeps its name. */
static void
test_together (void)
{
  static const SwLab blues[] = { { 46, 14, -28 }, { 55, 11, -22 }, { 55, 11, -22 } };
  g_auto (GStrv) names = sw_colour_names (blues, 3);
  g_autofree char *first = sw_colour_name (blues[0]), *second = sw_colour_name (blues[1]);

  g_assert_cmpuint (g_strv_length (names), ==, 3);
  g_assert_cmpstr (first, ==, "dusty violet-blue");
  g_assert_cmpstr (second, ==, first);
  g_assert_cmpstr (names[0], ==, first);
  g_assert_cmpstr (names[1], ==, "pale lavender blue");
  g_assert_cmpstr (names[2], !=, names[0]);
}

/* No wool is as vivid as a screen. */
static guint32
dyed_code (void)
{
  guint32 code = 0;

  for (int k = 0; k < 3; k++)
    code = code << 8 | (guint32) g_test_rand_int_range (40, 230);
  return code;
}

/* Six colours that differ clearly never share a name, and none gets the name of a colour far off. */
static void
test_apart (void)
{
  for (int round = 0; round < 300; round++)
    {
      SwLab labs[6];
      g_auto (GStrv) names = NULL;

      for (int i = 0; i < 6; i++)
        {
          gboolean near;

          do
            {
              labs[i] = lab_of_code (dyed_code ());
              near = FALSE;
              for (int j = 0; j < i; j++)
                near = near || sw_ciede2000 (labs[i], labs[j]) < 8;
            }
          while (near);
        }
      names = sw_colour_names (labs, 6);
      for (int i = 0; i < 6; i++)
        for (int j = 0; j < i; j++)
          g_assert_cmpstr (names[i], !=, names[j]);
    }
}

/* What has a name keeps it, and no other gets it, not even one of just that colour. */
static void
test_given (void)
{
  static const SwLab greens[] = { { 60, -40, 20 }, { 60, -40, 20 } };
  g_autofree char *natural = sw_colour_name (greens[0]);
  const char *given[] = { NULL, natural };
  g_auto (GStrv) names = sw_colour_names_with (greens, 2, given);

  g_assert_cmpstr (names[1], ==, natural);
  g_assert_cmpstr (names[0], !=, natural);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/colour/colour-name/named", test_named);
  g_test_add_func ("/colour/colour-name/yarns", test_yarns);
  g_test_add_func ("/colour/colour-name/spread", test_spread);
  g_test_add_func ("/colour/colour-name/nonsense", test_nonsense);
  g_test_add_func ("/colour/colour-name/together", test_together);
  g_test_add_func ("/colour/colour-name/apart", test_apart);
  g_test_add_func ("/colour/colour-name/given", test_given);
  return g_test_run ();
}
