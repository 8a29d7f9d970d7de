/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-day-file.h"

#include "files/sw-colourway.h"
#include "files/sw-json-guard-private.h"
#include "files/sw-json-print.h"
#include "files/sw-safe-write-private.h"

#include <glib/gi18n-lib.h>
#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

#define VERSION_MEMBER "strandwise_day"
#define MINUTE_US (60.0 * G_USEC_PER_SEC)

/* Writing */

static void
put_time (JsonObject *object, const char *name, gint64 wall_us)
{
  g_autoptr (GDateTime) second = g_date_time_new_from_unix_utc (wall_us / G_USEC_PER_SEC);
  g_autoptr (GDateTime) at = second != NULL ? g_date_time_add (second, wall_us % G_USEC_PER_SEC) : NULL;
  g_autofree char *text = at != NULL ? g_date_time_format_iso8601 (at) : NULL;

  if (text != NULL)
    json_object_set_string_member (object, name, text);
}

/* What is at its usual value is left out: the file is to be read by people, too. */
static void
put_flag (JsonObject *object, const char *name, gboolean flag)
{
  if (flag)
    json_object_set_boolean_member (object, name, TRUE);
}

static void
put_whole (JsonObject *object, const char *name, gint64 whole, gint64 usual)
{
  if (whole != usual)
    json_object_set_int_member (object, name, whole);
}

static void
put_number (JsonObject *object, const char *name, double number)
{
  if (number != 0)
    json_object_set_double_member (object, name, number);
}

static JsonObject *
deed_object (const SwDayDeed *deed)
{
  JsonObject *object = json_object_new ();

  json_object_set_string_member (object, "kind", sw_deed_kind_name (deed->kind));
  json_object_set_string_member (object, "title", deed->title);
  put_whole (object, "step", deed->step, 0);
  put_whole (object, "nth", deed->nth, 0);
  put_whole (object, "pour", deed->pour, 0);
  put_number (object, "minutes", deed->minutes);
  put_number (object, "temperature_c", deed->temperature_c);
  put_flag (object, "waits", deed->waits);
  put_flag (object, "beside", deed->beside);
  return object;
}

static JsonObject *
timer_object (const SwDayTimer *timer)
{
  JsonObject *object = json_object_new ();

  json_object_set_int_member (object, "id", timer->id);
  json_object_set_string_member (object, "label", timer->label);
  put_whole (object, "deed", timer->deed, -1);
  put_whole (object, "pan", timer->pan, 0);
  json_object_set_double_member (object, "minutes", (double) timer->length_us / MINUTE_US);
  if (timer->paused)
    json_object_set_double_member (object, "paused_with_minutes", (double) timer->left_us / MINUTE_US);
  else
    put_time (object, "ends", timer->end_us);
  put_flag (object, "rung", timer->rung);
  put_flag (object, "quiet", timer->quiet);
  put_flag (object, "put_away", timer->put_away);
  return object;
}

static JsonObject *
event_object (const SwDayEvent *event)
{
  JsonObject *object = json_object_new ();

  put_time (object, "at", event->wall_us);
  json_object_set_string_member (object, "what", sw_day_event_name (event->kind));
  if (*event->title != '\0')
    json_object_set_string_member (object, "title", event->title);
  put_number (object, "minutes", event->minutes);
  return object;
}

static void
put_list (JsonObject *day, const char *name, const GPtrArray *list, JsonObject *(*make) (gconstpointer))
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < list->len; i++)
    json_array_add_object_element (array, make (list->pdata[i]));
  json_object_set_array_member (day, name, array);
}

/* Only of pans that are done each by itself. */
static void
put_places (JsonObject *day, const SwDayClock *clock)
{
  JsonArray *array;

  if (clock->hand == 0)
    return;
  array = json_array_new ();
  for (guint pan = 1; pan <= clock->places->len; pan++)
    {
      const SwDayPlace stored = g_array_index (clock->places, SwDayPlace, pan - 1);
      const SwDayPlace place = pan == clock->hand ? (SwDayPlace){ clock->current, clock->entered_us } : stored;
      JsonObject *object = json_object_new ();

      json_object_set_int_member (object, "deed", place.deed);
      if (place.entered_us != 0)
        put_time (object, "deed_begun", place.entered_us);
      json_array_add_object_element (array, object);
    }
  json_object_set_int_member (day, "hand", clock->hand);
  json_object_set_array_member (day, "places", array);
}

char *
sw_day_file_print (const SwDayClock *clock, const char *document)
{
  g_autoptr (JsonNode) node = json_node_new (JSON_NODE_OBJECT);
  JsonObject *day = json_object_new ();

  g_return_val_if_fail (clock != NULL, NULL);

  json_node_take_object (node, day);
  json_object_set_int_member (day, VERSION_MEMBER, SW_DAY_FILE_VERSION);
  if (document != NULL)
    json_object_set_string_member (day, "document", document);
  put_time (day, "begun", clock->begun_us);
  put_time (day, "seen", clock->seen.wall_us);
  put_time (day, "deed_begun", clock->entered_us);
  json_object_set_int_member (day, "deed", clock->current);
  json_object_set_int_member (day, "pans", clock->pans);
  put_places (day, clock);
  json_object_set_int_member (day, "next_timer", clock->next_timer);
  put_flag (day, "ended", clock->ended);
  put_list (day, "timers", clock->timers, (JsonObject * (*) (gconstpointer)) timer_object);
  put_list (day, "log", clock->events, (JsonObject * (*) (gconstpointer)) event_object);
  put_list (day, "deeds", clock->deeds, (JsonObject * (*) (gconstpointer)) deed_object);
  return sw_json_print (node);
}

/* Reading. Each getter leaves what is not there at its usual value, and fails on what is of the wrong kind or outside. */

typedef struct
{
  JsonObject *object;
  const char *list; /* for the sentence: "timers", or "" */
  guint index;
  GError **error;
} Reader;

static gboolean
fail (const Reader *reader, const char *name)
{
  if (*reader->list == '\0')
    /* Translators: a member of a file */
    g_set_error (reader->error, SW_FILE_ERROR, SW_FILE_ERROR_MEMBER, _ ("“%s” is not what it should be."), name);
  else
    /* Translators: a list in a file, a place in it, and a member there: “timers[2].ends” */
    g_set_error (reader->error, SW_FILE_ERROR, SW_FILE_ERROR_MEMBER, _ ("“%1$s[%2$u].%3$s” is not what it should be."), reader->list, reader->index, name);
  return FALSE;
}

static JsonNode *
value_of (const Reader *reader, const char *name)
{
  return json_object_get_member (reader->object, name);
}

static gboolean
get_number (const Reader *reader, const char *name, double min, double max, double *number)
{
  JsonNode *node = value_of (reader, name);
  GType type = node != NULL && JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;

  if (node == NULL)
    return TRUE;
  if (type != G_TYPE_INT64 && type != G_TYPE_DOUBLE)
    return fail (reader, name);
  *number = json_node_get_double (node);
  return (isfinite (*number) && *number >= min && *number <= max) || fail (reader, name);
}

static gboolean
get_whole (const Reader *reader, const char *name, gint64 min, gint64 max, gint64 *whole)
{
  double number = (double) *whole;

  if (!get_number (reader, name, (double) min, (double) max, &number))
    return FALSE;
  *whole = (gint64) number;
  return number == floor (number) || fail (reader, name);
}

static gboolean
get_uint (const Reader *reader, const char *name, guint max, guint *number)
{
  gint64 whole = *number;

  if (!get_whole (reader, name, 0, max, &whole))
    return FALSE;
  *number = (guint) whole;
  return TRUE;
}

static gboolean
get_flag (const Reader *reader, const char *name, gboolean *flag)
{
  JsonNode *node = value_of (reader, name);

  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_BOOLEAN)
    return fail (reader, name);
  *flag = json_node_get_boolean (node);
  return TRUE;
}

/* (transfer none) */
static gboolean
get_text (const Reader *reader, const char *name, const char **text)
{
  JsonNode *node = value_of (reader, name);

  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING)
    return fail (reader, name);
  *text = json_node_get_string (node);
  return TRUE;
}

static gboolean
get_time (const Reader *reader, const char *name, gint64 *wall_us)
{
  const char *text = NULL;
  g_autoptr (GDateTime) at = NULL;

  if (!get_text (reader, name, &text))
    return FALSE;
  at = text != NULL ? g_date_time_new_from_iso8601 (text, NULL) : NULL;
  if (at == NULL)
    return fail (reader, name);
  *wall_us = g_date_time_to_unix (at) * G_USEC_PER_SEC + g_date_time_get_microsecond (at);
  return TRUE;
}

static gboolean
read_deed (const Reader *reader, SwDayClock *clock)
{
  const char *kind = "", *title = "";
  SwDayDeed *deed = g_new0 (SwDayDeed, 1);
  int index;

  g_ptr_array_add (clock->deeds, deed);
  if (!get_text (reader, "kind", &kind) || !get_text (reader, "title", &title) ||
      !get_uint (reader, "step", SW_ID_MAX, &deed->step) || !get_uint (reader, "nth", SW_DAY_MAX_DEEDS, &deed->nth) ||
      !get_uint (reader, "pour", SW_MAX_STEPS, &deed->pour) ||
      !get_number (reader, "minutes", 0, SW_DAY_MAX_MINUTES * 1000, &deed->minutes) ||
      !get_number (reader, "temperature_c", 0, 200, &deed->temperature_c) ||
      !get_flag (reader, "waits", &deed->waits) || !get_flag (reader, "beside", &deed->beside))
    return FALSE;
  index = sw_deed_kind_from_name (kind);
  if (index < 0)
    return fail (reader, "kind");
  deed->kind = (SwDeedKind) index;
  deed->title = g_strdup (title);
  return TRUE;
}

static gboolean
read_timer_end (const Reader *reader, SwDayTimer *timer)
{
  double left = 0;

  timer->paused = json_object_has_member (reader->object, "paused_with_minutes");
  if (!timer->paused)
    return get_time (reader, "ends", &timer->end_us);
  if (!get_number (reader, "paused_with_minutes", -SW_DAY_MAX_MINUTES * 100, SW_DAY_MAX_MINUTES, &left))
    return FALSE;
  timer->left_us = llround (left * MINUTE_US);
  return TRUE;
}

static gboolean
read_timer (const Reader *reader, SwDayClock *clock)
{
  const char *label = "";
  gint64 deed = -1;
  double minutes = 0;
  SwDayTimer *timer = g_new0 (SwDayTimer, 1);

  g_ptr_array_add (clock->timers, timer);
  if (!get_uint (reader, "id", SW_ID_MAX, &timer->id) || !get_text (reader, "label", &label) ||
      !get_whole (reader, "deed", -1, (gint64) clock->deeds->len, &deed) || !get_uint (reader, "pan", 1000, &timer->pan) ||
      !get_number (reader, "minutes", 0, SW_DAY_MAX_MINUTES, &minutes) || !read_timer_end (reader, timer) ||
      !get_flag (reader, "rung", &timer->rung) || !get_flag (reader, "quiet", &timer->quiet) ||
      !get_flag (reader, "put_away", &timer->put_away))
    return FALSE;
  if (deed >= (gint64) clock->deeds->len)
    return fail (reader, "deed");
  timer->deed = (int) deed;
  timer->length_us = llround (minutes * MINUTE_US);
  timer->label = g_strdup (label);
  return TRUE;
}

static gboolean
read_event (const Reader *reader, SwDayClock *clock)
{
  const char *what = "", *title = "";
  SwDayEvent *event = g_new0 (SwDayEvent, 1);
  int index;

  g_ptr_array_add (clock->events, event);
  if (!get_time (reader, "at", &event->wall_us) || !get_text (reader, "what", &what) || !get_text (reader, "title", &title) ||
      !get_number (reader, "minutes", -1e9, 1e9, &event->minutes))
    return FALSE;
  index = sw_day_event_from_name (what);
  if (index < 0)
    return fail (reader, "what");
  event->kind = (SwDayEventKind) index;
  event->title = g_strdup (title);
  return TRUE;
}

static gboolean
read_place (const Reader *reader, SwDayClock *clock)
{
  SwDayPlace place = { 0, 0 };

  if (!get_uint (reader, "deed", clock->deeds->len, &place.deed))
    return FALSE;
  if (value_of (reader, "deed_begun") != NULL && !get_time (reader, "deed_begun", &place.entered_us))
    return FALSE;
  g_array_append_val (clock->places, place);
  return TRUE;
}

static gboolean
read_list (const Reader *day, const char *name, guint most, gboolean (*read) (const Reader *, SwDayClock *), SwDayClock *clock)
{
  JsonNode *node = value_of (day, name);
  JsonArray *array;

  if (node == NULL || !JSON_NODE_HOLDS_ARRAY (node))
    return fail (day, name);
  array = json_node_get_array (node);
  if (json_array_get_length (array) > most)
    return fail (day, name);
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      JsonNode *element = json_array_get_element (array, i);
      Reader reader = { NULL, name, i, day->error };

      if (!JSON_NODE_HOLDS_OBJECT (element))
        return fail (day, name);
      reader.object = json_node_get_object (element);
      if (!read (&reader, clock))
        return FALSE;
    }
  return TRUE;
}

/* Pans that are done side by side have none, as in files of earlier versions. The place of the pan in hand is the day's own. */
static gboolean
read_places (const Reader *day, SwDayClock *clock)
{
  if (value_of (day, "hand") == NULL)
    return TRUE;
  if (!read_list (day, "places", 1000, read_place, clock) || !get_uint (day, "hand", clock->pans, &clock->hand))
    return FALSE;
  if (clock->hand == 0 || clock->places->len != clock->pans)
    return fail (day, "hand");
  clock->entered_us = g_array_index (clock->places, SwDayPlace, clock->hand - 1).entered_us;
  return TRUE;
}

static gboolean
read_day (const Reader *reader, SwDayClock *clock)
{
  gint64 version = 1;

  if (value_of (reader, VERSION_MEMBER) == NULL)
    return fail (reader, VERSION_MEMBER);
  if (!get_whole (reader, VERSION_MEMBER, 1, 1000000, &version))
    return FALSE;
  if (version > SW_DAY_FILE_VERSION)
    {
      g_set_error (reader->error, SW_FILE_ERROR, SW_FILE_ERROR_VERSION, _ ("It was made by a newer Strandwise."));
      return FALSE;
    }
  return read_list (reader, "deeds", SW_DAY_MAX_DEEDS, read_deed, clock) &&
         read_list (reader, "timers", SW_DAY_MAX_TIMERS, read_timer, clock) &&
         read_list (reader, "log", SW_DAY_MAX_EVENTS, read_event, clock) &&
         get_time (reader, "begun", &clock->begun_us) && get_time (reader, "seen", &clock->seen.wall_us) &&
         get_time (reader, "deed_begun", &clock->entered_us) &&
         get_uint (reader, "deed", clock->deeds->len, &clock->current) && get_uint (reader, "pans", 1000, &clock->pans) &&
         read_places (reader, clock) && get_uint (reader, "next_timer", SW_ID_MAX, &clock->next_timer) && get_flag (reader, "ended", &clock->ended);
}

SwDayClock *
sw_day_file_parse (const char *bytes, gsize n, GError **error)
{
  g_autoptr (SwDayClock) clock = sw_day_clock_new_empty ();
  g_autoptr (JsonParser) parser = json_parser_new ();
  Reader reader = { NULL, "", 0, error };
  JsonNode *root;

  g_return_val_if_fail (bytes != NULL, NULL);

  if (n > SW_DAY_FILE_MAX_BYTES)
    {
      g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_SIZE, _ ("It is far larger than a day’s log can be."));
      return NULL;
    }
  if (!sw_json_guard (bytes, n, error) || !json_parser_load_from_data (parser, bytes, (gssize) n, error))
    return NULL;
  root = json_parser_get_root (parser);
  if (root == NULL || !JSON_NODE_HOLDS_OBJECT (root))
    {
      fail (&reader, VERSION_MEMBER);
      return NULL;
    }
  reader.object = json_node_get_object (root);
  return read_day (&reader, clock) ? g_steal_pointer (&clock) : NULL;
}

gboolean
sw_day_file_save (const SwDayClock *clock, const char *document, const char *path, GError **error)
{
  g_autofree char *text = sw_day_file_print (clock, document);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  return sw_safe_write (file, text, strlen (text), NULL, NULL, NULL, error);
}

SwDayClock *
sw_day_file_load (const char *path, GError **error)
{
  g_autofree char *text = NULL;
  gsize n;

  g_return_val_if_fail (path != NULL, NULL);

  if (!g_file_get_contents (path, &text, &n, error))
    return NULL;
  return sw_day_file_parse (text, n, error);
}
