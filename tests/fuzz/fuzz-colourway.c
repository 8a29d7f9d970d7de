/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * Any bytes at all: the reader refuses them with a sentence, or reads a sketch
 * that prints and reads back the same.
 */
#include "config.h"

#include "files/sw-colourway.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static void
check_refusal (const GError *error)
{
  if (error == NULL || error->domain != SW_FILE_ERROR || error->message[0] == '\0' || !g_utf8_validate (error->message, -1, NULL))
    abort ();
}

static void
check_round_trip (const SwSketch *sketch)
{
  g_autofree char *text = sw_colourway_print (sketch);
  g_autoptr (SwSketch) again = sw_colourway_parse (text, strlen (text), NULL);
  g_autofree char *text_again = again != NULL ? sw_colourway_print (again) : NULL;

  if (again == NULL || !sw_sketch_equal (sketch, again) || !g_str_equal (text, text_again))
    abort ();
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwSketch) sketch = sw_colourway_parse ((const char *) data, size, &error);

  if (sketch != NULL)
    check_round_trip (sketch);
  else
    check_refusal (error);
  return 0;
}
