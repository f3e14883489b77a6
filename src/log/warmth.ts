import type { Declared } from './declared.ts';
import { heldAt, type Readings } from './series.ts';
import type { Ticks } from './ticks.ts';

/** How long the engine ran, and from that and the coolant whether it was warm. */
export class Warmth {
	private ran = 0;
	private lastTime = Number.NaN;
	/** s at which it had run long enough to be warm by its coolant. */
	private longFrom = Number.POSITIVE_INFINITY;
	private readonly declared: Declared;

	constructor(declared: Declared) {
		this.declared = declared;
	}

	/** Takes the ticks up to a time; those taken before are left out. */
	take({ time, speed, unbroken }: Ticks, until: number): void {
		for (let tick = 0; tick < time.length && time[tick]! <= until; tick++) {
			if (time[tick]! <= this.lastTime) continue;
			if (unbroken[tick] === 1 && speed[tick]! > this.declared.running.speed)
				this.ran += Math.min(time[tick]! - (Number.isNaN(this.lastTime) ? time[tick]! : this.lastTime), 5);
			this.lastTime = time[tick]!;
			if (this.ran >= this.declared.warm.after) this.longFrom = Math.min(this.longFrom, time[tick]!);
		}
	}

	isWarm(coolant: Readings, at: number): boolean {
		return this.isWarmWith(heldAt(coolant, at, 60), at);
	}

	/** The same with the coolant temperature at hand. */
	isWarmWith(now: number, at: number): boolean {
		const { warm } = this.declared;
		return now > warm.at_once || (now > warm.coolant && at >= this.longFrom);
	}
}
