/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sheet/sw-sheet-batches.h"

#include "app/desk/sw-batch-edits.h"
#include "app/sheet/sw-sheet-batch-row.h"
#include "app/parts/sw-toast.h"

#include <glib/gi18n-lib.h>

struct _SwSheetBatches
{
  AdwBin parent_instance;

  SwDaySession *session;
  const SwSheet *sheet;
  GPtrArray *rows; /* of SwSheetBatchRow, the newest first, not owned */

  GtkWidget *note;
  GtkLabel *hint;
  GtkWidget *empty;
  AdwPreferencesGroup *batches;
};

G_DEFINE_FINAL_TYPE (SwSheetBatches, sw_sheet_batches, ADW_TYPE_BIN)

static SwDocument *
document_of (SwSheetBatches *self)
{
  return sw_day_session_get_document (self->session);
}

/* Rows that are still about their batch stay: somebody may be writing in one. */
static gboolean
same_rows (SwSheetBatches *self, const SwSketch *sketch)
{
  if (self->rows->len != sketch->batches->len)
    return FALSE;
  for (guint i = 0; i < self->rows->len; i++)
    if (sw_sheet_batch_row_get_batch (self->rows->pdata[i]) != ((const SwBatch *) sketch->batches->pdata[sketch->batches->len - 1 - i])->id)
      return FALSE;
  return TRUE;
}

static void
make_rows (SwSheetBatches *self, const SwSketch *sketch)
{
  for (guint i = 0; i < self->rows->len; i++)
    adw_preferences_group_remove (self->batches, self->rows->pdata[i]);
  g_ptr_array_set_size (self->rows, 0);
  for (guint i = sketch->batches->len; i > 0; i--)
    {
      GtkWidget *row = sw_sheet_batch_row_new (document_of (self), ((const SwBatch *) sketch->batches->pdata[i - 1])->id);

      adw_preferences_group_add (self->batches, row);
      g_ptr_array_add (self->rows, row);
    }
}

static void
show_hint (SwSheetBatches *self)
{
  gtk_label_set_text (self->hint, sw_day_session_get_state (self->session) == SW_DAY_STATE_NONE
                                      ? _ ("Keeps the day, the amounts, what differs from the batch before, and the cost.")
                                      : _ ("Keeps the day with its log, the amounts, what differs from the batch before, and the cost."));
}

static void
show (SwSheetBatches *self)
{
  const SwSketch *sketch = sw_document_get_sketch (document_of (self));

  if (!same_rows (self, sketch))
    make_rows (self, sketch);
  for (guint i = 0; i < self->rows->len; i++)
    sw_sheet_batch_row_show (self->rows->pdata[i]);
  gtk_widget_set_visible (GTK_WIDGET (self->batches), self->rows->len > 0);
  gtk_widget_set_visible (self->empty, self->rows->len == 0);
  show_hint (self);
}

static void
changed_cb (SwSheetBatches *self, guint what)
{
  if (what & (SW_CHANGED (SW_RECORD_BATCH) | SW_CHANGED (SW_RECORD_SHEET)))
    show (self);
}

static char *
today (SwDaySession *session)
{
  const SwDayClock *clock = sw_day_session_get_clock (session);
  g_autoptr (GDateTime) day = clock != NULL ? g_date_time_new_from_unix_local (clock->begun_us / G_USEC_PER_SEC) : g_date_time_new_now_local ();

  return g_date_time_format (day, "%Y-%m-%d");
}

static void
note_cb (SwSheetBatches *self)
{
  const SwDayClock *clock = sw_day_session_get_clock (self->session);
  g_autofree char *date = today (self->session);
  g_autofree char *log = clock != NULL ? sw_day_clock_log (clock) : NULL;
  g_autoptr (GError) error = NULL;
  guint id;

  if (self->sheet == NULL)
    return;
  if (!sw_batch_note (document_of (self), self->sheet, log, date, &id, &error))
    {
      sw_toast (GTK_WIDGET (self), error->message);
      return;
    }
  sw_day_session_forget (self->session);
  if (self->rows->len > 0)
    adw_expander_row_set_expanded (ADW_EXPANDER_ROW (self->rows->pdata[0]), TRUE);
}

static void
sw_sheet_batches_dispose (GObject *object)
{
  SwSheetBatches *self = SW_SHEET_BATCHES (object);

  if (self->session != NULL)
    {
      g_signal_handlers_disconnect_by_data (document_of (self), self);
      g_signal_handlers_disconnect_by_data (self->session, self);
    }
  g_clear_object (&self->session);

  G_OBJECT_CLASS (sw_sheet_batches_parent_class)->dispose (object);
}

static void
sw_sheet_batches_finalize (GObject *object)
{
  g_ptr_array_unref (SW_SHEET_BATCHES (object)->rows);

  G_OBJECT_CLASS (sw_sheet_batches_parent_class)->finalize (object);
}

static void
sw_sheet_batches_class_init (SwSheetBatchesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_sheet_batches_dispose;
  G_OBJECT_CLASS (klass)->finalize = sw_sheet_batches_finalize;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-sheet-batches.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatches, note);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatches, hint);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatches, empty);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatches, batches);
  gtk_widget_class_bind_template_callback (widget_class, note_cb);
}

static void
sw_sheet_batches_init (SwSheetBatches *self)
{
  self->rows = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
sw_sheet_batches_set_session (SwSheetBatches *self, SwDaySession *session)
{
  g_return_if_fail (SW_IS_SHEET_BATCHES (self) && self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_swapped (document_of (self), "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (session, "notify::state", G_CALLBACK (show_hint), self);
  show (self);
}

void
sw_sheet_batches_show (SwSheetBatches *self, const SwSheet *sheet)
{
  g_return_if_fail (SW_IS_SHEET_BATCHES (self));

  self->sheet = sheet;
  gtk_widget_set_sensitive (self->note, sheet != NULL);
}
