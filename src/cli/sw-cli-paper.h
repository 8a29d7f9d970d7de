/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/sw-cli.h"

#include "draw/sw-paper.h"

G_BEGIN_DECLS

/* The --paper option. @text: (nullable): as typed; NULL is what the locale uses */
gboolean sw_cli_paper (const char *text, SwPaper *paper, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
