import { describe, expect, test } from 'vitest';
import { columns } from '../../../src/plugs/edit/cell.ts';
import {
	at,
	type Edit,
	halfOf,
	nameHere,
	onward,
	pinsOf,
	redo,
	removed,
	sideways,
	startEdit,
	typed,
	undo,
} from '../../../src/plugs/edit/edit.ts';
import { addHalf, halfEntries, nextChoice, pinEntries, removeHalf, withEntry } from '../../../src/plugs/edit/fields.ts';
import { moveWire, paste } from '../../../src/plugs/edit/rows.ts';
import { plugProblems } from '../../../src/sheet/check-plugs.ts';
import type { PlugHalf } from '../../../src/sheet/plugs.ts';
import { counts, seed } from '../../counts.ts';
import { chance } from '../../support/chance.ts';

const half = (pins: PlugHalf['pins'] = []): PlugHalf => ({ plug: 'dash', half: 'engine', pins });
const edit = (...pins: PlugHalf['pins']) => startEdit([half(pins)]);
/** Cells typed one after the other, each ended as the Enter key does. */
const enter = (start: Edit, ...cells: readonly string[]) =>
	cells.reduce((now, text) => onward(text === '' ? now : typed(now, text)), start);

describe('a table that is typed', () => {
	test('goes on by itself: pin, wire, circuit, then the pin below, whose name is proposed', () => {
		const done = enter(edit(), 'A7', 'red', 'B+', '', 'gray', 'ECT');
		expect(pinsOf(done)).toEqual([
			{ pin: 'A7', wire: 'red', circuit: 'B+' },
			{ pin: 'A8', wire: 'gray', circuit: 'ECT' },
		]);
		expect([done.row, done.column, nameHere(done)]).toEqual([2, 'pin', 'A9']);
	});

	test.each([
		['14', '15'],
		['A09', 'A10'],
		['K', 'L'],
		['C2-7', 'C2-8'],
		['Z', ''],
		['left', ''],
	])('after %s comes "%s"', (name, next) => {
		expect(nameHere(at(edit({ pin: name }), { row: 1 }))).toBe(next);
	});

	test('a name that is taken is not proposed', () => {
		expect(nameHere(at(edit({ pin: '2' }, { pin: '3' }, { pin: '1' }), { row: 3 }))).toBe('4');
	});

	test('blanks around are dropped, a blank cell says nothing, and nothing typed changes nothing', () => {
		const one = edit({ pin: '1', wire: 'red', circuit: 'B+' });
		expect(pinsOf(typed(sideways(one, 1), '  '))).toEqual([{ pin: '1', circuit: 'B+' }]);
		expect(typed(sideways(one, 1), ' red ').halves).toBe(one.halves);
		expect(typed(at(one, { row: 1 }), ' ').halves).toBe(one.halves);
	});

	test.each([
		['pin', '', /1 to 200|like "14"/],
		['gauge', 'thick', /AWG/],
		['note', 'x'.repeat(1001), /1000/],
	] as const)('a %s of "%s" is refused with what is accepted, and nothing changes', (column, text, accepted) => {
		const one = at(edit({ pin: '1' }), { column });
		const after = typed(one, text);
		expect(after.halves).toBe(one.halves);
		expect(after.past).toEqual([]);
		expect(after.said).toMatchObject({ kind: 'problem', text: expect.stringMatching(accepted) });
	});

	test('a size is kept as the sheet keeps it', () => {
		const sizes = ['18 ga', '2/0', '0,75 mm2'].map(
			text => pinsOf(typed(at(edit({ pin: '1' }), { column: 'gauge' }), text))[0]!.gauge,
		);
		expect(sizes).toEqual([18, -1, '0.75 mm2']);
	});

	test('the cursor stays inside', () => {
		const one = edit({ pin: '1' }, { pin: '2' });
		expect(at(one, { row: 99 }).row).toBe(2);
		expect(at(one, { row: -5 }).row).toBe(0);
		expect(sideways(one, -1).column).toBe('pin');
		expect(sideways(one, 99).column).toBe('note');
		expect(at(startEdit([]), { row: 3, half: 2 })).toMatchObject({ row: 0, half: 0 });
	});
});

describe('taken back', () => {
	test('each change by itself, with the place it was made at; and made again', () => {
		const start = edit();
		const done = enter(start, '1', 'red', 'B+');
		const back = undo(undo(done));
		expect(pinsOf(back)).toEqual([{ pin: '1' }]);
		expect(back.column).toBe('wire');
		expect(undo(back).halves).toBe(start.halves);
		expect(undo(undo(back)).said).toMatchObject({ kind: 'problem' });
		expect(redo(redo(back)).halves).toBe(done.halves);
	});

	test('what is changed after an undo makes an end of what could be made again', () => {
		const back = undo(enter(edit(), '1', 'red'));
		expect(redo(typed(back, 'blue')).said).toMatchObject({ text: 'Nothing to redo.' });
	});

	test('a pasted table and a pin taken out go back as one', () => {
		const start = edit({ pin: '1', circuit: 'B+' });
		expect(undo(paste(start, '1\tred\tECT\n2\tblue\tMIL')).halves).toBe(start.halves);
		expect(undo(removed(start)).halves).toBe(start.halves);
	});
});

describe('a wire that is moved', () => {
	test('goes to the pin with all that is known of it; what belongs to the cavity stays, and what was there comes back', () => {
		const start = edit(
			{ pin: '14', wire: 'red', circuit: 'ECT', gauge: 18, seal: true },
			{ pin: '22', circuit: 'empty', meets: 'B2' },
		);
		expect(pinsOf(moveWire(start, '22'))).toEqual([
			{ pin: '14', circuit: 'empty', seal: true },
			{ pin: '22', wire: 'red', circuit: 'ECT', gauge: 18, meets: 'B2' },
		]);
	});

	test('to a pin that is not listed lists it, and leaves its own empty', () => {
		expect(pinsOf(moveWire(edit({ pin: '1', circuit: 'ECT' }), ' 9 '))).toEqual([
			{ pin: '1', circuit: 'empty' },
			{ pin: '9', circuit: 'ECT' },
		]);
	});
});

describe('what is said beyond the table', () => {
	test('every choice of every entry is taken, of a half and of a pin', () => {
		for (const of of ['half', 'pin'] as const) {
			const start = edit({ pin: '1' });
			for (const entry of of === 'half' ? halfEntries(start) : pinEntries(start)) {
				for (const value of entry.choices) {
					const { said, halves } = withEntry(start, of, entry.key, value);
					expect(said, `${entry.key} ${value}`).toBeNull();
					expect([...plugProblems(halves)]).toEqual([]);
				}
				if (entry.choices.length > 0) expect(entry.choices).toContain(nextChoice(entry, 1));
			}
		}
	});

	test.each([
		['pin', 'fused', '10 A', 10],
		['pin', 'fused', 'none', false],
		['pin', 'fused', 'link', 'link'],
		['pin', 'terminal', '2,8 mm', 2.8],
		['pin', 'meets', ' B2 ', 'B2'],
		['half', 'from', '1998 wagon loom', '1998 wagon loom'],
	] as const)('of the %s: %s typed "%s" is kept as %s', (of, key, text, value) => {
		const { halves, said } = withEntry(edit({ pin: '1' }), of, key, text);
		expect(said).toBeNull();
		expect(of === 'half' ? halves[0] : halves[0]!.pins[0]).toMatchObject({ [key]: value });
	});

	test('a name that another half has, and a fuse of words, are refused with what is accepted', () => {
		const two = addHalf(edit());
		expect(withEntry(two, 'half', 'half', 'engine').said).toMatchObject({
			kind: 'problem',
			text: expect.stringMatching(/each half of a plug once/),
		});
		expect(withEntry(edit({ pin: '1' }), 'pin', 'fused', 'big').said).toMatchObject({ kind: 'problem' });
	});

	test('a half more is the other one of a plug that has one alone, else of a new plug', () => {
		const two = addHalf(edit());
		expect(halfOf(two)).toEqual({ plug: 'dash', half: 'car', pins: [] });
		expect(halfOf(addHalf(two))).toEqual({ plug: 'plug 1', half: 'engine', pins: [] });
		expect(undo(removeHalf(two)).halves).toBe(two.halves);
	});
});

test('whatever is done, the sheet could hold it, and undone it is what it was', () => {
	const random = chance(seed);
	const some = <T>(items: readonly T[]): T => items[Math.floor(random() * items.length)]!;
	const texts = [
		'1',
		'A7',
		'red',
		'B+',
		'',
		' ',
		'18',
		'2/0',
		'thick',
		'x'.repeat(300),
		'1\tred\tECT\n2\tblue\tB+',
		'pin,circuit\n',
		'7: gray ECT',
		'ECT\nMIL\n',
		'14,red',
		'"',
		'fuel\u0000',
		'22',
	];
	const doings: readonly ((now: Edit) => Edit)[] = [
		now => typed(now, some(texts)),
		now => paste(now, some(texts)),
		now => moveWire(now, some(texts)),
		removed,
		addHalf,
		removeHalf,
		undo,
		redo,
		onward,
		now => at(now, { row: Math.floor(random() * 9) - 1, half: Math.floor(random() * 4), column: some(columns) }),
		now => {
			const entry = some(pinEntries(now));
			return withEntry(now, 'pin', entry.key, entry.choices.length > 0 ? some(entry.choices) : some(texts));
		},
		now => {
			const entry = some(halfEntries(now));
			return halfOf(now)
				? withEntry(now, 'half', entry.key, entry.choices.length > 0 ? some(entry.choices) : some(texts))
				: now;
		},
	];
	for (let walk = 0; walk < Math.ceil(counts.walks / 10); walk++) {
		const start = startEdit(random() < 0.5 ? [] : [half([{ pin: '1', circuit: 'B+' }, { pin: '2' }])]);
		let now = start;
		for (let step = 0; step < 60; step++) {
			const before = now;
			now = some(doings)(now);
			expect([...plugProblems(now.halves)]).toEqual([]);
			expect(now.row).toBeLessThanOrEqual(pinsOf(now).length);
			if (now.said?.kind === 'problem') expect(now.halves).toBe(before.halves);
		}
		while (now.past.length > 0) now = undo(now);
		expect(now.halves).toEqual(start.halves);
	}
});
