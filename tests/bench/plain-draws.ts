import { nearRoot } from '../../src/physics/solve.ts';
import type { Node } from '../../src/quantities/graph.ts';
import { noiseOf } from '../../src/quantities/noise.ts';
import type { State } from '../../src/quantities/pass.ts';
import { Bounded } from '../../src/quantities/quantity.ts';
import { between, reach, slotNamed } from '../../src/quantities/replace.ts';
import { rootOf } from '../../src/quantities/root.ts';
import { makeSequence } from '../../src/quantities/sequence.ts';
import type { Answer } from '../../src/sheet/sheet.ts';

type Step = (draw: number) => void;

/**
 * The draws as plain functions: the same formulas, noise and limits, called straight one after the other, with no thought
 * for what is missing or bounded, and without the cylinder model.
 */
export function plainDraws(state: State, answerTo: (id: string) => Answer | undefined): (draws: number) => number {
	const { graph } = state;
	const values = state.values.slice();
	const reader = {
		number: (id: string) => values[graph.slotOf.get(id)!] as number,
		choice: (id: string) => values[graph.slotOf.get(id)!] as string,
		list: (id: string) => values[graph.slotOf.get(id)!] as unknown[],
		made: (id: string) => values[graph.slotOf.get(id)!],
		peek: (id: string) => values[graph.slotOf.get(id)!],
		has: (id: string) => (values[graph.slotOf.get(id)!] ?? null) !== null,
		isIdle: (id: string) => values[graph.slotOf.get(id)!] === null,
		assume() {},
		forget() {},
		lack() {},
	} as never;
	const formula = ({ slot, compute }: Node): Step => {
		const given = state.given.get(slot)?.value;
		return () => {
			const value = compute!(reader, given);
			values[slot] = value instanceof Bounded ? value.value : value;
		};
	};
	const limit = (node: Node): Step => {
		const root = rootOf(state, node);
		if (!root) return () => {};
		const { vary, until, reaches, rising, from, to } = node.limit!;
		const [varied, at] = [slotNamed(graph, vary), slotNamed(graph, until)];
		const end = typeof reaches === 'number' ? null : slotNamed(graph, reaches);
		const ends = end === null ? [at] : [at, end];
		const chain = between(graph, [varied], ends).map(slot => formula(graph.nodes[slot]!));
		const spare = (x: number) => {
			values[varied] = x;
			for (const step of chain) step(0);
			const left = (end === null ? (reaches as number) : (values[end] as number)) - (values[at] as number);
			return rising ? left : -left;
		};
		return () => {
			const held = values[varied];
			const found = nearRoot(spare, root.at, root.slope, from, to, 1e-4);
			spare(held as number);
			values[node.slot] = found;
		};
	};
	const noises = graph.nodes.flatMap(node => noiseOf(node, state, node.question ? answerTo(node.id) : undefined) ?? []);
	const moving = reach(
		noises.map(({ slot }) => slot),
		slot => graph.readers[slot]!,
	);
	const sequence = makeSequence(
		1,
		noises.reduce((sum, { dimensions }) => sum + dimensions, 1),
	);
	let first = 0;
	const steps = graph.order.flatMap((slot): Step[] => {
		const node = graph.nodes[slot]!;
		if (!moving.has(slot) || (state.values[slot] ?? null) === null || node.heavy || node.elsewhere) return [];
		const base = node.limit ? limit(node) : formula(node);
		const noise = noises.find(other => other.slot === slot);
		if (!noise) return [base];
		const from = first;
		first += noise.dimensions;
		return [
			base,
			draw => {
				values[slot] = noise.apply(values[slot], dimension => sequence(draw, from + dimension));
			},
		];
	});
	return draws => {
		let whole = 0;
		for (let draw = 0; draw < draws; draw++) {
			try {
				for (const step of steps) step(draw);
				whole++;
			} catch {
				// A formula refuses what was drawn: plain functions end there.
			}
		}
		return whole;
	};
}
