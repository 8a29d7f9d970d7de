/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What lasts and must be said above the drawing, the weightiest first. */
typedef enum
{
  SW_NOTICE_SAVE_FAILED,
  SW_NOTICE_OPEN_FAILED,
  SW_NOTICE_DISK_CHANGED,
  SW_NOTICE_DISK_GONE,
  SW_NOTICE_FORECAST,
  SW_NOTICE_DRAFTS,
  SW_NOTICE_READ_ONLY,
  SW_NOTICE_BROUGHT_IN,
  SW_NOTICE_RECOVERED,
  SW_N_NOTICES,
} SwNoticeKind;

/* SwNotice: a bar that shows the weightiest of the sentences it was given, with the actions that mend it. */
#define SW_TYPE_NOTICE (sw_notice_get_type ())
G_DECLARE_FINAL_TYPE (SwNotice, sw_notice, SW, NOTICE, GtkWidget)

/**
 * sw_notice_set:
 * @sentence: (nullable): NULL when the matter is settled
 */
void sw_notice_set (SwNotice *self, SwNoticeKind kind, const char *sentence);

G_END_DECLS
