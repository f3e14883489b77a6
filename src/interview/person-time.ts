import type { Effort, Question, UnitSet } from '../sheet/question.ts';
import { textIn } from '../sheet/text.ts';

/** Reading aloud in one's head, words a minute: common practice for text that is read to act on. */
const wordsAMinute = 200;
/** Choosing a row or typing a number, s. */
const keySeconds = 4;
/** Going and finding out, s; a test takes the time its question says. */
const findSeconds: Readonly<Record<Exclude<Effort, 'test'>, number>> = { known: 0, paper: 10, look: 30, gauge: 120 };

/** How long a person takes over a question, help not read, s: reading it, finding out, typing the answer. An estimate. */
export function personSeconds(question: Question, units: UnitSet, cylinders: number): number {
	const words = [textIn(question.ask, units), ...Object.values(question.choices)].join(' ').split(/\s+/).length;
	const { kind, effort, minutes } = question;
	const entries = kind === 'per-cylinder' ? cylinders : kind === 'curve' ? 5 : 1;
	const finding = effort === 'test' ? minutes * 60 : findSeconds[effort];
	return (words / wordsAMinute) * 60 + entries * keySeconds + finding;
}

/** What takes so long, min, is no glance and no paper at hand: unwrapping a loom, looking up the curve of an air meter. */
const notInPassing = 15;

/** Whether a question waits for the second round: a gauge in the hand, a place that one has to crawl to, a quarter of an hour. */
export const isSecondRound = ({ effort, access, minutes }: Question): boolean =>
	effort === 'gauge' ||
	effort === 'test' ||
	(effort !== 'known' && minutes >= notInPassing) ||
	(effort === 'look' && !['papers', 'bay', 'bench'].includes(access));
