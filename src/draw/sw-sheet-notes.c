/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-sheet-layout.h"

#include "sheet/sw-cost.h"
#include "sheet/sw-sheet-remarks.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <math.h>
#include <string.h>

/* Below the day: what to think of, cautions in full, the cost, and room to write. */

static void
lay_paragraph (SwSheetLayout *self, const char *text, SwSheetStyle style)
{
  sw_sheet_begin_row (self);
  sw_sheet_add_text (self, text, style, 0, 0, self->content.width, 0);
  sw_sheet_end_row (self, 2, 0);
}

void
sw_sheet_lay_remarks (SwSheetLayout *self)
{
  g_autoptr (GArray) remarks = sw_sheet_remarks (self->sheet);

  if (remarks->len == 0)
    return;
  sw_sheet_add_heading (self, _ ("Think of this"), 30);
  for (guint i = 0; i < remarks->len; i++)
    {
      g_autofree char *text = sw_sheet_remark_text (self->sheet, &g_array_index (remarks, SwRemark, i), self->system);

      lay_paragraph (self, text, SW_STYLE_BODY);
    }
}

/* A few words of each, and the last word in full. */
static void
lay_brief_cautions (SwSheetLayout *self, guint bits)
{
  g_autoptr (GString) list = g_string_new (NULL);

  for (int caution = 0; caution < SW_CAUTION_LAST_WORD; caution++)
    if ((bits >> caution & 1) != 0)
      g_string_append_printf (list, "%s%s", list->len > 0 ? "  ·  " : "", sw_caution_title ((SwCaution) caution));
  lay_paragraph (self, list->str, SW_STYLE_ASIDE);
  lay_paragraph (self, sw_caution_text (SW_CAUTION_LAST_WORD), SW_STYLE_ASIDE);
}

static void
lay_full_cautions (SwSheetLayout *self, guint bits)
{
  for (int caution = 0; caution < SW_N_CAUTIONS; caution++)
    if ((bits >> caution & 1) != 0)
      {
        /* Translators: a caution: a few words, and what they mean */
        g_autofree char *text = g_strdup_printf (_ ("%s: %s"), sw_caution_title ((SwCaution) caution), sw_caution_text ((SwCaution) caution));

        lay_paragraph (self, text, SW_STYLE_ASIDE);
      }
}

void
sw_sheet_lay_cautions (SwSheetLayout *self)
{
  const guint bits = sw_cautions_for_sketch (self->forecast->sketch);

  sw_sheet_add_heading (self, _ ("Cautions"), 30);
  if (self->closeness == SW_SHEET_CLOSEST)
    lay_brief_cautions (self, bits);
  else
    lay_full_cautions (self, bits);
}

static char *
money_text (const SwSheetLayout *self, double amount)
{
  const char *own = self->forecast->sketch->sheet.currency;
  g_autofree char *currency = own[0] != '\0' ? g_strdup (own) : g_strchomp (g_strndup (localeconv ()->int_curr_symbol, 3));

  return currency[0] != '\0' ? g_strdup_printf ("%.2f\u00a0%s", amount, currency) : g_strdup_printf ("%.2f", amount);
}

void
sw_sheet_lay_cost (SwSheetLayout *self)
{
  g_autofree char *total = NULL;
  g_autofree char *each = NULL;
  g_autofree char *price = NULL;
  g_autofree char *words = NULL;
  SwCost cost;

  sw_cost_of (self->sheet, &cost);
  if (cost.total <= 0)
    return;
  total = money_text (self, cost.total);
  each = money_text (self, cost.per_skein);
  price = money_text (self, cost.price);
  if (self->forecast->sketch->sheet.margin_percent > 0)
    /* Translators: three sums of money: what the batch costs, what each skein costs, and its price at the dyer's margin */
    words = g_strdup_printf (_ ("The batch costs %s, a skein %s; at your margin its price is %s."), total, each, price);
  else
    /* Translators: two sums of money: what the batch costs, and each skein */
    words = g_strdup_printf (_ ("The batch costs %s, a skein %s."), total, each);
  sw_sheet_add_heading (self, _ ("Cost"), 20);
  lay_paragraph (self, words, SW_STYLE_BODY);
}

#define LINE 22.0
#define LEAST_LINES 2
#define MOST_LINES 14

/* Lines to write on, to the end of the page. */
void
sw_sheet_lay_notes (SwSheetLayout *self)
{
  const int least = self->closeness == SW_SHEET_CLOSEST ? 1 : LEAST_LINES;
  int lines;

  sw_sheet_add_heading (self, _ ("Notes: how it came out"), least * LINE);
  lines = (int) CLAMP (floor ((self->content.y + self->content.height - self->y) / LINE), least, MOST_LINES);
  for (int i = 0; i < lines; i++)
    {
      sw_sheet_begin_row (self);
      sw_sheet_add (self, SW_SHEET_LINE, 0, LINE - 1, self->content.width, 0.7);
      sw_sheet_end_row (self, 0, 0);
    }
}
