import type { Assessment } from '../../audit/assess.ts';
import type { MeterState } from '../../plugs/circuit.ts';
import { type MeterLine, meterCard } from '../../plugs/meter.ts';
import type { Plugs } from '../../plugs/parts.ts';
import { countsInWords, planOf } from '../../plugs/plan.ts';
import type { ReadPair } from '../../plugs/reading.ts';
import { pinWords, remedy } from '../../plugs/remedy.ts';
import type { Row } from '../../plugs/rows.ts';
import { type Block, heading, type Inline, listed, paragraph, strong } from '../document.ts';
import { upper } from './names.ts';

/** The part of an audit: what to do with the wires that do not simply join. The plan has every row, and the meter card. */
export const plugsPart = (assessment: Pick<Assessment, 'plugs'>): Block[] => compose(assessment, true);

/** The plan whole: what to do before the plugs meet, a row a pin, the meter card, what to buy. Nothing without plugs. */
export const plugsPlan = (assessment: Pick<Assessment, 'plugs'>): Block[] => compose(assessment, false);

function compose({ plugs }: Pick<Assessment, 'plugs'>, brief: boolean): Block[] {
	if (!plugs) return [];
	const { reading } = plugs;
	const plan = planOf(reading);
	return [
		heading(2, 'The plugs'),
		paragraph(countsInWords(plan.counts)),
		...misread(reading.pairs),
		...(plan.dangers.length > 0 ? [heading(3, 'Before the plugs meet')] : []),
		...plan.dangers.map(row => danger(row, plugs)),
		...reading.pairs.flatMap(pair => pairRows(pair, plugs, brief)),
		...reading.alone.flatMap(({ plug, half, pins }) => [
			heading(3, `${plug}: the ${half}'s half alone`),
			paragraph(`${pins.length} pins. The half that it meets is not given, so nothing about it can be judged.`),
		]),
		...comfort(plugs),
		...shopping(plugs),
		...(brief ? [paragraph('Every pin, and a card of what a meter reads at each: swap-audit pins.')] : card(plugs)),
	];
}

/** The one mistake that makes every row wrong is said first. */
const misread = (pairs: readonly ReadPair[]): Block[] =>
	pairs.flatMap(({ left, mirrored }) =>
		mirrored
			? [
					paragraph(
						strong(`${left.plug}: one half was read from the wrong side. `),
						`With ${mirrored.how}, ${mirrored.agree} pins agree; as they are given, ${mirrored.now} do. Settle that before anything below.`,
					),
				]
			: [],
	);

const nameOf = ({ pair, pin }: Row): string => `${pair.left.plug} ${pin}`;

function danger(row: Row, { reading, sizes }: Plugs): Block {
	const { why, ifLive } = row.met;
	return {
		is: 'task',
		text: [strong(`${nameOf(row)}: ${remedy(row, reading.answered, sizes)}. `), why],
		details: [
			[`${upper(pinWords(row.left, row.pair.left))}.`],
			[`${upper(pinWords(row.right, row.pair.right))}.`],
			...(ifLive ? [['This is so if either wire is live; which one is, the sheet does not say.']] : []),
		],
	};
}

function pairRows(pair: ReadPair, plugs: Plugs, brief: boolean): Block[] {
	const { left, right, rows } = pair;
	const done = rows.filter(({ acts }) => acts.every(({ kind }) => kind === 'done') && acts.length > 0);
	const empty = rows.filter(row => row.acts.length === 0);
	const joins = brief ? rows.filter(({ acts }) => acts.length === 1 && acts[0]!.kind === 'join') : [];
	const open = rows.filter(row => ![done, empty, joins].some(some => some.includes(row)));
	const title = left.plug === right.plug ? left.plug : `${left.plug} and ${right.plug}`;
	const named = (some: readonly Row[]) => some.map(({ pin }) => pin).join(', ');
	return [
		heading(3, `${title}: ${left.half} and ${right.half}, pin by pin`),
		...(pair.by === 'circuit'
			? [
					paragraph(
						'The shells do not mate: cut, and splice circuit by circuit. Numbers are those of each half by itself.',
					),
				]
			: []),
		...open.map((row): Block => ({ is: 'task', text: line(row, plugs), details: [] })),
		...(joins.length > 0 ? [paragraph(`Join as they are: ${named(joins)}.`)] : []),
		...(done.length > 0 ? [paragraph(`Joined: ${named(done)}.`)] : []),
		...(empty.length > 0 ? [paragraph(`Nothing to do: ${named(empty)}.`)] : []),
	];
}

function line(row: Row, { reading, sizes }: Plugs): Inline[] {
	const same = row.met.meeting === 'same';
	const [here, there] = [pinWords(row.left, row.pair.left), pinWords(row.right, row.pair.right)];
	const carries = same ? `${row.left!.circuit!.title} (${wires(row)})` : `${here}; ${there}`;
	const note = row.left?.raw.note?.trim() || row.right?.raw.note?.trim();
	return [
		strong(row.pin),
		`: ${carries}. `,
		strong(upper(remedy(row, reading.answered, sizes))),
		`.${note ? ` Note: ${note}` : ''}`,
	];
}

const wires = ({ left, right }: Row): string =>
	[...new Set([left?.raw.wire?.trim() || 'no color', right?.raw.wire?.trim() || 'no color'])].join(' to ');

function comfort({ reading }: Plugs): Block[] {
	const circuits = planOf(reading).comfort;
	const spares = reading.halves.reduce(
		(sum, { pins }) => sum + pins.filter(({ recognized }) => recognized.is === 'spare').length,
		0,
	);
	if (circuits.length === 0 && spares === 0) return [];
	return [
		heading(3, 'What only comfort needs'),
		paragraph(
			`The engine runs without these: ${[...circuits.map(({ title }) => title), ...(spares > 0 ? [`${spares} spare ${spares === 1 ? 'wire' : 'wires'}`] : [])].join(', ')}.`,
		),
	];
}

function shopping({ reading, sizes }: Plugs): Block[] {
	const { wire, fuses, terminals } = planOf(reading);
	const items = [
		...wire.map(({ gauge, length, color, wires }): Inline[] => [
			`${sizes.gauge(gauge)}, ${sizes.length(length)}${color ? `, ${color}` : ', any color'} (${wires} ${wires === 1 ? 'wire' : 'wires'}, a tenth to spare)`,
		]),
		...fuses.map(({ rating, count }): Inline[] => [`fuse ${rating} A with its holder: ${count}`]),
		...(terminals > 0
			? [[`terminals: ${terminals}, of the sizes of their cavities, with seals where the plug has them`]]
			: []),
	];
	return listed([heading(3, 'To buy for the plugs')], items);
}

const states: Readonly<Record<MeterState, string>> = {
	'key-off': 'Key off, plugs apart',
	'key-on': 'Key on, plugs apart',
	crank: 'Cranking, plugs apart, coils and injectors unplugged',
	'plugged-in-key-on': 'Plugged in, key on: last, when all above reads right',
};

/** What a meter shows, pin by pin: on a page of its own, to take along. */
function card({ reading }: Plugs): Block[] {
	const lines = meterCard(reading);
	if (lines.length === 0) return [];
	return [
		{ is: 'heading', level: 2, text: 'Meter card', page: true },
		paragraph(
			'Controller unplugged. Ohms only with the battery off. No test lamp on a pin of the controller: a meter of 10 Mohm. Touch the terminal from the wire side with a thin probe, never spread it. Key on only with fused leads, nobody at belts or fan. Nothing here is for yellow plugs and yellow wires.',
		),
		...(Object.keys(states) as MeterState[]).flatMap(state =>
			listed([heading(3, states[state])], readings(lines.filter(line => line.state === state)), 'small'),
		),
	];
}

/** Pins of one half that read the same, and mean the same when they do not, together: what is read is said once. */
function readings(lines: readonly MeterLine[]): Inline[][] {
	const groups = new Map<string, MeterLine[]>();
	for (const line of lines) {
		const key = JSON.stringify([line.plug, line.half, line.expect, line.otherwise]);
		groups.set(key, [...(groups.get(key) ?? []), line]);
	}
	return [...groups.values()].map((group): Inline[] => {
		const [{ plug, half, expect, otherwise }] = group as [MeterLine];
		const pins = group.map(({ pin, circuit }) => `${pin} ${circuit}`).join('; ');
		return [`${plug}, ${half}'s half: `, strong(expect), ` at ${pins}. ${otherwise}`];
	});
}
