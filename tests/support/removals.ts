import { assess } from '../../src/audit/assess.ts';
import type { Model } from '../../src/audit/model.ts';
import { onlyKnownFrom } from '../../src/audit/stages.ts';
import { defaultDraws } from '../../src/cli/sheet/judge-sheet.ts';
import type { Question } from '../../src/sheet/question.ts';
import { type Answer, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { stages } from '../../src/sheet/stage.ts';
import { unitNamed } from '../../src/units/names.ts';
import { fromKept } from '../../src/units/unit.ts';

const options = { date: '2026-05-01', units: 'us', tool: '0.0.0', draws: 0, next: false } as const;

/** How many gates are open, from the first on. */
const openGates = (sheet: Sheet, model: Model, gateDraws = 0): number =>
	assess(model, { sheet, warnings: [] }, { ...options, gateDraws }).audit.stages.filter(({ ready }) => ready).length;

/**
 * Tells of one question which of its answers shut gates that open when the answer is not known, though none of the exceptions
 * says that they may. What is open without draws is an upper bound of what is open with them: draws are made where it comes
 * to that.
 */
export function openedBy(sheet: Sheet, question: Question, answers: readonly Answer[], model: Model): string[] {
	const less = withAnswer(sheet, question.id, { known: 'not-known' });
	const bound = openGates(less, model);
	let open: number | undefined;
	return answers.flatMap(answer => {
		const before = openGates(withAnswer(sheet, question.id, answer), model);
		if (bound <= before || mayOpen(question, before)) return [];
		open ??= openGates(less, model, defaultDraws);
		return open > before ? [`${question.id} ${JSON.stringify(answer.value)}: ${before} to ${open} gates`] : [];
	});
}

/**
 * Numbers that others make up, or for which a usual figure of the graph stands in: without what is said on paper, what was
 * measured counts. A line of its own says where the two differ.
 */
const madeUp: readonly string[] = [
	'engine.bore',
	'engine.stroke',
	'engine.displacement_stated',
	'engine.compression_ratio',
	'sensors.meter_pipe_bore',
];

/**
 * Whether the first gate that is shut may open without this answer: it can only be known at the stage of that gate or later,
 * or a usual number stands in that holds over its spread, or such a build is not asked for it.
 */
function mayOpen({ id, kind, known_from, usual, wantedWhen }: Question, shut: number): boolean {
	if (onlyKnownFrom(stages[shut]!, [known_from]) || wantedWhen !== null || madeUp.includes(id)) return true;
	return kind !== 'choice' && usual.length > 0;
}

/** Every choice of a question, alone; none of several; the ends of what a number plausibly is. */
export function otherAnswers({ kind, choices, plausible, unit, of }: Question): Answer[] {
	const ids = Object.keys(choices);
	if (kind === 'choice') return ids.map(value => ({ value }));
	if (kind === 'several') return [...ids.map(id => ({ value: [id] })), { value: [] }];
	const shown = unit.us[0] === undefined ? undefined : unitNamed(unit.us[0], [...of]);
	if (kind !== of[0] || !plausible || !shown || shown.curve || shown.refuses) return [];
	return plausible.map(end => ({ value: fromKept(end, shown), unit: shown.symbol, known: 'measured' }));
}
