import { numberIn, type State, valueIn } from '../graph/solve.ts';
import type { Uncertain } from '../graph/uncertain.ts';
import type { Declared } from '../log/declared.ts';
import { CarModel } from './car-model.ts';
import { isInCharge } from './charge-sensor.ts';
import { type Compared, Comparison } from './comparison.ts';
import { Conditions } from './conditions.ts';
import { type Fact, type FitLog, facts } from './fit-log.ts';
import { doubts, heldFacts } from './held-facts.ts';
import { preparedPoints } from './prepared-points.ts';
import type { Problem, Seen } from './problem.ts';
import { sensorErrors, type Term } from './terms.ts';

/** The problem of one car and its logs. */
export interface CarProblem extends Problem {
	/** The graph's own unknowns come first, then these. */
	readonly terms: readonly Term[];
	readonly car: CarModel;
	readonly compared: readonly Compared[];
	readonly facts: readonly { readonly fact: Fact; readonly log: number }[];
}

/** Makes the problem: the unknowns of a solved car, its sensors and the shape of its filling, against what the logs read. */
export function carProblem(
	state: State,
	uncertain: readonly Uncertain[],
	logs: readonly FitLog[],
	declared: Pick<Declared, 'sensor_error'>,
): CarProblem {
	const shownFacts = facts.filter(fact => logs.some(({ held }) => held[fact].length > 0));
	const car = new CarModel(state, uncertain, shownFacts);
	const inCharge = isInCharge(state);
	const place = valueIn(state, 'sensors.air_temp_place');
	const readsOutside =
		valueIn(state, 'boost.kind') !== 'none' &&
		(place === 'before-compressor' || (place === 'in-air-meter' && !inCharge));
	const conditions = new Conditions(car, logs, sensorErrors(declared), readsOutside);
	const { terms, dimensions } = conditions;
	const points = preparedPoints(
		logs,
		numberIn(state, 'engine.peak_rpm'),
		numberIn(state, 'sensors.map_full_scale'),
		inCharge,
	);

	conditions.moveTo(new Float64Array(dimensions));
	const prepared = points.map(one => {
		const rail = car.running(conditions.runningAt(one), () => {
			car.compute('charge');
			car.compute('air');
			return car.compute('rail');
		});
		return { ...one, knowsRail: !Number.isNaN(rail) };
	});
	const shown = heldFacts(state, car, logs, prepared);
	const comparison = new Comparison(car, conditions, logs, prepared, {
		inCharge,
		ceiling: numberIn(state, 'sensors.meter_ceiling'),
		manifoldReference: valueIn(state, 'fuel.reference') === 'manifold',
	});
	conditions.moveTo(new Float64Array(dimensions));
	comparison.run();
	const { differences, deviations } = comparison;
	// What the model cannot work out on its nominal values is not compared.
	const counts = [...differences.keys()].filter(at => Number.isFinite(differences[at]));
	const seen: Seen = { residuals: new Float64Array(counts.length), margins: new Float64Array(shown.length) };
	return {
		dimensions,
		candidates: [...new Set(car.candidates), ...terms.map((_, at) => car.sampler.dimensions + at)],
		doubts: shown.map(({ fact }) => doubts[fact].doubt),
		terms,
		car,
		compared: counts.map(at => comparison.compared[at]!),
		facts: shown,
		at(point) {
			conditions.moveTo(point);
			comparison.run();
			let whole = true;
			for (let index = 0; index < counts.length; index++) {
				const at = counts[index]!;
				seen.residuals[index] = differences[at]! / deviations[at]!;
				if (!Number.isFinite(differences[at])) whole = false;
			}
			for (const [index, { one, margin, fact }] of shown.entries()) {
				const by = margin(conditions.runningAt(one));
				seen.margins[index] = by / doubts[fact].soft;
				if (Number.isNaN(by)) whole = false;
			}
			return whole ? seen : null;
		},
	};
}
