import { describe, expect, test } from 'vitest';
import { plugsOf } from '../../src/plugs/parts.ts';
import { readPinTable } from '../../src/plugs/table.ts';
import type { Pin, PlugHalf } from '../../src/sheet/plugs.ts';
import { BadTable } from '../../src/table/problem.ts';
import { counts, seed } from '../counts.ts';
import { audited } from '../support/audited.ts';
import { chance } from '../support/chance.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { vocabulary } = testModel().rulebook;
const build = buildSheet('boosted');
const state = audited(build);
const answered = (id: string) => state.state.values[state.model.graph.slotOf.get(id)!];

/** Two halves with each circuit once, some of them at other pins on the car's half, some on one half alone, and room left. */
function halves(random: () => number): PlugHalf[] {
	const ids = vocabulary.circuits.filter(({ id, shared }) => id !== 'airbag' && !shared).map(({ id }) => id);
	const chosen = ids
		.map(id => [random(), id] as const)
		.sort(([a], [b]) => a - b)
		.slice(0, 20)
		.map(([, id]) => id);
	const names = Array.from({ length: 40 }, (_, at) => String(at + 1));
	const place = () =>
		names
			.map(name => [random(), name] as const)
			.sort(([a], [b]) => a - b)
			.slice(0, 20)
			.map(([, name]) => name);
	const [left, right] = [place(), place()];
	const pinsAt = (places: readonly string[], skip: () => boolean): Pin[] =>
		names.map(pin => {
			const at = places.indexOf(pin);
			return { pin, circuit: at < 0 || skip() ? 'empty' : chosen[at]! };
		});
	return [
		{ plug: 'dash', half: 'engine', pins: pinsAt(left, () => random() < 0.15) },
		{ plug: 'dash', half: 'car', pins: pinsAt(right, () => random() < 0.15) },
	];
}

/** Carries out what the plan says, wire by wire. */
function carriedOut([engine, car]: readonly PlugHalf[]): PlugHalf[] {
	const { rows } = plugsOf([engine!, car!], vocabulary, answered, 'us')!.reading.pairs[0]!;
	const now = {
		left: new Map(engine!.pins.map(pin => [pin.pin, 'empty'])),
		right: new Map(car!.pins.map(pin => [pin.pin, pin.circuit!])),
	};
	for (const { pin, left, right, acts, toPin, added } of rows) {
		const kinds = acts.filter(({ side }) => side === 'left').map(({ kind }) => kind);
		if (acts.some(({ side, kind }) => side === 'right' && kind === 'insulate')) now.right.set(pin, 'empty');
		if (kinds.includes('join') || kinds.includes('done')) now.left.set(pin, left!.raw.circuit!);
		if (kinds.includes('move')) now.left.set(toPin!, left!.raw.circuit!);
		if (added && acts.some(({ side, kind }) => side === 'right' && kind === 'add')) {
			now.left.set(toPin ?? pin, left!.raw.circuit!);
			now.right.set(toPin ?? pin, added.id);
		}
		if (added && acts.some(({ side, kind }) => side === 'left' && kind === 'add'))
			now.left.set(pin, right!.raw.circuit!);
	}
	const half = (of: PlugHalf, pins: ReadonlyMap<string, string>): PlugHalf => ({
		...of,
		pins: [...pins].map(([pin, circuit]) => ({ pin, circuit })),
	});
	return [half(engine!, now.left), half(car!, now.right)];
}

describe('a plan that is carried out', () => {
	test('leaves nothing wrong at any pin', () => {
		const random = chance(seed);
		for (let round = 0; round < Math.ceil(counts.plugs / 20); round++) {
			const before = halves(random);
			const after = carriedOut(before);
			const { findings } = audited({ ...build, plugs: after }).audit;
			const wrong = findings.filter(
				({ rule, verdict, subject }) =>
					rule.startsWith('pins.') &&
					verdict === 'fails' &&
					// A circuit that is on neither half has no wire to move; the plan cannot know where it is.
					!(
						rule === 'pins.required-missing' &&
						before.every(({ pins }) => pins.every(({ circuit }) => circuit !== subject))
					),
			);
			expect(wrong.map(({ rule, subject, why }) => `${rule} ${subject}: ${why}`)).toEqual([]);
		}
	});
});

describe('a table of pins', () => {
	const table = (text: string) => readPinTable(text);

	test.each([',', ';', '\t', '|'])('is read with "%s" between', between => {
		const text = [
			'# mine',
			['Pin', 'Wire', 'Circuit', 'Gauge'].join(between),
			['14', 'green/white', 'ECT', '0.75 mm2'].join(between),
			'',
		].join('\r\n');
		expect(table(text)).toEqual({
			pins: [{ pin: '14', wire: 'green/white', circuit: 'ECT', gauge: '0.75 mm2' }],
			problems: [],
		});
	});

	test('a pin that stands twice is kept twice, and each of its columns may have another header', () => {
		const { pins } = readPinTable('Cav,Col,Goes to\n1,red,B+\n1,red,spare\n', {
			pin: 'cav',
			wire: 'col',
			circuit: 'goes to',
		});
		expect(pins).toEqual([
			{ pin: '1', wire: 'red', circuit: 'B+' },
			{ pin: '1', wire: 'red', circuit: 'spare' },
		]);
	});

	test.each([
		['a short row', 'pin,wire,circuit\n1,red\n', /line 2/],
		['a long row', 'pin,wire,circuit\n1,red,B+,,x\n', /line 2/],
		['no pin', 'pin,wire,circuit\n,red,B+\n', /line 2.*a pin in each row/],
		['a gauge that is none', 'pin,wire,circuit,gauge\n1,red,B+,thick\n', /line 2.*gauge/],
	])('%s is an error with its line, and nothing is taken', (_, text, problem) => {
		expect(table(text).problems.join('\n')).toMatch(problem);
	});

	test('anything at all is a table, or a problem with its place: no row is lost or made up', () => {
		const random = chance(seed + 7);
		const signs = [
			'1',
			'A7',
			',',
			';',
			'\t',
			'\n',
			'"',
			'ECT',
			'pin',
			'wire',
			'circuit',
			' ',
			'#',
			'=',
			'\u0000',
			'\u202e',
			'é',
		];
		for (let round = 0; round < counts.plugs * 5; round++) {
			const rows = Array.from({ length: Math.floor(random() * 6) }, () =>
				Array.from({ length: Math.floor(random() * 8) }, () => signs[Math.floor(random() * signs.length)]!).join(''),
			);
			const text = `pin,wire,circuit\n${rows.join('\n')}`;
			try {
				const { pins, problems } = table(text);
				const lines = text
					.split(/\r\n?|\n/)
					.slice(1)
					.filter(line => line.trim() !== '' && !line.trimStart().startsWith('#'));
				if (!text.includes('"')) expect(pins.length + problems.length, JSON.stringify(text)).toBe(lines.length);
			} catch (error) {
				expect(error, JSON.stringify(text)).toBeInstanceOf(BadTable);
			}
		}
	});
});
