import type { Reads } from '../../graph/reader.ts';
import { blendOf, type Fuel, fuelFlow, fuels } from '../../physics/fuels.ts';
import { assumption, percent, quantity } from '../quantity.ts';

/** What determines the fuel in the tank. */
export const ofFuel = ['fuel.kind', 'fuel.ethanol'] as const;

/** The fuel: by its kind, or by the ethanol that was measured in E85. */
export function fuelIn(q: Reads<(typeof ofFuel)[number]>): Fuel | undefined {
	const kind = q.choice('fuel.kind') as keyof typeof fuels | undefined;
	if (kind === 'e85' && q.has('fuel.ethanol')) return blendOf(q.number('fuel.ethanol'));
	return kind && fuels[kind];
}

const property = (
	id: string,
	label: string,
	kind: 'ratio' | 'density' | 'energy-per-mass',
	of: 'stoichiometricRatio' | 'density' | 'heatingValue',
	formula: string,
	how: string,
) =>
	quantity({
		id,
		label,
		kind,
		inputs: ofFuel,
		formula: `${formula}; ${how}`,
		source: ['doe'],
		nature: 'exact',
		compute: q => fuelIn(q)?.[of],
	});

export const stoichiometric = property(
	'fuel.stoichiometric_ratio',
	'stoichiometric ratio',
	'ratio',
	'stoichiometricRatio',
	'gasoline 14.7, with 10 % ethanol 14.1, E85 9.81',
	'measured ethanol: between 14.7 and 9.0 by mass',
);
export const density = property(
	'fuel.density',
	'fuel density',
	'density',
	'density',
	'gasoline 745, with 10 % ethanol 749.4, E85 782.4 kg/m3',
	'measured ethanol: between 745 and 789 by volume',
);
export const heating = property(
	'fuel.heating_value',
	'heating value',
	'energy-per-mass',
	'heatingValue',
	'gasoline 43.44, with 10 % ethanol 41.70, E85 29.30 MJ/kg',
	'measured ethanol: between 43.44 and 26.95 by mass',
);

export const ethanol = quantity({
	id: 'fuel.ethanol_share',
	label: 'ethanol share',
	shown: percent,
	kind: 'ratio',
	inputs: ofFuel,
	range: [0, 1],
	formula: 'ethanol in the fuel by volume: as measured; gasoline 0, with 10 % ethanol 0.10, E85 0.85',
	source: ['doe'],
	nature: 'exact',
	compute: q => fuelIn(q)?.ethanol,
});

export const octane = quantity({
	id: 'fuel.octane_ron',
	label: 'octane (RON)',
	kind: 'octane',
	unit: '1',
	inputs: ['fuel.octane'],
	formula: 'RON; the pump index (R+M)/2 plus 5 when that is given (usual sensitivity 10)',
	source: ['practice'],
	nature: 'estimate',
	compute: q => q.number('fuel.octane'),
});

export const lambdaUnboosted = assumption({
	id: 'fuel.usual_lambda_unboosted',
	label: 'usual lambda without boost',
	standsFor: 'boost.lambda',
	kind: 'ratio',
	value: 0.87,
	spread: 0.03,
	formula: 'usual lambda at full load without boost',
	source: ['practice'],
	nature: 'estimate',
});

/** boost.lambda is asked, and in effect, only when boosted. */
export const lambda = quantity({
	id: 'fuel.lambda_full_load',
	label: 'lambda at full load',
	kind: 'ratio',
	inputs: ['boost.kind', 'boost.lambda', 'fuel.usual_lambda_unboosted'],
	formula: 'the target lambda at full load; usual 0.87 unboosted',
	source: ['practice'],
	nature: 'exact',
	compute: q =>
		q.choice('boost.kind') === 'none' ? q.number('fuel.usual_lambda_unboosted') : q.number('boost.lambda'),
});

export const flow = quantity({
	id: 'fuel.flow',
	label: 'fuel flow',
	kind: 'mass-flow',
	inputs: ['engine.air_flow', 'fuel.lambda_full_load', 'fuel.stoichiometric_ratio'],
	formula: 'air flow / (lambda x stoichiometric ratio)',
	source: ['definition'],
	nature: 'exact',
	compute: q =>
		fuelFlow(q.number('engine.air_flow'), q.number('fuel.lambda_full_load'), q.number('fuel.stoichiometric_ratio')),
});

/** Set point at the rail with the boost that a manifold-referenced regulator adds. */
export const railSetPoint = quantity({
	id: 'fuel.rail_set_point',
	label: 'rail set pressure',
	kind: 'pressure',
	inputs: ['fuel.pressure', 'fuel.reference', 'boost.kind', 'boost.target'],
	formula: 'set point; plus boost when the regulator sees the manifold',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const set = q.number('fuel.pressure');
		if (q.choice('boost.kind') === 'none') return set;
		return q.choice('fuel.reference') === 'manifold' ? set + q.number('boost.target') : set;
	},
});

export const idleExpected = quantity({
	id: 'fuel.idle_pressure_expected',
	label: 'expected fuel pressure at idle',
	kind: 'pressure',
	inputs: ['fuel.pressure', 'fuel.reference', 'air.ambient_pressure', 'engine.idle_manifold_pressure'],
	range: [null, null],
	formula: 'set point; less the manifold vacuum of a warm idle when the regulator sees the manifold',
	source: ['definition'],
	nature: 'estimate',
	compute: q => {
		const reference = q.choice('fuel.reference');
		const set = q.number('fuel.pressure');
		if (reference === undefined || reference === 'atmosphere') return reference && set;
		return set - (q.number('air.ambient_pressure') - q.number('engine.idle_manifold_pressure'));
	},
});
