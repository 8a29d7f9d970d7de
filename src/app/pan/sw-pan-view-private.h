/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-pan-align.h"
#include "app/desk/sw-pan-drag.h"
#include "app/desk/sw-pan-overlay.h"
#include "app/pan/sw-pan-picture.h"
#include "app/pan/sw-pan-view.h"
#include "app/desk/sw-pan-words.h"

G_BEGIN_DECLS

/* What the parts of the canvas share: state here, pointer, keys, zoom and actions in a file each. */

/* What a press has become. */
typedef enum
{
  SW_HAND_FREE,
  SW_HAND_PRESSED, /* not yet moved: a click, or the beginning of any of the following */
  SW_HAND_MOVES,
  SW_HAND_STRETCHES, /* or turns: one pour by a handle */
  SW_HAND_DRAWS,
  SW_HAND_MARKS, /* a marquee */
  SW_HAND_SCROLLS,
} SwHandState;

typedef struct
{
  guint step;
  SwPourPlace from;
} SwHeldPour;

/* One press, from its beginning to its end. */
typedef struct
{
  SwHandState state;
  double press_x, press_y; /* px */
  double press_x_cm, press_y_cm;
  double by_x, by_y; /* px, since the press */
  GdkModifierType at_press, now;
  SwHandle handle;
  guint pour;     /* under the press; while drawing, the new one; 0 none */
  guint under;    /* pour of the other face under the press; 0 none */
  GArray *held;   /* of SwHeldPour */
  GArray *before; /* of guint: what was selected at the press */
  SwSnap *snap;   /* NULL: nothing catches */
  SwSnapHit hits[2];
  SwDeed deed;
  gboolean in_group; /* of the document */
  SwPanZoom zoom;    /* at the press, while scrolling */
} SwHand;

struct _SwPanView
{
  GtkWidget parent_instance;

  SwPanPicture *picture;
  SwLive *live;
  SwSelection *selection;
  gulong changed_id, replaced_id;
  gboolean inches;

  SwPanZoom zoom;
  SwPanGeometry geometry;

  SwHand hand;
  double hover_x, hover_y; /* px */
  gboolean hover_in;
  guint hovered; /* pour under the pointer, of either face */
  SwHandle hovered_handle;
  gboolean space_held;
  const char *cursor; /* as it was set; a literal */

  GSimpleActionGroup *actions;
  GtkGesture *drag;
  GtkWidget *menu;
  GtkWidget *offer;
  guint offered; /* pour of the other face */
  guint last_clicked;
  gint64 clicked_at;
};

/* Of the document; NULL before there is one. */
const SwSketch *sw_pan_view_sketch (SwPanView *self);
SwDocument *sw_pan_view_document (SwPanView *self);
SwSystem sw_pan_view_system (SwPanView *self);

/* Selected pours (not rests and the like) of either face, in the order of pouring. (transfer full) */
GArray *sw_pan_view_selected_pours (SwPanView *self) G_GNUC_WARN_UNUSED_RESULT;

/* The one pour that shows its handles: selected alone, on the face that is up. 0 if none. */
guint sw_pan_view_lone_pour (SwPanView *self);
gboolean sw_pan_view_is_up (SwPanView *self, guint step);

/* Selects it alone, and turns the skein over if it is on the other face. */
void sw_pan_view_go_to (SwPanView *self, guint step);

/* Does it, or says why not; takes over @edit, which may be NULL. */
gboolean sw_pan_view_edit (SwPanView *self, SwEdit *edit, const char *name);
void sw_pan_view_say (SwPanView *self, const char *sentence);

/* Where things are has changed. */
void sw_pan_view_relayout (SwPanView *self);

/* The text that stands for the picture. */
void sw_pan_view_describe (SwPanView *self);

/* Zoom and scroll: sw-pan-view-zoom.c */
void sw_pan_view_add_zoom (SwPanView *self);
void sw_pan_view_zoom_at (SwPanView *self, double factor, double x, double y);
void sw_pan_view_zoom_fit (SwPanView *self);
void sw_pan_view_scroll (SwPanView *self, double by_x, double by_y);
gboolean sw_pan_view_can_zoom (SwPanView *self, gboolean in);

/* The hand: sw-pan-view-hand.c, and what it does: sw-pan-view-deeds.c */
void sw_pan_view_add_hand (SwPanView *self);
void sw_pan_view_drop_hand (SwPanView *self);
gboolean sw_pan_view_cancel_hand (SwPanView *self); /* FALSE if there was nothing in hand */
void sw_pan_view_update_hover (SwPanView *self);
void sw_pan_view_begin_deed (SwPanView *self);
void sw_pan_view_continue_deed (SwPanView *self);
void sw_pan_view_end_deed (SwPanView *self);
void sw_pan_view_click (SwPanView *self);

/* What is done at once: sw-pan-view-pours.c */

/* Whether there is something to pour from; if not, says so. */
gboolean sw_pan_view_has_dye (SwPanView *self);

/* Inserts a pour of the dye in hand; returns its id, 0 if it could not be. */
guint sw_pan_view_pour (SwPanView *self, const SwPourPlace *place);

/* The same, of a usual size about a place in the picture, px. */
guint sw_pan_view_pour_at (SwPanView *self, SwStepKind kind, double x, double y);

/* Inserts copies of these steps beside them, selects the copies; FALSE if it could not be. */
gboolean sw_pan_view_duplicate (SwPanView *self, const guint *steps, gsize n, double dx, double dy);
void sw_pan_view_delete (SwPanView *self);
void sw_pan_view_nudge (SwPanView *self, double dx, double dy);
void sw_pan_view_align (SwPanView *self, SwAlign align);

/* Keys: sw-pan-view-keys.c */
void sw_pan_view_add_keys (SwPanView *self);
void sw_pan_view_class_add_keys (GtkWidgetClass *widget_class);
gboolean sw_pan_view_focus (GtkWidget *widget, GtkDirectionType direction);

/* Actions, and the menu of them: sw-pan-view-actions.c */
void sw_pan_view_add_actions (SwPanView *self);
void sw_pan_view_connect_actions (SwPanView *self);
void sw_pan_view_update_actions (SwPanView *self);
void sw_pan_view_show_menu (SwPanView *self, double x, double y);
void sw_pan_view_offer_turn (SwPanView *self, guint step, double x, double y);
void sw_pan_view_drop_popovers (SwPanView *self);

G_END_DECLS
