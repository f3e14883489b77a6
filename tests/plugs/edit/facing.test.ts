import { describe, expect, test } from 'vitest';
import { completions } from '../../../src/plugs/edit/completions.ts';
import { conflict, facing } from '../../../src/plugs/edit/facing.ts';
import { readPlugs } from '../../../src/plugs/reading.ts';
import { seed } from '../../counts.ts';
import { chance } from '../../support/chance.ts';
import { testModel } from '../../support/model.ts';
import { randomHalves } from '../halves.ts';

const { vocabulary } = testModel().rulebook;

test('what stands opposite a pin is what the plan says of it, from either half', () => {
	const random = chance(seed);
	for (let round = 0; round < 20; round++) {
		const halves = randomHalves(vocabulary, random);
		const { rows } = readPlugs(halves, vocabulary, () => undefined)!.pairs[0]!;
		for (const [at, side] of [
			[0, 'left'],
			[1, 'right'],
		] as const) {
			const found = facing(halves, at, vocabulary);
			expect(found.rows.map(({ pin }) => pin.raw)).toEqual([...halves[at]!.pins]);
			for (const opposite of found.rows) {
				const own = rows.filter(row => row[side]?.raw === opposite.pin.raw);
				// A cavity that is listed twice has a row for each; that one is shown which has the same circuit.
				const words = own.map(({ met }) => (met.meeting === 'moved' ? 'nothing' : met.meeting));
				expect(words).toContain(opposite.met!.meeting);
				const move = side === 'left' && own.length === 1 && own[0]!.acts.find(({ kind }) => kind === 'move');
				if (move && own[0]!.met.meeting === 'moved') expect(opposite.elsewhere).not.toBeNull();
			}
		}
	}
});

describe('a conflict', () => {
	const word = (engine: string, car: string) => {
		const [row] = facing(
			[
				{
					plug: 'dash',
					half: 'engine',
					pins: [
						{ pin: '1', circuit: engine },
						{ pin: '2', circuit: 'empty' },
					],
				},
				{
					plug: 'dash',
					half: 'car',
					pins: [
						{ pin: '1', circuit: car },
						{ pin: '2', circuit: 'tachometer' },
					],
				},
			],
			0,
			vocabulary,
		).rows;
		return conflict(row!);
	};

	test.each([
		['power ground', 'battery feed', 'burns', 'person'],
		['5 V reference', 'battery feed', 'kills', 'engine'],
		['coolant temperature', 'sensor return', 'wrong', 'strands'],
		['tachometer', 'empty', 'to 2', null],
		['coolant temperature', '', '?', null],
	])('%s on %s: %s', (engine, car, said, bad) => {
		expect(word(engine, car)).toEqual({ word: said, bad });
	});

	test('is none where the same meets the same, or nothing meets nothing', () => {
		expect(word('ECT', 'coolant temperature')).toBeNull();
		expect(word('empty', 'spare')).toBeNull();
	});
});

describe('completion', () => {
	const first = (text: string) => completions(vocabulary, text)[0];

	test.each([
		['coola', 'coolant temperature signal'],
		['coolant te', 'coolant temperature signal'],
		['ECT', 'coolant temperature signal'],
		['inj 3', 'injector 3'],
		['tach', 'tachometer signal'],
		['emp', 'empty'],
		['spa', 'spare'],
		['colant temperture', 'coolant temperature signal'],
		['fuel pump', 'fuel pump feed'],
	])('of "%s" begins with %s', (text, title) => {
		expect(first(text)?.toLowerCase()).toBe(title);
	});

	test('offers nothing for nothing, and never a name twice', () => {
		expect(completions(vocabulary, '  ')).toEqual([]);
		for (const text of ['o', 'oxygen', 'injector', 'feed'])
			expect(new Set(completions(vocabulary, text)).size).toBe(completions(vocabulary, text).length);
	});

	test('the whole of every circuit is reached by its title, letter by letter', () => {
		for (const { title } of vocabulary.circuits) expect(completions(vocabulary, title)).toContain(title);
	});
});
