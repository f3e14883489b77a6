import { type Expression, substitute } from '../../expressions/tree.ts';
import { type Circuit, ends, type Unclear, type Vocabulary } from '../../plugs/circuit.ts';
import { indexNames } from '../../plugs/name-index.ts';
import { sorts } from '../../sheet/plugs.ts';
import type { Kind } from '../../units/kinds.ts';
import { harms, stages } from '../rulebook.ts';
import { readConstant } from './constant.ts';
import { compileYesNo } from './expression.ts';
import { type Fields, quote } from './fields.ts';
import { override, readMeetings, readReads } from './meetings.ts';
import { type Names, withNames } from './names.ts';
import { answerOf } from './tables.ts';
import { refuseNames } from './words.ts';

/** The circuits of plugs and what happens when they meet (rules/circuits.yaml, rules/meetings.yaml). */
export function readVocabulary(circuitFile: Fields, meetingFile: Fields, names: Names): Vocabulary {
	const circuits = circuitFile.innerList('circuits').flatMap(inner => readCircuits(inner, names));
	const seen = new Set<string>();
	for (const { id } of circuits) {
		if (seen.has(id)) circuitFile.report('circuits', `the circuit ${quote(id)} is here twice`);
		seen.add(id);
	}
	for (const { id, twistedWith } of circuits)
		if (twistedWith !== null && !seen.has(twistedWith))
			circuitFile.report('circuits', `${id}: twisted_with ${quote(twistedWith)} is no circuit`);
	const abbreviations = circuitFile.inner('abbreviations');
	const vocabulary = {
		circuits,
		abbreviations: Object.fromEntries((abbreviations?.keys() ?? []).map(key => [key, abbreviations!.text(key)])),
		filler: circuitFile.texts('filler'),
		unclear: circuitFile.innerList('unclear').flatMap(inner => readUnclear(inner, seen)),
		...readMeetings(meetingFile),
	};
	return { ...vocabulary, index: indexNames(vocabulary) };
}

/** One circuit, or one a number where `numbers` says how many. */
function readCircuits(fields: Fields, names: Names): Circuit[] {
	const numbers = fields.has('numbers') ? fields.number('numbers') : null;
	const known: Names = numbers === null ? names : withNames(names, [['n', { is: 'number', kind: 'count' }]]);
	const required = compileYesNo(fields, 'required', known);
	const read = (n: number | null): Circuit => {
		const say = (text: string) => (n === null ? text : text.replaceAll('{n}', String(n)));
		const text = (key: string, need = true) => {
			const said = say(fields.text(key, need));
			refuseNames(fields, key, said);
			return said;
		};
		const when = fields.text('required', false);
		return {
			id: say(fields.text('id')),
			title: text('title'),
			words: text('words'),
			synonyms: fields.texts('synonyms').map(say),
			sort: fields.oneOf('sort', sorts, 'unknown'),
			ends: readEnds(fields),
			direction: readDirection(fields),
			required: required && withNumber(required, n),
			when: when === '' ? null : n === null ? when : when.replace(/\bn\b/g, String(n)),
			ifMissing: readIfMissing(fields),
			comfort: readYes(fields, 'comfort'),
			shared: readYes(fields, 'shared'),
			twistedWith: fields.text('twisted_with', false) || null,
			load: figure(fields, 'load', 'current'),
			loadFrom: answerOf(fields, 'load_from', 'current', names),
			length: figure(fields, 'length', 'length'),
			lengthFrom: answerOf(fields, 'length_from', 'length', names),
			fuse: figure(fields, 'fuse', 'current'),
			reads: readReads(fields.inner('reads', false)),
			grounded: override(fields, 'grounded'),
			fed: override(fields, 'fed'),
			crossed: override(fields, 'crossed'),
		};
	};
	const found = numbers === null ? [read(null)] : Array.from({ length: numbers }, (_, index) => read(index + 1));
	fields.refuseRest();
	return found;
}

const withNumber = (tree: Expression, n: number | null): Expression =>
	n === null ? tree : substitute(tree, new Map([['n', ['value', n]]]));

function readEnds(fields: Fields): Circuit['ends'] {
	const [a, b, ...rest] = fields.texts('ends');
	const isEnd = (text: string | undefined): text is Circuit['ends'][0] => ends.includes(text as never);
	if (isEnd(a) && isEnd(b) && rest.length === 0) return [a, b];
	fields.report('ends', `ends: two of ${ends.join(', ')}`);
	return ['car', 'car'];
}

function readDirection(fields: Fields): Circuit['direction'] {
	const [to, from] = [fields.text('to', false), fields.text('from', false)];
	if (to === 'controller' && from === '') return 'to controller';
	if (from === 'controller' && to === '') return 'from controller';
	if (to !== '' || from !== '') fields.report(to ? 'to' : 'from', 'to: controller, or from: controller');
	return null;
}

function readIfMissing(fields: Fields): Circuit['ifMissing'] {
	if (!fields.has('if_missing')) return ['fire', 'strands'];
	const [stage = '', harm = ''] = fields.texts('if_missing');
	if (!stages.includes(stage as never) || !harms.includes(harm as never))
		fields.report('if_missing', `if_missing: a stage of ${stages.join(', ')} and a harm of ${harms.join(', ')}`);
	return [stage, harm];
}

function readYes(fields: Fields, key: string): boolean {
	const data = fields.data(key);
	if (data !== undefined && data !== true) fields.report(key, `${key}: true, or leave it away`);
	return data === true;
}

function figure(fields: Fields, key: string, kind: Kind): number | null {
	const placed = fields.placed(key, false);
	return placed ? (readConstant(fields.source, placed, [kind])?.value ?? null) : null;
}

function readUnclear(fields: Fields, ids: ReadonlySet<string>): Unclear[] {
	const numbers = fields.has('numbers') ? fields.number('numbers') : null;
	const [names, circuits] = [fields.texts('names'), fields.texts('circuits')];
	fields.refuseRest();
	const found = (numbers === null ? [''] : Array.from({ length: numbers }, (_, index) => String(index + 1))).map(n => ({
		names: names.map(name => name.replaceAll('{n}', n)),
		circuits: circuits.map(id => id.replaceAll('{n}', n)),
	}));
	for (const id of found.flatMap(unclear => unclear.circuits))
		if (!ids.has(id)) fields.report('circuits', `${quote(id)} is no circuit`);
	return found;
}
