import { evaluate, type State, valueIn } from '../graph/solve.ts';
import type { Car } from './car.ts';

/** The car of a solved sheet. An id that the model does not have is not known; what was looked at goes into `read`. */
export function carOf(state: State, read = new Set<string>()): Car {
	const { graph } = state;
	return {
		value: id => {
			read.add(id);
			return valueIn(state, id);
		},
		at(id, replaced) {
			read.add(id);
			const known = Object.keys(replaced).every(name => graph.slotOf.has(name));
			return known && graph.slotOf.has(id) ? evaluate(state, [id], replaced)[0] : undefined;
		},
	};
}
