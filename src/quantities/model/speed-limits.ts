import { limit, quantity } from '../quantity.ts';
import { usableShaftSpeed } from './driveline.ts';
import { speedRange } from './limit-ranges.ts';

/** Whether the engine is unboosted; null, does not apply, where it is boosted: its limits are then sought in boost. */
function unboosted(q: { choice(id: string): string | undefined }): boolean | undefined | null {
	const kind = q.choice('boost.kind');
	return kind === undefined ? undefined : kind === 'none' ? true : null;
}

const speedLimitBase = {
	kind: 'rotation',
	inputs: ['boost.kind'],
	source: ['root'],
	nature: 'estimate',
	when: unboosted,
} as const;
const varyingPeakRpm = { vary: 'engine.peak_rpm', ...speedRange } as const;
const varyingRedline = { vary: 'engine.redline', ...speedRange } as const;

export const injectors = limit({
	...speedLimitBase,
	id: 'injectors.speed_limit',
	label: 'injector rpm limit',
	formula: 'the engine speed at which duty reaches duty_limit, filling held',
	limit: { ...varyingPeakRpm, until: 'injectors.duty', reaches: 'injectors.duty_limit', rising: true },
});

export const pump = limit({
	...speedLimitBase,
	id: 'fuel.pump_speed_limit',
	label: 'pump rpm limit',
	formula: 'the engine speed at which the pump margin reaches 0, filling held',
	limit: { ...varyingPeakRpm, until: 'fuel.pump_margin', reaches: 0, rising: false },
});

export const meter = limit({
	...speedLimitBase,
	id: 'sensors.meter_speed_limit',
	label: 'air meter rpm limit',
	formula: "the engine speed at which the meter's headroom reaches 0, filling held",
	limit: { ...varyingPeakRpm, until: 'sensors.meter_headroom', reaches: 0, rising: false },
});

/** Mean piston speed that is common practice for cast and hypereutectic pistons, and for forged ones, m/s. */
export const pistonMost = quantity({
	id: 'engine.piston_speed_most',
	label: 'highest piston speed',
	kind: 'velocity',
	inputs: ['engine.pistons'],
	formula: '20 m/s cast or hypereutectic, 25 forged',
	source: ['practice'],
	nature: 'estimate',
	compute: q => {
		const pistons = q.choice('engine.pistons');
		return pistons && (pistons === 'forged' ? 25 : 20);
	},
});

export const pistons = limit({
	...speedLimitBase,
	id: 'engine.piston_speed_limit',
	label: 'piston speed rpm limit',
	formula: 'the redline at which mean piston speed reaches what the pistons stand',
	limit: { ...varyingRedline, until: 'engine.mean_piston_speed', reaches: 'engine.piston_speed_most', rising: true },
});

export const shaftMost = quantity({
	id: 'driveline.shaft_speed_most',
	label: 'highest driveshaft speed',
	kind: 'rotation',
	inputs: ['driveline.shaft_critical_speed'],
	formula: '0.75 x critical speed',
	source: ['practice'],
	nature: 'estimate',
	compute: q => usableShaftSpeed * q.number('driveline.shaft_critical_speed'),
});

export const shaft = limit({
	...speedLimitBase,
	id: 'driveline.shaft_speed_limit',
	label: 'driveshaft rpm limit',
	formula: 'the redline at which the shaft in top reaches three quarters of its whip speed',
	limit: {
		...varyingRedline,
		until: 'driveline.shaft_speed_at_redline',
		reaches: 'driveline.shaft_speed_most',
		rising: true,
	},
});
