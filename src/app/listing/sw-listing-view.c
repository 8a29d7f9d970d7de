/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/listing/sw-listing-view.h"

#include "app/parts/sw-seen.h"

#include "draw/sw-look.h"
#include "files/sw-maker-mark.h"
#include "files/sw-picture.h"
#include "forecast/sw-latest.h"
#include "forecast/sw-listing-words.h"

#include <math.h>

/* The longer side of the first, small painting, device pixels. */
#define QUICK_PX 360

struct _SwListingView
{
  GtkWidget parent_instance;

  SwLive *live;
  SwLatest *latest;
  GdkTexture *texture; /* NULL before the first */
  char *problem;
};

G_DEFINE_FINAL_TYPE (SwListingView, sw_listing_view, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_PROBLEM,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

/* In the worker's thread */

typedef struct
{
  SwForecast *forecast; /* (owned) */
  int width, height;    /* device pixels */
  gboolean quick;       /* a finer one is to follow */
} Question;

typedef struct
{
  GdkTexture *texture;
  char *problem;
  gboolean quick;
} Answer;

static void
question_free (gpointer data)
{
  Question *question = data;

  sw_forecast_unref (question->forecast);
  g_free (question);
}

static void
answer_free (gpointer data)
{
  Answer *answer = data;

  g_object_unref (answer->texture);
  g_free (answer->problem);
  g_free (answer);
}

/* The picture of the files, at another size: see sw_picture_render(). */
static gpointer
paint_worker (gpointer data, gpointer user_data, GCancellable *cancellable, GError **error)
{
  const Question *question = data;
  const char *path = question->forecast->sketch->listing.mark;
  g_autoptr (GError) fault = NULL;
  Answer *answer = g_new0 (Answer, 1);
  SwLook look = sw_look_plain;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, question->width, question->height);
  cairo_t *cr = cairo_create (surface);
  const int stride = cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) bytes = NULL;

  look.mark = path[0] != '\0' ? sw_maker_mark_read (path, &fault) : NULL;
  sw_draw_listing (cr, question->forecast, question->width, question->height, &look);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  g_clear_pointer (&look.mark, cairo_surface_destroy);

  bytes = g_bytes_new_with_free_func (cairo_image_surface_get_data (surface), (gsize) stride * (gsize) question->height, (GDestroyNotify) cairo_surface_destroy, surface);
  answer->texture = gdk_memory_texture_new (question->width, question->height, GDK_MEMORY_DEFAULT, bytes, (gsize) stride);
  answer->problem = fault != NULL ? g_strdup (fault->message) : NULL;
  answer->quick = question->quick;
  return answer;
}

/* In the main thread */

/* The listing's shape, fitted into the widget, device pixels. */
static gboolean
fitted (SwListingView *self, int *width, int *height)
{
  SwForecast *forecast = self->live != NULL ? sw_live_get_forecast (self->live) : NULL;
  const int factor = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  const int room_width = factor * gtk_widget_get_width (GTK_WIDGET (self)), room_height = factor * gtk_widget_get_height (GTK_WIDGET (self));
  int whole_width, whole_height;
  double scale;

  if (forecast == NULL || room_width <= 0 || room_height <= 0 || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return FALSE;
  sw_picture_usual_size (SW_PICTURE_LISTING, forecast, &whole_width, &whole_height);
  scale = MIN ((double) room_width / whole_width, (double) room_height / whole_height);
  *width = MAX ((int) floor (whole_width * scale), 1);
  *height = MAX ((int) floor (whole_height * scale), 1);
  return TRUE;
}

static void
ask (SwListingView *self, gboolean quick)
{
  Question *question;
  int width, height;
  double scale;

  if (!fitted (self, &width, &height))
    return;
  scale = MIN ((double) QUICK_PX / MAX (width, height), 1);
  question = g_new (Question, 1);
  question->forecast = sw_forecast_ref (sw_live_get_forecast (self->live));
  question->quick = quick && scale < 1;
  question->width = question->quick ? MAX ((int) (width * scale), 1) : width;
  question->height = question->quick ? MAX ((int) (height * scale), 1) : height;
  sw_latest_ask (self->latest, question);
}

static void
painted_cb (gpointer data, const GError *error, gpointer user_data)
{
  SwListingView *self = user_data;
  Answer *answer = data;

  if (answer == NULL)
    return;
  g_set_object (&self->texture, answer->texture);
  if (g_strcmp0 (self->problem, answer->problem) != 0)
    {
      g_free (self->problem);
      self->problem = g_strdup (answer->problem);
      g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PROBLEM]);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
  if (answer->quick)
    ask (self, FALSE);
  answer_free (answer);
}

static void
updated_cb (SwListingView *self)
{
  ask (self, TRUE);
}

static void
describe (gpointer view)
{
  SwListingView *self = view;
  SwForecast *forecast = sw_live_get_forecast (self->live);
  g_autofree char *words = forecast != NULL ? sw_listing_alt (forecast) : NULL;

  if (words != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

static void
set_live (SwListingView *self, SwLive *live)
{
  if (self->live == live)
    return;
  if (self->live != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->live, self);
      sw_seen_disconnect (GTK_WIDGET (self), self->live);
    }
  g_set_object (&self->live, live);
  if (live == NULL)
    return;
  g_signal_connect_swapped (live, "updated", G_CALLBACK (updated_cb), self);
  sw_seen_connect (GTK_WIDGET (self), live, "told", describe);
  updated_cb (self);
  describe (self);
}

static void
sw_listing_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SwListingView *self = SW_LISTING_VIEW (widget);
  const float factor = (float) gtk_widget_get_scale_factor (widget);
  int width, height;
  float shown_width, shown_height;

  if (self->texture == NULL || !fitted (self, &width, &height))
    return;
  shown_width = (float) width / factor;
  shown_height = (float) height / factor;
  gtk_snapshot_append_texture (snapshot, self->texture,
                               &GRAPHENE_RECT_INIT (floorf (((float) gtk_widget_get_width (widget) - shown_width) / 2), floorf (((float) gtk_widget_get_height (widget) - shown_height) / 2), shown_width, shown_height));
}

static void
sw_listing_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  ask (SW_LISTING_VIEW (widget), TRUE);
}

static void
sw_listing_view_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sw_listing_view_parent_class)->map (widget);
  ask (SW_LISTING_VIEW (widget), TRUE);
}

static void
sw_listing_view_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwListingView *self = SW_LISTING_VIEW (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, self->live);
      break;
    case PROP_PROBLEM:
      g_value_set_string (value, self->problem);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_listing_view_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_LIVE:
      set_live (SW_LISTING_VIEW (object), g_value_get_object (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_listing_view_dispose (GObject *object)
{
  SwListingView *self = SW_LISTING_VIEW (object);

  set_live (self, NULL);
  g_clear_pointer (&self->latest, sw_latest_free);
  g_clear_object (&self->texture);
  g_clear_pointer (&self->problem, g_free);

  G_OBJECT_CLASS (sw_listing_view_parent_class)->dispose (object);
}

static void
sw_listing_view_class_init (SwListingViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = sw_listing_view_get_property;
  object_class->set_property = sw_listing_view_set_property;
  object_class->dispose = sw_listing_view_dispose;
  widget_class->snapshot = sw_listing_view_snapshot;
  widget_class->size_allocate = sw_listing_view_size_allocate;
  widget_class->map = sw_listing_view_map;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  props[PROP_PROBLEM] = g_param_spec_string ("problem", NULL, NULL, NULL, G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_listing_view_init (SwListingView *self)
{
  self->latest = sw_latest_new (paint_worker, painted_cb, self, question_free, answer_free);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}
