import { fullLoadCycle } from '../../physics/full-load.ts';
import type { FullLoad } from '../../physics/full-load-engine.ts';
import { knockBand, knockIntegral } from '../../physics/knock.ts';
import { limit, quantity } from '../quantity.ts';
import { boosted } from './boost.ts';
import type { Cycle } from './combustion.ts';
import { boostRange, ofBoost } from './ranges.ts';

/** Where on the full-load line it comes nearest to knock: the integral there, and the engine speed. */
interface Worst {
	readonly integral: number;
	readonly speed: number;
}

/** From here on, by volume, a fuel's octane number no longer says when it goes off by itself: outside the correlation. */
const mostEthanol = 0.2;

/** The spark curve is followed below the torque peak too, but not further than half as far again. */
const mostBack = 1.5;

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
		if (q.number('fuel.ethanol_share') > mostEthanol) return null;
		const cycle = q.made<Cycle>('engine.cycle');
		const ron = q.number('fuel.octane_ron');
		const torquePeak = q.number('engine.peak_torque_rpm');
		const filling = 1 + (q.number('engine.torque_rise') - 1) / 2;
		const drop = q.number('ignition.torque_peak_drop');
		const fullBoost = q.choice('boost.kind') === 'none' ? 0 : q.number('boost.full_rpm');
		if (!cycle) return undefined;
		const { engine, trace } = cycle;
		const best = { integral: knockIntegral(trace, engine.speed, ron), speed: engine.speed };
		const speeds = new Set([Math.max(torquePeak, fullBoost), fullBoost]);
		const others = [...speeds].filter(speed => speed > 0 && speed < engine.speed);
		const along = (speed: number): Worst => {
			const back =
				torquePeak < engine.speed ? Math.min(mostBack, (engine.speed - speed) / (engine.speed - torquePeak)) : 0;
			const there: FullLoad = {
				...engine,
				speed,
				advance: engine.advance - drop * back,
				volumetricEfficiency: engine.volumetricEfficiency * (1 + (filling - 1) * Math.min(1, back)),
				toNinety: true,
			};
			return { integral: knockIntegral(fullLoadCycle(there), speed, ron), speed };
		};
		const all = [best, ...others.map(along)];
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
	compute: q => q.made<Worst>('engine.knock_worst')?.integral,
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
	compute: q => q.made<Worst>('engine.knock_worst')?.speed,
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
	id: 'engine.knock_boost_limit',
	label: 'knock boost limit',
	ends: ['engine.knock_boost_limit_low', 'engine.knock_boost_limit_high'],
	kind: 'pressure',
	expensive: true,
	inputs: ['boost.kind'],
	formula: 'the boost at which the knock integral reaches 1, advance held',
	source: ['root'],
	nature: 'estimate',
	limit: { vary: 'boost.target', until: 'engine.knock_integral', reaches: 1, rising: true, ...boostRange },
	when: boosted,
});

const ofBand = { ...ofBoost, expensive: true } as const;

export const boostLimitLow = limit({
	...ofBand,
	id: 'engine.knock_boost_limit_low',
	label: 'knock boost limit, low end',
	formula: "the boost at which the high end of the knock integral's band reaches 1",
	limit: { vary: 'boost.target', until: 'engine.knock_integral_high', reaches: 1, rising: true, ...boostRange },
});

export const boostLimitHigh = limit({
	...ofBand,
	id: 'engine.knock_boost_limit_high',
	label: 'knock boost limit, high end',
	formula: "the boost at which the low end of the knock integral's band reaches 1",
	limit: { vary: 'boost.target', until: 'engine.knock_integral_low', reaches: 1, rising: true, ...boostRange },
});

/** A fact about the sheet, not about the engine: nobody has looked is no, so that what is not known never passes by itself. */
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
