import type { AnyQuantity } from '../../quantities/quantity.ts';
import { stages } from '../../sheet/stage.ts';
import type { Text } from '../../sheet/text.ts';
import type { Kind } from '../../units/kinds.ts';
import type { Caution, LimitWords, Section } from '../rulebook.ts';
import type { TroubleCode } from '../trouble-code.ts';
import type { UsualCircuit } from '../usual-circuit.ts';
import { readConstant } from './constant.ts';
import { compileYesNo } from './expression.ts';
import { type Fields, quote } from './fields.ts';
import type { Names } from './names.ts';
import { readPlain, readText, refuseNames } from './words.ts';

/** The order of the sections, and which quantities stand beside the questions of each (rules/sections.yaml). */
export function readSections(root: Fields, quantities: readonly AnyQuantity[]): Section[] {
	const known = new Set(quantities.map(({ id }) => id));
	return unlike(
		root.innerList('sections').map(inner => {
			const figures = inner.texts('figures', false);
			for (const id of figures)
				if (!known.has(id)) inner.reportName('figures', `${quote(id)} is no quantity: see swap-audit quantities`);
			const section = { id: inner.text('id'), title: inner.text('title'), words: inner.text('words'), figures };
			inner.refuseRest();
			return [inner, section] as const;
		}),
		'id',
	);
}

/** The cautions, in one line on the work that they touch and in full at the back of an audit (rules/cautions.yaml). */
export function readCautions(root: Fields, names: Names): Caution[] {
	return eachOf(root, 'cautions', (inner, id) => ({
		id,
		...printed(inner, 'title', 'brief'),
		words: printedText(inner, 'words'),
		when: compileYesNo(inner, 'when', names),
	}));
}

/** What the sources are called (rules/sources.yaml); every quantity's must be among them. */
export function readSources(root: Fields, quantities: readonly AnyQuantity[]): Record<string, string> {
	const inner = root.inner('sources');
	const sources = Object.fromEntries((inner?.keys() ?? []).map(id => [id, inner!.text(id)]));
	const lacking = new Map<string, string>();
	for (const { id, source } of quantities) {
		for (const word of source) if (!Object.hasOwn(sources, word) && !lacking.has(word)) lacking.set(word, id);
	}
	for (const [word, id] of lacking)
		root.reportName('sources', `the quantity ${id} names the source ${quote(word)}, which is not here: add it`);
	return sources;
}

/** What gives out at each limit, and what raising it takes (rules/limits.yaml); every limit of the build has its words. */
export function readLimits(root: Fields, quantities: readonly AnyQuantity[]): Record<string, LimitWords> {
	const ladder = quantities.map(({ id }) => id).filter(id => /(boost|speed)_limit$/.test(id));
	const limits = Object.fromEntries(
		eachOf(root, 'limits', (inner, id) => {
			if (!ladder.includes(id)) inner.reportStart(`${quote(id)} is no limit of boost or speed: ${ladder.join(', ')}`);
			return { id, ...printed(inner, 'title'), raise: printedText(inner, 'raise') };
		}).map(({ id, ...words }) => [id, words]),
	);
	for (const id of ladder)
		if (!Object.hasOwn(limits, id))
			root.reportName('limits', `the limit ${id} has no words here: add its title and raise`);
	return limits;
}

/** The rows of the wiring worksheet, with a usual current (rules/circuits.yaml). */
export function readWorksheet(root: Fields, names: Names): UsualCircuit[] {
	return unlike(
		root.innerList('worksheet').map(inner => {
			const placed = inner.placed('current');
			const current = placed && readConstant(inner.source, placed, ['current']);
			const circuit = {
				...printed(inner, 'circuit'),
				also: inner.texts('also', false),
				stage: inner.oneOf('stage', stages, 'tidy'),
				words: printedText(inner, 'words'),
				pins: inner.texts('pins', false),
				current: current?.value ?? 0,
				load: answerOf(inner, 'load', 'current', names),
				length: answerOf(inner, 'length', 'length', names),
				when: compileYesNo(inner, 'when', names),
			};
			inner.refuseRest();
			return [inner, circuit] as const;
		}),
		'circuit',
	);
}

/** The answer that holds a figure of a circuit; null where none is named. */
export function answerOf(inner: Fields, key: string, kind: Kind, names: Names): string | null {
	const id = inner.text(key, false);
	if (id === '') return null;
	const type = names.get(id);
	if (type?.is !== 'number' || type.kind !== kind) inner.report(key, `${key}: ${quote(id)} is no answer in ${kind}`);
	return id;
}

/** Stored generic trouble codes, with titles of our own (rules/trouble-codes.yaml), what to do first, and what of the rulebook they speak to. */
export function readCodes(
	root: Fields,
	topics: ReadonlySet<string>,
	rules: ReadonlySet<string>,
): Record<string, TroubleCode> {
	const outer = root.inner('actions');
	const actions = new Map((outer?.keys() ?? []).map(name => [name, printed(outer!, name)[name]!]));
	const used = new Set<string>();
	const actionOf = (inner: Fields): string => {
		const name = inner.text('do');
		used.add(name);
		if (!actions.has(name)) inner.report('do', `do: ${quote(name)} is none of the actions: add it there`);
		return actions.get(name) ?? '';
	};
	const read = (inner: Fields, code: string) => {
		if (!/^[PBCU][0-3][0-9A-F]{3}$/.test(code))
			inner.reportStart(`${quote(code)} is no trouble code: P, B, C or U, a digit 0-3, three digits 0-9 or A-F`);
		const pointed = (key: 'topics' | 'rules', known: ReadonlySet<string>) => {
			const ids = inner.texts(key, false);
			for (const id of ids) if (!known.has(id)) inner.report(key, `${quote(id)} is none of the ${key}`);
			return ids;
		};
		return {
			code,
			...printed(inner, 'title'),
			action: actionOf(inner),
			topics: pointed('topics', topics),
			rules: pointed('rules', rules),
		};
	};
	const codes = Object.fromEntries(eachOf(root, 'codes', read).map(({ code, ...rest }) => [code, rest]));
	for (const name of actions.keys()) if (!used.has(name)) outer!.reportName(name, `no code does ${quote(name)}`);
	return codes;
}

/** Texts that are printed as they are. */
function printed<Key extends string>(inner: Fields, ...keys: readonly Key[]): Record<Key, string> {
	const texts = keys.map(key => {
		const text = readPlain(inner, key);
		refuseNames(inner, key, text);
		return [key, text];
	});
	return Object.fromEntries(texts) as Record<Key, string>;
}

function printedText(inner: Fields, key: string): Text {
	const text = readText(inner, key);
	refuseNames(inner, key, text);
	return text;
}

/** A list without two of one name; reports each that is there already. */
function unlike<T, Key extends keyof T & string>(found: readonly (readonly [Fields, T])[], key: Key): T[] {
	const seen = new Set<T[Key]>();
	return found.map(([inner, one]) => {
		if (seen.has(one[key])) inner.report(key, `${key}: ${quote(String(one[key]))} is here already`);
		seen.add(one[key]);
		return one;
	});
}

function eachOf<T>(root: Fields, key: string, read: (inner: Fields, id: string) => T): T[] {
	const outer = root.inner(key);
	return (outer?.keys() ?? []).flatMap(id => {
		const inner = outer!.inner(id);
		if (!inner) return [];
		const item = read(inner, id);
		inner.refuseRest();
		return [item];
	});
}
