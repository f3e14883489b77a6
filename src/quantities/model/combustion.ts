import type { CycleTrace } from '../../physics/cycle.ts';
import { fullLoadCycle } from '../../physics/full-load.ts';
import { knockBand, knockIntegral } from '../../physics/knock.ts';
import type { Cylinder } from '../../physics/slider-crank.ts';
import { limit, quantity } from '../quantity.ts';
import { boosted } from './boost.ts';
import { boostRange } from './ranges.ts';

/** The cylinder model's own error on peak pressure: what 4 deg more or less of burn angle make of it. A test holds that. */
const pressureBand = [0.88, 1.12] as const;

export const cycle = quantity({
	id: 'engine.cycle',
	kind: 'hidden',
	heavy: true,
	inputs: [
		'engine.cylinder',
		'engine.peak_rpm',
		'engine.intake_closes',
		'boost.manifold_pressure',
		'boost.charge_temp',
		'engine.volumetric_efficiency',
		'fuel.lambda_full_load',
		'fuel.stoichiometric_ratio',
		'fuel.heating_value',
		'ignition.full_load_advance',
	],
	formula: 'one zone from intake closing to exhaust opening: Wiebe burn, Woschni loss',
	source: ['heywood'],
	nature: 'estimate',
	compute: q => {
		const cylinder = q.made<Cylinder>('engine.cylinder');
		const state = {
			speed: q.number('engine.peak_rpm'),
			intakeCloses: q.number('engine.intake_closes'),
			manifoldPressure: q.number('boost.manifold_pressure'),
			chargeTemperature: q.number('boost.charge_temp'),
			volumetricEfficiency: q.number('engine.volumetric_efficiency'),
			lambda: q.number('fuel.lambda_full_load'),
			fuel: {
				stoichiometricRatio: q.number('fuel.stoichiometric_ratio'),
				heatingValue: q.number('fuel.heating_value'),
			},
			advance: q.number('ignition.full_load_advance'),
		};
		return cylinder && !q.lacks ? (fullLoadCycle({ cylinder, ...state }) as never) : undefined;
	},
});

const fromCycle = { source: ['heywood'], nature: 'estimate', heavy: true, inputs: ['engine.cycle'] } as const;

export const peakPressure = quantity({
	...fromCycle,
	id: 'engine.peak_pressure',
	kind: 'absolute-pressure',
	unit: 'Pa',
	formula:
		'highest pressure of the cylinder model at full-load advance and peak_rpm; true value x 0.88 to 1.12, as burn angle, walls and residual are usual ones, not measured on this engine',
	band: pressureBand,
	compute: q => q.made<CycleTrace>('engine.cycle')?.peakPressure,
});

export const peakAngle = quantity({
	...fromCycle,
	id: 'engine.peak_pressure_angle',
	kind: 'angle',
	range: [-180, 120],
	formula: 'where it lies, after top dead centre; 3 deg either way, as the burn angle is a usual one',
	compute: q => q.made<CycleTrace>('engine.cycle')?.peakAngle,
});

export const integral = quantity({
	id: 'engine.knock_integral',
	kind: 'ratio',
	heavy: true,
	inputs: ['engine.cycle', 'engine.peak_rpm', 'fuel.kind', 'fuel.octane_ron'],
	formula:
		'Douaud and Eyzat induction time over the end gas, intake closing to 90 % burnt; true value x 0.6 to x 1.6, the spread of the correlation over engines and fuels; not for E85',
	source: ['douaud-eyzat', 'livengood'],
	nature: 'estimate',
	band: [knockBand.low, knockBand.high],
	compute: q => {
		if (q.choice('fuel.kind') === 'e85') return null;
		const trace = q.made<CycleTrace>('engine.cycle');
		const [speed, ron] = [q.number('engine.peak_rpm'), q.number('fuel.octane_ron')];
		return trace && !q.lacks ? knockIntegral(trace, speed, ron) : undefined;
	},
});

const ofIntegral = {
	kind: 'ratio',
	heavy: true,
	inputs: ['engine.knock_integral'],
	source: ['douaud-eyzat'],
	nature: 'estimate',
} as const;

export const integralLow = quantity({
	...ofIntegral,
	id: 'engine.knock_integral_low',
	formula: '0.6 x knock integral: the low end of its band',
	compute: q => knockBand.low * q.number('engine.knock_integral'),
});

export const integralHigh = quantity({
	...ofIntegral,
	id: 'engine.knock_integral_high',
	formula: '1.6 x knock integral: the high end of its band',
	compute: q => knockBand.high * q.number('engine.knock_integral'),
});

export const advanceLimit = limit({
	id: 'engine.knock_limited_advance',
	kind: 'angle',
	heavy: true,
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
	ends: ['engine.knock_boost_limit_low', 'engine.knock_boost_limit_high'],
	kind: 'pressure',
	heavy: true,
	inputs: ['boost.kind'],
	formula: 'the boost at which the knock integral reaches 1, advance held',
	source: ['root'],
	nature: 'estimate',
	limit: { vary: 'boost.target', until: 'engine.knock_integral', reaches: 1, rising: true, ...boostRange },
	when: boosted,
});

const ofBand = {
	kind: 'pressure',
	heavy: true,
	inputs: ['boost.kind'],
	source: ['root'],
	nature: 'estimate',
	when: boosted,
} as const;

export const boostLimitLow = limit({
	...ofBand,
	id: 'engine.knock_boost_limit_low',
	formula: "the boost at which the high end of the knock integral's band reaches 1",
	limit: { vary: 'boost.target', until: 'engine.knock_integral_high', reaches: 1, rising: true, ...boostRange },
});

export const boostLimitHigh = limit({
	...ofBand,
	id: 'engine.knock_boost_limit_high',
	formula: "the boost at which the low end of the knock integral's band reaches 1",
	limit: { vary: 'boost.target', until: 'engine.knock_integral_low', reaches: 1, rising: true, ...boostRange },
});
