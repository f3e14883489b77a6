import { expect, test } from 'vitest';
import { erase, eraseBack, insert, lineEditor, move, textOf, typable } from '../../src/tui/line-editor.ts';

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

test('what is typed or pasted holds no control characters; columns stay columns', () => {
	expect(typable('0.6\t15\r\n1.5\t90\r\n')).toBe('0.6\t15\n1.5\t90');
	expect(typable('a\u001b[2J\u202eb\u0000')).toBe('a[2Jb');
});
