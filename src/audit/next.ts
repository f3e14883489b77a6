import type { Outcome } from '../expressions/tree.ts';
import { type State, valueIn } from '../graph/solve.ts';
import { nineOfTen } from '../graph/uncertain.ts';
import type { Plugs } from '../plugs/parts.ts';
import { uncertaintyOfAnswer } from '../quantities/uncertainty.ts';
import type { Verdict } from '../rulebook/judge.ts';
import { harms, type Rule, stages } from '../rulebook/rulebook.ts';
import { efforts, isAtOnce, type Question, standAlone } from '../sheet/question.ts';
import { type Answer, answerTo, type Sheet, usualCylinders } from '../sheet/sheet.ts';
import type { NextAnswer } from './audit.ts';
import type { Model } from './model.ts';
import { waitingPins } from './next-pins.ts';
import { makeVerdictSensitivity } from './verdict-sensitivity.ts';

/**
 * What to find out next: each missing or estimated answer by the verdicts that differ between its plausible values,
 * weighted by stage and harm (5 for person to 1). What the earliest stage waits for comes first, and with it a mere look that
 * settles many lines; then by weight, effort, id. An answer that cannot be tried out (a curve, a list of loads) counts the
 * rules that wait for it.
 */
export function nextAnswers(
	model: Model,
	sheet: Sheet,
	state: State,
	verdicts: readonly Verdict[],
	unwanted: ReadonlySet<string> = new Set(),
	plugs: Plugs | null = null,
): NextAnswer[] {
	const differing = makeVerdictSensitivity(model, state);
	const turns = new Map<string, number>();
	const found = model.rulebook.questions.flatMap((question): NextAnswer[] => {
		const answer = answerTo(sheet, question.id);
		if (unwanted.has(question.id) && answer?.value === undefined) return [];
		const known = answer === undefined ? null : (answer.known ?? (question.of.length > 0 ? 'estimate' : 'measured'));
		if (known !== null && known !== 'not-known' && known !== 'estimate') return [];
		const slot = model.graph.slotOf.get(question.id)!;
		if (state.values[slot] === null) return [];
		// A usual choice has no ends; it could be any other.
		const open = state.values[slot] === undefined || question.kind === 'choice';
		const candidates = open ? plausible(question, state) : bothEnds(question, state, answer);
		const waits = open && candidates.length === 0;
		const flips = waits ? waitingFor(question.id, verdicts) : differing(slot, candidates);
		if (flips.length === 0) return [];
		turns.set(question.id, turnOf(question, flips));
		return [
			{
				answer: question.id,
				known,
				flips: flips.map(({ id }) => id).sort(),
				weight: weightOf(flips),
				effort: question.effort,
				why: whyOf(flips.length, waits),
			},
		];
	});
	const waiting = waitingPins(verdicts, plugs);
	for (const { answer, flips } of waiting)
		turns.set(answer, Math.min(...flips.map(({ stage }) => stages.indexOf(stage))));
	const pins = waiting.map(
		({ answer, flips, why }): NextAnswer => ({
			answer,
			known: null,
			flips: [...new Set(flips.map(({ id }) => id))].sort(),
			weight: weightOf(flips),
			effort: 'gauge',
			why,
		}),
	);
	return [...found, ...pins].sort(
		(a, b) =>
			turns.get(a.answer)! - turns.get(b.answer)! ||
			b.weight - a.weight ||
			efforts.indexOf(a.effort) - efforts.indexOf(b.effort) ||
			(a.answer < b.answer ? -1 : 1),
	);
}

/** The two ends of an estimate, or of the usual value that stands in for an answer. None where it is exact. */
function bothEnds(question: Question, state: State, answer: Answer | undefined): Outcome[] {
	const uncertain = uncertaintyOfAnswer(question, state, answer);
	if (!uncertain) return [];
	const { slot, dimensions } = uncertain;
	return [-nineOfTen, nineOfTen].map(z =>
		uncertain.apply(state.values[slot], new Array<number>(dimensions).fill(z), 0),
	);
}

/** What an answer could be that nobody gave: each choice, the ends of what is plausible, nothing or everything ticked. */
function plausible(question: Question, state: State): Outcome[] {
	const ids = Object.keys(question.choices);
	const ends = question.plausible;
	switch (question.kind) {
		case 'choice':
			return ids;
		case 'several': {
			const alone = ids.filter(id => standAlone.includes(id));
			return [alone, ids.filter(id => !standAlone.includes(id))];
		}
		case 'per-cylinder': {
			if (!ends) return [];
			const cylinders = valueIn(state, 'engine.cylinders');
			const even = new Array<number>(typeof cylinders === 'number' ? cylinders : usualCylinders).fill(
				(ends[0] + ends[1]) / 2,
			);
			return [even, even.with(0, ends[0]), even.with(0, ends[1])];
		}
		case 'loads':
			return [];
		default:
			return ends ? [...ends] : [];
	}
}

/** Rules that cannot be judged for want of this answer. */
function waitingFor(id: string, verdicts: readonly Verdict[]): Rule[] {
	return [...new Set(verdicts.filter(({ missing }) => missing.includes(id)).map(({ rule }) => rule))];
}

/** So many lines make a look worth its minute before anything else. */
const many = 6;

/**
 * The place of the earliest stage that waits for an answer. A look that settles many lines goes with the first; what is ticked
 * off as done, one by one, waits for its stage.
 */
function turnOf({ effort, kind }: Question, flips: readonly Rule[]): number {
	if (isAtOnce(effort) && kind !== 'several' && flips.length >= many) return 0;
	return Math.min(...flips.map(({ stage }) => stages.indexOf(stage)));
}

function weightOf(flips: readonly Rule[]): number {
	return flips.reduce(
		(sum, { stage, harm }) => sum + (stages.length - stages.indexOf(stage)) * (harms.length - harms.indexOf(harm)),
		0,
	);
}

function whyOf(items: number, waits: boolean): string {
	const counted = items === 1 ? '1 item' : `${items} items`;
	return waits ? `${counted} on the list cannot be judged without it` : `settles ${counted} on the list`;
}
