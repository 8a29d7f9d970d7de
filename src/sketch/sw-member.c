/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-member-private.h"

#include <string.h>

GQuark
sw_sketch_error_quark (void)
{
  return g_quark_from_static_string ("sw-sketch-error-quark");
}

static const SwMemberTable *const tables[SW_N_RECORDS] = {
  [SW_RECORD_SKETCH] = &sw_sketch_table,
  [SW_RECORD_YARN] = &sw_yarn_table,
  [SW_RECORD_REEL] = &sw_reel_table,
  [SW_RECORD_LAY] = &sw_lay_table,
  [SW_RECORD_BATH] = &sw_bath_table,
  [SW_RECORD_DYE] = &sw_dye_table,
  [SW_RECORD_STEP] = &sw_step_table,
  [SW_RECORD_CLOTH] = &sw_cloth_table,
  [SW_RECORD_SHEET] = &sw_sheet_table,
  [SW_RECORD_LISTING] = &sw_listing_table,
  [SW_RECORD_BATCH] = &sw_batch_table,
};

/* Bytes of a member in its record; text is a pointer there. */
static const gsize kind_sizes[] = {
  [SW_KIND_NUMBER] = sizeof (double),
  [SW_KIND_WHOLE] = sizeof (gint64),
  [SW_KIND_TEXT] = sizeof (char *),
  [SW_KIND_CHOICE] = sizeof (int),
  [SW_KIND_FLAG] = sizeof (gboolean),
  [SW_KIND_COLOUR] = sizeof (SwSample),
  [SW_KIND_DYE] = sizeof (guint),
};

/* The enumerations are read and written as whole numbers. */
G_STATIC_ASSERT (sizeof (SwFibre) == sizeof (int));
G_STATIC_ASSERT (sizeof (SwFabricState) == sizeof (int));

/* Never NULL, so that a record that was only zeroed reads like an empty one. */
static const char *
text_in (const SwMember *member, gconstpointer data)
{
  const char *text = *(char *const *) G_STRUCT_MEMBER_P (data, member->offset);

  return text != NULL ? text : "";
}

const SwMemberTable *
sw_record_table (SwRecord record)
{
  g_return_val_if_fail ((guint) record < SW_N_RECORDS, NULL);

  return tables[record];
}

const SwMember *
sw_record_members (SwRecord record, gsize *n)
{
  const SwMemberTable *table = sw_record_table (record);

  g_return_val_if_fail (table != NULL && n != NULL, NULL);

  *n = table->n;
  return table->members;
}

const char *
sw_record_name (SwRecord record)
{
  const SwMemberTable *table = sw_record_table (record);

  return table != NULL ? table->name : NULL;
}

const SwMember *
sw_record_find_member (SwRecord record, const char *name)
{
  const SwMemberTable *table = sw_record_table (record);

  g_return_val_if_fail (table != NULL, NULL);

  for (gsize i = 0; i < table->n; i++)
    if (g_strcmp0 (table->members[i].name, name) == 0)
      return &table->members[i];
  return NULL;
}

gboolean
sw_member_applies (const SwMember *member, SwStepKind kind)
{
  g_return_val_if_fail (member != NULL, FALSE);

  return member->step_kinds == 0 || (member->step_kinds & SW_STEP_BIT (kind)) != 0;
}

void
sw_member_fallback (const SwMember *member, SwStepKind kind, SwValue *value)
{
  double fallback;

  g_return_if_fail (member != NULL && value != NULL);

  fallback = member->fallback;
  if (member->step_kinds != 0)
    sw_step_own_fallback (kind, member->name, &fallback);

  switch (member->kind)
    {
    case SW_KIND_NUMBER:
      *value = sw_value_number (fallback);
      break;
    case SW_KIND_WHOLE:
      *value = sw_value_whole ((gint64) fallback);
      break;
    case SW_KIND_TEXT:
      *value = sw_value_text ("");
      break;
    case SW_KIND_CHOICE:
      *value = sw_value_choice ((int) fallback);
      break;
    case SW_KIND_FLAG:
      *value = sw_value_flag (fallback != 0);
      break;
    case SW_KIND_COLOUR:
      *value = sw_value_colour (member->colour_fallback);
      break;
    case SW_KIND_DYE:
      *value = sw_value_dye ((guint) fallback);
      break;
    default:
      g_return_if_reached ();
    }
}

void
sw_member_get (const SwMember *member, gconstpointer data, SwValue *value)
{
  gconstpointer place;

  g_return_if_fail (member != NULL && data != NULL && value != NULL);

  place = G_STRUCT_MEMBER_P (data, member->offset);
  switch (member->kind)
    {
    case SW_KIND_NUMBER:
      *value = sw_value_number (*(const double *) place);
      break;
    case SW_KIND_WHOLE:
      *value = sw_value_whole (*(const gint64 *) place);
      break;
    case SW_KIND_TEXT:
      *value = sw_value_text (text_in (member, data));
      break;
    case SW_KIND_CHOICE:
      *value = sw_value_choice (*(const int *) place);
      break;
    case SW_KIND_FLAG:
      *value = sw_value_flag (*(const gboolean *) place);
      break;
    case SW_KIND_COLOUR:
      *value = sw_value_colour (place);
      break;
    case SW_KIND_DYE:
      *value = sw_value_dye (*(const guint *) place);
      break;
    default:
      g_return_if_reached ();
    }
}

void
sw_member_put (const SwMember *member, gpointer data, const SwValue *value)
{
  gpointer place = G_STRUCT_MEMBER_P (data, member->offset);

  switch (member->kind)
    {
    case SW_KIND_NUMBER:
      *(double *) place = value->as.number;
      break;
    case SW_KIND_WHOLE:
      *(gint64 *) place = value->as.whole;
      break;
    case SW_KIND_TEXT:
      g_free (*(char **) place);
      *(char **) place = g_strdup (value->as.text);
      break;
    case SW_KIND_CHOICE:
      *(int *) place = value->as.choice;
      break;
    case SW_KIND_FLAG:
      *(gboolean *) place = value->as.flag ? TRUE : FALSE;
      break;
    case SW_KIND_COLOUR:
      *(SwSample *) place = value->as.colour;
      break;
    case SW_KIND_DYE:
      *(guint *) place = (guint) value->as.whole;
      break;
    default:
      g_return_if_reached ();
    }
}

gboolean
sw_member_set (const SwMember *member, gpointer data, const SwValue *value, GError **error)
{
  g_return_val_if_fail (member != NULL && data != NULL && value != NULL, FALSE);

  if (!sw_member_check (member, value, error))
    return FALSE;

  sw_member_put (member, data, value);
  return TRUE;
}

static GPtrArray **
extras_in (SwRecord record, gconstpointer data)
{
  return (GPtrArray **) G_STRUCT_MEMBER_P (data, sw_record_table (record)->extras);
}

void
sw_record_init (SwRecord record, gpointer data, SwStepKind kind)
{
  const SwMemberTable *table = sw_record_table (record);

  for (gsize i = 0; i < table->n; i++)
    {
      SwValue value;

      sw_member_fallback (&table->members[i], kind, &value);
      sw_member_put (&table->members[i], data, &value);
      sw_value_clear (&value);
    }
}

void
sw_record_copy (SwRecord record, gconstpointer data, gpointer copy)
{
  const SwMemberTable *table = sw_record_table (record);

  for (gsize i = 0; i < table->n; i++)
    {
      const SwMember *member = &table->members[i];
      gpointer place = G_STRUCT_MEMBER_P (copy, member->offset);

      if (member->kind == SW_KIND_TEXT)
        *(char **) place = g_strdup (text_in (member, data));
      else
        memcpy (place, G_STRUCT_MEMBER_P (data, member->offset), kind_sizes[member->kind]);
    }
  *extras_in (record, copy) = sw_extras_copy (*extras_in (record, data));
}

void
sw_record_clear (SwRecord record, gpointer data)
{
  const SwMemberTable *table = sw_record_table (record);

  for (gsize i = 0; i < table->n; i++)
    if (table->members[i].kind == SW_KIND_TEXT)
      {
        char **text = G_STRUCT_MEMBER_P (data, table->members[i].offset);

        g_clear_pointer (text, g_free);
      }
  g_clear_pointer (extras_in (record, data), sw_extras_free);
}

static gboolean
same (const SwMember *member, gconstpointer a, gconstpointer b)
{
  gconstpointer place_a = G_STRUCT_MEMBER_P (a, member->offset);
  gconstpointer place_b = G_STRUCT_MEMBER_P (b, member->offset);

  switch (member->kind)
    {
    case SW_KIND_NUMBER: /* not by bytes: 0 and -0 are the same */
      return *(const double *) place_a == *(const double *) place_b;
    case SW_KIND_TEXT:
      return g_str_equal (text_in (member, a), text_in (member, b));
    case SW_KIND_COLOUR:
      return sw_sample_equal (place_a, place_b);
    default:
      return memcmp (place_a, place_b, kind_sizes[member->kind]) == 0;
    }
}

gboolean
sw_record_equal (SwRecord record, gconstpointer a, gconstpointer b)
{
  const SwMemberTable *table = sw_record_table (record);

  for (gsize i = 0; i < table->n; i++)
    if (!same (&table->members[i], a, b))
      return FALSE;
  return sw_extras_equal (*extras_in (record, a), *extras_in (record, b));
}
