import type { State } from '../graph/solve.ts';

/** Whether the charge temperature of a log is that of what the engine draws in. */
export function isInCharge({ values, graph }: State): boolean {
	const value = (id: string) => values[graph.slotOf.get(id)!];
	const place = value('sensors.air_temp_place');
	return (
		value('boost.kind') === 'none' ||
		place === 'after-intercooler' ||
		(place === 'in-air-meter' && value('sensors.meter_place') === 'blow-through')
	);
}
