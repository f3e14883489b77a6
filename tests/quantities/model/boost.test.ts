import { describe, expect, test } from 'vitest';
import { buildSheet } from '../../support/model.ts';
import { close, inch, is, notKnown, num, psi, sheetOf, solved } from '../by-hand.ts';

const boosted = buildSheet('boosted');
const q = (answers: Parameters<typeof sheetOf>[0]) => solved(sheetOf(answers, boosted));

describe('limits on boost', () => {
	const limits = [
		'injectors.boost_limit',
		'fuel.pump_boost_limit',
		'sensors.meter_boost_limit',
		'ignition.boost_limit',
		'engine.head_boost_limit',
		'driveline.clutch_boost_limit',
		'driveline.gearbox_boost_limit',
	];
	const strong = {
		'injectors.rated_flow': num(300, 'lb/h'),
		'ignition.gap': num(0.008, 'in'),
		'driveline.clutch_torque': num(3000, 'lb-ft'),
		'driveline.gearbox_torque': num(3000, 'lb-ft'),
		'engine.fastener_torque': num(300, 'lb-ft'),
		'fuel.pump_curve': num(
			[
				[40, 400],
				[250, 400],
			],
			['psi', 'gal/h'],
		),
		'fuel.line_bore': num(1, 'in'),
		'fuel.smallest_bore': notKnown,
		'sensors.meter_curve': num(
			[
				[0.5, 5],
				[5, 6000],
			],
			['V', 'kg/h'],
		),
		'sensors.meter_scaler': is('none'),
	};

	test('that are not reached are at 40 psi, above', () => {
		const all = q({ ...strong, 'fuel.pressure': num(80, 'psi') });
		for (const id of limits) expect(all(id), id).toMatchObject({ value: 275790, bound: 'above' });
	});

	test('end on a fixed rail where nothing is left across the injectors', () => {
		const fixed = q({ ...strong, 'fuel.reference': is('atmosphere'), 'fuel.pressure': num(32, 'psi') });
		close(fixed('boost.most').value, 32 * psi, 'the set point');
		for (const id of limits.filter(id => !id.startsWith('injectors.'))) {
			expect(fixed(id), id).toMatchObject({ bound: 'above' });
			close(fixed(id).value, 32 * psi, id);
		}
		// The injectors give out before: their flow falls to nothing on the way.
		expect(fixed('injectors.boost_limit')).toMatchObject({ bound: undefined });
		expect(Number(fixed('injectors.boost_limit').value)).toBeLessThan(32 * psi);
	});

	test('passed without any boost are at 0, below', () => {
		const weak = q({ 'injectors.rated_flow': num(8, 'lb/h'), 'driveline.gearbox_torque': num(60, 'lb-ft') });
		for (const id of ['injectors.boost_limit', 'driveline.gearbox_boost_limit'])
			expect(weak(id), id).toMatchObject({ value: 0, bound: 'below' });
	});

	test('do not need the target: it is what they vary', () => {
		// A dyno curve was measured at the target, so torque at another boost starts from there.
		const open = q({ 'boost.target': notKnown, 'engine.dyno_curve': notKnown });
		for (const id of limits) expect(open(id).missing, id).not.toContain('boost.target');
		expect(open('injectors.duty').missing).toContain('boost.target');
	});
});

describe('the lowest limit', () => {
	test('is the lowest of those that apply', () => {
		const all = q({});
		const spares = ['fuel.pump_spare', 'sensors.meter_spare', 'ignition.spare', 'fuel.rail', 'injectors'];
		const strong = ['knock', 'head', 'piston', 'gasket', 'rod', 'block', 'ring_gap'].map(part => `engine.${part}`);
		const others = ['driveline.clutch', 'driveline.gearbox', 'sensors.map', 'boost.charge_temp', 'boost.compressor'];
		const ids = [...spares, ...strong, ...others].map(id =>
			id === 'injectors' ? `${id}.boost_limit` : `${id}_boost_limit`,
		);
		const values = ids.map(id => all(id).value).filter(value => typeof value === 'number');
		expect(values.length).toBeGreaterThan(12);
		expect(all('boost.lowest_limit').value).toBe(Math.min(...values));
	});

	test('is reported though one is not known, if a known one lies under the target; else not', () => {
		const low = { 'driveline.gearbox_torque': num(150, 'lb-ft'), 'ignition.gap': notKnown };
		expect(q(low)('boost.lowest_limit').value).toBe(q(low)('driveline.gearbox_boost_limit').value);
		const high = { 'boost.target': num(1, 'psi'), 'ignition.gap': notKnown };
		expect(q(high)('boost.lowest_limit')).toMatchObject({ value: undefined, missing: ['ignition.gap'] });
	});
});

describe('charge air', () => {
	test('without an intercooler is as hot as it leaves the compressor, and loses nothing on the way', () => {
		const bare = q({ 'boost.intercooler': is('none') });
		expect(bare('boost.charge_temp').value).toBe(bare('boost.compressor_outlet_temp').value);
		const ambient = Number(bare('air.ambient_pressure').value);
		close(
			bare('boost.pressure_ratio').value,
			Number(bare('boost.manifold_pressure').value) / (ambient - 1000),
			'ratio',
		);
	});

	test('through water is cooled more than through air, as is usual', () => {
		const kinds = (['air-to-air', 'air-to-water'] as const).map(kind =>
			q({ 'boost.intercooler': is(kind), 'boost.intercooler_effectiveness': notKnown }),
		);
		const [air, water] = kinds.map(kind => Number(kind('boost.charge_temp').value));
		expect(water).toBeLessThan(air!);
		expect(kinds[0]!('boost.charge_temp').assumed).toContain('boost.intercooler_effectiveness');
	});

	test('with the intercooler not known lacks just that', () => {
		expect(q({ 'boost.intercooler': notKnown })('boost.charge_temp').missing).toEqual(['boost.intercooler']);
	});

	test('goes through its pipe the faster the narrower it is', () => {
		const speed = (bore: number) => Number(q({ 'boost.pipe_bore': num(bore, 'in') })('boost.pipe_velocity').value);
		close(speed(2) / speed(4), 4, 'four times the area');
		const wide = q({ 'boost.pipe_bore': num(3, 'in') });
		const flow = Number(wide('engine.air_flow').value) / Number(wide('boost.manifold_density').value);
		close(wide('boost.pipe_velocity').value, flow / (Math.PI * (1.5 * inch) ** 2), 'pipe');
	});
});
