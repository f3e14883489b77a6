import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { plugsOf } from '../../src/plugs/parts.ts';
import { recognizerOf } from '../../src/plugs/recognize.ts';
import type { Pin, PlugHalf } from '../../src/sheet/plugs.ts';
import { counts, seed } from '../counts.ts';
import { audited } from '../support/audited.ts';
import { chance } from '../support/chance.ts';
import { buildSheet, rulesFolder, testModel } from '../support/model.ts';
import { randomHalves } from './halves.ts';

const { vocabulary } = testModel().rulebook;
const recognize = recognizerOf(vocabulary);
const order = ['nothing', 'unknown', 'wrong', 'kills', 'burns'];

// A plain second reading of rules/meetings.yaml: from its text, by its own parser, into a table of both orders.
interface Row {
	meeting: string;
	pairs: string[];
}
const file = parse(readFileSync(`${rulesFolder}/meetings.yaml`, 'utf8')) as {
	meetings: Row[];
	same_as: Record<string, string>;
};
const table = new Map<string, string>();
for (const { meeting, pairs } of file.meetings)
	for (const pair of pairs) {
		const [a, b] = pair.split(' + ');
		table.set(`${a}|${b}`, meeting).set(`${b}|${a}`, meeting);
	}

/** What happens at one pin, by the design's words: the table, the worse of what a circuit says of itself, the side that is dead. */
function plainMeeting(a: Pin | undefined, b: Pin | undefined): string {
	const read = (pin: Pin | undefined) => {
		const found = recognize(pin?.circuit ?? '');
		const circuit = found.is === 'circuit' ? found.circuit : null;
		const sort = circuit?.sort ?? (found.is === 'empty' || found.is === 'spare' ? 'empty' : 'unknown');
		return {
			circuit,
			sort: (file.same_as[sort] ?? sort) as string,
			own: sort as string,
			dead: pin?.fed_here === false,
		};
	};
	const [x, y] = [read(a), read(b)];
	if (x.circuit && x.circuit === y.circuit) return 'same';
	let worst = table.get(`${x.sort}|${y.sort}`)!;
	const feed = (sort: string) => sort === 'battery' || sort === 'switched';
	if (a && b) {
		for (const [one, other] of [
			[x, y],
			[y, x],
		] as const)
			if (feed(one.sort) && one.dead && !feed(other.sort) && order.indexOf(worst) > 2) return 'wrong';
		for (const [one, other] of [
			[x, y],
			[y, x],
		] as const) {
			const says = [];
			if (['power-ground', 'signal-ground', 'shield'].includes(other.sort)) says.push(one.circuit?.grounded);
			if ((feed(other.sort) && !other.dead) || other.sort === 'high-driver') says.push(one.circuit?.fed);
			if (other.own === one.own && (one.own === 'motor' || one.circuit?.crossed?.why === other.circuit?.crossed?.why))
				says.push(one.circuit?.crossed);
			for (const word of says) if (word && order.indexOf(word.meeting) > order.indexOf(worst)) worst = word.meeting;
		}
	}
	return worst;
}

const reading = (halves: readonly PlugHalf[]) => plugsOf(halves, vocabulary, () => undefined, 'us')!.reading;
const rowsOf = (halves: readonly PlugHalf[]) => reading(halves).pairs.flatMap(({ rows }) => rows);

describe('every meeting is that of a plain second reading of the table', () => {
	test('of halves made by chance: permuted, dropped, doubled, blanked', () => {
		const random = chance(seed);
		const seen = new Set<string>();
		for (let round = 0; round < counts.plugs; round++) {
			for (const { left, right, met } of rowsOf(randomHalves(vocabulary, random))) {
				const wanted = plainMeeting(left?.raw, right?.raw);
				const found = met.meeting === 'moved' ? 'nothing' : met.meeting;
				expect(found, JSON.stringify([left?.raw, right?.raw])).toBe(wanted);
				seen.add(met.meeting);
			}
		}
		expect([...seen].sort()).toEqual(['burns', 'kills', 'moved', 'nothing', 'same', 'unknown', 'wrong']);
	});

	test('no row is lost or made up, whatever the halves', () => {
		const random = chance(seed + 1);
		for (let round = 0; round < counts.plugs; round++) {
			const [engine, car] = randomHalves(vocabulary, random) as [PlugHalf, PlugHalf];
			const rows = rowsOf([engine, car]);
			const raw = (side: 'left' | 'right') => new Set(rows.flatMap(row => row[side]?.raw ?? []));
			expect(raw('left')).toEqual(new Set(engine.pins));
			expect(raw('right')).toEqual(new Set(car.pins));
			const names = new Set([...engine.pins, ...car.pins].map(({ pin }) => pin));
			expect(new Set(rows.map(({ pin }) => pin))).toEqual(names);
		}
	});
});

/** Facts of the trade, each by its own (common practice). */
const facts: readonly (readonly [engine: string, car: string, meeting: string, harm: string])[] = [
	['power ground', 'battery feed', 'burns', 'person'],
	['sensor return', 'run and crank feed', 'burns', 'person'],
	['5 V reference', 'battery feed', 'kills', 'engine'],
	['data line plus', 'run feed', 'kills', 'engine'],
	['injector 3', 'chassis ground', 'kills', 'engine'],
	['starter relay trigger', 'power ground', 'wrong', 'person'],
	['throttle motor plus', 'throttle motor minus', 'kills', 'person'],
	['fuel pump relay trigger', 'chassis ground', 'wrong', 'person'],
	['keep-alive feed', 'run and crank feed', 'wrong', 'person'],
	['front oxygen sensor bank 1 signal', 'front oxygen sensor bank 2 signal', 'wrong', 'engine'],
	['coil cylinder 1 command', 'coil cylinder 2 command', 'wrong', 'engine'],
	['crank sensor plus', 'crank sensor minus', 'wrong', 'strands'],
	['coolant temperature signal', 'sensor return', 'wrong', 'strands'],
	['injector 1', 'injector 2', 'wrong', 'engine'],
];

describe('what everybody in the trade knows', () => {
	test.each(facts)('%s on %s %s', (engine, car, meeting, harm) => {
		const pins = (circuit: string): Pin[] => [{ pin: '1', circuit }];
		const [row] = rowsOf([
			{ plug: 'dash', half: 'engine', pins: pins(engine) },
			{ plug: 'dash', half: 'car', pins: pins(car) },
		]);
		expect(row!.met).toMatchObject({ meeting, harm });
		if (harm === 'person' || harm === 'engine') expect(row!.met.stage).toBe('crank');
	});

	test('a keep-alive pin that is dead on its half burns nothing on a ground; said by nobody, it does', () => {
		const halves = (fed?: boolean): PlugHalf[] => [
			{
				plug: 'dash',
				half: 'engine',
				pins: [{ pin: '1', circuit: 'keep-alive', ...(fed === undefined ? {} : { fed_here: fed }) }],
			},
			{ plug: 'dash', half: 'car', pins: [{ pin: '1', circuit: 'chassis ground' }] },
		];
		expect(rowsOf(halves(false))[0]!.met.meeting).toBe('wrong');
		expect(rowsOf(halves(true))[0]!.met).toMatchObject({ meeting: 'burns', ifLive: false });
		expect(rowsOf(halves())[0]!.met).toMatchObject({ meeting: 'burns', ifLive: true });
	});
});

describe('in the audit', () => {
	const sheet = buildSheet('boosted');
	const found = (plugs?: PlugHalf[]) =>
		audited(plugs ? { ...sheet, plugs } : sheet).audit.findings.filter(({ rule }) => rule.startsWith('pins.'));

	test('without plugs no rule about them applies', () => {
		expect(new Set(found().map(({ verdict }) => verdict))).toEqual(new Set(['does-not-apply']));
	});

	test('a half that is not given is never a pass', () => {
		const alone = found([{ plug: 'dash', half: 'engine', pins: [{ pin: '1', circuit: 'keep-alive' }] }]);
		for (const rule of ['pins.meet-and-burn', 'pins.meet-and-kill', 'pins.moved', 'pins.required-missing'])
			expect(
				alone.filter(finding => finding.rule === rule).map(({ verdict }) => verdict),
				rule,
			).toEqual(['cannot-tell']);
	});

	test('findings are those of the rows, by plug and pin', () => {
		const random = chance(seed + 2);
		for (let round = 0; round < 5; round++) {
			const halves = randomHalves(vocabulary, random);
			if (reading(halves).pairs.some(({ mirrored }) => mirrored)) continue;
			const wanted = (word: string) =>
				[
					...new Set(
						rowsOf(halves)
							.filter(({ met }) => met.meeting === word)
							.map(({ pin }) => `dash ${pin}`),
					),
				].sort();
			const fails = (rule: string) =>
				found(halves)
					.filter(finding => finding.rule === rule && finding.verdict === 'fails')
					.map(({ subject }) => subject)
					.sort();
			expect(fails('pins.meet-and-burn')).toEqual(wanted('burns'));
			for (const subject of fails('pins.meet-and-kill')) expect(wanted('kills')).toContain(subject);
		}
	});
});
