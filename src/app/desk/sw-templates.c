/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-templates.h"

#include "files/sw-colourway.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#define FIRST_DEMO "lamplighters-walk"

const SwTemplate sw_templates[] = {
  { "empty", N_ ("Empty Pan"), NULL },
  { "bands", N_ ("Bands"), "lamplighters-walk" },
  { "speckles", N_ ("Speckles"), "sweet-shop-window" },
  { "gradient", N_ ("Gradient"), "first-light" },
  { "self-striping", N_ ("Self-Striping"), "deckchair" },
  { "semi-solid", N_ ("Semi-Solid"), "bramble-jam" },
  { "planned-pooling", N_ ("Planned Pooling"), "plumb-line" },
  { "several-skeins", N_ ("Several Skeins in One Pan"), "rock-pool" },
};

const gsize sw_n_templates = G_N_ELEMENTS (sw_templates);

const SwTemplate *
sw_template_find (const char *id)
{
  for (gsize i = 0; i < sw_n_templates; i++)
    if (g_strcmp0 (sw_templates[i].id, id) == 0)
      return &sw_templates[i];
  return NULL;
}

static SwSketch *
load_demo (const char *demo, GError **error)
{
  g_autofree char *path = g_strdup_printf ("/io/strandwise/Strandwise/demos/%s.colourway", demo);
  g_autoptr (GBytes) bytes = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, error);
  const char *text;
  gsize n;

  if (bytes == NULL)
    return NULL;
  text = g_bytes_get_data (bytes, &n);
  return sw_colourway_parse (text, n, error);
}

/* The pan before anything is poured: pours go before the rest, the second face's and its flip between rest and set. */
static SwSketch *
empty_pan (void)
{
  static const SwStepKind usual[] = { SW_STEP_REST, SW_STEP_SET };
  SwSketch *sketch = sw_sketch_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (usual); i++)
    g_ptr_array_add (sketch->steps, sw_step_new (sw_sketch_fresh_id (sketch), usual[i]));
  return sketch;
}

SwSketch *
sw_template_new_sketch (const SwTemplate *self, GError **error)
{
  SwSketch *sketch;

  g_return_val_if_fail (self != NULL, NULL);

  sketch = self->demo != NULL ? load_demo (self->demo, error) : empty_pan ();
  if (sketch == NULL)
    return NULL;

  g_free (sketch->title);
  sketch->title = g_strdup ("");
  g_free (sketch->notes);
  sketch->notes = g_strdup ("");
  return sketch;
}

SwSketch *
sw_template_demo (GError **error)
{
  return load_demo (FIRST_DEMO, error);
}
