import { scaleLinear } from 'd3-scale';
import type { Assessment } from '../../audit/assess.ts';
import { valueIn } from '../../audit/conditions.ts';
import { type BankLayout, banksOf, layoutFromOrder } from '../../physics/firing-order.ts';
import type { Rulebook } from '../../rulebook/rulebook.ts';
import { drawing, label, type Picture, round, rule } from './draw.ts';

const floor = 220;
const left = 40;

/** Compression by cylinder, bank by bank, with the line below which the rule calls it uneven. Null without readings. */
export function drawCompression({ state, wording, model }: Assessment): Picture | null {
	const readings = valueIn(state, 'engine.compression') as (number | null)[] | undefined;
	if (!Array.isArray(readings)) return null;
	const highest = Math.max(...readings.map(reading => reading ?? 0));
	const balance = thresholdOf(model.rulebook, 'engine.compression-uneven', 'balance');
	const low = (reading: number | null) => reading !== null && reading < balance * highest;
	const banks = banksIn(state, readings.length) ?? [readings.map((_, index) => index + 1)];
	const y = scaleLinear([0, highest * 1.1 || 1], [floor, 50]);
	const show = (value: number) => wording.show('engine.compression_highest', value)!;
	const gap = banks.length > 1 ? 20 : 0;
	const step = (640 - 2 * left - gap) / readings.length;
	const bars = banks.flatMap((bank, index) =>
		bank.flatMap((cylinder, place) => {
			const x = left + (index * banks[0]!.length + place) * step + index * gap;
			const reading = readings[cylinder - 1] ?? null;
			const number = label(x + step / 2, floor + 17, String(cylinder), { anchor: 'middle' });
			if (reading === null)
				return [label(x + step / 2, floor - 5, 'not measured', { anchor: 'middle', size: 9 }), number];
			const look = low(reading) ? 'fill="#fff" stroke-width="3"' : 'fill="#aaa" stroke-width="1"';
			return [
				`<rect x="${round(x + 6)}" y="${round(y(reading))}" width="${round(step - 12)}" height="${round(floor - y(reading))}" ${look} stroke="#111"/>`,
				label(x + step / 2, y(reading) - 5, show(reading), { anchor: 'middle', size: 10 }),
				number,
			];
		}),
	);
	const limit = y(balance * highest);
	const cylinderWords = readings.map((reading, index) => {
		const words = reading === null ? 'not measured' : `${show(reading)}${low(reading) ? ' (low)' : ''}`;
		return `cylinder ${index + 1} ${words}`;
	});
	const names = banks.length > 1 ? ['one bank', 'the other bank'] : ['cylinder'];
	return drawing('Compression by cylinder', `${cylinderWords.join(', ')}.`, 260, [
		...bars,
		rule(36, limit, 616, limit, '#111', '6 4'),
		label(616, 22, `dashed: ${wording.show('engine.compression_spread', balance)} of the highest`, {
			anchor: 'end',
			size: 11,
		}),
		rule(36, floor, 616, floor),
		...names.map((name, index) => label(left + index * (banks[0]!.length * step + gap), 253, name, { size: 11 })),
	]);
}

/** A threshold that a rule states as a number, in the canonical unit of its kind. */
function thresholdOf({ rules }: Rulebook, id: string, name: string): number {
	const value = rules.find(rule => rule.id === id)?.thresholds[name]?.value;
	if (value?.[0] !== 'value' || typeof value[1] !== 'number') throw new TypeError(`${id} states no number as ${name}`);
	return value[1];
}

/** The cylinders of each bank in order, when it is known how they are numbered. */
function banksIn(state: Assessment['state'], cylinders: number): number[][] | null {
	if (cylinders % 2 !== 0) return null;
	const stated = valueIn(state, 'engine.bank_layout');
	const order = valueIn(state, 'engine.firing_order');
	const layout =
		typeof stated === 'string'
			? (stated as BankLayout)
			: Array.isArray(order)
				? layoutFromOrder(order as number[])
				: null;
	return layout && banksOf(layout, cylinders);
}
