import { evaluate, type State, valueIn } from '../graph/solve.ts';
import type { CarModel, OperatingPoint } from './car-model.ts';
import { type Fact, type FitLog, facts } from './fit-log.ts';
import type { Prepared } from './prepared-points.ts';
import { ambientPrior } from './terms.ts';

/** The chance that a log shows a fact that does not hold, and the width of its threshold, as a share. Estimates. */
export const doubts: Readonly<Record<Fact, { readonly doubt: number; readonly soft: number }>> = {
	clutch: { doubt: 0.05, soft: 0.03 },
	spark: { doubt: 0.1, soft: 0.03 },
	knock: { doubt: 0.3, soft: 0.1 },
};

/** A fact that a log shows, where it shows most. */
export interface HeldFact {
	readonly fact: Fact;
	readonly log: number;
	readonly one: Prepared;
	/** What was spare there, as a share. */
	margin(running: OperatingPoint): number;
}

/** The facts known of the car: each at the point of most pressure of the pulls in which it held. */
export function heldFacts(
	state: State,
	car: CarModel,
	logs: readonly FitLog[],
	prepared: readonly Prepared[],
): HeldFact[] {
	const found = logs.flatMap(({ held }, log) =>
		facts.flatMap(fact => {
			const here = prepared.filter(({ point, log: of }) => of === log && held[fact].includes(point.pull));
			if (here.length === 0) return [];
			const pressure = ({ point }: Prepared) => point.read.manifold_pressure!.value;
			const one = here.reduce((most, next) => (pressure(next) > pressure(most) ? next : most));
			return [{ fact, log, one }];
		}),
	);
	return found.flatMap(({ fact, log, one }): HeldFact[] => {
		const { read } = one.point;
		const setMeasured = () => {
			if (read.charge_temp) car.override('charge', read.charge_temp.value);
			else car.compute('charge');
			if (read.spark_advance) car.override('advance', read.spark_advance.value);
		};
		const margins: Record<Fact, (running: OperatingPoint) => number> = {
			clutch: running =>
				car.running(running, () => {
					setMeasured();
					car.compute('air');
					car.compute('power');
					return car.of('clutch') / car.compute('turning') - 1;
				}),
			spark: running => {
				const coil = car.of('spark');
				return car.running(running, () => {
					setMeasured();
					return coil / car.compute('spark') - 1;
				});
			},
			knock: knockMargin(state, car, logs[log]!, one),
		};
		const center = new Float64Array(car.sampler.dimensions);
		car.moveTo(center);
		const margin = margins[fact];
		const running: OperatingPoint = {
			speed: one.point.speed,
			manifold: read.manifold_pressure!.value,
			ambient: logs[log]!.ambient,
			outside: logs[log]!.outside ?? ambientPrior.usual,
			lambda: read[one.lambdas[0]!]!.value,
			filling: 1,
		};
		return Number.isFinite(margin(running)) ? [{ fact, log, one, margin }] : [];
	});
}

/** The cylinder model runs once at the logged point; from there its figure follows by its slopes. */
function knockMargin(state: State, car: CarModel, { ambient, outside }: FitLog, { point }: Prepared) {
	const { manifold_pressure, charge_temp, spark_advance } = point.read;
	const nominal = valueIn(state, 'engine.knock_integral');
	const [there] = evaluate(state, ['engine.knock_integral'], {
		'air.ambient_pressure': ambient,
		'build.hot_day': outside ?? ambientPrior.usual,
		'boost.target': Math.max(0, manifold_pressure!.value - ambient),
		'boost.manifold_pressure': manifold_pressure!.value,
		...(charge_temp ? { 'boost.charge_temp': charge_temp.value } : {}),
		...(spark_advance ? { 'ignition.full_load_advance': spark_advance.value } : {}),
	});
	const ratio = typeof there === 'number' && typeof nominal === 'number' ? there / nominal : Number.NaN;
	return () => 1 - ratio * car.of('knock');
}
