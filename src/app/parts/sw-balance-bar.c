/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-balance-bar.h"

#include "app/parts/sw-swatch.h"

#define HEIGHT 4
#define LEFT_ALPHA 0.35f
#define TRACK_ALPHA 0.12f

/* A piece of the bar, as a share of its length. */
typedef struct
{
  float share;
  GdkRGBA colour;
} Piece;

struct _SwBalanceBar
{
  GtkWidget parent_instance;

  GArray *pieces; /* of Piece */
};

G_DEFINE_FINAL_TYPE (SwBalanceBar, sw_balance_bar, GTK_TYPE_WIDGET)

static void
sw_balance_bar_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_VERTICAL ? HEIGHT : 24;
}

/* From the side where writing begins. */
static graphene_rect_t
piece_box (GtkWidget *widget, float from, float to)
{
  float width = (float) gtk_widget_get_width (widget);
  float height = (float) gtk_widget_get_height (widget);
  float start = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL ? 1 - to : from;

  return GRAPHENE_RECT_INIT (start * width, 0, (to - from) * width, height);
}

static void
sw_balance_bar_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SwBalanceBar *self = SW_BALANCE_BAR (widget);
  graphene_rect_t all = piece_box (widget, 0, 1);
  GskRoundedRect outline;
  GdkRGBA track;
  float from = 0;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &track);
  track.alpha *= TRACK_ALPHA;
  gsk_rounded_rect_init_from_rect (&outline, &all, HEIGHT / 2.0f);
  gtk_snapshot_push_rounded_clip (snapshot, &outline);
  gtk_snapshot_append_color (snapshot, &track, &all);
  for (guint i = 0; i < self->pieces->len; i++)
    {
      const Piece *piece = &g_array_index (self->pieces, Piece, i);
      graphene_rect_t box = piece_box (widget, from, from + piece->share);

      gtk_snapshot_append_color (snapshot, &piece->colour, &box);
      from += piece->share;
    }
  gtk_snapshot_pop (snapshot);
}

static void
sw_balance_bar_finalize (GObject *object)
{
  g_array_unref (SW_BALANCE_BAR (object)->pieces);

  G_OBJECT_CLASS (sw_balance_bar_parent_class)->finalize (object);
}

static void
sw_balance_bar_class_init (SwBalanceBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = sw_balance_bar_finalize;
  widget_class->measure = sw_balance_bar_measure;
  widget_class->snapshot = sw_balance_bar_snapshot;
  gtk_widget_class_set_css_name (widget_class, "balancebar");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
sw_balance_bar_init (SwBalanceBar *self)
{
  self->pieces = g_array_new (FALSE, FALSE, sizeof (Piece));
}

static double
poured_in_all (const SwForecast *forecast)
{
  double poured = 0;

  for (int i = 0; i < forecast->n_dyes; i++)
    poured += forecast->dyes[i].poured_g;
  return poured;
}

/* All that has struck first, then all that is left. */
static void
add_pieces (SwBalanceBar *self, const SwForecast *forecast, const GArray *accounts, guint dye, double full)
{
  for (int left = 0; left < 2; left++)
    for (guint i = 0; i < accounts->len; i++)
      {
        const SwAccount *account = &g_array_index (accounts, SwAccount, i);
        Piece piece;

        if (dye != 0 && account->dye != dye)
          continue;
        piece.share = (float) ((left ? account->left_g : account->struck_g) / (full > 0 ? full : account->poured_g));
        piece.colour = sw_sample_to_rgba (&sw_sketch_find_dye (forecast->sketch, account->dye)->sample);
        piece.colour.alpha = left ? LEFT_ALPHA : 1;
        g_array_append_val (self->pieces, piece);
      }
}

void
sw_balance_bar_set_step (SwBalanceBar *self, const SwForecast *forecast, guint step, guint dye)
{
  g_autoptr (GArray) accounts = NULL;

  g_return_if_fail (SW_IS_BALANCE_BAR (self));

  g_array_set_size (self->pieces, 0);
  accounts = sw_dyeing_accounts (forecast, step);
  if (accounts->len > 0)
    add_pieces (self, forecast, accounts, dye, dye == 0 ? poured_in_all (forecast) : 0);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
