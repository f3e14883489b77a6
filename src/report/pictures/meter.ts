import type { Assessment } from '../../audit/assess.ts';
import { valueIn } from '../../graph/solve.ts';
import type { AirMeter } from '../../physics/meter.ts';
import { strips } from './curves.ts';
import type { Picture } from './draw.ts';
import { inUnits } from './in-units.ts';

/** The air meter's volts over flow, with what the controller can read and the engine's flow. Null without its curve. */
export function drawMeter({ state, wording }: Assessment): Picture | null {
	const meter = valueIn(state, 'sensors.meter') as unknown as AirMeter | null | undefined;
	if (!meter) return null;
	const { first, last } = meter.curve;
	const axis = inUnits(wording, 'engine.air_flow');
	const points = Array.from({ length: 41 }, (_, step) => {
		const volts = first[0] + ((last[0] - first[0]) * step) / 40;
		return [axis.of(meter.scale * meter.curve.at(volts)), volts] as const;
	});
	const top = valueIn(state, 'sensors.meter_top_volts');
	const flow = valueIn(state, 'engine.air_flow');
	const show = (value: number) => wording.show('sensors.meter_voltage_peak', value)!;
	const level =
		typeof top === 'number'
			? { level: { at: top, title: `the controller reads to ${show(top)}`, wrong: 'above' as const } }
			: {};
	const most = points.at(-1)![0];
	const full = typeof flow === 'number' ? axis.of(flow) : null;
	const mark = full !== null && full <= most ? { at: full, title: `full load ${axis.show(full)}` } : null;
	const words = [
		`The meter gives ${show(first[0])} at ${axis.show(points[0]![0])} and ${show(last[0])} at ${axis.show(most)}.`,
		full === null ? '' : ` Full load is ${axis.show(full)}${mark ? '' : ', beyond the curve'}.`,
		typeof top === 'number' ? ` The controller reads to ${show(top)} at the meter.` : '',
	].join('');
	return strips('Air meter', words, { title: 'air flow', show: axis.show, mark }, [
		{ title: 'Volts at the meter', points, show, ...level },
	]);
}
