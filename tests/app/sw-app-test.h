/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"

G_BEGIN_DECLS

/* Helpers of the tests of the window's model. */

/* Runs the main loop until @done says so; fails the test after 60 s. */
#define sw_test_wait(condition)                                                  \
  G_STMT_START                                                                   \
  {                                                                              \
    gint64 sw_test_deadline = g_get_monotonic_time () + 60 * G_USEC_PER_SEC;     \
    while (!(condition))                                                         \
      {                                                                          \
        if (g_get_monotonic_time () > sw_test_deadline)                          \
          g_error ("%s:%d: waited in vain for " #condition, __FILE__, __LINE__); \
        sw_test_turn ();                                                         \
      }                                                                          \
  }                                                                              \
  G_STMT_END

/* One round of the main loop, 5 ms at most. */
void sw_test_turn (void);

/* Runs the main loop for that long. */
void sw_test_idle (guint ms);

/* A new empty folder, to be removed with sw_test_remove(). */
char *sw_test_folder (void) G_GNUC_WARN_UNUSED_RESULT;
void sw_test_remove (const char *folder);

/* Names in a folder without "." and "..". */
guint sw_test_count_files (const char *folder, const char *ending);

/* Drops the last reference but those of jobs under way, waits for these, and fails if it lives on. */
void sw_test_finalize (gpointer object);

/* A document with two dyes, and a band, a rest and a splotch; their ids in that order. */
SwDocument *sw_test_document (guint ids[5]) G_GNUC_WARN_UNUSED_RESULT;

SwEdit *sw_test_set_number (SwRecord record, guint id, const char *member, double number) G_GNUC_WARN_UNUSED_RESULT;
SwEdit *sw_test_set_text (SwRecord record, guint id, const char *member, const char *text) G_GNUC_WARN_UNUSED_RESULT;
SwEdit *sw_test_set_seed (gint64 seed) G_GNUC_WARN_UNUSED_RESULT;

/* Does it, and fails the test if that fails. */
void sw_test_edit (SwDocument *document, SwEdit *edit, const char *name);

G_END_DECLS
