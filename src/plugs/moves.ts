import type { Circuit } from './circuit.ts';
import type { ReadPin } from './half.ts';
import type { Cavity } from './pairs.ts';

/** Where the wires of the left half belong: to the pin that carries the same circuit on the right one. */
export class Moves {
	/** The right half's pin that a left wire goes to, and the left half's that a right wire takes its wire from. */
	readonly to = new Map<ReadPin, ReadPin>();
	readonly from = new Map<ReadPin, ReadPin>();
	/** A pin of the same circuit that is joined already, for a wire too many of a shared circuit. */
	readonly joined = new Map<Circuit, ReadPin>();
	readonly onLeft = new Set<Circuit>();
	readonly onRight = new Set<Circuit>();

	constructor(all: readonly Cavity[]) {
		// Nothing of the airbags is moved.
		const plain = (pins: readonly ReadPin[]) => pins.filter(({ airbag }) => !airbag);
		const places = all.map(({ left, right }) => ({ left: plain(left), right: plain(right) }));
		const [lefts, rights] = [new Map<Circuit, ReadPin[]>(), new Map<Circuit, ReadPin[]>()];
		for (const { left, right } of places) {
			for (const pin of left) if (pin.circuit) this.onLeft.add(pin.circuit);
			for (const pin of right) if (pin.circuit) this.onRight.add(pin.circuit);
			const same = (pin: ReadPin, others: readonly ReadPin[]) => others.some(({ circuit }) => circuit === pin.circuit);
			for (const pin of left) {
				if (pin.circuit && same(pin, right)) this.joined.set(pin.circuit, pin);
				else if (pin.circuit) lefts.set(pin.circuit, [...(lefts.get(pin.circuit) ?? []), pin]);
			}
			for (const pin of right)
				if (pin.circuit && !same(pin, left)) rights.set(pin.circuit, [...(rights.get(pin.circuit) ?? []), pin]);
		}
		for (const [circuit, pins] of lefts) {
			for (const [at, pin] of pins.entries()) {
				const target = rights.get(circuit)?.[at];
				if (!target) continue;
				this.to.set(pin, target);
				this.from.set(target, pin);
			}
		}
	}
}
