/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sw-swatch.h"

#include "colour/sw-spectrum.h"

#define SIZE 20
#define CORNER 5

struct _SwSwatch
{
  GtkWidget parent_instance;

  gboolean filled;
  GdkRGBA colour;
};

G_DEFINE_FINAL_TYPE (SwSwatch, sw_swatch, GTK_TYPE_WIDGET)

GdkRGBA
sw_sample_to_rgba (const SwSample *sample)
{
  const double *n = sample->numbers;
  SwSrgb srgb = { 0 };

  switch (sample->kind)
    {
    case SW_SAMPLE_SRGB:
      srgb = (SwSrgb){ n[0] / 255, n[1] / 255, n[2] / 255 };
      break;
    case SW_SAMPLE_LAB:
      srgb = sw_srgb_from_xyz (sw_xyz_from_lab ((SwLab){ n[0], n[1], n[2] }));
      break;
    case SW_SAMPLE_REFLECTANCE:
      srgb = sw_srgb_from_xyz (sw_xyz_from_reflectance (n));
      break;
    default:
      g_assert_not_reached ();
    }
  return (GdkRGBA){ (float) srgb.r, (float) srgb.g, (float) srgb.b, 1 };
}

static void
sw_swatch_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = SIZE;
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
  gtk_snapshot_append_border (snapshot, &outline, (float[4]){ 1, 1, 1, 1 }, (GdkRGBA[4]){ line, line, line, line });
}

static void
sw_swatch_class_init (SwSwatchClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

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
    self->colour = sw_sample_to_rgba (sample);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
