import type { Declared } from './declared.ts';
import type { Interval } from './pull.ts';
import { within } from './series.ts';
import type { Channels } from './ticks.ts';
import { heldAtEach } from './ticks.ts';

/**
 * How late a lambda sensor is, s: the delay at which it lines up best with the air there is for the fuel injected, over
 * some stretches in which both move. Undefined where it lines up with nothing.
 */
export class Lag {
	private readonly sums: { n: number; x: number; y: number; xx: number; yy: number; xy: number }[];
	private readonly declared: Declared['lag'];

	constructor(declared: Declared['lag']) {
		this.declared = declared;
		const steps = Math.round(declared.most / declared.step) + 1;
		this.sums = Array.from({ length: steps }, () => ({ n: 0, x: 0, y: 0, xx: 0, yy: 0, xy: 0 }));
	}

	take(channels: Channels, lambda: string, [from, to]: Interval): void {
		const measured = within(channels.of(lambda), from, to);
		if (measured.time.length < 8) return;
		for (const [step, sum] of this.sums.entries()) {
			const back = measured.time.map(time => time - step * this.declared.step);
			const air = airPerFuel(channels, back);
			for (let index = 0; index < air.length; index++) {
				const [x, y] = [air[index]!, Math.log(measured.value[index]!)];
				if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
				sum.n++;
				sum.x += x;
				sum.y += y;
				sum.xx += x * x;
				sum.yy += y * y;
				sum.xy += x * y;
			}
		}
	}

	get found(): number | undefined {
		const fits = this.sums.map(({ n, x, y, xx, yy, xy }) => {
			const spread = (n * xx - x * x) * (n * yy - y * y);
			return n < 16 || spread <= 0 ? 0 : (n * xy - x * y) / Math.sqrt(spread);
		});
		const best = fits.indexOf(Math.max(...fits));
		return fits[best]! >= this.declared.fit ? best * this.declared.step : undefined;
	}
}

/** ln of air per fuel, but for a constant: air per cycle over what the injectors were open. */
function airPerFuel(channels: Channels, at: Float64Array): Float64Array {
	const read = (id: string) => heldAtEach(channels.of(id), at, 1);
	const [pulse, duty, flow, manifold, speed] = [
		'injector_pulse',
		'injector_duty',
		'air_flow',
		'manifold_pressure',
		'engine_speed',
	].map(read) as [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];
	return at.map((_, index) => {
		const open = Number.isNaN(pulse[index]!) ? duty[index]! / speed[index]! : pulse[index]!;
		const air = Number.isNaN(flow[index]!) ? manifold[index]! : flow[index]! / speed[index]!;
		return Math.log(air / open);
	});
}
