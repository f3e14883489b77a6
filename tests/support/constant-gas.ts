import type { Gas } from '../../src/physics/gas.ts';

/** A gas whose ratio of specific heats never changes; its gas constant in J/kgK. For textbook cases. */
export function constantGas(gamma: number, constant: number): Gas {
	const heat = (gamma * constant) / (gamma - 1);
	return { constant, c0: heat, c1: 0, c2: 0, c3: 0, c4: 0, back: 0, from: 298.15, to: 298.15, zero: -heat * 298.15 };
}
