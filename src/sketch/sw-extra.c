/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-sketch.h"

static void
extra_free (gpointer data)
{
  SwExtra *extra = data;

  g_free (extra->name);
  g_free (extra->json);
  g_free (extra);
}

void
sw_extras_add (GPtrArray **extras, const char *name, const char *json)
{
  SwExtra *extra;

  g_return_if_fail (extras != NULL && name != NULL && json != NULL);

  if (*extras == NULL)
    *extras = g_ptr_array_new_with_free_func (extra_free);

  extra = g_new (SwExtra, 1);
  extra->name = g_strdup (name);
  extra->json = g_strdup (json);
  g_ptr_array_add (*extras, extra);
}

GPtrArray *
sw_extras_copy (const GPtrArray *extras)
{
  GPtrArray *copy = NULL;

  if (extras == NULL)
    return NULL;

  for (guint i = 0; i < extras->len; i++)
    {
      const SwExtra *extra = extras->pdata[i];

      sw_extras_add (&copy, extra->name, extra->json);
    }
  return copy;
}

void
sw_extras_free (GPtrArray *extras)
{
  if (extras != NULL)
    g_ptr_array_unref (extras);
}

gboolean
sw_extras_equal (const GPtrArray *a, const GPtrArray *b)
{
  guint n_a = a != NULL ? a->len : 0;
  guint n_b = b != NULL ? b->len : 0;

  if (n_a != n_b)
    return FALSE;

  for (guint i = 0; i < n_a; i++)
    {
      const SwExtra *extra_a = a->pdata[i];
      const SwExtra *extra_b = b->pdata[i];

      if (g_strcmp0 (extra_a->name, extra_b->name) != 0 || g_strcmp0 (extra_a->json, extra_b->json) != 0)
        return FALSE;
    }
  return TRUE;
}
