import { during } from '../chunk.ts';
import { lacking, measured, notApplicable } from '../measured.ts';
import { runQuantity } from '../quantity.ts';
import { sensorErrors } from '../sensor-errors.ts';
import { within } from '../series.ts';
import { median } from '../statistics.ts';
import { medianOf } from './median-of.ts';

export const volts = runQuantity({
	id: 'log.crank_volts_low',
	kind: 'voltage',
	sensor: 'supply_volts',
	formula: "median of the battery's volts while the starter turns the engine; of three readings over 0.5 s at least",
	accumulator: () =>
		medianOf(chunk => during(chunk, 'crank', 'battery_volts'), sensorErrors.volts, ['battery_volts'], {
			readings: 3,
			seconds: 0.5,
		}),
});

export const speed = runQuantity({
	id: 'log.crank_speed',
	kind: 'rotation',
	formula: 'median engine speed while the starter turns it; of three readings at least',
	accumulator: () => medianOf(chunk => during(chunk, 'crank', 'engine_speed'), sensorErrors.none, ['engine_speed']),
});

export const time = runQuantity({
	id: 'log.crank_time',
	kind: 'time',
	formula: 'how long the starter turned the engine before it first ran',
	accumulator() {
		let found: number | undefined;
		return {
			take({ episodes }) {
				const first = episodes.find(({ kind }) => kind === 'crank');
				if (first) found ??= first.to - first.from;
			},
			result: () => measured(found, 0, ['engine_speed']),
		};
	},
});

export const temperature = runQuantity({
	id: 'log.crank_temperature',
	kind: 'temperature',
	formula: 'coolant temperature when the starter first turned the engine',
	accumulator() {
		let found: number | undefined;
		return {
			take({ episodes, of }) {
				const first = episodes.find(({ kind }) => kind === 'crank');
				if (!first || found !== undefined) return;
				const value = median(within(of('coolant_temp'), first.from - 30, first.to + 5).value);
				if (Number.isFinite(value)) found = value;
			},
			result: () => measured(found, 3, ['coolant_temp']),
		};
	},
});

/** K under which a start counts as cold, and within which the coolant must lie of the air outside, where that is logged. */
const [coldStart, nearAmbient] = [273.15 + 40, 5];

export const coldDifference = runQuantity({
	id: 'log.cold_start_difference',
	kind: 'temperature-difference',
	range: [null, null],
	formula:
		'median coolant less median charge temperature of the first 30 s; only of a cold start: coolant under 40 degC and, where the air outside is logged, within 5 K of it',
	accumulator() {
		let result = lacking('coolant_temp', 'charge_temp');
		let looked = false;
		return {
			take({ of, span: [from] }) {
				if (looked) return;
				looked = true;
				const first = (id: string) => median(within(of(id), from, from + 30).value);
				const [coolant, charge, outside] = ['coolant_temp', 'charge_temp', 'ambient_temp'].map(first) as [
					number,
					number,
					number,
				];
				if (!Number.isFinite(coolant) || !Number.isFinite(charge)) return;
				const cold = coolant < coldStart && !(Math.abs(coolant - outside) > nearAmbient);
				result = cold ? measured(coolant - charge, 1) : notApplicable;
			},
			result: () => result,
		};
	},
});
