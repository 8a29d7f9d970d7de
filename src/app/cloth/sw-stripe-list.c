/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/cloth/sw-stripe-list.h"

#include "app/desk/sw-cloth-words.h"
#include "app/parts/sw-swatch.h"
#include "forecast/sw-colour-words.h"

#include <glib/gi18n-lib.h>

typedef enum
{
  COLUMN_COLOUR,
  COLUMN_SHARE,
  COLUMN_LENGTH,
  COLUMN_STITCHES,
  COLUMN_ROWS,
  N_COLUMNS,
} Column;

/* The table's widgets are kept and filled anew, since it follows the hand. */
typedef struct
{
  SwSwatch *chip;
  GtkLabel *cells[N_COLUMNS];
} Line;

struct _SwStripeList
{
  AdwBin parent_instance;

  GtkGrid *grid;
  Line lines[SW_MAX_STRIPES];
};

G_DEFINE_FINAL_TYPE (SwStripeList, sw_stripe_list, ADW_TYPE_BIN)

static const char *const headings[N_COLUMNS] = {
  /* Translators: heads of the narrow columns of a table of the yarn's colours */
  [COLUMN_COLOUR] = NC_ ("stripes", "Colour"),
  [COLUMN_SHARE] = NC_ ("stripes", "Share"),
  [COLUMN_LENGTH] = NC_ ("stripes", "Length"),
  [COLUMN_STITCHES] = NC_ ("stripes", "Stitches"),
  [COLUMN_ROWS] = NC_ ("stripes", "Rows"),
};

static GtkLabel *
add_label (SwStripeList *self, Column column, int row)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column == COLUMN_COLOUR ? 0 : 1);
  gtk_widget_add_css_class (label, "numeric");
  if (column == COLUMN_COLOUR)
    {
      gtk_widget_set_hexpand (label, TRUE);
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
    }
  gtk_grid_attach (self->grid, label, (int) column + 1, row, 1, 1);
  return GTK_LABEL (label);
}

static void
add_headings (SwStripeList *self)
{
  for (Column column = 0; column < N_COLUMNS; column++)
    {
      GtkLabel *label = add_label (self, column, 0);

      gtk_label_set_text (label, g_dpgettext2 (NULL, "stripes", headings[column]));
      gtk_widget_add_css_class (GTK_WIDGET (label), "caption");
      gtk_widget_add_css_class (GTK_WIDGET (label), "dim-label");
    }
}

/* A name that is cut short is there in full. */
static gboolean
query_tooltip_cb (GtkLabel *name, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  gtk_tooltip_set_text (tooltip, gtk_label_get_text (name));
  return TRUE;
}

static void
add_line (SwStripeList *self, gsize i)
{
  Line *line = &self->lines[i];

  line->chip = g_object_new (SW_TYPE_SWATCH, NULL);
  gtk_grid_attach (self->grid, GTK_WIDGET (line->chip), 0, (int) i + 1, 1, 1);
  for (Column column = 0; column < N_COLUMNS; column++)
    line->cells[column] = add_label (self, column, (int) i + 1);
  gtk_widget_set_has_tooltip (GTK_WIDGET (line->cells[COLUMN_COLOUR]), TRUE);
  g_signal_connect (line->cells[COLUMN_COLOUR], "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
}

static void
set_line_visible (Line *line, gboolean visible)
{
  gtk_widget_set_visible (GTK_WIDGET (line->chip), visible);
  for (Column column = 0; column < N_COLUMNS; column++)
    gtk_widget_set_visible (GTK_WIDGET (line->cells[column]), visible);
}

static void
set_amount (GtkLabel *label, SwQuantity quantity, double value, int decimals, SwSystem system)
{
  g_autofree char *text = sw_units_format_column (quantity, value, decimals, system);

  gtk_label_set_text (label, text);
}

static void
show_line (Line *line, const SwForecast *forecast, const SwStripe *stripe, const char *name, SwSystem system)
{
  const SwSample sample = { SW_SAMPLE_LAB, { (double) stripe->l, (double) stripe->a, (double) stripe->b } };
  g_autofree char *words = sw_cloth_stripe (forecast, stripe, system);

  sw_swatch_set_sample (line->chip, &sample);
  gtk_label_set_text (line->cells[COLUMN_COLOUR], name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (line->cells[COLUMN_COLOUR]), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
  set_amount (line->cells[COLUMN_SHARE], SW_QUANTITY_PERCENT, sw_cloth_rounded (100 * stripe->share, 1), 0, system);
  set_amount (line->cells[COLUMN_LENGTH], SW_QUANTITY_LENGTH, stripe->mean_stitches * forecast->stitch_length_cm, 1, system);
  set_amount (line->cells[COLUMN_STITCHES], SW_QUANTITY_NONE, sw_cloth_rounded (stripe->mean_stitches, 0.1), 1, system);
  set_amount (line->cells[COLUMN_ROWS], SW_QUANTITY_NONE, sw_cloth_rounded (stripe->mean_stitches / (double) forecast->layout.width, 0.01), 2, system);
}

void
sw_stripe_list_show (SwStripeList *self, const SwForecast *forecast, SwSystem system)
{
  g_auto (GStrv) names = NULL;

  g_return_if_fail (SW_IS_STRIPE_LIST (self));

  names = sw_forecast_stripe_names (forecast);
  for (gsize i = 0; i < SW_MAX_STRIPES; i++)
    {
      set_line_visible (&self->lines[i], i < forecast->n_stripes);
      if (i < forecast->n_stripes)
        show_line (&self->lines[i], forecast, &forecast->stripes[i], names[i], system);
    }
}

static void
sw_stripe_list_class_init (SwStripeListClass *klass)
{
}

static void
sw_stripe_list_init (SwStripeList *self)
{
  self->grid = GTK_GRID (gtk_grid_new ());
  gtk_grid_set_row_spacing (self->grid, 6);
  gtk_grid_set_column_spacing (self->grid, 9);
  add_headings (self);
  for (gsize i = 0; i < SW_MAX_STRIPES; i++)
    add_line (self, i);
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->grid));
}
