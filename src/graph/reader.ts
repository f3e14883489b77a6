import type { Outcome } from '../expressions/tree.ts';

/**
 * What a formula sees of the other nodes. A read of something not known gives a stand-in (NaN, undefined), so that one
 * evaluation finds everything that is missing; what the formula makes of a stand-in does not count.
 */
export interface Reads<Input extends string = string> {
	/** A number; NaN when it is not known. */
	number(id: Input): number;
	/** A choice or other text; undefined when it is not known. */
	choice(id: Input): string | undefined;
	/** A list of whatever the answer holds; undefined when it is not known. */
	list<T>(id: Input): readonly T[] | undefined;
	/** The value of a hidden node (a curve made ready, a cycle run); undefined when it is not known. */
	made<T>(id: Input): T | undefined;
	/** Whether something is known, without making its absence a lack. */
	has(id: Input): boolean;
	/** Whether something applies here, known or not (an answer in effect). */
	applies(id: Input): boolean;
	/** Says that a usual value stands in, by the name shown in `assumed`. */
	assume(name: string): void;
	/** Says that the node cannot be evaluated without this input, though its absence was not read. */
	lack(input: string): undefined;
}

const none: ReadonlySet<string> = new Set();

/** Reads the values of one evaluation; `enter` points it at the next node. */
export class Reader implements Reads {
	/** Something read was not known. */
	lacks = false;
	/** Something read does not apply here. */
	inapplicable = false;
	/** Why the formula refused what it read, or what else it came to than a number. */
	refusal: string | null = null;
	/** Slots read by the present node; kept only while tracing. */
	readonly reads: number[] | null;
	/** Inputs that the node itself says it lacks (a curve that ends too early). */
	wants: string[] = [];
	/** What the node itself takes for granted: a usual value in place of its answer. */
	assumes: string | null = null;
	private readonly values: readonly Outcome[];
	private readonly slotOf: ReadonlyMap<string, number>;
	private declared: ReadonlySet<string> = none;

	constructor(slotOf: ReadonlyMap<string, number>, values: readonly Outcome[], tracing: boolean) {
		this.slotOf = slotOf;
		this.values = values;
		this.reads = tracing ? [] : null;
	}

	/** Points at another node, by the ids that it may read. */
	enter(declared: ReadonlySet<string>): void {
		this.declared = declared;
		this.lacks = false;
		this.inapplicable = false;
		this.refusal = null;
		this.assumes = null;
		if (this.wants.length > 0) this.wants = [];
		this.forget();
	}

	private read(id: string): Outcome {
		const slot = this.slotOf.get(id)!;
		// Every graph is traced first, so a draw need not ask again whether a read is declared.
		if (this.reads) this.note(id, slot);
		const value = this.values[slot];
		if (value === undefined) this.lacks = true;
		else if (value === null) this.inapplicable = true;
		return value;
	}

	private note(id: string, slot: number): void {
		if (!this.declared.has(id)) throw new TypeError(`${id} is read but not declared as an input`);
		this.reads!.push(slot);
	}

	number(id: string): number {
		// Most reads are of a number that is known: a call less for each is 4 % of the draws.
		const known = this.reads ? null : this.values[this.slotOf.get(id)!];
		if (typeof known === 'number') return known;
		const value = this.read(id);
		return typeof value === 'number' ? value : Number.NaN;
	}

	choice(id: string): string | undefined {
		const value = this.read(id);
		return typeof value === 'string' ? value : undefined;
	}

	list<T>(id: string): readonly T[] | undefined {
		const value = this.read(id);
		return Array.isArray(value) ? value : undefined;
	}

	made<T>(id: string): T | undefined {
		const value = this.read(id);
		return value === undefined || value === null ? undefined : (value as unknown as T);
	}

	has(id: string): boolean {
		const value = this.present(id);
		return value !== undefined && value !== null;
	}

	applies(id: string): boolean {
		return this.present(id) !== null;
	}

	private present(id: string): Outcome {
		if (!this.declared.has(id)) throw new TypeError(`${id} is asked for but not declared as an input`);
		return this.values[this.slotOf.get(id)!];
	}

	lack(input: string): undefined {
		this.lacks = true;
		this.wants.push(input);
		return undefined;
	}

	/** Whatever is there, without making its absence a lack: for expressions, which decide themselves. */
	peek(id: string): Outcome {
		const slot = this.slotOf.get(id)!;
		if (this.reads) this.note(id, slot);
		return this.values[slot];
	}

	assume(name: string): void {
		this.assumes = name;
	}

	/** Forgets what was read so far: it did not go into the value. */
	forget(): void {
		// To set the length of a list that is empty already takes longer than to look.
		if (this.reads && this.reads.length > 0) this.reads.length = 0;
	}
}
