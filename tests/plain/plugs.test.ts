import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type PlugLines, plugLine, plugPrompt, startPlugLines } from '../../src/plain/plugs.ts';
import { plugsByLines } from '../../src/plain/plugs-mode.ts';
import { plugProblems } from '../../src/sheet/check-plugs.ts';
import type { PlugHalf } from '../../src/sheet/plugs.ts';
import { counts, seed } from '../counts.ts';
import { chance } from '../support/chance.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { testModel } from '../support/model.ts';

const { vocabulary } = testModel().rulebook;
const step = (now: PlugLines, line: string) => plugLine(now, line, vocabulary)!;
const typed = (lines: readonly string[], plugs: readonly PlugHalf[] = []) => lines.reduce(step, startPlugLines(plugs));
const pins = (lines: readonly string[]) => typed(['dash; engine', ...lines]).edit.halves[0]!.pins;
const said = (lines: readonly string[], plugs?: readonly PlugHalf[]) => typed(lines, plugs).say.join(' ');
const car: PlugHalf = {
	plug: 'dash',
	half: 'car',
	pins: [
		{ pin: '14', wire: 'red', circuit: 'battery feed' },
		{ pin: '22', circuit: 'ECT' },
	],
};

describe('a line of the plugs', () => {
	test('begins a half, then each line is a pin, shown with what it meets and what comes of that', () => {
		const now = typed(['dash; engine', '14 black power ground', '15 GN/WH coolant temperature 18 AWG'], [car]);
		expect(now.edit.halves[1]).toEqual({
			plug: 'dash',
			half: 'engine',
			pins: [
				{ pin: '14', wire: 'black', circuit: 'power ground' },
				{ pin: '15', wire: 'GN/WH', circuit: 'coolant temperature', gauge: 18 },
			],
		});
		expect(said(['dash; engine', '14 black power ground'], [car])).toMatch(
			/^14: black, controller power ground\. Meets car 14: red, battery feed.*BURNS: A dead short/,
		);
		expect(now.say.join(' ')).toContain('It is at pin 22 there.');
		expect(plugPrompt(now)[0]).toBe("[pins] dash, the engine's half: pin, wire, circuit - or ?, end");
	});

	test('a circuit that is not recognized is kept, others are offered, a number takes one, and the wire stays', () => {
		expect(said(['dash; engine', '7 gray colant temperture'])).toMatch(
			/Not recognized; nearest: =1 coolant temperature signal/,
		);
		expect(pins(['7 gray colant temperture'])).toEqual([{ pin: '7', wire: 'gray', circuit: 'colant temperture' }]);
		expect(pins(['7 gray colant temperture', '=1'])).toEqual([
			{ pin: '7', wire: 'gray', circuit: 'coolant temperature signal' },
		]);
		expect(said(['dash; engine', '7 gray ECT', '=1'])).toMatch(/Nothing of that number/);
	});

	test('takes out, moves, marks done, says more, lists, takes back', () => {
		const two = ['14 black power ground', '15 gray ECT'];
		expect(pins([...two, 'out 14'])).toEqual([{ pin: '15', wire: 'gray', circuit: 'ECT' }]);
		expect(pins([...two, 'move 15 22'])[2]).toEqual({ pin: '22', wire: 'gray', circuit: 'ECT' });
		expect(pins([...two, 'done 15', 'set 14 fed_here no', 'set 14 fused 10'])).toEqual([
			{ pin: '14', wire: 'black', circuit: 'power ground', fed_here: false, fused: 10 },
			{ pin: '15', wire: 'gray', circuit: 'ECT', joined: true },
		]);
		expect(typed(['dash; engine', 'set view wires', 'set mates_by circuit']).edit.halves[0]).toMatchObject({
			view: 'wires',
			mates_by: 'circuit',
		});
		expect(pins([...two, 'out 14', 'undo', 'undo', 'redo']).length).toBe(2);
		expect(typed(['dash; engine', ...two, 'list']).say.length).toBe(2);
	});

	test.each([
		['dash', /a number, or a name and engine, car or controller/],
		['9', /There is no half 9/],
		['dash; body', /engine, car or controller/],
		['dash; car', /each half of a plug once/],
	])('among the halves "%s" is refused in words, and nothing changes', (line, words) => {
		const now = typed([line], [car]);
		expect(now.say.join(' ')).toMatch(words);
		expect([now.edit.halves, now.open]).toEqual([[car], false]);
	});

	test.each([
		['out 9', /lists no pin 9/],
		['set 14 color red', /a key of joined/],
		['set 14 joined perhaps', /true or false/],
		['move 14', /To which pin/],
		['14; red; ECT; thick', /AWG/],
	])('in a half "%s" is refused in words, and nothing changes', (line, words) => {
		const before = typed(['dash; engine', '14 red ECT']);
		const now = step(before, line);
		expect(now.say.join(' ')).toMatch(words);
		expect(now.edit.halves).toBe(before.edit.halves);
	});

	test('whatever is typed, the sheet could hold what comes of it', () => {
		const random = chance(seed);
		const parts = [
			'14',
			'15',
			'A7',
			'red',
			'ECT',
			'set',
			'out',
			'move',
			'done',
			'undo',
			'redo',
			'end',
			'=1',
			'list',
			';',
			',',
			'\t',
			'|',
			'dash; engine',
			'dash; car',
			'1',
			'2',
			'joined',
			'yes',
			'mates_by',
			'circuit',
			'x'.repeat(300),
			'',
			'?',
			'\u0000',
		];
		for (let walk = 0; walk < Math.ceil(counts.walks / 5); walk++) {
			let now: PlugLines | null = startPlugLines(random() < 0.5 ? [] : [car]);
			for (let line = 0; line < 30 && now; line++) {
				const words = Array.from(
					{ length: 1 + Math.floor(random() * 4) },
					() => parts[Math.floor(random() * parts.length)]!,
				);
				now = plugLine(now, words.join(' '), vocabulary);
				if (now) expect([...plugProblems(now.edit.halves)]).toEqual([]);
			}
		}
	});
});

test('names and notes of a sheet steer no terminal', async () => {
	const evil = '\u001b]0;x\u0007\u001b[31mred\u202e';
	const lines = ['1', 'list', '?', '14 red ECT', 'end'];
	const printed: string[] = [];
	const how = await plugsByLines(
		[{ plug: `dash ${evil}`, half: 'engine', pins: [{ pin: `1${evil}`, wire: evil, circuit: evil, note: evil }] }],
		vocabulary,
		{ next: async () => lines.shift() ?? null, say: text => printed.push(text), mark: text => printed.push(text) },
		() => {},
	);
	expect(how).toBe('end-of-input');
	expect(printed.join('')).toContain('red');
	expect(printed.join('')).not.toMatch(/\p{Cc}|\u202e/u);
});

test('on a pipe: the plugs are in the sheet line by line, and the questions go on where they were', () => {
	const home = temporaryFolder();
	const sheet = join(home, 'mule.json');
	const lines = ['plugs', 'dash; engine', '14 black power ground', 'end', 'dash; car', '14 red B+', 'end', 'end', '1'];
	const { out, status } = runCommand(['interview', sheet, '--plain', '--quick'], {
		input: `${lines.join('\n')}\n`,
		home,
	});
	expect(status).toBe(130);
	expect(out).toMatch(/^ *14: red, battery feed.*\n?.*BURNS/m);
	const { plugs, answers } = JSON.parse(readFileSync(sheet, 'utf8'));
	expect(plugs).toEqual([
		{ plug: 'dash', half: 'engine', pins: [{ pin: '14', wire: 'black', circuit: 'power ground' }] },
		{ plug: 'dash', half: 'car', pins: [{ pin: '14', wire: 'red', circuit: 'B+' }] },
	]);
	expect(Object.keys(answers).length).toBe(1);
});
