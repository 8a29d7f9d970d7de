/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-painter.h"

#include "app/parts/sw-frame-hold.h"
#include "app/parts/sw-texture.h"
#include "forecast/sw-latest.h"

/* A picture that takes longer is given up for a newer one. */
#define PATIENCE_MS 400

struct _SwPainter
{
  GtkWidget *widget;
  gulong map_id, scale_id;
  SwPainterFill fill;
  SwPainterPaint paint;
  SwPainterCatchUp catch_up; /* (nullable) */

  SwLive *live;
  gulong updated_id, busy_id;
  SwLatest *latest;
  guint tick_id;

  GdkTexture *texture; /* NULL before the first */
  GdkTexture *before;  /* still in the frame that is shown: let go of now, cairo would copy it for that frame */
  SwPainting *painting;
};

/* In the worker's thread */

typedef struct
{
  SwPainterPaint paint; /* the painter may be gone meanwhile */
  SwPainting painting;
} Question;

typedef struct
{
  GdkTexture *texture;
  SwPainting *painting;
} Answer;

static SwPainting *
painting_copy (const SwPainting *painting)
{
  SwPainting *copy = g_memdup2 (painting, sizeof *painting);

  sw_forecast_ref (copy->forecast);
  return copy;
}

static void
painting_free (SwPainting *painting)
{
  sw_forecast_unref (painting->forecast);
  g_free (painting);
}

static void
question_free (gpointer data)
{
  Question *question = data;

  sw_forecast_unref (question->painting.forecast);
  g_free (question);
}

static void
answer_free (gpointer data)
{
  Answer *answer = data;

  g_object_unref (answer->texture);
  painting_free (answer->painting);
  g_free (answer);
}

/* At the screen's own pixels. */
static GdkTexture *
paint_texture (const Question *question)
{
  const SwPainting *painting = &question->painting;
  const int width = (int) painting->part.width * painting->scale, height = (int) painting->part.height * painting->scale;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr;

  cairo_surface_set_device_scale (surface, painting->scale, painting->scale);
  cr = cairo_create (surface);
  cairo_translate (cr, -painting->part.x, -painting->part.y);
  question->paint (cr, painting);
  cairo_destroy (cr);
  return sw_texture_new (surface);
}

static gpointer
paint_worker (gpointer data, gpointer user_data, GCancellable *cancellable, GError **error)
{
  const Question *question = data;
  Answer *answer = g_new (Answer, 1);

  answer->texture = paint_texture (question);
  answer->painting = painting_copy (&question->painting);
  return answer;
}

/* In the main thread */

static void
painted_cb (gpointer data, const GError *error, gpointer user_data)
{
  SwPainter *self = user_data;
  Answer *answer = data;

  if (answer == NULL)
    return;
  g_set_object (&self->before, self->texture);
  g_set_object (&self->texture, answer->texture);
  g_clear_pointer (&self->painting, painting_free);
  self->painting = painting_copy (answer->painting);
  answer_free (answer);
  gtk_widget_queue_draw (self->widget);
}

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  SwPainter *self = user_data;
  const gint64 until = sw_frame_hold_until (widget);
  gboolean done = self->live == NULL || sw_live_catch_up (self->live, until);

  done &= sw_latest_wait (self->latest, until) && !sw_latest_is_busy (self->latest);
  if (self->catch_up != NULL)
    done &= self->catch_up (widget, until);
  if (!done)
    return G_SOURCE_CONTINUE;
  self->tick_id = 0;
  return G_SOURCE_REMOVE;
}

void
sw_painter_set_catch_up (SwPainter *self, SwPainterCatchUp catch_up)
{
  self->catch_up = catch_up;
}

void
sw_painter_hold_frames (SwPainter *self)
{
  if (self->tick_id == 0 && gtk_widget_get_mapped (self->widget))
    self->tick_id = gtk_widget_add_tick_callback (self->widget, tick_cb, self, NULL);
}

static void
busy_cb (SwPainter *self)
{
  if (sw_live_get_busy (self->live))
    sw_painter_hold_frames (self);
}

void
sw_painter_ask (SwPainter *self)
{
  SwForecast *forecast = self->live != NULL ? sw_live_get_forecast (self->live) : NULL;
  const int width = gtk_widget_get_width (self->widget), height = gtk_widget_get_height (self->widget);
  SwPainting painting = { .forecast = forecast, .width = width, .height = height, .part = { 0, 0, width, height } };
  Question *question;

  gtk_widget_queue_draw (self->widget);
  if (forecast == NULL || width <= 0 || height <= 0 || !gtk_widget_get_mapped (self->widget))
    return;
  painting.scale = gtk_widget_get_scale_factor (self->widget);
  painting.edit_time = sw_live_get_edit_time (self->live);
  if (!self->fill (self->widget, &painting))
    return;
  question = g_new (Question, 1);
  question->paint = self->paint;
  question->painting = painting;
  sw_forecast_ref (forecast);
  sw_latest_ask (self->latest, question);
  sw_painter_hold_frames (self);
}

SwPainter *
sw_painter_new (GtkWidget *widget, SwPainterFill fill, SwPainterPaint paint)
{
  SwPainter *self = g_new0 (SwPainter, 1);

  self->widget = widget;
  self->fill = fill;
  self->paint = paint;
  self->latest = sw_latest_new (paint_worker, painted_cb, self, question_free, answer_free);
  sw_latest_set_patience (self->latest, PATIENCE_MS);
  /* Nobody sees it before it is mapped. */
  self->map_id = g_signal_connect_swapped (widget, "map", G_CALLBACK (sw_painter_ask), self);
  self->scale_id = g_signal_connect_swapped (widget, "notify::scale-factor", G_CALLBACK (sw_painter_ask), self);
  return self;
}

void
sw_painter_set_live (SwPainter *self, SwLive *live)
{
  if (self->live == live)
    return;
  if (self->live != NULL)
    {
      g_clear_signal_handler (&self->updated_id, self->live);
      g_clear_signal_handler (&self->busy_id, self->live);
    }
  g_set_object (&self->live, live);
  if (live == NULL)
    return;
  self->updated_id = g_signal_connect_swapped (live, "updated", G_CALLBACK (sw_painter_ask), self);
  self->busy_id = g_signal_connect_swapped (live, "notify::busy", G_CALLBACK (busy_cb), self);
  sw_painter_ask (self);
}

SwLive *
sw_painter_get_live (SwPainter *self)
{
  return self->live;
}

GdkTexture *
sw_painter_get (SwPainter *self, const SwPainting **painting)
{
  *painting = self->painting;
  return self->texture;
}

void
sw_painter_free (SwPainter *self)
{
  sw_painter_set_live (self, NULL);
  g_clear_signal_handler (&self->map_id, self->widget);
  g_clear_signal_handler (&self->scale_id, self->widget);
  if (self->tick_id != 0)
    gtk_widget_remove_tick_callback (self->widget, self->tick_id);
  sw_latest_free (self->latest);
  g_clear_object (&self->texture);
  g_clear_object (&self->before);
  g_clear_pointer (&self->painting, painting_free);
  g_free (self);
}
