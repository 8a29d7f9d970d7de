/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-frame-times.h"

#include <stdlib.h>
#include <string.h>

#define N_KEPT 240

typedef struct
{
  double ms[N_KEPT];
  guint n; /* in all; the newest is at (n - 1) % N_KEPT */
} Kept;

/* Of the main thread; a measuring instrument for the whole program. */
static Kept all[SW_N_FRAME_TIMES];

static const char *const names[SW_N_FRAME_TIMES] = { "edit to paint", "move to paint", "move to sharp picture" };

gboolean
sw_frame_times_enabled (void)
{
  static gsize once;
  static gboolean enabled;

  if (g_once_init_enter (&once))
    {
      enabled = g_strcmp0 (g_getenv ("STRANDWISE_FRAME_TIMES"), "1") == 0;
      g_once_init_leave (&once, 1);
    }
  return enabled;
}

typedef struct
{
  gint64 time[SW_N_FRAME_TIMES]; /* newest that was expected */
  gboolean expected[SW_N_FRAME_TIMES];
  gulong painted_id;
} Watch;

static Watch *
watch_of (GtkWidget *widget)
{
  Watch *watch = g_object_get_data (G_OBJECT (widget), "sw-frame-watch");

  if (watch == NULL)
    {
      watch = g_new0 (Watch, 1);
      g_object_set_data_full (G_OBJECT (widget), "sw-frame-watch", watch, g_free);
    }
  return watch;
}

static void
painted_cb (GtkWidget *widget, GdkFrameClock *clock)
{
  Watch *watch = watch_of (widget);

  g_clear_signal_handler (&watch->painted_id, clock);
  for (int kind = 0; kind < SW_N_FRAME_TIMES; kind++)
    if (watch->expected[kind])
      {
        Kept *kept = &all[kind];

        kept->ms[kept->n++ % N_KEPT] = (double) (g_get_monotonic_time () - watch->time[kind]) / 1000.0;
        watch->expected[kind] = FALSE;
      }
}

void
sw_frame_times_expect_kind (GtkWidget *widget, SwFrameTime kind, gint64 time)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (widget);
  Watch *watch;

  if (!sw_frame_times_enabled () || clock == NULL)
    return;

  watch = watch_of (widget);
  if (watch->time[kind] == time || watch->expected[kind])
    return;
  watch->time[kind] = time;
  watch->expected[kind] = TRUE;
  if (watch->painted_id == 0)
    watch->painted_id = g_signal_connect_object (clock, "after-paint", G_CALLBACK (painted_cb), widget, G_CONNECT_SWAPPED);
}

void
sw_frame_times_expect (GtkWidget *widget, gint64 edit_time)
{
  sw_frame_times_expect_kind (widget, SW_FRAME_EDIT, edit_time);
}

static int
compare_ms (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static guint
summary_of (const Kept *kept, double *p50, double *p95, double *last)
{
  double sorted[N_KEPT];
  guint n = MIN (kept->n, N_KEPT);

  if (n == 0)
    return 0;
  memcpy (sorted, kept->ms, n * sizeof (double));
  qsort (sorted, n, sizeof (double), compare_ms);
  *p50 = sorted[n / 2];
  *p95 = sorted[n * 95 / 100];
  *last = kept->ms[(kept->n - 1) % N_KEPT];
  return kept->n;
}

guint
sw_frame_times_summary (double *p50, double *p95, double *last)
{
  return summary_of (&all[SW_FRAME_EDIT], p50, p95, last);
}

void
sw_frame_times_report (void)
{
  for (int kind = 0; kind < SW_N_FRAME_TIMES; kind++)
    {
      double p50, p95, last;
      const guint n = summary_of (&all[kind], &p50, &p95, &last);

      if (n > 0)
        g_printerr ("%s: %u times, p50 %.1f ms, p95 %.1f ms\n", names[kind], n, p50, p95);
    }
}

void
sw_frame_times_reset (void)
{
  memset (all, 0, sizeof all);
}

void
sw_frame_times_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  g_autoptr (PangoLayout) layout = NULL;
  g_autofree char *text = NULL;
  double p50, p95, last;
  int width, height;
  guint n;

  if (!sw_frame_times_enabled ())
    return;
  n = sw_frame_times_summary (&p50, &p95, &last);
  if (n == 0)
    return;

  /* For builders of the program, not for its users: not translated. */
  text = g_strdup_printf ("edit to paint %.1f ms, p50 %.1f, p95 %.1f of %u", last, p50, p95, n);
  layout = gtk_widget_create_pango_layout (widget, text);
  pango_layout_get_pixel_size (layout, &width, &height);
  gtk_snapshot_append_color (snapshot, &(GdkRGBA){ 0, 0, 0, 0.7f }, &GRAPHENE_RECT_INIT (6, 6, (float) width + 12, (float) height + 6));
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (12, 9));
  gtk_snapshot_append_layout (snapshot, layout, &(GdkRGBA){ 1, 1, 1, 1 });
  gtk_snapshot_restore (snapshot);
}
