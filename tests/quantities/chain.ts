/** One build in SI, for the core chain worked out by plain arithmetic. */
export interface Build {
	readonly bore: number;
	readonly stroke: number;
	readonly rod: number;
	readonly ratio: number;
	/** Intake closing, deg after bottom; spark, deg before top. */
	readonly closes: number;
	readonly advance: number;
	readonly rpm: number;
	readonly filling: number;
	readonly altitude: number;
	readonly hotDay: number;
	/** Pa gauge; null unboosted. */
	readonly boost: number | null;
	readonly cooler: { readonly effectiveness: number; readonly loss: number } | null;
	readonly compressor: number;
	readonly lambda: number;
	readonly fuel: { readonly airRatio: number; readonly heat: number };
}

/** Pump fuels by design: kg air a kg, J/kg, kg/m3. */
export const petrol = { airRatio: 14.7, heat: 43.44e6, density: 745 };
export const e10 = { airRatio: 14.1, heat: 41.7e6, density: 749.4 };

/** Volume over the piston in swept volumes, by the triangle of crank and rod solved with the law of cosines. */
export function volume(angle: number, { stroke, rod, ratio }: Pick<Build, 'stroke' | 'rod' | 'ratio'>): number {
	const crank = stroke / 2;
	const b = -2 * crank * Math.cos((angle * Math.PI) / 180);
	const pin = (-b + Math.sqrt(b * b - 4 * (crank * crank - rod * rod))) / 2;
	return (crank + rod - pin) / stroke + 1 / (ratio - 1);
}

/** Volts that the formula asks for a gap (m) in gas of a density (over standard air). */
export function breakdown(density: number, gap: number): number {
	const x = density * gap * 100;
	return 1000 * (24.22 * x + 6.08 * Math.sqrt(x));
}

/** The core chain, from the relations as they are written in the list of quantities: none of the physics room is used. */
export function byHand(e: Build) {
	const height = (6356766 * e.altitude) / (6356766 + e.altitude);
	const ambient = 101325 * (1 - (0.0065 * height) / 288.15) ** 5.255876;
	const manifold = ambient + (e.boost ?? 0);
	const pressureRatio = (manifold + (e.cooler?.loss ?? 0)) / (ambient - 1000);
	const outlet = e.hotDay * (1 + (pressureRatio ** (0.4 / 1.4) - 1) / e.compressor);
	const boosted = e.cooler ? outlet - e.cooler.effectiveness * (outlet - e.hotDay) : outlet;
	const charge = e.boost === null ? e.hotDay + 10 : boosted;
	const density = manifold / (287.05 * charge);
	const displacement = (8 * Math.PI * e.bore ** 2 * e.stroke) / 4;
	const air = (e.filling * density * displacement * e.rpm) / 120;
	const power = (air / e.fuel.airRatio) * e.fuel.heat * (e.boost === null ? 0.3133 : 0.2838);
	const closed = volume(180 - e.closes, e);
	return {
		ambient,
		manifold,
		pressureRatio,
		outlet,
		charge,
		density,
		displacement,
		air,
		power,
		torque: (power * 60) / (2 * Math.PI * e.rpm),
		fuel: air / (e.lambda * e.fuel.airRatio),
		gas: (manifold / 101325) * (293 / charge) * (closed / volume(e.advance, e)),
		effective: closed / volume(0, e),
	};
}

/** Share of the cycle that eight injectors are driven: flow held open in kg/s, dead time in s. */
export function dutyOf(fuel: number, flow: number, rpm: number, deadTime: number): number {
	return ((fuel * (120 / rpm)) / 8 / flow + deadTime) / (120 / rpm);
}
