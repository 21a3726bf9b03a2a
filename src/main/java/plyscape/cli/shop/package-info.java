/**
 * Commands for the shop, without a whole job: {@code check}, {@code coupon}, {@code calibrate},
 * {@code probe}, {@code suggest}, {@code glueup}.
 *
 * <p>In: the command line and layup files. Out: tables and JSON on stdout, files through {@code
 * output}. Lengths mm, depths positive down.
 */
package plyscape.cli.shop;
