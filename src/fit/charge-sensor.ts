import { type State, valueIn } from '../graph/solve.ts';

/** Whether the charge temperature of a log is that of what the engine draws in. */
export function isInCharge(state: State): boolean {
	const place = valueIn(state, 'sensors.air_temp_place');
	return (
		valueIn(state, 'boost.kind') === 'none' ||
		place === 'after-intercooler' ||
		(place === 'in-air-meter' && valueIn(state, 'sensors.meter_place') === 'blow-through')
	);
}
