import { expect, test } from 'vitest';
import { type Output, Painter } from '../../src/tui/painter.ts';
import { joined, type Line, line } from '../../src/tui/text.ts';
import type { Appearance } from '../../src/tui/theme.ts';

const dark: Appearance = { background: 'dark', depth: 4, unicode: false };

function painted(rows = 4) {
	const written: string[] = [];
	const output: Output = { columns: 20, rows, write: text => written.push(text) };
	const painter = new Painter(output);
	/** Draws lines as the library would: the changed ones, a line each. Gives what was written. */
	const draw = (lines: readonly Line[], appearance = dark) => {
		written.length = 0;
		painter.write(
			painter
				.changed(lines, appearance)
				.map(({ line: { text } }) => text)
				.join('\n'),
		);
		return written.join('');
	};
	return { painter, draw, written };
}
const at = (row: number, text: string) => `\u001b[${row};1H${text}\u001b[0m\u001b[K`;

test('only the rows that differ from what stands are drawn, each at its place', () => {
	const { draw } = painted();
	expect(draw([line('one'), line('two'), line('three')])).toContain(at(1, 'one') + at(2, 'two') + at(3, 'three'));
	expect(draw([line('one'), line('two'), line('three')])).toBe('');
	expect(draw([line('one'), line('2'), line('three')])).toBe(`\u001b[?2026h${at(2, '2')}\u001b[?2026l`);
	expect(draw([line('one'), line('2', 'bad'), line('three')])).toContain(at(2, '2'));
	const parts = joined({ text: '2', look: 'good' }, { text: '!', look: 'plain' });
	expect(draw([line('one'), parts, line('three')])).toContain(at(2, '2!'));
	expect(draw([line('one'), joined(...(parts.parts ?? [])), line('three')])).toBe('');
});

test('another background draws all rows anew, for their colors are others', () => {
	const { draw } = painted();
	draw([line('one'), line('two')]);
	expect(draw([line('one'), line('two')], { ...dark, background: 'light' })).toContain(at(1, 'one') + at(2, 'two'));
});

test('while it pauses nothing is written; then all that stands is drawn, what changed meanwhile too', () => {
	const { painter, draw, written } = painted();
	draw([line('one'), line('two')]);
	painter.pause();
	expect(draw([line('one'), line('2')])).toBe('');
	painter.repaint();
	expect(written.join('')).toContain(`\u001b[2J`);
	expect(written.join('')).toContain(at(1, 'one') + at(2, '2'));
});

test('a row that the library drew twice before it was written is not lost, nor is one below the window written', () => {
	const { painter, draw } = painted(2);
	painter.changed([line('one'), line('two')], dark);
	expect(draw([line('one'), line('2'), line('below')])).toContain(at(1, 'one') + at(2, '2'));
	expect(draw([line('one'), line('2'), line('below still')])).toBe('');
	expect(draw([line('one')])).toBe('');
	expect(draw([line('one'), line('2')])).toContain(at(2, '2'));
});
