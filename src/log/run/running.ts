import { type Chunk, during, fresh, joined, onceAChunk } from '../chunk.ts';
import { measured } from '../measured.ts';
import { oilFloor } from '../pull/oil.ts';
import { type Gathering, inRun } from '../quantity.ts';
import { chosen, mapped, type Readings, wherePlace, within } from '../series.ts';
import { median, sustained } from '../statistics.ts';
import { heldAtEach } from '../ticks.ts';
import { errors, medianOf } from './tools.ts';

/** rpm over which an alternator charges. Common practice. */
const charges = 1300;

const overIn = onceAChunk(() => new Map<string, Readings>());

/** New readings of a channel while engine speed is over a figure; warm where asked. */
export function whileOver(chunk: Chunk, channel: string, rpm: number, warm = false): Readings {
	const known = overIn(chunk);
	const key = `${channel} ${rpm} ${warm}`;
	let found = known.get(key);
	if (!found) known.set(key, (found = readOver(chunk, channel, rpm, warm)));
	return found;
}

function readOver(chunk: Chunk, channel: string, rpm: number, warm: boolean): Readings {
	const readings = fresh(chunk, channel);
	const speed = heldAtEach(chunk.of('engine_speed'), readings.time, 2.5);
	const coolant = warm ? heldAtEach(chunk.of('coolant_temp'), readings.time, 60) : null;
	const keep = new Uint8Array(speed.length);
	for (let index = 0; index < keep.length; index++) {
		const isWarm = coolant === null || chunk.warmth.isWarmWith(coolant[index]!, readings.time[index]!);
		keep[index] = speed[index]! > rpm && isWarm ? 1 : 0;
	}
	return chosen(readings, keep);
}

export const charging = inRun({
	id: 'log.charging_volts',
	kind: 'voltage',
	sensor: 'supply_volts',
	formula: 'median battery volts over 1300 rpm, warm or not',
	gather: () => medianOf(chunk => [whileOver(chunk, 'battery_volts', charges)], errors.volts, ['battery_volts']),
});

/**
 * The most that was held for so many seconds of the time that counts, by medians of a twelfth of that: gaps between
 * stretches are taken out, so that a minute in town traffic is a minute. Goes on from chunk to chunk.
 */
export function heldFor(
	seconds: number,
	readings: number,
	pick: (chunk: Chunk) => Readings,
	error: (value: number, chunk: Chunk) => number,
	channels: readonly string[],
	sign: 1 | -1 = 1,
): Gathering {
	let [best, tail, last]: [number | undefined, Readings, Chunk | undefined] = [undefined, joined([]), undefined];
	return {
		take(chunk) {
			last = chunk;
			const picked = pick(chunk);
			const found = sign === 1 ? picked : mapped(picked, value => -value);
			const start = tail.time.at(-1) ?? 0;
			const closed = closeGaps(found, start, tail.time.length > 0);
			const all = joined([tail, closed]);
			const least = best ?? Number.NEGATIVE_INFINITY;
			const held = sustained(mediansOf(all, seconds / 12, least), seconds * (11 / 12), readings);
			if (held !== undefined && held > least) best = held;
			const end = all.time.at(-1) ?? 0;
			tail = within(all, end - seconds - 5, end);
		},
		result: () => {
			const value = best === undefined ? undefined : sign * best;
			return measured(value, value === undefined ? 0 : error(value, last!), channels);
		},
	};
}

/**
 * The median of every so many seconds, at the last reading of each. Those that are not over `least` are minus infinity: they
 * cannot be more than what was found, and half the readings of most show that without sorting them.
 */
function mediansOf({ time, value }: Readings, seconds: number, least: number): Readings {
	const times = new Float64Array(time.length);
	const values = new Float64Array(time.length);
	let count = 0;
	for (let first = 0; first < time.length; ) {
		let end = first;
		let over = 0;
		do {
			if (value[end]! > least) over++;
			end++;
		} while (end < time.length && time[end]! - time[first]! < seconds);
		times[count] = time[end - 1]!;
		values[count++] = 2 * over < end - first ? Number.NEGATIVE_INFINITY : median(value.subarray(first, end));
		first = end;
	}
	return { time: times.subarray(0, count), value: values.subarray(0, count) };
}

/** The same readings on a clock on which no two are more than two seconds apart. */
function closeGaps({ time, value }: Readings, start: number, follows: boolean): Readings {
	const closed = new Float64Array(time.length);
	let now = start + (follows ? 1 : 0);
	for (let index = 0; index < closed.length; index++) {
		if (index > 0) now += Math.min(2, time[index]! - time[index - 1]!);
		closed[index] = now;
	}
	return { time: closed, value };
}

export const chargingLow = inRun({
	id: 'log.charging_volts_low',
	kind: 'voltage',
	sensor: 'supply_volts',
	formula: 'the volts that the battery stayed at or under for 60 s over 1300 rpm, by medians of 5 s; the lowest such',
	gather: () =>
		heldFor(60, 10, chunk => whileOver(chunk, 'battery_volts', charges), errors.volts, ['battery_volts'], -1),
});

export const chargingHigh = inRun({
	id: 'log.charging_volts_high',
	kind: 'voltage',
	sensor: 'supply_volts',
	formula: 'the most battery volts that were held for 10 s of running',
	gather: () => heldFor(10, 5, chunk => whileOver(chunk, 'battery_volts', 400), errors.volts, ['battery_volts']),
});

export const outside = inRun({
	id: 'log.ambient_temp',
	kind: 'temperature',
	formula: 'median temperature of the air outside',
	gather: () => medianOf(chunk => [fresh(chunk, 'ambient_temp')], errors.temperature, ['ambient_temp']),
});

export const oilAt3000 = inRun({
	id: 'log.oil_pressure_at_3000',
	kind: 'pressure',
	sensor: 'oil_pressure',
	formula: 'median oil pressure from 2800 to 3200 rpm, warm',
	gather: () =>
		medianOf(
			chunk => {
				const readings = whileOver(chunk, 'oil_pressure', 2800, true);
				const speed = heldAtEach(chunk.of('engine_speed'), readings.time, 2.5);
				return [wherePlace(readings, index => speed[index]! <= 3200)];
			},
			errors.pressure,
			['oil_pressure', 'coolant_temp'],
		),
});

export const oilOverFloor = inRun({
	id: 'log.oil_over_floor_warm',
	kind: 'pressure',
	sensor: 'oil_pressure',
	range: [null, null],
	source: ['practice'],
	formula:
		'the least, held for 0.3 s and three readings over 1300 rpm, warm, of oil pressure less the lower of 10 psi per 1000 rpm and 45 psi',
	gather: () =>
		heldFor(
			0.3,
			3,
			chunk => {
				const readings = whileOver(chunk, 'oil_pressure', charges, true);
				const speed = heldAtEach(chunk.of('engine_speed'), readings.time, 2.5);
				return { time: readings.time, value: readings.value.map((one, index) => one - oilFloor(speed[index]!)) };
			},
			errors.pressure,
			['oil_pressure', 'coolant_temp'],
			-1,
		),
});

export const cruiseCoolant = inRun({
	id: 'log.cruise_coolant',
	kind: 'temperature',
	sensor: 'coolant_temp',
	formula: 'median coolant temperature at cruise, warm',
	gather: () =>
		medianOf(chunk => during(chunk, 'cruise', 'coolant_temp', true), errors.temperature, ['coolant_temp'], {
			readings: 1,
			seconds: 0,
		}),
});
