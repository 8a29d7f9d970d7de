/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-pour-place.h"

G_BEGIN_DECLS

/*
 * By what a pour can be taken: its body, its sides and corners, and a grip
 * that slants a band or turns another pour. Start and end are along the skein,
 * near and far across it, in the pour's own directions.
 */
typedef enum
{
  SW_HANDLE_NONE,
  SW_HANDLE_BODY,
  SW_HANDLE_START,
  SW_HANDLE_END,
  SW_HANDLE_NEAR,
  SW_HANDLE_FAR,
  SW_HANDLE_START_NEAR,
  SW_HANDLE_START_FAR,
  SW_HANDLE_END_NEAR,
  SW_HANDLE_END_FAR,
  SW_HANDLE_TURN,
  SW_N_HANDLES,
} SwHandle;

/**
 * SwGrips: how large things for the hand are, in cm of the pan.
 * @grip: half the size of a handle
 * @turn: how far the grip that turns stands off
 */
typedef struct
{
  double grip, turn;
} SwGrips;

/* Which sides a handle moves: -1 start or near, 1 end or far, 0 neither. */
int sw_handle_along (SwHandle handle);
int sw_handle_across (SwHandle handle);

/* Bands have no corners: they are stretched along or across. */
gboolean sw_handle_applies (SwHandle handle, SwStepKind kind);

/**
 * sw_handle_edge:
 * @x, @y: (out): the point of the outline that the handle stands for, cm; the
 *   centre for the body and the grip that turns
 */
void sw_handle_edge (const SwSketch *sketch, const SwPourPlace *place, SwHandle handle, double *x, double *y);

/**
 * sw_handle_place:
 * @x, @y: (out): where it is drawn and taken, cm: at its edge, but off a small
 *   pour, so that its body can still be taken
 */
void sw_handle_place (const SwSketch *sketch, const SwPourPlace *place, SwHandle handle, const SwGrips *grips, double *x, double *y);

/**
 * sw_handle_at:
 * Returns: the handle nearest to the point and within its grip, or SW_HANDLE_NONE; never the body
 */
SwHandle sw_handle_at (const SwSketch *sketch, const SwPourPlace *place, const SwGrips *grips, double x, double y);

/**
 * sw_handle_direction:
 * Returns: in which direction it pulls, degrees anticlockwise from along the
 *   skein, 0 <= direction < 180: a side and its opposite pull alike
 */
double sw_handle_direction (const SwPourPlace *place, SwHandle handle);

G_END_DECLS
