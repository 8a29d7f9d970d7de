/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwApplication: start-up, files from the command line or the desktop,
 * recovery, and what concerns all windows.
 *
 * Actions: app.new-window, app.new-window-from(s), app.quit, app.about,
 * app.units(s), app.appearance(s).
 */
#define SW_TYPE_APPLICATION (sw_application_get_type ())
G_DECLARE_FINAL_TYPE (SwApplication, sw_application, SW, APPLICATION, AdwApplication)

SwApplication *sw_application_new (void) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
