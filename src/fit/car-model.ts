import { evaluationOn, run } from '../graph/evaluation.ts';
import { type Evaluation, type Graph, slotNamed, type Values } from '../graph/graph.ts';
import { between, reach } from '../graph/paths.ts';
import { makeSampler, type Sampler } from '../graph/sampling.ts';
import type { State } from '../graph/solve.ts';
import type { Uncertain } from '../graph/uncertain.ts';

/** An operating point of the engine, free of sensor errors: rpm, Pa abs, K, lambda. */
export interface OperatingPoint {
	readonly speed: number;
	readonly manifold: number;
	readonly ambient: number;
	/** Of the air outside. */
	readonly outside: number;
	readonly lambda: number;
	/** The filling there over that at best power. */
	readonly filling: number;
}

const inputs = {
	speed: 'engine.peak_rpm',
	boost: 'boost.target',
	manifold: 'boost.manifold_pressure',
	ambient: 'air.ambient_pressure',
	outside: 'build.hot_day',
	filling: 'engine.volumetric_efficiency',
	lambda: 'fuel.lambda_full_load',
	advance: 'ignition.full_load_advance',
} as const;

/** What is computed from that. Each may rest on those before it, which are computed or overridden first. */
const results = {
	charge: 'boost.charge_temp',
	air: 'engine.air_flow',
	railSet: 'fuel.rail_set_point',
	rail: 'fuel.rail_pressure_under_flow',
	across: 'injectors.pressure_across',
	pulse: 'injectors.pulse_width',
	volts: 'sensors.controller_volts_peak',
	power: 'engine.power',
	turning: 'engine.torque',
	spark: 'ignition.required_voltage',
} as const;

/** Figures of the car itself, at any operating point. */
const carFigures = {
	bestSpeed: 'engine.peak_rpm',
	torquePeak: 'engine.peak_torque_rpm',
	torqueRise: 'engine.torque_rise',
	pumpVolts: 'fuel.pump_voltage_running',
	setPressure: 'fuel.pressure',
} as const;

/** More of those, for the facts that held. */
const factFigures = {
	clutch: 'driveline.clutch_capacity',
	spark: 'ignition.capacity',
	knock: 'engine.knock_integral',
} as const;

const named = <Names extends Readonly<Record<string, string>>>(state: State, names: Names) =>
	Object.fromEntries(Object.entries(names).map(([key, id]) => [key, slotNamed(state.graph, id)])) as Record<
		keyof Names,
		number
	>;

/** Ids of all that a fit reads of the model: its results and what they are made from, without the operating point that a log sets. */
export function readByFit(graph: Graph): ReadonlySet<string> {
	const slots = (names: Readonly<Record<string, string>>) => Object.values(names).map(id => slotNamed(graph, id));
	const setByLog = new Set(slots(inputs));
	const read = reach([results, carFigures, factFigures].flatMap(slots), slot =>
		graph.feeds[slot]!.filter(feed => !setByLog.has(feed)),
	);
	return new Set([...read].map(slot => graph.nodes[slot]!.id));
}

/**
 * The model with its uncertain inputs at a point, run at one operating point after the other: the graph's own nodes, with that
 * operating point in place of best power at the target.
 */
export class CarModel {
	readonly sampler: Sampler;
	/** Coordinates of the sampler that anything here could move with. */
	readonly candidates: readonly number[];
	private readonly at: Evaluation;
	private readonly values: Values;
	private readonly sets: Readonly<Record<keyof typeof inputs, number>>;
	private readonly slots: Readonly<Record<keyof typeof results, number>>;
	private readonly owns: Readonly<Record<keyof typeof carFigures | keyof typeof factFigures, number>>;
	private readonly plans: Readonly<Record<keyof typeof results, readonly number[]>>;
	private readonly touched: readonly number[];
	private readonly saved: unknown[] = [];

	constructor(state: State, uncertain: readonly Uncertain[], facts: readonly (keyof typeof factFigures)[]) {
		const { graph } = state;
		this.sets = named(state, inputs);
		this.slots = named(state, results);
		this.owns = named(state, { ...carFigures, ...factFigures });
		const before = new Set(Object.values(this.sets));
		const plans: Partial<Record<keyof typeof results, readonly number[]>> = {};
		for (const [name, slot] of Object.entries(this.slots) as [keyof typeof results, number][]) {
			const moved = between(graph, [...before], [slot]);
			const needed = reach([slot], other => graph.feeds[other]!.filter(feed => !before.has(feed)));
			plans[name] = moved.filter(other => needed.has(other) && !before.has(other));
			for (const done of [...plans[name], slot]) before.add(done);
		}
		this.plans = plans as Record<keyof typeof results, readonly number[]>;
		this.touched = [...before];
		const within = new Set(this.touched);
		const needed = [
			...Object.values(this.plans)
				.flat()
				.flatMap(slot => graph.feeds[slot]!.filter(feed => !within.has(feed))),
			...Object.values(named(state, carFigures)),
			...facts.map(fact => slotNamed(graph, factFigures[fact])),
			this.sets.filling,
		];
		this.sampler = makeSampler(state, uncertain, [...new Set(needed)]);
		const above = reach(needed, slot => graph.feeds[slot]!);
		this.candidates = uncertain
			.filter(({ slot }) => above.has(slot))
			.flatMap(({ slot, dimensions }) =>
				Array.from({ length: dimensions }, (_, at) => this.sampler.first.get(slot)! + at),
			);
		this.values = this.sampler.evaluate(new Float64Array(this.sampler.dimensions));
		this.at = evaluationOn({ ...state, values: this.values });
	}

	/** Sets the uncertain inputs. */
	moveTo(point: ArrayLike<number>): void {
		this.sampler.evaluate(point);
	}

	/** A figure of the car itself; NaN where it is not known. */
	of(name: keyof typeof carFigures | keyof typeof factFigures): number {
		const value = this.values[this.owns[name]];
		return typeof value === 'number' ? value : Number.NaN;
	}

	/** Sets the operating point while `use` computes one result after the other; then all is as before. */
	running<T>({ speed, ambient, manifold, outside, lambda, filling }: OperatingPoint, use: () => T): T {
		const { values, sets, touched, saved } = this;
		for (let index = 0; index < touched.length; index++) saved[index] = values[touched[index]!];
		values[sets.speed] = speed;
		values[sets.ambient] = ambient;
		values[sets.manifold] = manifold;
		values[sets.boost] = Math.max(0, manifold - ambient);
		values[sets.outside] = outside;
		values[sets.lambda] = lambda;
		values[sets.filling] = (values[sets.filling] as number) * filling;
		const result = use();
		for (let index = 0; index < touched.length; index++) values[touched[index]!] = saved[index] as never;
		return result;
	}

	/** While running: a result of the model; NaN where it is not known. */
	compute(name: keyof typeof results): number {
		run(this.at, this.plans[name]);
		const value = this.values[this.slots[name]];
		return typeof value === 'number' ? value : Number.NaN;
	}

	/** While running: a measured figure in place of the model's result. */
	override(name: keyof typeof results | 'advance', value: number): void {
		this.values[name === 'advance' ? this.sets.advance : this.slots[name]] = value;
	}
}
