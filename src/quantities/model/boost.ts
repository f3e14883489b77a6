import { dryAirDensity } from '../../physics/atmosphere.ts';
import {
	compressorOutletTemperature,
	cooledTemperature,
	correctedFlow,
	pressureRatio,
} from '../../physics/compressor.ts';
import { pipeVelocity } from '../../physics/pipe.ts';
import { assumption, quantity } from '../quantity.ts';

/** K by which the air under the hood warms the charge of an unboosted engine. Common practice. */
const underHoodRise = 10;

export const inletLoss = assumption({
	id: 'boost.inlet_loss',
	label: 'inlet loss',
	kind: 'pressure',
	value: 1000,
	spread: 500,
	formula: 'usual loss of filter and inlet pipe before the compressor',
	source: ['practice'],
	nature: 'estimate',
});

export const manifoldPressure = quantity({
	id: 'boost.manifold_pressure',
	label: 'manifold pressure',
	kind: 'absolute-pressure',
	inputs: ['boost.kind', 'boost.target', 'air.ambient_pressure'],
	formula: 'ambient pressure + boost target; ambient without boost',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const ambient = q.number('air.ambient_pressure');
		return q.choice('boost.kind') === 'none' ? ambient : ambient + q.number('boost.target');
	},
});

export const ratio = quantity({
	id: 'boost.pressure_ratio',
	label: 'compressor pressure ratio',
	kind: 'ratio',
	inputs: [
		'boost.kind',
		'boost.manifold_pressure',
		'boost.intercooler',
		'boost.intercooler_loss',
		'air.ambient_pressure',
		'boost.inlet_loss',
	],
	formula: '(manifold pressure + intercooler loss) / (ambient pressure - inlet loss); no intercooler: no loss',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		if (q.choice('boost.kind') === 'none') return null;
		const coolerLoss = q.choice('boost.intercooler') === 'none' ? 0 : q.number('boost.intercooler_loss');
		return pressureRatio({
			manifold: q.number('boost.manifold_pressure'),
			coolerLoss,
			ambient: q.number('air.ambient_pressure'),
			inletLoss: q.number('boost.inlet_loss'),
		});
	},
});

export const outletTemperature = quantity({
	id: 'boost.compressor_outlet_temp',
	label: 'compressor outlet temperature',
	kind: 'temperature',
	inputs: ['build.hot_day', 'boost.pressure_ratio', 'boost.compressor_efficiency'],
	formula: 'T1 (1 + (PR^(2/7) - 1) / efficiency)',
	source: ['isentropic'],
	nature: 'exact',
	compute: q =>
		compressorOutletTemperature(
			q.number('build.hot_day'),
			// A manifold under the outside pressure (a proven point without boost): nothing is compressed.
			Math.max(1, q.number('boost.pressure_ratio')),
			q.number('boost.compressor_efficiency'),
		),
});

export const chargeTemperature = quantity({
	id: 'boost.charge_temp',
	label: 'charge temperature',
	kind: 'temperature',
	inputs: [
		'boost.kind',
		'build.hot_day',
		'boost.compressor_outlet_temp',
		'boost.intercooler',
		'boost.intercooler_effectiveness',
	],
	formula: 'T2 - effectiveness (T2 - T1); no intercooler: T2; unboosted: T1 + 10 K',
	source: ['definition', 'practice'],
	nature: 'exact',
	compute: q => {
		if (q.choice('boost.kind') === 'none') return q.number('build.hot_day') + underHoodRise;
		const hot = q.number('boost.compressor_outlet_temp');
		if (q.choice('boost.intercooler') === 'none') return hot;
		return cooledTemperature(q.number('build.hot_day'), hot, q.number('boost.intercooler_effectiveness'));
	},
});

export const manifoldDensity = quantity({
	id: 'boost.manifold_density',
	label: 'manifold air density',
	kind: 'density',
	inputs: ['boost.manifold_pressure', 'boost.charge_temp'],
	formula: 'manifold pressure / (287.05 charge temperature), dry air',
	source: ['ideal-gas'],
	nature: 'exact',
	compute: q => dryAirDensity(q.number('boost.manifold_pressure'), q.number('boost.charge_temp')),
});

export const densityRatio = quantity({
	id: 'boost.density_ratio',
	label: 'density ratio',
	kind: 'ratio',
	inputs: ['boost.manifold_density', 'air.ambient_pressure', 'build.hot_day'],
	formula: 'manifold density / dry ambient density',
	source: ['ideal-gas'],
	nature: 'exact',
	compute: q =>
		q.number('boost.manifold_density') / dryAirDensity(q.number('air.ambient_pressure'), q.number('build.hot_day')),
});

export const corrected = quantity({
	id: 'boost.compressor_flow_corrected',
	label: 'corrected compressor flow',
	shown: { us: 'lb/min', metric: 'kg/h' },
	kind: 'mass-flow',
	inputs: ['boost.kind', 'engine.air_flow', 'build.hot_day', 'air.ambient_pressure', 'boost.inlet_loss'],
	formula: 'air flow sqrt(T1 / 298.15 K) / (p1 / 100 kPa), p1 after the inlet loss',
	source: ['definition'],
	nature: 'exact',
	compute: q =>
		q.choice('boost.kind') === 'none'
			? null
			: correctedFlow(
					q.number('engine.air_flow'),
					q.number('build.hot_day'),
					q.number('air.ambient_pressure') - q.number('boost.inlet_loss'),
				),
});

export const velocity = quantity({
	id: 'boost.pipe_velocity',
	label: 'charge pipe air speed',
	kind: 'velocity',
	inputs: ['boost.kind', 'engine.air_flow', 'boost.manifold_density', 'boost.pipe_bore'],
	formula: 'air flow / (manifold density x pipe area)',
	source: ['continuity'],
	nature: 'exact',
	compute: q =>
		q.choice('boost.kind') === 'none'
			? null
			: pipeVelocity(q.number('engine.air_flow'), q.number('boost.manifold_density'), q.number('boost.pipe_bore')),
});
