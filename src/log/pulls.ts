import type { Declared } from './declared.ts';
import type { Stretch } from './engine-states.ts';
import type { Episode } from './episodes.ts';
import type { Ticks } from './ticks.ts';

/** Foot down while engine speed rises in one gear. They are numbered later. */
export function pulls(ticks: Ticks, pressed: readonly Stretch[], { pull }: Declared): Episode[] {
	const { speed, time, gear } = ticks;
	return pressed
		.flatMap(stretch => [...inOneGear(ticks, stretch, pull)])
		.filter(({ first, last }) => time[last]! - time[first]! >= pull.time)
		.filter(({ first, last }) => highestIn(speed, first, last) - speed[first]! >= pull.rise)
		.map(({ first, last }) => ({
			kind: 'pull' as const,
			from: time[first]!,
			to: time[last]!,
			number: null,
			gear: Number.isNaN(gear[first]!) ? null : gear[first]!,
			warm: false,
		}));
}

/** Cuts a stretch where the gear changes: as logged, by a fall of engine speed, or by a jump of rpm per road speed. */
function* inOneGear(ticks: Ticks, { first, last }: Stretch, pull: Declared['pull']): Generator<Stretch> {
	const { speed, gear, time } = ticks;
	let start = first;
	let top = first;
	let shifting = false;
	for (let tick = first + 1; tick <= last; tick++) {
		const shifted =
			(!Number.isNaN(gear[tick]!) && !Number.isNaN(gear[start]!) && gear[tick] !== gear[start]) ||
			jumped(ticks, start, tick, pull.gear_change);
		if (shifted || speed[tick]! < speed[top]! - pull.drop) {
			yield { first: start, last: shifted && time[tick]! - time[top]! < 0.3 ? tick - 1 : top };
			start = tick;
			top = tick;
			shifting = true;
		} else if (shifting && speed[tick]! < speed[start]!) {
			// The next gear begins where engine speed has come down to it.
			start = tick;
			top = tick;
		} else if (speed[tick]! >= speed[top]!) top = tick;
	}
	yield { first: start, last };
}

/** m/s; a road speed in whole km/h is too coarse to make a ratio of below it. */
const slowest = 6;

/** Whether rpm per road speed jumped up within the last second, as a kickdown makes it. */
function jumped({ speed, road, time }: Ticks, start: number, tick: number, share: number): boolean {
	if (!(road[tick]! > slowest)) return false;
	const ratio = speed[tick]! / road[tick]!;
	for (let before = tick - 1; before >= start && time[tick]! - time[before]! <= 0.6; before--)
		if (road[before]! > slowest && ratio / (speed[before]! / road[before]!) > 1 + share) return true;
	return false;
}

function highestIn(values: Float64Array, first: number, last: number): number {
	let highest = values[first]!;
	for (let index = first + 1; index <= last; index++) highest = Math.max(highest, values[index]!);
	return highest;
}
