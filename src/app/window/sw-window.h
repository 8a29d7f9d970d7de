/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-drafts.h"
#include "app/desk/sw-live.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwWindow: one open colourway. Owns the document, its live forecast and its
 * draft for as long as it lives; loading another file replaces what is in the
 * document.
 *
 * Actions: win.open, win.open-uri(s), win.save, win.save-as, win.save-anew,
 * win.reload, win.keep-mine, win.undo, win.redo, win.new-from-template(s),
 * win.export-picture(s), win.copy-picture(s) (an empty string means what the
 * place shows), win.place(s), win.guide.
 */
#define SW_TYPE_WINDOW (sw_window_get_type ())
G_DECLARE_FINAL_TYPE (SwWindow, sw_window, SW, WINDOW, AdwApplicationWindow)

/**
 * sw_window_new:
 * @drafts: (nullable): where its draft is kept; NULL if drafts cannot be kept
 */
SwWindow *sw_window_new (GtkApplication *application, GSettings *settings, SwDrafts *drafts) G_GNUC_WARN_UNUSED_RESULT;

SwDocument *sw_window_get_document (SwWindow *self);
SwLive *sw_window_get_live (SwWindow *self);

/* Whether it holds nothing that anyone would miss: another drawing may take its place. */
gboolean sw_window_is_pristine (SwWindow *self);

/* Loads the file into this window, whatever is in it; a failure leaves that and is said above it. */
void sw_window_load (SwWindow *self, GFile *file);

/* The demo colourway, with title and notes. */
void sw_window_show_demo (SwWindow *self);

/* Begins a drawing from the template in this window. */
void sw_window_show_template (SwWindow *self, const char *id);

/* Brings a drawing back; its draft becomes this window's. @draft is only read. */
void sw_window_recover (SwWindow *self, SwDraft *draft);

/* Says that drafts cannot be kept. */
void sw_window_warn_drafts (SwWindow *self, const char *sentence);

/* Points a newcomer at what is where, unless that was done before. */
void sw_window_welcome (SwWindow *self);

/* Writes the draft at once: the program is about to end. */
void sw_window_flush_draft (SwWindow *self);

/* A passing word at the window's foot. */
void sw_window_toast (SwWindow *self, const char *sentence);

G_END_DECLS
