/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-look.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* Pictures to files. */

typedef enum
{
  SW_PICTURE_PAN,
  SW_PICTURE_STRIP,
  SW_PICTURE_CLOTH,
  SW_PICTURE_ITEM,
  SW_PICTURE_SCAN,
  SW_PICTURE_SKEIN,
  SW_PICTURE_HANK,
  SW_PICTURE_LISTING,
  SW_N_PICTURES,
} SwPicture;

typedef enum
{
  SW_FORMAT_PNG,
  SW_FORMAT_SVG,
  SW_FORMAT_PDF,
  SW_FORMAT_JPEG,
  SW_N_FORMATS,
} SwFormat;

const char *sw_picture_name (SwPicture picture);
int sw_picture_from_name (const char *name);          /* -1 if none */
int sw_format_from_file_name (const char *file_name); /* by its ending; -1 if none */

const char *sw_format_ending (SwFormat format); /* ".png" */

/* A size that suits the picture, px. */
void sw_picture_usual_size (SwPicture picture, const SwForecast *forecast, int *width, int *height);

/**
 * sw_picture_render:
 * @width, @height: px of a PNG or JPEG, and user units (1/96 in) of SVG and PDF; 1 .. 8000
 * Returns: (transfer full): the file's bytes. PNG and JPEG carry sRGB, size and words; the maker's mark is read from the listing's path if @look has none, and is an error only for the listing; nothing in any of them changes from run to run
 */
GBytes *sw_picture_render (SwPicture picture, SwFormat format, const SwForecast *forecast, int width, int height, const SwLook *look, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
