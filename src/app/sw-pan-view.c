/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sw-pan-view.h"

#include "app/sw-frame-times.h"

#include <glib/gi18n-lib.h>

struct _SwPanView
{
  SwPictureView parent_instance;
};

G_DEFINE_FINAL_TYPE (SwPanView, sw_pan_view, SW_TYPE_PICTURE_VIEW)

static void
sw_pan_view_paint (SwPictureView *view, cairo_t *cr, SwForecast *forecast, double width, double height, const SwLook *look)
{
  sw_draw_pan (cr, forecast, width, height, look);
}

static char *
sw_pan_view_describe (SwPictureView *view, SwForecast *forecast)
{
  guint pours = 0;

  for (guint i = 0; i < forecast->sketch->steps->len; i++)
    pours += sw_step_is_pour (forecast->sketch->steps->pdata[i]) ? 1 : 0;
  /* Translators: for screen readers; the list of steps tells each pour */
  return g_strdup_printf (ngettext ("The skein with %u pour.", "The skein with %u pours.", pours), pours);
}

static void
sw_pan_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  GTK_WIDGET_CLASS (sw_pan_view_parent_class)->snapshot (widget, snapshot);
  sw_frame_times_snapshot (widget, snapshot);
}

static void
sw_pan_view_class_init (SwPanViewClass *klass)
{
  GTK_WIDGET_CLASS (klass)->snapshot = sw_pan_view_snapshot;
  SW_PICTURE_VIEW_CLASS (klass)->paint = sw_pan_view_paint;
  SW_PICTURE_VIEW_CLASS (klass)->describe = sw_pan_view_describe;
}

static void
sw_pan_view_init (SwPanView *self)
{
}
