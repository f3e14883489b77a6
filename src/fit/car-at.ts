import { evaluationOn, run } from '../graph/evaluation.ts';
import { type Evaluation, type Graph, slotNamed, type Values } from '../graph/graph.ts';
import { between, reach } from '../graph/paths.ts';
import { makeSampler, type Sampler } from '../graph/sampling.ts';
import type { State } from '../graph/solve.ts';
import type { Uncertain } from '../graph/uncertain.ts';

/** What the engine truly runs at: rpm, Pa abs, K, lambda. */
export interface Running {
	readonly speed: number;
	readonly manifold: number;
	readonly ambient: number;
	/** Of the air outside. */
	readonly outside: number;
	readonly lambda: number;
	/** The filling there over that at best power. */
	readonly filling: number;
}

const set = {
	speed: 'engine.peak_rpm',
	boost: 'boost.target',
	manifold: 'boost.manifold_pressure',
	ambient: 'air.ambient_pressure',
	outside: 'build.hot_day',
	filling: 'engine.volumetric_efficiency',
	lambda: 'fuel.lambda_full_load',
	advance: 'ignition.full_load_advance',
} as const;

/** What is worked out from that. Each may rest on those before it, which are worked out or put first. */
const steps = {
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

/** Figures of the car itself, whatever it runs at. */
const own = {
	bestSpeed: 'engine.peak_rpm',
	torquePeak: 'engine.peak_torque_rpm',
	torqueRise: 'engine.torque_rise',
	pumpVolts: 'fuel.pump_voltage_running',
	setPressure: 'fuel.pressure',
} as const;

/** More of those, for the facts that held. */
const ofFacts = {
	clutch: 'driveline.clutch_capacity',
	spark: 'ignition.capacity',
	knock: 'engine.knock_integral',
} as const;

const named = <Names extends Readonly<Record<string, string>>>(state: State, names: Names) =>
	Object.fromEntries(Object.entries(names).map(([key, id]) => [key, slotNamed(state.graph, id)])) as Record<
		keyof Names,
		number
	>;

/** Ids of all that is asked of the model here and what that is made from: what an engine runs at in a log is not among them. */
export function readByFit(graph: Graph): ReadonlySet<string> {
	const slots = (names: Readonly<Record<string, string>>) => Object.values(names).map(id => slotNamed(graph, id));
	const put = new Set(slots(set));
	const read = reach([steps, own, ofFacts].flatMap(slots), slot => graph.feeds[slot]!.filter(feed => !put.has(feed)));
	return new Set([...read].map(slot => graph.nodes[slot]!.id));
}

/**
 * The model with its uncertain inputs at a point, run at one state of the engine after the other: the graph's own nodes, with
 * what the engine runs at in place of best power at the target.
 */
export class CarAt {
	readonly sampler: Sampler;
	/** Coordinates of the sampler that anything here could move with. */
	readonly candidates: readonly number[];
	private readonly at: Evaluation;
	private readonly values: Values;
	private readonly sets: Readonly<Record<keyof typeof set, number>>;
	private readonly slots: Readonly<Record<keyof typeof steps, number>>;
	private readonly owns: Readonly<Record<keyof typeof own | keyof typeof ofFacts, number>>;
	private readonly plans: Readonly<Record<keyof typeof steps, readonly number[]>>;
	private readonly touched: readonly number[];
	private readonly kept: unknown[] = [];

	constructor(state: State, uncertain: readonly Uncertain[], facts: readonly (keyof typeof ofFacts)[]) {
		const { graph } = state;
		this.sets = named(state, set);
		this.slots = named(state, steps);
		this.owns = named(state, { ...own, ...ofFacts });
		const before = new Set(Object.values(this.sets));
		const plans: Partial<Record<keyof typeof steps, readonly number[]>> = {};
		for (const [name, slot] of Object.entries(this.slots) as [keyof typeof steps, number][]) {
			const moved = between(graph, [...before], [slot]);
			const needed = reach([slot], other => graph.feeds[other]!.filter(feed => !before.has(feed)));
			plans[name] = moved.filter(other => needed.has(other) && !before.has(other));
			for (const done of [...plans[name], slot]) before.add(done);
		}
		this.plans = plans as Record<keyof typeof steps, readonly number[]>;
		this.touched = [...before];
		const within = new Set(this.touched);
		const needed = [
			...Object.values(this.plans)
				.flat()
				.flatMap(slot => graph.feeds[slot]!.filter(feed => !within.has(feed))),
			...Object.values(named(state, own)),
			...facts.map(fact => slotNamed(graph, ofFacts[fact])),
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
	of(name: keyof typeof own | keyof typeof ofFacts): number {
		const value = this.values[this.owns[name]];
		return typeof value === 'number' ? value : Number.NaN;
	}

	/** Runs the engine so while `use` asks for one step after the other; then all is as before. */
	running<T>({ speed, ambient, manifold, outside, lambda, filling }: Running, use: () => T): T {
		const { values, sets, touched, kept } = this;
		for (let index = 0; index < touched.length; index++) kept[index] = values[touched[index]!];
		values[sets.speed] = speed;
		values[sets.ambient] = ambient;
		values[sets.manifold] = manifold;
		values[sets.boost] = Math.max(0, manifold - ambient);
		values[sets.outside] = outside;
		values[sets.lambda] = lambda;
		values[sets.filling] = (values[sets.filling] as number) * filling;
		const result = use();
		for (let index = 0; index < touched.length; index++) values[touched[index]!] = kept[index] as never;
		return result;
	}

	/** While running: what the model says; NaN where it is not known. */
	work(name: keyof typeof steps): number {
		run(this.at, this.plans[name]);
		const value = this.values[this.slots[name]];
		return typeof value === 'number' ? value : Number.NaN;
	}

	/** While running: puts a figure in place of what the model says. */
	put(name: keyof typeof steps | 'advance', value: number): void {
		this.values[name === 'advance' ? this.sets.advance : this.slots[name]] = value;
	}
}
