/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sw-app-test.h"

#include "app/desk/sw-live.h"
#include "app/desk/sw-templates.h"

/* What came while the document was being edited. */
typedef struct
{
  SwLive *live;
  guint n;
  gint64 seed, edit_time; /* of the newest answer */
} Heard;

static void
updated_cb (SwLive *live, Heard *heard)
{
  const SwForecast *forecast = sw_live_get_forecast (live);

  g_assert_nonnull (forecast);
  g_assert_cmpint (forecast->sketch->seed, >=, heard->seed);
  g_assert_cmpint (sw_live_get_edit_time (live), >=, heard->edit_time);
  heard->n++;
  heard->seed = forecast->sketch->seed;
  heard->edit_time = sw_live_get_edit_time (live);
}

static SwDocument *
demo_document (void)
{
  SwDocument *document = sw_document_new ();
  GError *error = NULL;
  SwSketch *sketch = sw_template_demo (&error);

  g_assert_no_error (error);
  sw_document_set_template (document, sketch);
  return document;
}

/* Without asking: there is a forecast of what the document holds. */
static void
test_first (void)
{
  SwDocument *document = demo_document ();
  SwLive *live = sw_live_new (document);

  g_assert_null (sw_live_get_forecast (live));
  g_assert_true (sw_live_get_busy (live));
  sw_test_wait (sw_live_get_forecast (live) != NULL);
  g_assert_true (sw_sketch_equal (sw_live_get_forecast (live)->sketch, sw_document_get_sketch (document)));
  g_assert_cmpint (sw_live_get_edit_time (live), ==, sw_document_get_changed_at (document));
  sw_test_wait (!sw_live_get_busy (live));
  g_assert_null (sw_live_get_problem (live));
  sw_test_finalize (live);
  sw_test_finalize (document);
}

/* A long drag: answers come during it, never an older one after a newer, and the last is of the last edit. */
static void
test_order (void)
{
  SwDocument *document = demo_document ();
  SwLive *live = sw_live_new (document);
  Heard heard = { live };
  gint64 seed = 10000;

  g_signal_connect (live, "updated", G_CALLBACK (updated_cb), &heard);
  sw_test_wait (sw_live_get_forecast (live) != NULL);
  heard.n = 0;
  heard.seed = 0;
  sw_document_begin_group (document, "Drag");
  /* The helper that waits gives up at last; the edits go on meanwhile. */
  sw_test_wait ((sw_test_edit (document, sw_test_set_seed (++seed), "Drag"), heard.n >= 4));
  g_test_message ("%u answers to %d edits while dragging", heard.n, (int) (seed - 10000));
  sw_document_end_group (document);
  sw_test_wait (!sw_live_get_busy (live));
  g_assert_cmpint (heard.seed, ==, seed);
  g_assert_cmpint (heard.edit_time, ==, sw_document_get_changed_at (document));
  sw_test_finalize (live);
  sw_test_finalize (document);
}

/* Edits of one round of the main loop are one question. */
static void
test_gathers (void)
{
  SwDocument *document = demo_document ();
  SwLive *live = sw_live_new (document);
  Heard heard = { live };

  sw_test_wait (!sw_live_get_busy (live));
  g_signal_connect (live, "updated", G_CALLBACK (updated_cb), &heard);
  for (gint64 seed = 20000; seed < 20050; seed++)
    sw_test_edit (document, sw_test_set_seed (seed), "Edit");
  sw_test_wait (!sw_live_get_busy (live));
  g_assert_cmpuint (heard.n, ==, 1);
  g_assert_cmpint (heard.seed, ==, 20049);
  sw_test_finalize (live);
  sw_test_finalize (document);
}

/* A drawing without a forecast is said in a sentence; the last good picture stays. */
static void
test_problem (void)
{
  SwDocument *document = demo_document ();
  SwLive *live = sw_live_new (document);
  const SwSample impossible = { SW_SAMPLE_LAB, { 95, 90, -90 } };
  SwValue value = sw_value_colour (&impossible);
  guint dye = ((const SwDye *) sw_document_get_sketch (document)->dyes->pdata[0])->id;
  GError *error = NULL;
  SwForecast *good;

  sw_test_wait (!sw_live_get_busy (live));
  good = sw_live_get_forecast (live);
  sw_test_edit (document, sw_edit_set (SW_RECORD_DYE, dye, "sample", &value), "Change Colour");
  sw_test_wait (sw_live_get_problem (live) != NULL);
  g_test_message ("%s", sw_live_get_problem (live));
  g_assert_true (sw_live_get_forecast (live) == good);
  g_assert_true (sw_document_undo (document, &error));
  g_assert_no_error (error);
  sw_test_wait (sw_live_get_problem (live) == NULL);
  sw_test_finalize (live);
  sw_test_finalize (document);
}

/* The window is closed while a forecast is under way. */
static void
test_leave (void)
{
  for (int i = 0; i < 20; i++)
    {
      SwDocument *document = demo_document ();
      SwLive *live = sw_live_new (document);

      sw_test_idle ((guint) i);
      sw_test_finalize (live);
      sw_test_finalize (document);
    }
  sw_test_idle (300);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/app/live/first", test_first);
  g_test_add_func ("/app/live/order", test_order);
  g_test_add_func ("/app/live/gathers", test_gathers);
  g_test_add_func ("/app/live/problem", test_problem);
  g_test_add_func ("/app/live/leave", test_leave);
  return g_test_run ();
}
