/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sheet/sw-sheet-deed-row.h"

#include "app/parts/sw-member-entry.h"
#include "app/parts/sw-swatch.h"
#include "sheet/sw-measure.h"
#include "sheet/sw-sheet-remarks.h"
#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>

struct _SwSheetDeedRow
{
  GtkListBoxRow parent_instance;

  SwDeed deed;
  SwSubject *bath; /* its temperature is that of the heated bath */
  SwSubject *step;

  GtkLabel *start;
  SwSwatch *swatch;
  GtkImage *icon;
  GtkLabel *title;
  GtkLabel *detail;
  GtkLabel *refusal;
  SwMemberEntry *minutes;
  SwMemberEntry *heat;
};

G_DEFINE_FINAL_TYPE (SwSheetDeedRow, sw_sheet_deed_row, GTK_TYPE_LIST_BOX_ROW)

/* Which member a deed's temperature is, and of what. */
static const struct
{
  SwRecord record;
  const char *member;
} heats[SW_N_DEEDS] = {
  [SW_DEED_PRESOAK] = { SW_RECORD_SHEET, "presoak_c" },
  [SW_DEED_HEAT] = { SW_RECORD_BATH, "temperature_c" },
  [SW_DEED_REST] = { SW_RECORD_STEP, "temperature_c" },
  [SW_DEED_SET] = { SW_RECORD_STEP, "temperature_c" },
  [SW_DEED_WASH] = { SW_RECORD_SHEET, "wash_c" },
  [SW_DEED_RINSE] = { SW_RECORD_SHEET, "wash_c" },
};

static const char *const icons[SW_N_DEEDS] = {
  [SW_DEED_PRESOAK] = "strandwise-water-symbolic",
  [SW_DEED_STOCK] = "strandwise-sheet-symbolic",
  [SW_DEED_FILL] = "strandwise-pan-symbolic",
  [SW_DEED_HEAT] = "strandwise-set-symbolic",
  [SW_DEED_POUR] = "strandwise-band-symbolic",
  [SW_DEED_REST] = "strandwise-rest-symbolic",
  [SW_DEED_FLIP] = "strandwise-flip-symbolic",
  [SW_DEED_ACID] = "strandwise-acid-symbolic",
  [SW_DEED_WATER] = "strandwise-water-symbolic",
  [SW_DEED_SET] = "strandwise-set-symbolic",
  [SW_DEED_COOL] = "strandwise-rest-symbolic",
  [SW_DEED_WASH] = "strandwise-water-symbolic",
  [SW_DEED_RINSE] = "strandwise-water-symbolic",
  [SW_DEED_SPIN] = "strandwise-flip-symbolic",
  [SW_DEED_DRY] = "strandwise-rest-symbolic",
};

static void
show_refusal (SwSheetDeedRow *self)
{
  const char *minutes = sw_member_control_get_refusal (SW_MEMBER_CONTROL (self->minutes));
  const char *heat = sw_member_control_get_refusal (SW_MEMBER_CONTROL (self->heat));
  const char *sentence = minutes != NULL ? minutes : heat;

  gtk_label_set_text (self->refusal, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->refusal), sentence != NULL);
}

static void
sw_sheet_deed_row_dispose (GObject *object)
{
  SwSheetDeedRow *self = SW_SHEET_DEED_ROW (object);

  g_clear_object (&self->bath);
  g_clear_object (&self->step);

  G_OBJECT_CLASS (sw_sheet_deed_row_parent_class)->dispose (object);
}

static void
sw_sheet_deed_row_class_init (SwSheetDeedRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_sheet_deed_row_dispose;
  g_type_ensure (SW_TYPE_SWATCH);
  g_type_ensure (SW_TYPE_MEMBER_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-sheet-deed-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSheetDeedRow, start);
  gtk_widget_class_bind_template_child (widget_class, SwSheetDeedRow, swatch);
  gtk_widget_class_bind_template_child (widget_class, SwSheetDeedRow, icon);
  gtk_widget_class_bind_template_child (widget_class, SwSheetDeedRow, title);
  gtk_widget_class_bind_template_child (widget_class, SwSheetDeedRow, detail);
  gtk_widget_class_bind_template_child (widget_class, SwSheetDeedRow, refusal);
  gtk_widget_class_bind_template_child (widget_class, SwSheetDeedRow, minutes);
  gtk_widget_class_bind_template_child (widget_class, SwSheetDeedRow, heat);
}

static void
sw_sheet_deed_row_init (SwSheetDeedRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->minutes, "notify::refusal", G_CALLBACK (show_refusal), self);
  g_signal_connect_swapped (self->heat, "notify::refusal", G_CALLBACK (show_refusal), self);
}

static SwSubject *
subject_for (SwSheetDeedRow *self, SwSubject *settings, SwRecord record)
{
  return record == SW_RECORD_STEP ? self->step : record == SW_RECORD_BATH ? self->bath
                                                                          : settings;
}

static void
bind_entry (SwSheetDeedRow *self, SwMemberEntry *entry, SwSubject *settings, SwRecord record, const char *name)
{
  const SwMember *member = name != NULL ? sw_record_find_member (record, name) : NULL;

  sw_member_entry_set_inline (entry, 8);
  /* An empty place keeps the figures of all rows in one column. */
  gtk_widget_set_opacity (GTK_WIDGET (entry), member != NULL ? 1 : 0);
  gtk_widget_set_sensitive (GTK_WIDGET (entry), member != NULL);
  if (member == NULL)
    return;
  sw_member_control_bind (SW_MEMBER_CONTROL (entry), subject_for (self, settings, record), member);
  sw_member_control_set_label (SW_MEMBER_CONTROL (entry), _ (member->label));
}

GtkWidget *
sw_sheet_deed_row_new (SwSubject *settings, const SwDeed *deed)
{
  SwSheetDeedRow *self = g_object_new (SW_TYPE_SHEET_DEED_ROW, NULL);
  SwDocument *document = sw_subject_get_document (settings);

  self->deed = *deed;
  self->bath = sw_subject_new (document, SW_RECORD_BATH);
  self->step = sw_subject_new (document, SW_RECORD_STEP);
  if (deed->step != 0)
    sw_subject_set_ids (self->step, &deed->step, 1);
  g_object_bind_property (settings, "inches", self->bath, "inches", G_BINDING_SYNC_CREATE);
  g_object_bind_property (settings, "inches", self->step, "inches", G_BINDING_SYNC_CREATE);
  bind_entry (self, self->minutes, settings, deed->record, deed->member);
  bind_entry (self, self->heat, settings, heats[deed->kind].record, heats[deed->kind].member);
  gtk_image_set_from_icon_name (self->icon, icons[deed->kind]);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (self), deed->step != 0);
  gtk_list_box_row_set_selectable (GTK_LIST_BOX_ROW (self), deed->step != 0);
  return GTK_WIDGET (self);
}

gboolean
sw_sheet_deed_row_is_of (SwSheetDeedRow *self, const SwDeed *deed)
{
  return self->deed.kind == deed->kind && self->deed.step == deed->step && self->deed.record == deed->record && self->deed.member == deed->member;
}

static char *
caution_titles (const SwSketch *sketch, const SwDeed *deed)
{
  const guint bits = sw_cautions_for_deed (sketch, (int) deed->kind, deed->step);
  GString *titles = g_string_new (NULL);

  for (SwCaution caution = 0; caution < SW_N_CAUTIONS; caution++)
    if (bits & (1u << caution))
      g_string_append_printf (titles, "%s%s", titles->len > 0 ? " · " : "", sw_caution_title (caution));
  return g_string_free (titles, FALSE);
}

static void
show_pour (SwSheetDeedRow *self, const SwSketch *sketch, const SwDeed *deed)
{
  const SwStep *step = deed->pour > 0 ? sw_sketch_find_step (sketch, deed->step) : NULL;
  const SwDye *dye = step != NULL ? sw_sketch_find_dye (sketch, step->dye) : NULL;
  g_autofree char *number = g_strdup_printf ("%u", deed->pour);

  gtk_widget_set_visible (GTK_WIDGET (self->swatch), dye != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->icon), dye == NULL);
  sw_swatch_set_sample (self->swatch, dye != NULL ? &dye->sample : NULL);
  sw_swatch_set_text (self->swatch, dye != NULL ? number : NULL);
}

static char *
detail_text (const SwSketch *sketch, const SwDeed *deed)
{
  g_autofree char *titles = caution_titles (sketch, deed);
  g_autofree char *minutes = NULL;

  if (deed->times < 2 || deed->minutes <= 0)
    return g_steal_pointer (&titles);
  minutes = sw_minutes_text (deed->minutes);
  /* Translators: a pour is made in so many pans, and takes that long in all; then cautions */
  return g_strdup_printf (ngettext ("%1$u pan, %2$s · %3$s", "%1$u pans, %2$s in all · %3$s", deed->times), deed->times, minutes, titles);
}

void
sw_sheet_deed_row_show (SwSheetDeedRow *self, const SwSketch *sketch, const SwDeed *deed)
{
  const SwStep *step = sw_sketch_find_step (sketch, deed->step);
  const int start = (int) (deed->start_min + 0.5);
  g_autofree char *clock = g_strdup_printf ("%d:%02d", start / 60, start % 60);
  g_autofree char *title = step != NULL ? sw_step_title (sketch, step) : g_strdup (sw_deed_label (deed->kind));
  g_autofree char *detail = detail_text (sketch, deed);

  g_return_if_fail (SW_IS_SHEET_DEED_ROW (self));

  self->deed = *deed;
  gtk_label_set_text (self->start, clock);
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->detail, detail);
  gtk_widget_set_visible (GTK_WIDGET (self->detail), *detail != '\0');
  show_pour (self, sketch, deed);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, detail, -1);
}

guint
sw_sheet_deed_row_get_step (SwSheetDeedRow *self)
{
  g_return_val_if_fail (SW_IS_SHEET_DEED_ROW (self), 0);
  return self->deed.step;
}
