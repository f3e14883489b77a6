import { describe, expect, test } from 'vitest';
import { answered, problemsOf } from './problems.ts';

/** Refused at the answer itself, in words that say what is taken. */
const refused = (id: string, answer: unknown, accepted: RegExp) => {
	const [problem, ...more] = problemsOf(answered(id, answer));
	expect(problem?.path).toBe(id);
	expect(problem?.accepted).toMatch(accepted);
	expect(more).toEqual([]);
};

describe('a number', () => {
	test.each([
		['as text', 'engine.bore', '4 in', 'in', /a JSON number, not text.*2.5 to 5.5 in/],
		['as a list', 'engine.bore', [4], 'in', /a number/],
		['true', 'engine.bore', true, 'in', /a number/],
		['null', 'engine.bore', null, 'in', /a number/],
		['under its range', 'engine.bore', -4, 'in', /^2.5 to 5.5 in$/],
		['over its range, in another unit', 'engine.bore', 1000, 'mm', /^63.5 to 139.7 mm$/],
		['huge', 'boost.target', 1e9, 'psi', /^0.2 to 50 psi$/],
		['past all numbers', 'boost.target', 1e308, 'MPa', /too large/],
		['a dash size that nobody makes', 'fuel.line_bore', 7, 'AN', /no dash size 7/],
		['half a wire gauge', 'fuel.pump_wire_gauge', 12.5, 'AWG', /whole number/],
		['a wire gauge out of range', 'fuel.pump_wire_gauge', 40, 'AWG', /^1\/0 AWG to 26 AWG$/],
		['a cable out of range', 'charging.cable_gauge', 40, 'AWG', /^4\/0 AWG to 22 AWG$/],
		[
			'a flow by volume out of range, answered by volume',
			'injectors.rated_flow',
			9000,
			'cc/min',
			/^52.5 to 4200 cc\/min$/,
		],
		['a flow by mass out of range, answered by mass', 'fuel.pump_flow', 9000, 'lb/h', /^12.43 to 6217 lb\/h$/],
	] as const)('%s is refused', (_, id, value, unit, accepted) => {
		refused(id, { value, unit }, accepted);
	});

	test('that JSON can only read as infinity is refused, and called by its name', () => {
		const [problem] = problemsOf(answered('engine.bore', { value: 'huge', unit: 'in' }).replace('"huge"', '1e999'));
		expect(problem).toMatchObject({ path: 'engine.bore', found: 'a number too large to read' });
	});

	test('at the very end of its range is inside, in any unit', () => {
		for (const [value, unit] of [
			[5.5, 'in'],
			[139.7, 'mm'],
			[2.5, 'in'],
			[63.5, 'mm'],
		] as const)
			expect(problemsOf(answered('engine.bore', { value, unit }))).toEqual([]);
		expect(problemsOf(answered('fuel.pump_wire_gauge', { value: 10, unit: 'AWG' }))).toEqual([]);
	});
});

describe('a whole number, a choice, a pattern', () => {
	test.each([
		['engine.year', 1999.5, /a whole number/],
		['engine.year', '1999', /a whole number/],
		['engine.year', 1899, /^1950 to 2100$/],
		['boost.kind', 'nitrous', /none, turbocharger, supercharger/],
		['boost.kind', ['none'], /one of/],
		['boost.kind', 1, /one of/],
		['ignition.boot_angle', 45, /straight/],
		['sensors.crank_teeth_engine', '36', /36-1/],
		['sensors.crank_teeth_engine', 36, /36-1/],
		['sensors.crank_teeth_engine', '36-40', /places, and of them the teeth that are missing/],
		['sensors.crank_teeth_engine', '36-18', /36-1/],
	] as const)('%s %j is refused', (id, value, accepted) => refused(id, { value }, accepted));

	test('a count of cylinders that no engine here has is refused by itself', () => {
		const [problem] = problemsOf(answered('engine.cylinders', { value: 3 }));
		expect(problem).toMatchObject({ path: 'engine.cylinders', found: '3', accepted: '4 to 12' });
	});
});

describe('a list', () => {
	test.each([
		['engine.history', 'overheated', undefined, /a list of/],
		['harness.pump_cutoff', 'a prayer', undefined, /one of crash-switch/],
		['harness.pump_cutoff', ['none', 'crash-switch'], undefined, /none by itself/],
		['engine.history', ['drowned'], undefined, /a list of.*overheated/],
		['engine.history', ['opened-up', 'opened-up'], undefined, /each once/],
		['engine.history', [undefined], undefined, /a list of/],
		['engine.history', ['none-known', 'opened-up'], undefined, /none-known by itself/],
		['boost.check_valves', ['crankcase', 'none'], undefined, /none by itself/],
		['harness.routing', ['none-of-these', 'near-exhaust'], undefined, /none-of-these by itself/],
		['engine.compression', [150, 150], 'psi', /^8 readings/],
		['engine.compression', new Array(9).fill(150), 'psi', /^8 readings/],
		['engine.compression', new Array(8).fill(null), 'psi', /not all null/],
		['engine.compression', [150, '150', 150, 150, 150, 150, 150, 150], 'psi', /^8 readings/],
		['engine.compression', [150, -1, 150, 150, 150, 150, 150, 150], 'psi', /0 to 400 psi/],
		['engine.compression', 150, 'psi', /^8 readings/],
		['engine.firing_order', [1, 1, 4, 3, 6, 5, 7, 2], undefined, /1 to 8 once/],
		['engine.firing_order', [1, 8, 4, 3, 6, 5, 7], undefined, /1 to 8 once/],
		['engine.firing_order', [0, 8, 4, 3, 6, 5, 7, 2], undefined, /1 to 8 once/],
		['engine.firing_order', '18436572', undefined, /1 to 8 once/],
		['ignition.towers', [], undefined, /pairs/],
		['ignition.towers', [[1, 6, 3]], undefined, /pairs/],
		['ignition.towers', [[1, 9]], undefined, /from 1 to 8/],
		['ignition.towers', [[1.5, 6]], undefined, /pairs/],
		[
			'ignition.towers',
			[
				[1, 6],
				[1, 3],
			],
			undefined,
			/no cylinder twice/,
		],
		['ignition.towers', [[4, 4]], undefined, /no cylinder twice/],
	] as const)('%s %j is refused', (id, value, unit, accepted) =>
		refused(id, { value, ...(unit ? { unit } : {}) }, accepted),
	);

	test('of none of the choices is an answer', () => {
		expect(problemsOf(answered('engine.history', { value: [] }))).toEqual([]);
		expect(problemsOf(answered('engine.history', { value: ['none-known'] }))).toEqual([]);
	});

	test('of pairs need not name every cylinder', () => {
		expect(
			problemsOf(
				answered('ignition.towers', {
					value: [
						[1, 6],
						[3, 5],
					],
				}),
			),
		).toEqual([]);
	});
});

describe('a curve', () => {
	const curve = (value: unknown, unit: unknown = ['V', 'kg/h']) => ({ value, unit });

	test.each([
		['of one point', [[1, 10]], /2 to 500/],
		['of no list', { 1: 10 }, /points/],
		[
			'that stands still',
			[
				[1, 10],
				[1, 20],
			],
			/x rising/,
		],
		[
			'that falls back',
			[
				[2, 10],
				[1, 20],
			],
			/x rising/,
		],
		[
			'under 0',
			[
				[-1, 10],
				[1, 20],
			],
			/none under 0/,
		],
		[
			'with a point of three',
			[
				[1, 10, 3],
				[2, 20, 3],
			],
			/points/,
		],
		[
			'with a point of text',
			[
				['1', 10],
				[2, 20],
			],
			/points/,
		],
		[
			'with a hole',
			[
				[1, null],
				[2, 20],
			],
			/points/,
		],
		[
			'with volts that no car has',
			[
				[1, 10],
				[5000, 20],
			],
			/up to 100 V/,
		],
		[
			'with a flow that no engine has',
			[
				[1, 10],
				[5, 1e300],
			],
			/up to 18000 kg\/h/,
		],
		['of too many points', Array.from({ length: 501 }, (_, x) => [x / 10, x]), /2 to 500/],
	] as const)('%s is refused', (_, value, accepted) => refused('sensors.meter_curve', curve(value), accepted));

	test('is taken in any units of its kinds, flow by mass or volume', () => {
		expect(
			problemsOf(
				answered(
					'sensors.meter_curve',
					curve(
						[
							[600, 20],
							[5000, 1100],
						],
						['mV', 'lb/h'],
					),
				),
			),
		).toEqual([]);
		const points = [
			[30, 60],
			[60, 40],
		];
		for (const flow of ['gal/h', 'lph', 'lb/h', 'kg/h'])
			expect(problemsOf(answered('fuel.pump_curve', curve(points, ['psi', flow])))).toEqual([]);
	});
});

describe('rows', () => {
	const row = { circuit: 'check lamp', from: 'C1-12', to: '', state: 'to-do' };

	test.each([
		['charging.loads', [['fans']], 'A', /a name and an amount/],
		['charging.loads', [['', 28]], 'A', /a name and an amount/],
		['charging.loads', [[28, 'fans']], 'A', /a name and an amount/],
		['charging.loads', [['fans', '28']], 'A', /a name and an amount/],
		['charging.loads', [['fans', -1]], 'A', /0 to 400 A/],
		['charging.loads', [['fans', 401]], 'A', /0 to 400 A/],
		['charging.loads', { fans: 28 }, 'A', /a list of/],
		['harness.codes', ['P9999'], undefined, /P0340/],
		['harness.codes', ['p0340'], undefined, /P0340/],
		['harness.codes', 'P0340', undefined, /a list of/],
		['harness.circuits', [{ circuit: 'x' }], undefined, /done, to-do or not-used/],
		['harness.circuits', [{ ...row, circuit: ' ' }], undefined, /fan relay/],
		['harness.circuits', [{ ...row, circuit: 7 }], undefined, /fan relay/],
		['harness.circuits', [{ ...row, state: 'maybe' }], undefined, /done, to-do or not-used/],
		['harness.circuits', [{ ...row, load: -1 }], undefined, /load in A/],
		['harness.circuits', [{ ...row, length: 1e9 }], undefined, /0 to 1000/],
		['harness.circuits', [{ ...row, from: 3 }], undefined, /fan relay/],
		['harness.circuits', [{ ...row, to: null }], undefined, /fan relay/],
		['harness.circuits', [{ ...row, colour: 'red' }], undefined, /fan relay/],
		['harness.circuits', [[]], undefined, /fan relay/],
		['harness.circuits', new Array(501).fill(row), undefined, /a list of/],
	] as const)('%s %j are refused', (id, value, unit, accepted) =>
		refused(id, { value, ...(unit ? { unit } : {}) }, accepted),
	);

	test('of loads are judged in their own unit', () => {
		expect(
			problemsOf(
				answered('charging.loads', {
					value: [
						['fans', 28000],
						['clock', 5],
					],
					unit: 'mA',
				}),
			),
		).toEqual([]);
	});

	test('of circuits need no plugs, load or length', () => {
		expect(problemsOf(answered('harness.circuits', { value: [{ circuit: 'x', state: 'not-used' }] }))).toEqual([]);
	});

	test('may be none', () => {
		for (const [id, unit] of [
			['charging.loads', { unit: 'A' }],
			['harness.codes', {}],
			['harness.circuits', {}],
		] as const)
			expect(problemsOf(answered(id, { value: [], ...unit }))).toEqual([]);
	});
});
