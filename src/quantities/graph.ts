import type { Outcome } from '../expressions/tree.ts';
import type { Question } from '../sheet/question.ts';
import { type AtDensity, answerNode } from './answers.ts';
import type { Inputs } from './inputs.ts';
import type { AnyQuantity, Bounded, Elsewhere, Limit } from './quantity.ts';

/** What a slot is given from outside: an answer, or a value that replaces what it would be. */
export type Given = Outcome | AtDensity;

/** A place in the graph: an answer or a quantity. */
export interface Node {
	readonly id: string;
	readonly slot: number;
	/** Id of each input to its slot. */
	readonly slots: Readonly<Record<string, number>>;
	readonly heavy: boolean;
	readonly limit: Limit | null;
	readonly quantity: AnyQuantity | null;
	readonly question: Question | null;
	/** Shown in `assumed` of everything that uses it. */
	readonly assumes: string | null;
	readonly elsewhere: Elsewhere['elsewhere'] | null;
	/** Absent where the pass evaluates other nodes: a limit, a quantity elsewhere. */
	compute: ((inputs: Inputs, given: Given) => Outcome | Bounded) | null;
}

/** The whole model: every answer and quantity, each after all that it reads. */
export interface Graph {
	readonly nodes: readonly Node[];
	readonly slotOf: ReadonlyMap<string, number>;
	/** Slots in an order in which each comes after its inputs. */
	readonly order: readonly number[];
	/** For each slot, the slots that it reads, each once, and those that read it. */
	readonly feeds: readonly (readonly number[])[];
	readonly readers: readonly (readonly number[])[];
}

/**
 * Builds the graph. Refuses two nodes of one id, an input that is nowhere, and a circle, naming it.
 */
export function makeGraph(questions: readonly Question[], quantities: readonly AnyQuantity[]): Graph {
	const drafts: Draft[] = [...questions.map(answerDraft), ...quantities.map(quantityDraft)];
	const slotOf = new Map<string, number>();
	for (const [slot, draft] of drafts.entries()) {
		if (slotOf.has(draft.id)) throw new TypeError(`${draft.id} is declared twice`);
		slotOf.set(draft.id, slot);
	}
	const nodes = drafts.map((draft, slot): Node => {
		const slots: Record<string, number> = {};
		for (const id of draft.reads) {
			const at = slotOf.get(id);
			if (at === undefined) throw new TypeError(`${draft.id} reads ${id}, which is no answer and no quantity`);
			slots[id] = at;
		}
		return { ...draft.node, id: draft.id, slot, slots };
	});
	const feeds = nodes.map(({ slots }) => [...new Set(Object.values(slots))]);
	const readers: number[][] = nodes.map(() => []);
	for (const { slot } of nodes) for (const fed of feeds[slot]!) readers[fed]!.push(slot);
	return { nodes, slotOf, order: sort(nodes, feeds), feeds, readers };
}

interface Draft {
	readonly id: string;
	readonly reads: readonly string[];
	readonly node: Omit<Node, 'id' | 'slot' | 'slots'>;
}

const plain = { heavy: false, limit: null, quantity: null, question: null, assumes: null, elsewhere: null } as const;

function answerDraft(question: Question): Draft {
	const { reads, compute } = answerNode(question);
	return { id: question.id, reads, node: { ...plain, question, compute } };
}

function quantityDraft(quantity: AnyQuantity): Draft {
	const { id } = quantity;
	if ('limit' in quantity) {
		const { vary, until, reaches, rising, from, to, end } = quantity.limit;
		const others = [reaches, end].filter(id => typeof id === 'string');
		const reads = [...quantity.inputs, vary, until, ...others];
		const heavy = quantity.heavy ?? false;
		// All of one shape: what looks for them runs often.
		const limit = { vary, until, reaches, rising, from, to, end };
		return { id, reads, node: { ...plain, heavy, limit, quantity, compute: null } };
	}
	if ('elsewhere' in quantity) {
		const { of, with: set } = quantity.elsewhere;
		const reads = [of, ...Object.keys(set), ...Object.values(set)];
		return { id, reads, node: { ...plain, quantity, elsewhere: quantity.elsewhere, compute: null } };
	}
	if ('value' in quantity) {
		const { value, standsFor = id } = quantity;
		return { id, reads: [], node: { ...plain, quantity, assumes: standsFor, compute: () => value } };
	}
	const { inputs, heavy = false, assumes } = quantity;
	const compute = quantity.compute.bind(quantity) as (inputs: Inputs) => Outcome | Bounded;
	return { id, reads: inputs, node: { ...plain, heavy, quantity, assumes: assumes ? id : null, compute } };
}

function sort(nodes: readonly Node[], feeds: readonly (readonly number[])[]): number[] {
	const order: number[] = [];
	const state = new Uint8Array(nodes.length);
	const visit = (slot: number, path: readonly string[]): void => {
		if (state[slot] === 2) return;
		const node = nodes[slot]!;
		if (state[slot] === 1) throw new TypeError(`a circle: ${[...path, node.id].join(' reads ')}`);
		state[slot] = 1;
		for (const input of feeds[slot]!) visit(input, [...path, node.id]);
		state[slot] = 2;
		order.push(slot);
	};
	for (const node of nodes) visit(node.slot, []);
	return order;
}
