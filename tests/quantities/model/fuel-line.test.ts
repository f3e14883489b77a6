import { describe, expect, test } from 'vitest';
import { buildSheet } from '../../support/model.ts';
import {
	close,
	foot,
	gallonHour,
	halving,
	inch,
	is,
	notKnown,
	num,
	poundHour,
	psi,
	sheetOf,
	told,
} from '../by-hand.ts';

const q = (answers: Parameters<typeof sheetOf>[0]) => told(sheetOf(answers, buildSheet('boosted')));

/** Petrol in a line, SI, by Colebrook iterated from the rough end: 1.5 micron of roughness, 0.9 velocity heads an elbow. */
function lossByHand(flow: number, bore: number, length: number, elbows: number, smallest: number | null): number {
	const [density, viscosity] = [745, 0.55e-6];
	const speed = (diameter: number) => flow / (density * (Math.PI / 4) * diameter ** 2);
	const reynolds = (speed(bore) * bore) / viscosity;
	let factor = 0.03;
	for (let i = 0; i < 100; i++)
		factor = (-2 * Math.log10(1.5e-6 / bore / 3.7 + 2.51 / (reynolds * Math.sqrt(factor)))) ** -2;
	const wall = ((factor * length) / bore + 0.9 * elbows) * (density / 2) * speed(bore) ** 2;
	if (smallest === null) return wall;
	const beta2 = (smallest / bore) ** 2;
	return wall + (0.5 * (1 - beta2) + (1 - beta2) ** 2) * (density / 2) * speed(smallest) ** 2;
}

const line = {
	'fuel.kind': is('petrol'),
	'fuel.pressure': num(43.5, 'psi'),
	'fuel.reference': is('atmosphere'),
	'fuel.line_bore': num(0.31, 'in'),
	'fuel.line_length': num(14, 'ft'),
	'fuel.elbows': is(5),
	'fuel.smallest_bore': num(0.25, 'in'),
	'fuel.pump_curve': notKnown,
	'fuel.pump_flow': num(60, 'gal/h'),
	'fuel.pump_flow_pressure': num(40, 'psi'),
	'fuel.pump_flow_voltage': num(13.5, 'V'),
	'fuel.pump_voltage': num(13.5, 'V'),
};

const loss = (flow: number, elbows = 5, smallest: number | null = 0.25 * inch) =>
	lossByHand(flow, 0.31 * inch, 14 * foot, elbows, smallest);

/** One point: 60 gal/h at 40 psi, less 0.8 % a psi above. */
const pump = (pressure: number) => 60 * gallonHour * 745 * (1 - (0.008 * (pressure - 40 * psi)) / psi);

describe('the line', () => {
	test('of a returnless rail carries what the engine uses', () => {
		const all = q({ ...line, 'fuel.rail': is('returnless') });
		const flow = Number(all('fuel.flow').value);
		expect(all('fuel.line_flow').value).toBe(flow);
		close(all('fuel.line_loss').value, loss(flow), 'loss');
		close(all('fuel.line_velocity').value, flow / (745 * (Math.PI / 4) * (0.31 * inch) ** 2), 'speed');
		close(
			all('fuel.line_reynolds').value,
			(Number(all('fuel.line_velocity').value) * 0.31 * inch) / 0.55e-6,
			'Reynolds',
		);
		close(all('fuel.pump_pressure').value, 43.5 * psi + loss(flow), 'pump pressure');
		close(all('fuel.rail_pressure_under_flow').value, 43.5 * psi - loss(flow), 'the regulator sits before the line');
	});

	test('of a return rail carries all that the pump gives against the loss that this flow makes', () => {
		const all = q({ ...line, 'fuel.rail': is('return') });
		const flow = halving(flow => flow - pump(43.5 * psi + loss(flow)), 0.001, 0.1);
		close(all('fuel.line_flow').value, flow, 'flow');
		close(all('fuel.line_loss').value, loss(flow), 'loss');
		close(all('fuel.pump_available').value, flow, 'what arrives is what is given');
		close(all('fuel.pump_margin').value, flow / Number(all('fuel.flow').value) - 1, 'margin');
		close(all('fuel.rail_pressure_under_flow').value, 43.5 * psi, 'held');
	});

	test('counts four elbows where nobody counted, and no narrow place where none was named', () => {
		const all = q({ ...line, 'fuel.rail': is('returnless'), 'fuel.elbows': notKnown, 'fuel.smallest_bore': notKnown });
		close(all('fuel.line_loss').value, loss(Number(all('fuel.flow').value), 4, null), 'loss');
		expect(all('fuel.line_loss').assumed).toContain('fuel.elbows');
	});

	test('loses the usual 3 psi where bore or length is not known, and says so', () => {
		for (const id of ['fuel.line_bore', 'fuel.line_length']) {
			const all = q({ ...line, [id]: notKnown });
			close(all('fuel.line_loss').value, 3 * psi, id);
			expect(all('fuel.line_loss').assumed).toContain('fuel.line_loss');
		}
		expect(q({ ...line, 'fuel.line_bore': notKnown })('fuel.line_velocity').missing).toEqual(['fuel.line_bore']);
	});

	test('in which nothing flows has no friction factor, and breaks nothing', () => {
		const curve = num(
			[
				[30, 50],
				[43, 0],
				[90, 0],
			],
			['psi', 'gal/h'],
		);
		const spent = q({ ...line, 'fuel.rail': is('return'), 'fuel.pump_curve': curve });
		expect(spent('fuel.line_flow').value).toBe(0);
		expect(spent('fuel.line_friction_factor')).toMatchObject({ value: null, broken: undefined });
		expect(spent('fuel.pump_margin').value).toBe(-1);
	});
});

describe('the pump', () => {
	const curve = num(
		[
			[30, 70],
			[50, 60],
			[70, 40],
		],
		['psi', 'gal/h'],
	);
	const returnless = {
		...line,
		'fuel.rail': is('returnless'),
		'fuel.line_bore': num(1, 'in'),
		'fuel.smallest_bore': notKnown,
	};

	test('of which a curve is known follows it at its own volts: Q(p) = r Qc(p / r^2)', () => {
		const r = Math.sqrt(0.9);
		// At p = 45 psi and r^2 = 0.9 the curve is read at its own point of 50 psi.
		const volts = 13.5 * r;
		const all = q({
			...returnless,
			'fuel.pump_curve': curve,
			'fuel.pump_voltage': num(volts, 'V'),
			'fuel.pressure': num(45, 'psi'),
		});
		close(all('fuel.pump_pressure').value, 45 * psi, 'hardly any loss in a line of an inch');
		close(all('fuel.pump_available').value, r * 60 * gallonHour * 745, 'available');
	});

	test('is not proven beyond the end of its curve, whatever it is asked for there', () => {
		for (const rail of ['return', 'returnless', 'returnless-controlled-pump']) {
			const beyond = q({
				...returnless,
				'fuel.rail': is(rail),
				'fuel.pump_curve': curve,
				'fuel.pressure': num(75, 'psi'),
			});
			for (const id of ['fuel.pump_available', 'fuel.pump_margin'])
				expect(beyond(id), `${rail} ${id}`).toMatchObject({ value: undefined, missing: ['fuel.pump_curve'] });
		}
	});

	test('on a return rail is not proven either where its curve ends before its flow settles', () => {
		// At the rail's pressure the curve is still there; with the loss of its own flow on top it is not.
		const thin = q({
			...line,
			'fuel.rail': is('return'),
			'fuel.line_bore': num(0.2, 'in'),
			'fuel.pump_curve': num(
				[
					[30, 70],
					[45, 65],
				],
				['psi', 'gal/h'],
			),
		});
		for (const id of ['fuel.line_flow', 'fuel.pump_available', 'fuel.pump_margin'])
			expect(thin(id), id).toMatchObject({ value: undefined, missing: ['fuel.pump_curve'] });
	});

	test('may be rated at no pressure at all', () => {
		const free = q({ ...returnless, 'fuel.pump_flow_pressure': num(0, 'psi') });
		close(free('fuel.pump_available').value, 60 * gallonHour * 745 * (1 - 0.008 * 43.5), 'free flow, falling', 2e-3);
	});

	test('given by mass is turned at the density of its fuel, and says so', () => {
		const mass = q({ ...returnless, 'fuel.pump_flow': num(372, 'lb/h'), 'fuel.pump_flow_pressure': num(60, 'psi') });
		close(mass('fuel.pump_available').value, 372 * poundHour, 'no density enters a mass flow');
		expect(mass('fuel.pump_available').assumed).toContain('fuel.density');
		const fuelNotKnown = q({ ...returnless, 'fuel.pump_flow': num(372, 'lb/h'), 'fuel.kind': notKnown });
		expect(fuelNotKnown('fuel.pump_available').missing).toEqual(['fuel.kind']);
	});

	test('has the volts measured at it, else the running volts less the drop, else 12.8', () => {
		const wire = {
			'fuel.pump_current': num(10, 'A'),
			'fuel.pump_wire_gauge': num(10, 'AWG'),
			'fuel.pump_wire_length': num(10, 'ft'),
		};
		const running = { 'charging.voltage_running': num(14, 'V'), ...wire };
		const volts = (answers: object) => q({ ...running, ...answers })('fuel.pump_voltage_running');
		expect(volts({ 'fuel.pump_voltage': num(13.1, 'V') }).value).toBe(13.1);
		const drop = Number(q(running)('fuel.pump_wire_drop').value);
		close(volts({ 'fuel.pump_voltage': notKnown }).value, 14 - drop, 'less the drop');
		for (const gone of ['charging.voltage_running', 'fuel.pump_current'])
			expect(volts({ 'fuel.pump_voltage': notKnown, [gone]: notKnown })).toMatchObject({
				value: 12.8,
				assumed: ['fuel.pump_voltage'],
			});
	});

	test('that cannot hold the set point lets the rail fall to where it gives the flow', () => {
		const weak = q({
			...returnless,
			'fuel.rail': is('returnless-controlled-pump'),
			'fuel.pump_flow': num(41, 'gal/h'),
			'boost.target': num(10, 'psi'),
		});
		const flow = Number(weak('fuel.flow').value);
		const gives = (pressure: number) => 41 * gallonHour * 745 * (1 - (0.008 * Math.max(0, pressure - 40 * psi)) / psi);
		expect(gives(43.5 * psi)).toBeLessThan(flow);
		expect(gives(40 * psi)).toBeGreaterThan(flow);
		const held = halving(pressure => flow - gives(pressure), 0, 43.5 * psi);
		const fallen = held - lossByHand(flow, inch, 14 * foot, 5, null);
		close(weak('fuel.rail_pressure_under_flow').value, fallen, 'rail');
		expect(fallen).toBeLessThan(43 * psi);
	});
});
