/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-subject.h"

#include "app/desk/sw-dye-edits.h"
#include "app/desk/sw-field.h"
#include "bath/sw-schedule.h"

#include <glib/gi18n-lib.h>
#include <string.h>

struct _SwSubject
{
  GObject parent_instance;

  SwDocument *document;
  gulong changed_id;
  SwRecord record;
  GArray *ids; /* of guint */
  gboolean inches;
};

G_DEFINE_FINAL_TYPE (SwSubject, sw_subject, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];
enum
{
  SIGNAL_CHANGED,
  SIGNAL_LEAVING,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
tell (SwSubject *self)
{
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static gboolean
has_ids (SwSubject *self)
{
  return self->record == SW_RECORD_DYE || self->record == SW_RECORD_STEP || self->record == SW_RECORD_BATCH;
}

static void
document_changed_cb (SwSubject *self, guint what)
{
  guint shown = SW_CHANGED (self->record) | SW_CHANGED_ORDER;

  /* A dye's name and colour also show in the fields of steps; what a pour by depth takes hangs on the fibre in the pan. */
  shown |= SW_CHANGED (SW_RECORD_DYE);
  if (self->record == SW_RECORD_STEP)
    shown |= SW_CHANGED (SW_RECORD_YARN) | SW_CHANGED (SW_RECORD_LAY);
  if (what & shown)
    tell (self);
}

static void
sw_subject_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_INCHES:
      g_value_set_boolean (value, SW_SUBJECT (object)->inches);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_subject_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwSubject *self = SW_SUBJECT (object);

  switch (prop_id)
    {
    case PROP_INCHES:
      if (self->inches == g_value_get_boolean (value))
        return;
      self->inches = g_value_get_boolean (value);
      g_object_notify_by_pspec (object, pspec);
      tell (self);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_subject_dispose (GObject *object)
{
  SwSubject *self = SW_SUBJECT (object);

  if (self->document != NULL)
    g_clear_signal_handler (&self->changed_id, self->document);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_subject_parent_class)->dispose (object);
}

static void
sw_subject_finalize (GObject *object)
{
  g_array_unref (SW_SUBJECT (object)->ids);

  G_OBJECT_CLASS (sw_subject_parent_class)->finalize (object);
}

static void
sw_subject_class_init (SwSubjectClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sw_subject_get_property;
  object_class->set_property = sw_subject_set_property;
  object_class->dispose = sw_subject_dispose;
  object_class->finalize = sw_subject_finalize;

  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_LEAVING] = g_signal_new ("leaving", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sw_subject_init (SwSubject *self)
{
  self->ids = g_array_new (FALSE, FALSE, sizeof (guint));
}

SwSubject *
sw_subject_new (SwDocument *document, SwRecord record)
{
  SwSubject *self = g_object_new (SW_TYPE_SUBJECT, NULL);

  self->record = record;
  sw_subject_set_document (self, document);
  return self;
}

void
sw_subject_set_document (SwSubject *self, SwDocument *document)
{
  g_return_if_fail (SW_IS_SUBJECT (self));

  if (self->document == document)
    return;
  g_signal_emit (self, signals[SIGNAL_LEAVING], 0);
  if (self->document != NULL)
    g_clear_signal_handler (&self->changed_id, self->document);
  g_set_object (&self->document, document);
  if (document != NULL)
    self->changed_id = g_signal_connect_swapped (document, "changed", G_CALLBACK (document_changed_cb), self);
  tell (self);
}

SwDocument *
sw_subject_get_document (SwSubject *self)
{
  g_return_val_if_fail (SW_IS_SUBJECT (self), NULL);
  return self->document;
}

SwRecord
sw_subject_get_record (SwSubject *self)
{
  g_return_val_if_fail (SW_IS_SUBJECT (self), SW_RECORD_SKETCH);
  return self->record;
}

SwSystem
sw_subject_get_system (SwSubject *self)
{
  g_return_val_if_fail (SW_IS_SUBJECT (self), SW_SYSTEM_METRIC);
  return self->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC;
}

void
sw_subject_set_ids (SwSubject *self, const guint *ids, gsize n)
{
  g_return_if_fail (SW_IS_SUBJECT (self));

  if (self->ids->len == n && (n == 0 || memcmp (self->ids->data, ids, n * sizeof (guint)) == 0))
    return;
  g_signal_emit (self, signals[SIGNAL_LEAVING], 0);
  g_array_set_size (self->ids, 0);
  if (n > 0)
    g_array_append_vals (self->ids, ids, (guint) n);
  tell (self);
}

static guint
n_targets (SwSubject *self)
{
  return self->document == NULL ? 0 : has_ids (self) ? self->ids->len
                                                     : 1;
}

/* NULL if it is gone. */
static gconstpointer
target (SwSubject *self, guint i, guint *id)
{
  *id = has_ids (self) ? g_array_index (self->ids, guint, i) : 0;
  return sw_sketch_record (sw_document_get_sketch (self->document), self->record, *id);
}

guint
sw_subject_count (SwSubject *self)
{
  guint count = 0, id;

  g_return_val_if_fail (SW_IS_SUBJECT (self), 0);

  for (guint i = 0; i < n_targets (self); i++)
    count += target (self, i, &id) != NULL;
  return count;
}

guint
sw_subject_first (SwSubject *self)
{
  guint id;

  g_return_val_if_fail (SW_IS_SUBJECT (self), 0);

  for (guint i = 0; i < n_targets (self); i++)
    if (target (self, i, &id) != NULL)
      return id;
  return 0;
}

/* Dry grains are weighed, drops are measured: a speckle zone uses one of the two. */
static gboolean
step_uses (const SwStep *step, const SwMember *member)
{
  gboolean weighed = g_str_equal (member->name, "grams");
  gboolean measured = g_str_equal (member->name, "amount_ml") || g_str_equal (member->name, "depth_percent");

  if (!sw_member_applies (member, step->kind))
    return FALSE;
  return step->kind != SW_STEP_SPECKLE || !(step->dry ? measured : weighed);
}

/* A pour's volume is what its depth asks for, where it has one. */
static gboolean
follows_depth (SwSubject *self, gconstpointer data, const SwMember *member)
{
  return self->record == SW_RECORD_STEP && g_str_equal (member->name, "amount_ml") && ((const SwStep *) data)->depth_percent > 0.0;
}

/* What the record holds, as it counts. */
static void
get_one (SwSubject *self, gconstpointer data, const SwMember *member, SwValue *value)
{
  if (follows_depth (self, data, member))
    *value = sw_value_number (sw_schedule_pour_ml (sw_document_get_sketch (self->document), data));
  else
    sw_member_get (member, data, value);
}

static gboolean
uses (SwSubject *self, gconstpointer data, const SwMember *member)
{
  return self->record != SW_RECORD_STEP || step_uses (data, member);
}

gboolean
sw_subject_applies (SwSubject *self, const SwMember *member)
{
  gboolean any = FALSE;
  guint id;

  g_return_val_if_fail (SW_IS_SUBJECT (self), FALSE);

  for (guint i = 0; i < n_targets (self); i++)
    {
      gconstpointer data = target (self, i, &id);

      if (data != NULL && !uses (self, data, member))
        return FALSE;
      any |= data != NULL;
    }
  return any;
}

gboolean
sw_subject_get (SwSubject *self, const SwMember *member, SwValue *value, gboolean *several)
{
  gboolean any = FALSE, differ = FALSE;
  guint id;

  g_return_val_if_fail (SW_IS_SUBJECT (self), FALSE);

  if (!sw_subject_applies (self, member))
    return FALSE;
  for (guint i = 0; i < n_targets (self); i++)
    {
      gconstpointer data = target (self, i, &id);
      SwValue other;

      if (data == NULL)
        continue;
      get_one (self, data, member, any ? &other : value);
      differ |= any && !sw_value_equal (value, &other);
      if (any)
        sw_value_clear (&other);
      any = TRUE;
    }
  if (several != NULL)
    *several = differ;
  return any;
}

/* What the record shall hold, given what it holds. */
typedef void (*Wish) (SwSubject *self, const SwMember *member, const SwValue *now, gconstpointer data, SwValue *wanted);

static void
wish_same (SwSubject *self, const SwMember *member, const SwValue *now, gconstpointer data, SwValue *wanted)
{
  sw_value_copy (data, wanted);
}

static void
wish_nudged (SwSubject *self, const SwMember *member, const SwValue *now, gconstpointer data, SwValue *wanted)
{
  sw_field_nudge (member, now, sw_subject_get_system (self), *(const int *) data, wanted);
}

/* A volume that is set by hand is no longer the depth's. */
static SwEdit *
edit_off_depth (guint id, const SwValue *wanted)
{
  const SwValue none = sw_value_number (0.0);
  SwEdit *edits[] = { sw_edit_set (SW_RECORD_STEP, id, "amount_ml", wanted), sw_edit_set (SW_RECORD_STEP, id, "depth_percent", &none) };

  return sw_edit_group (edits, G_N_ELEMENTS (edits));
}

/* The class of a dye brings the half-time that is usual for it, a pour's volume ends its depth; all else stands alone. */
static SwEdit *
edit_one (SwSubject *self, guint id, const SwMember *member, const SwValue *wanted)
{
  if (follows_depth (self, sw_sketch_record (sw_document_get_sketch (self->document), self->record, id), member))
    return edit_off_depth (id, wanted);
  if (self->record == SW_RECORD_DYE && g_str_equal (member->name, "dye_class"))
    return sw_dye_edits_class (id, (SwDyeClass) wanted->as.choice);
  return sw_edit_set (self->record, id, member->name, wanted);
}

/* (transfer full) (nullable): NULL if all have what they shall have. */
static SwEdit *
edit_for (SwSubject *self, const SwMember *member, Wish wish, gconstpointer data)
{
  guint n = n_targets (self), n_edits = 0, id;
  g_autofree SwEdit **edits = g_new (SwEdit *, n + 1);

  for (guint i = 0; i < n; i++)
    {
      gconstpointer record = target (self, i, &id);
      SwValue now, wanted;

      if (record == NULL || !uses (self, record, member))
        continue;
      get_one (self, record, member, &now);
      wish (self, member, &now, data, &wanted);
      if (!sw_value_equal (&now, &wanted))
        edits[n_edits++] = edit_one (self, id, member, &wanted);
      sw_value_clear (&now);
      sw_value_clear (&wanted);
    }
  return n_edits == 0 ? NULL : n_edits == 1 ? edits[0]
                                            : sw_edit_group (edits, n_edits);
}

static gboolean
apply (SwSubject *self, const SwMember *member, SwEdit *edit, gboolean series, GError **error)
{
  g_autofree char *name = NULL;
  g_autofree char *which = NULL;

  if (edit == NULL)
    return TRUE;

  /* Translators: an edit, shown beside Undo; %s is what was changed, such as "Width" */
  name = g_strdup_printf (_ ("Change “%s”"), _ (member->label));
  if (!series)
    return sw_document_edit (self->document, edit, name, error);
  which = g_strdup_printf ("%s %u %u %s", sw_record_name (self->record), sw_subject_first (self), n_targets (self), member->name);
  return sw_document_edit_series (self->document, edit, name, which, error);
}

gboolean
sw_subject_set (SwSubject *self, const SwMember *member, const SwValue *value, gboolean series, GError **error)
{
  g_return_val_if_fail (SW_IS_SUBJECT (self), FALSE);
  return apply (self, member, edit_for (self, member, wish_same, value), series, error);
}

gboolean
sw_subject_nudge (SwSubject *self, const SwMember *member, int steps, GError **error)
{
  g_return_val_if_fail (SW_IS_SUBJECT (self), FALSE);
  return apply (self, member, edit_for (self, member, wish_nudged, &steps), TRUE, error);
}
