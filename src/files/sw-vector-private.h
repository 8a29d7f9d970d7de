/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "files/sw-picture.h"

G_BEGIN_DECLS

/* A page of one picture as SVG or PDF, in memory; the same drawing gives the same bytes. */
typedef struct _SwVector SwVector;

/* @width, @height: of the page, 1/96 in */
SwVector *sw_vector_new (SwFormat format, int width, int height, const char *title, const char *description) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer none): in units of 1/96 in */
cairo_t *sw_vector_get_cairo (SwVector *vector);

/* Frees it. Returns: (transfer full): the file's bytes; NULL with @error */
GBytes *sw_vector_finish (SwVector *vector, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
