/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Making or destroying an FFTW plan touches tables that all plans of the
 * process share, so every fftw_plan_* and fftw_destroy_plan call, of whatever
 * room, stands between these two. Executing a plan needs no lock.
 */
void sw_planner_lock (void);
void sw_planner_unlock (void);

G_END_DECLS
