/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-paper.h"

#include <langinfo.h>
#include <math.h>

static const struct
{
  const char *name;
  double width_mm, height_mm;
} papers[SW_N_PAPERS] = {
  [SW_PAPER_A4] = { "a4", 210, 297 },
  [SW_PAPER_LETTER] = { "letter", 215.9, 279.4 },
};

void
sw_paper_size (SwPaper paper, double *width, double *height)
{
  g_return_if_fail (paper < SW_N_PAPERS);

  *width = papers[paper].width_mm * SW_POINTS_PER_MM;
  *height = papers[paper].height_mm * SW_POINTS_PER_MM;
}

const char *
sw_paper_name (SwPaper paper)
{
  g_return_val_if_fail (paper < SW_N_PAPERS, NULL);

  return papers[paper].name;
}

int
sw_paper_from_name (const char *name)
{
  for (int i = 0; i < SW_N_PAPERS; i++)
    if (g_strcmp0 (name, papers[i].name) == 0)
      return i;
  return -1;
}

SwPaper
sw_paper_usual (void)
{
#ifdef _NL_PAPER_HEIGHT
  /* The GNU C library tells whole millimetres, as a number in place of the pointer. */
  if (GPOINTER_TO_INT (nl_langinfo (_NL_PAPER_HEIGHT)) == (int) papers[SW_PAPER_LETTER].height_mm)
    return SW_PAPER_LETTER;
#endif
  return SW_PAPER_A4;
}
