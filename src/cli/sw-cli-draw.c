/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-run.h"
#include "cli/sw-cli-stream.h"
#include "cli/sw-cli-value.h"

#include "files/sw-colourway.h"
#include "files/sw-picture.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

/* What was typed. */
typedef struct
{
  char *output, *format, *face, *size, *units, *stitch_px, *side, *item, *pan;
  char *width, *from, *to;
  char *turns, *start, *shape, *arrangement, *ground, *hanks, *label, *maker;
  gboolean dark, no_marks, wet, label_words, no_drawn_line;
} Typed;

static void
typed_clear (Typed *typed)
{
  g_free (typed->output);
  g_free (typed->format);
  g_free (typed->face);
  g_free (typed->size);
  g_free (typed->units);
  g_free (typed->stitch_px);
  g_free (typed->side);
  g_free (typed->item);
  g_free (typed->pan);
  g_free (typed->turns);
  g_free (typed->start);
  g_free (typed->shape);
  g_free (typed->arrangement);
  g_free (typed->ground);
  g_free (typed->hanks);
  g_free (typed->label);
  g_free (typed->maker);
  g_free (typed->width);
  g_free (typed->from);
  g_free (typed->to);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Typed, typed_clear)

/* What it means. */
typedef struct
{
  SwPicture picture;
  SwFormat format;
  gboolean folder;   /* the output is one */
  int width, height; /* 0: as suits the picture */
  SwLook look;
} Order;

static const char *const format_names[] = { [SW_FORMAT_PNG] = "png", [SW_FORMAT_SVG] = "svg", [SW_FORMAT_PDF] = "pdf", [SW_FORMAT_JPEG] = "jpeg", NULL };

static gboolean
read_picture (const char *word, SwPicture *picture, GError **error)
{
  const char *names[SW_N_PICTURES + 1] = { NULL };
  int choice = 0;

  for (int i = 0; i < SW_N_PICTURES; i++)
    names[i] = sw_picture_name ((SwPicture) i);
  /* Translators: what kind of picture; begins a sentence such as “Picture: “sock” is none of pan, strip, cloth, item, scan, skein, hank, listing” */
  if (!sw_cli_choice (_ ("Picture"), word, names, &choice, error))
    return FALSE;
  *picture = (SwPicture) choice;
  return TRUE;
}

/* Whether pictures go into a folder, each under the name of its colourway. One picture does only if the slash says so. */
static gboolean
is_folder (const char *output, gboolean several)
{
  return g_str_has_suffix (output, G_DIR_SEPARATOR_S) || (several && g_file_test (output, G_FILE_TEST_IS_DIR));
}

static gboolean
read_format (const Typed *typed, gboolean folder, SwFormat *format, GError **error)
{
  int choice = folder ? SW_FORMAT_PNG : sw_format_from_file_name (typed->output);

  if (!sw_cli_choice ("--format", typed->format, format_names, &choice, error))
    return FALSE;
  if (choice < 0)
    {
      g_autofree char *shown = g_filename_display_name (typed->output);

      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE,
                   /* Translators: %s is a file's name or “-” */
                   _ ("%s: Say which kind of picture by the ending .png, .jpg, .svg or .pdf, or by --format."), shown);
      return FALSE;
    }
  *format = (SwFormat) choice;
  return TRUE;
}

static gboolean
read_item (const char *word, SwItem *item, GError **error)
{
  const char *names[SW_N_ITEMS + 1] = { NULL };
  int choice = SW_ITEM_SOCK;

  for (int i = 0; i < SW_N_ITEMS; i++)
    names[i] = sw_item_name ((SwItem) i);
  if (!sw_cli_choice ("--item", word, names, &choice, error))
    return FALSE;
  *item = (SwItem) choice;
  return TRUE;
}

static gboolean
read_look (const Typed *typed, SwLook *look, GError **error)
{
  static const char *const faces[] = { "first", "second", NULL };
  static const char *const sides[] = { "knit", "purl", NULL };
  static const char *const units[] = { "cm", "in", NULL };
  const SwCliNumber stitch = { "--stitch-px", typed->stitch_px, 2, 120, &look->stitch_px, TRUE };
  static const char *const pans[] = { "none", "steel", "enamel", NULL };
  int face = 0, unit = 0, side = 0, pan = 0;

  *look = sw_look_plain;
  if (!sw_cli_choice ("--face", typed->face, faces, &face, error) || !sw_cli_choice ("--side", typed->side, sides, &side, error) || !sw_cli_choice ("--pan", typed->pan, pans, &pan, error) || !sw_cli_choice ("--units", typed->units, units, &unit, error) || !sw_cli_numbers (&stitch, 1, error))
    return FALSE;
  if (!read_item (typed->item, &look->item, error))
    return FALSE;
  look->from = SW_SCAN_FROM;
  look->to = SW_SCAN_TO;
  if (!sw_cli_widths (typed->from, typed->to, &look->from, &look->to, error))
    return FALSE;
  look->second_face = face == 1;
  look->purl_side = side == 1;
  look->inches = unit == 1;
  look->vessel = (SwVessel) pan;
  look->dark = typed->dark;
  look->marks = !typed->no_marks;
  return TRUE;
}

/* What would have no effect was meant otherwise. */
static gboolean
refuse_strays (const Typed *typed, SwPicture picture, GError **error)
{
  const struct
  {
    const char *option;
    gboolean typed;
  } rows[] = {
    { "--arrangement", typed->arrangement != NULL },
    { "--hanks", typed->hanks != NULL },
    { "--shape", typed->shape != NULL },
    { "--maker", typed->maker != NULL },
    { "--no-drawn-line", typed->no_drawn_line },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i].typed && picture != SW_PICTURE_LISTING && !(picture == SW_PICTURE_HANK && g_str_equal (rows[i].option, "--maker")))
      {
        /* Translators: 1 an option, 2 a kind of picture, neither to be translated */
        g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE, _ ("%1$s is for a listing, not for “%2$s”. Leave it out, or draw a listing."), rows[i].option, sw_picture_name (picture));
        return FALSE;
      }
  if (typed->shape != NULL && typed->size != NULL)
    {
      g_set_error_literal (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE, _ ("--shape and --size both say how wide and high the picture is. Give one of them."));
      return FALSE;
    }
  return TRUE;
}

static gboolean
read_order (const Typed *typed, char **arguments, Order *order, GError **error)
{
  if (!read_picture (arguments[0], &order->picture, error) || !refuse_strays (typed, order->picture, error))
    return FALSE;
  if (typed->output == NULL)
    return sw_cli_missing ("-o", error);
  order->folder = is_folder (typed->output, arguments[2] != NULL);
  if (arguments[2] != NULL && !order->folder)
    {
      g_autofree char *shown = g_filename_display_name (typed->output);

      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE,
                   /* Translators: %s is a file's name */
                   _ ("%s: Several pictures need a folder to go into. End its name with a slash, or make it first."), shown);
      return FALSE;
    }
  return read_format (typed, order->folder, &order->format, error) && read_look (typed, &order->look, error) && sw_cli_size (typed->size, &order->width, &order->height, error);
}

/* Puts what was typed in place of a listing's member. */
static gboolean
override (SwSketch *sketch, const char *option, const char *text, const char *name, GError **error)
{
  const SwMember *member = sw_record_find_member (SW_RECORD_LISTING, name);
  double number = 0;
  gint64 whole = 0;
  int choice = 0;
  gboolean set;
  SwValue value;

  if (text == NULL)
    return TRUE;
  if (member->kind == SW_KIND_CHOICE)
    {
      if (!sw_cli_choice (option, text, member->choices, &choice, error))
        return FALSE;
      value = sw_value_choice (choice);
    }
  else if (member->kind == SW_KIND_TEXT)
    value = sw_value_text (text);
  else if (member->kind == SW_KIND_WHOLE)
    {
      if (!sw_cli_whole (option, text, (gint64) member->min, (gint64) member->max, &whole, error))
        return FALSE;
      value = sw_value_whole (whole);
    }
  else
    {
      const SwCliNumber row = { option, text, member->min, member->max, &number, FALSE };

      if (!sw_cli_numbers (&row, 1, error))
        return FALSE;
      value = sw_value_number (number);
    }
  set = sw_member_set (member, &sketch->listing, &value, error);
  sw_value_clear (&value);
  return set;
}

static gboolean
override_all (const Typed *typed, SwSketch *sketch, GError **error)
{
  const struct
  {
    const char *option, *text, *member;
  } rows[] = {
    { "--turns", typed->turns, "twist_turns" },
    { "--start", typed->start, "twist_start_cm" },
    { "--shape", typed->shape, "shape" },
    { "--arrangement", typed->arrangement, "arrangement" },
    { "--ground", typed->ground, "ground" },
    { "--hanks", typed->hanks, "hanks" },
    { "--label", typed->label, "label" },
    { "--maker", typed->maker, "maker" },
  };

  sketch->listing.wet = sketch->listing.wet || typed->wet;
  sketch->listing.drawn_line = sketch->listing.drawn_line && !typed->no_drawn_line;
  sketch->listing.label_words = sketch->listing.label_words || typed->label_words;
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    if (!override (sketch, rows[i].option, rows[i].text, rows[i].member, error))
      return FALSE;
  return TRUE;
}

/* A picture can do without a maker's mark that is not there, once that is said. */
static GBytes *
render (const Order *order, const SwForecast *forecast, int width, int height, GError **error)
{
  g_autoptr (GError) fault = NULL;
  GBytes *bytes = sw_picture_render (order->picture, order->format, forecast, width, height, &order->look, &fault);

  if (g_error_matches (fault, SW_FILE_ERROR, SW_FILE_ERROR_MARK))
    {
      SwLook look = order->look;
      g_autofree char *line = g_strdup_printf ("%s: %s %s\n", g_get_prgname (), fault->message, _ ("The picture is drawn without it."));

      look.no_mark = TRUE;
      sw_cli_say_words (line);
      return sw_picture_render (order->picture, order->format, forecast, width, height, &look, error);
    }
  if (bytes == NULL)
    g_propagate_error (error, g_steal_pointer (&fault));
  return bytes;
}

/* What the picture says of itself is said here too: who draws many does not look at each. */
static void
say_remark (const Order *order, const SwForecast *forecast, const char *name)
{
  const char *remark = order->picture == SW_PICTURE_ITEM ? sw_draw_item_remark (forecast, &order->look) : NULL;

  if (remark != NULL)
    {
      g_autofree char *shown = sw_cli_display_name (name);
      g_autofree char *line = g_strdup_printf ("%s: %s: %s\n", g_get_prgname (), shown, remark);

      sw_cli_say_words (line);
    }
}

static GBytes *
draw (const Typed *typed, const Order *order, const char *name, const char *doing, GError **error)
{
  g_autoptr (SwSketch) sketch = sw_cli_read_sketch (name, error);
  g_autoptr (SwForecast) forecast = NULL;
  int width = order->width, height = order->height;
  GBytes *bytes;

  if (sketch == NULL || !override_all (typed, sketch, error) || !sw_cli_set_width (sketch, typed->width, error))
    return NULL;
  forecast = sw_cli_run_sketch (name, sketch, error);
  if (forecast == NULL)
    return NULL;
  if (width == 0)
    sw_picture_usual_size (order->picture, forecast, &width, &height);
  sw_cli_progress (doing);
  bytes = render (order, forecast, width, height, error);
  sw_cli_progress (NULL);
  if (bytes != NULL)
    say_remark (order, forecast, name);
  return bytes;
}

/* "rock-pool.colourway" gives "FOLDER/rock-pool-hank.png". */
static char *
name_in_folder (const Order *order, const char *folder, const char *name)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (name);
  g_autofree char *base = g_str_equal (name, "-") ? g_strdup ("colourway") : g_file_get_basename (file);
  g_autofree char *leaf = NULL;

  if (g_str_has_suffix (base, ".colourway"))
    base[strlen (base) - strlen (".colourway")] = '\0';
  leaf = g_strdup_printf ("%s-%s%s", base, sw_picture_name (order->picture), sw_format_ending (order->format));
  return g_build_filename (folder, leaf, NULL);
}

static gboolean
draw_one (const Typed *typed, const Order *order, const char *name, const char *doing, GError **error)
{
  g_autofree char *output = order->folder ? name_in_folder (order, typed->output, name) : g_strdup (typed->output);
  g_autoptr (GBytes) bytes = draw (typed, order, name, doing, error);

  return bytes != NULL && sw_cli_write (output, bytes, error);
}

/* Goes on after a fault, and says it. */
static void
draw_each (SwCall *call, const Typed *typed, const Order *order, char **names)
{
  const guint n = g_strv_length (names);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *shown = sw_cli_display_name (names[i]);
      /* Translators: progress; 1 of 2 pictures, 3 a file's name */
      g_autofree char *doing = g_strdup_printf (_ ("Drawing %1$u of %2$u: %3$s…"), i + 1, n, shown);
      g_autoptr (GError) fault = NULL;

      if (!draw_one (typed, order, names[i], doing, &fault))
        {
          SwExit exit_code = sw_cli_say (fault);

          call->exit_code = MAX (call->exit_code, exit_code);
        }
    }
}

static gboolean
make_folder (const Typed *typed, const Order *order, GError **error)
{
  if (!order->folder || g_mkdir_with_parents (typed->output, 0777) == 0)
    return TRUE;
  {
    g_autofree char *shown = g_filename_display_name (typed->output);

    g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_IO,
                 /* Translators: %s is a folder's name */
                 _ ("%s: The folder could not be made. Choose another place."), shown);
  }
  return FALSE;
}

gboolean
sw_cli_draw (SwCall *call, GError **error)
{
  g_auto (Typed) typed = { NULL };
  g_auto (GStrv) arguments = NULL;
  Order order = { 0 };
  const GOptionEntry entries[] = {
    { "output", 'o', G_OPTION_FLAG_NONE, G_OPTION_ARG_FILENAME, &typed.output, N_ ("Where the picture goes, or a folder; - is standard output"), "OUT" },
    { "format", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.format, N_ ("Kind of picture; else by the ending of OUT"), "png|jpeg|svg|pdf" },
    { "size", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.size, N_ ("Width and height in px, 1/96 in on paper"), "WxH" },
    { "face", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.face, N_ ("Pan, skein: the face that is up"), "first|second" },
    { "units", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.units, N_ ("Units of rulers and lengths"), "cm|in" },
    { "stitch-px", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.stitch_px, N_ ("Cloth: width of a stitch, 2 to 120 px; else the whole width is shown"), "N" },
    { "item", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.item, N_ ("Item: what is knitted; a sock unless told otherwise"), "sock|hat|mitten|scarf|shawl" },
    { "side", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.side, N_ ("Cloth: the side that is seen"), "knit|purl" },
    SW_CLI_WIDTH_ENTRY (&typed.width),
    { "from", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.from, N_ ("Scan: narrowest width in stitches, from 3; 10 if not given"), "A" },
    { "to", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.to, N_ ("Scan: widest width in stitches, up to 600; 600 if not given"), "B" },
    { "pan", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.pan, N_ ("Skein: what it lies in"), "none|steel|enamel" },
    { "wet", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, &typed.wet, N_ ("Skein: wet, as it comes out of the bath"), NULL },
    { "turns", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.turns, N_ ("Hank: turns put into the loop, in place of the colourway's own"), "N" },
    { "start", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.start, N_ ("Hank: where along the loop its end is"), "CM" },
    { "arrangement", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.arrangement, N_ ("Listing: what is in the picture"), "NAME" },
    { "hanks", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.hanks, N_ ("Listing: how many hanks lie side by side"), "N" },
    { "label", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.label, N_ ("Hank, listing: the paper band round a hank"), "none|white|grey" },
    { "label-words", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, &typed.label_words, N_ ("Hank, listing: caption, maker's name and mark are printed on the band"), NULL },
    { "maker", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.maker, N_ ("Hank, listing: the maker's name"), "NAME" },
    { "no-drawn-line", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, &typed.no_drawn_line, N_ ("Listing: without the line that it is drawn"), NULL },
    { "shape", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.shape, N_ ("Listing: the picture's shape, instead of --size"), "square|4:5|wide" },
    { "ground", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.ground, N_ ("Skein, hank, listing: what they lie on"), "white|pale|grey|charcoal" },
    { "no-marks", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, &typed.no_marks, N_ ("Pan: without the numbered outlines of the pours"), NULL },
    { "dark", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, &typed.dark, N_ ("On a dark ground"), NULL },
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 2, G_MAXUINT, &arguments, error) || !read_order (&typed, arguments, &order, error) || !make_folder (&typed, &order, error))
    return FALSE;
  if (arguments[2] == NULL)
    return draw_one (&typed, &order, arguments[1], _ ("Drawing…"), error);
  draw_each (call, &typed, &order, arguments + 1);
  return TRUE;
}
