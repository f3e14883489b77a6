import { during } from '../chunk.ts';
import { lacking, measured } from '../measured.ts';
import { inRun } from '../quantity.ts';
import { mapped, type Readings, within } from '../series.ts';
import { median } from '../statistics.ts';
import { errors, medianOf } from './tools.ts';

/** s after which pump and manifold have settled with the key on. */
const settling = 1;

/** Without the first second, in which the pump primes and the manifold fills. */
const settled = ({ time, value }: Readings): Readings =>
	within({ time, value }, (time[0] ?? 0) + settling, time.at(-1) ?? 0);

export const fuelPressure = inRun({
	id: 'log.key_on_fuel_pressure',
	kind: 'pressure',
	sensor: 'fuel_pressure',
	formula: 'median rail pressure with the key on and the engine still, the first second left out',
	gather: () =>
		medianOf(chunk => during(chunk, 'key-on', 'fuel_pressure').map(settled), errors.pressure, ['fuel_pressure']),
});

export const manifold = inRun({
	id: 'log.key_on_pressure',
	kind: 'absolute-pressure',
	sensor: 'manifold_pressure',
	unit: 'Pa',
	formula: 'median manifold pressure with the key on and the engine still, the first second left out',
	gather: () =>
		medianOf(chunk => during(chunk, 'key-on', 'manifold_pressure').map(settled), errors.manifold, [
			'manifold_pressure',
		]),
});

export const manifoldError = inRun({
	id: 'log.key_on_pressure_error',
	kind: 'pressure',
	range: [null, null],
	formula:
		"median manifold pressure with the key on and the engine still, less ambient as logged, else less that of the sheet's altitude",
	gather: () =>
		medianOf(
			chunk => {
				const logged = median(chunk.of('ambient_pressure').value);
				const altitude =
					chunk.car.value('build.altitude') === undefined ? Number.NaN : chunk.car.value('air.ambient_pressure');
				const ambient = Number.isFinite(logged) ? logged : typeof altitude === 'number' ? altitude : Number.NaN;
				if (!Number.isFinite(ambient)) return [];
				return during(chunk, 'key-on', 'manifold_pressure').map(found =>
					mapped(settled(found), pressure => pressure - ambient),
				);
			},
			() => 1000,
			['manifold_pressure', 'ambient_pressure'],
		),
});

export const volts = inRun({
	id: 'log.crank_volts_low',
	kind: 'voltage',
	sensor: 'supply_volts',
	formula: "median of the battery's volts while the starter turns the engine; of three readings over 0.5 s at least",
	gather: () =>
		medianOf(chunk => during(chunk, 'crank', 'battery_volts'), errors.volts, ['battery_volts'], {
			readings: 3,
			seconds: 0.5,
		}),
});

export const speed = inRun({
	id: 'log.crank_speed',
	kind: 'rotation',
	formula: 'median engine speed while the starter turns it; of three readings at least',
	gather: () => medianOf(chunk => during(chunk, 'crank', 'engine_speed'), errors.none, ['engine_speed']),
});

export const time = inRun({
	id: 'log.crank_time',
	kind: 'time',
	formula: 'how long the starter turned the engine before it first ran',
	gather() {
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

export const temperature = inRun({
	id: 'log.crank_temperature',
	kind: 'temperature',
	formula: 'coolant temperature when the starter first turned the engine',
	gather() {
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

/** A start counts as cold under this, K, and where the air outside is logged, within so much of it. */
const [coldest, near] = [273.15 + 40, 5];

export const coldDifference = inRun({
	id: 'log.cold_start_difference',
	kind: 'temperature-difference',
	range: [null, null],
	formula:
		'median coolant less median charge temperature of the first 30 s; only of a cold start: coolant under 40 degC and, where the air outside is logged, within 5 K of it',
	gather() {
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
				const cold = coolant < coldest && !(Math.abs(coolant - outside) > near);
				result = cold ? measured(coolant - charge, 1) : { value: null, low: null, high: null, missing: [] };
			},
			result: () => result,
		};
	},
});
