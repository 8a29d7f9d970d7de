/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <math.h>
#include <string.h>

/* The number after "name=" in a cell of "a=1;b=2". */
static inline double
input_of (const char *cell, const char *name)
{
  g_auto (GStrv) parts = g_strsplit (cell, ";", -1);

  for (guint i = 0; parts[i] != NULL; i++)
    if (g_str_has_prefix (parts[i], name) && parts[i][strlen (name)] == '=')
      return g_ascii_strtod (parts[i] + strlen (name) + 1, NULL);

  g_error ("no %s in %s", name, cell);
}

/* |a - b| <= tolerance, with the numbers in the message. */
#define assert_near(a, b, tolerance)                                                                                     \
  G_STMT_START                                                                                                           \
  {                                                                                                                      \
    double got_ = (a), wanted_ = (b), tolerance_ = (tolerance);                                                          \
    if (!(fabs (got_ - wanted_) <= tolerance_))                                                                          \
      {                                                                                                                  \
        g_autofree char *message_ = g_strdup_printf (#a ": %.12g, wanted %.12g within %.3g", got_, wanted_, tolerance_); \
        g_assertion_message (G_LOG_DOMAIN, __FILE__, __LINE__, G_STRFUNC, message_);                                     \
      }                                                                                                                  \
  }                                                                                                                      \
  G_STMT_END
