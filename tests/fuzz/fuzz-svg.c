/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * Any bytes at all as a drawing: they are refused with a sentence, or become
 * pours that the sketch takes, writes out as a drawing and reads back again.
 */
#include "config.h"

#include "../sw-test-sketch.h"

#include "files/sw-colourway.h"
#include "files/sw-svg.h"

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
check_drawn (const SwSketch *sketch)
{
  g_autofree char *text = sw_svg_write (sketch, NULL, FALSE);
  g_autoptr (SwTraced) again = sw_svg_read (text, strlen (text), sketch, NULL);

  if (again == NULL || sw_traced_n_new (again) > 0 || again->dyes->len > 0)
    abort ();
}

/* What was read is an edit that applies, if its pours are within what a sketch may hold at all. */
static void
check_edit (const SwTraced *traced, SwSketch *sketch)
{
  g_autoptr (SwEdit) edit = sw_traced_edit (traced, sketch);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwEdit) inverse = edit != NULL ? sw_edit_apply (edit, sketch, NULL, &error) : NULL;

  if (edit != NULL && inverse == NULL && (error == NULL || error->domain != SW_SKETCH_ERROR))
    abort ();
  if (!sw_sketch_validate (sketch, NULL))
    abort ();
  if (inverse != NULL)
    check_drawn (sketch);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwTraced) traced = sw_svg_read ((const char *) data, size, sketch, &error);

  if (traced != NULL)
    check_edit (traced, sketch);
  else
    check_refusal (error);
  return 0;
}
