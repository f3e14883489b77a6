import { psi } from '../../physics/constants.ts';
import { frictionFactor, reynolds } from '../../physics/friction.ts';
import { returnLineFlow } from '../../physics/fuel-system.ts';
import { drawnTubing, type Line, lineLoss } from '../../physics/line.ts';
import { pipeVelocity } from '../../physics/pipe.ts';
import type { PumpFlow } from '../../physics/pump.ts';
import { assumption, quantity } from '../quantity.ts';
import { fuelIn, ofFuel } from './fuel.ts';

const practice = { source: ['practice'], nature: 'estimate' } as const;

export const usualLoss = assumption({
	id: 'fuel.usual_line_loss',
	label: 'usual fuel line loss',
	standsFor: 'fuel.line_loss',
	kind: 'pressure',
	value: 3 * psi,
	spread: 2 * psi,
	formula: 'usual loss of line and filter where bore or length is not known',
	...practice,
});
export const usualElbows = assumption({
	id: 'fuel.usual_elbows',
	label: 'usual count of bends',
	standsFor: 'fuel.elbows',
	kind: 'count',
	value: 4,
	spread: 2,
	formula: 'usual count of elbows',
	...practice,
});

export const line = quantity({
	id: 'fuel.line',
	label: 'fuel line',
	kind: 'hidden',
	inputs: [
		'fuel.line_bore',
		'fuel.line_length',
		'fuel.smallest_bore',
		'fuel.elbows',
		'fuel.usual_elbows',
		'fuel.density',
		...ofFuel,
		'fuel.usual_line_loss',
	],
	formula: 'pressure lost against flow; usually nothing in it is narrower than the line',
	source: ['tp410'],
	nature: 'exact',
	compute: q => {
		if (!q.has('fuel.line_bore') || !q.has('fuel.line_length')) {
			return q.number('fuel.usual_line_loss');
		}
		const fuel = fuelIn(q);
		if (!fuel) return undefined;
		const narrowed = q.has('fuel.smallest_bore');
		if (!narrowed) q.assume('fuel.smallest_bore');
		const line: Line = {
			bore: q.number('fuel.line_bore'),
			length: q.number('fuel.line_length'),
			roughness: drawnTubing,
			elbows: q.has('fuel.elbows') ? q.number('fuel.elbows') : q.number('fuel.usual_elbows'),
			smallestBore: narrowed ? q.number('fuel.smallest_bore') : null,
			density: q.number('fuel.density'),
			viscosity: fuel.viscosity,
		};
		return ((flow: number) => lineLoss(line, flow)) as never;
	},
});

/** Pressure lost, Pa, at a flow in kg/s. */
export type Loss = (flow: number) => number;

/** A line known by bore and length, or by its usual loss alone. */
export const lossOf = (line: Loss | number): Loss => (typeof line === 'number' ? () => line : line);

export const lineFlow = quantity({
	id: 'fuel.line_flow',
	label: 'fuel line flow',
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
		if (!pumpFlow || line === undefined) return undefined;
		const found = returnLineFlow(pumpFlow, set, lossOf(line));
		// Where the pump's curve ends before the flow is found, it is only known as a bound: the curve is asked for.
		return found?.bound === null ? found.value : q.lack('fuel.pump_curve');
	},
});

export const lineVelocity = quantity({
	id: 'fuel.line_velocity',
	label: 'fuel speed in the line',
	kind: 'velocity',
	inputs: ['fuel.line_flow', 'fuel.line_bore', 'fuel.density'],
	formula: 'line flow / (density x area)',
	source: ['continuity'],
	nature: 'exact',
	compute: q => pipeVelocity(q.number('fuel.line_flow'), q.number('fuel.density'), q.number('fuel.line_bore')),
});

export const lineReynolds = quantity({
	id: 'fuel.line_reynolds',
	label: 'line Reynolds number',
	kind: 'ratio',
	inputs: ['fuel.line_velocity', 'fuel.line_bore', ...ofFuel],
	formula: 'velocity x bore / kinematic viscosity',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const fuel = fuelIn(q);
		return fuel && reynolds(q.number('fuel.line_velocity'), q.number('fuel.line_bore'), fuel.viscosity);
	},
});

export const lineFriction = quantity({
	id: 'fuel.line_friction_factor',
	label: 'line friction factor',
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
	label: 'fuel line pressure loss',
	kind: 'pressure',
	inputs: ['fuel.line', 'fuel.line_flow'],
	formula: {
		us: 'Darcy-Weisbach, elbows by K, smallest bore by 0.5 (1 - beta^2) and (1 - beta^2)^2; usual 3 psi without bore and length',
		metric:
			'Darcy-Weisbach, elbows by K, smallest bore by 0.5 (1 - beta^2) and (1 - beta^2)^2; usual 0.2 bar without bore and length',
	},
	source: ['tp410'],
	nature: 'exact',
	compute: q => {
		const line = q.made<Loss | number>('fuel.line');
		if (line === undefined || typeof line === 'number') return line;
		const flow = q.number('fuel.line_flow');
		return line(flow);
	},
});
