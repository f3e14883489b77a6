import { expect, test } from 'vitest';
import { buffer, erase, eraseBack, insert, move, textOf, typable } from '../../src/tui/buffer.ts';

test('typing puts characters in at the caret', () => {
	const line = insert(move(move(buffer('3.8'), 'left'), 'left'), '7');
	expect(textOf(line)).toBe('37.8');
	expect(line.caret).toBe(2);
});

test('erasing takes the character before the caret, or the one under it', () => {
	expect(textOf(erase(buffer('abc'), 'before'))).toBe('ab');
	expect(textOf(erase(move(buffer('abc'), 'home'), 'under'))).toBe('bc');
	expect(textOf(erase(move(buffer('abc'), 'home'), 'before'))).toBe('abc');
	expect(textOf(erase(buffer('abc'), 'under'))).toBe('abc');
});

test('a letter and its accent are one character to erase', () => {
	expect(textOf(erase(insert(buffer('e'), '\u0301'), 'before'))).toBe('');
});

test('a word or all before the caret goes at once', () => {
	expect(textOf(eraseBack(buffer('3.78 in measured'), 'word'))).toBe('3.78 in ');
	expect(textOf(eraseBack(buffer('3.78 in'), 'line'))).toBe('');
});

test('what is typed or pasted holds no control characters; columns stay columns', () => {
	expect(typable('0.6\t15\r\n1.5\t90\r\n')).toBe('0.6\t15\n1.5\t90');
	expect(typable('a\u001b[2J\u202eb\u0000')).toBe('a[2Jb');
});
