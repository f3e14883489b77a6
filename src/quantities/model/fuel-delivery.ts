import { railPressure } from '../../physics/fuel-system.ts';
import type { PumpFlow } from '../../physics/pump.ts';
import { bounded } from '../bounded.ts';
import { limit, percent, quantity } from '../quantity.ts';
import { type Loss, lossOf } from './fuel-line.ts';
import { boostLimitBase, varyingBoost } from './limit-ranges.ts';

export const pumpPressure = quantity({
	id: 'fuel.pump_pressure',
	label: 'pressure at the pump',
	kind: 'pressure',
	inputs: ['fuel.rail_set_point', 'fuel.line_loss'],
	formula: 'set point (+ boost when the regulator sees the manifold) + line loss',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('fuel.rail_set_point') + q.number('fuel.line_loss'),
});

export const available = quantity({
	id: 'fuel.pump_available',
	label: 'fuel the pump delivers',
	kind: 'mass-flow',
	inputs: ['fuel.pump', 'fuel.pump_pressure'],
	formula: {
		us: 'curve: r Qc(p / r^2), r = volts now / volts rated; one point: flow x r^2, less 0.8 % for each psi above its pressure',
		metric:
			'curve: r Qc(p / r^2), r = volts now / volts rated; one point: flow x r^2, less 11.6 % for each bar above its pressure',
	},
	source: ['practice'],
	nature: 'estimate',
	compute: q => {
		const pumpFlow = q.made<PumpFlow>('fuel.pump');
		const pressure = q.number('fuel.pump_pressure');
		if (!pumpFlow) return undefined;
		return pumpFlow(pressure) ?? q.lack('fuel.pump_curve');
	},
});

export const margin = quantity({
	id: 'fuel.pump_margin',
	label: 'fuel pump margin',
	shown: percent,
	kind: 'ratio',
	inputs: ['fuel.pump_available', 'fuel.flow'],
	range: [-1, null],
	formula: 'available / fuel flow - 1',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('fuel.pump_available') / q.number('fuel.flow') - 1,
});

export const boostLimit = limit({
	...boostLimitBase,
	id: 'fuel.pump_boost_limit',
	label: 'pump boost limit',
	formula: 'the boost at which the pump margin reaches 0',
	limit: { ...varyingBoost, until: 'fuel.pump_margin', reaches: 0, rising: false },
});

export const underFlow = quantity({
	id: 'fuel.rail_pressure_under_flow',
	label: 'rail pressure under flow',
	kind: 'pressure',
	inputs: ['fuel.rail', 'fuel.pump', 'fuel.line', 'fuel.flow', 'fuel.rail_set_point'],
	formula:
		'the regulator holds it while the pump gives the flow (less the line loss where it sits in the tank); below that, what the pump can',
	source: ['definition'],
	nature: 'estimate',
	compute: q => {
		const rail = q.choice('fuel.rail');
		const pumpFlow = q.made<PumpFlow>('fuel.pump');
		const line = q.made<Loss | number>('fuel.line');
		const flow = q.number('fuel.flow');
		const setPoint = q.number('fuel.rail_set_point');
		if (rail === undefined || !pumpFlow || line === undefined) return undefined;
		const regulator = rail === 'returnless' ? 'tank' : 'rail';
		const loss = lossOf(line)(flow);
		return bounded(railPressure({ pump: pumpFlow, regulator, setPoint, flow, loss })) ?? q.lack('fuel.pump_curve');
	},
});
