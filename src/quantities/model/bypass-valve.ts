import { airGasConstant } from '../../physics/constants.ts';
import { boreArea } from '../../physics/pipe.ts';
import { orificeFlow } from '../../physics/wastegate.ts';
import { assumption, percent, quantity } from '../quantity.ts';

/** Warm air: ratio of specific heats, gas constant in J/kgK. */
const warmAir = { gamma: 1.4, gasConstant: airGasConstant } as const;
/** Discharge coefficient of a poppet valve full open, of its bore: 0.5 to 0.7. Heywood, section 6.3. */
const discharge = 0.6;

export const valveFlow = quantity({
	id: 'boost.bypass_valve_flow',
	label: 'air that the bypass valve passes',
	kind: 'mass-flow',
	shown: { us: 'lb/min', metric: 'kg/h' },
	inputs: ['boost.kind', 'boost.bypass_bore', 'boost.manifold_pressure', 'boost.charge_temp', 'air.ambient_pressure'],
	formula:
		'flow of the charge air through the open bore to the outside pressure, discharge 0.6 (0.5 to 0.7), choked where the pressures part enough',
	source: ['heywood'],
	nature: 'estimate',
	band: [0.83, 1.17],
	compute: q => {
		if (q.has('boost.kind') && q.choice('boost.kind') !== 'turbocharger') return null;
		const [before, behind] = [q.number('boost.manifold_pressure'), q.number('air.ambient_pressure')];
		if (before <= behind) return null;
		const area = boreArea(q.number('boost.bypass_bore'));
		return orificeFlow(area, before, behind, q.number('boost.charge_temp'), warmAir, discharge);
	},
});

export const usualSurge = assumption({
	id: 'boost.usual_surge_share',
	label: 'usual surge flow',
	standsFor: 'boost.compressor_surge',
	kind: 'ratio',
	value: 0.5,
	spread: 0.12,
	formula: "usual flow where a compressor's map ends on the left, over its flow at full load",
	source: ['practice'],
	nature: 'estimate',
});

export const valveNeeded = quantity({
	id: 'boost.bypass_valve_needed',
	label: 'air that keeps the compressor out of surge',
	kind: 'mass-flow',
	shown: { us: 'lb/min', metric: 'kg/h' },
	inputs: [
		'boost.kind',
		'boost.compressor_surge',
		'boost.usual_surge_share',
		'boost.compressor_flow_corrected',
		'engine.air_flow',
	],
	formula:
		'surge flow of the map at the target, no longer corrected; without a map half of the air flow at best power (0.38 to 0.62): the wheel still turns as fast when the throttle shuts',
	source: ['definition', 'practice'],
	nature: 'estimate',
	compute: q => {
		if (q.has('boost.kind') && q.choice('boost.kind') !== 'turbocharger') return null;
		const air = q.number('engine.air_flow');
		return q.has('boost.compressor_surge')
			? (q.number('boost.compressor_surge') / q.number('boost.compressor_flow_corrected')) * air
			: q.number('boost.usual_surge_share') * air;
	},
});

export const valveMargin = quantity({
	id: 'boost.bypass_valve_margin',
	label: 'bypass valve margin',
	kind: 'ratio',
	shown: percent,
	inputs: ['boost.bypass_valve_flow', 'boost.bypass_valve_needed'],
	range: [-1, null],
	formula: 'air that the valve passes / air that keeps the compressor out of surge - 1',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('boost.bypass_valve_flow') / q.number('boost.bypass_valve_needed') - 1,
});
