import type { ColumnValues } from './column-values.ts';
import type { Scale } from './scale.ts';

/** Whether a pressure counts from vacuum or from the air outside; null where its values do not show. */
export type Reference = 'absolute' | 'gauge' | null;

/** Pa: the least and the most that air pressure can be, and by how much a gauge may be off zero. */
const [minAmbient, maxAmbient, zeroError] = [60_000, 108_000, 8_000];

/**
 * Decided by the readings with the engine off: near the pressure of the air it is absolute, near 0 gauge. Without them: a gauge
 * goes well below 0 in vacuum, and an absolute pressure never does and passes 60 kPa.
 *
 * @param pressures as read, Pa by `scale`
 * @param speeds rpm of the same rows
 */
export function referenceOf(scale: Scale, pressures: ColumnValues, speeds: ColumnValues | null): Reference {
	const all = pressures.all;
	const engineOff = speeds
		? [...all].filter((value, at) => speeds.all[at]! < 50 && !Number.isNaN(value)).map(value => value * scale.factor)
		: [];
	if (engineOff.length >= 3) {
		const middle = engineOff.sort((a, b) => a - b)[engineOff.length >> 1]!;
		if (middle > minAmbient && middle < maxAmbient) return 'absolute';
		if (Math.abs(middle) < zeroError) return 'gauge';
	}
	const [least, most] = [pressures.least * scale.factor, pressures.most * scale.factor];
	if (least < -zeroError) return 'gauge';
	// Closed throttle is 20 to 60 kPa and open throttle near the air outside, from vacuum.
	if (least > 8_000 && most > minAmbient) return 'absolute';
	return null;
}
