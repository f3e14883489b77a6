import { type Assessment, assess } from '../../src/audit/assess.ts';
import { usualDraws } from '../../src/audit/audit.ts';
import type { Model } from '../../src/audit/model.ts';
import { onlyKnownFrom, standsInTheWay } from '../../src/audit/stages.ts';
import { valueIn } from '../../src/graph/solve.ts';
import { uncertaintyOfAnswer } from '../../src/quantities/uncertainty.ts';
import { unwantedOn } from '../../src/quantities/wanted.ts';
import type { Question } from '../../src/sheet/question.ts';
import { type Answer, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { stages } from '../../src/sheet/stage.ts';
import { unitNamed } from '../../src/units/names.ts';
import { fromCanonical } from '../../src/units/unit.ts';
import { type Judged, makeChanges } from './changed-answer.ts';

const options = { date: '2026-05-01', units: 'us', tool: '0.0.0', draws: 0, next: false } as const;

const judged = (sheet: Sheet, model: Model, gateDraws = 0): Assessment =>
	assess(model, { sheet, warnings: [] }, { ...options, gateDraws });

/** How many gates are open, from the first on. */
const openGates = ({ audit }: Assessment): number => audit.stages.filter(({ ready }) => ready).length;

/**
 * Tells of one question which of its answers shut gates that open when the answer is not known, though none of the exceptions
 * says that they may. What is open without draws is an upper bound of what is open with them: draws are made where it comes
 * to that.
 */
export function openedBy(
	sheet: Sheet,
	question: Question,
	answers: readonly Answer[],
	model: Model,
	changed = makeChanges(sheet, model),
): string[] {
	const { id, known_from } = question;
	const bound = changed(id, undefined);
	if (bound.open === 0 || isOtherwiseKnown(question, bound, model)) return [];
	let less: Assessment | undefined;
	return answers.flatMap(answer => {
		const before = changed(id, answer);
		const shut = before.open;
		if (bound.open <= shut || onlyKnownFrom(stages[shut]!, [known_from])) return [];
		less ??= judged(withAnswer(sheet, id, { known: 'not-known' }), model, usualDraws);
		const open = openGates(less);
		if (open <= shut || mayOpen(question, before, less)) return [];
		return [`${id} ${JSON.stringify(answer.value)}: ${shut} to ${open} gates`];
	});
}

/**
 * Answers that others make up: without them the same is known by another way, and what is known counts. The pipe of an air
 * meter that nobody measured has the bore of its curve; with boost the line about the two bores asks for it. The throttle's
 * sensor says whether a cable or a motor opens it.
 */
const madeUpBy: Readonly<Record<string, string>> = {
	'engine.bore': 'engine.displacement',
	'engine.stroke': 'engine.displacement',
	'engine.displacement_stated': 'engine.displacement',
	'engine.compression_ratio': 'engine.static_ratio',
	'sensors.meter_pipe_bore': 'sensors.meter_curve_bore',
	'sensors.throttle_kind': 'sensors.throttle_engine',
};

/** Whether such a build is not asked for it, or others make it up. */
function isOtherwiseKnown({ id }: Question, { state }: Judged, { rulebook }: Model): boolean {
	const other = madeUpBy[id];
	if (other !== undefined && valueIn(state, other) !== undefined) return true;
	return unwantedOn(state, rulebook.questions).has(id);
}

/**
 * Whether gates may open without this answer, which shut them: it is a number whose usual value stands in and holds over its
 * spread. What hurts people is no matter for any usual value.
 */
function mayOpen(question: Question, before: Judged, less: Assessment): boolean {
	const { kind, usual } = question;
	const hurts = before.lines.some(line => line.harm === 'person' && standsInTheWay(line));
	return kind !== 'choice' && usual.length > 0 && !hurts && holdsOverSpread(question, less);
}

/** Ten equally likely places of a standard normal deviate: the middles of its tenths (tables of the normal distribution). */
const tenths = [-1.645, -1.036, -0.674, -0.385, -0.126, 0.126, 0.385, 0.674, 1.036, 1.645];

/** Whether as many gates are open with what the usual value could as well be, in nine cases of ten. */
function holdsOverSpread(question: Question, less: Assessment): boolean {
	const { model, state, sheet } = less;
	const unit = unitNamed(question.unit.us[0] ?? '', [...question.of]);
	const uncertain = uncertaintyOfAnswer(question, state, undefined);
	const value = valueIn(state, question.id);
	if (!unit || !uncertain || typeof value !== 'number') return false;
	const holds = tenths.filter(z => {
		const other = fromCanonical(uncertain.apply(value, [z], 0) as number, unit);
		const answer = { value: other, unit: unit.symbol, known: 'measured', spread: 0 } as const;
		return openGates(judged(withAnswer(sheet, question.id, answer), model)) >= openGates(less);
	});
	return holds.length >= 9;
}

/** Every choice of a question, alone; none of several; the ends of what a number plausibly is. */
export function otherAnswers({ kind, choices, plausible, unit, of }: Question): Answer[] {
	const ids = Object.keys(choices);
	if (kind === 'choice') return ids.map(value => ({ value }));
	if (kind === 'several') return [...ids.map(id => ({ value: [id] })), { value: [] }];
	const shown = unit.us[0] === undefined ? undefined : unitNamed(unit.us[0], [...of]);
	if (kind !== of[0] || !plausible || !shown || shown.curve || shown.refuses) return [];
	return plausible.map(end => ({ value: fromCanonical(end, shown), unit: shown.symbol, known: 'measured' }));
}
