/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-frame-hold.h"

/* What is left of a sixtieth of a second is for painting. */
#define HOLD_US 10000

typedef struct
{
  gint64 frame, until;
} Hold;

gint64
sw_frame_hold_until (GtkWidget *widget)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (widget);
  Hold *hold;

  g_return_val_if_fail (clock != NULL, 0);

  hold = g_object_get_data (G_OBJECT (clock), "sw-frame-hold");
  if (hold == NULL)
    {
      hold = g_new (Hold, 1);
      hold->frame = -1;
      g_object_set_data_full (G_OBJECT (clock), "sw-frame-hold", hold, g_free);
    }
  if (hold->frame != gdk_frame_clock_get_frame_counter (clock))
    {
      hold->frame = gdk_frame_clock_get_frame_counter (clock);
      hold->until = g_get_monotonic_time () + HOLD_US;
    }
  return hold->until;
}
