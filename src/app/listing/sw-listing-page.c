/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/listing/sw-listing-page.h"

#include "app/parts/sw-field-row.h"
#include "app/parts/sw-seen.h"
#include "app/listing/sw-listing-view.h"
#include "forecast/sw-listing-words.h"

#include <glib/gi18n-lib.h>

struct _SwListingPage
{
  AdwBin parent_instance;

  SwLive *live;
  SwSubject *subject;
  gboolean inches;
  gboolean showing; /* the words are being set from the sketch */

  AdwPreferencesGroup *picture;
  AdwPreferencesGroup *twist;
  AdwPreferencesGroup *care;
  GtkTextBuffer *words;
  GtkWidget *anew;
  GtkWidget *hanks, *wet, *label_words; /* rows that mean nothing in some pictures */
};

G_DEFINE_FINAL_TYPE (SwListingPage, sw_listing_page, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

/* Members of the listing in the order of the pane, by group. */
static const char *const in_picture[] = { "arrangement", "hanks", "shape", "longest_px", "ground", "palette", "wet", "caption", "maker", "drawn_line", "mark", "label", "label_words" };
static const char *const in_twist[] = { "twist_start_cm", "twist_turns" };
static const char *const in_care[] = { "care", "care_words" };

char *
sw_listing_page_get_words (SwListingPage *self)
{
  SwForecast *forecast;

  g_return_val_if_fail (SW_IS_LISTING_PAGE (self), NULL);

  forecast = self->live != NULL ? sw_live_get_forecast (self->live) : NULL;
  return forecast != NULL ? sw_listing_words (forecast, self->inches) : NULL;
}

static char *
buffer_text (SwListingPage *self)
{
  GtkTextIter from, to;

  gtk_text_buffer_get_bounds (self->words, &from, &to);
  return gtk_text_buffer_get_text (self->words, &from, &to, FALSE);
}

/* Setting the same words again would send the cursor to the end. */
static void
show_words (gpointer page)
{
  SwListingPage *self = page;
  g_autofree char *words = sw_listing_page_get_words (self);
  g_autofree char *shown = buffer_text (self);
  const SwSketch *sketch;

  if (words == NULL)
    return;
  sketch = sw_document_get_sketch (sw_live_get_document (self->live));
  gtk_widget_set_sensitive (self->anew, sketch->listing.words[0] != '\0');
  /* What is typed goes before a forecast that does not know of it yet. */
  if (g_str_equal (words, shown) || (sketch->listing.words[0] != '\0' && g_str_equal (sketch->listing.words, shown)))
    return;
  self->showing = TRUE;
  gtk_text_buffer_set_text (self->words, words, -1);
  self->showing = FALSE;
}

/* A row that would change nothing is not live. */
static void
show_rows (SwListingPage *self)
{
  const SwListingSettings *listing = &sw_document_get_sketch (sw_live_get_document (self->live))->listing;
  const SwArrangement arrangement = listing->arrangement;
  const gboolean skein = arrangement == SW_ARRANGEMENT_SKEIN_CLOTH || arrangement == SW_ARRANGEMENT_WHOLE;

  gtk_widget_set_sensitive (self->hanks, arrangement == SW_ARRANGEMENT_HANKS);
  gtk_widget_set_sensitive (self->wet, skein);
  gtk_widget_set_sensitive (self->label_words, listing->label != SW_LABEL_NONE && arrangement != SW_ARRANGEMENT_SKEIN_CLOTH);
}

static void
put_words (SwListingPage *self, const char *text, gboolean series)
{
  g_autoptr (GError) error = NULL;
  SwValue value = sw_value_text (text);

  if (!sw_subject_set (self->subject, sw_record_find_member (SW_RECORD_LISTING, "words"), &value, series, &error))
    gtk_widget_error_bell (GTK_WIDGET (self));
  sw_value_clear (&value);
}

/* Words emptied by hand, or typed back to what is written by itself, follow the forecast again. */
static void
words_changed_cb (SwListingPage *self)
{
  SwForecast *forecast = self->live != NULL ? sw_live_get_forecast (self->live) : NULL;
  g_autofree char *text = NULL;
  g_autofree char *written = NULL;

  if (self->showing || forecast == NULL)
    return;
  text = buffer_text (self);
  written = sw_listing_written (forecast, self->inches);
  put_words (self, g_str_equal (text, written) ? "" : text, TRUE);
}

static void
write_anew_cb (SwListingPage *self)
{
  put_words (self, "", FALSE);
}

static void
mark_chosen_cb (GtkNativeDialog *dialog, int response, SwListingPage *self)
{
  if (response == GTK_RESPONSE_ACCEPT)
    {
      g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      g_autofree char *path = g_file_get_path (file);
      g_autofree char *name = path != NULL ? g_filename_to_utf8 (path, -1, NULL, NULL, NULL) : NULL;
      g_autoptr (GError) error = NULL;
      SwValue value = sw_value_text (name != NULL ? name : "");

      if (name == NULL || !sw_subject_set (self->subject, sw_record_find_member (SW_RECORD_LISTING, "mark"), &value, FALSE, &error))
        gtk_widget_error_bell (GTK_WIDGET (self));
      sw_value_clear (&value);
    }
  g_object_unref (dialog);
}

static void
choose_mark_cb (SwListingPage *self)
{
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (_ ("Choose a Maker’s Mark"), GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Choose"), _ ("_Cancel"));
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("PNG and JPEG Pictures"));
  gtk_file_filter_add_suffix (filter, "png");
  gtk_file_filter_add_suffix (filter, "jpg");
  gtk_file_filter_add_suffix (filter, "jpeg");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), filter);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect_object (dialog, "response", G_CALLBACK (mark_chosen_cb), self, G_CONNECT_DEFAULT);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

/* Following */

static void
set_live (SwListingPage *self, SwLive *live)
{
  if (self->live == live)
    return;
  if (self->live != NULL)
    {
      sw_seen_disconnect (GTK_WIDGET (self), self->live);
      g_signal_handlers_disconnect_by_func (sw_live_get_document (self->live), show_rows, self);
    }
  g_set_object (&self->live, live);
  sw_subject_set_document (self->subject, live != NULL ? sw_live_get_document (live) : NULL);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_LIVE]);
  if (live == NULL)
    return;
  sw_seen_connect (GTK_WIDGET (self), live, "told", show_words);
  g_signal_connect_object (sw_live_get_document (live), "changed", G_CALLBACK (show_rows), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (sw_live_get_document (live), "replaced", G_CALLBACK (show_rows), self, G_CONNECT_SWAPPED);
  show_rows (self);
  show_words (self);
}

static void
sw_listing_page_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwListingPage *self = SW_LISTING_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, self->live);
      break;
    case PROP_INCHES:
      g_value_set_boolean (value, self->inches);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_listing_page_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwListingPage *self = SW_LISTING_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      set_live (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      self->inches = g_value_get_boolean (value);
      g_object_set (self->subject, "inches", self->inches, NULL);
      show_words (self);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_listing_page_dispose (GObject *object)
{
  SwListingPage *self = SW_LISTING_PAGE (object);

  if (self->subject != NULL)
    set_live (self, NULL);
  g_clear_object (&self->subject);

  G_OBJECT_CLASS (sw_listing_page_parent_class)->dispose (object);
}

static void
sw_listing_page_class_init (SwListingPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_listing_page_get_property;
  object_class->set_property = sw_listing_page_set_property;
  object_class->dispose = sw_listing_page_dispose;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (SW_TYPE_LISTING_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-listing-page.ui");
  gtk_widget_class_bind_template_child (widget_class, SwListingPage, picture);
  gtk_widget_class_bind_template_child (widget_class, SwListingPage, twist);
  gtk_widget_class_bind_template_child (widget_class, SwListingPage, care);
  gtk_widget_class_bind_template_child (widget_class, SwListingPage, words);
  gtk_widget_class_bind_template_child (widget_class, SwListingPage, anew);
  gtk_widget_class_bind_template_callback (widget_class, words_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, write_anew_cb);
  gtk_widget_class_bind_template_callback (widget_class, choose_mark_cb);
}

static void
add_fields (SwListingPage *self, AdwPreferencesGroup *group, const char *const *names, gsize n)
{
  const struct
  {
    const char *name;
    GtkWidget **row;
  } kept[] = { { "hanks", &self->hanks }, { "wet", &self->wet }, { "label_words", &self->label_words } };

  for (gsize i = 0; i < n; i++)
    {
      GtkWidget *row = sw_field_row_new (self->subject, sw_record_find_member (SW_RECORD_LISTING, names[i]));

      adw_preferences_group_add (group, row);
      for (gsize k = 0; k < G_N_ELEMENTS (kept); k++)
        if (g_str_equal (names[i], kept[k].name))
          *kept[k].row = row;
    }
}

static void
sw_listing_page_init (SwListingPage *self)
{
  self->showing = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  self->subject = sw_subject_new (NULL, SW_RECORD_LISTING);
  add_fields (self, self->picture, in_picture, G_N_ELEMENTS (in_picture));
  add_fields (self, self->twist, in_twist, G_N_ELEMENTS (in_twist));
  add_fields (self, self->care, in_care, G_N_ELEMENTS (in_care));
  self->showing = FALSE;
}
