/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-swatch.h"

#include "colour/sw-sample-forms.h"

#define SIZE 20
#define CORNER 5

/* Black words show up better than white ones on colours lighter than this: then the contrast is never less than about 4.5 to 1. */
#define MIDDLE_LIGHTNESS 50

struct _SwSwatch
{
  GtkWidget parent_instance;

  gboolean filled;
  GdkRGBA colour;
  PangoLayout *text; /* NULL: none */
  gboolean dark_text;
};

G_DEFINE_FINAL_TYPE (SwSwatch, sw_swatch, GTK_TYPE_WIDGET)

GdkRGBA
sw_sample_to_rgba (const SwSample *sample)
{
  SwSrgb srgb = sw_sample_srgb (sample);

  return (GdkRGBA){ (float) srgb.r, (float) srgb.g, (float) srgb.b, 1 };
}

static void
sw_swatch_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural, int *minimum_baseline, int *natural_baseline)
{
  SwSwatch *self = SW_SWATCH (widget);
  int width = 0;

  if (self->text != NULL && orientation == GTK_ORIENTATION_HORIZONTAL)
    pango_layout_get_pixel_size (self->text, &width, NULL);
  *minimum = *natural = MAX (SIZE, width + CORNER);
}

static void
snapshot_text (SwSwatch *self, GtkSnapshot *snapshot, float width, float height)
{
  const GdkRGBA colour = self->dark_text ? (GdkRGBA){ 0, 0, 0, 1 } : (GdkRGBA){ 1, 1, 1, 1 };
  int text_width, text_height;

  pango_layout_get_pixel_size (self->text, &text_width, &text_height);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((width - (float) text_width) / 2, (height - (float) text_height) / 2));
  gtk_snapshot_append_layout (snapshot, self->text, &colour);
  gtk_snapshot_restore (snapshot);
}

/* A hairline in the text's colour keeps a swatch apart from any ground, white on white too. */
static void
sw_swatch_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SwSwatch *self = SW_SWATCH (widget);
  float width = (float) gtk_widget_get_width (widget);
  float height = (float) gtk_widget_get_height (widget);
  GskRoundedRect outline;
  GdkRGBA line;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &line);
  line.alpha *= 0.3f;
  gsk_rounded_rect_init_from_rect (&outline, &GRAPHENE_RECT_INIT (0, 0, width, height), CORNER);
  if (self->filled)
    {
      gtk_snapshot_push_rounded_clip (snapshot, &outline);
      gtk_snapshot_append_color (snapshot, &self->colour, &outline.bounds);
      gtk_snapshot_pop (snapshot);
    }
  if (self->text != NULL && self->filled)
    snapshot_text (self, snapshot, width, height);
  gtk_snapshot_append_border (snapshot, &outline, (float[4]){ 1, 1, 1, 1 }, (GdkRGBA[4]){ line, line, line, line });
}

static void
sw_swatch_finalize (GObject *object)
{
  g_clear_object (&SW_SWATCH (object)->text);

  G_OBJECT_CLASS (sw_swatch_parent_class)->finalize (object);
}

static void
sw_swatch_class_init (SwSwatchClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = sw_swatch_finalize;
  widget_class->measure = sw_swatch_measure;
  widget_class->snapshot = sw_swatch_snapshot;
  gtk_widget_class_set_css_name (widget_class, "swatch");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
sw_swatch_init (SwSwatch *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
}

void
sw_swatch_set_sample (SwSwatch *self, const SwSample *sample)
{
  g_return_if_fail (SW_IS_SWATCH (self));

  self->filled = sample != NULL;
  if (sample != NULL)
    {
      self->colour = sw_sample_to_rgba (sample);
      self->dark_text = sw_sample_lab (sample).l > MIDDLE_LIGHTNESS;
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
sw_swatch_set_text (SwSwatch *self, const char *text)
{
  PangoAttrList *attributes;

  g_return_if_fail (SW_IS_SWATCH (self));

  g_clear_object (&self->text);
  if (text != NULL)
    {
      self->text = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
      attributes = pango_attr_list_new ();
      pango_attr_list_insert (attributes, pango_attr_scale_new (PANGO_SCALE_SMALL));
      pango_attr_list_insert (attributes, pango_attr_weight_new (PANGO_WEIGHT_BOLD));
      pango_layout_set_attributes (self->text, attributes);
      pango_attr_list_unref (attributes);
    }
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
