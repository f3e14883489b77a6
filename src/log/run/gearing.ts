import { cruiseRoadSpeed } from '../../quantities/model/driveline.ts';
import { percent } from '../../quantities/quantity.ts';
import { numberOf } from '../car.ts';
import { type Chunk, newIn, oncePerChunk, oncePerLog } from '../chunk.ts';
import { lacking, type Measured, measured } from '../measured.ts';
import { type Accumulator, runQuantity } from '../quantity.ts';
import { masked, noReadings, type Readings } from '../series.ts';
import { heldAtEach } from '../ticks.ts';
import { heldFor } from './held-for.ts';
import { medianOf } from './median-of.ts';

/** m/s under which a road speed in whole km/h is too coarse; rpm under which the clutch may be out. */
const [minRoadSpeed, minEngineSpeed] = [6, 1300];

/** rpm per m/s that the sheet gives for a gear; undefined where it does not say. */
function rpmPerRoadSpeed(chunk: Chunk, gear: 'top' | 'first'): number | undefined {
	const top = numberOf(chunk.car, 'driveline.cruise_speed');
	const [ratio, first] = [numberOf(chunk.car, 'driveline.top_gear'), numberOf(chunk.car, 'driveline.first_gear')];
	if (top === undefined) return undefined;
	if (gear === 'top') return top / cruiseRoadSpeed;
	return ratio === undefined || first === undefined ? undefined : ((top / cruiseRoadSpeed) * first) / ratio;
}

const inGear = {
	top: oncePerChunk(chunk => speedRatios(chunk, 'top')),
	first: oncePerChunk(chunk => speedRatios(chunk, 'first')),
} as const;

/** Road speed shown over engine speed, as a share of what the sheet's gearing gives; in one gear where it is logged. */
function speedRatios(chunk: Chunk, gear: 'top' | 'first'): Readings {
	const road = newIn(chunk, 'road_speed');
	const speed = heldAtEach(chunk.of('engine_speed'), road.time, 2);
	const gears = chunk.of('gear');
	const geared = heldAtEach(gears, road.time, 5);
	const highest = gears.value.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY);
	const wanted = gear === 'first' ? 1 : highest;
	const perRoadSpeed = rpmPerRoadSpeed(chunk, gear);
	if (perRoadSpeed === undefined) return noReadings;
	const isLogged = gears.time.length > 0;
	const keep = new Uint8Array(speed.length);
	const shares = new Float64Array(speed.length);
	for (let index = 0; index < keep.length; index++) {
		const counts = isLogged ? geared[index] === wanted : gear === 'top';
		keep[index] = counts && road.value[index]! > minRoadSpeed && speed[index]! > minEngineSpeed ? 1 : 0;
		shares[index] = (road.value[index]! * perRoadSpeed) / speed[index]!;
	}
	return masked({ time: road.time, value: shares }, keep);
}

const channels = ['road_speed', 'driveline.axle_ratio', 'driveline.tyre_diameter', 'driveline.top_gear'];

function topError(): Accumulator {
	const most = heldFor(
		10,
		5,
		chunk => inGear.top(chunk),
		() => 0.01,
		channels,
	);
	return {
		take: chunk => most.take(chunk),
		result(): Measured {
			const result = most.result();
			if (typeof result.value !== 'number') return result;
			// A ratio farther off is another gear's.
			return Math.abs(result.value - 1) > 0.2 ? lacking(...channels) : measured(result.value - 1, 0.01);
		},
	};
}

const topErrorIn = oncePerLog(topError);

function firstError(): Accumulator {
	const all = medianOf(
		chunk => [inGear.first(chunk)],
		() => 0.01,
		['gear'],
		{ readings: 5, seconds: 2 },
	);
	return {
		take: chunk => all.take(chunk),
		result(): Measured {
			const result = all.result();
			return typeof result.value === 'number' ? measured(result.value - 1, 0.01) : result;
		},
	};
}

export const error = runQuantity({
	id: 'log.speed_ratio_error',
	kind: 'ratio',
	shown: percent,
	range: [-1, null],
	formula:
		'road speed shown over that of engine speed and gearing, less 1: the lowest rpm per road speed held for 10 s, as top gear where it lies within 20 % of it; the highest gear where the gear is logged',
	accumulator() {
		let top: Accumulator | undefined;
		return {
			take(chunk) {
				top = topErrorIn(chunk);
			},
			result: () => top?.result() ?? lacking(...channels),
		};
	},
});

export const least = runQuantity({
	id: 'log.speed_ratio_error_least',
	kind: 'ratio',
	shown: percent,
	range: [-1, null],
	formula: 'the same, or that of first gear where the gear is logged and it is nearer to 0',
	accumulator() {
		const first = firstError();
		let top: Accumulator | undefined;
		return {
			take(chunk) {
				top = topErrorIn(chunk);
				first.take(chunk);
			},
			result() {
				const [a, b] = [top?.result() ?? lacking(...channels), first.result()];
				return typeof b.value === 'number' && typeof a.value === 'number' && Math.abs(b.value) < Math.abs(a.value)
					? b
					: a;
			},
		};
	},
});
