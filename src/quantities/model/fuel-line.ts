import { psi } from '../../physics/constants.ts';
import { frictionFactor, reynolds } from '../../physics/friction.ts';
import { railPressure, returnLineFlow } from '../../physics/fuel-system.ts';
import { fuels } from '../../physics/fuels.ts';
import { makeCurve, type Point } from '../../physics/interpolate.ts';
import { drawnTubing, type Line, lineLoss } from '../../physics/line.ts';
import { pipeVelocity } from '../../physics/pipe.ts';
import { type PumpFlow, pumpFromCurve, pumpFromPoint } from '../../physics/pump.ts';
import { assumption, limit, quantity } from '../quantity.ts';
import { told } from '../told.ts';
import { boosted } from './boost.ts';
import { boostRange } from './ranges.ts';

const practice = { source: ['practice'], nature: 'estimate' } as const;

export const usualVoltage = assumption({
	id: 'fuel.usual_pump_voltage',
	standsFor: 'fuel.pump_voltage',
	kind: 'voltage',
	value: 12.8,
	spread: 0.6,
	formula: 'usual voltage at a pump on factory wire',
	...practice,
});
export const voltageExponent = assumption({
	id: 'fuel.pump_voltage_exponent',
	kind: 'ratio',
	value: 2,
	spread: 0.5,
	formula: 'a pump of which one point is known: flow goes with voltage to this power',
	...practice,
});
export const pressureFall = assumption({
	id: 'fuel.pump_fall',
	kind: 'ratio',
	unit: '1/psi',
	value: 0.008,
	spread: 0.0035,
	formula: 'a pump of which one point is known: share of its rated flow lost for each psi above the rated pressure',
	...practice,
});
export const usualLoss = assumption({
	id: 'fuel.usual_line_loss',
	standsFor: 'fuel.line_loss',
	kind: 'pressure',
	value: 3 * psi,
	spread: 2 * psi,
	formula: 'usual loss of line and filter where bore or length is not known',
	...practice,
});
export const usualElbows = assumption({
	id: 'fuel.usual_elbows',
	standsFor: 'fuel.elbows',
	kind: 'count',
	value: 4,
	spread: 2,
	formula: 'usual count of elbows',
	...practice,
});

export const voltage = quantity({
	id: 'fuel.pump_voltage_running',
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
			return q.lacks ? undefined : (pumpFromCurve(makeCurve(points), ratio) as never);
		}
		const flow = q.number('fuel.pump_flow') * density;
		const pressure = q.number('fuel.pump_flow_pressure');
		const exponent = q.number('fuel.pump_voltage_exponent');
		const fall = q.number('fuel.pump_fall') / psi;
		return q.lacks ? undefined : (pumpFromPoint({ flow, pressure, exponent, fall }, ratio) as never);
	},
});

export const line = quantity({
	id: 'fuel.line',
	kind: 'hidden',
	inputs: [
		'fuel.line_bore',
		'fuel.line_length',
		'fuel.smallest_bore',
		'fuel.elbows',
		'fuel.usual_elbows',
		'fuel.density',
		'fuel.kind',
		'fuel.usual_line_loss',
	],
	formula: 'pressure lost against flow',
	source: ['crane'],
	nature: 'exact',
	compute: q => {
		if (!q.has('fuel.line_bore') || !q.has('fuel.line_length')) {
			return q.number('fuel.usual_line_loss');
		}
		const kind = q.choice('fuel.kind') as keyof typeof fuels | undefined;
		if (kind === undefined) return undefined;
		const line: Line = {
			bore: q.number('fuel.line_bore'),
			length: q.number('fuel.line_length'),
			roughness: drawnTubing,
			elbows: q.has('fuel.elbows') ? q.number('fuel.elbows') : q.number('fuel.usual_elbows'),
			smallestBore: q.has('fuel.smallest_bore') ? q.number('fuel.smallest_bore') : null,
			density: q.number('fuel.density'),
			viscosity: fuels[kind].viscosity,
		};
		return ((flow: number) => lineLoss(line, flow)) as never;
	},
});

type Loss = (flow: number) => number;

/** A line known by bore and length, or by its usual loss alone. */
const lossOf = (line: Loss | number): Loss => (typeof line === 'number' ? () => line : line);

export const lineFlow = quantity({
	id: 'fuel.line_flow',
	kind: 'mass-flow',
	inputs: ['fuel.rail', 'fuel.flow', 'fuel.pump', 'fuel.line', 'fuel.rail_set_point'],
	formula: 'return rail: what the pump delivers; returnless: what the engine uses',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const rail = q.choice('fuel.rail');
		if (rail === undefined) return undefined;
		if (rail !== 'return') return q.number('fuel.flow');
		const pumpFlow = q.made<PumpFlow>('fuel.pump');
		const line = q.made<Loss | number>('fuel.line');
		const set = q.number('fuel.rail_set_point');
		if (!pumpFlow || line === undefined || q.lacks) return undefined;
		const found = returnLineFlow(pumpFlow, set, lossOf(line));
		// Where the pump's curve ends before its flow settles, nothing is proven.
		return found?.bound === null ? found.value : q.lack('fuel.pump_curve');
	},
});

export const lineVelocity = quantity({
	id: 'fuel.line_velocity',
	kind: 'velocity',
	inputs: ['fuel.line_flow', 'fuel.line_bore', 'fuel.density'],
	formula: 'line flow / (density x area)',
	source: ['continuity'],
	nature: 'exact',
	compute: q => pipeVelocity(q.number('fuel.line_flow'), q.number('fuel.density'), q.number('fuel.line_bore')),
});

export const lineReynolds = quantity({
	id: 'fuel.line_reynolds',
	kind: 'ratio',
	inputs: ['fuel.line_velocity', 'fuel.line_bore', 'fuel.kind'],
	formula: 'velocity x bore / kinematic viscosity',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const kind = q.choice('fuel.kind') as keyof typeof fuels | undefined;
		return kind && reynolds(q.number('fuel.line_velocity'), q.number('fuel.line_bore'), fuels[kind].viscosity);
	},
});

export const lineFriction = quantity({
	id: 'fuel.line_friction_factor',
	kind: 'ratio',
	inputs: ['fuel.line_reynolds', 'fuel.line_bore'],
	formula: '64 / Re laminar; Colebrook turbulent; roughness of drawn tubing; none where nothing flows',
	source: ['colebrook'],
	nature: 'exact',
	compute: q => {
		const reynolds = q.number('fuel.line_reynolds');
		return reynolds === 0 ? null : frictionFactor(reynolds, drawnTubing / q.number('fuel.line_bore'));
	},
});

export const loss = quantity({
	id: 'fuel.line_loss',
	kind: 'pressure',
	inputs: ['fuel.line', 'fuel.line_flow'],
	formula:
		'Darcy-Weisbach, elbows by K, smallest bore by 0.5 (1 - beta^2) and (1 - beta^2)^2; usual 3 psi without bore and length',
	source: ['crane'],
	nature: 'exact',
	compute: q => {
		const line = q.made<Loss | number>('fuel.line');
		if (line === undefined || typeof line === 'number') return line;
		const flow = q.number('fuel.line_flow');
		return q.lacks ? undefined : line(flow);
	},
});

export const pumpPressure = quantity({
	id: 'fuel.pump_pressure',
	kind: 'pressure',
	inputs: ['fuel.rail_set_point', 'fuel.line_loss'],
	formula: 'set point (+ boost when the regulator sees the manifold) + line loss',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('fuel.rail_set_point') + q.number('fuel.line_loss'),
});

export const available = quantity({
	id: 'fuel.pump_available',
	kind: 'mass-flow',
	inputs: ['fuel.pump', 'fuel.pump_pressure'],
	formula:
		'curve: r Qc(p / r^2), r = volts now / volts rated; one point: flow x r^2, less 0.8 % a psi above its pressure',
	...practice,
	compute: q => {
		const pumpFlow = q.made<PumpFlow>('fuel.pump');
		const pressure = q.number('fuel.pump_pressure');
		if (!pumpFlow || q.lacks) return undefined;
		return pumpFlow(pressure) ?? q.lack('fuel.pump_curve');
	},
});

export const margin = quantity({
	id: 'fuel.pump_margin',
	shown: { us: '%', metric: '%' },
	kind: 'ratio',
	inputs: ['fuel.pump_available', 'fuel.flow'],
	range: [-1, null],
	formula: 'available / fuel flow - 1',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('fuel.pump_available') / q.number('fuel.flow') - 1,
});

export const boostLimit = limit({
	id: 'fuel.pump_boost_limit',
	kind: 'pressure',
	inputs: ['boost.kind'],
	formula: 'the boost at which the pump margin reaches 0',
	source: ['root'],
	nature: 'estimate',
	limit: { vary: 'boost.target', until: 'fuel.pump_margin', reaches: 0, rising: false, ...boostRange },
	when: boosted,
});

export const underFlow = quantity({
	id: 'fuel.rail_pressure_under_flow',
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
		if (rail === undefined || !pumpFlow || line === undefined || q.lacks) return undefined;
		const regulator = rail === 'returnless' ? 'tank' : 'rail';
		const loss = lossOf(line)(flow);
		return told(railPressure({ pump: pumpFlow, regulator, setPoint, flow, loss })) ?? q.lack('fuel.pump_curve');
	},
});
