import { describe, expect, test } from 'vitest';
import { close, foot, gallonHour, halving, inch, is, notKnown, num, poundHour, psi } from '../by-hand.ts';
import { line, lossByHand, q } from '../fuel-by-hand.ts';

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

	test('is left with no volts, and so not worked out, by a wire that would lose more than there are', () => {
		const thin = q({
			...returnless,
			'fuel.pump_voltage': notKnown,
			'charging.voltage_running': num(14, 'V'),
			'fuel.pump_current': num(40, 'A'),
			'fuel.pump_wire_gauge': num(26, 'AWG'),
			'fuel.pump_wire_length': num(30, 'ft'),
		});
		expect(thin('fuel.pump_wire_drop').value).toBeGreaterThan(14);
		expect(thin('fuel.pump_voltage_running').value).toBe(0);
		expect(thin('fuel.pump_available')).toMatchObject({ value: undefined, missing: [] });
		expect(thin('fuel.pump_available').broken).toContain('voltage ratio is 0');
	});

	test('that cannot hold the set point lets the rail fall to where it gives the flow', () => {
		const weak = q({
			...returnless,
			'fuel.rail': is('returnless-controlled-pump'),
			'fuel.pump_flow': num(40.5, 'gal/h'),
			'boost.target': num(10, 'psi'),
		});
		const flow = Number(weak('fuel.flow').value);
		const gives = (pressure: number) =>
			40.5 * gallonHour * 745 * (1 - (0.008 * Math.max(0, pressure - 40 * psi)) / psi);
		expect(gives(43.5 * psi)).toBeLessThan(flow);
		expect(gives(40 * psi)).toBeGreaterThan(flow);
		const held = halving(pressure => flow - gives(pressure), 0, 43.5 * psi);
		const fallen = held - lossByHand(flow, inch, 14 * foot, 5, null);
		close(weak('fuel.rail_pressure_under_flow').value, fallen, 'rail');
		expect(fallen).toBeLessThan(43 * psi);
	});
});
