import { scaleLinear } from 'd3-scale';
import type { Assessment } from '../../audit/assess.ts';
import { valueIn } from '../../graph/solve.ts';
import { type BankLayout, banksOf, layoutFromOrder } from '../../physics/firing-order.ts';
import { bar, color, drawing, edged, label, type Picture, rule } from './draw.ts';
import { inUnits } from './in-units.ts';

const floor = 220;
const left = 64;
const right = 616;

/** Compression by cylinder, bank by bank, with the line below which the rule calls it uneven. Null without readings. */
export function drawCompression(assessment: Assessment): Picture | null {
	const { state, wording } = assessment;
	const readings = valueIn(state, 'engine.compression') as (number | null)[] | undefined;
	if (!Array.isArray(readings)) return null;
	const highest = Math.max(...readings.map(reading => reading ?? 0));
	const balance = thresholdOf(assessment, 'engine.compression-uneven', 'balance');
	const low = (reading: number | null) => reading !== null && reading < balance * highest;
	const banks = banksIn(state, readings.length) ?? [readings.map((_, index) => index + 1)];
	const y = scaleLinear([0, highest * 1.1 || 1], [floor, 50]);
	const show = (value: number) => wording.show('engine.compression_highest', value)!;
	const gap = banks.length > 1 ? 20 : 0;
	const step = (right - left - gap) / readings.length;
	const columns = banks.flatMap((bank, index) =>
		bank.map((cylinder, place) => ({
			cylinder,
			reading: readings[cylinder - 1] ?? null,
			x: left + (index * banks[0]!.length + place) * step + index * gap,
		})),
	);
	const bars = columns.flatMap(({ x, reading }) =>
		reading === null
			? []
			: [bar([x + 6, y(reading)], [step - 12, floor - y(reading)], low(reading) ? color.over : color.fill)],
	);
	const words = columns.flatMap(({ x, reading, cylinder }) => [
		reading === null
			? label(x + step / 2, floor - 5, 'not measured', { anchor: 'middle', size: 9 })
			: label(x + step / 2, y(reading) - 5, `${show(reading)}${low(reading) ? ', low' : ''}`, {
					anchor: 'middle',
					size: 10,
				}),
		label(x + step / 2, floor + 17, String(cylinder), { anchor: 'middle' }),
	]);
	const limit = y(balance * highest);
	const cylinderWords = readings.map((reading, index) => {
		const words = reading === null ? 'not measured' : `${show(reading)}${low(reading) ? ' (low)' : ''}`;
		return `cylinder ${index + 1} ${words}`;
	});
	const names = banks.length > 1 ? ['one bank', 'the other bank'] : ['cylinder'];
	const own = inUnits(wording, 'engine.compression_highest');
	const scale = y.copy().domain(y.domain().map(own.of));
	const share = wording.show('engine.compression_spread', balance);
	return drawing('Compression by cylinder', `${cylinderWords.join(', ')}.`, 280, [
		rule(left, 50, left, floor),
		...scale
			.ticks(4)
			.flatMap(at => [
				rule(left - 4, scale(at), left, scale(at)),
				label(left - 7, scale(at) + 4, own.show(at), { anchor: 'end', size: 11 }),
			]),
		...bars,
		edged(left, limit, right, limit, '6 4'),
		...words,
		rule(left, floor, right, floor),
		...names.map((name, index) => label(left + 6 + index * (banks[0]!.length * step + gap), 253, name, { size: 11 })),
		label(left + 6, 271, `Dashed: ${share} of the highest, ${show(balance * highest)}. Heavy edge, orange: under it.`, {
			size: 11,
		}),
	]);
}

/** A threshold of a rule: a number, or the name of one; in the canonical unit of its kind. */
function thresholdOf({ model, state }: Assessment, id: string, name: string): number {
	const written = model.rulebook.rules.find(rule => rule.id === id)?.thresholds[name]?.value;
	const value = written?.[0] === 'name' ? valueIn(state, written[1]) : written?.[1];
	if (typeof value !== 'number') throw new TypeError(`${id} states no number as ${name}`);
	return value;
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
