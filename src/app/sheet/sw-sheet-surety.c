/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sheet/sw-sheet-surety.h"

#include "app/sheet/sw-sheet-table.h"
#include "app/desk/sw-surety-words.h"
#include "app/parts/sw-toast.h"
#include "app/desk/sw-units.h"
#include "forecast/sw-latest.h"
#include "forecast/sw-repeat.h"

#include <glib/gi18n-lib.h>

/* Skeins that are compared: enough for a range, few enough to wait for. */
#define N_SKEINS 8

#define PULSE_MS 120

/* One question that is worked out on request. */
typedef struct
{
  SwLatest *latest; /* NULL unless it is being worked out */
  guint pulse_id;

  GtkButton *button;
  GtkProgressBar *bar;
  GtkLabel *note;
} Job;

struct _SwSheetSurety
{
  AdwBin parent_instance;

  SwDocument *document;
  gboolean inches;
  SwRepeat *repeat; /* what is shown, NULL if nothing is */
  GArray *slips;
  Job repeat_job, slips_job;

  SwSheetTable *shares;
  GtkWidget *twist_box;
  GtkLabel *twist;
  SwSheetTable *effects;
};

G_DEFINE_FINAL_TYPE (SwSheetSurety, sw_sheet_surety, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

/* Working it out */

static void
show_job (Job *job, const char *note)
{
  const gboolean busy = job->latest != NULL;

  gtk_button_set_label (job->button, busy ? _ ("Cancel") : _ ("Work Out"));
  gtk_widget_set_visible (GTK_WIDGET (job->bar), busy);
  gtk_label_set_text (job->note, note != NULL ? note : "");
  gtk_widget_set_visible (GTK_WIDGET (job->note), note != NULL && *note != '\0');
}

static gboolean
pulse_cb (gpointer data)
{
  gtk_progress_bar_pulse (((Job *) data)->bar);
  return G_SOURCE_CONTINUE;
}

/* What is under way is cancelled, and its answer never comes. */
static void
stop (Job *job, const char *note)
{
  g_clear_pointer (&job->latest, sw_latest_free);
  g_clear_handle_id (&job->pulse_id, g_source_remove);
  if (job->button != NULL)
    show_job (job, note);
}

static void
start (SwSheetSurety *self, Job *job, SwLatestRun run, SwLatestDone done, GDestroyNotify free_answer)
{
  job->latest = sw_latest_new (run, done, self, (GDestroyNotify) sw_sketch_free, free_answer);
  job->pulse_id = g_timeout_add (PULSE_MS, pulse_cb, job);
  sw_latest_ask (job->latest, sw_sketch_copy (sw_document_get_sketch (self->document)));
  show_job (job, NULL);
}

/* How alike the skeins are */

static void
show_repeat (SwSheetSurety *self)
{
  g_autofree char *twist = NULL;

  sw_sheet_table_begin (self->shares);
  for (gsize i = 0; self->repeat != NULL && i < self->repeat->n_colours; i++)
    {
      g_autofree char *range = sw_surety_share (&self->repeat->shares[i]);
      SwSheetWords words = { .title = self->repeat->colours[i], .cells = { range } };

      sw_sheet_table_add (self->shares, &words);
    }
  if (self->repeat != NULL)
    {
      g_autofree char *stack = sw_surety_number (&self->repeat->stack, 2);
      g_autofree char *differ = sw_surety_number (&self->repeat->mean_difference, 1);
      SwSheetWords pooling = { .title = _ ("Pooling"), .detail = _ ("likeness of stitches above each other, 0 to 1"), .cells = { stack } };
      SwSheetWords colour = { .title = _ ("Mean colour of two skeins"), .detail = sw_surety_verdict (self->repeat->mean_difference.most), .cells = { differ } };

      sw_sheet_table_add (self->shares, &pooling);
      sw_sheet_table_add (self->shares, &colour);
      twist = sw_surety_twist (self->repeat, self->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC);
    }
  sw_sheet_table_end (self->shares);
  gtk_label_set_text (self->twist, twist != NULL ? twist : "");
  gtk_widget_set_visible (self->twist_box, twist != NULL);
}

static void
clear_repeat (SwSheetSurety *self)
{
  g_clear_pointer (&self->repeat, sw_repeat_free);
  show_repeat (self);
}

static gpointer
repeat_worker (gpointer question, gpointer user_data, GCancellable *cancellable, GError **error)
{
  return sw_repeat_new (question, N_SKEINS, cancellable, error);
}

static void
repeat_done_cb (gpointer answer, const GError *error, gpointer user_data)
{
  SwSheetSurety *self = user_data;

  stop (&self->repeat_job, error != NULL ? error->message : NULL);
  g_clear_pointer (&self->repeat, sw_repeat_free);
  self->repeat = answer;
  show_repeat (self);
}

static void
repeat_cb (SwSheetSurety *self)
{
  if (self->repeat_job.latest != NULL)
    stop (&self->repeat_job, NULL);
  else
    start (self, &self->repeat_job, repeat_worker, repeat_done_cb, (GDestroyNotify) sw_repeat_free);
}

static void
twist_cb (SwSheetSurety *self)
{
  SwValue value;
  g_autoptr (GError) error = NULL;

  if (self->repeat == NULL)
    return;
  value = sw_value_number (self->repeat->twist_start_cm);
  /* Translators: an edit, shown beside Undo: the hank's twist begins there */
  if (!sw_document_edit (self->document, sw_edit_set (SW_RECORD_LISTING, 0, "twist_start_cm", &value), _ ("Begin the Twist"), &error))
    sw_toast (GTK_WIDGET (self), error->message);
}

/* What a slip does */

static void
show_slips (SwSheetSurety *self)
{
  sw_sheet_table_begin (self->effects);
  for (guint i = 0; self->slips != NULL && i < self->slips->len; i++)
    {
      const SwSlipEffect *effect = &g_array_index (self->slips, SwSlipEffect, i);
      g_autofree char *title = sw_surety_slip (sw_document_get_sketch (self->document), effect);
      g_autofree char *mean = g_strdup_printf ("%.1f", effect->mean);
      g_autofree char *most = g_strdup_printf ("%.1f", effect->most);
      SwSheetWords words = { .title = title, .cells = { sw_surety_verdict (effect->most), mean, most } };

      sw_sheet_table_add (self->effects, &words);
    }
  sw_sheet_table_end (self->effects);
}

static void
clear_slips (SwSheetSurety *self)
{
  g_clear_pointer (&self->slips, g_array_unref);
  show_slips (self);
}

static gpointer
slips_worker (gpointer question, gpointer user_data, GCancellable *cancellable, GError **error)
{
  return sw_slips_new (question, cancellable, error);
}

static void
slips_done_cb (gpointer answer, const GError *error, gpointer user_data)
{
  SwSheetSurety *self = user_data;

  stop (&self->slips_job, error != NULL ? error->message : NULL);
  g_clear_pointer (&self->slips, g_array_unref);
  self->slips = answer;
  show_slips (self);
}

static void
slips_cb (SwSheetSurety *self)
{
  if (self->slips_job.latest != NULL)
    stop (&self->slips_job, NULL);
  else
    start (self, &self->slips_job, slips_worker, slips_done_cb, (GDestroyNotify) g_array_unref);
}

/* Following */

static void
outdate (SwSheetSurety *self, Job *job, gboolean shown, void (*clear) (SwSheetSurety *))
{
  if (!shown && job->latest == NULL)
    return;
  stop (job, _ ("The drawing has changed since: work it out again."));
  clear (self);
}

/* What is only told of the yarn, or reckoned with, changes no colour. */
#define OF_NO_COLOUR (SW_CHANGED (SW_RECORD_BATCH) | SW_CHANGED (SW_RECORD_LISTING) | SW_CHANGED (SW_RECORD_SKETCH))

static void
changed_cb (SwSheetSurety *self, guint what)
{
  if ((what & ~OF_NO_COLOUR) == 0)
    return;
  outdate (self, &self->repeat_job, self->repeat != NULL, clear_repeat);
  outdate (self, &self->slips_job, self->slips != NULL, clear_slips);
}

void
sw_sheet_surety_set_document (SwSheetSurety *self, SwDocument *document)
{
  g_return_if_fail (SW_IS_SHEET_SURETY (self));

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document != NULL)
    g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
}

static void
sw_sheet_surety_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_INCHES:
      g_value_set_boolean (value, SW_SHEET_SURETY (object)->inches);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_sheet_surety_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_INCHES:
      SW_SHEET_SURETY (object)->inches = g_value_get_boolean (value);
      show_repeat (SW_SHEET_SURETY (object));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_sheet_surety_dispose (GObject *object)
{
  SwSheetSurety *self = SW_SHEET_SURETY (object);

  self->repeat_job.button = self->slips_job.button = NULL;
  stop (&self->repeat_job, NULL);
  stop (&self->slips_job, NULL);
  sw_sheet_surety_set_document (self, NULL);
  g_clear_pointer (&self->repeat, sw_repeat_free);
  g_clear_pointer (&self->slips, g_array_unref);

  G_OBJECT_CLASS (sw_sheet_surety_parent_class)->dispose (object);
}

static void
sw_sheet_surety_class_init (SwSheetSuretyClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = sw_sheet_surety_get_property;
  object_class->set_property = sw_sheet_surety_set_property;
  object_class->dispose = sw_sheet_surety_dispose;

  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (SW_TYPE_SHEET_TABLE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-sheet-surety.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSheetSurety, shares);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSurety, twist_box);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSurety, twist);
  gtk_widget_class_bind_template_child (widget_class, SwSheetSurety, effects);
  gtk_widget_class_bind_template_child_full (widget_class, "repeat_button", FALSE, G_STRUCT_OFFSET (SwSheetSurety, repeat_job.button));
  gtk_widget_class_bind_template_child_full (widget_class, "repeat_bar", FALSE, G_STRUCT_OFFSET (SwSheetSurety, repeat_job.bar));
  gtk_widget_class_bind_template_child_full (widget_class, "repeat_note", FALSE, G_STRUCT_OFFSET (SwSheetSurety, repeat_job.note));
  gtk_widget_class_bind_template_child_full (widget_class, "slips_button", FALSE, G_STRUCT_OFFSET (SwSheetSurety, slips_job.button));
  gtk_widget_class_bind_template_child_full (widget_class, "slips_bar", FALSE, G_STRUCT_OFFSET (SwSheetSurety, slips_job.bar));
  gtk_widget_class_bind_template_child_full (widget_class, "slips_note", FALSE, G_STRUCT_OFFSET (SwSheetSurety, slips_job.note));
  gtk_widget_class_bind_template_callback (widget_class, repeat_cb);
  gtk_widget_class_bind_template_callback (widget_class, slips_cb);
  gtk_widget_class_bind_template_callback (widget_class, twist_cb);
}

static void
sw_sheet_surety_init (SwSheetSurety *self)
{
  /* Translators: header of a figure: the least and the most of several skeins */
  const char *shares[] = { _ ("Least to most") };
  /* Translators: headers: can it be seen; CIEDE2000, the mean and the worst places */
  const char *effects[] = { _ ("Seen?"), _ ("ΔE mean"), _ ("ΔE worst") };

  gtk_widget_init_template (GTK_WIDGET (self));
  sw_sheet_table_set_headers (self->shares, _ ("Share of the strand"), shares, G_N_ELEMENTS (shares));
  sw_sheet_table_set_headers (self->effects, _ ("Slip"), effects, G_N_ELEMENTS (effects));
  sw_sheet_table_set_name (self->shares, _ ("How alike the skeins are"));
  sw_sheet_table_set_name (self->effects, _ ("What a slip does"));
  show_job (&self->repeat_job, NULL);
  show_job (&self->slips_job, NULL);
  show_repeat (self);
  show_slips (self);
}
