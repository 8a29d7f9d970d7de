/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/*
 * How long what a hand does takes to reach the screen. Only measured when the
 * environment variable STRANDWISE_FRAME_TIMES is 1.
 */
typedef enum
{
  SW_FRAME_EDIT,  /* an edit is visible */
  SW_FRAME_MOVE,  /* a picture that was scrolled or zoomed has moved */
  SW_FRAME_SHARP, /* and is all there */
  SW_N_FRAME_TIMES,
} SwFrameTime;

gboolean sw_frame_times_enabled (void);

/**
 * sw_frame_times_expect:
 * @widget: is about to paint, within its snapshot
 * @edit_time: g_get_monotonic_time() of the edit that becomes visible
 *
 * The time is taken when the frame is done. An edit counts once for each widget.
 */
void sw_frame_times_expect (GtkWidget *widget, gint64 edit_time);

/* The same for a time of another kind. */
void sw_frame_times_expect_kind (GtkWidget *widget, SwFrameTime kind, gint64 time);

/**
 * sw_frame_times_summary:
 * @p50, @p95, @last: (out): ms, over the latest 240 edits painted
 * Returns: how many edits were painted in all; 0 leaves the others as they are
 */
guint sw_frame_times_summary (double *p50, double *p95, double *last);

/* Prints a summary of each kind on standard error, if any of it was measured. */
void sw_frame_times_report (void);

/* Forgets what was measured so far. */
void sw_frame_times_reset (void);

/* Paints the summary over the corner of a picture. */
void sw_frame_times_snapshot (GtkWidget *widget, GtkSnapshot *snapshot);

G_END_DECLS
