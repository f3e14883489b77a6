import { fnv1a } from '../graph/fnv.ts';
import type { RecordedVerdict } from '../sheet/sheet.ts';

type Line = Pick<RecordedVerdict, 'rule' | 'subject'>;

/** What a line is known by from one audit to the next. */
export const lineKey = ({ rule, subject }: Line): string => `${rule}\n${subject ?? ''}`;

const signs = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const length = 4;

/**
 * Four characters for a line: 24 bits of its hash (FNV-1a, 32 bits folded to 24: Fowler, Noll, Vo). Of a thousand lines one
 * that was never kept is taken for another once in 17,000 times, and then a change is shown that is none.
 */
export function codeOf(key: string): string {
	const hash = fnv1a(key);
	const folded = (hash >>> 24) ^ (hash & 0xffffff);
	return [18, 12, 6, 0].map(shift => signs[(folded >>> shift) & 63]).join('');
}

/** The codes of some lines, one behind the other. */
export const codesOf = (lines: readonly Line[]): string => lines.map(line => codeOf(lineKey(line))).join('');

/** The codes of a text of codes. */
export const codesIn = (codes: string): Set<string> => new Set(codes.match(/.{4}/g) ?? []);

/** How many codes a text of codes has. */
export const countCodes = (codes: string): number => Math.floor(codes.length / length);
