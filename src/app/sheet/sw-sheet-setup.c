/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sheet/sw-sheet-setup.h"

#include "app/parts/sw-field-row.h"
#include "app/desk/sw-sheet-edits.h"
#include "app/desk/sw-sheet-words.h"
#include "app/parts/sw-toast.h"

#include <glib/gi18n-lib.h>
#include <math.h>

struct _SwSheetSetup
{
  AdwBin parent_instance;

  SwSubject *subject;
  const SwSheet *sheet; /* of the page; NULL before the first */

  AdwPreferencesGroup *batch;
  AdwPreferencesGroup *tools;
  AdwPreferencesGroup *liquor;
  GtkWidget *spread;
  GtkLabel *spread_label;
  GtkWidget *acid;
  GtkLabel *acid_label;
  GtkWidget *acid_button;
  GtkWidget *water;
  GtkLabel *water_label;
  GtkWidget *water_button;
};

G_DEFINE_FINAL_TYPE (SwSheetSetup, sw_sheet_setup, ADW_TYPE_BIN)

static void
use (SwSheetSetup *self, gboolean (*edit) (SwDocument *, const SwSheet *, GError **))
{
  g_autoptr (GError) error = NULL;

  if (self->sheet != NULL && !edit (sw_subject_get_document (self->subject), self->sheet, &error))
    sw_toast (GTK_WIDGET (self), error->message);
}

static void
use_acid_cb (SwSheetSetup *self)
{
  use (self, sw_sheet_use_acid);
}

static void
use_water_cb (SwSheetSetup *self)
{
  use (self, sw_sheet_use_water);
}

static void
sw_sheet_setup_dispose (GObject *object)
{
  g_clear_object (&SW_SHEET_SETUP (object)->subject);

  G_OBJECT_CLASS (sw_sheet_setup_parent_class)->dispose (object);
}

static void
sw_sheet_setup_class_init (SwSheetSetupClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_sheet_setup_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-sheet-setup.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSheetSetup, batch);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSetup, tools);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSetup, liquor);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSetup, spread);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSetup, spread_label);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSetup, acid);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSetup, acid_label);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSetup, acid_button);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSetup, water);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSetup, water_label);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSetup, water_button);
  gtk_widget_class_bind_template_callback (widget_class, use_acid_cb);
  gtk_widget_class_bind_template_callback (widget_class, use_water_cb);
}

static void
sw_sheet_setup_init (SwSheetSetup *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
add_fields (SwSheetSetup *self, AdwPreferencesGroup *group, const char *const *names, gsize n)
{
  for (gsize i = 0; i < n; i++)
    adw_preferences_group_add (group, sw_field_row_new (self->subject, sw_record_find_member (SW_RECORD_SHEET, names[i])));
}

/* What a setting leads to stands right under it. */
static void
move_under (AdwPreferencesGroup *group, GtkWidget *row)
{
  adw_preferences_group_add (group, row);
}

void
sw_sheet_setup_set_subject (SwSheetSetup *self, SwSubject *subject)
{
  static const char *const batch[] = { "skeins", "pans" };
  static const char *const acid[] = { "acid_form", "target_ph" };
  static const char *const water[] = { "liquor_ratio" };
  static const char *const tools[] = { "weigh_step_g", "measure_step_ml", "stock_margin_percent" };

  g_return_if_fail (SW_IS_SHEET_SETUP (self) && self->subject == NULL);

  self->subject = g_object_ref (subject);
  add_fields (self, self->batch, batch, G_N_ELEMENTS (batch));
  move_under (self->batch, self->spread);
  add_fields (self, self->liquor, acid, G_N_ELEMENTS (acid));
  move_under (self->liquor, self->acid);
  add_fields (self, self->liquor, water, G_N_ELEMENTS (water));
  move_under (self->liquor, self->water);
  add_fields (self, self->tools, tools, G_N_ELEMENTS (tools));
}

static void
show_acid (SwSheetSetup *self, const SwSheet *sheet)
{
  const gboolean wanted = sheet->sketch->sheet.target_ph > 0;
  g_autofree char *words = sw_sheet_target_acid (sheet, sw_subject_get_system (self->subject));

  gtk_widget_set_visible (self->acid, wanted);
  gtk_label_set_text (self->acid_label, words);
  gtk_widget_set_sensitive (self->acid_button, sheet->liquor.target_acid_ml >= 0 && fabs (sheet->liquor.target_acid_ml - sheet->sketch->bath.acid_ml) > 0.005);
}

static void
show_water (SwSheetSetup *self, const SwSheet *sheet)
{
  g_autofree char *words = sw_sheet_target_water (sheet, sw_subject_get_system (self->subject));

  gtk_label_set_text (self->water_label, words);
  gtk_widget_set_sensitive (self->water_button, fabs (sw_sheet_wanted_water (sheet) - sheet->sketch->bath.water_ml) > 0.5);
}

void
sw_sheet_setup_show (SwSheetSetup *self, const SwSheet *sheet)
{
  g_autofree char *spread = NULL;

  g_return_if_fail (SW_IS_SHEET_SETUP (self));

  self->sheet = sheet;
  if (sheet == NULL)
    return;
  spread = sw_sheet_spread (sheet, sw_subject_get_system (self->subject));
  gtk_label_set_text (self->spread_label, spread);
  show_acid (self, sheet);
  show_water (self, sheet);
}
