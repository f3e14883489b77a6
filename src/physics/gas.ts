/**
 * An ideal gas of one composition: gas constant in J/kgK, specific heat at constant pressure in J/kgK as
 * c0 + c1 T + c2 T^2 + c3 T^3 + c4 T^4 + back / T^2, T in K from `from` to `to`; outside, the heat at that end is held.
 */
export interface Gas {
	readonly constant: number;
	readonly c0: number;
	readonly c1: number;
	readonly c2: number;
	readonly c3: number;
	readonly c4: number;
	readonly back: number;
	readonly from: number;
	readonly to: number;
	/** Added to the enthalpy so that it is 0 at 298.15 K, J/kg. */
	readonly zero: number;
}

/** Places of a gas's figures at one temperature: the temperature in K, specific heat in J/kgK, enthalpy in J/kg. */
export const gasFigures = 3;

/** Writes the specific heat at constant pressure for the temperature in `at`. In a list, because each number that a function is handed or hands back costs an object. */
export function heatInto(gas: Gas, at: Float64Array): void {
	const kelvin = at[0]!;
	const t = Math.min(gas.to, Math.max(gas.from, kelvin));
	at[1] = gas.c0 + t * (gas.c1 + t * (gas.c2 + t * (gas.c3 + t * gas.c4))) + gas.back / (t * t);
}

/** Writes the enthalpy over that at 298.15 K, composition held, for the temperature and the heat in `at`. */
export function enthalpyInto(gas: Gas, at: Float64Array): void {
	const kelvin = at[0]!;
	const t = Math.min(gas.to, Math.max(gas.from, kelvin));
	const high = t * (gas.c2 / 3 + t * (gas.c3 / 4 + (t * gas.c4) / 5));
	at[2] = gas.zero + t * (gas.c0 + t * (gas.c1 / 2 + high)) - gas.back / t + at[1]! * (kelvin - t);
}

/** Specific heat at constant pressure, J/kgK, at a temperature in K. */
export function heatAt(gas: Gas, temperature: number): number {
	const at = Float64Array.of(temperature, 0, 0);
	heatInto(gas, at);
	return at[1]!;
}

/** Ratio of specific heats at a temperature in K. */
export function gammaAt(gas: Gas, temperature: number): number {
	const heat = heatAt(gas, temperature);
	return heat / (heat - gas.constant);
}

/** Enthalpy over that at 298.15 K, composition held, J/kg, at a temperature in K. */
export function enthalpyAt(gas: Gas, temperature: number): number {
	const at = Float64Array.of(temperature, 0, 0);
	heatInto(gas, at);
	enthalpyInto(gas, at);
	return at[2]!;
}
