import type { Audit, Finding } from '../audit/audit.ts';
import { printJson } from './json.ts';

/**
 * Prints audit after audit as `printJson` does. What a rule always says is kept as JSON from one to the next, and so is a
 * finding or a quantity that is the very object of the audit before.
 */
export class AuditPrinter {
	private readonly rules = new Map<string, { readonly said: Said; readonly finding: Finding; readonly json: string }>();
	private readonly quantities = new Map<string, { readonly value: object; readonly json: string }>();

	/** The JSON in pieces, to be written one after the other: joining them would cost more than making them. */
	print(audit: Audit): string[] {
		const pieces: string[] = [];
		for (const [key, value] of Object.entries(audit)) {
			pieces.push(`${pieces.length === 0 ? '{' : ','}"${key}":`);
			if (value === audit.findings) addList(pieces, '[]', audit.findings, finding => this.finding(finding));
			else if (value === audit.quantities)
				addList(pieces, '{}', Object.keys(value), id => this.quantity(id, audit.quantities[id]!));
			else pieces.push(printJson(value));
		}
		pieces.push('}');
		return pieces;
	}

	/** With a comma before it, as `quantity`. */
	private finding(finding: Finding): string {
		const before = this.rules.get(finding.rule);
		if (before?.finding === finding) return before.json;
		const said = before && saysStill(before.said, finding) ? before.said : saidBy(finding);
		const json = written(finding, said);
		this.rules.set(finding.rule, { said, finding, json });
		return json;
	}

	private quantity(id: string, value: object): string {
		const before = this.quantities.get(id);
		if (before?.value === value) return before.json;
		const json = `,"${id}":${jsonOf(value)}`;
		this.quantities.set(id, { value, json });
		return json;
	}
}

/** What a rule says of one build as of another, and its JSON. */
interface Said extends Pick<Finding, 'do' | 'prove' | 'parts' | 'cautions' | 'source'> {
	readonly steps: string;
	readonly sources: string;
}

function saidBy({ do: steps, prove, parts, cautions, source }: Finding): Said {
	return {
		do: steps,
		prove,
		parts,
		cautions,
		source,
		steps: `,"do":${jsonOf(steps)},"prove":${jsonOf(prove)},"parts":${jsonOf(parts)},"numbers":`,
		sources: `,"cautions":${jsonOf(cautions)},"source":${jsonOf(source)},"distance":`,
	};
}

const saysStill = (said: Said, finding: Finding): boolean =>
	said.do === finding.do &&
	said.prove === finding.prove &&
	said.parts === finding.parts &&
	said.cautions === finding.cautions &&
	said.source === finding.source;

function written(finding: Finding, { steps, sources }: Said): string {
	const { rule, subject, section, stage, harm, verdict, sure, title, why, numbers, missing, assumed, distance } =
		finding;
	const about = `,{"rule":${jsonOf(rule)},"subject":${jsonOf(subject)},"section":${jsonOf(section)},"stage":"${stage}","harm":"${harm}"`;
	const came = `,"verdict":"${verdict}","sure":${jsonOf(sure)},"title":${jsonOf(title)},"why":${jsonOf(why)}`;
	const rests = `${jsonOf(numbers)},"missing":${jsonOf(missing)},"assumed":${jsonOf(assumed)}`;
	return `${about}${came}${steps}${rests}${sources}${jsonOf(distance)}}`;
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
