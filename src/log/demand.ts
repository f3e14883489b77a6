import type { Declared } from './declared.ts';
import type { Readings } from './series.ts';
import { sortedPercentile } from './statistics.ts';
import { Summary } from './summary.ts';

/** The channel that shows the driver's demand. */
export type DemandSource = 'pedal' | 'throttle' | 'manifold';

/** The pedal and the throttle over all of the running so far: what demand is, and where it is lowest and widest. */
export class DemandTracker {
	private readonly extremes = { pedal: new Extremes(), throttle: new Extremes() };
	private readonly declared: Declared['demand'];

	constructor(declared: Declared['demand']) {
		this.declared = declared;
	}

	/** Takes readings while the engine runs. */
	take(channel: 'pedal' | 'throttle', readings: Readings): void {
		const { value } = readings;
		for (let index = 0; index < value.length; index++) this.extremes[channel].take(value[index]!);
	}

	/** The channel that shows demand, by all readings so far. */
	get source(): DemandSource {
		if (this.extremes.pedal.count > 2) return 'pedal';
		const { throttle } = this.extremes;
		return throttle.count > 2 && throttle.span >= this.declared.throttle_span ? 'throttle' : 'manifold';
	}

	/** 1: the lowest while running; undefined where manifold pressure stands in. */
	get lowest(): number | undefined {
		const { source } = this;
		return source === 'manifold' ? undefined : this.extremes[source].lowest;
	}

	/** 1: the demand from which it counts as a pull. */
	get full(): number {
		const { source } = this;
		if (source === 'manifold') return this.declared.of_ambient;
		const { lowest, widest } = this.extremes[source];
		return Math.max(this.declared.least, lowest + this.declared.of_span * (widest - lowest));
	}
}

/** The third lowest and third highest of many readings, and their 5th to 95th percentiles: one reading decides nothing. */
class Extremes {
	private readonly low: number[] = [];
	private readonly high: number[] = [];
	private readonly summary = new Summary();
	private spanAt = -1;
	private spanNow = Number.NaN;
	count = 0;

	take(value: number): void {
		this.count++;
		this.summary.take(value);
		if (!(value >= this.low[2]!)) keep(this.low, value);
		if (!(-value >= this.high[2]!)) keep(this.high, -value);
	}

	get lowest(): number {
		return this.low.at(-1)!;
	}

	get widest(): number {
		return -this.high.at(-1)!;
	}

	/** Worked out once for as many readings as there are: it is asked for over and over. */
	get span(): number {
		if (this.spanAt !== this.count) {
			const { values } = this.summary;
			const sorted = new Float64Array(values).sort();
			this.spanNow = sortedPercentile(sorted, 0.95) - sortedPercentile(sorted, 0.05);
			this.spanAt = this.count;
		}
		return this.spanNow;
	}
}

/** Keeps the three least, in order. */
function keep(least: number[], value: number): void {
	if (least.length === 3 && value >= least[2]!) return;
	least.push(value);
	least.sort((a, b) => a - b);
	if (least.length > 3) least.pop();
}
