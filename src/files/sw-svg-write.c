/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-svg.h"

#include "colour/sw-sample-forms.h"
#include "draw/sw-pan-marks.h"
#include "draw/sw-pour-place.h"
#include "files/sw-json-print.h"
#include "files/sw-svg-private.h"
#include "sheet/sw-measure.h"
#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>
#include <libxml/xmlwriter.h>
#include <math.h>

#define AROUND_MM 10.0
#define BADGE_MM 4.0
#define LAYER_NAMESPACE "http://www.inkscape.org/namespaces/inkscape" /* by which editors know a layer's name */

typedef struct
{
  xmlTextWriter *xml;
  const SwSketch *sketch;
  const SwSheet *sheet;
  SwMeasureSystem system;
  double left, bottom; /* mm: the lay's lower left corner */
  double width, height;
} Writer;

/* Text of the sketch, without the control characters that XML cannot hold. */
static char *
printable (const char *text)
{
  char *copy = g_strdup (text);

  for (char *c = copy; *c != '\0'; c++)
    if ((guchar) *c < 0x20 && *c != '\n' && *c != '\t')
      *c = ' ';
  return copy;
}

static void
begin (const Writer *w, const char *name)
{
  xmlTextWriterStartElement (w->xml, (const xmlChar *) name);
}

static void
end (const Writer *w)
{
  xmlTextWriterEndElement (w->xml);
}

static void
put (const Writer *w, const char *name, const char *value)
{
  g_autofree char *text = printable (value);

  xmlTextWriterWriteAttribute (w->xml, (const xmlChar *) name, (const xmlChar *) text);
}

G_GNUC_PRINTF (3, 4)
static void
put_printf (const Writer *w, const char *name, const char *format, ...)
{
  g_autofree char *value = NULL;
  va_list arguments;

  va_start (arguments, format);
  value = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  put (w, name, value);
}

static void
put_text (const Writer *w, const char *element, const char *text)
{
  g_autofree char *clean = printable (text);

  begin (w, element);
  xmlTextWriterWriteString (w->xml, (const xmlChar *) clean);
  end (w);
}

/* To a ten thousandth of a millimetre, without zeros at the end. */
static char *
in_mm (double mm)
{
  return sw_json_number (round (mm * 1e4) / 1e4);
}

static void
put_mm (const Writer *w, const char *name, double mm)
{
  g_autofree char *text = in_mm (mm);

  put (w, name, text);
}

static double
across_page (const Writer *w, double x_cm)
{
  return w->left + 10 * x_cm;
}

static double
down_page (const Writer *w, double y_cm)
{
  return w->bottom - 10 * y_cm;
}

static void
write_frame (const Writer *w, const char *id, const char *title, double width_cm, double height_cm)
{
  const double width = 10 * width_cm, height = 10 * height_cm;

  begin (w, "rect");
  put (w, "id", id);
  put_mm (w, "x", (w->width - width) / 2);
  put_mm (w, "y", (w->height - height) / 2);
  put_mm (w, "width", width);
  put_mm (w, "height", height);
  put_text (w, "title", title);
  end (w);
}

static void
write_frames (const Writer *w)
{
  const SwLaySettings *lay = &w->sketch->lay;

  begin (w, "g");
  put (w, "id", "frame");
  put (w, "inkscape:groupmode", "layer");
  put (w, "inkscape:label", _ ("Pan and lay"));
  put (w, "fill", "none");
  put (w, "stroke", "#555555");
  put (w, "stroke-width", "0.5");
  /* Translators: the layer of a drawing with the outlines of the pan and of the skeins laid in it */
  put_text (w, "title", _ ("Pan and lay"));
  write_frame (w, "pan", _ ("The pan"), lay->pan_length_cm, lay->pan_width_cm);
  write_frame (w, "lay", _ ("The skeins as laid"), sw_sketch_lay_length (w->sketch), sw_sketch_lay_width (w->sketch));
  end (w);
}

/* What an outline does not tell; the reader takes it from here. */
static void
write_members (const Writer *w, const SwStep *step)
{
  static const char *const drawn[] = { "name", "dye", "x_cm", "y_cm", "width_cm", "length_cm", NULL };
  const gboolean whole_band = step->kind == SW_STEP_BAND && step->length_cm <= 0;
  gsize n;
  const SwMember *members = sw_record_members (SW_RECORD_STEP, &n);

  for (gsize i = 0; i < n; i++)
    {
      const gboolean kept = whole_band && (g_str_equal (members[i].name, "y_cm") || g_str_equal (members[i].name, "length_cm"));
      g_autofree char *name = NULL;
      g_autofree char *text = NULL;
      SwValue value = { 0 };

      if (!sw_member_applies (&members[i], step->kind) || (g_strv_contains (drawn, members[i].name) && !kept))
        continue;
      sw_member_get (&members[i], step, &value);
      name = sw_svg_data_name (members[i].name);
      text = value.kind == SW_KIND_FLAG ? g_strdup (value.as.flag ? "true" : "false") : sw_json_number (value.as.number);
      put (w, name, text);
      sw_value_clear (&value);
    }
}

static const SwSheetPour *
sheet_pour (const Writer *w, guint step)
{
  for (gsize i = 0; w->sheet != NULL && i < w->sheet->n_pours; i++)
    if (w->sheet->pours[i].step == step)
      return &w->sheet->pours[i];
  return NULL;
}

static char *
describe (const Writer *w, const SwStep *step, const char *dye)
{
  const SwSheetPour *pour = sheet_pour (w, step->id);
  const double ml = pour != NULL ? pour->stock_ml.rounded : sw_schedule_pour_ml (w->sketch, step);
  const double grams = pour != NULL ? pour->dye_g.rounded : sw_schedule_pour_grams (w->sketch, step);
  g_autofree char *mass = sw_dye_text (grams);
  g_autofree char *volume = sw_volume_text (ml, w->system);

  if (step->kind == SW_STEP_SPECKLE && step->dry)
    /* Translators: amount and dye of a pour: "0.1 g of Soot, dry" */
    return g_strdup_printf (_ ("%s of %s, dry"), mass, dye);
  /* Translators: stock, dye, and the dye in that stock: "16 mL of Deep Water (0.16 g of dye)" */
  return g_strdup_printf (_ ("%s of %s (%s of dye)"), volume, dye, mass);
}

static void
write_words (const Writer *w, const SwStep *step, const char *dye)
{
  g_autofree char *name = sw_step_title (w->sketch, step);
  /* Translators: number and name of a pour, as a shape's title: "2. Canal" */
  g_autofree char *title = g_strdup_printf (_ ("%u. %s"), sw_pan_pour_number (w->sketch, step->id), name);
  g_autofree char *words = describe (w, step, dye);

  put_text (w, "title", title);
  put_text (w, "desc", words);
}

static void
write_band (const Writer *w, const SwStep *step)
{
  const double across = sw_sketch_lay_width (w->sketch), half = step->width_cm / 2;
  const double near = step->length_cm > 0 ? step->y_cm - step->length_cm / 2 : 0;
  const double far = step->length_cm > 0 ? step->y_cm + step->length_cm / 2 : across;
  const double corners[4][2] = { { -half, near }, { half, near }, { half, far }, { -half, far } };
  g_autoptr (GString) path = g_string_new ("M");

  for (int i = 0; i < 4; i++)
    {
      g_autofree char *x = in_mm (across_page (w, step->x_cm + corners[i][0] + sw_pan_band_shift (step, corners[i][1])));
      g_autofree char *y = in_mm (down_page (w, corners[i][1]));

      g_string_append_printf (path, " %s,%s", x, y);
    }
  g_string_append (path, " Z");
  begin (w, "path");
  put (w, "d", path->str);
}

static void
put_turn (const Writer *w, const SwStep *step)
{
  g_autofree char *angle = sw_json_number (-step->angle_deg);
  g_autofree char *x = in_mm (across_page (w, step->x_cm));
  g_autofree char *y = in_mm (down_page (w, step->y_cm));

  if (fabs (step->angle_deg) > 0)
    put_printf (w, "transform", "rotate(%s %s %s)", angle, x, y);
}

static void
write_splotch (const Writer *w, const SwStep *step)
{
  begin (w, "ellipse");
  put_mm (w, "cx", across_page (w, step->x_cm));
  put_mm (w, "cy", down_page (w, step->y_cm));
  put_mm (w, "rx", 5 * step->width_cm);
  put_mm (w, "ry", 5 * step->length_cm);
  put_turn (w, step);
}

static void
write_zone (const Writer *w, const SwStep *step)
{
  begin (w, "rect");
  put_mm (w, "x", across_page (w, step->x_cm - step->width_cm / 2));
  put_mm (w, "y", down_page (w, step->y_cm + step->length_cm / 2));
  put_mm (w, "width", 10 * step->width_cm);
  put_mm (w, "height", 10 * step->length_cm);
  put_turn (w, step);
  put (w, "stroke-dasharray", "1 1.5");
}

static void
write_pour (const Writer *w, const SwStep *step, const char *dye)
{
  static void (*const shapes[]) (const Writer *w, const SwStep *step) = {
    [SW_STEP_BAND] = write_band,
    [SW_STEP_SPLOTCH] = write_splotch,
    [SW_STEP_SPECKLE] = write_zone,
  };

  shapes[step->kind](w, step);
  put_printf (w, "id", "pour-%u", step->id);
  put (w, "data-kind", sw_step_kind_name (step->kind));
  put_printf (w, "data-number", "%u", sw_pan_pour_number (w->sketch, step->id));
  if (step->name[0] != '\0')
    put (w, "data-name", step->name);
  write_members (w, step);
  write_words (w, step, dye);
  end (w);
}

static void
write_dye (const Writer *w, const SwDye *dye, gboolean second)
{
  const GPtrArray *steps = w->sketch->steps;
  g_autofree char *colour = sw_sample_code (&dye->sample);

  begin (w, "g");
  put_printf (w, "id", "%s-dye-%u", second ? "second" : "first", dye->id);
  put (w, "inkscape:groupmode", "layer");
  put (w, "inkscape:label", sw_dye_title (dye));
  put_printf (w, "data-dye", "%u", dye->id);
  put (w, "fill", colour);
  put_text (w, "title", sw_dye_title (dye));
  for (guint i = 0; i < steps->len; i++)
    {
      const SwStep *step = g_ptr_array_index (steps, i);

      if (sw_step_is_pour (step) && step->dye == dye->id && sw_pan_pour_on_second (w->sketch, step->id) == second)
        write_pour (w, step, sw_dye_title (dye));
    }
  end (w);
}

static void
write_face (const Writer *w, gboolean second)
{
  const char *label = second ? _ ("Second face") : _ ("First face");

  begin (w, "g");
  put (w, "id", second ? SW_SVG_SECOND_FACE : "first-face");
  put (w, "inkscape:groupmode", "layer");
  put (w, "inkscape:label", label);
  put (w, "fill-opacity", "0.5");
  put (w, "stroke", "#222222");
  put (w, "stroke-width", "0.4");
  put_text (w, "title", label);
  for (guint i = 0; i < w->sketch->dyes->len; i++)
    write_dye (w, g_ptr_array_index (w->sketch->dyes, i), second);
  end (w);
}

static void
write_number (const Writer *w, const SwPanGeometry *geometry, const SwStep *step)
{
  double x, y;

  sw_pan_mark_place (geometry, w->sketch, step, &x, &y);
  begin (w, "text");
  put_mm (w, "x", x);
  put_mm (w, "y", y + 0.35 * BADGE_MM);
  xmlTextWriterWriteFormatString (w->xml, "%u", sw_pan_pour_number (w->sketch, step->id));
  end (w);
}

static void
write_numbers (const Writer *w)
{
  const double length = 10 * sw_sketch_lay_length (w->sketch), across = 10 * sw_sketch_lay_width (w->sketch);
  const SwPanGeometry geometry = { .skein = { w->left, w->bottom - across, length, across }, .scale = 10 };

  begin (w, "g");
  put (w, "id", "numbers");
  put (w, "inkscape:groupmode", "layer");
  put (w, "inkscape:label", _ ("Numbers"));
  put (w, "fill", "#000000");
  put (w, "font-family", "sans-serif");
  put_mm (w, "font-size", BADGE_MM);
  put (w, "text-anchor", "middle");
  /* Translators: the layer of a drawing with the numbers of its pours */
  put_text (w, "title", _ ("Numbers"));
  for (guint i = 0; i < w->sketch->steps->len; i++)
    {
      const SwStep *step = g_ptr_array_index (w->sketch->steps, i);

      if (sw_step_is_pour (step))
        write_number (w, &geometry, step);
    }
  end (w);
}

static gboolean
is_turned (const SwSketch *sketch)
{
  for (guint i = 0; i < sketch->steps->len; i++)
    if (((const SwStep *) sketch->steps->pdata[i])->kind == SW_STEP_FLIP)
      return TRUE;
  return FALSE;
}

static void
write_root (const Writer *w)
{
  g_autofree char *width = in_mm (w->width);
  g_autofree char *height = in_mm (w->height);

  begin (w, "svg");
  put (w, "xmlns", "http://www.w3.org/2000/svg");
  put (w, "xmlns:inkscape", LAYER_NAMESPACE);
  put (w, "version", "1.1");
  put_printf (w, "width", "%smm", width);
  put_printf (w, "height", "%smm", height);
  put_printf (w, "viewBox", "0 0 %s %s", width, height);
  put_text (w, "title", w->sketch->title[0] != '\0' ? w->sketch->title : _ ("Untitled colourway"));
  put_text (w, "desc", _ ("The pan from above, full size. Draw pours as closed shapes in the group of their dye, and bring the drawing in again."));
  write_frames (w);
  write_face (w, FALSE);
  if (is_turned (w->sketch))
    write_face (w, TRUE);
  write_numbers (w);
  end (w);
}

char *
sw_svg_write (const SwSketch *sketch, const SwSheet *sheet, gboolean us)
{
  const double length = sw_sketch_lay_length (sketch), across = sw_sketch_lay_width (sketch);
  xmlBuffer *buffer = xmlBufferCreate ();
  Writer w = { xmlNewTextWriterMemory (buffer, 0), sketch, sheet, us ? SW_MEASURE_US : SW_MEASURE_METRIC };
  char *text;

  w.width = 10 * MAX (length, sketch->lay.pan_length_cm) + 2 * AROUND_MM;
  w.height = 10 * MAX (across, sketch->lay.pan_width_cm) + 2 * AROUND_MM;
  w.left = (w.width - 10 * length) / 2;
  w.bottom = (w.height + 10 * across) / 2;
  xmlTextWriterSetIndent (w.xml, 1);
  xmlTextWriterSetIndentString (w.xml, (const xmlChar *) "  ");
  xmlTextWriterStartDocument (w.xml, NULL, "UTF-8", NULL);
  write_root (&w);
  xmlTextWriterEndDocument (w.xml);
  xmlFreeTextWriter (w.xml);
  text = g_strdup ((const char *) xmlBufferContent (buffer));
  xmlBufferFree (buffer);
  return text;
}
