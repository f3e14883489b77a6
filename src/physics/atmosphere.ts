import { airGasConstant, standardPressure } from './constants.ts';
import { OutOfRange, positive, within } from './range.ts';

/** Molar mass of water over that of dry air. Source: ASHRAE Fundamentals. */
const waterToAir = 0.621945;

/**
 * Air pressure, Pa, at an altitude in m above sea level, on a standard day. Range: -500 to 11000 m.
 *
 * Altitude is turned into geopotential height first (earth's radius 6356766 m). Errors: OutOfRange.
 * Source: US Standard Atmosphere 1976, lowest layer.
 */
export function ambientPressure(altitude: number): number {
	within('altitude', altitude, -500, 11000);
	const height = (6356766 * altitude) / (6356766 + altitude);
	return standardPressure * (1 - (0.0065 * height) / 288.15) ** 5.255876;
}

/** Density of dry air, kg/m3, at a pressure in Pa and a temperature in K, both above 0. Errors: OutOfRange. Ideal gas. */
export function dryAirDensity(pressure: number, temperature: number): number {
	positive('pressure', pressure);
	positive('temperature', temperature);
	return pressure / (airGasConstant * temperature);
}

/**
 * Pressure of water vapor, Pa, in saturated air at a temperature in K: over ice to 273.16 K, over water above it.
 *
 * Range: 173.15 to 473.15 K. Errors: OutOfRange. Source: Hyland & Wexler 1983, as in ASHRAE Fundamentals, Psychrometrics.
 */
export function saturationPressure(temperature: number): number {
	within('temperature', temperature, 173.15, 473.15);
	const t = temperature;
	if (t <= 273.16) {
		const powers = 6.3925247 + t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 - t * 9.484024e-13)));
		return Math.exp(-5.6745359e3 / t + powers + 4.1635019 * Math.log(t));
	}
	const powers = 1.3914993 + t * (-4.8640239e-2 + t * (4.1764768e-5 - t * 1.4452093e-8));
	return Math.exp(-5.8002206e3 / t + powers + 6.5459673 * Math.log(t));
}

/**
 * Density of moist air, kg/m3: temperature in K (173.15 to 473.15), relative humidity 0 to 1, pressure in Pa.
 *
 * Errors: OutOfRange, also where the vapor alone would fill the pressure.
 * Source: ASHRAE Fundamentals, Psychrometrics: ideal gases side by side, within 0.1 % of real moist air.
 */
export function moistAirDensity(temperature: number, humidity: number, pressure: number): number {
	within('humidity', humidity, 0, 1);
	const vapor = humidity * saturationPressure(temperature);
	if (!(pressure > vapor && pressure < Number.POSITIVE_INFINITY))
		throw new OutOfRange('pressure', pressure, `above the vapor's ${vapor}`);
	return (pressure - vapor + waterToAir * vapor) / (airGasConstant * temperature);
}
