import type { State } from '../graph/solve.ts';
import { psi } from '../physics/constants.ts';
import type { ExpectedReading } from './audit.ts';
import { valueIn } from './conditions.ts';

type Read = (id: string) => number | undefined;

/** What a gauge should show, and how far off it may be before it means something. */
export interface Expected {
	readonly reading: string;
	readonly title: string | ((state: State) => string);
	readonly unit: string;
	/** The answer that holds a measured reading of it. */
	readonly answer: string | null;
	/** The quantities it rests on, for what is missing or assumed. */
	readonly from: readonly string[];
	readonly of: (read: Read) => number | undefined;
	/** The band from the value; an open end is null. */
	readonly band: (value: number, read: Read) => readonly [number, number | null];
}

type Rests = Pick<Expected, 'from' | 'of' | 'band'>;

const around = (off: number) => (value: number) => [value - off, value + off] as const;
const share = (part: number) => (value: number) => [value * (1 - part), value * (1 + part)] as const;
const atLeast = (value: number) => [value, null] as const;

/** A figure of this car. */
const figure = (id: string, band: Expected['band']): Rests => ({ from: [id], of: read => read(id), band });
/** What every such car reads: common practice. */
const usual = (value: number, low: number, high: number | null): Rests => ({
	from: [],
	of: () => value,
	band: () => [low, high],
});

/** With its hose on the manifold a regulator follows the vacuum: 8 to 10 psi under the set pressure at idle. */
const railTitle = (state: State) =>
	valueIn(state, 'fuel.reference') === 'manifold' ? 'Fuel pressure, regulator hose on' : 'Fuel pressure';

const running = { reading: 'system-volts', title: 'Volts, running', unit: 'V', ...usual(14.1, 13.5, 14.8) } as const;
const closedLoop = { reading: 'lambda', title: 'Lambda, warm', unit: '1', ...usual(1, 0.97, 1.03) } as const;

/** The controller sees the meter through the scaler, and nothing above its ceiling. */
const meterAtFullLoad: Rests = {
	from: ['sensors.meter_voltage_peak', 'sensors.meter_top_volts', 'sensors.meter_ceiling'],
	of: read => {
		const [volts, top, ceiling] = [
			read('sensors.meter_voltage_peak'),
			read('sensors.meter_top_volts'),
			read('sensors.meter_ceiling'),
		];
		if (volts === undefined || top === undefined || ceiling === undefined) return undefined;
		return Math.min(ceiling, (volts * ceiling) / top);
	},
	band: (value, read) => [value - 0.3, Math.min(value + 0.3, read('sensors.meter_ceiling')!)],
};

const meterTitle = (state: State) => {
	const [volts, top] = ['sensors.meter_voltage_peak', 'sensors.meter_top_volts'].map(id => valueIn(state, id));
	const over = typeof volts === 'number' && typeof top === 'number' && volts > top;
	return `Air meter at the controller${over ? ' (it stands at its ceiling: it should not)' : ''}`;
};

/** A port injector opens once a cycle, two turns: duty is pulse over 120 s a rpm. */
const idleDuty: Rests = {
	from: ['injectors.idle_pulse_width', 'engine.idle_speed'],
	of: read => {
		const [pulse, rpm] = [read('injectors.idle_pulse_width'), read('engine.idle_speed')];
		return pulse === undefined || rpm === undefined ? undefined : (pulse * rpm) / 120;
	},
	band: share(0.35),
};

/** The readings of a car that is right, in the order they are met. Bands are common practice unless the figure has its own. */
export const expected: Readonly<Record<ExpectedReading['state'], readonly Expected[]>> = {
	'key-on': [
		{
			reading: 'fuel-pressure',
			title: 'Fuel pressure, pump primed',
			unit: 'Pa',
			answer: 'fuel.pressure_key_on',
			...figure('fuel.pressure', around(2 * psi)),
		},
		{
			reading: 'system-volts',
			title: 'Battery at rest',
			unit: 'V',
			answer: 'charging.battery_rest',
			...usual(12.6, 12.4, 12.9),
		},
	],
	cranking: [
		{
			reading: 'system-volts',
			title: 'Battery while it cranks',
			unit: 'V',
			answer: 'charging.voltage_cranking',
			...usual(10.5, 9.6, null),
		},
		{
			reading: 'fuel-pressure',
			title: 'Fuel pressure',
			unit: 'Pa',
			answer: null,
			...figure('fuel.pressure', around(3 * psi)),
		},
	],
	idle: [
		{
			reading: 'fuel-pressure',
			title: railTitle,
			unit: 'Pa',
			answer: 'fuel.pressure_idle',
			...figure('fuel.idle_pressure_expected', around(2 * psi)),
		},
		{
			reading: 'oil-pressure',
			title: 'Oil pressure, hot',
			unit: 'Pa',
			answer: 'engine.oil_pressure_idle',
			...figure('engine.oil_pressure_needed_idle', atLeast),
		},
		{ ...running, answer: 'charging.voltage_running' },
		{
			reading: 'meter-volts',
			title: 'Air meter at the controller',
			unit: 'V',
			answer: 'sensors.meter_volts_idle',
			...figure('sensors.meter_voltage_idle', around(0.2)),
		},
		{ ...closedLoop, answer: null },
		{ reading: 'injector-duty', title: 'Injector duty', unit: '1', answer: null, ...idleDuty },
	],
	'3000-rpm': [
		// Without load the manifold's vacuum is about that of idle.
		{
			reading: 'fuel-pressure',
			title: railTitle,
			unit: 'Pa',
			answer: null,
			...figure('fuel.idle_pressure_expected', around(3 * psi)),
		},
		{
			reading: 'oil-pressure',
			title: 'Oil pressure, hot',
			unit: 'Pa',
			answer: 'engine.oil_pressure_at_3000',
			...figure('engine.oil_pressure_needed', atLeast),
		},
		{ ...running, answer: null },
		{ ...closedLoop, answer: null },
	],
	'full-load': [
		{
			reading: 'boost',
			title: 'Boost, peak',
			unit: 'Pa',
			answer: 'boost.logged_peak',
			...figure('boost.target', around(psi)),
		},
		{
			reading: 'fuel-pressure',
			title: 'Fuel pressure',
			unit: 'Pa',
			answer: 'fuel.pressure_under_load',
			...figure('fuel.rail_pressure_under_flow', around(3 * psi)),
		},
		{
			reading: 'meter-volts',
			title: meterTitle,
			unit: 'V',
			answer: 'sensors.meter_volts_full_load',
			...meterAtFullLoad,
		},
		{
			reading: 'lambda',
			title: 'Lambda',
			unit: '1',
			answer: 'boost.lambda_logged',
			...figure('fuel.lambda_full_load', around(0.03)),
		},
		{
			reading: 'injector-duty',
			title: 'Injector duty',
			unit: '1',
			answer: 'injectors.duty_logged',
			...figure('injectors.duty', share(0.12)),
		},
		{
			reading: 'system-volts',
			title: 'Volts at the pump',
			unit: 'V',
			answer: 'fuel.pump_voltage',
			...figure('fuel.pump_voltage_running', around(0.5)),
		},
	],
};
