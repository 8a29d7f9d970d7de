/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-template.h"

#include "sheet/sw-sheet-lay.h"

#include <math.h>

#define MARGIN (10 * SW_POINTS_PER_MM) /* more than any printer leaves white */
#define FOOT (22 * SW_POINTS_PER_MM)   /* labels and the check rulers */
#define AROUND (4 * SW_POINTS_PER_MM)  /* beyond the pan */
#define POINTS_PER_CM (10 * SW_POINTS_PER_MM)

static gsize
tiles_for (double length, double area)
{
  return (gsize) MAX (ceil ((length - SW_TEMPLATE_OVERLAP) / (area - SW_TEMPLATE_OVERLAP) - 1e-9), 1);
}

/* The pan's and the skein's boxes in the middle of what the pages show together. */
static void
place_drawing (const SwSketch *sketch, double laid, SwTemplate *layout)
{
  const double all_x = (double) (layout->columns - 1) * layout->step_x + layout->area.width;
  const double all_y = (double) (layout->rows - 1) * layout->step_y + layout->area.height;
  const double lengths[] = { sketch->lay.pan_length_cm * POINTS_PER_CM, sw_sketch_lay_length (sketch) * POINTS_PER_CM };
  const double widths[] = { sketch->lay.pan_width_cm * POINTS_PER_CM, laid * POINTS_PER_CM };

  layout->geometry = (SwPanGeometry){
    .pan = { (all_x - lengths[0]) / 2, (all_y - widths[0]) / 2, lengths[0], widths[0] },
    .skein = { (all_x - lengths[1]) / 2, (all_y - widths[1]) / 2, lengths[1], widths[1] },
    .scale = POINTS_PER_CM,
  };
}

static void
cut (const SwSketch *sketch, double laid, double width, double height, SwTemplate *layout)
{
  const double length = MAX (sketch->lay.pan_length_cm, sw_sketch_lay_length (sketch)) * POINTS_PER_CM + 2 * AROUND;
  const double across = MAX (sketch->lay.pan_width_cm, laid) * POINTS_PER_CM + 2 * AROUND;

  *layout = (SwTemplate){ .width = width, .height = height, .area = { MARGIN, MARGIN, width - 2 * MARGIN, height - 2 * MARGIN - FOOT } };
  layout->step_x = layout->area.width - SW_TEMPLATE_OVERLAP;
  layout->step_y = layout->area.height - SW_TEMPLATE_OVERLAP;
  layout->columns = tiles_for (length, layout->area.width);
  layout->rows = tiles_for (across, layout->area.height);
  place_drawing (sketch, laid, layout);
}

void
sw_template_layout (const SwSketch *sketch, SwPaper paper, SwTemplate *layout)
{
  g_autoptr (SwSheet) sheet = sw_sheet_new (sketch, NULL);
  const gsize skeins = sw_sheet_laid_skeins (sheet, sheet->fullest);
  const double laid = sketch->lay.width_cm * (double) skeins;
  double width, height;
  SwTemplate lying;

  sw_paper_size (paper, &width, &height);
  cut (sketch, laid, width, height, layout);
  cut (sketch, laid, height, width, &lying);
  if (sw_template_pages (&lying) <= sw_template_pages (layout))
    *layout = lying;
  layout->copies = sw_sheet_copies (sheet, skeins);
}

gsize
sw_template_pages (const SwTemplate *layout)
{
  return layout->columns * layout->rows;
}

SwBox
sw_template_tile (const SwTemplate *layout, gsize page)
{
  const double column = (double) (page % layout->columns), row = (double) (page / layout->columns);

  return (SwBox){ column * layout->step_x, row * layout->step_y, layout->area.width, layout->area.height };
}
