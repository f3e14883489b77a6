import { filtered, mapped, type Readings } from './series.ts';
import { type Channels, heldAtEach } from './ticks.ts';

/**
 * Channels with those that follow from others: boost (gauge) from manifold pressure (absolute) or the reverse, by
 * the ambient pressure there is. Worked out once.
 */
export function withDerived(store: Channels, ambient: number | undefined): Channels {
	const made = new Map<string, Readings>();
	const derive = (id: string): Readings => {
		const logged = store.of(id);
		if (logged.time.length > 0 || ambient === undefined) return logged;
		if (id === 'boost') return mapped(store.of('manifold_pressure'), pressure => pressure - ambient);
		if (id === 'manifold_pressure') return mapped(store.of('boost'), pressure => pressure + ambient);
		return logged;
	};
	return {
		of(id) {
			let found = made.get(id);
			if (!found) made.set(id, (found = derive(id)));
			return found;
		},
	};
}

/** Readings taken while the engine runs. */
export function whileRunning(readings: Readings, speed: Readings, running: number): Readings {
	const rpm = heldAtEach(speed, readings.time, 2.5);
	return filtered(readings, index => rpm[index]! > running);
}
