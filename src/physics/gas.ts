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

/** Specific heat at constant pressure, J/kgK, at a temperature in K. */
export function heatAt(gas: Gas, temperature: number): number {
	const t = Math.min(gas.to, Math.max(gas.from, temperature));
	return gas.c0 + t * (gas.c1 + t * (gas.c2 + t * (gas.c3 + t * gas.c4))) + gas.back / (t * t);
}

/** Ratio of specific heats at a temperature in K. */
export function gammaAt(gas: Gas, temperature: number): number {
	const heat = heatAt(gas, temperature);
	return heat / (heat - gas.constant);
}

/** Enthalpy over that at 298.15 K, composition held, J/kg, at a temperature in K. */
export function enthalpyAt(gas: Gas, temperature: number): number {
	const t = Math.min(gas.to, Math.max(gas.from, temperature));
	const inside =
		t * (gas.c0 + t * (gas.c1 / 2 + t * (gas.c2 / 3 + t * (gas.c3 / 4 + (t * gas.c4) / 5)))) - gas.back / t;
	return gas.zero + inside + (t === temperature ? 0 : heatAt(gas, t) * (temperature - t));
}
