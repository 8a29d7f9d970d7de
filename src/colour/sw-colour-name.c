/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "colour/sw-colour-name.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/*
 * Our own scheme, no standard's: sixteen hues by CIELAB hue angle, each in six depths, and greys plain or
 * tinted. Every name is one whole phrase for translators, since adjectives do not stack alike in all languages.
 */
typedef enum
{
  DARK,
  DEEP,
  FULL,
  LIGHT,
  PALE,
  DUSTY,
  N_DEPTHS
} Depth;

typedef struct
{
  double to_degrees;     /* up to this hue angle, from that of the row before */
  double full_lightness; /* about that of a vivid colour of this hue: a full yellow is light, a full blue is not */
  double full_chroma;    /* likewise */
  const char *names[N_DEPTHS];
} Hue;

static const Hue hues[] = {
  /* Translators: names of yarn colours, six of each hue: dark, deep, full, light, pale, dull. Use the names a dyer would, they need not be literal. */
  { 20, 62, 66, { NC_ ("colour name", "dark wine red"), NC_ ("colour name", "deep rose"), NC_ ("colour name", "rose pink"), NC_ ("colour name", "light pink"), NC_ ("colour name", "pale pink"), NC_ ("colour name", "dusty rose") } },
  { 41, 52, 100, { NC_ ("colour name", "dark red"), NC_ ("colour name", "deep red"), NC_ ("colour name", "red"), NC_ ("colour name", "salmon pink"), NC_ ("colour name", "pale salmon pink"), NC_ ("colour name", "dusty red") } },
  { 50, 62, 80, { NC_ ("colour name", "dark rust brown"), NC_ ("colour name", "rust"), NC_ ("colour name", "orange-red"), NC_ ("colour name", "peach"), NC_ ("colour name", "pale peach"), NC_ ("colour name", "dusty peach") } },
  { 76, 70, 68, { NC_ ("colour name", "dark brown"), NC_ ("colour name", "brown"), NC_ ("colour name", "orange"), NC_ ("colour name", "apricot"), NC_ ("colour name", "pale apricot"), NC_ ("colour name", "tan") } },
  { 92, 80, 82, { NC_ ("colour name", "dark ochre"), NC_ ("colour name", "ochre"), NC_ ("colour name", "golden yellow"), NC_ ("colour name", "light golden yellow"), NC_ ("colour name", "pale gold"), NC_ ("colour name", "sand") } },
  { 110, 90, 86, { NC_ ("colour name", "dark olive"), NC_ ("colour name", "olive"), NC_ ("colour name", "yellow"), NC_ ("colour name", "light yellow"), NC_ ("colour name", "pale yellow"), NC_ ("colour name", "straw yellow") } },
  { 126, 82, 80, { NC_ ("colour name", "dark moss green"), NC_ ("colour name", "moss green"), NC_ ("colour name", "yellow-green"), NC_ ("colour name", "light yellow-green"), NC_ ("colour name", "pale yellow-green"), NC_ ("colour name", "dusty moss green") } },
  { 155, 62, 78, { NC_ ("colour name", "dark green"), NC_ ("colour name", "deep green"), NC_ ("colour name", "green"), NC_ ("colour name", "light green"), NC_ ("colour name", "pale green"), NC_ ("colour name", "dusty green") } },
  { 180, 66, 56, { NC_ ("colour name", "dark sea green"), NC_ ("colour name", "deep sea green"), NC_ ("colour name", "sea green"), NC_ ("colour name", "light sea green"), NC_ ("colour name", "pale sea green"), NC_ ("colour name", "dusty sea green") } },
  { 220, 66, 42, { NC_ ("colour name", "dark teal"), NC_ ("colour name", "teal"), NC_ ("colour name", "turquoise"), NC_ ("colour name", "light turquoise"), NC_ ("colour name", "pale turquoise"), NC_ ("colour name", "dusty teal") } },
  { 255, 62, 42, { NC_ ("colour name", "dark petrol blue"), NC_ ("colour name", "petrol blue"), NC_ ("colour name", "sky blue"), NC_ ("colour name", "light sky blue"), NC_ ("colour name", "pale sky blue"), NC_ ("colour name", "dusty sky blue") } },
  { 288, 50, 50, { NC_ ("colour name", "dark blue"), NC_ ("colour name", "deep blue"), NC_ ("colour name", "blue"), NC_ ("colour name", "light blue"), NC_ ("colour name", "pale blue"), NC_ ("colour name", "dusty blue") } },
  { 308, 43, 80, { NC_ ("colour name", "midnight blue"), NC_ ("colour name", "deep royal blue"), NC_ ("colour name", "royal blue"), NC_ ("colour name", "light violet-blue"), NC_ ("colour name", "pale lavender blue"), NC_ ("colour name", "dusty violet-blue") } },
  { 322, 46, 80, { NC_ ("colour name", "dark purple"), NC_ ("colour name", "deep purple"), NC_ ("colour name", "purple"), NC_ ("colour name", "light purple"), NC_ ("colour name", "pale lilac"), NC_ ("colour name", "dusty purple") } },
  { 346, 54, 76, { NC_ ("colour name", "dark plum"), NC_ ("colour name", "plum"), NC_ ("colour name", "magenta"), NC_ ("colour name", "orchid pink"), NC_ ("colour name", "pale orchid pink"), NC_ ("colour name", "dusty plum") } },
  { 353, 54, 72, { NC_ ("colour name", "dark raspberry"), NC_ ("colour name", "raspberry"), NC_ ("colour name", "fuchsia pink"), NC_ ("colour name", "light fuchsia pink"), NC_ ("colour name", "pale mauve pink"), NC_ ("colour name", "dusty mauve pink") } },
};

typedef struct
{
  double to_lightness;
  const char *plain, *warm, *green, *blue, *mauve;
} Grey;

static const Grey greys[] = {
  /* Translators: greys from dark to light, each plain, then tinged brown, green, blue and mauve. */
  { 12, NC_ ("colour name", "black"), NC_ ("colour name", "brown-black"), NC_ ("colour name", "green-black"), NC_ ("colour name", "blue-black"), NC_ ("colour name", "purple-black") },
  { 36, NC_ ("colour name", "dark grey"), NC_ ("colour name", "dark brown-grey"), NC_ ("colour name", "dark green-grey"), NC_ ("colour name", "dark blue-grey"), NC_ ("colour name", "dark mauve-grey") },
  { 62, NC_ ("colour name", "mid grey"), NC_ ("colour name", "mid brown-grey"), NC_ ("colour name", "mid green-grey"), NC_ ("colour name", "mid blue-grey"), NC_ ("colour name", "mid mauve-grey") },
  { 86, NC_ ("colour name", "light grey"), NC_ ("colour name", "beige"), NC_ ("colour name", "light green-grey"), NC_ ("colour name", "light blue-grey"), NC_ ("colour name", "light mauve-grey") },
  { 95, NC_ ("colour name", "off-white"), NC_ ("colour name", "cream"), NC_ ("colour name", "green-tinged white"), NC_ ("colour name", "blue-tinged white"), NC_ ("colour name", "pink-tinged white") },
  { G_MAXDOUBLE, NC_ ("colour name", "white"), NC_ ("colour name", "ivory"), NC_ ("colour name", "green-tinged white"), NC_ ("colour name", "blue-tinged white"), NC_ ("colour name", "pink-tinged white") },
};

/* Chroma below which a colour is a plain grey, a tinted grey. */
#define PLAIN_GREY_CHROMA 4.0
#define TINTED_GREY_CHROMA 9.5

/* Undyed wool has more of yellow than that, and is called cream all the same: from this lightness, up to this chroma, hue angles in degrees. */
#define CREAM_LIGHTNESS 84.0
#define CREAM_CHROMA 14.5
#define CREAM_FROM 60.0
#define CREAM_TO 110.0

/* Shares of the hue's full chroma below which a colour is dull, above which it is never light or pale, and not so soon deep. */
#define DULL_SHARE 0.4
#define VIVID_SHARE 0.85

static gboolean
is_warm (double degrees)
{
  return degrees >= 35 && degrees < 110;
}

static const char *
grey_name (SwLab lab, double chroma, double degrees)
{
  const gboolean plain = chroma < PLAIN_GREY_CHROMA;
  const Grey *grey = greys;

  while (lab.l > grey->to_lightness)
    grey++;
  if (!plain && is_warm (degrees) && lab.l > CREAM_LIGHTNESS && lab.l <= 86)
    grey++;
  if (plain)
    return grey->plain;
  if (degrees < 35 || degrees >= 300)
    return grey->mauve;
  if (is_warm (degrees))
    return grey->warm;
  if (degrees < 195)
    return grey->green;
  return grey->blue;
}

/* From -1, black, over 0, as light as the full colour, to 1, white. */
static double
lightness_from_full (double lightness, double full)
{
  return lightness < full ? lightness / full - 1 : (lightness - full) / (100 - full);
}

static Depth
depth_of (double lightness, double chroma, const Hue *hue)
{
  double place = lightness_from_full (lightness, hue->full_lightness);

  if (chroma < DULL_SHARE * hue->full_chroma)
    {
      if (place < -0.4 || lightness < 32)
        return DARK;
      return place < 0.25 ? DUSTY : PALE;
    }
  if (place < -0.55)
    return DARK;
  if (place < (chroma > VIVID_SHARE * hue->full_chroma ? -0.25 : -0.16))
    return DEEP;
  if (place < 0.25 || chroma > VIVID_SHARE * hue->full_chroma)
    return FULL;
  return place < 0.65 ? LIGHT : PALE;
}

static gboolean
is_grey (SwLab lab, double chroma, double degrees)
{
  if (chroma < TINTED_GREY_CHROMA)
    return TRUE;
  return lab.l > CREAM_LIGHTNESS && chroma < CREAM_CHROMA && degrees > CREAM_FROM && degrees < CREAM_TO;
}

char *
sw_colour_name (SwLab lab)
{
  double chroma = hypot (lab.a, lab.b);
  double degrees = atan2 (lab.b, lab.a) * 180 / G_PI;
  const Hue *hue = hues;
  const char *name;

  if (degrees < 0)
    degrees += 360;
  if (is_grey (lab, chroma, degrees))
    name = grey_name (lab, chroma, degrees);
  else
    {
      /* Past the last row the circle closes in the first. */
      while (hue < hues + G_N_ELEMENTS (hues) && degrees >= hue->to_degrees)
        hue++;
      if (hue == hues + G_N_ELEMENTS (hues))
        hue = hues;
      name = hue->names[depth_of (lab.l, chroma, hue)];
    }
  return g_strdup (g_dpgettext2 (GETTEXT_PACKAGE, "colour name", name));
}
