/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-spectrum.h"

#include <math.h>

/*
 * CIE 15:2004 (the tables are those of CIE 018:2019): colour matching functions of the 1931
 * 2 degree observer times D65 at every tenth nanometre, by plain sum, scaled so that
 * the Y of a perfect white is 100. The light outside 380 to 730 nm is less than 0.01 % of Y.
 */
/* clang-format off */
const double sw_weight_x[SW_BANDS] = {
  0.00646936,  0.02194154,  0.11206023,  0.37667073,  1.18808498,  2.32870229,
  3.45602797,  3.72247180,  3.24191842,  2.12337349,  1.04912523,  0.32959197,
  0.05070478,  0.09486979,  0.62738745,  1.68650446,  2.86903642,  4.26758762,
  5.62561504,  6.94721290,  8.30552220,  8.61282432,  9.04683928,  8.50059840,
  7.09084366,  5.06301537,  3.54748462,  2.14687454,  1.25167688,  0.68047513,
  0.34646522,  0.14976471,  0.07697197,  0.04073782,  0.01690146,  0.00952269,
};

const double sw_weight_y[SW_BANDS] = {
  0.00018443,  0.00062055,  0.00310104,  0.01047510,  0.03536493,  0.09514951,
  0.22823201,  0.42074339,  0.66889651,  0.98886425,  1.52498316,  2.14188449,
  3.34237633,  5.13112925,  7.04038389,  8.78408969,  9.42514030,  9.79591121,
  9.41545327,  8.67831870,  7.88584996,  6.35282862,  5.37427564,  4.26471274,
  3.16181374,  2.08857265,  1.38604556,  0.81028422,  0.46302177,  0.24914421,
  0.12593348,  0.05416600,  0.02779598,  0.01471117,  0.00610343,  0.00343882,
};

const double sw_weight_z[SW_BANDS] = {
  0.03050248,  0.10368325,  0.53132688,  1.79548401,  5.70790043, 11.36544520,
  17.33630476, 19.62114665, 18.60870093, 13.99539640,  8.91767523,  4.78974053,
  2.81463270,  1.61380646,  0.77592953,  0.42962555,  0.20055592,  0.08614926,
  0.03690479,  0.01914335,  0.01495593,  0.00923132,  0.00681366,  0.00288271,
  0.00157676,  0.00039407,  0.00015841,  0.00000000,  0.00000000,  0.00000000,
  0.00000000,  0.00000000,  0.00000000,  0.00000000,  0.00000000,  0.00000000,
};
/* clang-format on */

const SwXyz sw_white = { 95.01187474, 100.00000000, 108.81606717 };

/* CIE 15: the cube root gives way to a straight line below (6/29)^3. */
#define LAB_DELTA (6.0 / 29.0)

SwXyz
sw_xyz_from_reflectance (const double *reflectance)
{
  SwXyz xyz = { 0 };

  g_return_val_if_fail (reflectance != NULL, xyz);

  for (int band = 0; band < SW_BANDS; band++)
    {
      xyz.x += sw_weight_x[band] * reflectance[band];
      xyz.y += sw_weight_y[band] * reflectance[band];
      xyz.z += sw_weight_z[band] * reflectance[band];
    }
  return xyz;
}

static double
lab_f (double ratio)
{
  if (ratio > LAB_DELTA * LAB_DELTA * LAB_DELTA)
    return cbrt (ratio);
  return ratio / (3 * LAB_DELTA * LAB_DELTA) + 4.0 / 29.0;
}

static double
lab_f_inverse (double f)
{
  if (f > LAB_DELTA)
    return f * f * f;
  return 3 * LAB_DELTA * LAB_DELTA * (f - 4.0 / 29.0);
}

SwLab
sw_lab_from_xyz (SwXyz xyz)
{
  double fx = lab_f (xyz.x / sw_white.x);
  double fy = lab_f (xyz.y / sw_white.y);
  double fz = lab_f (xyz.z / sw_white.z);

  return (SwLab){ 116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz) };
}

SwXyz
sw_xyz_from_lab (SwLab lab)
{
  double fy = (lab.l + 16) / 116;

  return (SwXyz){
    sw_white.x * lab_f_inverse (fy + lab.a / 500),
    sw_white.y * lab_f_inverse (fy),
    sw_white.z * lab_f_inverse (fy - lab.b / 200),
  };
}
