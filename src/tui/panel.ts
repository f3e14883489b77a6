import type { App } from './app.ts';
import { clip, type Line, line } from './text.ts';

/** The handful of figures that a section moves. */
const figures: Readonly<Record<string, readonly string[]>> = {
	build: ['engine.power', 'boost.charge_temp'],
	engine: ['engine.power', 'engine.static_ratio', 'engine.cranking_pressure_expected', 'engine.compression_spread'],
	harness: ['harness.days_to_flat'],
	sensors: ['sensors.meter_headroom', 'sensors.meter_voltage_peak', 'sensors.scaler_needed'],
	injectors: ['injectors.duty', 'injectors.pressure_across', 'injectors.flow_needed'],
	ignition: ['ignition.spark_margin', 'ignition.gap_limit', 'engine.knock_integral'],
	fuel: ['fuel.pump_margin', 'fuel.rail_pressure_under_flow', 'fuel.pump_wire_drop', 'injectors.duty'],
	boost: ['boost.charge_temp', 'engine.power', 'boost.pipe_velocity', 'ignition.spark_margin'],
	charging: ['charging.balance', 'charging.balance_idle', 'charging.cable_drop'],
	driveline: [
		'driveline.clutch_margin',
		'driveline.gearbox_margin',
		'driveline.shaft_critical_speed',
		'driveline.cruise_speed',
	],
	cooling: ['cooling.heat_to_coolant', 'engine.power'],
};

/** What we know so far: the section's figures and the lowest limit, with what the last answer moved. One line when narrow. */
export function panel(app: App, section: string, width: number): Line[] {
	const { figures: now, before } = app;
	if (!now) return [];
	const { wording, limits, fails } = now;
	const told = (figures[section] ?? []).flatMap(id => {
		const value = now.value(id);
		if (typeof value !== 'number') return [];
		const was = before?.value(id);
		const moved =
			typeof was === 'number' && Math.abs(was - value) > 1e-9 * Math.abs(value)
				? ` (was ${wording.show(id, was)})`
				: '';
		return [`${id.replace(/^[a-z]+\./, '').replaceAll('_', ' ')} ${wording.show(id, value)}${moved}`];
	});
	const lowest = limits.find(({ value, bound }) => value !== null && bound !== 'above');
	const limit = lowest
		? [`first to give out: ${lowest.title.toLowerCase()} at ${wording.show(lowest.limit, lowest.value!)}`]
		: [];
	const all = [...told, ...limit, ...(fails > 0 ? [`${fails} to mend so far`] : [])];
	if (all.length === 0) return [];
	if (width < 72) return [line(clip(all[0]!, width), 'quiet')];
	return [line('-'.repeat(width), 'quiet'), ...all.map(text => line(clip(text, width), 'quiet'))];
}
