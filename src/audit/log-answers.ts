import type { State } from '../graph/solve.ts';
import { logQuantities } from '../log/all.ts';
import { isPerPull, type LogResults } from '../log/results.ts';
import { canonicalAnswer } from '../sheet/canonical.ts';
import { faultIn } from '../sheet/check-value.ts';
import type { Question } from '../sheet/question.ts';
import {
	type Answer,
	answerTo,
	type LogRecord,
	type RecordedFigure,
	type Sheet,
	usualCylinders,
	withAnswer,
} from '../sheet/sheet.ts';
import { unitNamed } from '../units/names.ts';
import { fromCanonical } from '../units/unit.ts';
import type { Model } from './model.ts';
import { makeVerdictSensitivity } from './verdict-sensitivity.ts';

/** An answer that a log settles. */
export interface LoggedAnswer {
	readonly answer: string;
	readonly value: unknown;
	readonly unit: string | null;
	/** Nine of ten lie within this either way, with the sensor's error, in the unit; null for a choice. */
	readonly spread: number | null;
	readonly before: Answer | null;
	/** Rules whose verdict is another with it. */
	readonly changes: readonly string[];
	/** Measured or seen by somebody, not by a log: left alone unless a person says otherwise. */
	readonly by_hand: boolean;
}

/** The answers that a log settles: those in effect of which it has the figure. `state` has the log's quantities in it. */
export function answersOf(
	{ rulebook, graph, ...model }: Model,
	sheet: Sheet,
	state: State,
	quantities: LogResults,
): LoggedAnswer[] {
	const differing = makeVerdictSensitivity({ rulebook, graph, ...model }, state);
	return rulebook.questions.flatMap((question): LoggedAnswer[] => {
		const slot = graph.slotOf.get(question.id)!;
		const figure = question.logged === null ? undefined : figureFor(question.logged, quantities);
		const answer = figure && answerFrom(question, figure, sheet);
		// Not in effect on this build.
		if (!answer || state.values[slot] === null) return [];
		const kept = canonicalAnswer(question, answer).value;
		const before = answerTo(sheet, question.id) ?? null;
		const changes = differing(slot, [state.values[slot], kept]);
		return [
			{
				answer: question.id,
				value: answer.value,
				unit: typeof answer.unit === 'string' ? answer.unit : null,
				spread: answer.spread ?? null,
				before,
				changes: changes.map(({ id }) => id).sort(),
				by_hand: standsAgainst(question, answer, before, sheet.logs ?? []),
			},
		];
	});
}

/** The figure of a log, of the worst pull where there is one a pull. */
function figureFor(id: string, quantities: LogResults): RecordedFigure | undefined {
	const entry = quantities[id];
	if (entry === undefined || !isPerPull(entry)) return entry;
	const quantity = logQuantities.find(one => one.id === id);
	const sign = quantity?.logged === 'pull' && quantity.worst === 'lowest' ? -1 : 1;
	const known = entry.filter(({ value }) => typeof value === 'number');
	return known.sort((a, b) => sign * ((b.value as number) - (a.value as number)))[0];
}

/** Digits that a logged figure and its spread are worth. */
const [digits, spreadDigits] = [4, 2];

/** A figure as an answer in the sheet's units; undefined where it has none, or no such answer is taken. */
function answerFrom(question: Question, { value, low, high }: RecordedFigure, { units }: Sheet): Answer | undefined {
	if (typeof value === 'string')
		return Object.hasOwn(question.choices, value) ? { value, known: 'measured' } : undefined;
	const symbol = question.unit[units][0];
	const unit = symbol === undefined ? undefined : unitNamed(symbol, [...question.of]);
	if (typeof value !== 'number' || !unit) return undefined;
	const written = Number(fromCanonical(value, unit).toPrecision(digits));
	const fault = faultIn(written, { question, units: [unit], cylinders: usualCylinders });
	if (fault && !fault.soft) return undefined;
	const spread = low === null || high === null ? 0 : (high - low) / 2 / unit.factor;
	return {
		value: written,
		unit: unit.symbol,
		known: 'measured',
		...(spread > 0 ? { spread: Number(spread.toPrecision(spreadDigits)) } : {}),
	};
}

/** Whether what stands goes before what a log says: it was measured by hand, or somebody saw what the log did not. */
function standsAgainst(
	{ id, logged }: Question,
	now: Answer,
	before: Answer | null,
	logs: readonly LogRecord[],
): boolean {
	if (before?.value === undefined || isFromLog(id, before, logs)) return false;
	const quantity = logQuantities.find(one => one.id === logged);
	const reassures = quantity?.logged === 'run' && quantity.reassuring === now.value;
	return before.known === 'measured' || (reassures && before.value !== now.value);
}

/** Whether the answer to a question stands as a log wrote it. */
export function isAsLogged({ id }: Question, sheet: Sheet): boolean {
	const answer = answerTo(sheet, id);
	return answer !== undefined && isFromLog(id, answer, sheet.logs ?? []);
}

/** Whether an answer is still as a log wrote it. */
const isFromLog = (id: string, { value, unit }: Answer, logs: readonly LogRecord[]): boolean =>
	logs.some(({ answers }) => {
		const taken = Object.hasOwn(answers, id) ? answers[id] : undefined;
		return taken !== undefined && JSON.stringify([taken.value, taken.unit]) === JSON.stringify([value, unit]);
	});

/** A sheet with answers of a log in it, and these answers as they were written. */
export function withLogged(
	sheet: Sheet,
	taken: readonly LoggedAnswer[],
	log: { readonly name: string; readonly date: string },
): { readonly sheet: Sheet; readonly answers: Record<string, Answer> } {
	const answers = Object.fromEntries(
		taken.map(({ answer, value, unit, spread }): [string, Answer] => [
			answer,
			{
				value,
				...(unit === null ? {} : { unit }),
				known: 'measured',
				...(spread === null ? {} : { spread }),
				note: `from the log ${log.name} of ${log.date}`,
			},
		]),
	);
	return {
		sheet: Object.entries(answers).reduce((so, [id, answer]) => withAnswer(so, id, answer), sheet),
		answers,
	};
}
