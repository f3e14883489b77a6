import { expect, test } from 'vitest';
import { erase, eraseBack, insert, lineEditor, move, textOf } from '../../src/tui/line-editor.ts';

test('typing puts characters in at the caret', () => {
	const line = insert(move(move(lineEditor('3.8'), 'left'), 'left'), '7');
	expect(textOf(line)).toBe('37.8');
	expect(line.caret).toBe(2);
});

test('erasing takes the character before the caret, or the one under it', () => {
	expect(textOf(erase(lineEditor('abc'), 'before'))).toBe('ab');
	expect(textOf(erase(move(lineEditor('abc'), 'home'), 'under'))).toBe('bc');
	expect(textOf(erase(move(lineEditor('abc'), 'home'), 'before'))).toBe('abc');
	expect(textOf(erase(lineEditor('abc'), 'under'))).toBe('abc');
});

test('a letter and its accent are one character to erase', () => {
	expect(textOf(erase(insert(lineEditor('e'), '\u0301'), 'before'))).toBe('');
});

test('a word or all before the caret goes at once', () => {
	expect(textOf(eraseBack(lineEditor('3.78 in measured'), 'word'))).toBe('3.78 in ');
	expect(textOf(eraseBack(lineEditor('3.78 in'), 'line'))).toBe('');
});

test('a field takes 4,000 characters, however they come', () => {
	let line = lineEditor('x'.repeat(3990));
	for (let count = 0; count < 50_000; count++) line = insert(line, 'y');
	expect(textOf(line).length).toBe(4000);
	expect(textOf(insert(lineEditor(), '\u0301'.repeat(200_000))).length).toBe(4000);
});
