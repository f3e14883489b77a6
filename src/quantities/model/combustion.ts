import type { CycleTrace } from '../../physics/cycle.ts';
import { fullLoadCycle } from '../../physics/full-load.ts';
import type { FullLoad } from '../../physics/full-load-engine.ts';
import type { Cylinder } from '../../physics/slider-crank.ts';
import { quantity } from '../quantity.ts';

/** The cylinder model's own error on peak pressure: what a flame 15 % slower or faster makes of it. A test holds that. */
const pressureBand = [0.85, 1.16] as const;

/** The cylinder at best power: what it was run with, and what came of it. */
export interface Cycle {
	readonly engine: FullLoad;
	readonly trace: CycleTrace;
}

export const cycle = quantity({
	id: 'engine.cycle',
	label: 'cylinder cycle',
	kind: 'hidden',
	expensive: true,
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
		'fuel.ethanol_share',
		'ignition.full_load_advance',
	],
	formula:
		'unburnt and burnt gas from intake closing to exhaust opening: a flame by state and speed, Wiebe burn, Woschni loss',
	source: ['heywood', 'hires', 'csallner'],
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
				ethanol: q.number('fuel.ethanol_share'),
			},
			advance: q.number('ignition.full_load_advance'),
			toPeak: true,
		};
		if (!cylinder) return undefined;
		const engine = { cylinder, ...state };
		return { engine, trace: fullLoadCycle(engine) } as unknown as never;
	},
});

const fromCycle = { source: ['heywood'], nature: 'estimate', expensive: true, inputs: ['engine.cycle'] } as const;

export const peakPressure = quantity({
	...fromCycle,
	id: 'engine.peak_pressure',
	label: 'peak cylinder pressure',
	kind: 'absolute-pressure',
	unit: 'Pa',
	formula:
		'highest pressure of the cylinder model at full-load advance and peak_rpm; true value x 0.85 to 1.16, as flame, walls and residual are usual ones, not measured on this engine',
	band: pressureBand,
	compute: q => q.made<Cycle>('engine.cycle')?.trace.peakPressure,
});

export const peakAngle = quantity({
	...fromCycle,
	id: 'engine.peak_pressure_angle',
	label: 'angle of peak pressure',
	kind: 'angle',
	range: [-180, 120],
	formula: 'where it lies, after top dead center; 4 deg either way, as the flame is a usual one',
	compute: q => q.made<Cycle>('engine.cycle')?.trace.peakAngle,
});
