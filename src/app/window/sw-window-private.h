/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-autosave.h"
#include "app/cloth/sw-cloth-page.h"
#include "app/day/sw-day-alarm.h"
#include "app/day/sw-day-page.h"
#include "app/parts/sw-guide.h"
#include "app/listing/sw-listing-page.h"
#include "app/parts/sw-notice.h"
#include "app/pan/sw-pan-page.h"
#include "app/sheet/sw-sheet-page.h"
#include "app/window/sw-window.h"

G_BEGIN_DECLS

/* Shared by the files of the window: its actions, its files, its pictures. */

struct _SwWindow
{
  AdwApplicationWindow parent_instance;

  GSettings *settings;
  SwDocument *document;
  SwLive *live;
  SwAutosave *autosave; /* NULL if drafts cannot be kept */
  SwGuide *guide;       /* NULL until it is wanted */
  SwDaySession *day;
  SwDayAlarm *alarm;
  gboolean day_may_rest; /* the question about its timers has been answered */
  gboolean may_close;    /* the question has been answered */

  /* template */
  GtkStack *views;
  GtkWidget *content;
  GtkButton *undo_button;
  GtkButton *redo_button;
  GtkLabel *title_label;
  GtkLabel *state_label;
  AdwViewSwitcherTitle *switcher_title;
  AdwToastOverlay *toasts;
  AdwViewStack *stack;
  SwNotice *notice;
  SwPanPage *pan_page;
  SwClothPage *cloth_page;
  SwSheetPage *sheet_page;
  SwListingPage *listing_page;
  SwDayPage *day_page;
  GMenu *recent_section;
  GMenu *template_section;
};

/* What is done once a drawing is safely in its file. */
typedef void (*SwWindowThen) (SwWindow *self);

void sw_window_add_actions (SwWindow *self);
void sw_window_add_open_actions (SwWindow *self);
void sw_window_add_save_actions (SwWindow *self);
void sw_window_add_picture_actions (SwWindow *self);
void sw_window_add_print_actions (SwWindow *self);
void sw_window_add_trace_actions (SwWindow *self);
void sw_window_add_day (SwWindow *self);

/* Whether timers run that would not ring once the window is closed; then it asks, and closes the window if it may. */
gboolean sw_window_asks_about_day (SwWindow *self);
void sw_window_set_action_enabled (SwWindow *self, const char *name, gboolean enabled);

/**
 * sw_window_save:
 * @file: (nullable): NULL for the document's own; asks for a name if it has none
 * @overwrite: also over what another program wrote
 * @then: (nullable): done only if all went well
 */
void sw_window_save (SwWindow *self, GFile *file, gboolean overwrite, SwWindowThen then);

/* Asks what to do with a modified drawing; closes the window once it is safe or given up. */
void sw_window_ask_before_closing (SwWindow *self);

/* Opens a file in the window that suits: see the application. */
void sw_window_open (SwWindow *self, GFile *file);

/* A traced layout comes into what is drawn in this window. */
void sw_window_bring_in_layout (SwWindow *self, GFile *file);
gboolean sw_window_is_layout (GFile *file);

void sw_window_accept_drops (SwWindow *self);

/* Recent files and templates in the menus. */
void sw_window_fill_menus (SwWindow *self);
void sw_window_remember_recent (GFile *file);

/* Where a file dialog begins: beside the drawing's own file, or in a folder for such things. */
void sw_window_suggest_folder (SwWindow *self, GtkFileChooser *chooser, GUserDirectory otherwise);

GtkFileFilter *sw_window_colourway_filter (void) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
