/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-day-session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/*
 * Makes itself heard when a timer of a session is up: the desktop's sound of
 * an alarm, or its bell where there is no sound, again every half minute
 * until somebody does something; and a notification of the desktop.
 */
typedef struct _SwDayAlarm SwDayAlarm;

/* @widget: of the window that the day is in; owns the alarm */
SwDayAlarm *sw_day_alarm_new (SwDaySession *session, GtkWidget *widget) G_GNUC_WARN_UNUSED_RESULT;
void sw_day_alarm_free (SwDayAlarm *self);

G_END_DECLS
