import { type Machine, machine } from '../../src/files/machine.ts';

/** A machine on which waiting takes no time: its clock is moved on instead. `waited` tells by how many ms. */
export function quickClock(): { on: Machine; waited: () => number } {
	let ms = 0;
	const on: Machine = {
		...machine,
		now: () => Date.now() + ms,
		pause(longer) {
			ms += longer;
		},
	};
	return { on, waited: () => ms };
}
