/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-colourway-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/*
 * One member's value in JSON and back: a row for each kind of value.
 */

/* Names of a colour's forms, by SwSampleKind. */
static const char *const sample_names[] = {
  [SW_SAMPLE_SRGB] = "srgb",
  [SW_SAMPLE_LAB] = "lab",
  [SW_SAMPLE_REFLECTANCE] = "reflectance",
};

static gboolean
holds (JsonNode *node, GType type)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == type;
}

/* A JSON number, whole or not. */
static gboolean
read_double (JsonNode *node, double *number)
{
  if (!holds (node, G_TYPE_DOUBLE) && !holds (node, G_TYPE_INT64))
    return FALSE;
  *number = json_node_get_double (node) + 0.0; /* -0 is 0 */
  return TRUE;
}

gboolean
sw_colourway_whole_read (JsonNode *node, gint64 *whole)
{
  double number;

  if (holds (node, G_TYPE_INT64))
    {
      *whole = json_node_get_int (node);
      return TRUE;
    }
  if (!read_double (node, &number) || number != floor (number) || fabs (number) >= 0x1p63)
    return FALSE;
  *whole = (gint64) number;
  return TRUE;
}

static gboolean
read_number (const SwMember *member, JsonNode *node, SwValue *value)
{
  double number;

  if (!read_double (node, &number))
    return FALSE;
  *value = sw_value_number (number);
  return TRUE;
}

static gboolean
read_whole (const SwMember *member, JsonNode *node, SwValue *value)
{
  gint64 whole;

  if (!sw_colourway_whole_read (node, &whole))
    return FALSE;
  *value = sw_value_whole (whole);
  return TRUE;
}

static gboolean
read_text (const SwMember *member, JsonNode *node, SwValue *value)
{
  if (!holds (node, G_TYPE_STRING))
    return FALSE;
  *value = sw_value_text (json_node_get_string (node));
  return TRUE;
}

static gboolean
read_choice (const SwMember *member, JsonNode *node, SwValue *value)
{
  if (!holds (node, G_TYPE_STRING))
    return FALSE;
  for (int i = 0; member->choices[i] != NULL; i++)
    if (strcmp (member->choices[i], json_node_get_string (node)) == 0)
      {
        *value = sw_value_choice (i);
        return TRUE;
      }
  return FALSE;
}

static gboolean
read_flag (const SwMember *member, JsonNode *node, SwValue *value)
{
  if (!holds (node, G_TYPE_BOOLEAN))
    return FALSE;
  *value = sw_value_flag (json_node_get_boolean (node));
  return TRUE;
}

static gboolean
read_dye (const SwMember *member, JsonNode *node, SwValue *value)
{
  gint64 id;

  if (!sw_colourway_whole_read (node, &id) || id < 1 || id > SW_ID_MAX)
    return FALSE;
  *value = sw_value_dye ((guint) id);
  return TRUE;
}

static gboolean
read_sample_numbers (SwSample *sample, JsonNode *node)
{
  JsonArray *array;
  gsize n = sw_sample_numbers (sample->kind);

  if (!JSON_NODE_HOLDS_ARRAY (node))
    return FALSE;
  array = json_node_get_array (node);
  if (json_array_get_length (array) != n)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (!read_double (json_array_get_element (array, i), &sample->numbers[i]))
      return FALSE;
  return TRUE;
}

/* Exactly one form: a second one would be a second colour, and a note in it could not be kept. */
static gboolean
read_colour (const SwMember *member, JsonNode *node, SwValue *value)
{
  JsonObject *object;

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return FALSE;
  object = json_node_get_object (node);
  if (json_object_get_size (object) != 1)
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (sample_names); i++)
    if (json_object_has_member (object, sample_names[i]))
      {
        SwSample sample = { .kind = (SwSampleKind) i };

        if (!read_sample_numbers (&sample, json_object_get_member (object, sample_names[i])))
          return FALSE;
        *value = sw_value_colour (&sample);
        return TRUE;
      }
  return FALSE;
}

static JsonNode *
new_double (double number)
{
  return json_node_init_double (json_node_alloc (), number);
}

static JsonNode *
new_int (gint64 number)
{
  return json_node_init_int (json_node_alloc (), number);
}

static JsonNode *
new_string (const char *text)
{
  return json_node_init_string (json_node_alloc (), text != NULL ? text : "");
}

static JsonNode *
write_number (const SwMember *member, const SwValue *value)
{
  return new_double (value->as.number);
}

static JsonNode *
write_whole (const SwMember *member, const SwValue *value)
{
  return new_int (value->as.whole);
}

static JsonNode *
write_text (const SwMember *member, const SwValue *value)
{
  return new_string (value->as.text);
}

static JsonNode *
write_choice (const SwMember *member, const SwValue *value)
{
  return new_string (member->choices[value->as.choice]);
}

static JsonNode *
write_flag (const SwMember *member, const SwValue *value)
{
  return json_node_init_boolean (json_node_alloc (), value->as.flag);
}

static JsonNode *
write_colour (const SwMember *member, const SwValue *value)
{
  const SwSample *sample = &value->as.colour;
  JsonObject *object = json_object_new ();
  JsonArray *array = json_array_new ();
  JsonNode *node = json_node_alloc ();

  for (gsize i = 0; i < sw_sample_numbers (sample->kind); i++)
    json_array_add_element (array, new_double (sample->numbers[i]));
  json_object_set_array_member (object, sample_names[sample->kind], array);
  json_node_init_object (node, object);
  json_object_unref (object);
  return node;
}

static const struct
{
  gboolean (*read) (const SwMember *member, JsonNode *node, SwValue *value);
  JsonNode *(*write) (const SwMember *member, const SwValue *value);
  const char *why; /* it cannot be read, and what now */
} kinds[] = {
  [SW_KIND_NUMBER] = { read_number, write_number, N_ ("This must be a number. Write one without quotes, or delete the member to use its usual value.") },
  [SW_KIND_WHOLE] = { read_whole, write_whole, N_ ("This must be a whole number. Write one without quotes, or delete the member to use its usual value.") },
  [SW_KIND_TEXT] = { read_text, write_text, N_ ("This must be a text. Put it in double quotes, or delete the member.") },
  [SW_KIND_CHOICE] = { read_choice, write_choice, NULL },
  [SW_KIND_FLAG] = { read_flag, write_flag, N_ ("This must be true or false. Write one of them without quotes, or delete the member to use its usual value.") },
  [SW_KIND_COLOUR] = { read_colour, write_colour, N_ ("This must be a colour in one of three forms. Write {\"srgb\": [188, 64, 92]}, {\"lab\": [46, 51, 9]} or {\"reflectance\": [36 numbers, from 380 to 730 nm by 10]}.") },
  [SW_KIND_DYE] = { read_dye, write_whole, N_ ("This must be the id of a dye, a whole number. Write the number that one of the dyes has as its “id”.") },
};

static char *
explain_kind (const SwMember *member)
{
  g_autofree char *words = NULL;

  if (member->kind != SW_KIND_CHOICE)
    return g_strdup (_ (kinds[member->kind].why));
  words = g_strjoinv (", ", (char **) member->choices);
  /* Translators: a list of words, as they stand in the file */
  return g_strdup_printf (_ ("This must be one of the words %s. Write one of them in double quotes, or delete the member to use the usual one."), words);
}

gboolean
sw_colourway_value_read (const SwMember *member, JsonNode *node, SwValue *value, char **why)
{
  g_autoptr (GError) error = NULL;
  SwValue read = { 0 };

  if (!kinds[member->kind].read (member, node, &read))
    {
      *why = explain_kind (member);
      return FALSE;
    }
  if (!sw_member_check (member, &read, &error))
    {
      /* Translators: %s is a sentence that says what the member may hold */
      *why = g_strdup_printf (_ ("%s Correct it, or delete the member to use its usual value."), error->message);
      sw_value_clear (&read);
      return FALSE;
    }
  *value = read;
  return TRUE;
}

JsonNode *
sw_colourway_value_write (const SwMember *member, const SwValue *value)
{
  return kinds[member->kind].write (member, value);
}
