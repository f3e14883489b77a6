/**
 * A volume flow, m3/s, becomes a mass flow, kg/s, only at a density that somebody states, kg/m3.
 * `massFromVolume(745)(flow)`; a density that is not above 0 and finite throws a RangeError.
 */
export function massFromVolume(density: number): (volumeFlow: number) => number {
	stated(density);
	return flow => flow * density;
}

/** The inverse: a mass flow, kg/s, to a volume flow, m3/s, at a density, kg/m3. */
export function volumeFromMass(density: number): (massFlow: number) => number {
	stated(density);
	return flow => flow / density;
}

function stated(density: number): void {
	if (!(density > 0 && Number.isFinite(density)))
		throw new RangeError(`density is ${density} kg/m3; accepted: above 0`);
}
