import { CarModel, type OperatingPoint } from '../fit/car-model.ts';
import { isInCharge } from '../fit/charge-sensor.ts';
import { fillingAt, placeOf } from '../fit/filling.ts';
import { ambientPrior, fillingShape, type Sensor, sensorErrors, sensors } from '../fit/terms.ts';
import { latinHypercube } from '../graph/latin-hypercube.ts';
import { numberIn, type State } from '../graph/solve.ts';
import type { Analysis } from '../log/analysis.ts';
import type { Measured } from '../log/measured.ts';
import type { PullPoint } from '../log/points.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { Model } from './model.ts';
import { uncertaintyOf } from './uncertainty.ts';

/** What a channel should read at one engine speed, rpm: nine of ten cars with these answers and usual sensors lie within. */
export interface ExpectedAt {
	readonly speed: number;
	readonly low: number;
	readonly high: number;
}

/** By pull and channel. */
export type Expected = ReadonlyMap<number, ReadonlyMap<string, readonly ExpectedAt[]>>;

/** Cars that are drawn, and points of a pull: more change nothing that is seen. */
const [drawn, mostPoints] = [100, 16] as const;

/** Channels that the model has something to say of at a logged engine speed, manifold pressure and lambda. */
const channels = ['fuel_pressure', 'injector_pulse', 'injector_duty', 'meter_volts', 'air_flow'] as const;
type Channel = (typeof channels)[number];

/**
 * What the answers let one expect at full load of each pull, at the engine speed, manifold pressure, lambda and charge
 * temperature that were logged: drawn over the spreads of the answers and what sensors are off. SI.
 */
export function expectedIn(
	model: Model,
	sheet: Sheet,
	state: State,
	{ points: pulls, ambient, run }: Pick<Analysis, 'points' | 'ambient' | 'run'>,
): Expected {
	if (!ambient) return new Map();
	const car = new CarModel(state, uncertaintyOf(model, sheet, state), []);
	const errors = sensorErrors(model.rulebook.episodes!);
	const shape = car.sampler.dimensions + sensors.length;
	const terms = Array.from({ length: fillingShape.terms }, (_, at) => `breathing ${at}`);
	const names = [...car.sampler.names, ...sensors, ...terms, 'outside'];
	const dimensions = names.length;
	const points = latinHypercube(names, drawn);
	const z = new Float64Array(dimensions);
	const outside = figureOf(run.get('log.ambient_temp'));
	const best = numberIn(state, 'engine.peak_rpm');
	const off = (sensor: Sensor) => errors[sensor] * z[car.sampler.dimensions + sensors.indexOf(sensor)]!;
	const readingsAt = (point: PullPoint): Record<Channel, number> => {
		const { manifold_pressure: pressure, charge_temp: charge } = point.channels;
		const running: OperatingPoint = {
			speed: point.speed,
			manifold: pressure!.value / (1 + off('manifold_pressure')),
			ambient: ambient.value,
			outside: outside ?? ambientPrior.usual + ambientPrior.deviation * z[dimensions - 1]!,
			lambda: lambdaOf(point)! - off('lambda_1'),
			filling: fillingAt(car, placeOf(point.speed, best), z, shape),
		};
		return car.running(running, () => {
			if (charge && isInCharge(state)) car.override('charge', charge.value - off('charge_temp'));
			else car.compute('charge');
			const air = car.compute('air');
			const set = car.compute('railSet');
			const worked = car.compute('rail');
			const rail = Number.isNaN(worked) ? set : worked;
			car.override('across', rail - (running.manifold - running.ambient));
			const pulse = car.compute('pulse') * (1 + off('injector_pulse'));
			car.override('air', air * (1 + off('meter_volts')));
			return {
				fuel_pressure: rail + off('fuel_pressure'),
				injector_pulse: pulse,
				injector_duty: (pulse * point.speed) / 120,
				meter_volts: car.compute('volts'),
				air_flow: air * (1 + off('air_flow')),
			};
		});
	};
	const judged = pulls.map(({ pull, points: all }) => ({
		pull,
		points: some(all.filter(point => point.full && point.channels.manifold_pressure && lambdaOf(point) !== null)),
	}));
	const read = new Map(
		judged.flatMap(one => one.points.map(point => [point, [] as Record<Channel, number>[]] as const)),
	);
	for (let draw = 0; draw < drawn && read.size > 0; draw++) {
		points.point(draw, z);
		car.moveTo(z);
		for (const [point, all] of read) all.push(readingsAt(point));
	}
	return new Map(
		judged.map(one => [
			one.pull,
			new Map(
				channels.map(channel => [
					channel,
					one.points.flatMap(point =>
						bandOf(
							point.speed,
							read.get(point)!.map(all => all[channel]),
						),
					),
				]),
			),
		]),
	);
}

/** At most so many of a list, evenly over it. */
const some = <T>(list: readonly T[]): readonly T[] =>
	list.filter((_, at) => at % Math.ceil(list.length / mostPoints) === 0);

/** From a twentieth to the last twentieth; nothing where the model does not say. */
function bandOf(speed: number, values: readonly number[]): ExpectedAt[] {
	const known = Float64Array.from(values.filter(Number.isFinite)).sort();
	if (known.length < values.length / 2) return [];
	const at = (share: number) => known[Math.round(share * (known.length - 1))]!;
	return [{ speed, low: at(0.05), high: at(0.95) }];
}

const lambdaOf = ({ channels: { lambda_1, lambda_2 } }: PullPoint): number | null => {
	const banks = [lambda_1, lambda_2].flatMap(bank => bank?.value ?? []);
	return banks.length === 0 ? null : banks.reduce((sum, one) => sum + one, 0) / banks.length;
};

const figureOf = (figure: Measured | undefined): number | null =>
	typeof figure?.value === 'number' ? figure.value : null;
