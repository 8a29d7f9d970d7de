/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-pan-overlay.h"

#include "draw/sw-canvas.h"
#include "draw/sw-pan-marks.h"

#include <math.h>

#define HANDLE_PX 4.5 /* half of its side */
#define PILL_PAD_PX 7.0
#define PILL_OFF_PX 18.0
#define MARKER_PX 4.0

SwGrips
sw_pan_overlay_grips (const SwPanGeometry *geometry)
{
  return (SwGrips){ SW_OVERLAY_GRIP_PX / geometry->scale, SW_OVERLAY_TURN_PX / geometry->scale };
}

/* Handles */

static void
set_accent (cairo_t *cr, const SwPanOverlay *overlay, double alpha)
{
  cairo_set_source_rgba (cr, overlay->accent[0], overlay->accent[1], overlay->accent[2], alpha);
}

/* A white knob with a rim of the accent, filled with it while held. */
static void
draw_knob (cairo_t *cr, const SwPanOverlay *overlay, double x, double y, gboolean held, gboolean is_round)
{
  cairo_new_path (cr);
  if (is_round)
    cairo_arc (cr, x, y, HANDLE_PX + 0.5, 0, 2 * G_PI);
  else
    cairo_rectangle (cr, x - HANDLE_PX, y - HANDLE_PX, 2 * HANDLE_PX, 2 * HANDLE_PX);
  cairo_set_line_width (cr, 4);
  cairo_set_source_rgba (cr, 0, 0, 0, 0.35);
  cairo_stroke_preserve (cr);
  cairo_set_source_rgb (cr, 1, 1, 1);
  if (held)
    set_accent (cr, overlay, 1);
  cairo_fill_preserve (cr);
  cairo_set_line_width (cr, 1.5);
  set_accent (cr, overlay, 1);
  if (held)
    cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_stroke (cr);
}

static void
handle_px (const SwPanOverlay *overlay, const SwPourPlace *place, SwHandle handle, double *x, double *y)
{
  const SwGrips grips = sw_pan_overlay_grips (overlay->geometry);

  sw_handle_place (overlay->sketch, place, handle, &grips, x, y);
  sw_pan_to_px (overlay->geometry, *x, *y, x, y);
}

/* The stalk from the far side to the grip that turns. */
static void
draw_stalk (cairo_t *cr, const SwPanOverlay *overlay, const SwPourPlace *place)
{
  double x0, y0, x1, y1;

  handle_px (overlay, place, SW_HANDLE_FAR, &x0, &y0);
  handle_px (overlay, place, SW_HANDLE_TURN, &x1, &y1);
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
  cairo_set_line_width (cr, 3);
  cairo_set_source_rgba (cr, 0, 0, 0, 0.35);
  cairo_stroke_preserve (cr);
  cairo_set_line_width (cr, 1.5);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_stroke (cr);
}

static void
draw_handles (cairo_t *cr, const SwPanOverlay *overlay)
{
  const SwStep *step = sw_sketch_find_step (overlay->sketch, overlay->grips);
  SwPourPlace place;

  if (step == NULL || !sw_step_is_pour (step))
    return;
  place = sw_pour_place (step);
  draw_stalk (cr, overlay, &place);
  for (SwHandle handle = SW_HANDLE_START; handle < SW_N_HANDLES; handle++)
    {
      double x, y;

      if (!sw_handle_applies (handle, place.kind))
        continue;
      handle_px (overlay, &place, handle, &x, &y);
      draw_knob (cr, overlay, x, y, handle == overlay->held, handle == SW_HANDLE_TURN);
    }
}

/* Guides and the marquee */

static void
stroke_guide (cairo_t *cr, const SwPanOverlay *overlay)
{
  static const double dashes[] = { 5, 3 };

  cairo_set_line_width (cr, 3);
  cairo_set_source_rgba (cr, 0, 0, 0, 0.4);
  cairo_stroke_preserve (cr);
  cairo_set_line_width (cr, 1);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_stroke_preserve (cr);
  cairo_set_dash (cr, dashes, 2, 0);
  set_accent (cr, overlay, 1);
  cairo_set_line_width (cr, 1.4);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

/* Through the whole pan; a mark of the ruler is only a short line at the ruler, since there are many. */
static void
draw_guides (cairo_t *cr, const SwPanOverlay *overlay)
{
  const SwPanGeometry *geometry = overlay->geometry;
  const SwBox *pan = &geometry->pan, *skein = &geometry->skein;
  const SwSnapHit *along = &overlay->guides[SW_AXIS_ALONG], *across = &overlay->guides[SW_AXIS_ACROSS];
  double x, y;

  sw_pan_to_px (geometry, along->at, across->at, &x, &y);
  if (along->kind != SW_SNAP_NONE && along->kind != SW_SNAP_RULER)
    {
      cairo_move_to (cr, x, MIN (pan->y, skein->y));
      cairo_line_to (cr, x, MAX (pan->y + pan->height, skein->y + skein->height));
      stroke_guide (cr, overlay);
    }
  if (across->kind != SW_SNAP_NONE && across->kind != SW_SNAP_RULER)
    {
      cairo_move_to (cr, MIN (pan->x, skein->x), y);
      cairo_line_to (cr, MAX (pan->x + pan->width, skein->x + skein->width), y);
      stroke_guide (cr, overlay);
    }
}

static void
draw_marquee (cairo_t *cr, const SwPanOverlay *overlay)
{
  const SwBox *box = overlay->marquee;

  if (box == NULL)
    return;
  cairo_rectangle (cr, floor (box->x) + 0.5, floor (box->y) + 0.5, floor (box->width), floor (box->height));
  set_accent (cr, overlay, 0.18);
  cairo_fill_preserve (cr);
  cairo_set_line_width (cr, 3);
  cairo_set_source_rgba (cr, 0, 0, 0, 0.3);
  cairo_stroke_preserve (cr);
  cairo_set_line_width (cr, 1);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_stroke (cr);
}

/* Rulers */

static void
draw_span (cairo_t *cr, const SwPanOverlay *overlay, double x0, double y0, double x1, double y1)
{
  set_accent (cr, overlay, 1);
  cairo_rectangle (cr, MIN (x0, x1), MIN (y0, y1), fabs (x1 - x0), fabs (y1 - y0));
  cairo_fill (cr);
}

/* What the selected pour takes up, as a bar along each ruler's edge. */
static gboolean
find_span (const SwPanOverlay *overlay, double *x0, double *y0, double *x1, double *y1)
{
  const SwStep *step = sw_sketch_find_step (overlay->sketch, overlay->grips);
  SwPourPlace place;
  SwExtent extent;

  if (step == NULL || !sw_step_is_pour (step) || overlay->geometry->ruler_x.width <= 0)
    return FALSE;
  place = sw_pour_place (step);
  extent = sw_pour_extent (overlay->sketch, &place);
  sw_pan_to_px (overlay->geometry, extent.x0, extent.y0, x0, y0);
  sw_pan_to_px (overlay->geometry, extent.x1, extent.y1, x1, y1);
  return TRUE;
}

static void
draw_spans (cairo_t *cr, const SwPanOverlay *overlay)
{
  const SwBox *below = &overlay->geometry->ruler_x, *left = &overlay->geometry->ruler_y;
  double x0, y0, x1, y1;

  if (!find_span (overlay, &x0, &y0, &x1, &y1))
    return;
  cairo_save (cr);
  cairo_rectangle (cr, left->x + left->width, 0, 1e5, 1e5);
  cairo_clip (cr);
  draw_span (cr, overlay, x0, below->y - 2, x1, below->y + 1);
  cairo_restore (cr);
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, 1e5, below->y);
  cairo_clip (cr);
  draw_span (cr, overlay, left->x + left->width - 1, y0, left->x + left->width + 2, y1);
  cairo_restore (cr);
}

/* Where the pointer is, as a small wedge at each ruler. */
static void
draw_pointer_marks (const SwCanvas *canvas, const SwPanOverlay *overlay)
{
  const SwBox *below = &overlay->geometry->ruler_x, *left = &overlay->geometry->ruler_y;
  const double x = overlay->hand_x, y = overlay->hand_y, edge_x = left->x + left->width, edge_y = below->y;

  if (!overlay->hand_in || below->width <= 0)
    return;
  sw_canvas_set_ink (canvas, SW_INK_TEXT);
  if (x >= edge_x)
    {
      cairo_move_to (canvas->cr, x, edge_y + 1);
      cairo_rel_line_to (canvas->cr, -MARKER_PX, -MARKER_PX - 1);
      cairo_rel_line_to (canvas->cr, 2 * MARKER_PX, 0);
      cairo_fill (canvas->cr);
    }
  if (y <= edge_y)
    {
      cairo_move_to (canvas->cr, edge_x - 1, y);
      cairo_rel_line_to (canvas->cr, MARKER_PX + 1, -MARKER_PX);
      cairo_rel_line_to (canvas->cr, 0, 2 * MARKER_PX);
      cairo_fill (canvas->cr);
    }
}

/* Words on a dark pill, read on any colour. */
static void
draw_pill (const SwCanvas *canvas, const char *text, double centre_x, double centre_y, double size)
{
  double width, height;
  SwBox box;

  sw_canvas_text_size (canvas, text, size, &width, &height);
  box = (SwBox){ centre_x - width / 2 - PILL_PAD_PX, centre_y - height / 2 - 3, width + 2 * PILL_PAD_PX, height + 6 };
  box.x = CLAMP (box.x, 4, MAX (canvas->width - box.width - 4, 4));
  box.y = CLAMP (box.y, 4, MAX (canvas->height - box.height - 4, 4));
  sw_canvas_rounded (canvas, &box, box.height / 2);
  cairo_set_source_rgba (canvas->cr, 0.1, 0.1, 0.1, 0.86);
  cairo_fill (canvas->cr);
  cairo_set_source_rgb (canvas->cr, 1, 1, 1);
  sw_canvas_text (canvas, text, box.x + box.width / 2, box.y + box.height / 2, 0.5, 0.5, size, NULL);
}

/* Above the hand, or below it where there is no room: never under it. */
static void
draw_measure (const SwCanvas *canvas, const SwPanOverlay *overlay)
{
  double y = overlay->hand_y - PILL_OFF_PX - 6;

  if (overlay->measure == NULL)
    return;
  if (y < PILL_OFF_PX)
    y = overlay->hand_y + PILL_OFF_PX + 14;
  draw_pill (canvas, overlay->measure, overlay->hand_x, y, SW_TEXT_PX + 1);
}

/* The band */

/* What is drawn around a pour's outline and a handle reaches no further: its number, a knob with its rim. */
#define AROUND_PX (SW_OVERLAY_TURN_PX + 14)

static void
reach (double *top, double *bottom, double from, double to)
{
  *top = MIN (*top, from);
  *bottom = MAX (*bottom, to);
}

static void
reach_pours (const SwPanOverlay *overlay, double *top, double *bottom)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create (surface);

  for (guint i = 0; i < overlay->sketch->steps->len; i++)
    {
      const SwStep *step = overlay->sketch->steps->pdata[i];
      double y0, y1;

      if (!sw_step_is_pour (step))
        continue;
      cairo_new_path (cr);
      sw_pan_trace_pour (cr, overlay->geometry, overlay->sketch, step);
      cairo_path_extents (cr, NULL, &y0, NULL, &y1);
      reach (top, bottom, y0 - AROUND_PX, y1 + AROUND_PX);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* The handles of a turned pour, and of one that reaches beyond the pan, lie anywhere. */
static void
reach_handles (const SwPanOverlay *overlay, double *top, double *bottom)
{
  const SwStep *step = sw_sketch_find_step (overlay->sketch, overlay->grips);
  SwPourPlace place;

  if (step == NULL || !sw_step_is_pour (step))
    return;
  place = sw_pour_place (step);
  for (SwHandle handle = SW_HANDLE_START; handle < SW_N_HANDLES; handle++)
    {
      double x, y;

      if (!sw_handle_applies (handle, place.kind))
        continue;
      handle_px (overlay, &place, handle, &x, &y);
      reach (top, bottom, y - AROUND_PX, y + AROUND_PX);
    }
}

SwBox
sw_pan_overlay_band (const SwPanOverlay *overlay, double width, double height)
{
  const SwPanGeometry *geometry = overlay->geometry;
  const SwBox *pan = &geometry->pan, *skein = &geometry->skein, *below = &geometry->ruler_x;
  double top = MIN (pan->y, skein->y) - AROUND_PX, bottom = MAX (pan->y + pan->height, skein->y + skein->height) + AROUND_PX;
  double x0, y0, x1, y1;

  if (overlay->marquee != NULL || overlay->hint != NULL)
    return (SwBox){ 0, 0, width, height };
  reach_pours (overlay, &top, &bottom);
  reach_handles (overlay, &top, &bottom);
  if (find_span (overlay, &x0, &y0, &x1, &y1))
    reach (&top, &bottom, MIN (y0, y1) - 1, MAX (y0, y1) + 1);
  if (below->width > 0)
    reach (&top, &bottom, below->y - AROUND_PX, below->y + below->height);
  if (overlay->measure != NULL || overlay->hand_in)
    reach (&top, &bottom, overlay->hand_y - 3 * PILL_OFF_PX, overlay->hand_y + 3 * PILL_OFF_PX);
  top = CLAMP (floor (top), 0, height);
  bottom = CLAMP (ceil (bottom), top, height);
  return (SwBox){ 0, top, width, bottom - top };
}

void
sw_pan_overlay_draw (cairo_t *cr, const SwPanOverlay *overlay, double width, double height)
{
  SwLook look = sw_look_plain;
  const SwPanMarks marks = { overlay->selected, overlay->n_selected, overlay->hovered, overlay->accent };
  const SwBox *skein = &overlay->geometry->skein, room = sw_pan_room (overlay->geometry, width, height);
  SwCanvas canvas;

  look.dark = overlay->dark;
  look.second_face = overlay->second_face;
  look.inches = overlay->inches;
  sw_canvas_begin_over (&canvas, cr, width, height, &look);
  cairo_save (cr);
  cairo_rectangle (cr, room.x, room.y, room.width, room.height);
  cairo_clip (cr);
  sw_pan_marks_draw (&canvas, overlay->geometry, overlay->sketch, &marks);
  draw_guides (cr, overlay);
  draw_handles (cr, overlay);
  draw_marquee (cr, overlay);
  cairo_restore (cr);
  draw_spans (cr, overlay);
  draw_pointer_marks (&canvas, overlay);
  if (overlay->hint != NULL)
    draw_pill (&canvas, overlay->hint, CLAMP (skein->x + skein->width / 2, 0, width), CLAMP (skein->y + skein->height / 2, 0, height), SW_TEXT_PX + 3);
  draw_measure (&canvas, overlay);
  sw_canvas_end (&canvas);
}
