import {
	type Caution,
	type LimitWords,
	type Procedure,
	type Section,
	type Step,
	stages,
	type TroubleCode,
	type UsualCircuit,
} from '../rulebook.ts';
import { readConstant } from './constant.ts';
import { compileExpression } from './expression.ts';
import type { Fields } from './fields.ts';
import type { Names } from './names.ts';

/** The order of the sections (rules/sections.yaml). */
export function readSections(root: Fields): Section[] {
	return root.innerList('sections').map(inner => {
		const section = { id: inner.text('id'), title: inner.text('title'), words: inner.text('words') };
		inner.refuseRest();
		return section;
	});
}

/** The cautions, shown at the head of an audit and named on the lines they touch (rules/cautions.yaml). */
export function readCautions(root: Fields, names: Names): Caution[] {
	return eachOf(root, 'cautions', (inner, id) => ({
		id,
		title: inner.text('title'),
		words: inner.text('words'),
		when: condition(inner, 'when', names),
	}));
}

/** What the sources are called (rules/sources.yaml). */
export function readSources(root: Fields): Record<string, string> {
	const inner = root.inner('sources');
	return Object.fromEntries((inner?.keys() ?? []).map(id => [id, inner!.text(id)]));
}

/** What gives out at each limit, and what raising it takes (rules/limits.yaml). */
export function readLimits(root: Fields): Record<string, LimitWords> {
	const read = (inner: Fields, id: string) => ({ id, title: inner.text('title'), raise: inner.text('raise') });
	return Object.fromEntries(eachOf(root, 'limits', read).map(({ id, ...words }) => [id, words]));
}

/** The circuits a swap wires, with a usual current (rules/circuits.yaml). */
export function readCircuits(root: Fields, names: Names): UsualCircuit[] {
	return root.innerList('circuits').map(inner => {
		const placed = inner.placed('current');
		const current = placed && readConstant(inner.source, placed, ['current']);
		const circuit = {
			circuit: inner.text('circuit'),
			current: current?.value ?? 0,
			when: condition(inner, 'when', names),
			words: inner.text('words'),
		};
		inner.refuseRest();
		return circuit;
	});
}

/** Stored generic trouble codes, with titles of our own (rules/trouble-codes.yaml). */
export function readCodes(root: Fields): Record<string, TroubleCode> {
	const read = (inner: Fields, code: string) => ({
		code,
		title: inner.text('title'),
		topics: inner.texts('topics', false),
		rules: inner.texts('rules', false),
	});
	return Object.fromEntries(eachOf(root, 'codes', read).map(({ code, ...rest }) => [code, rest]));
}

/** One procedure: a first crank, fire, drive, boost (rules/procedures/). */
export function readProcedure(root: Fields, names: Names, cautions: ReadonlySet<string>): Procedure {
	const procedure: Procedure = {
		title: root.text('procedure'),
		stage: root.oneOf('stage', stages, 'crank'),
		place: root.number('place'),
		steps: root.innerList('steps').map((inner): Step => {
			const step: Step = {
				do: inner.text('do'),
				applies: condition(inner, 'applies', names),
				read: inner.text('read', false),
				stop: inner.text('stop', false),
				cautions: inner.texts('cautions', false),
			};
			for (const text of [step.do, step.read, step.stop]) {
				for (const [, name] of text.matchAll(/\{([^{}]*)\}/g)) {
					if (!names.has(name!)) inner.report('do', `{${name}} is no answer and no quantity`);
				}
			}
			for (const id of step.cautions)
				if (!cautions.has(id)) inner.report('cautions', `${id} is not in rules/cautions.yaml`);
			inner.refuseRest();
			return step;
		}),
	};
	root.refuseRest();
	return procedure;
}

function condition(fields: Fields, key: string, names: Names): Caution['when'] {
	const placed = fields.placed(key, false);
	const compiled = placed && compileExpression(fields.source, placed, names);
	if (compiled && compiled.type.is !== 'yes-no') fields.report(key, `${key}: a yes or no is needed here`);
	return compiled?.tree ?? null;
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
