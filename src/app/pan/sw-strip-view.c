/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-strip-view.h"

#include "app/desk/sw-units.h"
#include "colour/sw-mix.h"
#include "draw/sw-strip-runs.h"
#include "forecast/sw-colour-words.h"

#include <glib/gi18n-lib.h>

#define N_PLACES 512

struct _SwStripView
{
  SwPictureView parent_instance;
};

G_DEFINE_FINAL_TYPE (SwStripView, sw_strip_view, SW_TYPE_PICTURE_VIEW)

static void
sw_strip_view_paint (cairo_t *cr, const SwPainting *painting)
{
  sw_draw_strip (cr, painting->forecast, painting->width, painting->height, &painting->look);
}

/* Each stretch in words, in the order in which the strand runs. */
static char *
sw_strip_view_describe (SwPictureView *view, SwForecast *forecast)
{
  const SwSystem system = sw_picture_view_get_look (view)->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC;
  g_autofree float *xyz = g_new (float, 3 * N_PLACES);
  g_autofree float *lab = g_new (float, 3 * N_PLACES);
  g_autofree SwStripRun *runs = g_new (SwStripRun, N_PLACES);
  g_autoptr (GString) words = g_string_new (NULL);
  gsize n;

  sw_forecast_strip (forecast, N_PLACES, xyz, xyz + N_PLACES, xyz + 2 * N_PLACES);
  sw_lab_from_xyz_many (xyz, xyz + N_PLACES, xyz + 2 * N_PLACES, N_PLACES, lab, lab + N_PLACES, lab + 2 * N_PLACES);
  n = sw_strip_runs (lab, lab + N_PLACES, lab + 2 * N_PLACES, N_PLACES, runs);
  /* What goes on round the loop's end is one stretch. */
  if (n > 1 && sw_strip_run_distance (&runs[0], &runs[n - 1]) < SW_STRIP_SAME)
    {
      n--;
      runs[0].to += runs[n].to - runs[n].from;
    }
  for (gsize i = 0; i < n; i++)
    {
      const double cm = (double) (runs[i].to - runs[i].from) * forecast->repeat_cm / N_PLACES;
      g_autofree char *length = sw_units_format (SW_QUANTITY_LENGTH, cm, system);
      g_autofree char *name = sw_forecast_colour_name (forecast, (SwLab){ runs[i].l, runs[i].a, runs[i].b });

      if (i > 0)
        /* Translators: between the stretches of a strand: 31 cm petrol blue, 11 cm dusty violet-blue */
        g_string_append (words, _ (", "));
      /* Translators: a length, then the name of a colour: 31 cm petrol blue */
      g_string_append_printf (words, _ ("%s %s"), length, name);
    }
  return g_string_free (g_steal_pointer (&words), FALSE);
}

static void
sw_strip_view_class_init (SwStripViewClass *klass)
{
  SW_PICTURE_VIEW_CLASS (klass)->paint = sw_strip_view_paint;
  SW_PICTURE_VIEW_CLASS (klass)->describe = sw_strip_view_describe;
}

static void
sw_strip_view_init (SwStripView *self)
{
}
