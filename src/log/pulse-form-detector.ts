import { numberOf } from './car.ts';
import type { Chunk } from './chunk.ts';
import { airOf } from './pull/air.ts';
import { type PulseForm, usualPulse } from './pulse-form.ts';
import { heldAt, within } from './series.ts';
import { median } from './statistics.ts';
import { Summary } from './summary.ts';

const others: readonly PulseForm[] = [
	{ dead: false, perCycle: 1 },
	{ dead: true, perCycle: 2 },
	{ dead: false, perCycle: 2 },
];

/** Factors: off by no more than the first the usual form stands, for air and injector figure may be wrong; another fits within the second. */
const [tolerance, fitTolerance] = [1.3, 1.15];

/**
 * Detects how a pulse is logged from the idle: which form comes to the fuel that the idle's air burns. Air as logged, else the
 * usual air of an idle. The usual form stands unless it is well off and another fits.
 */
export class PulseFormDetector {
	private readonly pulses = new Summary(2048);
	private readonly open = new Summary(2048);
	private deadTime: number | undefined;

	/** Takes the idles in a part of a log. */
	take(chunk: Pick<Chunk, 'episodes' | 'of' | 'car' | 'ambient'>): void {
		this.deadTime = numberOf(chunk.car, 'injectors.dead_time');
		const openTimeAt = idleOpenTime(chunk);
		const hasLambda = chunk.of('lambda_1').time.length > 0;
		for (const { kind, from, to, warm } of chunk.episodes) {
			// Cold, an engine burns rich; how rich, lambda shows.
			if (kind !== 'idle' || !(warm || hasLambda)) continue;
			const { time, value } = within(chunk.of('injector_pulse'), from, to);
			const air = airOf({ car: chunk.car, of: id => within(chunk.of(id), from - 2, to) });
			for (const [index, at] of time.entries()) {
				const open = openTimeAt(at, air ? heldAt(air.air, at, 2) : undefined);
				if (open === undefined || !Number.isFinite(open)) continue;
				this.pulses.take(value[index]!);
				this.open.take(open);
			}
		}
	}

	get form(): PulseForm {
		const off = (form: PulseForm) => Math.abs(Math.log(this.factor(form)));
		if (!this.isSeen || off(usualPulse) < Math.log(tolerance)) return usualPulse;
		const [best] = [...others].sort((a, b) => off(a) - off(b)) as [PulseForm];
		return off(best) < Math.log(fitTolerance) ? best : usualPulse;
	}

	/** What it was taken for and why, in a sentence. */
	get detected(): string {
		const { dead, perCycle } = this.form;
		const taken = `the injector pulse is taken ${dead ? 'with' : 'without'} the dead time in it, ${perCycle === 1 ? 'once' : 'twice'} a cycle`;
		if (!this.isSeen) return `${taken}, which is usual: no idle, or not enough of the injectors, to hold it against`;
		const shown = `at idle it is ${ms(median(this.pulses.values))}, and that form would be ${ms(this.expected(this.form))}`;
		return Math.abs(Math.log(this.factor(this.form))) < Math.log(tolerance)
			? `${taken}: ${shown}`
			: `${taken}, which is usual: ${shown}, and no other form fits better than that`;
	}

	private get isSeen(): boolean {
		return this.pulses.count >= 5 && this.deadTime !== undefined;
	}

	/** The pulse that would be logged in a form, s. */
	private expected({ dead, perCycle }: PulseForm): number {
		return median(this.open.values) / perCycle + (dead ? this.deadTime! : 0);
	}

	private factor(form: PulseForm): number {
		return median(this.pulses.values) / this.expected(form);
	}
}

const ms = (seconds: number): string => `${(1000 * seconds).toFixed(1)} ms`;

/** s in a cycle that an injector must be open for the air of an idle. */
function idleOpenTime({ of, car, ambient }: Pick<Chunk, 'of' | 'car' | 'ambient'>) {
	const [stoichiometric, count, rated, at, usualAir, usualAcross] = [
		'fuel.stoichiometric_ratio',
		'injectors.count',
		'injectors.rated_flow',
		'injectors.rated_pressure',
		'engine.idle_air_flow',
		'injectors.idle_pressure_across',
	].map(id => numberOf(car, id) ?? Number.NaN) as [number, number, number, number, number, number];
	return (time: number, logged: number | undefined): number | undefined => {
		const rpm = heldAt(of('engine_speed'), time);
		const lambda = heldAt(of('lambda_1'), time);
		const rail = heldAt(of('fuel_pressure'), time) - (heldAt(of('manifold_pressure'), time) - (ambient ?? Number.NaN));
		const flow = rated * Math.sqrt((Number.isFinite(rail) ? rail : usualAcross) / at);
		const fuel = (logged ?? usualAir) / ((Number.isFinite(lambda) ? lambda : 1) * stoichiometric);
		return (fuel * 120) / (rpm * count * flow);
	};
}
