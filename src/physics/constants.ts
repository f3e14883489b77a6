/** Gas constant of dry air, J/kgK. Source: US Standard Atmosphere 1976 (287.053), held to the five digits used throughout. */
export const airGasConstant = 287.05;

/** Standard atmosphere, Pa: exact by definition. */
export const standardPressure = 101325;

/** One pound-force per square inch, Pa: 4.4482216152605 N over (25.4 mm)^2, both exact by definition. */
export const psi = 4.4482216152605 / 0.0254 ** 2;
