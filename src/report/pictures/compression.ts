import { scaleLinear } from 'd3-scale';
import type { Assessment } from '../../audit/assess.ts';
import { valueIn } from '../../audit/conditions.ts';
import { type BankLayout, banksOf, layoutFromOrder } from '../../physics/firing-order.ts';
import { drawing, label, round, rule } from './draw.ts';

/** Compression by cylinder, bank by bank, with the line that 75 % of the highest makes. Null without readings. */
export function drawCompression({ state, wording }: Assessment): string | null {
	const readings = valueIn(state, 'engine.compression') as (number | null)[] | undefined;
	if (!Array.isArray(readings)) return null;
	const highest = Math.max(...readings.map(reading => reading ?? 0));
	const banks = banksIn(state, readings.length) ?? [readings.map((_, index) => index + 1)];
	const y = scaleLinear([0, highest * 1.1], [220, 50]);
	const show = (value: number) => wording.show('engine.compression_highest', value)!;
	const step = 540 / readings.length;
	let place = 0;
	const bars = banks.flatMap((bank, index) =>
		bank.flatMap(cylinder => {
			const x = 40 + place++ * step + index * 20;
			const reading = readings[cylinder - 1] ?? null;
			const low = reading !== null && reading < 0.75 * highest;
			return [
				reading === null
					? label(x + step / 2, 215, 'not measured', { anchor: 'middle', size: 9 })
					: `<rect x="${round(x + 6)}" y="${round(y(reading))}" width="${round(step - 12)}" height="${round(220 - y(reading))}" fill="${low ? '#fff' : '#8a8a8a'}" stroke="#111" stroke-width="${low ? 3 : 1}"/>`,
				...(reading === null
					? []
					: [label(x + step / 2, y(reading) - 5, show(reading), { anchor: 'middle', size: 10 })]),
				label(x + step / 2, 237, String(cylinder), { anchor: 'middle' }),
			];
		}),
	);
	const limit = y(0.75 * highest);
	const told = readings
		.map((reading, index) => `cylinder ${index + 1} ${reading === null ? 'not measured' : show(reading)}`)
		.join(', ');
	return drawing('Compression by cylinder', `${told}.`, 256, [
		...bars,
		rule(36, limit, 616, limit, '#111', '6 4'),
		label(616, 40, 'dashed: 75 % of the highest', { anchor: 'end', size: 11 }),
		rule(36, 220, 616, 220),
		...(banks.length > 1
			? [label(40, 252, 'one bank', { size: 11 }), label(616, 252, 'the other', { anchor: 'end', size: 11 })]
			: []),
	]);
}

function banksIn(state: Assessment['state'], cylinders: number): number[][] | null {
	const layout = valueIn(state, 'engine.bank_layout');
	if (typeof layout === 'string') return banksOf(layout as BankLayout, cylinders);
	const order = valueIn(state, 'engine.firing_order');
	const found = Array.isArray(order) ? layoutFromOrder(order as number[]) : null;
	return found && banksOf(found, cylinders);
}
