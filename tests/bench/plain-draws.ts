import { Bounded } from '../../src/graph/bounded.ts';
import { slotNamed } from '../../src/graph/graph.ts';
import { latinHypercube } from '../../src/graph/latin-hypercube.ts';
import { LimitNode } from '../../src/graph/limit.ts';
import { between, reach } from '../../src/graph/paths.ts';
import { rootOf } from '../../src/graph/root.ts';
import { measureSensitivities } from '../../src/graph/sensitivities.ts';
import type { State } from '../../src/graph/solve.ts';
import { WhatIf } from '../../src/graph/what-if.ts';
import { nearRoot } from '../../src/physics/solve.ts';
import type { AnyQuantity } from '../../src/quantities/quantity.ts';
import { uncertainSlots } from '../../src/quantities/uncertainty.ts';
import type { Question } from '../../src/sheet/question.ts';
import type { Answer } from '../../src/sheet/sheet.ts';

type Step = () => void;

/**
 * The draws as plain functions: the same formulas, spreads and limits, called straight one after the other, with no thought
 * for what is missing or bounded. Limits of the cylinder follow by their sensitivities, as in an audit; without
 * `cylinder` they stay where they were. Gives the values of each draw that came through whole.
 */
export function plainDraws(
	questions: readonly Question[],
	quantities: readonly AnyQuantity[],
	state: State,
	answerTo: (id: string) => Answer | undefined,
	cylinder: boolean,
): (draws: number) => Generator<readonly unknown[]> {
	const { graph } = state;
	const values = state.values.slice();
	const reader = {
		number: (id: string) => values[graph.slotOf.get(id)!] as number,
		choice: (id: string) => values[graph.slotOf.get(id)!] as string,
		list: (id: string) => values[graph.slotOf.get(id)!] as unknown[],
		made: (id: string) => values[graph.slotOf.get(id)!],
		has: (id: string) => (values[graph.slotOf.get(id)!] ?? null) !== null,
		applies: (id: string) => values[graph.slotOf.get(id)!] !== null,
		assume() {},
		lack() {},
	} as never;
	const byId = new Map(quantities.map(quantity => [quantity.id, quantity]));
	const formula = (slot: number): Step => {
		const quantity = byId.get(graph.nodes[slot]!.id);
		const nominal = state.values[slot];
		if (!quantity || !('compute' in quantity)) return () => void (values[slot] = nominal);
		return () => {
			const value = quantity.compute(reader);
			values[slot] = value instanceof Bounded ? value.value : value;
		};
	};
	const limit = (slot: number, node: LimitNode): Step => {
		const root = rootOf(state, node);
		if (!root) return () => {};
		const { vary, until, reaches, rising, from, to } = node.limit;
		const [varied, at] = [slotNamed(graph, vary), slotNamed(graph, until)];
		const end = typeof reaches === 'number' ? null : slotNamed(graph, reaches);
		const ends = end === null ? [at] : [at, end];
		const chain = between(graph, [varied], ends).map(formula);
		const spare = (x: number) => {
			values[varied] = x;
			for (const step of chain) step();
			const left = (end === null ? (reaches as number) : (values[end] as number)) - (values[at] as number);
			return rising ? left : -left;
		};
		return () => {
			const held = values[varied];
			const found = nearRoot(spare, root.at, root.slope, from, to, 1e-4);
			spare(held as number);
			values[slot] = found;
		};
	};
	const uncertain = uncertainSlots(questions, quantities, state, answerTo);
	const affected = reach(
		uncertain.map(({ slot }) => slot),
		slot => graph.readers[slot]!,
	);
	const z = new Float64Array(uncertain.reduce((sum, { dimensions }) => sum + dimensions, 1));

	const followed = graph.order.filter(slot => {
		const node = graph.nodes[slot]!;
		const isDrawn = cylinder && affected.has(slot) && typeof state.values[slot] === 'number';
		return isDrawn && node.expensive && node instanceof LimitNode;
	});
	const sensitivities = measureSensitivities(state, followed, uncertain);
	const firstOf = new Map<number, number>();
	const ownOf = new Map(uncertain.map(one => [one.slot, one]));
	const factorOf = (slot: number) => ownOf.get(slot)!.apply(1, z, firstOf.get(slot)!) as number;
	const follow = (slot: number): Step => {
		return () => void (values[slot] = sensitivities.follow(slot, values, factorOf));
	};

	let first = 0;
	const steps = graph.order.flatMap((slot): Step[] => {
		const node = graph.nodes[slot]!;
		if (!affected.has(slot) || (state.values[slot] ?? null) === null || node instanceof WhatIf) return [];
		if (node.expensive && !followed.includes(slot)) return [];
		const base = node.expensive ? follow(slot) : node instanceof LimitNode ? limit(slot, node) : formula(slot);
		const own = ownOf.get(slot);
		if (!own) return [base];
		const from = first;
		firstOf.set(slot, from);
		first += own.dimensions;
		return [
			base,
			() => {
				values[slot] = own.apply(values[slot], z, from);
			},
		];
	});
	return function* (draws) {
		const points = latinHypercube(
			Array.from(z, (_, at) => `${at}`),
			draws,
		);
		for (let draw = 0; draw < draws; draw++) {
			try {
				points.point(draw, z);
				for (const step of steps) step();
			} catch {
				// A formula refuses what was drawn: plain functions end there.
				continue;
			}
			yield values;
		}
	};
}
