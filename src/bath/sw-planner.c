/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-planner.h"

static GMutex planner;

void
sw_planner_lock (void)
{
  g_mutex_lock (&planner);
}

void
sw_planner_unlock (void)
{
  g_mutex_unlock (&planner);
}
