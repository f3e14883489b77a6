import type { Audit, Finding } from '../audit/audit.ts';
import { printJson } from './json.ts';

/** One key of an object with its value, as it was printed the last time. */
interface Printed {
	readonly value: unknown;
	readonly json: string;
}

/**
 * Prints audit after audit as `printJson` does. Most of an audit is what its rules always say, or what the one before said: of
 * each rule's finding the JSON of each key is kept, and made anew only when the value is another one.
 */
export class AuditPrinter {
	/** By rule: its latest finding, and each key of it. */
	private readonly kept = new Map<string, { finding: Finding; json: string; keys: Printed[] }>();
	/** Findings on one part of many, and quantities. */
	private readonly whole = new WeakMap<object, string>();

	/** The JSON in pieces, to be written one after the other: joining them would cost more than making them. */
	print(audit: Audit): string[] {
		const pieces: string[] = [];
		for (const [key, value] of Object.entries(audit)) {
			pieces.push(`${pieces.length === 0 ? '{' : ','}"${key}":`);
			if (value === audit.findings) addList(pieces, '[]', audit.findings, finding => this.finding(finding));
			else if (value === audit.quantities)
				addList(pieces, '{}', Object.keys(value), id => this.once(audit.quantities[id]!, json => `,"${id}":${json}`));
			else pieces.push(printJson(value));
		}
		pieces.push('}');
		return pieces;
	}

	/** With a comma before it. */
	private finding(finding: Finding): string {
		// Of a rule on many parts the latest finding was on another part, and little is alike.
		if (finding.subject !== null) return this.once(finding, json => `,${json}`);
		const kept = this.kept.get(finding.rule);
		if (kept?.finding === finding) return kept.json;
		const keys = kept?.keys ?? [];
		let json = '';
		let place = 0;
		for (const key in finding) {
			const value = finding[key as keyof Finding];
			let printed = keys[place];
			if (!printed || !alike(printed.value, value))
				keys[place] = printed = { value, json: `${place === 0 ? ',{' : ','}"${key}":${jsonOf(value)}` };
			json += printed.json;
			place++;
		}
		json += '}';
		this.kept.set(finding.rule, { finding, json, keys });
		return json;
	}

	private once(value: object, written: (json: string) => string): string {
		let json = this.whole.get(value);
		if (json === undefined) this.whole.set(value, (json = written(jsonOf(value))));
		return json;
	}
}

/** Adds what is printed of each item, a comma before it, between two brackets. */
function addList<Item>(
	pieces: string[],
	brackets: string,
	items: readonly Item[],
	print: (item: Item) => string,
): void {
	const first = pieces.length;
	for (const item of items) pieces.push(print(item));
	if (pieces.length === first) pieces.push(brackets);
	else {
		pieces[first] = brackets[0] + pieces[first]!.slice(1);
		pieces.push(brackets[1]!);
	}
}

/** What stands in JSON as it is, and bothers no terminal. */
const plain = /^[ !#-[\]-~]*$/;

/** `printJson` of what an audit mostly holds, a few times as fast: plain words, figures, and lists and objects of them. */
function jsonOf(value: unknown): string {
	if (value === null) return 'null';
	if (typeof value === 'string') return plain.test(value) ? `"${value}"` : printJson(value);
	if (typeof value === 'number') return Number.isFinite(value) ? `${value}` : 'null';
	if (typeof value !== 'object') return printJson(value);
	if (Array.isArray(value)) return value.length === 0 ? '[]' : `[${value.map(inList).join()}]`;
	let json = '';
	for (const key of Object.keys(value)) {
		const inside = (value as Record<string, unknown>)[key];
		if (inside !== undefined) json += `${json === '' ? '{' : ','}${jsonOf(key)}:${jsonOf(inside)}`;
	}
	return json === '' ? '{}' : `${json}}`;
}

const inList = (value: unknown): string => jsonOf(value ?? null);

/** One value, or two lists of the same values. */
function alike(a: unknown, b: unknown): boolean {
	if (a === b) return true;
	if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false;
	return a.every((item, index) => item === b[index]);
}
