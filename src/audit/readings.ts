import type { Outcome } from '../expressions/tree.ts';
import { psi } from '../physics/constants.ts';
import type { State } from '../quantities/pass.ts';
import type { ExpectedReading } from './audit.ts';
import { valueIn } from './conditions.ts';

/** What a gauge should show, and how far off it may be before it means something. */
interface Expected {
	readonly state: ExpectedReading['state'];
	readonly reading: string;
	readonly title: string;
	readonly unit: string;
	/** The quantities it rests on, for what is missing or assumed. */
	readonly from: readonly string[];
	/** The answer that holds a measured reading of it. */
	readonly answer: string | null;
	readonly of: (read: (id: string) => number | undefined, state: State) => number | undefined;
	/** The band from the value; an open end is null. */
	readonly band: (value: number) => readonly [number | null, number | null];
}

const around = (off: number) => (value: number) => [value - off, value + off] as const;
const share = (part: number) => (value: number) => [value * (1 - part), value * (1 + part)] as const;
const atLeast = (value: number) => [value, null] as const;
const one =
	(id: string): Expected['of'] =>
	read =>
		read(id);

/** The readings of a car that is right, in the order they are met. Bands are common practice unless the figure has its own. */
const expected: readonly Expected[] = [
	{
		state: 'key-on',
		reading: 'fuel-pressure',
		title: 'Fuel pressure, pump primed',
		unit: 'Pa',
		from: ['fuel.pressure'],
		answer: 'fuel.pressure_key_on',
		of: one('fuel.pressure'),
		band: around(2 * psi),
	},
	{
		state: 'key-on',
		reading: 'system-volts',
		title: 'Battery at rest',
		unit: 'V',
		from: [],
		answer: 'charging.battery_rest',
		of: () => 12.6,
		band: () => [12.4, 12.9],
	},
	{
		state: 'cranking',
		reading: 'system-volts',
		title: 'Battery while it cranks',
		unit: 'V',
		from: [],
		answer: 'charging.voltage_cranking',
		of: () => 10.5,
		band: () => [9.6, null],
	},
	{
		state: 'cranking',
		reading: 'fuel-pressure',
		title: 'Fuel pressure',
		unit: 'Pa',
		from: ['fuel.pressure'],
		answer: null,
		of: one('fuel.pressure'),
		band: around(3 * psi),
	},
	{
		state: 'idle',
		reading: 'fuel-pressure',
		title: 'Fuel pressure, regulator hose on',
		unit: 'Pa',
		from: ['fuel.idle_pressure_expected'],
		answer: 'fuel.pressure_idle',
		of: one('fuel.idle_pressure_expected'),
		band: around(2 * psi),
	},
	{
		state: 'idle',
		reading: 'oil-pressure',
		title: 'Oil pressure, hot',
		unit: 'Pa',
		from: ['engine.oil_pressure_needed_idle'],
		answer: 'engine.oil_pressure_idle',
		of: one('engine.oil_pressure_needed_idle'),
		band: atLeast,
	},
	{
		state: 'idle',
		reading: 'system-volts',
		title: 'Volts, running',
		unit: 'V',
		from: [],
		answer: 'charging.voltage_running',
		of: () => 14.1,
		band: () => [13.5, 14.8],
	},
	{
		state: 'idle',
		reading: 'meter-volts',
		title: 'Air meter at the controller',
		unit: 'V',
		from: ['sensors.meter_voltage_idle'],
		answer: 'sensors.meter_volts_idle',
		of: one('sensors.meter_voltage_idle'),
		band: around(0.2),
	},
	{
		state: 'idle',
		reading: 'lambda',
		title: 'Lambda, warm',
		unit: '1',
		from: [],
		answer: null,
		of: () => 1,
		band: around(0.03),
	},
	{
		state: 'idle',
		reading: 'injector-duty',
		title: 'Injector duty',
		unit: '1',
		from: ['injectors.idle_pulse_width', 'engine.idle_speed'],
		answer: null,
		of: read => quotient(read('injectors.idle_pulse_width'), 120, read('engine.idle_speed')),
		band: share(0.35),
	},
	{
		state: '3000-rpm',
		reading: 'oil-pressure',
		title: 'Oil pressure, hot',
		unit: 'Pa',
		from: ['engine.oil_pressure_needed'],
		answer: 'engine.oil_pressure_at_3000',
		of: one('engine.oil_pressure_needed'),
		band: atLeast,
	},
	{
		state: '3000-rpm',
		reading: 'system-volts',
		title: 'Volts, running',
		unit: 'V',
		from: [],
		answer: null,
		of: () => 14.1,
		band: () => [13.5, 14.8],
	},
	{
		state: 'full-load',
		reading: 'boost',
		title: 'Boost, peak',
		unit: 'Pa',
		from: ['boost.target'],
		answer: 'boost.logged_peak',
		of: one('boost.target'),
		band: around(psi),
	},
	{
		state: 'full-load',
		reading: 'fuel-pressure',
		title: 'Fuel pressure',
		unit: 'Pa',
		from: ['fuel.rail_pressure_under_flow'],
		answer: 'fuel.pressure_under_load',
		of: one('fuel.rail_pressure_under_flow'),
		band: around(3 * psi),
	},
	{
		state: 'full-load',
		reading: 'meter-volts',
		title: 'Air meter at the controller',
		unit: 'V',
		from: ['sensors.meter_voltage_peak', 'sensors.meter_top_volts', 'sensors.meter_ceiling'],
		answer: 'sensors.meter_volts_full_load',
		of: meterAtController,
		band: around(0.3),
	},
	{
		state: 'full-load',
		reading: 'lambda',
		title: 'Lambda',
		unit: '1',
		from: ['fuel.lambda_full_load'],
		answer: 'boost.lambda_logged',
		of: one('fuel.lambda_full_load'),
		band: around(0.03),
	},
	{
		state: 'full-load',
		reading: 'injector-duty',
		title: 'Injector duty',
		unit: '1',
		from: ['injectors.duty'],
		answer: 'injectors.duty_logged',
		of: one('injectors.duty'),
		band: share(0.12),
	},
	{
		state: 'full-load',
		reading: 'system-volts',
		title: 'Volts at the pump',
		unit: 'V',
		from: ['fuel.pump_voltage_running'],
		answer: 'fuel.pump_voltage',
		of: one('fuel.pump_voltage_running'),
		band: around(0.5),
	},
];

function quotient(pulse: number | undefined, seconds: number, rpm: number | undefined): number | undefined {
	return pulse === undefined || rpm === undefined ? undefined : (pulse * rpm) / seconds;
}

/** The controller sees the meter through the scaler, and nothing above its ceiling. */
function meterAtController(read: (id: string) => number | undefined): number | undefined {
	const [volts, top, ceiling] = [
		read('sensors.meter_voltage_peak'),
		read('sensors.meter_top_volts'),
		read('sensors.meter_ceiling'),
	];
	if (volts === undefined || top === undefined || ceiling === undefined) return undefined;
	return Math.min(ceiling, (volts * ceiling) / top);
}

/** What you should read, with what was measured beside it. What does not apply to this build is left out. */
export function readings(state: State): ExpectedReading[] {
	const number = (outcome: Outcome): number | undefined => (typeof outcome === 'number' ? outcome : undefined);
	const slot = (id: string) => state.graph.slotOf.get(id)!;
	return expected.flatMap(({ from, of, band, answer, ...rest }): ExpectedReading[] => {
		if (from.some(id => valueIn(state, id) === null)) return [];
		const value = of(id => number(valueIn(state, id)), state) ?? null;
		const [low, high] = value === null ? [null, null] : band(value);
		const given = answer === null ? undefined : state.given.get(slot(answer))?.value;
		return [
			{
				...rest,
				value,
				low,
				high,
				answer,
				measured: typeof given === 'number' ? given : null,
				missing: value === null ? [...new Set(from.flatMap(id => state.missing[slot(id)]!))].sort() : [],
				assumed: value === null ? [] : [...new Set(from.flatMap(id => state.assumed[slot(id)]!))].sort(),
			},
		];
	});
}
