/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-account-row.h"

#include "app/parts/sw-balance-bar.h"
#include "app/parts/sw-swatch.h"

#include <glib/gi18n-lib.h>

struct _SwAccountRow
{
  AdwPreferencesRow parent_instance;

  SwSwatch *swatch;
  GtkLabel *name;
  GtkLabel *words;
  SwBalanceBar *bar;
};

G_DEFINE_FINAL_TYPE (SwAccountRow, sw_account_row, ADW_TYPE_PREFERENCES_ROW)

static void
sw_account_row_class_init (SwAccountRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (SW_TYPE_BALANCE_BAR);
  g_type_ensure (SW_TYPE_SWATCH);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-account-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwAccountRow, swatch);
  gtk_widget_class_bind_template_child (widget_class, SwAccountRow, name);
  gtk_widget_class_bind_template_child (widget_class, SwAccountRow, words);
  gtk_widget_class_bind_template_child (widget_class, SwAccountRow, bar);
}

static void
sw_account_row_init (SwAccountRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
sw_account_row_show (SwAccountRow *self, const SwForecast *forecast, guint step, const SwAccount *account)
{
  const SwDye *dye;
  const char *name;
  g_autofree char *words = NULL;

  g_return_if_fail (SW_IS_ACCOUNT_ROW (self));

  dye = sw_sketch_find_dye (forecast->sketch, account->dye);
  words = sw_account_words (account);
  sw_swatch_set_sample (self->swatch, &dye->sample);
  /* Translators: stands for a dye that the dyer has not named */
  name = *dye->name != '\0' ? dye->name : _ ("Dye without a name");
  gtk_label_set_text (self->name, name);
  gtk_label_set_text (self->words, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
  sw_balance_bar_set_step (self->bar, forecast, step, account->dye);
}
