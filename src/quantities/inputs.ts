import type { Outcome } from '../expressions/tree.ts';

/** What one run over the graph reads and writes: the present value of every slot. */
export type Values = Outcome[];

/**
 * The inputs a quantity sees while it is computed. A read of something not known marks the run as lacking it and gives
 * a stand-in (NaN, undefined), so that one pass finds everything that is missing.
 *
 * One object serves a whole pass: `enter` points it at the next node.
 */
export class Inputs<Input extends string = string> {
	/** Something read was not known. */
	lacks = false;
	/** Something read does not apply here. */
	idle = false;
	/** Slots read by the present node; kept only while telling (missing, assumed). */
	readonly reads: number[] | null;
	/** Answers that the node itself says it lacks (a curve that ends too early). */
	wants: string[] = [];
	/** What the node itself takes for granted: a usual value in place of its answer. */
	assumes: string | null = null;
	private values: Values;
	private slots: Readonly<Record<string, number>> = {};
	private readonly slotOf: ReadonlyMap<string, number>;

	constructor(slotOf: ReadonlyMap<string, number>, values: Values, telling = false) {
		this.slotOf = slotOf;
		this.values = values;
		this.reads = telling ? [] : null;
	}

	/** Points at another node's inputs. */
	enter(slots: Readonly<Record<string, number>>): void {
		this.slots = slots;
		this.lacks = false;
		this.idle = false;
		this.assumes = null;
		if (this.wants.length > 0) this.wants = [];
		if (this.reads) this.reads.length = 0;
	}

	private read(id: Input): Outcome {
		const slot = this.slotOf.get(id)!;
		if (this.reads) this.declared(id, slot);
		const value = this.values[slot];
		if (value === undefined) this.lacks = true;
		else if (value === null) this.idle = true;
		return value;
	}

	/** Notes a read while telling. Every graph is told first, so a run or a draw need not ask again whether it is declared. */
	private declared(id: string, slot: number): void {
		if (!Object.hasOwn(this.slots, id)) throw new TypeError(`${id} is read but not declared as an input`);
		this.reads!.push(slot);
	}

	/** A number; NaN when it is not known. */
	number(id: Input): number {
		const value = this.read(id);
		return typeof value === 'number' ? value : Number.NaN;
	}

	/** A choice or other text; undefined when it is not known. */
	choice(id: Input): string | undefined {
		const value = this.read(id);
		return typeof value === 'string' ? value : undefined;
	}

	/** A list of whatever the answer holds; undefined when it is not known. */
	list<T>(id: Input): readonly T[] | undefined {
		const value = this.read(id);
		return Array.isArray(value) ? value : undefined;
	}

	/** The value of a hidden node (a curve made ready, a cycle run); undefined when it is not known. */
	made<T>(id: Input): T | undefined {
		const value = this.read(id);
		return value === undefined || value === null ? undefined : (value as unknown as T);
	}

	/** Whatever is there, without making its absence a lack: for expressions, which decide themselves. */
	peek(id: Input): Outcome {
		const slot = this.slots[id];
		if (slot === undefined) throw new TypeError(`${id} is read but not declared as an input`);
		this.reads?.push(slot);
		return this.values[slot];
	}

	/** Says that a usual value stands in, by the name shown in `assumed`. */
	assume(name: string): void {
		this.assumes = name;
	}

	/** Forgets what was read so far: it did not go into the value. */
	forget(): void {
		if (this.reads) this.reads.length = 0;
	}

	/** Whether something is known, without making its absence a lack. */
	has(id: Input): boolean {
		const slot = this.slots[id];
		if (slot === undefined) throw new TypeError(`${id} is asked for but not declared as an input`);
		const value = this.values[slot];
		return value !== undefined && value !== null;
	}

	/** Whether something does not apply here (an answer not in effect). */
	isIdle(id: Input): boolean {
		const slot = this.slots[id];
		return slot !== undefined && this.values[slot] === null;
	}

	/** Says that the node cannot be told without this answer, though the answer's absence was not read. */
	lack(answer: string): undefined {
		this.lacks = true;
		this.wants.push(answer);
		return undefined;
	}
}
