/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-cloth-edit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

const char *
sw_cloth_width_step (void)
{
  /* Translators: a step to undo: of the cloth */
  return _ ("Change Width");
}

/* Returns: (transfer full) (nullable): NULL if the cloth has that width already */
static SwEdit *
width_edit (SwDocument *document, double width)
{
  const SwMember *member = sw_record_find_member (SW_RECORD_CLOTH, "width_stitches");
  const SwValue value = sw_value_whole (lround (CLAMP (width, member->min, member->max)));

  if (sw_document_get_sketch (document)->cloth.width_stitches == value.as.whole)
    return NULL;
  return sw_edit_set (SW_RECORD_CLOTH, 0, "width_stitches", &value);
}

gboolean
sw_cloth_set_width (SwDocument *document, double width, GError **error)
{
  SwEdit *edit = width_edit (document, width);

  return edit == NULL || sw_document_edit_series (document, edit, sw_cloth_width_step (), "cloth width_stitches", error);
}

gboolean
sw_cloth_drag_width (SwDocument *document, double width, GError **error)
{
  SwEdit *edit = width_edit (document, width);

  return edit == NULL || sw_document_edit (document, edit, sw_cloth_width_step (), error);
}
