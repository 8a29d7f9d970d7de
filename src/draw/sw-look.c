/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-look.h"

const SwLook sw_look_plain = { .marks = TRUE };
