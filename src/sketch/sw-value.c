/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-value.h"

void
sw_value_copy (const SwValue *value, SwValue *copy)
{
  g_return_if_fail (value != NULL && copy != NULL);

  *copy = *value;
  if (value->kind == SW_KIND_TEXT)
    copy->as.text = g_strdup (value->as.text);
}

void
sw_value_clear (SwValue *value)
{
  g_return_if_fail (value != NULL);

  if (value->kind == SW_KIND_TEXT)
    g_free (value->as.text);
  *value = (SwValue){ 0 };
}

gboolean
sw_value_equal (const SwValue *a, const SwValue *b)
{
  g_return_val_if_fail (a != NULL && b != NULL, FALSE);

  if (a->kind != b->kind)
    return FALSE;

  switch (a->kind)
    {
    case SW_KIND_NUMBER:
      return a->as.number == b->as.number;
    case SW_KIND_WHOLE:
    case SW_KIND_DYE:
      return a->as.whole == b->as.whole;
    case SW_KIND_TEXT:
      return g_strcmp0 (a->as.text, b->as.text) == 0;
    case SW_KIND_CHOICE:
      return a->as.choice == b->as.choice;
    case SW_KIND_FLAG:
      return !a->as.flag == !b->as.flag;
    case SW_KIND_COLOUR:
      return sw_sample_equal (&a->as.colour, &b->as.colour);
    default:
      g_return_val_if_reached (FALSE);
    }
}

SwValue
sw_value_number (double number)
{
  return (SwValue){ .kind = SW_KIND_NUMBER, .as.number = number };
}

SwValue
sw_value_whole (gint64 whole)
{
  return (SwValue){ .kind = SW_KIND_WHOLE, .as.whole = whole };
}

SwValue
sw_value_text (const char *text)
{
  return (SwValue){ .kind = SW_KIND_TEXT, .as.text = g_strdup (text != NULL ? text : "") };
}

SwValue
sw_value_choice (int choice)
{
  return (SwValue){ .kind = SW_KIND_CHOICE, .as.choice = choice };
}

SwValue
sw_value_flag (gboolean flag)
{
  return (SwValue){ .kind = SW_KIND_FLAG, .as.flag = flag ? TRUE : FALSE };
}

SwValue
sw_value_colour (const SwSample *sample)
{
  return (SwValue){ .kind = SW_KIND_COLOUR, .as.colour = *sample };
}

SwValue
sw_value_dye (guint id)
{
  return (SwValue){ .kind = SW_KIND_DYE, .as.whole = id };
}

gsize
sw_sample_numbers (SwSampleKind kind)
{
  return kind == SW_SAMPLE_REFLECTANCE ? SW_BANDS : 3;
}

gboolean
sw_sample_equal (const SwSample *a, const SwSample *b)
{
  gsize n;

  g_return_val_if_fail (a != NULL && b != NULL, FALSE);

  if (a->kind != b->kind)
    return FALSE;

  n = sw_sample_numbers (a->kind);
  for (gsize i = 0; i < n; i++)
    if (a->numbers[i] != b->numbers[i])
      return FALSE;
  return TRUE;
}
