/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-seen.h"

typedef struct
{
  GtkWidget *widget;
  gpointer object;
  gulong signal_id, map_id;
  SwSeenShow show;
  gboolean missed;
} Seen;

static void
signal_cb (Seen *seen)
{
  seen->missed = !gtk_widget_get_mapped (seen->widget);
  if (!seen->missed)
    seen->show (seen->widget);
}

static void
map_cb (Seen *seen)
{
  if (seen->missed)
    signal_cb (seen);
}

static void
seen_free (gpointer data)
{
  Seen *seen = data;

  g_signal_handler_disconnect (seen->object, seen->signal_id);
  g_signal_handler_disconnect (seen->widget, seen->map_id);
  g_free (seen);
}

void
sw_seen_connect (GtkWidget *widget, gpointer object, const char *signal, SwSeenShow show)
{
  GPtrArray *all = g_object_get_data (G_OBJECT (widget), "sw-seen");
  Seen *seen = g_new0 (Seen, 1);

  if (all == NULL)
    {
      all = g_ptr_array_new ();
      g_object_set_data_full (G_OBJECT (widget), "sw-seen", all, (GDestroyNotify) g_ptr_array_unref);
    }
  seen->widget = widget;
  seen->object = object;
  seen->show = show;
  seen->signal_id = g_signal_connect_swapped (object, signal, G_CALLBACK (signal_cb), seen);
  seen->map_id = g_signal_connect_swapped (widget, "map", G_CALLBACK (map_cb), seen);
  g_ptr_array_add (all, seen);
}

void
sw_seen_disconnect (GtkWidget *widget, gpointer object)
{
  GPtrArray *all = g_object_get_data (G_OBJECT (widget), "sw-seen");

  for (guint i = all != NULL ? all->len : 0; i > 0; i--)
    if (((Seen *) all->pdata[i - 1])->object == object)
      seen_free (g_ptr_array_remove_index_fast (all, i - 1));
}
