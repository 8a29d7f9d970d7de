/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-subject.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwFieldRow: one member of what a pane is about, with its name before it and,
 * if a value was refused, the reason under it. It is there only while the
 * subject has the member.
 */
#define SW_TYPE_FIELD_ROW (sw_field_row_get_type ())
G_DECLARE_FINAL_TYPE (SwFieldRow, sw_field_row, SW, FIELD_ROW, AdwPreferencesRow)

/* (transfer floating) */
GtkWidget *sw_field_row_new (SwSubject *subject, const SwMember *member) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
