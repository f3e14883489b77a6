import type { Reads } from '../../graph/reader.ts';
import { makeCurve, type Point } from '../../physics/interpolate.ts';
import { type AirMeter, boreScale, loadSeen, meterFlow, meterVolts } from '../../physics/meter.ts';
import { bounded } from '../bounded.ts';
import { limit, percent, quantity } from '../quantity.ts';
import { boostLimitBase, varyingBoost } from './limit-ranges.ts';

export const meter = quantity({
	id: 'sensors.meter',
	label: 'air meter',
	kind: 'hidden',
	inputs: ['sensors.meter_kind', 'sensors.meter_curve', 'sensors.meter_pipe_bore', 'sensors.meter_curve_bore'],
	formula:
		'monotone cubic through the curve, never beyond its ends; a slot insert x (pipe bore / curve bore)^2, usually the same bore',
	source: ['fritsch-carlson'],
	nature: 'exact',
	compute: q => {
		if (q.choice('sensors.meter_kind') === 'none-speed-density') return null;
		const points = q.list<Point>('sensors.meter_curve');
		const scale = q.choice('sensors.meter_kind') === 'slot-insert' ? scaleOf(q) : 1;
		if (!points) return undefined;
		return { curve: makeCurve(points), scale } as never;
	},
});

function scaleOf(q: Reads<'sensors.meter_pipe_bore' | 'sensors.meter_curve_bore'>): number {
	if (q.has('sensors.meter_pipe_bore'))
		return boreScale(q.number('sensors.meter_pipe_bore'), q.number('sensors.meter_curve_bore'));
	q.assume('sensors.meter_pipe_bore');
	return 1;
}

/** Volts at the meter that the controller reads as its ceiling: beyond them it sees no more air. */
export const topVolts = quantity({
	id: 'sensors.meter_top_volts',
	label: 'highest air meter volts',
	kind: 'voltage',
	inputs: ['sensors.meter_scaler', 'sensors.meter_scaler_full', 'sensors.meter_ceiling'],
	formula: "the scaler's full input where one is fitted, else the ceiling",
	source: ['definition'],
	nature: 'exact',
	compute: q =>
		q.choice('sensors.meter_scaler') === 'fitted'
			? q.number('sensors.meter_scaler_full')
			: q.number('sensors.meter_ceiling'),
});

export const peak = quantity({
	id: 'sensors.meter_voltage_peak',
	label: 'air meter volts expected at full load',
	kind: 'voltage',
	inputs: ['sensors.meter', 'engine.air_flow'],
	formula: "the curve's volts at the engine's air flow; beyond its last point that voltage, bound above",
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const meter = q.made<AirMeter>('sensors.meter');
		const flow = q.number('engine.air_flow');
		return meter ? bounded(meterVolts(meter, flow)) : undefined;
	},
});

/** The controller sees the meter through the scaler, and nothing above its ceiling. */
export const controllerPeak = quantity({
	id: 'sensors.controller_volts_peak',
	label: 'air meter volts at the controller, peak',
	kind: 'voltage',
	inputs: ['sensors.meter_voltage_peak', 'sensors.meter_top_volts', 'sensors.meter_ceiling'],
	formula: "volts at the meter x ceiling / the scaler's full input, at most the ceiling",
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const ceiling = q.number('sensors.meter_ceiling');
		return Math.min(ceiling, (q.number('sensors.meter_voltage_peak') * ceiling) / q.number('sensors.meter_top_volts'));
	},
});

export const ceiling = quantity({
	id: 'sensors.meter_flow_ceiling',
	label: 'air meter ceiling',
	shown: { us: 'lb/min', metric: 'kg/h' },
	kind: 'mass-flow',
	inputs: ['sensors.meter', 'sensors.meter_top_volts'],
	formula: "flow at the lower of the ceiling (or the scaler's full input) and the curve's last point",
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const meter = q.made<AirMeter>('sensors.meter');
		const volts = q.number('sensors.meter_top_volts');
		return meter ? meterFlow(meter, volts).value : undefined;
	},
});

export const headroom = quantity({
	id: 'sensors.meter_headroom',
	label: 'air meter headroom',
	shown: percent,
	kind: 'ratio',
	inputs: ['sensors.meter_flow_ceiling', 'engine.air_flow'],
	range: [-1, null],
	formula: 'ceiling flow / air flow - 1',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('sensors.meter_flow_ceiling') / q.number('engine.air_flow') - 1,
});

export const boostLimit = limit({
	...boostLimitBase,
	id: 'sensors.meter_boost_limit',
	label: 'air meter boost limit',
	formula: "the boost at which the meter's headroom reaches 0",
	limit: { ...varyingBoost, until: 'sensors.meter_headroom', reaches: 0, rising: false },
});

/** Flow up to which a scaler should read, over the engine's: 5 % to spare. */
const scaledFlow = 1.05;

export const scalerNeeded = quantity({
	id: 'sensors.scaler_needed',
	label: 'scaler needed',
	kind: 'voltage',
	inputs: ['sensors.meter', 'engine.air_flow'],
	formula: "the curve's volts at 1.05 x air flow: the smallest scaler input that keeps 5 % headroom",
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const meter = q.made<AirMeter>('sensors.meter');
		const flow = q.number('engine.air_flow');
		return meter ? bounded(meterVolts(meter, scaledFlow * flow)) : undefined;
	},
});

export const idle = quantity({
	id: 'sensors.meter_voltage_idle',
	label: 'air meter volts expected at idle',
	kind: 'voltage',
	inputs: ['sensors.meter', 'engine.idle_air_flow', 'sensors.meter_top_volts', 'sensors.meter_ceiling'],
	formula: "the curve's volts at idle air flow, after the scaler",
	source: ['practice'],
	nature: 'estimate',
	compute: q => {
		const meter = q.made<AirMeter>('sensors.meter');
		const flow = q.number('engine.idle_air_flow');
		const scale = q.number('sensors.meter_ceiling') / q.number('sensors.meter_top_volts');
		if (!meter) return undefined;
		const volts = meterVolts(meter, flow);
		return bounded({ ...volts, value: volts.value * scale });
	},
});

export const seen = quantity({
	id: 'sensors.load_seen',
	label: 'load the controller sees',
	shown: percent,
	kind: 'ratio',
	inputs: [
		'sensors.meter',
		'sensors.meter_curve_loaded',
		'sensors.controller_curve',
		'sensors.meter_top_volts',
		'sensors.meter_ceiling',
		'engine.air_flow',
	],
	formula:
		'controller_curve(volts x ceiling / scaler_full) / air flow, clipped at the ceiling; matching curve: 1 up to the ceiling',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const meter = q.made<AirMeter>('sensors.meter');
		const loaded = q.choice('sensors.meter_curve_loaded');
		const flow = q.number('engine.air_flow');
		const reading = { ceiling: q.number('sensors.meter_ceiling'), scalerFull: q.number('sensors.meter_top_volts') };
		if (loaded === 'no-table-for-it') return null;
		const points = loaded === 'old-curve' ? q.list<Point>('sensors.controller_curve') : null;
		if (!meter || !loaded || points === undefined) return undefined;
		return bounded(loadSeen(meter, { ...reading, controllerCurve: points && makeCurve(points) }, flow));
	},
});
