import type { Spread } from '../graph/uncertain.ts';
import { unitsOfAnswer } from '../sheet/canonical.ts';
import type { Question } from '../sheet/question.ts';
import type { Answer, KnownBy } from '../sheet/sheet.ts';
import type { Kind } from '../units/kinds.ts';
import { spreadToCanonical, toCanonical } from '../units/unit.ts';

type By = Readonly<Record<'measured' | 'paperwork' | 'estimate', number>>;

const relative = (measured: number, paperwork: number, estimate: number) => ({
	relative: true,
	by: { measured, paperwork, estimate },
});
const absolute = (measured: number, paperwork: number, estimate: number) => ({
	relative: false,
	by: { measured, paperwork, estimate },
});

/** By how an answer is known; declared once, for every kind. Common practice: gauges and rules of a home garage. */
const usual: Readonly<Partial<Record<Kind, { relative: boolean; by: By }>>> = {
	length: relative(0.005, 0.01, 0.05),
	// A wire's size is printed on it; guessed, it may be one size off.
	area: relative(0, 0, 0.26),
	pressure: relative(0.02, 0.03, 0.1),
	temperature: absolute(1, 2, 5),
	angle: absolute(1, 1, 3),
	rotation: relative(0.01, 0.02, 0.05),
	voltage: relative(0.005, 0.02, 0.05),
	octane: absolute(0.5, 0.5, 2),
};
const otherwise = relative(0.02, 0.03, 0.1);

/** The spread of an answered number: as given, else by how it is known. Plain counts, choices and targets that were read off have none. */
export function spreadOf(question: Question, answer: Answer): Spread {
	if (question.of.length === 0 || answer.known === 'not-known') return { by: 0, relative: false };
	const unit = unitsOfAnswer(question, answer).at(-1);
	if (answer.spread !== undefined && unit) {
		const at = typeof answer.value === 'number' ? answer.value : 0;
		return {
			by: unit.curve
				? Math.abs(toCanonical(at + answer.spread, unit) - toCanonical(at, unit))
				: spreadToCanonical(answer.spread, unit),
			relative: false,
		};
	}
	const known: Exclude<KnownBy, 'not-known'> = answer.known ?? 'estimate';
	if (question.target && known !== 'estimate') return { by: 0, relative: false };
	const own = usual[question.of.at(-1)!] ?? otherwise;
	return { by: own.by[known], relative: own.relative };
}
