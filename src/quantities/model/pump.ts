import { psi } from '../../physics/constants.ts';
import { makeCurve, type Point } from '../../physics/interpolate.ts';
import { pumpFromCurve, pumpFromPoint } from '../../physics/pump.ts';
import { assumption, quantity } from '../quantity.ts';

const practice = { source: ['practice'], nature: 'estimate' } as const;

export const usualVoltage = assumption({
	id: 'fuel.usual_pump_voltage',
	label: 'usual pump voltage',
	standsFor: 'fuel.pump_voltage',
	kind: 'voltage',
	value: 12.8,
	spread: 0.6,
	formula: 'usual voltage at a pump on factory wire',
	...practice,
});
export const voltageExponent = assumption({
	id: 'fuel.pump_voltage_exponent',
	label: 'pump flow by voltage',
	kind: 'ratio',
	value: 2,
	spread: 0.5,
	formula: 'a pump of which one point is known: flow goes with voltage to this power',
	...practice,
});
export const pressureFall = assumption({
	id: 'fuel.pump_fall',
	label: 'pump flow lost with pressure',
	kind: 'ratio',
	unit: '1/psi',
	value: 0.008,
	spread: 0.0035,
	formula: 'a pump of which one point is known: share of its rated flow lost with pressure above the rated one',
	...practice,
});

export const voltage = quantity({
	id: 'fuel.pump_voltage_running',
	label: 'pump voltage, running',
	kind: 'voltage',
	inputs: ['fuel.pump_voltage', 'charging.voltage_running', 'fuel.pump_wire_drop', 'fuel.usual_pump_voltage'],
	formula: 'volts measured at the pump; else running volts less the wire drop, never under 0; else the usual 12.8 V',
	...practice,
	compute: q => {
		if (q.has('fuel.pump_voltage')) return q.number('fuel.pump_voltage');
		if (q.has('charging.voltage_running') && q.has('fuel.pump_wire_drop')) {
			return Math.max(0, q.number('charging.voltage_running') - q.number('fuel.pump_wire_drop'));
		}
		return q.number('fuel.usual_pump_voltage');
	},
});

export const pump = quantity({
	id: 'fuel.pump',
	label: 'fuel pump',
	kind: 'hidden',
	inputs: [
		'fuel.pump_curve',
		'fuel.pump_flow',
		'fuel.pump_flow_pressure',
		'fuel.pump_flow_voltage',
		'fuel.pump_voltage_running',
		'fuel.pump_voltage_exponent',
		'fuel.pump_fall',
		'fuel.density',
	],
	formula: 'mass flow against pressure, at the voltage the pump gets',
	...practice,
	compute: q => {
		const ratio = q.number('fuel.pump_voltage_running') / q.number('fuel.pump_flow_voltage');
		const density = q.number('fuel.density');
		if (q.has('fuel.pump_curve')) {
			const points = q.list<Point>('fuel.pump_curve')!.map(([pressure, flow]): Point => [pressure, flow * density]);
			return pumpFromCurve(makeCurve(points), ratio) as never;
		}
		const flow = q.number('fuel.pump_flow') * density;
		const pressure = q.number('fuel.pump_flow_pressure');
		const exponent = q.number('fuel.pump_voltage_exponent');
		const fall = q.number('fuel.pump_fall') / psi;
		return pumpFromPoint({ flow, pressure, exponent, fall }, ratio) as never;
	},
});
