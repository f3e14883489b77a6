import { cycleTime, duty, injectorFlow, injectorFlowNeeded, pulseWidth } from '../../physics/injector.ts';
import { limit, percent, quantity } from '../quantity.ts';
import { boostLimitBase, varyingBoost } from './limit-ranges.ts';

export const across = quantity({
	id: 'injectors.pressure_across',
	label: 'pressure across the injectors',
	kind: 'pressure',
	inputs: ['fuel.rail_set_point', 'boost.kind', 'boost.target'],
	range: [null, null],
	formula: 'set point with a manifold reference; set point - boost with a fixed rail',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('fuel.rail_set_point') - (q.choice('boost.kind') === 'none' ? 0 : q.number('boost.target')),
});

export const flow = quantity({
	id: 'injectors.flow',
	label: 'injector flow',
	kind: 'mass-flow',
	inputs: ['injectors.rated_flow', 'injectors.rated_pressure', 'injectors.pressure_across'],
	formula: 'rated flow x sqrt(pressure across / rated pressure)',
	source: ['orifice'],
	nature: 'exact',
	compute: q =>
		injectorFlow(
			q.number('injectors.rated_flow'),
			q.number('injectors.rated_pressure'),
			q.number('injectors.pressure_across'),
		),
});

const injectionInputs = ['fuel.flow', 'injectors.count', 'engine.peak_rpm', 'injectors.dead_time'] as const;

const injectionOf = (q: { number(id: (typeof injectionInputs)[number]): number }) => ({
	fuelFlow: q.number('fuel.flow'),
	injectors: q.number('injectors.count'),
	rpm: q.number('engine.peak_rpm'),
	deadTime: q.number('injectors.dead_time'),
});

export const pulse = quantity({
	id: 'injectors.pulse_width',
	label: 'injector pulse width',
	kind: 'time',
	inputs: [...injectionInputs, 'injectors.flow'],
	formula: 'fuel per injector and cycle / flow + dead time',
	source: ['definition'],
	nature: 'exact',
	compute: q => pulseWidth(injectionOf(q), q.number('injectors.flow')),
});

export const share = quantity({
	id: 'injectors.duty',
	label: 'injector duty',
	shown: percent,
	kind: 'ratio',
	inputs: ['injectors.pulse_width', 'engine.peak_rpm'],
	formula: 'pulse width / (120 / rpm) at peak_rpm',
	source: ['definition'],
	nature: 'exact',
	compute: q => duty(q.number('injectors.pulse_width'), q.number('engine.peak_rpm')),
});

export const needed = quantity({
	id: 'injectors.flow_needed',
	label: 'injector flow needed',
	kind: 'mass-flow',
	inputs: [...injectionInputs, 'injectors.duty_limit', 'injectors.pressure_across', 'injectors.rated_pressure'],
	formula: 'the rated flow, at rated pressure, that gives duty = duty_limit',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const [across, rated] = [q.number('injectors.pressure_across'), q.number('injectors.rated_pressure')];
		return injectorFlow(injectorFlowNeeded(injectionOf(q), q.number('injectors.duty_limit')), across, rated);
	},
});

export const boostLimit = limit({
	...boostLimitBase,
	id: 'injectors.boost_limit',
	label: 'injector boost limit',
	formula: 'the boost at which duty reaches duty_limit',
	limit: {
		...varyingBoost,
		until: 'injectors.duty',
		reaches: 'injectors.duty_limit',
		rising: true,
	},
});

export const fuelError = quantity({
	id: 'injectors.fuel_error',
	label: 'injector flow error',
	shown: percent,
	kind: 'ratio',
	inputs: ['injectors.flow', 'injectors.controller_flow'],
	range: [-1, null],
	formula: 'flow at the real pressure / the flow that the controller believes - 1',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('injectors.flow') / q.number('injectors.controller_flow') - 1,
});

/** At idle the manifold's vacuum adds to the pressure across with a fixed rail; a manifold reference cancels it. */
export const idleAcross = quantity({
	id: 'injectors.idle_pressure_across',
	label: 'pressure across the injectors at idle',
	kind: 'pressure',
	inputs: ['fuel.pressure', 'fuel.reference', 'air.ambient_pressure', 'engine.idle_manifold_pressure'],
	formula: 'set point with a manifold reference; set point + manifold vacuum at idle with a fixed rail',
	source: ['definition'],
	nature: 'estimate',
	compute: q => {
		const set = q.number('fuel.pressure');
		if (q.choice('fuel.reference') !== 'atmosphere') return set;
		return set + q.number('air.ambient_pressure') - q.number('engine.idle_manifold_pressure');
	},
});

export const idlePulse = quantity({
	id: 'injectors.idle_pulse_width',
	label: 'pulse width at idle',
	kind: 'time',
	inputs: [
		'engine.idle_air_flow',
		'engine.idle_speed',
		'fuel.stoichiometric_ratio',
		'injectors.count',
		'injectors.dead_time',
		'injectors.rated_flow',
		'injectors.rated_pressure',
		'injectors.idle_pressure_across',
	],
	formula: 'idle air at lambda 1, per injector and cycle / flow at idle + dead time',
	source: ['practice'],
	nature: 'estimate',
	compute: q => {
		const fuelFlow = q.number('engine.idle_air_flow') / q.number('fuel.stoichiometric_ratio');
		const rpm = q.number('engine.idle_speed');
		const [injectors, deadTime] = [q.number('injectors.count'), q.number('injectors.dead_time')];
		const flow = injectorFlow(
			q.number('injectors.rated_flow'),
			q.number('injectors.rated_pressure'),
			q.number('injectors.idle_pressure_across'),
		);
		return pulseWidth({ fuelFlow, injectors, rpm, deadTime }, flow);
	},
});

/** The time that one injection may take at best power, to compare the pulse width with. */
export const cycle = quantity({
	id: 'injectors.cycle_time',
	label: 'time per cycle',
	kind: 'time',
	inputs: ['engine.peak_rpm'],
	formula: '120 / rpm',
	source: ['definition'],
	nature: 'exact',
	compute: q => cycleTime(q.number('engine.peak_rpm')),
});

export const idleDuty = quantity({
	id: 'injectors.idle_duty',
	label: 'injector duty at idle',
	shown: percent,
	kind: 'ratio',
	inputs: ['injectors.idle_pulse_width', 'engine.idle_speed'],
	formula: 'idle pulse width / (120 / idle rpm)',
	source: ['definition'],
	nature: 'estimate',
	compute: q => duty(q.number('injectors.idle_pulse_width'), q.number('engine.idle_speed')),
});
