import type { Judge, Verdict } from '../rulebook/judge.ts';
import { namesRead } from '../rulebook/reads.ts';
import type { Rule } from '../rulebook/rulebook.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { isAsLogged } from './log-answers.ts';
import type { Model } from './model.ts';
import { isSerious } from './stages.ts';

/** Of a hundred cases so many must come out the same before a line counts as proved. */
export const sureEnough = 0.9;

/**
 * The same for a line on what a log read. Its threshold is a guarded one: it lies off what is meant by room for a usual sensor
 * (lambda 0.03 over the target, with a sensor of 0.015). JCGM 106:2012 (from memory) takes a reading inside a limit either as
 * it is, at a half, or keeps a guard band in front of it. To ask for nine of ten beyond a guard band would guard twice, and
 * sound drives would fail it; a half would pass what stands on the limit. So a reading is in doubt only where it lies so near
 * that every third sensor would say otherwise.
 */
export const sureEnoughRead = 2 / 3;

/** Whether a line judges readings of a log and nothing but answers with them. */
export function judgesReadings(
	rule: Rule,
	{ rulebook, graph }: Pick<Model, 'rulebook' | 'graph'>,
	sheet: Sheet,
): boolean {
	if (rule.section === 'log') return true;
	const names = [...namesRead(rule)].filter(name => graph.slotOf.has(name));
	const asked = rulebook.questions.filter(({ id }) => names.includes(id));
	return asked.length === names.length && asked.some(question => isAsLogged(question, sheet));
}

/**
 * Whether a line that holds is not proved: nobody found out what it rests on. Where people get hurt no usual value of a
 * question will do; where the engine or the drive home is at stake one will, if the line holds over its spread. What a pack
 * says proves neither. So a gate never opens because an answer was taken away, except where a usual value holds over its spread.
 * `sure` is null without draws.
 */
export function isUnproved(
	{ verdict, rule, assumed }: Verdict,
	sure: number | null,
	judge: Judge,
	enough: (rule: Rule) => number = () => sureEnough,
): boolean {
	if (verdict !== 'holds' || !isSerious(rule)) return false;
	// No line asks for more than that.
	if (sure !== null && sure < sureEnough && sure < enough(rule)) return true;
	const usual = assumed.map(name => judge.usualBehind(name));
	return usual.some(from => from === 'pack' || (from === 'question' && rule.harm === 'person'));
}
