import { fullLoadCycle } from '../../physics/full-load.ts';
import type { FullLoad } from '../../physics/full-load-engine.ts';
import { knockBand, knockIntegral } from '../../physics/knock.ts';
import { limit, quantity } from '../quantity.ts';
import type { Cycle } from './combustion.ts';
import { boostLimitBase, varyingBoost } from './limit-ranges.ts';

/** The point of the full-load line that is nearest to knock: the integral there, and the engine speed, rpm. */
interface KnockPoint {
	readonly integral: number;
	readonly speed: number;
}

/** Share of ethanol by volume above which octane no longer says when a fuel ignites by itself: outside the correlation. */
const maxEthanol = 0.2;

/** Advance is interpolated from best power to the torque peak, and extrapolated below it by at most half that distance. */
const maxExtrapolation = 1.5;

export const worst = quantity({
	id: 'engine.knock_worst',
	label: 'point closest to knock',
	kind: 'hidden',
	expensive: true,
	inputs: [
		'engine.cycle',
		'engine.peak_torque_rpm',
		'engine.torque_rise',
		'boost.kind',
		'boost.full_rpm',
		'ignition.torque_peak_drop',
		'fuel.ethanol_share',
		'fuel.octane_ron',
	],
	formula: 'best power, torque peak and full boost: the one nearest to knock',
	source: ['douaud-eyzat', 'livengood'],
	nature: 'estimate',
	compute: q => {
		if (q.number('fuel.ethanol_share') > maxEthanol) return null;
		const cycle = q.made<Cycle>('engine.cycle');
		const ron = q.number('fuel.octane_ron');
		const torquePeak = q.number('engine.peak_torque_rpm');
		const fillingAtPeak = 1 + (q.number('engine.torque_rise') - 1) / 2;
		const drop = q.number('ignition.torque_peak_drop');
		const fullBoost = q.choice('boost.kind') === 'none' ? 0 : q.number('boost.full_rpm');
		if (!cycle) return undefined;
		const { engine, trace } = cycle;
		const best = { integral: knockIntegral(trace, engine.speed, ron), speed: engine.speed };
		const speeds = new Set([Math.max(torquePeak, fullBoost), fullBoost]);
		const others = [...speeds].filter(speed => speed > 0 && speed < engine.speed);
		const pointAt = (speed: number): KnockPoint => {
			const towardPeak =
				torquePeak < engine.speed
					? Math.min(maxExtrapolation, (engine.speed - speed) / (engine.speed - torquePeak))
					: 0;
			const engineThere: FullLoad = {
				...engine,
				speed,
				advance: engine.advance - drop * towardPeak,
				volumetricEfficiency: engine.volumetricEfficiency * (1 + (fillingAtPeak - 1) * Math.min(1, towardPeak)),
			};
			return { integral: knockIntegral(fullLoadCycle(engineThere), speed, ron), speed };
		};
		const all = [best, ...others.map(pointAt)];
		return all.reduce((worse, next) => (next.integral > worse.integral ? next : worse)) as unknown as never;
	},
});

export const integral = quantity({
	id: 'engine.knock_integral',
	label: 'knock integral',
	kind: 'ratio',
	expensive: true,
	inputs: ['engine.knock_worst'],
	formula:
		'Douaud and Eyzat induction time over the core of the end gas, intake closing to 90 % burnt, at the worst of best power, torque peak and full boost (filling there up by half the torque rise, advance down by the drop asked for); true value x 0.6 to x 1.6, the spread of the correlation over engines and fuels and of one cycle against the next; leaves out heat from the end gas, cooling by evaporation, back pressure of a turbine; made for gasoline, so that over 20 % ethanol (E85) there is no figure: listen and log',
	source: ['douaud-eyzat', 'livengood'],
	nature: 'estimate',
	band: [knockBand.low, knockBand.high],
	shownBy: 'ignition.knock_seen',
	compute: q => q.made<KnockPoint>('engine.knock_worst')?.integral,
});

export const speed = quantity({
	id: 'engine.knock_speed',
	label: 'rpm closest to knock',
	kind: 'rotation',
	expensive: true,
	inputs: ['engine.knock_worst'],
	formula: 'the engine speed at which the knock integral is highest: best power, torque peak or full boost',
	source: ['douaud-eyzat', 'livengood'],
	nature: 'estimate',
	compute: q => q.made<KnockPoint>('engine.knock_worst')?.speed,
});

const ofIntegral = {
	kind: 'ratio',
	expensive: true,
	inputs: ['engine.knock_integral'],
	source: ['douaud-eyzat'],
	nature: 'estimate',
} as const;

export const integralLow = quantity({
	...ofIntegral,
	id: 'engine.knock_integral_low',
	label: 'knock integral, low end',
	formula: '0.6 x knock integral: the low end of its band',
	compute: q => knockBand.low * q.number('engine.knock_integral'),
});

export const integralHigh = quantity({
	...ofIntegral,
	id: 'engine.knock_integral_high',
	label: 'knock integral, high end',
	formula: '1.6 x knock integral: the high end of its band',
	compute: q => knockBand.high * q.number('engine.knock_integral'),
});

export const advanceLimit = limit({
	id: 'engine.knock_limited_advance',
	label: 'knock-limited advance',
	kind: 'angle',
	expensive: true,
	inputs: [],
	formula: 'the advance at which the knock integral reaches 1',
	source: ['root'],
	nature: 'estimate',
	limit: {
		vary: 'ignition.full_load_advance',
		until: 'engine.knock_integral',
		reaches: 1,
		rising: true,
		from: -10,
		to: 32,
	},
});

export const boostLimit = limit({
	...boostLimitBase,
	id: 'engine.knock_boost_limit',
	label: 'knock boost limit',
	ends: ['engine.knock_boost_limit_low', 'engine.knock_boost_limit_high'],
	expensive: true,
	formula: 'the boost at which the knock integral reaches 1, advance held',
	limit: { ...varyingBoost, until: 'engine.knock_integral', reaches: 1, rising: true },
});

const ofBand = { ...boostLimitBase, expensive: true } as const;

export const boostLimitLow = limit({
	...ofBand,
	id: 'engine.knock_boost_limit_low',
	label: 'knock boost limit, low end',
	formula: "the boost at which the high end of the knock integral's band reaches 1",
	limit: { ...varyingBoost, until: 'engine.knock_integral_high', reaches: 1, rising: true },
});

export const boostLimitHigh = limit({
	...ofBand,
	id: 'engine.knock_boost_limit_high',
	label: 'knock boost limit, high end',
	formula: "the boost at which the low end of the knock integral's band reaches 1",
	limit: { ...varyingBoost, until: 'engine.knock_integral_low', reaches: 1, rising: true },
});

/** Says what the sheet shows, not what the engine does: not tried yet is no, so that what is not known never passes by itself. */
export const shownClean = quantity({
	id: 'ignition.shown_clean',
	label: 'shown clean',
	kind: 'yes-no',
	inputs: ['ignition.knock_seen'],
	formula: 'a full pull at the target was heard or logged without knock; nobody has tried yet: no',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.has('ignition.knock_seen') && q.choice('ignition.knock_seen') === 'clean',
});
