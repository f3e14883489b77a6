import type { Declared } from './declared.ts';
import { heldAt, type Readings } from './series.ts';
import type { Ticks } from './ticks.ts';

/** How long the engine ran, and from that and the coolant whether it was warm. */
export class Warmth {
	private ran = 0;
	private lastTime = Number.NaN;
	private readonly times: number[] = [];
	private readonly sums: number[] = [];
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
			// Once a second is fine enough, and bounded.
			if (this.times.length === 0 || time[tick]! - this.times.at(-1)! >= 1) {
				this.times.push(time[tick]!);
				this.sums.push(this.ran);
			}
		}
	}

	/** s that the engine ran up to a time. */
	ranBy(at: number): number {
		let [low, high] = [0, this.times.length];
		while (low < high) {
			const middle = (low + high) >> 1;
			if (this.times[middle]! <= at) low = middle + 1;
			else high = middle;
		}
		return low === 0 ? 0 : this.sums[low - 1]!;
	}

	isWarm(coolant: Readings, at: number): boolean {
		return this.isWarmWith(heldAt(coolant, at, 60), at);
	}

	/** The same with the coolant temperature at hand. */
	isWarmWith(now: number, at: number): boolean {
		const { warm } = this.declared;
		return now > warm.at_once || (now > warm.coolant && this.ranBy(at) >= warm.after);
	}
}
