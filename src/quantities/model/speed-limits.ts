import { limit, quantity } from '../quantity.ts';
import { speedRange } from './ranges.ts';

/** Whether the engine is unboosted: it climbs in speed where a boosted one climbs in boost. */
function unboosted(q: { choice(id: string): string | undefined }): boolean | undefined | null {
	const kind = q.choice('boost.kind');
	return kind === undefined ? undefined : kind === 'none' ? true : null;
}

const climbing = {
	kind: 'rotation',
	inputs: ['boost.kind'],
	source: ['root'],
	nature: 'estimate',
	when: unboosted,
} as const;
const atBestPower = { vary: 'engine.peak_rpm', ...speedRange } as const;
const atRedline = { vary: 'engine.redline', ...speedRange } as const;

export const injectors = limit({
	...climbing,
	id: 'injectors.speed_limit',
	label: 'injector rpm limit',
	formula: 'the engine speed at which duty reaches duty_limit, filling held',
	limit: { ...atBestPower, until: 'injectors.duty', reaches: 'injectors.duty_limit', rising: true },
});

export const pump = limit({
	...climbing,
	id: 'fuel.pump_speed_limit',
	label: 'pump rpm limit',
	formula: 'the engine speed at which the pump margin reaches 0, filling held',
	limit: { ...atBestPower, until: 'fuel.pump_margin', reaches: 0, rising: false },
});

export const meter = limit({
	...climbing,
	id: 'sensors.meter_speed_limit',
	label: 'air meter rpm limit',
	formula: "the engine speed at which the meter's headroom reaches 0, filling held",
	limit: { ...atBestPower, until: 'sensors.meter_headroom', reaches: 0, rising: false },
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
	...climbing,
	id: 'engine.piston_speed_limit',
	label: 'piston speed rpm limit',
	formula: 'the redline at which mean piston speed reaches what the pistons stand',
	limit: { ...atRedline, until: 'engine.mean_piston_speed', reaches: 'engine.piston_speed_most', rising: true },
});

/** A shaft is kept under three quarters of its whip speed. Common practice. */
export const shaftMost = quantity({
	id: 'driveline.shaft_speed_most',
	label: 'highest driveshaft speed',
	kind: 'rotation',
	inputs: ['driveline.shaft_critical_speed'],
	formula: '0.75 x critical speed',
	source: ['practice'],
	nature: 'estimate',
	compute: q => 0.75 * q.number('driveline.shaft_critical_speed'),
});

export const shaft = limit({
	...climbing,
	id: 'driveline.shaft_speed_limit',
	label: 'driveshaft rpm limit',
	formula: 'the redline at which the shaft in top reaches three quarters of its whip speed',
	limit: {
		...atRedline,
		until: 'driveline.shaft_speed_at_redline',
		reaches: 'driveline.shaft_speed_most',
		rising: true,
	},
});
