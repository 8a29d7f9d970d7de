/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * data/colourway.schema.json says what the member tables say: it is made from
 * them here and compared. Run with SW_RECORD=1 to write it anew.
 */
#include "config.h"

#include "files/sw-colourway.h"
#include "files/sw-json-print.h"
#include "sketch/sw-member.h"

/* What sw_member_check() allows in a text besides what can be seen: line ends and tabs. */
#define NO_CONTROL "^[^\\u0000-\\u0008\\u000b\\u000c\\u000e-\\u001f\\u007f]*$"

static JsonObject *
add_object (JsonObject *parent, const char *name)
{
  JsonObject *object = json_object_new ();

  json_object_set_object_member (parent, name, object);
  return object;
}

static void
add_limits (JsonObject *schema, double min, double max)
{
  json_object_set_double_member (schema, "minimum", min);
  json_object_set_double_member (schema, "maximum", max);
}

static void
add_reference (JsonObject *schema, const char *name)
{
  g_autofree char *path = g_strconcat ("#/$defs/", name, NULL);

  json_object_set_string_member (schema, "$ref", path);
}

/* 0, or from the first number above the gap. */
static void
add_gap (JsonObject *schema, const SwMember *member)
{
  JsonArray *either = json_array_new ();
  JsonObject *zero = json_object_new ();
  JsonObject *above = json_object_new ();

  json_object_set_double_member (zero, "const", 0);
  json_object_set_double_member (above, "minimum", member->above_zero);
  json_array_add_object_element (either, zero);
  json_array_add_object_element (either, above);
  json_object_set_array_member (schema, "anyOf", either);
}

static void
add_whole (JsonObject *schema, const SwMember *member)
{
  JsonArray *doubled;

  json_object_set_string_member (schema, "type", "integer");
  if (!member->doubling)
    {
      add_limits (schema, member->min, member->max);
      return;
    }
  doubled = json_array_new ();
  for (gint64 whole = (gint64) member->min; whole <= (gint64) member->max; whole *= 2)
    json_array_add_int_element (doubled, whole);
  json_object_set_array_member (schema, "enum", doubled);
}

static void
add_choices (JsonObject *schema, const SwMember *member)
{
  JsonArray *choices = json_array_new ();

  for (gsize i = 0; member->choices[i] != NULL; i++)
    json_array_add_string_element (choices, member->choices[i]);
  json_object_set_array_member (schema, "enum", choices);
}

static void
add_type (JsonObject *schema, const SwMember *member)
{
  switch (member->kind)
    {
    case SW_KIND_NUMBER:
      json_object_set_string_member (schema, "type", "number");
      add_limits (schema, member->min, member->max);
      if (member->above_zero > 0)
        add_gap (schema, member);
      break;
    case SW_KIND_WHOLE:
      add_whole (schema, member);
      break;
    case SW_KIND_TEXT:
      json_object_set_string_member (schema, "type", "string");
      json_object_set_int_member (schema, "maxLength", (gint64) member->max);
      json_object_set_string_member (schema, "pattern", NO_CONTROL);
      break;
    case SW_KIND_CHOICE:
      add_choices (schema, member);
      break;
    case SW_KIND_FLAG:
      json_object_set_string_member (schema, "type", "boolean");
      break;
    case SW_KIND_COLOUR:
      add_reference (schema, "colour");
      break;
    case SW_KIND_DYE:
    default:
      add_reference (schema, "id");
      break;
    }
}

/* As the writer of the file would put it. */
static void
add_default (JsonObject *schema, const SwMember *member, SwStepKind kind)
{
  SwValue value;
  JsonObject *object;
  JsonArray *array;

  sw_member_fallback (member, kind, &value);
  switch (member->kind)
    {
    case SW_KIND_NUMBER:
      json_object_set_double_member (schema, "default", value.as.number);
      break;
    case SW_KIND_WHOLE:
      json_object_set_int_member (schema, "default", value.as.whole);
      break;
    case SW_KIND_TEXT:
      json_object_set_string_member (schema, "default", value.as.text);
      break;
    case SW_KIND_CHOICE:
      json_object_set_string_member (schema, "default", member->choices[value.as.choice]);
      break;
    case SW_KIND_FLAG:
      json_object_set_boolean_member (schema, "default", value.as.flag);
      break;
    case SW_KIND_COLOUR:
      g_assert_cmpint (value.as.colour.kind, !=, SW_SAMPLE_REFLECTANCE);
      object = add_object (schema, "default");
      array = json_array_new ();
      for (gsize i = 0; i < 3; i++)
        json_array_add_double_element (array, value.as.colour.numbers[i]);
      json_object_set_array_member (object, value.as.colour.kind == SW_SAMPLE_LAB ? "lab" : "srgb", array);
      break;
    case SW_KIND_DYE:
    default:
      break;
    }
  sw_value_clear (&value);
}

static void
add_members (JsonObject *properties, SwRecord record, SwStepKind kind)
{
  gsize n;
  const SwMember *members = sw_record_members (record, &n);

  for (gsize i = 0; i < n; i++)
    {
      JsonObject *schema;
      g_autofree char *description = NULL;

      if (!sw_member_applies (&members[i], kind))
        continue;
      schema = add_object (properties, members[i].name);
      description = members[i].unit[0] != '\0' ? g_strdup_printf ("%s, %s", members[i].label, members[i].unit) : g_strdup (members[i].label);
      json_object_set_string_member (schema, "description", description);
      add_type (schema, &members[i]);
      add_default (schema, &members[i], kind);
    }
}

static void
add_required (JsonObject *schema, const char *first, const char *second)
{
  JsonArray *required = json_array_new ();

  json_array_add_string_element (required, first);
  if (second != NULL)
    json_array_add_string_element (required, second);
  json_object_set_array_member (schema, "required", required);
}

static void
add_record (JsonObject *parent, SwRecord record)
{
  JsonObject *schema = add_object (parent, sw_record_name (record));

  json_object_set_string_member (schema, "type", "object");
  add_members (add_object (schema, "properties"), record, SW_STEP_BAND);
}

static void
add_list (JsonObject *parent, SwRecord record, gint64 max, const char *item)
{
  JsonObject *schema = add_object (parent, sw_record_name (record));

  json_object_set_string_member (schema, "type", "array");
  json_object_set_int_member (schema, "maxItems", max);
  add_reference (add_object (schema, "items"), item);
}

static void
add_properties (JsonObject *properties)
{
  JsonObject *version = add_object (properties, "colourway");

  json_object_set_string_member (version, "description", "Version of the format");
  json_object_set_int_member (version, "const", SW_COLOURWAY_VERSION);
  add_members (properties, SW_RECORD_SKETCH, SW_STEP_BAND);
  add_record (properties, SW_RECORD_YARN);
  add_record (properties, SW_RECORD_REEL);
  add_record (properties, SW_RECORD_LAY);
  add_record (properties, SW_RECORD_BATH);
  add_list (properties, SW_RECORD_DYE, SW_MAX_DYES, "dye");
  add_list (properties, SW_RECORD_STEP, SW_MAX_STEPS, "step");
  add_record (properties, SW_RECORD_CLOTH);
  add_record (properties, SW_RECORD_SHEET);
  add_record (properties, SW_RECORD_LISTING);
  add_list (properties, SW_RECORD_BATCH, SW_MAX_BATCHES, "batch");
}

/* One form of a colour: an object of one member, a list of numbers. */
static void
add_colour_form (JsonArray *forms, const char *name, SwSampleKind kind, const char *description)
{
  static const double limits[][2][2] = {
    /* of the first number, of the others: as in sw_member_check() */
    [SW_SAMPLE_SRGB] = { { 0, 255 }, { 0, 255 } },
    [SW_SAMPLE_LAB] = { { 0, 100 }, { -150, 150 } },
    [SW_SAMPLE_REFLECTANCE] = { { 0, 1 }, { 0, 1 } },
  };
  gint64 n = (gint64) sw_sample_numbers (kind);
  JsonObject *form = json_object_new ();
  JsonObject *list;
  JsonObject *first = json_object_new ();
  JsonArray *prefix = json_array_new ();

  json_object_set_string_member (form, "type", "object");
  add_required (form, name, NULL);
  list = add_object (add_object (form, "properties"), name);
  json_object_set_boolean_member (form, "additionalProperties", FALSE);
  json_object_set_string_member (list, "description", description);
  json_object_set_string_member (list, "type", "array");
  json_object_set_int_member (list, "minItems", n);
  json_object_set_int_member (list, "maxItems", n);
  json_object_set_string_member (first, "type", "number");
  add_limits (first, limits[kind][0][0], limits[kind][0][1]);
  json_array_add_object_element (prefix, first);
  json_object_set_array_member (list, "prefixItems", prefix);
  json_object_set_string_member (add_object (list, "items"), "type", "number");
  add_limits (json_object_get_object_member (list, "items"), limits[kind][1][0], limits[kind][1][1]);
  json_array_add_object_element (forms, form);
}

static void
add_colour (JsonObject *definitions)
{
  JsonArray *forms = json_array_new ();

  add_colour_form (forms, "srgb", SW_SAMPLE_SRGB, "sRGB codes");
  add_colour_form (forms, "lab", SW_SAMPLE_LAB, "CIELAB under D65, 2 degree observer");
  add_colour_form (forms, "reflectance", SW_SAMPLE_REFLECTANCE, "Reflectance from 380 to 730 nm by 10");
  json_object_set_array_member (add_object (definitions, "colour"), "oneOf", forms);
}

static void
add_id (JsonObject *definitions)
{
  JsonObject *id = add_object (definitions, "id");

  json_object_set_string_member (id, "type", "integer");
  add_limits (id, 1, SW_ID_MAX);
}

static void
add_batch (JsonObject *definitions)
{
  JsonObject *batch = add_object (definitions, "batch");
  JsonObject *properties;

  json_object_set_string_member (batch, "type", "object");
  add_required (batch, "id", NULL);
  properties = add_object (batch, "properties");
  add_reference (add_object (properties, "id"), "id");
  add_members (properties, SW_RECORD_BATCH, SW_STEP_BAND);
}

static void
add_dye (JsonObject *definitions)
{
  JsonObject *dye = add_object (definitions, "dye");
  JsonObject *properties;

  json_object_set_string_member (dye, "type", "object");
  add_required (dye, "id", NULL);
  properties = add_object (dye, "properties");
  add_reference (add_object (properties, "id"), "id");
  add_members (properties, SW_RECORD_DYE, SW_STEP_BAND);
}

/* "If the kind is this one, the members are those." */
static JsonObject *
new_step_rule (SwStepKind kind)
{
  JsonObject *rule = json_object_new ();
  JsonObject *condition = add_object (add_object (rule, "if"), "properties");
  JsonObject *then = add_object (rule, "then");

  json_object_set_string_member (add_object (condition, "kind"), "const", sw_step_kind_name (kind));
  if (SW_STEP_POURS & SW_STEP_BIT (kind))
    add_required (then, "dye", NULL);
  add_members (add_object (then, "properties"), SW_RECORD_STEP, kind);
  return rule;
}

static void
add_step (JsonObject *definitions)
{
  JsonObject *step = add_object (definitions, "step");
  JsonObject *properties;
  JsonArray *kinds = json_array_new ();
  JsonArray *rules = json_array_new ();

  json_object_set_string_member (step, "type", "object");
  add_required (step, "id", "kind");
  properties = add_object (step, "properties");
  add_reference (add_object (properties, "id"), "id");
  for (int kind = 0; kind < SW_N_STEP_KINDS; kind++)
    {
      json_array_add_string_element (kinds, sw_step_kind_name ((SwStepKind) kind));
      json_array_add_object_element (rules, new_step_rule ((SwStepKind) kind));
    }
  json_object_set_array_member (add_object (properties, "kind"), "enum", kinds);
  json_object_set_array_member (step, "allOf", rules);
}

static char *
print_schema (void)
{
  g_autoptr (JsonObject) root = json_object_new ();
  g_autoptr (JsonNode) node = json_node_alloc ();
  JsonObject *definitions;

  json_object_set_string_member (root, "$schema", "https://json-schema.org/draft/2020-12/schema");
  json_object_set_string_member (root, "$id", "urn:strandwise:colourway:1");
  json_object_set_string_member (root, "title", "Strandwise colourway");
  json_object_set_string_member (root, "description", "A hand-dyer's sketch: see docs/file-format.md. Members that are not listed are allowed, and kept by programs that do not know them.");
  json_object_set_string_member (root, "type", "object");
  add_required (root, "colourway", NULL);
  add_properties (add_object (root, "properties"));
  definitions = add_object (root, "$defs");
  add_id (definitions);
  add_colour (definitions);
  add_dye (definitions);
  add_batch (definitions);
  add_step (definitions);
  json_node_init_object (node, root);
  return sw_json_print (node);
}

static void
test_schema (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "colourway.schema.json", NULL);
  g_autofree char *made = print_schema ();
  g_autofree char *checked_in = NULL;
  g_autoptr (GError) error = NULL;

  g_test_summary ("The schema in data/ is the one that the member tables make");

  if (g_getenv ("SW_RECORD") != NULL)
    g_file_set_contents (path, made, -1, &error);
  g_assert_no_error (error);
  g_file_get_contents (path, &checked_in, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (made, ==, checked_in);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/files/schema", test_schema);
  return g_test_run ();
}
