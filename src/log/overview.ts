import type { Block } from './block.ts';

/** One value of engine speed, at s since the first row. */
export type OverviewPoint = readonly [time: number, speed: number];

/** Points to which the overview is thinned: at twice as many every second one is dropped. */
const pointCount = 1000;

/** Engine speed over a whole log in few points, evenly thinned: for the strip that shows where things happened. */
export class Overview {
	private points: OverviewPoint[] = [];
	private every = 1;
	private turn = 0;

	take({ time, channels }: Block): void {
		const speed = channels.get('engine_speed');
		if (!speed) return;
		for (let row = 0; row < time.length; row++) {
			if (Number.isNaN(speed[row]) || ++this.turn < this.every) continue;
			this.turn = 0;
			this.points.push([time[row]!, speed[row]!]);
			if (this.points.length < 2 * pointCount) continue;
			this.points = this.points.filter((_, at) => at % 2 === 1);
			this.every *= 2;
		}
	}

	get all(): readonly OverviewPoint[] {
		return this.points;
	}
}
