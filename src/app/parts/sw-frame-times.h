/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/*
 * How long an edit takes to reach the screen. Only measured when the
 * environment variable STRANDWISE_FRAME_TIMES is 1.
 */
gboolean sw_frame_times_enabled (void);

/**
 * sw_frame_times_expect:
 * @widget: is about to paint, within its snapshot
 * @edit_time: g_get_monotonic_time() of the edit that becomes visible
 *
 * The time is taken when the frame is done. An edit counts once for each widget.
 */
void sw_frame_times_expect (GtkWidget *widget, gint64 edit_time);

/**
 * sw_frame_times_summary:
 * @p50, @p95, @last: (out): ms, over the latest 240 edits painted
 * Returns: how many edits were painted in all; 0 leaves the others as they are
 */
guint sw_frame_times_summary (double *p50, double *p95, double *last);

/* Prints the summary on standard error, if anything was measured. */
void sw_frame_times_report (void);

/* Forgets what was measured so far. */
void sw_frame_times_reset (void);

/* Paints the summary over the corner of a picture. */
void sw_frame_times_snapshot (GtkWidget *widget, GtkSnapshot *snapshot);

G_END_DECLS
