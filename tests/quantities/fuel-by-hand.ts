import { buildSheet } from '../support/model.ts';
import { is, notKnown, num, sheetOf, solved } from './by-hand.ts';

/** The boosted build with other answers. */
export const q = (answers: Parameters<typeof sheetOf>[0]) => solved(sheetOf(answers, buildSheet('boosted')));

/** Petrol in a line, SI, by Colebrook iterated from the rough end: 1.5 micron of roughness, 0.9 velocity heads an elbow. */
export function lossByHand(
	flow: number,
	bore: number,
	length: number,
	elbows: number,
	smallest: number | null,
): number {
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

/** Petrol through 14 ft of line with five elbows and a narrow place, from a pump of which one point is known. */
export const line = {
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
