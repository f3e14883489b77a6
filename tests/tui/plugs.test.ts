import { describe, expect, test } from 'vitest';
import { addHalf } from '../../src/plugs/edit/fields.ts';
import type { PlugHalf } from '../../src/sheet/plugs.ts';
import { emptySheet } from '../../src/sheet/sheet.ts';
import { widthOf } from '../../src/text/wrap.ts';
import { type App, newApp } from '../../src/tui/app.ts';
import { editOf } from '../../src/tui/editing.ts';
import { leaving } from '../../src/tui/global-keys.ts';
import type { Key } from '../../src/tui/keys.ts';
import { withSheet } from '../../src/tui/open-sheet.ts';
import { reduce } from '../../src/tui/reduce.ts';
import { testModel } from '../support/model.ts';
import { drawn } from './drawn.tsx';

const sizes = [
	[80, 24],
	[40, 12],
	[120, 40],
] as const;
const press = (app: App, ...keys: readonly (Key | string)[]): App =>
	keys.reduce<App>((now, key) => reduce(now, typeof key === 'string' ? ({ key } as Key) : key), app);
const type = (text: string): Key[] => [...text].map(character => ({ key: 'text', text: character }));
const down = (times: number): string[] => Array.from({ length: times }, () => 'down');

/** Invented, with each thing that a row may show. */
const halves: readonly PlugHalf[] = [
	{
		plug: 'engine to dash',
		half: 'engine',
		from: 'invented',
		pins: [
			{ pin: '1', wire: 'pink', circuit: 'run/crank feed', gauge: 18 },
			{ pin: '2', wire: 'black', circuit: 'power ground', gauge: 14 },
			{ pin: '3', wire: 'dark green/white', circuit: 'fuel pump relay control', gauge: 20 },
			{ pin: '4', wire: 'gray', circuit: '5 V reference' },
			{ pin: '5', wire: 'white', circuit: 'tachometer' },
			{ pin: '6', circuit: 'empty' },
			{ pin: '7', wire: 'yellow', circuit: 'colant temperture' },
			{ pin: '8', wire: 'brown', circuit: 'charge lamp', joined: true },
			{ pin: '9', wire: 'tan', circuit: 'oil pressure switch', note: 'cut back 4 in' },
		],
	},
	{
		plug: 'engine to dash',
		half: 'car',
		pins: [
			{ pin: '1', wire: 'pink/black', circuit: 'run and crank feed' },
			{ pin: '2', wire: 'red', circuit: 'battery feed' },
			{ pin: '3', wire: 'green', circuit: 'fuel pump relay trigger' },
			{ pin: '4', wire: 'orange', circuit: 'run feed' },
			{ pin: '5', circuit: 'empty' },
			{ pin: '6', wire: 'white', circuit: 'tachometer' },
			{ pin: '7', wire: 'yellow', circuit: 'coolant temperature' },
			{ pin: '8', wire: 'brown/red', circuit: 'charge lamp' },
			{ pin: '10', wire: 'blue', circuit: 'horn' },
		],
	},
];
const fresh = newApp(testModel(), '2026-05-01', '0.0.0', []);
const on = (plugs?: readonly PlugHalf[]): App => {
	const opened = withSheet(fresh, { ...emptySheet('mule'), ...(plugs ? { plugs } : {}) }, 'quick', null);
	return press(opened, 'ctrl-g', 'end', 'enter');
};
const list = on(halves);
const grid = press(list, 'enter');
const plugsIn = (app: App) => app.interview!.sheet.plugs;
const pins = (app: App) => editOf(app).halves[0]!.pins;

const screens: Readonly<Record<string, App>> = {
	'plugs-none': on(),
	plugs: list,
	pins: grid,
	'pins-burns': press(grid, 'down'),
	'pins-typing': press(grid, ...down(6), ...type('colant te')),
	'pins-not-recognized': press(grid, ...down(6)),
	'pins-note': press(grid, ...down(8), 'right', 'right'),
	'pins-refused': press(grid, 'right', ...type('thick'), 'enter'),
	'pins-new': press(grid, 'end'),
	'pins-moved': press(grid, ...down(4), 'ctrl-v'),
	'pins-keys': press(grid, { key: 'text', text: '?' }),
	'about-pin': press(grid, 'ctrl-e', 'right'),
	'about-half': press(list, 'ctrl-e'),
};

describe.each(Object.entries(screens))('%s', (name, app) => {
	test('is drawn as its golden says, in three sizes', async () => {
		const frames = sizes.map(([columns, rows]) => `== ${columns} x ${rows} ==\n${drawn(app, columns, rows)}\n`);
		await expect(frames.join('\n')).toMatchFileSnapshot(`./goldens/${name}.txt`);
	});

	test('never exceeds its window', () => {
		for (const [columns, rows] of [...sizes, [60, 16], [100, 30], [200, 60], [24, 8]] as const) {
			const lines = drawn(app, columns, rows).split('\n');
			expect(lines.length).toBe(rows);
			for (const line of lines) expect(line.length).toBeLessThan(columns);
		}
	});
});

test('names, wires and circuits of a sheet steer no terminal and break no row, wide letters among them', () => {
	const evil = `\u001b]0;x\u0007\u001b[31m\u202e${'\u7dd1'.repeat(60)}`;
	const plugs = halves.map(half => ({
		...half,
		plug: `dash ${evil}`,
		from: evil,
		pins: [{ pin: `1${evil}`, wire: evil, circuit: evil, note: evil }],
	}));
	const opened = on(plugs);
	const grid = press(opened, 'enter');
	for (const app of [
		opened,
		grid,
		press(grid, ...type('\u7dd1'.repeat(60))),
		press(grid, 'ctrl-e'),
		press(opened, 'ctrl-e'),
	])
		for (const [columns, rows] of sizes) {
			const lines = drawn(app, columns, rows).split('\n');
			expect(lines.length).toBe(rows);
			for (const line of lines) {
				expect(line).not.toMatch(/\p{Cc}|\u202e/u);
				expect(widthOf(line)).toBeLessThan(columns);
			}
		}
});

describe('keys in the table', () => {
	test('what is typed goes into the sheet cell by cell, each saved at once', () => {
		const begun = press(on(), 'enter', 'enter');
		expect(plugsIn(begun)).toEqual([{ plug: 'plug 1', half: 'engine', pins: [] }]);
		const typed = press(
			begun,
			...type('14'),
			'enter',
			...type('GN/WH'),
			'enter',
			...type('coolant te'),
			'tab',
			'enter',
			'enter',
			'enter',
			...type('B+'),
			'down',
		);
		expect(pins(typed)).toEqual([
			{ pin: '14', wire: 'GN/WH', circuit: 'coolant temperature signal' },
			{ pin: '15', circuit: 'B+' },
		]);
		expect(plugsIn(typed)).toEqual(editOf(typed).halves);
		const saves = typed.effects.filter(({ do: what }) => what === 'save');
		expect(saves.length).toBe(5);
		expect(saves.at(-1)).toMatchObject({ sheet: { plugs: editOf(typed).halves } });
	});

	test('Tab goes through what a circuit may be; another letter begins anew', () => {
		const typing = press(grid, ...down(6), ...type('colant'));
		const [first, second] = [press(typing, 'tab'), press(typing, 'tab', 'tab')];
		expect(first.field).not.toEqual(second.field);
		expect(pins(press(second, 'enter'))[6]!.circuit).not.toBe('colant temperture');
		expect(pins(press(typing, 'escape'))).toEqual(pins(grid));
		// One that stands unrecognized is taken by one key, and kept by going on.
		expect(pins(press(grid, ...down(6), 'tab', 'down'))[6]!.circuit).toBe('coolant temperature signal');
	});

	test('a pasted table fills rows, one undo takes it back, one redo brings it back', () => {
		const pasted = press(grid, { key: 'paste', text: '5\twhite\tspare\r\n11\tred\tB+\r\n' });
		expect(pins(pasted)[4]).toEqual({ pin: '5', wire: 'white', circuit: 'spare' });
		expect(pins(pasted).at(-1)).toEqual({ pin: '11', wire: 'red', circuit: 'B+' });
		expect(pins(press(pasted, 'ctrl-u'))).toEqual(halves[0]!.pins);
		expect(pins(press(pasted, 'ctrl-u', 'ctrl-r'))).toEqual(pins(pasted));
	});

	test('a table longer than a field takes is pasted whole', () => {
		const text = Array.from({ length: 300 }, (_, at) => `${at + 1}\tgreen/white\tengine coolant temperature`).join(
			'\n',
		);
		expect(text.length).toBeGreaterThan(8000);
		expect(pins(press(grid, { key: 'paste', text })).length).toBe(300);
	});

	test('a word without a line break is pasted into the cell, escape sequences left out', () => {
		const pasted = press(grid, { key: 'paste', text: '\u001b[31mB+\u202e' }, 'enter');
		expect(pins(pasted)[0]!.circuit).toBe('B+');
	});

	test('joined, more about a pin, emptied, taken out: each goes into the sheet', () => {
		expect(pins(press(grid, 'ctrl-y'))[0]).toMatchObject({ joined: true });
		expect(pins(press(grid, 'ctrl-y', 'ctrl-y'))[0]).not.toHaveProperty('joined');
		expect(pins(press(grid, 'ctrl-e', 'down', 'right', 'enter'))[0]).toMatchObject({ fed_here: true });
		expect(pins(press(grid, 'ctrl-e', 'end', 'up', 'up', 'up', 'up', ...type('10 A'), 'enter'))[0]).toMatchObject({
			fused: 10,
		});
		expect(pins(press(grid, 'delete'))[0]).not.toHaveProperty('circuit');
		expect(pins(press(grid, 'ctrl-x')).length).toBe(8);
		expect(plugsIn(press(list, 'ctrl-x', 'ctrl-x'))).toBeUndefined();
		expect(plugsIn(press(list, 'ctrl-x', 'ctrl-x', 'ctrl-u', 'ctrl-u'))).toEqual(halves);
	});

	test('leaving in the middle of a word keeps it in its cell', () => {
		const half = press(grid, ...type('keep al'));
		for (const effects of [leaving(half), press(half, 'ctrl-q').effects]) {
			const saved = effects.findLast(({ do: what }) => what === 'save');
			expect(saved).toMatchObject({
				sheet: { plugs: [{ pins: [{ circuit: 'keep al' }, ...new Array(8).fill({})] }, {}] },
			});
		}
	});

	test('back is the way that was come, and the question is as it was', () => {
		const back = press(grid, 'ctrl-b', 'ctrl-b', 'ctrl-b');
		expect(back.screen).toBe('question');
		expect(back.interview!.at).toBe(list.interview!.at);
		expect(press(back, ...type('1'), 'enter').interview!.sheet.plugs).toEqual(halves);
	});

	test('what another half is asked for is what the first lacks', () => {
		expect(addHalf(editOf(press(on(), 'enter'))).halves.map(({ half }) => half)).toEqual(['engine', 'car']);
	});
});
