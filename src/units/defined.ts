/**
 * The sizes that are fixed by definition; every factor of the tables is made from them.
 * Source: NIST Special Publication 811 (2008), appendix B: exact where it prints bold figures. US measures.
 */

/** m */
export const inch = 0.0254;
/** m */
export const foot = 12 * inch;
/** m */
export const mile = 5280 * foot;
/** m/s */
export const milePerHour = 0.44704;
/** kg */
export const pound = 0.45359237;
/** m3 */
export const usGallon = 231 * inch ** 3;
/** m/s2 */
export const standardGravity = 9.80665;
/** N */
export const poundForce = pound * standardGravity;
/** W; 550 foot-pounds a second. */
export const horsepower = 550 * foot * poundForce;
/** Pa; the atmosphere that a gauge pressure is counted from when nothing better is known. */
export const standardAtmosphere = 101_325;
/** Pa under one meter; conventional mercury of 13595.1 kg/m3. */
export const mercuryMeter = 13_595.1 * standardGravity;
