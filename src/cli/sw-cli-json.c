/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-json.h"

#include <math.h>

double
sw_cli_round (double number, int digits)
{
  char format[16], text[G_ASCII_DTOSTR_BUF_SIZE];

  if (!isfinite (number))
    return number;
  g_snprintf (format, sizeof format, "%%.%de", digits - 1);
  g_ascii_formatd (text, sizeof text, format, number);
  return g_ascii_strtod (text, NULL) + 0.0; /* -0 is 0 */
}

static void
add_number (JsonBuilder *builder, double number, int digits)
{
  /* JSON knows no infinity. */
  if (isfinite (number))
    json_builder_add_double_value (builder, sw_cli_round (number, digits));
  else
    json_builder_add_null_value (builder);
}

void
sw_cli_json_number (JsonBuilder *builder, const char *member, double number, int digits)
{
  json_builder_set_member_name (builder, member);
  add_number (builder, number, digits);
}

void
sw_cli_json_whole (JsonBuilder *builder, const char *member, gint64 whole)
{
  json_builder_set_member_name (builder, member);
  json_builder_add_int_value (builder, whole);
}

void
sw_cli_json_text (JsonBuilder *builder, const char *member, const char *text)
{
  json_builder_set_member_name (builder, member);
  json_builder_add_string_value (builder, text != NULL ? text : "");
}

void
sw_cli_json_numbers (JsonBuilder *builder, const char *member, const double *numbers, gsize n, int digits)
{
  if (member != NULL)
    json_builder_set_member_name (builder, member);
  json_builder_begin_array (builder);
  for (gsize i = 0; i < n; i++)
    add_number (builder, numbers[i], digits);
  json_builder_end_array (builder);
}

void
sw_cli_json_xyz (JsonBuilder *builder, SwXyz xyz, int digits)
{
  sw_cli_json_numbers (builder, "xyz", (const double[]){ xyz.x, xyz.y, xyz.z }, 3, digits);
}

void
sw_cli_json_lab (JsonBuilder *builder, SwLab lab, int digits)
{
  sw_cli_json_numbers (builder, "lab", (const double[]){ lab.l, lab.a, lab.b }, 3, digits);
}

/* A channel's code, 0 .. 255. */
static int
code (double channel)
{
  return (int) lround (CLAMP (channel, 0.0, 1.0) * 255.0);
}

void
sw_cli_json_srgb (JsonBuilder *builder, SwSrgb srgb)
{
  const double channels[] = { srgb.r, srgb.g, srgb.b };
  g_autofree char *hex = sw_cli_hex (srgb);

  json_builder_set_member_name (builder, "srgb");
  json_builder_begin_array (builder);
  for (gsize i = 0; i < G_N_ELEMENTS (channels); i++)
    json_builder_add_int_value (builder, code (channels[i]));
  json_builder_end_array (builder);
  sw_cli_json_text (builder, "hex", hex);
}

char *
sw_cli_hex (SwSrgb srgb)
{
  return g_strdup_printf ("#%02x%02x%02x", (guint) code (srgb.r), (guint) code (srgb.g), (guint) code (srgb.b));
}
