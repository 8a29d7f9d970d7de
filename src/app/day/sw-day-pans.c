/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/day/sw-day-pans.h"

#include "app/desk/sw-day-words.h"

#include <glib/gi18n-lib.h>

struct _SwDayPans
{
  AdwBin parent_instance;

  SwDaySession *session;
  GtkFlowBox *box;
  GPtrArray *tiles; /* of Tile */
};

#define MOST_IN_LINE 4

G_DEFINE_FINAL_TYPE (SwDayPans, sw_day_pans, ADW_TYPE_BIN)

typedef struct
{
  SwDayPans *owner;
  guint pan;
  GtkWidget *button;
  GtkLabel *name, *deed, *digits;
} Tile;

static const SwDayClock *
clock_of (SwDayPans *self)
{
  return self->session != NULL ? sw_day_session_get_clock (self->session) : NULL;
}

static void
take_cb (Tile *tile)
{
  sw_day_session_take (tile->owner->session, tile->pan);
}

static GtkLabel *
new_label (const char *style)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, style);
  gtk_widget_add_css_class (label, "numeric");
  return GTK_LABEL (label);
}

static Tile *
new_tile (SwDayPans *self, guint pan)
{
  Tile *tile = g_new0 (Tile, 1);
  GtkWidget *rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  /* Translators: the number of a pan */
  g_autofree char *name = g_strdup_printf (_ ("Pan %u"), pan);

  tile->owner = self;
  tile->pan = pan;
  tile->name = new_label ("day-tile-name");
  tile->deed = new_label ("day-tile-deed");
  tile->digits = new_label ("day-row-digits");
  gtk_label_set_text (tile->name, name);
  gtk_widget_set_hexpand (GTK_WIDGET (tile->name), TRUE);
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (tile->name));
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (tile->digits));
  gtk_box_append (GTK_BOX (rows), head);
  gtk_box_append (GTK_BOX (rows), GTK_WIDGET (tile->deed));
  tile->button = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (tile->button), rows);
  gtk_widget_set_focus_on_click (tile->button, FALSE);
  gtk_widget_add_css_class (tile->button, "day-tile");
  g_signal_connect_swapped (tile->button, "clicked", G_CALLBACK (take_cb), tile);
  gtk_flow_box_append (self->box, tile->button);
  return tile;
}

/* As many tiles as there are pans. */
static void
fit_tiles (SwDayPans *self, guint pans)
{
  while (self->tiles->len > pans)
    {
      const Tile *last = self->tiles->pdata[self->tiles->len - 1];

      gtk_flow_box_remove (self->box, gtk_widget_get_parent (last->button));
      g_ptr_array_set_size (self->tiles, (int) self->tiles->len - 1);
    }
  gtk_flow_box_set_max_children_per_line (self->box, CLAMP (pans, 2, MOST_IN_LINE));
  while (self->tiles->len < pans)
    g_ptr_array_add (self->tiles, new_tile (self, self->tiles->len + 1));
}

static void
set_text (GtkLabel *label, const char *text)
{
  if (!g_str_equal (gtk_label_get_text (label), text))
    gtk_label_set_text (label, text);
}

static void
show_timer (SwDayPans *self, const SwDayClock *clock, Tile *tile)
{
  const SwDayTimer *timer = sw_day_clock_pan_timer (clock, tile->pan);
  g_autofree char *digits = timer != NULL ? sw_day_digits (sw_day_timer_left (timer, sw_day_session_now (self->session))) : g_strdup ("");

  set_text (tile->digits, digits);
  if (timer != NULL && timer->rung)
    gtk_widget_add_css_class (GTK_WIDGET (tile->digits), "time-up");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (tile->digits), "time-up");
}

static void
show_tile (SwDayPans *self, const SwDayClock *clock, Tile *tile)
{
  const SwDayDeed *deed = sw_day_clock_pan_deed (clock, tile->pan);
  /* Translators: of a pan with which nothing is left to do */
  const char *title = deed != NULL ? deed->title : _ ("done");
  /* Translators: for those who cannot see: a pan's number, and what is done with it */
  g_autofree char *words = g_strdup_printf (_ ("Pan %1$u: %2$s"), tile->pan, title);

  set_text (tile->deed, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (tile->button), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  if (tile->pan == clock->hand)
    gtk_widget_add_css_class (tile->button, "in-hand");
  else
    gtk_widget_remove_css_class (tile->button, "in-hand");
  show_timer (self, clock, tile);
}

static void
sw_day_pans_dispose (GObject *object)
{
  SwDayPans *self = SW_DAY_PANS (object);

  g_clear_object (&self->session);
  if (self->tiles != NULL)
    fit_tiles (self, 0);
  g_clear_pointer (&self->tiles, g_ptr_array_unref);

  G_OBJECT_CLASS (sw_day_pans_parent_class)->dispose (object);
}

static void
sw_day_pans_class_init (SwDayPansClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sw_day_pans_dispose;
}

static void
sw_day_pans_init (SwDayPans *self)
{
  GtkWidget *box = gtk_flow_box_new ();

  self->tiles = g_ptr_array_new_with_free_func (g_free);
  self->box = GTK_FLOW_BOX (box);
  gtk_flow_box_set_selection_mode (self->box, GTK_SELECTION_NONE);
  gtk_flow_box_set_homogeneous (self->box, TRUE);
  gtk_flow_box_set_min_children_per_line (self->box, 2);
  gtk_flow_box_set_column_spacing (self->box, 6);
  gtk_flow_box_set_row_spacing (self->box, 6);
  gtk_accessible_update_property (GTK_ACCESSIBLE (box), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Pans"), -1);
  adw_bin_set_child (ADW_BIN (self), box);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

void
sw_day_pans_set_session (SwDayPans *self, SwDaySession *session)
{
  g_return_if_fail (SW_IS_DAY_PANS (self) && self->session == NULL);
  self->session = g_object_ref (session);
}

void
sw_day_pans_show (SwDayPans *self)
{
  const SwDayClock *clock;

  g_return_if_fail (SW_IS_DAY_PANS (self));

  clock = clock_of (self);
  gtk_widget_set_visible (GTK_WIDGET (self), clock != NULL && clock->hand > 0);
  if (clock == NULL || clock->hand == 0)
    return;
  fit_tiles (self, clock->pans);
  for (guint i = 0; i < self->tiles->len; i++)
    show_tile (self, clock, self->tiles->pdata[i]);
}

void
sw_day_pans_tick (SwDayPans *self)
{
  const SwDayClock *clock;

  g_return_if_fail (SW_IS_DAY_PANS (self));

  clock = clock_of (self);
  for (guint i = 0; clock != NULL && clock->hand > 0 && i < self->tiles->len; i++)
    show_timer (self, clock, self->tiles->pdata[i]);
}
