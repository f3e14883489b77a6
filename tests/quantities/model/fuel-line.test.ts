import { describe, expect, test } from 'vitest';
import { close, foot, gallonHour, halving, inch, is, notKnown, num, psi } from '../by-hand.ts';
import { line, lossByHand, q } from '../fuel-by-hand.ts';

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
		expect(all('fuel.line_loss').assumed).toContain('fuel.smallest_bore');
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
