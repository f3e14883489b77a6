import { boreArea } from '../../physics/pipe.ts';
import { bypassShare, exhaustPerAir, orificeFlow } from '../../physics/wastegate.ts';
import { assumption, percent, quantity } from '../quantity.ts';

const turbocharged = (q: { choice(id: 'boost.kind'): string | undefined }): boolean | undefined => {
	const kind = q.choice('boost.kind');
	return kind === undefined ? undefined : kind === 'turbocharger';
};

export const backPressureUsual = assumption({
	id: 'boost.usual_back_pressure_ratio',
	label: 'usual back pressure ratio',
	standsFor: 'boost.turbine_back_pressure',
	kind: 'ratio',
	value: 1.5,
	spread: 0.5,
	formula: 'usual pressure before the turbine over boost, both on a gauge',
	source: ['practice'],
	nature: 'estimate',
});

export const backPressureRatio = quantity({
	id: 'boost.back_pressure_ratio',
	label: 'back pressure over boost',
	kind: 'ratio',
	inputs: ['boost.turbine_back_pressure', 'boost.target'],
	formula: 'pressure before the turbine / boost target, both on a gauge',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const boost = q.number('boost.target');
		return boost > 0 ? q.number('boost.turbine_back_pressure') / boost : null;
	},
});

export const turbineInlet = quantity({
	id: 'boost.turbine_inlet_pressure',
	label: 'turbine inlet pressure',
	kind: 'absolute-pressure',
	inputs: [
		'boost.kind',
		'boost.target',
		'boost.turbine_back_pressure',
		'boost.usual_back_pressure_ratio',
		'air.ambient_pressure',
	],
	formula: 'ambient + what was measured; not measured: 1.5 x boost (1 to 2)',
	source: ['practice'],
	nature: 'estimate',
	compute: q => {
		if (turbocharged(q) === false) return null;
		const gauge = q.has('boost.turbine_back_pressure')
			? q.number('boost.turbine_back_pressure')
			: q.number('boost.usual_back_pressure_ratio') * q.number('boost.target');
		return q.number('air.ambient_pressure') + gauge;
	},
});

/** K of the exhaust at full load; efficiency of a turbine; Pa by which the exhaust system behind it resists. Common practice. */
const [exhaustTemperature, efficiency, exhaustSystemLoss] = [1150, 0.7, 10e3];

export const share = quantity({
	id: 'boost.bypass_share',
	label: 'exhaust that the wastegate must pass',
	kind: 'ratio',
	shown: percent,
	inputs: ['boost.compressor_outlet_temp', 'build.hot_day', 'boost.turbine_inlet_pressure', 'air.ambient_pressure'],
	range: [0, 1],
	formula: '1 - compressor work / work of all exhaust in the turbine: 1150 K, efficiency 0.70, 10 kPa behind it',
	source: ['heywood', 'practice'],
	nature: 'estimate',
	band: [0.7, 1.3],
	compute: q => {
		const warming = q.number('boost.compressor_outlet_temp') - q.number('build.hot_day');
		const before = q.number('boost.turbine_inlet_pressure');
		const behind = q.number('air.ambient_pressure') + exhaustSystemLoss;
		// Hardly any boost: nothing is worked out.
		if (warming <= 0 || before <= behind) return null;
		return bypassShare(warming, { before, behind, temperature: exhaustTemperature, efficiency });
	},
});

export const gateShare = quantity({
	id: 'boost.wastegate_share',
	label: 'exhaust that the wastegate passes',
	kind: 'ratio',
	shown: percent,
	inputs: ['boost.wastegate_bore', 'boost.turbine_inlet_pressure', 'air.ambient_pressure', 'engine.air_flow'],
	formula: 'flow through the open bore, discharge 0.7, over the exhaust (1.07 x air flow)',
	source: ['heywood'],
	nature: 'estimate',
	compute: q => {
		const before = q.number('boost.turbine_inlet_pressure');
		const behind = q.number('air.ambient_pressure') + exhaustSystemLoss;
		if (before <= behind) return null;
		const area = boreArea(q.number('boost.wastegate_bore'));
		return orificeFlow(area, before, behind, exhaustTemperature) / (exhaustPerAir * q.number('engine.air_flow'));
	},
});

export const wastegateMargin = quantity({
	id: 'boost.wastegate_margin',
	label: 'wastegate margin',
	kind: 'ratio',
	shown: percent,
	inputs: ['boost.wastegate_share', 'boost.bypass_share'],
	range: [-1, null],
	formula: 'exhaust that the gate passes / exhaust that it must pass - 1',
	source: ['definition'],
	nature: 'estimate',
	compute: q => {
		const needed = q.number('boost.bypass_share');
		return needed > 0 ? q.number('boost.wastegate_share') / needed - 1 : null;
	},
});

export const surgeMargin = quantity({
	id: 'boost.surge_margin',
	label: 'surge margin',
	kind: 'ratio',
	shown: percent,
	inputs: ['boost.compressor_flow_corrected', 'boost.compressor_surge', 'boost.full_rpm', 'engine.peak_rpm'],
	range: [-1, null],
	formula: 'corrected flow at the speed where boost is full / surge flow at the target - 1; flow goes with speed',
	source: ['definition'],
	nature: 'estimate',
	band: [0.9, 1.1],
	compute: q =>
		(q.number('boost.compressor_flow_corrected') * q.number('boost.full_rpm')) /
			q.number('engine.peak_rpm') /
			q.number('boost.compressor_surge') -
		1,
});

export const pipeForce = quantity({
	id: 'boost.pipe_force',
	label: 'force that pushes a charge pipe off',
	kind: 'force',
	inputs: ['boost.kind', 'boost.target', 'boost.pipe_bore'],
	formula: 'boost x pipe area',
	source: ['statics'],
	nature: 'exact',
	compute: q =>
		q.choice('boost.kind') === 'none' ? null : q.number('boost.target') * boreArea(q.number('boost.pipe_bore')),
});

export const coolerLoss = quantity({
	id: 'boost.intercooler_loss_at_power',
	label: 'intercooler loss at this power',
	kind: 'pressure',
	inputs: ['boost.intercooler_loss', 'boost.intercooler_loss_power', 'engine.power'],
	formula: 'loss x (computed power / power at which it was measured)^2',
	source: ['practice'],
	nature: 'estimate',
	band: [0.8, 1.2],
	compute: q =>
		q.number('boost.intercooler_loss') * (q.number('engine.power') / q.number('boost.intercooler_loss_power')) ** 2,
});
