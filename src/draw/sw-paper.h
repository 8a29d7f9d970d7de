/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Sheets of paper. A page's unit is the point, 1/72 in. */

#define SW_POINTS_PER_MM (72 / 25.4)

typedef enum
{
  SW_PAPER_A4,
  SW_PAPER_LETTER,
  SW_N_PAPERS,
} SwPaper;

/* Upright, in points. ISO 216; ANSI/ASME Y14.1 size A. */
void sw_paper_size (SwPaper paper, double *width, double *height);

const char *sw_paper_name (SwPaper paper); /* "a4", "letter" */
int sw_paper_from_name (const char *name); /* -1 if none */

/* What printers hold where the locale is from. */
SwPaper sw_paper_usual (void);

G_END_DECLS
