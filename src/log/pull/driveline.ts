import { dragArea, drivelineEfficiency } from '../../quantities/model/cruising.ts';
import { cruiseRoadSpeed } from '../../quantities/model/driveline.ts';
import { percent } from '../../quantities/quantity.ts';
import { numberOf } from '../car.ts';
import { lacking, measured, notApplicable } from '../measured.ts';
import type { PullView } from '../pull.ts';
import { pullQuantity } from '../quantity.ts';
import { type Readings, within } from '../series.ts';
import { deviationFromMad, highest, median, percentile } from '../statistics.ts';
import { heldAtEach } from '../ticks.ts';

export const slip = pullQuantity({
	id: 'log.slip',
	kind: 'ratio',
	shown: percent,
	range: [-1, null],
	formula: 'median rpm per road speed of the last third of the pull over that of the first third, less 1',
	measure: pull => {
		const [from, to] = pull.whole;
		const road = pull.in('road_speed');
		if (road.time.length < 6) return lacking('road_speed');
		const speed = heldAtEach(pull.of('engine_speed'), road.time, 1);
		const third = (to - from) / 3;
		const ratio = (begin: number, finish: number) => {
			const found: number[] = [];
			for (const [index, time] of road.time.entries())
				if (time >= begin && time <= finish && road.value[index]! > 2) found.push(speed[index]! / road.value[index]!);
			return found.length < 2 ? undefined : median(found);
		};
		const [first, last] = [ratio(from, from + third), ratio(to - third, to)];
		if (first === undefined || last === undefined) return lacking('road_speed');
		return measured(last / first - 1, 0.01);
	},
});

/** Readings of engine speed a second below which a stumble of a tenth of a second is not seen. */
const minRate = 20;

export const stumbles = pullQuantity({
	id: 'log.stumbles',
	kind: 'count',
	formula:
		'dips of engine acceleration to under a third of the median within half a second either way, 50 to 300 ms long',
	measure: pull => {
		const [from, to] = [pull.whole[0] + pull.declared.full.after, pull.full?.[1] ?? pull.whole[1]];
		const speed = pull.in('engine_speed', [from, to - 0.15]);
		if (speed.time.length / (to - from) < 0.95 * minRate) return lacking('engine_speed');
		return measured(countDips(acceleration(speed)));
	},
});

/** rpm/s between a reading and the next but one, at the one between. */
function acceleration({ time, value }: Readings): Readings {
	const length = Math.max(0, time.length - 2);
	const rate = new Float64Array(length);
	for (let index = 0; index < length; index++)
		rate[index] = (value[index + 2]! - value[index]!) / (time[index + 2]! - time[index]!);
	return { time: time.subarray(1, 1 + length), value: rate };
}

function countDips(rate: Readings): number {
	const local = Float64Array.from(rate.time, at => median(within(rate, at - 0.5, at + 0.5).value));
	// The noise of the readings themselves: a dip is well beyond it, or a coarse tachometer would show stumbles all the time.
	const off = Array.from(rate.value, (one, index) => Math.abs(one - local[index]!));
	const noise = deviationFromMad * percentile(off, 0.5);
	let [count, since] = [0, Number.NaN];
	for (let index = 0; index <= rate.time.length; index++) {
		const low =
			index < rate.time.length &&
			local[index]! > 0 &&
			rate.value[index]! < local[index]! / 3 &&
			local[index]! - rate.value[index]! > 5 * noise;
		if (low && Number.isNaN(since)) since = rate.time[index]!;
		if (low || Number.isNaN(since)) continue;
		const lasted = rate.time[index - 1]! - since + (rate.time[1]! - rate.time[0]!);
		if (lasted >= 0.05 - 1e-9 && lasted <= 0.3 + 1e-9) count++;
		since = Number.NaN;
	}
	return count;
}

/** Usual figures of a car's road load, from memory, common practice: air kg/m3, rolling share, gravity m/s2. */
const roadLoad = { air: 1.2, rolling: 0.013, gravity: 9.81 } as const;
/** Share that turning parts add to the mass: little in top gear, more in the lower ones. Common practice. */
const rotating = { top: 1.04, lower: 1.15 } as const;

export const power = pullQuantity({
	id: 'log.power',
	kind: 'power',
	nature: 'estimate',
	source: ['practice'],
	formula:
		'(mass as driven x 1.04 in top gear, 1.15 in a lower one x acceleration + drag of 0.75 m2 + rolling 0.013) x road speed / 0.85 through the driveline, automatic 0.80; the highest running median; 10 % sd',
	measure: pull => {
		const value = roadPower(pull);
		return value === undefined ? lacking('driveline.vehicle_mass', 'road_speed') : measured(value, 0.1 * value);
	},
});

/** W at the flywheel by the road load, the highest running median of the pull; undefined without mass or road speed. */
function roadPower(pull: PullView): number | undefined {
	const mass = numberOf(pull.car, 'driveline.vehicle_mass');
	const speed = pull.in('road_speed');
	if (mass === undefined || speed.time.length < 6) return undefined;
	const factor = isTopGear(pull) ? rotating.top : rotating.lower;
	const efficiency = pull.car.value('driveline.gearbox') === 'automatic' ? 0.8 : drivelineEfficiency;
	const watts = Float64Array.from(speed.time, (at, index) => {
		const v = speed.value[index]!;
		const force =
			mass * factor * slopeAt(speed, at) +
			(roadLoad.air * dragArea * v * v) / 2 +
			roadLoad.rolling * mass * roadLoad.gravity;
		return (force * v) / efficiency;
	});
	const known = Array.from(watts.keys()).filter(index => Number.isFinite(watts[index]!));
	return highest({
		time: Float64Array.from(known, i => speed.time[i]!),
		value: Float64Array.from(known, i => watts[i]!),
	})?.value;
}

/** Whether it is in top gear, by rpm per road speed against the sheet's, within a tenth; not known counts as a lower one. */
function isTopGear(pull: PullView): boolean {
	// Engine speed at 65 mph in top gear, as rpm a m/s.
	const cruise = numberOf(pull.car, 'driveline.cruise_speed');
	const turns = cruise === undefined ? undefined : cruise / cruiseRoadSpeed;
	const speed = median(pull.in('road_speed').value);
	return turns !== undefined && Math.abs(median(pull.in('engine_speed').value) / speed / turns - 1) < 0.1;
}

/** Slope of a straight line through half a second of readings, by least squares; NaN of fewer than four. */
function slopeAt(readings: Readings, at: number): number {
	const { time, value } = within(readings, at - 0.4, at + 0.4);
	if (time.length < 4) return Number.NaN;
	const [t, v] = [mean(time), mean(value)];
	let [over, under] = [0, 0];
	for (const [index, one] of time.entries()) {
		over += (one - t) * (value[index]! - v);
		under += (one - t) ** 2;
	}
	return over / under;
}

const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;

export const corrected = pullQuantity({
	id: 'log.power_corrected',
	kind: 'power',
	nature: 'estimate',
	source: ['sae-j1349'],
	formula:
		'power x (1.18 (99 kPa / ambient pressure) sqrt(T / 298 K) - 0.18), unboosted only, factor 0.93 to 1.07; T the air outside, dry air as ambient',
	measure: pull => {
		if (pull.boosted !== false) return notApplicable;
		const value = roadPower(pull);
		const outside = median(pull.of('ambient_temp').value);
		const factor = 1.18 * (99_000 / (pull.ambient ?? Number.NaN)) * Math.sqrt(outside / 298) - 0.18;
		if (value === undefined) return lacking('driveline.vehicle_mass', 'road_speed');
		if (!Number.isFinite(factor)) return lacking('ambient_temp', 'ambient_pressure');
		return factor < 0.93 || factor > 1.07 ? lacking('pull') : measured(value * factor, 0.1 * value * factor);
	},
});
